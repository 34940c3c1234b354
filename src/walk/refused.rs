//! Why something may not happen now, and the way out.

use jiff::civil::Date;

use super::event::{PersonId, Who};
use super::missing::{Missing, who};

/// Why an event was not accepted. Nothing has changed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// The first event does not begin a walk.
    #[error("a walk starts with its beginning: choose the unit in the Yard first")]
    NotBegun,
    /// A second beginning.
    #[error("this walk has begun already: begin another one from the Yard")]
    BeganTwice,
    /// The walk is for another unit than the route.
    #[error("this walk is for unit {unit}, the route is for {route}: open it with the scripts it began with")]
    OtherUnit {
        /// Unit of the walk.
        unit: String,
        /// Unit of the route.
        route: String,
    },
    /// A text is empty.
    #[error("the {field} is empty: fill it in")]
    Empty {
        /// Which text.
        field: &'static str,
    },
    /// A text is too long.
    #[error("the {field} is longer than {max} characters: shorten it")]
    TooLong {
        /// Which text.
        field: &'static str,
        /// Most characters.
        max: usize,
    },
    /// A text holds characters that cannot be printed.
    #[error("the {field} holds a character that cannot be printed: type it again")]
    Unprintable {
        /// Which text.
        field: &'static str,
    },
    /// A text is not of the form it must have.
    #[error("the {field} must be {form}")]
    Form {
        /// Which text.
        field: &'static str,
        /// What it must be.
        form: &'static str,
    },
    /// A number is out of its range.
    #[error("the {field} must be from {min} to {max}")]
    Range {
        /// Which number.
        field: &'static str,
        /// Smallest.
        min: i64,
        /// Largest.
        max: i64,
    },
    /// Two people have one number, or a number stands twice in a list.
    #[error("person {} stands in the list twice: take one out", person.0)]
    PersonTwice {
        /// Their number.
        person: PersonId,
    },
    /// A number belonged to somebody who left the party.
    #[error("number {} belonged to {name}: give the new person a new number", person.0)]
    NumberTaken {
        /// The number.
        person: PersonId,
        /// Who had it.
        name: String,
    },
    /// Name and age of somebody who has answered were changed at once.
    #[error("person {} has answered as {name}: to exchange them, take them out and enter the other one as a new person", person.0)]
    Exchanged {
        /// The number.
        person: PersonId,
        /// The name so far.
        name: String,
    },
    /// No adult in the party.
    #[error("the party has no adult: enter at least one person of 18 or older")]
    NoAdult,
    /// No driver in the party.
    #[error("the party has no driver: mark who will drive or tow")]
    NoDriver,
    /// A driver under 18.
    #[error("person {} is under 18 and cannot drive the unit: correct the age or choose another driver", person.0)]
    DriverTooYoung {
        /// The driver.
        person: PersonId,
    },
    /// Nobody of that number travels.
    #[error("person {} is not in the party: enter them first", person.0)]
    NotInParty {
        /// The number.
        person: PersonId,
    },
    /// Only a driver can do this.
    #[error("person {} is not a driver: a driver must do this, or mark them as one", person.0)]
    NotADriver {
        /// Who tried.
        person: PersonId,
    },
    /// Only an adult can do this.
    #[error("person {} is under 18: an adult of the party must do this", person.0)]
    TooYoung {
        /// Who tried.
        person: PersonId,
    },
    /// Only somebody who is present can do this.
    #[error("person {} is not marked as present: mark them as present first", person.0)]
    NotPresent {
        /// Who tried.
        person: PersonId,
    },
    /// The licence has expired.
    #[error(
        "the licence of driver {} expired on {expiry}, today is {today}: another driver, a valid licence, or stop the handover",
        person.0
    )]
    LicenceExpired {
        /// The driver.
        person: PersonId,
        /// Its last day.
        expiry: Date,
        /// Today.
        today: Date,
    },
    /// The licence ends before the unit is due back.
    #[error(
        "the licence of driver {} ends on {expiry}, before the unit is due back on {until}: another driver, a valid licence, or a shorter trip",
        person.0
    )]
    LicenceTooShort {
        /// The driver.
        person: PersonId,
        /// Its last day.
        expiry: Date,
        /// Day the unit is due back.
        until: Date,
    },
    /// Due back before today.
    #[error("due back on {due}, but today is {today}: correct the date, or set the tablet's clock")]
    DueBackPast {
        /// Day it is due back.
        due: Date,
        /// Today.
        today: Date,
    },
    /// What was proposed is so already.
    #[error("this is already so: nothing was changed")]
    AlreadySo,
    /// The opening is not closed.
    #[error("the walk round the unit has not begun: complete the opening first")]
    NotOpened,
    /// The opening is closed already.
    #[error("the walk round the unit has begun already: go on with the next step")]
    AlreadyOpened,
    /// The opening lacks something.
    #[error("the opening is not complete: {}", list(.0))]
    OpeningIncomplete(Vec<Missing>),
    /// Not on the route.
    #[error(
        "there is no {what} {id} on the route of this unit: open the walk with the scripts it began with"
    )]
    Unknown {
        /// Kind: step, caution, reading, item, leaving line.
        what: &'static str,
        /// Its id.
        id: String,
    },
    /// The caution belongs to another step.
    #[error("caution {caution} does not belong to step {step}: note the question on its own step")]
    OtherStep {
        /// The caution.
        caution: String,
        /// The step.
        step: String,
    },
    /// 'No time' needs a note.
    #[error("no time is a reason that needs a few words: write why in the note")]
    NeedsNote,
    /// Cautions of the step were answered, so that it was shown.
    #[error("cautions of step {step} were answered already: it cannot become 'not shown'")]
    CautionsAnswered {
        /// The step.
        step: String,
    },
    /// The step of the caution was not shown.
    #[error("step {step} was not shown yet: show it first, then hand over caution {caution}")]
    StepFirst {
        /// The step.
        step: String,
        /// The caution.
        caution: String,
    },
    /// Another version of the wording.
    #[error("caution {caution} is version {version} on this route, not {shown}: show the page again")]
    OtherVersion {
        /// The caution.
        caution: String,
        /// The route's.
        version: u16,
        /// The answer's.
        shown: u16,
    },
    /// A tap is not enough.
    #[error("caution {caution} asks for more than a tap: press and hold")]
    TooWeak {
        /// The caution.
        caution: String,
    },
    /// A demonstration is asked for, and not every part of it was passed.
    #[error("caution {caution} asks for a demonstration: do all parts of it first")]
    NotDemonstrated {
        /// The caution.
        caution: String,
    },
    /// The caution asks for no demonstration on this unit.
    #[error("caution {caution} asks for no demonstration: answer it on its page")]
    NoDemonstration {
        /// The caution.
        caution: String,
    },
    /// Another part is to be done, or the try is not what that part is answered with.
    #[error("part {part} of the demonstration is to be done now: open its page again")]
    OtherPart {
        /// The part that is due.
        part: String,
    },
    /// Two tries were wrong.
    #[error("two tries at part {part} were wrong: show the real thing first, then try again")]
    HelpFirst {
        /// The part.
        part: String,
    },
    /// There were no two wrong tries.
    #[error("part {part} of the demonstration waits for the renter: let them try it alone")]
    NoHelpDue {
        /// The part.
        part: String,
    },
    /// All parts were passed.
    #[error("person {} has done every part of the demonstration of caution {caution}: confirm the caution", person.0)]
    AlreadyDemonstrated {
        /// The caution.
        caution: String,
        /// Who.
        person: PersonId,
    },
    /// Answered already, with the same words on the page.
    #[error("person {} has already answered caution {caution}: go on to the next one", person.0)]
    AlreadyAnswered {
        /// The caution.
        caution: String,
        /// Who.
        person: PersonId,
    },
    /// Not a value of the reading.
    #[error("{value} cannot be right for {reading}: {sane}")]
    Reading {
        /// The reading.
        reading: String,
        /// The value.
        value: String,
        /// What it may be.
        sane: String,
    },
    /// Read in another measure.
    #[error("{reading} is read in '{expected}', not in '{measure}'")]
    OtherMeasure {
        /// The reading.
        reading: String,
        /// The measure given.
        measure: String,
        /// The measure of the route.
        expected: String,
    },
    /// The number of a mark is used.
    #[error("mark {number} exists already or was taken back: use the next free number")]
    MarkUsed {
        /// Its number.
        number: u16,
    },
    /// No such mark.
    #[error("there is no mark {number}: it may have been taken back already")]
    NoMark {
        /// Its number.
        number: u16,
    },
    /// Somebody has signed or refused to.
    #[error("{} has signed what was there: reopen the closing to correct anything, then sign again", who(*.0))]
    SigningBegun(Who),
    /// Too early to sign.
    #[error("nobody can sign yet: {}", list(.0))]
    NotReadyToSign(Vec<Missing>),
    /// Signed already.
    #[error("{} has signed already: reopen the closing to sign again", who(*.0))]
    AlreadySigned(Who),
    /// The ink is no more than a dot.
    #[error("this is no more than a dot: sign with a stroke that can be seen")]
    Dot,
    /// A copy is offered before all have signed.
    #[error("the copy comes after the signatures: {}", list(.0))]
    CopyTooEarly(Vec<Missing>),
    /// A copy is chosen before it was offered.
    #[error("offer the copy first, then note the choice")]
    CopyNotOffered,
    /// There is nothing to reopen.
    #[error("nobody has signed and nothing was stopped: just correct it")]
    NothingToReopen,
    /// The handover cannot be stopped before there is somebody to name.
    #[error("an agent and a party must be entered before the handover can be stopped: {}", list(.0))]
    StopTooEarly(Vec<Missing>),
    /// The handover was stopped.
    #[error("the handover was stopped: sign and seal it as not handed over, or reopen it")]
    Stopped,
    /// The seal lacks something.
    #[error("the walk cannot be sealed yet: {}", list(.0))]
    SealIncomplete(Vec<Missing>),
    /// The seal has begun.
    #[error("this walk is being sealed: nothing more can happen in it, a correction is an amendment")]
    SealBegun,
    /// So many events that something must be wrong.
    #[error(
        "this walk holds {max} events, more than any handoff needs: sign and seal it, or stop the handover"
    )]
    TooMany {
        /// Most events.
        max: usize,
    },
}

