//! Leads a kiosk without a window through every page of a unit, in walking order: for previews, and for
//! measuring whether every page fits.
//!
//! The pages are those of the window: a walk is begun in memory, events are kept by its own journal, and
//! screens are made from where the walk then stands.

#[cfg(test)]
mod boxes;
mod demo;
#[cfg(test)]
mod every;
mod frames;
mod office;
mod party;
mod reread;
mod tour;

use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::{SignedDuration, Timestamp};

use super::context::Settings;
use super::hall::system_of;
use super::headless::{Driver, HeadlessFault};
use super::run::World;
use super::theme::{TextSize, Theme, fonts};
use super::{App, Message, program};
use crate::ports::fake::{FixedEntropy, MemoryDisk};
use crate::ports::{Clock, Ports};
use crate::script::Scripts;
use crate::tablet::{Tablet, TabletFault};
use crate::words::Reader;

pub use frames::preview;
pub(in crate::kiosk) use tour::{Page, Tour, Visit};

/// When every preview happens, in seconds since 1970: a Friday morning in the summer of 2026.
const MORNING: i64 = 1_784_905_800;
/// The data folder in memory.
const DATA: &str = "/data";

/// The program of the kiosk, whatever its exact type.
pub(in crate::kiosk) trait Kiosk:
    iced::Program<State = App, Message = Message, Theme = iced::Theme>
{
}

impl<P: iced::Program<State = App, Message = Message, Theme = iced::Theme>> Kiosk for P {}

/// How pages are shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Manner {
    /// Size of the window in pixels.
    pub size: (u32, u32),
    /// Palette.
    pub theme: Theme,
    /// Text size.
    pub text: TextSize,
    /// Language of staff and renter.
    pub language: String,
}

/// A clock that moves only when it is told to.
#[derive(Debug, Clone)]
pub(in crate::kiosk) struct TourClock(Arc<Mutex<Timestamp>>);

impl TourClock {
    fn new() -> Self {
        Self(Arc::new(Mutex::new(Timestamp::from_second(MORNING).unwrap_or(Timestamp::UNIX_EPOCH))))
    }

    /// Moves it on.
    pub fn pass(&self, time: SignedDuration) {
        let mut now = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *now = now.checked_add(time).unwrap_or(*now);
    }
}

impl Clock for TourClock {
    fn now(&self) -> Timestamp {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Why the pages of a unit could not be shown.
#[derive(Debug, thiserror::Error)]
pub enum TourFault {
    /// The kiosk in memory could not be set up.
    #[error(transparent)]
    Tablet(#[from] TabletFault),
    /// The archive in memory could not be set up.
    #[error(transparent)]
    Archive(#[from] crate::archive::ArchiveFault),
    /// A page could not be drawn.
    #[error(transparent)]
    Headless(#[from] HeadlessFault),
    /// The walk stops at a page.
    #[error("the walk does not get past the page of `{step}`: {why}")]
    Stuck {
        /// Step, or part of the walk.
        step: String,
        /// Why.
        why: String,
    },
    /// Somebody who takes the pages refused one.
    #[error("{0}")]
    Taken(String),
}

/// Shows every page of a unit to `visit`, in walking order.
///
/// # Errors
/// See [`TourFault`].
pub(in crate::kiosk) fn lead<V: Visit>(
    scripts: &Arc<Scripts>,
    unit: &str,
    manner: &Manner,
    seen_first: bool,
    visit: &mut V,
) -> Result<(), TourFault> {
    let _ = fonts::only_bundled();
    let clock = TourClock::new();
    let ports = Ports {
        disk: Arc::new(MemoryDisk::new()),
        clock: Arc::new(clock.clone()),
        entropy: Arc::new(FixedEntropy([7; 32])),
    };
    let data = PathBuf::from(DATA);
    let tablet = Tablet::first_start(&ports, &data, "t2")?;
    office::archive(&ports, &tablet)?;
    let world = World::open(ports, data, true)?.with_archive(Some(PathBuf::from(office::ARCHIVE)));
    let world = Arc::new(world);
    let measures = scripts.lot.value.measures.first().map_or("us", String::as_str);
    let staff = Reader::new(&manner.language, system_of(measures));
    let settings = Settings { theme: manner.theme, text: manner.text, keys: false, ..Settings::new(staff) };
    let program = program(Arc::clone(&world), Arc::clone(scripts), settings.clone());
    let (app, _) = App::new(world, Arc::clone(scripts), settings);
    let mut driver = Driver::with_state(&program, app, manner.size)?;
    Tour::new(&mut driver, clock, seen_first, visit).lead(unit)
}
