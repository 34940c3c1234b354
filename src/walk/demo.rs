//! How far somebody is with the demonstrations of a caution, and what may happen in them.

use super::event::{Helped, PersonId, Shown, Tried};
use super::state::Timed;
use super::{Refused, Walk};
use crate::route::Caution;
use crate::script::Speaker;
use crate::script::demo::{Demonstration, Part, Try, Verdict};

/// Wrong tries after which the agent shows the real thing.
pub const TRIES_ALONE: usize = 2;

/// Something that happened in a demonstration.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Attempt {
    /// A try.
    Tried(Tried),
    /// The agent showed the real thing.
    Helped(Helped),
}

/// How far somebody is with the demonstrations of a caution.
#[derive(Debug, Clone, PartialEq)]
pub enum Demonstrating<'a> {
    /// The caution asks for none.
    None,
    /// This part is to be tried.
    Due(Due<'a>),
    /// Two tries were wrong: the agent shows the real thing first.
    Help(Due<'a>),
    /// Every part was passed.
    Passed,
}

/// The part that is to be done next.
#[derive(Debug, Clone, PartialEq)]
pub struct Due<'a> {
    /// Its demonstration.
    pub demonstration: &'a Demonstration,
    /// The part.
    pub part: &'a Part,
    /// Tries of this person at this part so far.
    pub tries: usize,
    /// Cards that stay where they are from the last try.
    pub kept: Vec<String>,
    /// What the last try answered, so that the page can put back what stays.
    pub last: Option<&'a Tried>,
    /// Order in which the items stand on the page of this try.
    pub order: Vec<String>,
}

impl Due<'_> {
    /// The event of a finished try at this part, judged, with what was on the page.
    #[must_use]
    pub fn tried(
        &self,
        speaker: &Speaker<'_>,
        caution: &str,
        (by, answer): (PersonId, Try),
        looked_ms: u32,
    ) -> Tried {
        let verdict = self.part.judge(&answer);
        let shown = |text: String| Shown { text, language: speaker.reader().lang.clone() };
        Tried {
            caution: caution.to_owned(),
            demonstration: self.demonstration.id.clone(),
            part: self.part.id.clone(),
            by,
            order: self.order.clone(),
            answer,
            right: verdict.is_right(),
            shown: shown(speaker.demonstration(self.part, &self.order).digest()),
            reply: verdict.reply().map(|said| shown(speaker.reply(said).1)),
            looked_ms,
        }
    }
}

impl Walk {
    /// The demonstrations that a caution asks for on this unit, in their order.
    pub fn demonstrations<'a>(&'a self, caution: &'a Caution) -> impl Iterator<Item = &'a Demonstration> {
        caution.demonstrations.iter().filter_map(|id| self.route().demonstrations.get(id))
    }

    /// Everything that happened in the demonstrations of a caution, oldest first.
    #[must_use]
    pub fn attempts(&self, caution: &str) -> &[Timed<Attempt>] {
        self.attempts.get(caution).map_or(&[], Vec::as_slice)
    }