/// The first few in one line.
fn list(missing: &[Missing]) -> String {
    let named: Vec<String> = missing.iter().take(5).map(ToString::to_string).collect();
    let more = missing.len().saturating_sub(named.len());
    let tail = if more > 0 { format!("; and {more} more") } else { String::new() };
    format!("{}{tail}", named.join("; "))
}

impl Refused {
    /// Every key there is, for the check that each has its words.
    pub const KEYS: &[&str] = &[
        "refused-not-begun",
        "refused-began-twice",
        "refused-other-unit",
        "refused-empty",
        "refused-too-long",
        "refused-unprintable",
        "refused-form",
        "refused-range",
        "refused-person-twice",
        "refused-number-taken",
        "refused-exchanged",
        "refused-no-adult",
        "refused-no-driver",
        "refused-driver-too-young",
        "refused-not-in-party",
        "refused-not-a-driver",
        "refused-too-young",
        "refused-not-present",
        "refused-licence-expired",
        "refused-licence-too-short",
        "refused-due-back-past",
        "refused-already-so",
        "refused-not-opened",
        "refused-already-opened",
        "refused-opening-incomplete",
        "refused-unknown",
        "refused-other-step",
        "refused-needs-note",
        "refused-cautions-answered",
        "refused-step-first",
        "refused-other-version",
        "refused-too-weak",
        "refused-not-demonstrated",
        "refused-no-demonstration",
        "refused-other-part",
        "refused-help-first",
        "refused-no-help-due",
        "refused-already-demonstrated",
        "refused-already-answered",
        "refused-reading",
        "refused-other-measure",
        "refused-mark-used",
        "refused-no-mark",
        "refused-signing-begun",
        "refused-not-ready-to-sign",
        "refused-already-signed",
        "refused-dot",
        "refused-copy-too-early",
        "refused-copy-not-offered",
        "refused-nothing-to-reopen",
        "refused-stop-too-early",
        "refused-stopped",
        "refused-seal-incomplete",
        "refused-seal-begun",
        "refused-too-many",
    ];

