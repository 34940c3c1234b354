//! The words of a demonstration, as they stand on its page.

use super::super::text::{Speaker, digest};
use super::{Card, Carried, Part, Said, Setting, Task, Try};
use crate::measure::Rounding;
use crate::words::{Args, SayFault, Value, format};

/// Something with its words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Its id.
    pub id: String,
    /// Its words.
    pub text: String,
}

/// A part of a demonstration as it stands on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DemoText {
    /// The question.
    pub prompt: String,
    /// Cards, choices, loads or spots in the order shown.
    pub items: Vec<Named>,
    /// Bins, things on the right, or seats.
    pub places: Vec<Named>,
}

impl DemoText {
    /// SHA-256 over question, items in the order shown and places, each ended by a line feed; 64 hex digits.
    #[must_use]
    pub fn digest(&self) -> String {
        let named = self.items.iter().chain(&self.places).map(|n| n.text.as_str());
        let all: Vec<&str> = std::iter::once(self.prompt.as_str()).chain(named).collect();
        digest(&all)
    }
}

impl Speaker<'_> {
    /// A message of a demonstration, or everything it lacks.
    ///
    /// # Errors
    /// The message is not there, or wants values that neither it nor the unit has.
    pub fn try_said(&self, said: &Said) -> Result<String, Vec<SayFault>> {
        self.try_say_steady_with(&said.key, self.carried(said))
    }

    /// A message of a demonstration; the same whatever trip is planned.
    #[must_use]
    pub fn said(&self, said: &Said) -> String {
        let args = self.carried(said);
        // A load is named with its power, which its own message does not say.
        let power =
            said.with.iter().find(|(name, _)| name == "power").and_then(|_| args.get("power").cloned());
        match (power, said.key.starts_with("load-")) {
            (Some(Value::Text(power)), true) => {
                let load = self.say_steady_with(&said.key, Args::new());
                self.say_steady_with("demo-load", Args::new().text("load", load).text("power", power))
            }
            _ => self.say_steady_with(&said.key, args),
        }
    }

    /// The values that a message carries.
    fn carried(&self, said: &Said) -> Args {
        let mut args = Args::new();
        for (name, value) in &said.with {
            match value {
                Carried::Measured(q) => {
                    args.extend(format::quantity_args(
                        self.words(),
                        self.reader(),
                        name,
                        q,
                        Rounding::Nearest,
                    ));
                }
                Carried::Written(q) => {
                    args.extend(Args::new().measured(name, q.to_string(), q.amount()));
                }
                Carried::Count(n) => {
                    let text = format::number(self.words(), self.reader(), (*n).into());
                    args.extend(Args::new().measured(name, text, (*n).into()));
                }
            }
        }
        args
    }

    /// A part of a demonstration with its items in the order shown.
    #[must_use]
    pub fn demonstration(&self, part: &Part, order: &[String]) -> DemoText {
        let named = |card: &Card| Named { id: card.id.clone(), text: standing(self.said(&card.name)) };
        let mut items: Vec<&Card> = part.items();
        items.sort_by_key(|card| order.iter().position(|id| *id == card.id));
        DemoText {
            prompt: self.said(&part.prompt),
            items: items.into_iter().map(named).collect(),
            places: part.places().iter().map(named).collect(),
        }
    }

    /// What was answered, in words: cards, `card: place`, a number, whether it was shown.
    #[must_use]
    pub fn answer(&self, part: &Part, answer: &Try) -> Vec<String> {
        let name = |all: &[&Card], id: &str| {
            all.iter()
                .find(|card| card.id == id)
                .map_or_else(|| id.to_owned(), |card| standing(self.said(&card.name)))
        };
        let (items, places) = (part.items(), part.places().iter().collect::<Vec<_>>());
        match (answer, &part.task) {
            (Try::Cards(cards), _) => cards.iter().map(|id| name(&items, id)).collect(),
            (Try::Placed(placed), _) => {
                let both = |(card, place): &(String, String)| {
                    let args =
                        Args::new().text("card", name(&items, card)).text("place", name(&places, place));
                    self.say_steady_with("demo-placed", args)
                };
                placed.iter().map(both).collect()
            }
            (Try::Number(number), Task::Set(setting)) => vec![self.setting(setting, *number)],
            (Try::Number(number), _) => vec![number.to_string()],
            (Try::Shown(shown), _) => {
                vec![self.say_steady_with(if *shown { "demo-shown" } else { "demo-not-shown" }, Args::new())]
            }
        }
    }

    /// A number that is set, in words: `5`, `55 hours`.
    #[must_use]
    pub fn setting(&self, setting: &Setting, number: i32) -> String {
        let with = vec![("number".to_owned(), Carried::Count(number))];
        self.said(&Said::new(setting.value.clone(), with))
    }

    /// What is said after a try, and the SHA-256 of it, as an event keeps it.
    #[must_use]
    pub fn reply(&self, said: &Said) -> (String, String) {
        let text = self.said(said);
        let digest = digest(&[&text]);
        (text, digest)
    }
}

/// The words of a card, which stand alone: a place, which elsewhere reads on behind 'is', begins with a capital here.
fn standing(text: String) -> String {
    let mut rest = text.chars();
    match rest.next() {
        Some(first) if first.is_lowercase() => first.to_uppercase().chain(rest).collect(),
        _ => text,
    }
}
