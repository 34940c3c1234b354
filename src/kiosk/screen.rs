//! The screens. Each is a module with its own state, messages and view; what they ask for is an [`Action`].

pub mod caution;
pub mod closing;
mod emergency;
pub mod first;
mod frame;
pub mod office;
pub mod opening;
pub mod reread;
pub mod sealed;
pub mod settings;
pub mod staff;
pub mod walk;
pub mod yard;

use std::path::PathBuf;

use super::context::{Ctx, Settings};
use super::effect::YardList;
use super::gate::Purpose;
use super::hall::Hall;
use super::ui::Element;
use crate::tablet::Finished;
use crate::tablet::staff::Change;
use crate::walk::{Event, Phase};
use crate::words::Reader;

pub(super) use frame::{counted, frame};

/// What a screen asks for. Only its parent changes screens or touches what is shared.
#[derive(Debug)]
pub enum Action {
    /// Nothing.
    None,
    /// Name the tablet.
    Name(String),
    /// Begin a walk for this unit.
    Begin(String),
    /// Go on with a walk.
    GoOn {
        /// Its id.
        walk: String,
        /// Who led it last.
        agent: Option<String>,
    },
    /// Nobody is on duty any more.
    SignOff,
    /// Change who works here.
    Staff(Change),
    /// Keep these events, in order; [`Screen::saved`] is called when all are.
    Propose(Vec<Event>),
    /// The party takes another unit.
    Swap {
        /// The unit.
        unit: String,
        /// Why this one is not handed over.
        reason: String,
    },
    /// Seal the open walk.
    Seal,
    /// Hand records in to the office.
    HandIn(super::hand_in::Ask),
    /// Ask the office's archive.
    Office(Vec<super::office::Ask>),
    /// Copy a sealed record.
    SaveCopy {
        /// The sealed file.
        record: PathBuf,
        /// Folder to copy to.
        to: PathBuf,
    },
    /// Use these settings from now on, and keep them.
    Set(Box<Settings>),
    /// Open another screen.
    Open(Box<Screen>),
    /// Leave the walk as it stands and go to the Yard.
    ToYard,
    /// Let a renter read again, alone: no walk stays open.
    Reread {
        /// The unit.
        unit: String,
        /// In which language and measures they read.
        reader: Reader,
    },
    /// Open the emergency card.
    Emergency,
    /// Ask for a PIN first.
    Gate(Purpose),
}

impl Action {
    /// Opens another screen.
    #[must_use]
    pub fn open(screen: Screen) -> Self {
        Self::Open(Box::new(screen))
    }
}

/// The screen that is open.
#[derive(Debug)]
pub enum Screen {
    /// Something is being read.
    Waiting,
    /// The tablet gets its name.
    First(first::State),
    /// Units and open walks.
    Yard(yard::State),
    /// Who, which unit, which trip.
    Opening(opening::State),
    /// Steps.
    Walk(walk::State),
    /// The renter's pages.
    Caution(caution::State),
    /// What you take, sign, your copy.
    Closing(closing::State),
    /// The record is sealed.
    Sealed(sealed::State),
    /// How this tablet looks, speaks and is held.
    Settings(settings::State),
    /// The renter alone.
    Reread(reread::State),
    /// Who works here.
    Staff(staff::State),
    /// The office's archive.
    Office(office::State),
}

/// A message of one of the screens.
#[derive(Debug, Clone)]
pub enum Message {
    /// Of the first start.
    First(first::Message),
    /// Of the Yard.
    Yard(yard::Message),
    /// Of the Opening.
    Opening(opening::Message),
    /// Of the Walk.
    Walk(walk::Message),
    /// Of the renter's pages.
    Caution(caution::Message),
    /// Of the Closing.
    Closing(closing::Message),
    /// Of the end.
    Sealed(sealed::Message),
    /// Of the settings.
    Settings(settings::Message),
    /// Of the renter alone.
    Reread(reread::Message),
    /// Of who works here.
    Staff(staff::Message),
    /// Of the office's archive.
    Office(office::Message),
}

impl Screen {
    /// While something is being read.
    #[must_use]
    pub fn waiting() -> Self {
        Self::Waiting
    }

    /// The first start.
    #[must_use]
    pub fn first(demo: bool) -> Self {
        Self::First(first::State::new(demo))
    }

    /// The first start, once the key is made.
    #[must_use]
    pub fn named(fingerprint: String, demo: bool) -> Self {
        Self::First(first::State::named(fingerprint, demo))
    }

    /// The Yard.
    #[must_use]
    pub fn yard(list: YardList) -> Self {
        Self::Yard(yard::State::new(list))
    }

    /// The end.
    #[must_use]
    pub fn sealed(finished: Finished) -> Self {
        Self::Sealed(sealed::State::new(finished))
    }

    /// Where a walk stands.
    #[must_use]
    pub fn at(hall: &Hall) -> Self {
        match hall.walk.phase() {
            Phase::Opening => Self::Opening(opening::State::new(hall)),
            Phase::Walking => Self::Walk(walk::State::resumed(hall)),
            Phase::Signing | Phase::Stopped | Phase::SealBegun => Self::Closing(closing::State::new(hall)),
        }
    }

