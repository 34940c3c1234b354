//! Values for the words of [`Refused`] and [`Missing`], so that screens can say them in any language.

use jiff::civil::Date;

use super::event::{PersonId, Who};
use super::missing::Missing;
use super::refused::Refused;

/// A value that a message names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Arg {
    /// An id, a value or a word as it is.
    Text(String),
    /// A whole number.
    Number(i64),
    /// A day.
    Date(Date),
    /// Somebody of the party, to be named.
    Person(PersonId),
    /// The agent.
    Agent,
    /// All that is missing, to be listed.
    Missing(Vec<Missing>),
}

/// Names of the values and the values.
type Args = Vec<(&'static str, Arg)>;

fn text(text: &str) -> Arg {
    Arg::Text(text.to_owned())
}

fn count(number: usize) -> Arg {
    Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
}

fn whom(by: Who) -> Arg {
    match by {
        Who::Agent => Arg::Agent,
        Who::Person(id) => Arg::Person(id),
    }
}

impl Missing {
    /// Values its words name.
    #[must_use]
    pub fn args(&self) -> Args {
        match self {
            Self::Agent
            | Self::Reader
            | Self::Party
            | Self::Present
            | Self::Experience
            | Self::Booking
            | Self::Opened
            | Self::Consent
            | Self::CopyOffered
            | Self::CopyChoice => Vec::new(),
            Self::Licence { person } => vec![("person", Arg::Person(*person))],
            Self::LicenceTooShort { person, expiry, until } => {
                let dates = [("expiry", Arg::Date(*expiry)), ("until", Arg::Date(*until))];
                [("person", Arg::Person(*person))].into_iter().chain(dates).collect()
            }
            Self::Step { step } => vec![("step", text(step))],
            Self::Answer { caution, step, by } => {
                let person = by.map(|id| ("person", Arg::Person(id)));
                [("caution", text(caution)), ("step", text(step))].into_iter().chain(person).collect()
            }
            Self::AnswerKept { caution, step, by } => {
                vec![("caution", text(caution)), ("step", text(step)), ("person", Arg::Person(*by))]
            }
            Self::Reading { reading, step } => vec![("reading", text(reading)), ("step", text(step))],
            Self::Item { tag } => vec![("item", text(tag))],
            Self::Leaving { item, step } | Self::LeavingNotGood { item, step } => {
                vec![("item", text(item)), ("step", text(step))]
            }
            Self::Signature { by } => vec![("person", whom(*by))],
            Self::SignatureKept { by } => vec![("person", Arg::Person(*by))],
        }
    }
}

impl Refused {
    /// Values its words name.
    #[must_use]
    pub fn args(&self) -> Args {
        match self {
            Self::OtherUnit { unit, route } => vec![("unit", text(unit)), ("route", text(route))],
            Self::Empty { field } | Self::Unprintable { field } => vec![("field", text(field))],
            Self::TooLong { field, max } => vec![("field", text(field)), ("max", count(*max))],
            Self::Form { field, form } => vec![("field", text(field)), ("form", text(form))],
            Self::Range { field, min, max } => {
                vec![("field", text(field)), ("min", Arg::Number(*min)), ("max", Arg::Number(*max))]
            }
            Self::OpeningIncomplete(missing)
            | Self::NotReadyToSign(missing)
            | Self::CopyTooEarly(missing)
            | Self::StopTooEarly(missing)
            | Self::SealIncomplete(missing) => vec![("missing", Arg::Missing(missing.clone()))],
            Self::SigningBegun(by) | Self::AlreadySigned(by) => vec![("person", whom(*by))],
            Self::MarkUsed { number } | Self::NoMark { number } => {
                vec![("number", Arg::Number(i64::from(*number)))]
            }
            Self::TooMany { max } => vec![("max", count(*max))],
            Self::DueBackPast { due, today } => {
                vec![("due", Arg::Date(*due)), ("today", Arg::Date(*today))]
            }
            other => other.person_args().unwrap_or_else(|| other.route_args()),
        }
    }

    /// Values of the reasons that lie in a person.
    fn person_args(&self) -> Option<Args> {
        let (person, more) = match self {
            Self::PersonTwice { person }
            | Self::DriverTooYoung { person }
            | Self::NotInParty { person }
            | Self::NotADriver { person }
            | Self::TooYoung { person }
            | Self::NotPresent { person } => (person, Vec::new()),
            Self::NumberTaken { person, name } | Self::Exchanged { person, name } => {
                (person, vec![("name", text(name))])
            }
            Self::LicenceExpired { person, expiry, today } => {
                (person, vec![("expiry", Arg::Date(*expiry)), ("today", Arg::Date(*today))])
            }
            Self::LicenceTooShort { person, expiry, until } => {
                (person, vec![("expiry", Arg::Date(*expiry)), ("until", Arg::Date(*until))])
            }
            Self::AlreadyAnswered { caution, person } | Self::AlreadyDemonstrated { caution, person } => {
                (person, vec![("caution", text(caution))])
            }
            _ => return None,
        };
        Some([("person", Arg::Person(*person))].into_iter().chain(more).collect())
    }

    /// Values of the reasons that lie in something of the route; none for those that name nothing.
    fn route_args(&self) -> Args {
        match self {
            Self::Unknown { what, id } => vec![("what", text(what)), ("id", text(id))],
            Self::OtherStep { caution, step } | Self::StepFirst { step, caution } => {
                vec![("caution", text(caution)), ("step", text(step))]
            }
            Self::CautionsAnswered { step } => vec![("step", text(step))],
            Self::OtherVersion { caution, version, shown } => vec![
                ("caution", text(caution)),
                ("version", Arg::Number(i64::from(*version))),
                ("shown", Arg::Number(i64::from(*shown))),
            ],
            Self::TooWeak { caution }
            | Self::NotDemonstrated { caution }
            | Self::NoDemonstration { caution } => vec![("caution", text(caution))],
            Self::Reading { reading, value, sane } => {
                vec![("reading", text(reading)), ("value", text(value)), ("sane", text(sane))]
            }
            Self::OtherPart { part } | Self::HelpFirst { part } | Self::NoHelpDue { part } => {
                vec![("part", text(part))]
            }
            Self::OtherMeasure { reading, measure, expected } => {
                vec![("reading", text(reading)), ("measure", text(measure)), ("expected", text(expected))]
            }
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests;
