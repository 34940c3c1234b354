//! What is written to the open walk: events, and its end.

use std::sync::Arc;

use super::super::effect::{Proposed, ProposedFault};
use super::{OpenDesk, World, locked};
use crate::journal::{JournalFault, ProposeFault, Writer};
use crate::tablet::clock::Jump;
use crate::tablet::room::{self, Room};
use crate::tablet::{Finished, Tablet};
use crate::walk::{Entry, Event, Phase, Walk};

/// Keeps events, in order. If the clock was set since the last look, the walk tells that first.
pub(super) fn propose(world: &World, events: Vec<Event>) -> Proposed {
    let mut open = locked(&world.open);
    let mut said = Proposed { news: world.news(), ..Proposed::default() };
    let Some(tablet) = world.tablet().filter(|_| open.is_some()) else {
        said.fault = Some(nothing_open());
        return said;
    };
    for event in said.news.jump.map(jumped).into_iter().chain(events) {
        match keep(world, &mut open, &tablet, event, &mut said.freed) {
            Ok(after) => said.walk = Some(after),
            Err(fault) => {
                said.fault = Some(fault);
                break;
            }
        }
    }
    said
}

/// Looks whether the clock was set; an open walk tells it.
pub(super) fn look_at_clock(world: &World) -> Proposed {
    let news = world.news();
    let mut open = locked(&world.open);
    let mut said = Proposed { news, ..Proposed::default() };
    if let (Some(jump), Some(tablet), true) = (said.news.jump, world.tablet(), open.is_some()) {
        // What the journal cannot take is told when the next event is kept.
        said.walk = keep(world, &mut open, &tablet, jumped(jump), &mut said.freed).ok();
    }
    said
}

fn jumped(jump: Jump) -> Event {
    Event::ClockJumped { from: jump.from, to: jump.to }
}

fn nothing_open() -> ProposedFault {
    ProposedFault { text: "no walk is open; go back to the Yard".to_owned(), stops: false }
}

fn writer_gone() -> ProposedFault {
    let text = "the journal's writer has ended; start the kiosk again, the walk goes on from there";
    ProposedFault { text: text.to_owned(), stops: true }
}

/// Keeps one event. On a full disk the reserve is given back, and the event is kept then.
fn keep(
    world: &World,
    open: &mut Option<OpenDesk>,
    tablet: &Tablet,
    event: Event,
    freed: &mut bool,
) -> Result<Arc<Walk>, ProposedFault> {
    let desk = open.as_ref().ok_or_else(nothing_open)?;
    let entry = tablet.entry(&desk.scripts, event);
    let fault = match desk.writer.ask(entry.clone()).recv() {
        Ok(Ok(after)) => return Ok(after),
        Ok(Err(fault)) => fault,
        Err(_) => return Err(writer_gone()),
    };
    let full = matches!(&fault, ProposeFault::Journal(JournalFault::Disk { source, .. }) if source.is_full());
    let given = full && room::release(world.ports.disk.as_ref(), &world.data).unwrap_or(false);
    let again = if given { keep_again(open, tablet, &entry) } else { None };
    *freed |= again.is_some();
    again.ok_or_else(|| fault_words(&fault))
}

/// Takes the walk up anew from its journal, and keeps what could not be kept. The old handle is never tried again.
fn keep_again(open: &mut Option<OpenDesk>, tablet: &Tablet, entry: &Entry) -> Option<Arc<Walk>> {
    let desk = open.take()?;
    let id = desk.writer.finish()?.walk().id().to_owned();
    let found = tablet.open_walks().ok()?.into_iter().find(|walk| walk.id == id)?;
    // The line may have reached the disk all the same.
    let is_there = found.read.as_ref().ok()?.entries.last() == Some(entry);
    let mut keeper = tablet.resume(found).ok()?.resumed.keeper;
    let kept = is_there || keeper.propose(entry).is_ok();
    let walk = Arc::clone(keeper.walk());
    *open = Some(OpenDesk { writer: Writer::spawn(keeper).ok()?, scripts: desk.scripts });
    kept.then_some(walk)
}

fn fault_words(fault: &ProposeFault) -> ProposedFault {
    let stops = matches!(
        fault,
        ProposeFault::Journal(
            JournalFault::Disk { .. } | JournalFault::Poisoned { .. } | JournalFault::Access(_)
        )
    );
    ProposedFault { text: fault.to_string(), stops }
}

/// Seals the open walk. Where room is scarce the reserve is given back first: it was kept for this.
pub(super) fn seal(world: &World) -> Result<Finished, String> {
    let tablet = world.named()?;
    let disk = world.ports.disk.as_ref();
    if !matches!(room::look(disk, &world.data), Room::Enough) {
        drop(room::release(disk, &world.data));
    }
    let mut open = locked(&world.open);
    let desk = open.take().ok_or("no walk is open; go back to the Yard")?;
    let mut keeper = desk.writer.finish().ok_or("the journal's writer has ended; start the kiosk again")?;
    let told = world.news().jump.map(|jump| keeper.propose(&tablet.entry(&desk.scripts, jumped(jump))));
    let sealed = match told {
        Some(Err(fault)) => Err(fault.to_string()),
        _ => tablet.seal(&mut keeper, &desk.scripts).map_err(|e| e.to_string()),
    };
    let walking = keeper.walk().phase() != Phase::SealBegun;
    // A refusal leaves the walk open, so that what is missing can be done.
    if sealed.is_err() && walking && !keeper.journal().is_poisoned() {
        let writer = Writer::spawn(keeper).map_err(|e| format!("the journal has no thread: {e}"))?;
        *open = Some(OpenDesk { writer, scripts: desk.scripts });
    }
    sealed
}
