//! Running tasks to their end on the calling thread.

use std::pin::{Pin, pin};
use std::sync::Arc;
use std::task::{Context, Poll, Wake, Waker};
use std::thread::Thread;
use std::time::{Duration, Instant};

use iced::futures::Stream;

struct Unpark(Thread);

impl Wake for Unpark {
    fn wake(self: Arc<Self>) {
        self.0.unpark();
    }
}

/// The next item, waiting for other threads where the task needs them. `Err` with the patience when that is at
/// its end.
pub(super) fn next<S: Stream + Unpin>(
    stream: &mut S,
    patience: Duration,
) -> Result<Option<S::Item>, Duration> {
    let waker = Waker::from(Arc::new(Unpark(std::thread::current())));
    let mut context = Context::from_waker(&waker);
    let began = Instant::now();
    loop {
        if let Poll::Ready(item) = Pin::new(&mut *stream).poll_next(&mut context) {
            return Ok(item);
        }
        let left = patience.checked_sub(began.elapsed()).ok_or(patience)?;
        std::thread::park_timeout(left);
    }
}

/// What a future gives that never waits.
pub(super) fn now_or_never<F: Future>(future: F) -> Option<F::Output> {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(output) => Some(output),
        Poll::Pending => None,
    }
}