    /// The tries of somebody at one part, oldest first.
    pub fn tries<'a>(
        &'a self,
        caution: &str,
        demonstration: &'a str,
        part: &'a str,
        person: PersonId,
    ) -> impl DoubleEndedIterator<Item = &'a Timed<Attempt>> {
        self.attempts(caution).iter().filter(move |attempt| match &attempt.value {
            Attempt::Tried(t) => t.demonstration == demonstration && t.part == part && t.by == person,
            Attempt::Helped(h) => h.demonstration == demonstration && h.part == part && h.person == person,
        })
    }

    /// How far somebody is with the demonstrations of a caution.
    #[must_use]
    pub fn demonstrating<'a>(&'a self, caution: &'a Caution, person: PersonId) -> Demonstrating<'a> {
        let mut any = false;
        for demonstration in self.demonstrations(caution) {
            for part in &demonstration.parts {
                any = true;
                let all: Vec<&Attempt> =
                    self.tries(&caution.id, &demonstration.id, &part.id, person).map(|a| &a.value).collect();
                if all.iter().any(|a| matches!(a, Attempt::Tried(t) if t.right)) {
                    continue;
                }
                let alone = all.iter().rev().take_while(|a| matches!(a, Attempt::Tried(_))).count();
                let due = self.due(caution, demonstration, part, &all);
                return if alone >= TRIES_ALONE { Demonstrating::Help(due) } else { Demonstrating::Due(due) };
            }
        }
        if any { Demonstrating::Passed } else { Demonstrating::None }
    }

    fn due<'a>(
        &'a self,
        caution: &Caution,
        demonstration: &'a Demonstration,
        part: &'a Part,
        all: &[&'a Attempt],
    ) -> Due<'a> {
        let tries = all.iter().filter_map(|a| if let Attempt::Tried(t) = a { Some(t) } else { None });
        let tries: Vec<&Tried> = tries.collect();
        let last = tries.last().copied();
        let kept = match last.map(|t| part.judge(&t.answer)) {
            Some(Verdict::Wrong(wrong)) => wrong.keep,
            _ => Vec::new(),
        };
        // Whoever looks on while others try does not see the order of their own page.
        let made = self
            .attempts(&caution.id)
            .iter()
            .filter(|a| matches!(&a.value, Attempt::Tried(t) if t.demonstration == demonstration.id));
        let before = last.map_or(&[][..], |tried| tried.order.as_slice());
        let order = part.order_shown(self.id(), &demonstration.id, made.count(), &kept, before);
        Due { demonstration, part, tries: tries.len(), kept, last, order }
    }

    /// Whether every part of the demonstrations of a caution was passed by this person.
    #[must_use]
    pub fn has_demonstrated(&self, caution: &Caution, person: PersonId) -> bool {
        self.demonstrating(caution, person) == Demonstrating::Passed
    }

    /// Whether this try may happen now: of the part that is due, in its form, judged as the part judges it.
    pub(super) fn accepts_try(&self, caution: &Caution, tried: &Tried) -> Result<(), Refused> {
        let due = match self.demonstrating(caution, tried.by) {
            Demonstrating::None => return Err(Refused::NoDemonstration { caution: caution.id.clone() }),
            Demonstrating::Passed => {
                return Err(Refused::AlreadyDemonstrated { caution: caution.id.clone(), person: tried.by });
            }
            Demonstrating::Help(due) => return Err(Refused::HelpFirst { part: due.part.id.clone() }),
            Demonstrating::Due(due) => due,
        };
        let other = || Refused::OtherPart { part: due.part.id.clone() };
        if due.demonstration.id != tried.demonstration || due.part.id != tried.part {
            return Err(other());
        }
        let mut ids: Vec<&str> = due.part.items().into_iter().map(|card| card.id.as_str()).collect();
        let mut shown: Vec<&str> = tried.order.iter().map(String::as_str).collect();
        ids.sort_unstable();
        shown.sort_unstable();
        let verdict = due.part.judge(&tried.answer);
        let as_judged =
            verdict.is_right() == tried.right && verdict.reply().is_some() == tried.reply.is_some();
        if ids == shown && due.part.takes(&tried.answer) && as_judged { Ok(()) } else { Err(other()) }
    }

    /// Whether the real thing may be shown now: after two wrong tries.
    pub(super) fn accepts_help(&self, caution: &Caution, helped: &Helped) -> Result<(), Refused> {
        match self.demonstrating(caution, helped.person) {
            Demonstrating::Help(due)
                if due.demonstration.id == helped.demonstration && due.part.id == helped.part =>
            {
                Ok(())
            }
            _ => Err(Refused::NoHelpDue { part: helped.part.chars().take(80).collect() }),
        }
    }
}
