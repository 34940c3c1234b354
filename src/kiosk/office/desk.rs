//! Where questions to the archive are handed over.

use std::collections::VecDeque;
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;

use iced::futures::channel::mpsc::{UnboundedReceiver, UnboundedSender, unbounded};

use super::clerk::Clerk;
use super::{Answer, Ask};
use crate::kiosk::run::World;
use crate::ports::Ports;

/// How many lists one visit may make: each has a number of its own.
const LISTS: u64 = 1 << 32;

/// The desk of the archive: one clerk, one question after the other.
#[derive(Debug)]
pub struct Desk {
    clerk: Arc<Mutex<Clerk>>,
    visits: AtomicU64,
    /// What was last told of records that are being taken in, until somebody has seen the end of it.
    taking: Arc<Mutex<Option<Answer>>>,
    queue: Mutex<Option<Sender<Job>>>,
    inline: bool,
}

/// A question, and who waits for the answers.
struct Job {
    ask: Ask,
    world: Arc<World>,
    tell: UnboundedSender<Answer>,
}

impl Desk {
    /// The desk of the archive in a folder. `inline` has no thread.
    #[must_use]
    pub fn new(ports: Ports, dir: PathBuf, inline: bool) -> Self {
        let clerk = Arc::new(Mutex::new(Clerk::new(ports, dir)));
        let (visits, taking) = (AtomicU64::new(0), Arc::new(Mutex::new(None)));
        Self { clerk, visits, taking, queue: Mutex::new(None), inline }
    }

    /// The number of the first list of a visit to the Office screen: no answer to an earlier visit fits it. And how far
    /// taking in is, or what became of it, where nobody has seen that yet.
    #[must_use]
    pub fn visit(&self) -> (u64, Option<Answer>) {
        let list = self.visits.fetch_add(1, Ordering::Relaxed).saturating_mul(LISTS);
        let mut taking = hold(&self.taking);
        let now = taking.clone();
        taking.take_if(|answer| matches!(answer, Answer::Took { .. }));
        (list, now)
    }

    /// What became of taking in was seen.
    pub fn told(&self) {
        *hold(&self.taking) = None;
    }

    /// Asks; the answers come as they are found. A question that a later one supersedes is not answered.
    pub fn ask(&self, world: &Arc<World>, ask: Ask) -> UnboundedReceiver<Answer> {
        let (tell, answers) = unbounded();
        if matches!(ask, Ask::TakeIn(_)) {
            note(&self.taking, &Answer::Taking { done: 0, of: 0 });
        }
        if let Err(why) = self.hand_over(Job { ask, world: Arc::clone(world), tell: tell.clone() }) {
            let _ = tell.unbounded_send(Answer::Opened(Err(why)));
        }
        answers
    }

    /// Hands a question over; the first one starts the thread.
    fn hand_over(&self, job: Job) -> Result<(), String> {
        let mut queue = hold(&self.queue);
        let send = if let Some(send) = &*queue {
            send.clone()
        } else {
            let (send, jobs) = channel();
            let (clerk, taking) = (Arc::clone(&self.clerk), Arc::clone(&self.taking));
            let serve = move || serve(&clerk, &taking, &jobs);
            let started = thread::Builder::new().name("office".into()).spawn(serve);
            started.map_err(|why| format!("the archive has no thread: {why}"))?;
            *queue = Some(send.clone());
            send
        };
        send.send(job).map_err(|_| "the archive is no longer read; start the kiosk again".to_owned())
    }

    /// Asks and waits: for a world without threads.
    pub fn answers(&self, world: &World, ask: Ask) -> Vec<Answer> {
        debug_assert!(self.inline, "screens never wait for the archive");
        let mut clerk = hold(&self.clerk);
        let mut answers = Vec::new();
        clerk.answer(world, ask, &mut |answer| {
            note(&self.taking, &answer);
            answers.push(answer);
        });
        answers
    }
}

fn hold<T>(what: &Mutex<T>) -> MutexGuard<'_, T> {
    what.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Keeps what is told of taking in for the next visit.
fn note(taking: &Mutex<Option<Answer>>, answer: &Answer) {
    if matches!(answer, Answer::Taking { .. } | Answer::Took { .. }) {
        *hold(taking) = Some(answer.clone());
    }
}

/// Answers until nobody can ask any more.
fn serve(clerk: &Mutex<Clerk>, taking: &Mutex<Option<Answer>>, jobs: &Receiver<Job>) {
    let mut clerk = hold(clerk);
    let mut waiting = VecDeque::new();
    loop {
        if waiting.is_empty() {
            match jobs.recv() {
                Ok(job) => waiting.push_back(job),
                Err(_) => return,
            }
        }
        waiting.extend(jobs.try_iter());
        let Some(Job { ask, world, tell }) = waiting.pop_front() else { continue };
        if waiting.iter().any(|later: &Job| later.ask.supersedes(&ask)) {
            continue;
        }
        // Whoever went away meanwhile wants no answer.
        clerk.answer(&world, ask, &mut |answer| {
            note(taking, &answer);
            drop(tell.unbounded_send(answer));
        });
    }
}
