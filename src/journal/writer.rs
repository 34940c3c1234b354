//! The one thread that writes a walk. Screens propose and go on drawing; they are told when it is safe.

use std::io;
use std::sync::Arc;
use std::sync::mpsc::{self, Receiver, Sender};
use std::thread::{self, JoinHandle};

use super::{Keeper, ProposeFault};
use crate::walk::{Entry, Walk};

/// The walk after an event that is safe, or why it did not happen.
pub type Answered = Result<Arc<Walk>, ProposeFault>;

struct Proposal {
    entry: Entry,
    answer: Box<dyn FnOnce(Answered) + Send>,
}

/// The writer of one walk. Proposals are taken in the order they come; each is answered once.
///
/// When it is dropped, or ended by [`Writer::finish`], what was proposed is still written first.
#[derive(Debug)]
pub struct Writer {
    proposals: Option<Sender<Proposal>>,
    thread: Option<JoinHandle<Keeper>>,
}

impl Writer {
    /// Starts the thread.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn spawn(mut keeper: Keeper) -> io::Result<Self> {
        let (proposals, queue) = mpsc::channel::<Proposal>();
        let thread = thread::Builder::new().name("journal".to_owned()).spawn(move || {
            for Proposal { entry, answer } in queue {
                let answered = keeper.propose(&entry).map(|()| Arc::clone(keeper.walk()));
                answer(answered);
            }
            keeper
        })?;
        Ok(Self { proposals: Some(proposals), thread: Some(thread) })
    }

    /// Proposes an event; `answer` is called on the writer's thread and must not take long. It is dropped
    /// without a call only if the thread has died, which a receiver sees as a closed channel.
    pub fn propose(&self, entry: Entry, answer: impl FnOnce(Answered) + Send + 'static) {
        if let Some(proposals) = &self.proposals {
            // A dead thread gives the proposal back, and dropping it tells whoever waits.
            drop(proposals.send(Proposal { entry, answer: Box::new(answer) }));
        }
    }

    /// Proposes an event and gives the end of a channel on which the one answer comes.
    #[must_use]
    pub fn ask(&self, entry: Entry) -> Receiver<Answered> {
        let (sender, receiver) = mpsc::channel();
        self.propose(entry, move |answered| drop(sender.send(answered)));
        receiver
    }

    /// Ends the thread after what was proposed is done, and gives back walk and journal; none if it had died.
    #[must_use]
    pub fn finish(mut self) -> Option<Keeper> {
        self.proposals = None;
        self.thread.take().and_then(|thread| thread.join().ok())
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        self.proposals = None;
        if let Some(thread) = self.thread.take() {
            drop(thread.join());
        }
    }
}