    /// Takes a message of the open screen in. One of a screen that was left meanwhile is too late.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match (self, message) {
            (Self::First(state), Message::First(message)) => state.update(message, ctx),
            (Self::Yard(state), Message::Yard(message)) => state.update(message, ctx),
            (Self::Opening(state), Message::Opening(message)) => state.update(message, ctx),
            (Self::Walk(state), Message::Walk(message)) => state.update(message, ctx),
            (Self::Caution(state), Message::Caution(message)) => state.update(message, ctx),
            (Self::Closing(state), Message::Closing(message)) => state.update(message, ctx),
            (Self::Sealed(state), Message::Sealed(message)) => state.update(message, ctx),
            (Self::Reread(state), Message::Reread(message)) => state.update(message, ctx),
            (Self::Settings(state), Message::Settings(message)) => state.update(message, ctx),
            (Self::Staff(state), Message::Staff(message)) => state.update(message, ctx),
            (Self::Office(state), Message::Office(message)) => state.update(message, ctx),
            (
                Self::Waiting
                | Self::First(_)
                | Self::Yard(_)
                | Self::Opening(_)
                | Self::Walk(_)
                | Self::Caution(_)
                | Self::Closing(_)
                | Self::Sealed(_)
                | Self::Settings(_)
                | Self::Reread(_)
                | Self::Staff(_)
                | Self::Office(_),
                _,
            ) => Action::None,
        }
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, ctx: &Ctx<'_>) -> Action {
        match self {
            Self::Opening(state) => state.saved(ctx),
            Self::Walk(state) => state.saved(ctx),
            Self::Caution(state) => state.saved(ctx),
            Self::Closing(state) => state.saved(ctx),
            Self::Waiting
            | Self::First(_)
            | Self::Yard(_)
            | Self::Sealed(_)
            | Self::Settings(_)
            | Self::Reread(_)
            | Self::Staff(_)
            | Self::Office(_) => Action::None,
        }
    }

    /// The office's archive has answered; what comes after the screen was left is too late.
    pub fn answered(&mut self, answer: super::office::Answer, ctx: &Ctx<'_>) -> Action {
        match self {
            Self::Office(state) => state.answered(answer, ctx),
            _ => Action::None,
        }
    }

    /// Whether the renter holds the tablet.
    #[must_use]
    pub fn is_renters(&self) -> bool {
        matches!(self, Self::Caution(_) | Self::Reread(_))
    }

    /// Where staff are, in a line above the page; the renter's pages have none.
    #[must_use]
    pub fn crumb(&self, ctx: &Ctx<'_>) -> Option<String> {
        match self {
            Self::Waiting | Self::Caution(_) => None,
            Self::First(_) | Self::Yard(_) | Self::Staff(_) => Some(lot_line(ctx)),
            Self::Settings(_) => Some(
                ctx.say_with(
                    "crumb-two",
                    &crate::words::Args::new()
                        .text("first", lot_line(ctx))
                        .text("second", ctx.say("crumb-settings")),
                ),
            ),
            Self::Office(_) => Some(
                ctx.say_with(
                    "crumb-two",
                    &crate::words::Args::new()
                        .text("first", lot_line(ctx))
                        .text("second", ctx.say("office-title")),
                ),
            ),
            Self::Opening(_) => Some(unit_line(ctx, &ctx.say("crumb-opening"))),
            Self::Walk(state) => Some(unit_line(ctx, &state.crumb(ctx))),
            Self::Closing(_) | Self::Sealed(_) => Some(unit_line(ctx, &ctx.say("crumb-closing"))),
            Self::Reread(state) => Some(state.crumb(ctx)),
        }
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        match self {
            Self::Waiting => iced::widget::Space::new().into(),
            Self::First(state) => state.view(ctx).map(Message::First),
            Self::Yard(state) => state.view(ctx).map(Message::Yard),
            Self::Opening(state) => state.view(ctx).map(Message::Opening),
            Self::Walk(state) => state.view(ctx).map(Message::Walk),
            Self::Caution(state) => state.view(ctx).map(Message::Caution),
            Self::Closing(state) => state.view(ctx).map(Message::Closing),
            Self::Sealed(state) => state.view(ctx).map(Message::Sealed),
            Self::Settings(state) => state.view(ctx).map(Message::Settings),
            Self::Reread(state) => state.view(ctx).map(Message::Reread),
            Self::Staff(state) => state.view(ctx).map(Message::Staff),
            Self::Office(state) => state.view(ctx).map(Message::Office),
        }
    }
}

/// Company and place.
fn lot_line(ctx: &Ctx<'_>) -> String {
    let lot = &ctx.scripts.lot.value;
    let (name, place) = (ctx.say(&lot.name.value), ctx.say(&lot.place.value));
    ctx.say_with("crumb-two", &crate::words::Args::new().text("first", name).text("second", place))
}

/// Unit and where in its handoff.
fn unit_line(ctx: &Ctx<'_>, part: &str) -> String {
    let unit = ctx.hall.map_or_else(String::new, |h| ctx.say(&format!("unit-{}", h.walk.route().unit)));
    ctx.say_with("crumb-two", &crate::words::Args::new().text("first", unit).text("second", part))
}
