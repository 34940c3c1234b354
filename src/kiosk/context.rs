//! What every view is lent.

use std::collections::BTreeMap;

use jiff::Timestamp;

use super::edit::Faults;
use super::hall::{Hall, system_of};
use super::plan::PlanShape;
use super::theme::{Hand, Look, TextSize, Theme, Wishes};
use super::ui::Layout;
use crate::script::{Scripts, Speaker};
use crate::tablet::staff::Staff;
use crate::words::{Args, Reader};

/// Settings of this kiosk; `preferences` keeps them.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// Palette.
    pub theme: Theme,
    /// Text size.
    pub text: TextSize,
    /// The tablet's own factor on every measure.
    pub scale: f32,
    /// Which hand presses.
    pub hand: Hand,
    /// Whether nothing moves by itself.
    pub still: bool,
    /// In which language and measures staff read.
    pub staff: Reader,
    /// Whether our own keys come up for text fields.
    pub keys: bool,
    /// Whether the window fills the screen.
    pub full_screen: bool,
    /// Whose letters they show; none: those of whoever reads.
    pub layout: Option<Layout>,
}

impl Settings {
    /// As a kiosk starts.
    #[must_use]
    pub fn new(staff: Reader) -> Self {
        Self {
            theme: Theme::Paper,
            text: TextSize::Usual,
            scale: 1.0,
            hand: Hand::Right,
            still: false,
            staff,
            keys: true,
            full_screen: false,
            layout: None,
        }
    }

    /// What of them a look follows.
    #[must_use]
    pub fn wishes(&self) -> Wishes {
        let Self { theme, text, scale, hand, still, .. } = *self;
        Wishes { theme, text, scale, hand, still }
    }
}

/// Who works here, as far as screens know.
#[derive(Debug, Clone, Copy, Default)]
pub struct Crew<'a> {
    /// Everybody with a PIN; none when that cannot be told.
    pub staff: Option<&'a Staff>,
    /// Who signed on.
    pub duty: Option<&'a str>,
    /// Whether this kiosk has the office's archive at hand.
    pub archive: bool,
}

impl Crew<'_> {
    /// Whether somebody has a PIN, so that agents sign on with theirs.
    #[must_use]
    pub fn signs_on(&self) -> bool {
        self.staff.is_some_and(|staff| !staff.is_empty())
    }
}

/// What a view may look at.
#[derive(Debug, Clone, Copy)]
pub struct Ctx<'a> {
    /// Scripts of the open walk, else of the lot.
    pub scripts: &'a Scripts,
    /// Settings.
    pub settings: &'a Settings,
    /// How to draw.
    pub look: Look,
    /// The time.
    pub now: Timestamp,
    /// Units of the lot as the plan draws them, by id.
    pub shapes: &'a BTreeMap<String, PlanShape>,
    /// What is wrong with the lot.
    pub faults: &'a Faults,
    /// The open walk.
    pub hall: Option<&'a Hall>,
    /// Who works here.
    pub crew: Crew<'a>,
}

impl<'a> Ctx<'a> {
    /// Words for staff.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.scripts.words.say(&self.settings.staff, key, &Args::new())
    }

    /// Words for staff, filled.
    #[must_use]
    pub fn say_with(&self, key: &str, args: &Args) -> String {
        self.scripts.words.say(&self.settings.staff, key, args)
    }

    /// Says the words of a unit's scripts to staff.
    #[must_use]
    pub fn staff(&self, unit: &str) -> Option<Speaker<'a>> {
        let walk = self.hall.map(|hall| &hall.walk).filter(|walk| walk.route().unit == unit);
        let trip = walk.and_then(|walk| walk.trip());
        Some(Speaker::new(self.scripts, unit, self.settings.staff.clone())?.with_trip(trip))
    }

    /// Says the words of the open walk's scripts to the renter, in their language and measures.
    #[must_use]
    pub fn renter(&self) -> Option<Speaker<'a>> {
        let hall = self.hall?;
        let reader = hall.walk.reader().map_or_else(
            || self.settings.staff.clone(),
            |r| Reader::new(&r.value.language, system_of(&r.value.measures)),
        );
        Some(Speaker::new(self.scripts, &hall.walk.route().unit, reader)?.with_trip(hall.walk.trip()))
    }

    /// Local date and time of the lot, as a clock on its wall shows it.
    #[must_use]
    pub fn local(&self, at: Timestamp) -> jiff::civil::DateTime {
        let minutes = i32::from(self.scripts.offset_minutes(at));
        let offset = jiff::tz::Offset::from_seconds(minutes * 60).unwrap_or(jiff::tz::Offset::UTC);
        offset.to_datetime(at)
    }
}
