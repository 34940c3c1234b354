//! Work on all cores, its results taken by one thread.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc::sync_channel;
use std::thread;

/// Results that may wait for the one who takes them, for each core: more would only hold memory.
const AHEAD: usize = 2;

/// Does each job on some core, and hands what comes of it to `take` as it comes, in no order.
///
/// # Errors
/// What `take` says; the rest is then left.
pub(super) fn each<J: Sync, T: Send, E>(
    jobs: &[J],
    work: impl Fn(&J) -> T + Sync,
    take: &mut dyn FnMut(T) -> Result<(), E>,
) -> Result<(), E> {
    let next = AtomicUsize::new(0);
    let cores = thread::available_parallelism().map_or(1, usize::from).min(jobs.len());
    let (send, done) = sync_channel(AHEAD * cores.max(1));
    thread::scope(|scope| {
        for _ in 0..cores {
            let (send, next, work) = (send.clone(), &next, &work);
            scope.spawn(move || {
                while let Some(job) = jobs.get(next.fetch_add(1, Ordering::Relaxed)) {
                    // Nobody receives any more when taking failed.
                    if send.send(work(job)).is_err() {
                        break;
                    }
                }
            });
        }
        drop(send);
        done.into_iter().try_for_each(take)
    })
}