    /// Whether nothing needs to be done, since what was proposed is so already: a double tap, say.
    #[must_use]
    pub fn already(&self) -> bool {
        matches!(
            self,
            Self::AlreadySo
                | Self::AlreadyOpened
                | Self::AlreadyAnswered { .. }
                | Self::AlreadyDemonstrated { .. }
                | Self::AlreadySigned(_)
        )
    }

    /// What is missing, when that is the reason.
    #[must_use]
    pub fn missing(&self) -> &[Missing] {
        match self {
            Self::OpeningIncomplete(m)
            | Self::NotReadyToSign(m)
            | Self::CopyTooEarly(m)
            | Self::StopTooEarly(m)
            | Self::SealIncomplete(m) => m,
            _ => &[],
        }
    }

    /// Key of its words, the same for ever.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Self::NotBegun => "refused-not-begun",
            Self::BeganTwice => "refused-began-twice",
            Self::OtherUnit { .. } => "refused-other-unit",
            Self::Empty { .. } => "refused-empty",
            Self::TooLong { .. } => "refused-too-long",
            Self::Unprintable { .. } => "refused-unprintable",
            Self::Form { .. } => "refused-form",
            Self::Range { .. } => "refused-range",
            Self::PersonTwice { .. } => "refused-person-twice",
            Self::NumberTaken { .. } => "refused-number-taken",
            Self::Exchanged { .. } => "refused-exchanged",
            Self::NoAdult => "refused-no-adult",
            Self::NoDriver => "refused-no-driver",
            Self::DriverTooYoung { .. } => "refused-driver-too-young",
            Self::NotInParty { .. } => "refused-not-in-party",
            Self::NotADriver { .. } => "refused-not-a-driver",
            Self::TooYoung { .. } => "refused-too-young",
            Self::NotPresent { .. } => "refused-not-present",
            Self::LicenceExpired { .. } => "refused-licence-expired",
            Self::LicenceTooShort { .. } => "refused-licence-too-short",
            Self::DueBackPast { .. } => "refused-due-back-past",
            Self::AlreadySo => "refused-already-so",
            Self::NotOpened => "refused-not-opened",
            Self::AlreadyOpened => "refused-already-opened",
            Self::OpeningIncomplete(_) => "refused-opening-incomplete",
            Self::Unknown { .. } => "refused-unknown",
            Self::OtherStep { .. } => "refused-other-step",
            Self::NeedsNote => "refused-needs-note",
            Self::CautionsAnswered { .. } => "refused-cautions-answered",
            Self::StepFirst { .. } => "refused-step-first",
            Self::OtherVersion { .. } => "refused-other-version",
            Self::TooWeak { .. } => "refused-too-weak",
            Self::NotDemonstrated { .. } => "refused-not-demonstrated",
            Self::NoDemonstration { .. } => "refused-no-demonstration",
            Self::OtherPart { .. } => "refused-other-part",
            Self::HelpFirst { .. } => "refused-help-first",
            Self::NoHelpDue { .. } => "refused-no-help-due",
            Self::AlreadyDemonstrated { .. } => "refused-already-demonstrated",
            Self::AlreadyAnswered { .. } => "refused-already-answered",
            Self::Reading { .. } => "refused-reading",
            Self::OtherMeasure { .. } => "refused-other-measure",
            Self::MarkUsed { .. } => "refused-mark-used",
            Self::NoMark { .. } => "refused-no-mark",
            Self::SigningBegun(_) => "refused-signing-begun",
            Self::NotReadyToSign(_) => "refused-not-ready-to-sign",
            Self::AlreadySigned(_) => "refused-already-signed",
            Self::Dot => "refused-dot",
            Self::CopyTooEarly(_) => "refused-copy-too-early",
            Self::CopyNotOffered => "refused-copy-not-offered",
            Self::NothingToReopen => "refused-nothing-to-reopen",
            Self::StopTooEarly(_) => "refused-stop-too-early",
            Self::Stopped => "refused-stopped",
            Self::SealIncomplete(_) => "refused-seal-incomplete",
            Self::SealBegun => "refused-seal-begun",
            Self::TooMany { .. } => "refused-too-many",
        }
    }
}
