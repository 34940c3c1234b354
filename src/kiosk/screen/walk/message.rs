//! What can happen on the screen.

use crate::kiosk::plan::{Floor, Zoom};
use crate::walk::{MarkKind, MarkSize, NotRead, NotShown, Who};

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// The primary button was pressed: the step was shown, or it goes on.
    Onward,
    /// A step that was left out is shown after all.
    ShownAfterAll,
    /// The step before was asked for.
    BackAsked,
    /// A peg of the floor that is shown was pressed.
    PegPressed(u16),
    /// A place of the plan was held down, in inches: it has a mark.
    PointHeld((f64, f64)),
    /// The plan is to be seen from so near.
    Zoomed(Zoom),
    /// A mark was chosen from the list, or let go.
    MarkChosen(u16),
    /// The other floor was asked for.
    FloorChosen(Floor),
    /// A step was chosen from the whole walk.
    StepChosen(usize),
    /// A sheet was asked for.
    SheetAsked(SheetKind),
    /// The sheet was put away.
    SheetClosed,
    /// Something on the sheet changed.
    Draft(Draft),
    /// The sheet's primary button was pressed.
    SheetKept,
    /// A mark is taken back.
    MarkRemoved(u16),
    /// All items that are not counted yet go as listed.
    AllAsListed,
    /// A line of the leaving check was looked at.
    LeavingTicked {
        /// The line.
        item: String,
        /// Whether it is as it must be.
        good: bool,
    },
    /// The Closing was asked for.
    ClosingAsked,
    /// Party, trip, language or agent are to be changed.
    OpeningAsked,
    /// Another agent takes the walk over.
    TakeOverAsked,
    /// The Yard was asked for; the walk stays open.
    YardAsked,
}

/// Which sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SheetKind {
    /// Why the step is not shown.
    NotShown,
    /// A question of the renter.
    Question,
    /// The readings of the step.
    Readings,
    /// Condition marks.
    Marks,
    /// One loaned item.
    Item(String),
    /// How a figure of the step, by its id, is known.
    Figure(String),
    /// The whole walk.
    Overview,
    /// Why the unit is not handed over.
    Stop,
    /// Which unit the party takes instead.
    Swap,
}

/// What is not yet said.
#[derive(Debug, Clone)]
pub enum Draft {
    /// Which unit the party takes instead.
    Unit(String),
    /// Words: a note, a question, a reason.
    Note(String),
    /// Why the step is not shown.
    NotShown(NotShown),
    /// A common question.
    Question(String),
    /// Whether the question was answered.
    Answered(bool),
    /// A reading.
    Reading(String, String),
    /// Why a reading could not be taken; `None` goes back to taking it.
    NotRead(String, Option<NotRead>),
    /// A reading cannot be taken; why is not said yet.
    NotReadAsked(String),
    /// Remark to a reading that could not be taken.
    ReadingNote(String, String),
    /// The point of a mark, in inches.
    Point((f64, f64)),
    /// Back to the plan without a mark.
    NoPoint,
    /// Kind of a mark.
    Kind(MarkKind),
    /// Size of a mark.
    Size(MarkSize),
    /// Who placed a mark.
    By(Who),
    /// How many of an item.
    Count(u16),
}
