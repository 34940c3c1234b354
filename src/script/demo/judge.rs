//! Whether a try is right.

use serde::{Deserialize, Serialize};

use super::{Choice, Choosing, Order, Part, Placing, Pointing, Said, Setting, Task};

/// Key of what is said when something was not yet shown on the unit.
pub const SHOW_AGAIN: &str = "demo-show-again";

/// What somebody answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Try {
    /// Cards as they were laid, choices, loads that are on, spots: by id, in the order they were taken.
    Cards(Vec<String>),
    /// Cards and where they were put, in the order they were put there.
    Placed(Vec<(String, String)>),
    /// The number that was set.
    Number(i32),
    /// Whether it was shown on the unit, as the agent saw it.
    Shown(bool),
}

/// What becomes of a try.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verdict {
    /// It is right.
    Right,
    /// It is right as well: a remark says why the other answer is the usual one.
    AlsoRight(Said),
    /// It is not.
    Wrong(Wrong),
}

impl Verdict {
    /// Whether the part is passed.
    #[must_use]
    pub const fn is_right(&self) -> bool {
        matches!(self, Self::Right | Self::AlsoRight(_))
    }

    /// What is said after the try, if anything is.
    #[must_use]
    pub const fn reply(&self) -> Option<&Said> {
        match self {
            Self::Right => None,
            Self::AlsoRight(note) => Some(note),
            Self::Wrong(wrong) => Some(&wrong.say),
        }
    }
}

/// Why a try is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wrong {
    /// The correction.
    pub say: Said,
    /// Cards that stay where they are for the next try, in the order they were laid.
    pub keep: Vec<String>,
}

impl Part {
    /// Whether a try is of the form that this part is answered in: known ids, none twice, a number on the scale.
    #[must_use]
    pub fn takes(&self, given: &Try) -> bool {
        let items = self.items();
        let known = |id: &String| items.iter().any(|card| card.id == *id);
        match (&self.task, given) {
            (Task::Order(_) | Task::Together(_), Try::Cards(cards)) => {
                cards.iter().all(known) && distinct(cards)
            }
            (Task::Choose(Choosing { all, .. }) | Task::Point(Pointing { all, .. }), Try::Cards(cards)) => {
                cards.iter().all(known) && distinct(cards) && (*all || cards.len() == 1)
            }
            (Task::Sort(p) | Task::Match(p) | Task::Seats(p), Try::Placed(placed)) => {
                let cards: Vec<&String> = placed.iter().map(|(card, _)| card).collect();
                let places: Vec<&String> = placed.iter().map(|(_, place)| place).collect();
                let there = |id: &&String| p.into.iter().any(|place| place.id == **id);
                cards.iter().all(|id| known(id))
                    && distinct(&cards)
                    && places.iter().all(there)
                    && (p.once.is_none() || distinct(&places))
            }
            (Task::Set(setting), Try::Number(number)) => setting.has(*number),
            (Task::Show, Try::Shown(_)) => true,
            _ => false,
        }
    }

    /// Judges a try that is not finished: what the first card that breaks a rule says. Only cards that are laid or
    /// put somewhere are judged before the end.
    #[must_use]
    pub fn judge_so_far(&self, so_far: &Try) -> Option<Wrong> {
        match (&self.task, so_far) {
            (Task::Order(order), Try::Cards(cards)) => order.broken_by(cards),
            (Task::Sort(p) | Task::Match(p) | Task::Seats(p), Try::Placed(placed)) => p.broken_by(placed),
            _ => None,
        }
    }

    /// Judges a finished try.
    #[must_use]
    pub fn judge(&self, given: &Try) -> Verdict {
        if let Some(wrong) = self.judge_so_far(given) {
            return Verdict::Wrong(wrong);
        }
        match (&self.task, given) {
            (Task::Order(order), Try::Cards(cards)) => order.finished(cards),
            (Task::Sort(p) | Task::Match(p) | Task::Seats(p), Try::Placed(placed)) => p.finished(placed),
            (Task::Choose(choosing), Try::Cards(cards)) => {
                let choices: Vec<&Choice> = choosing.choices.iter().collect();
                chosen(&choices, choosing.all, &choosing.otherwise, cards)
            }
            (Task::Point(pointing), Try::Cards(cards)) => {
                let choices: Vec<&Choice> = pointing.spots.iter().map(|s| &s.choice).collect();
                chosen(&choices, pointing.all, &pointing.otherwise, cards)
            }
            (Task::Together(together), Try::Cards(cards)) => together.judge(cards),
            (Task::Set(setting), Try::Number(number)) => setting.judge(*number),
            (Task::Show, Try::Shown(true)) => Verdict::Right,
            _ => wrong(&Said::new(SHOW_AGAIN.to_owned(), Vec::new()), Vec::new()),
        }
    }
}

pub(super) fn wrong(say: &Said, keep: Vec<String>) -> Verdict {
    Verdict::Wrong(Wrong { say: say.clone(), keep })
}

fn distinct<T: PartialEq>(all: &[T]) -> bool {
    all.iter().enumerate().all(|(at, one)| !all.iter().take(at).any(|other| other == one))
}

fn chosen(choices: &[&Choice], all: bool, otherwise: &Said, cards: &[String]) -> Verdict {
    let choice = |id: &String| choices.iter().find(|c| c.card.id == *id);
    let right = |id: &&String| choice(id).is_some_and(|c| c.right);
    let keep = || cards.iter().filter(right).cloned().collect::<Vec<_>>();
    if let Some(first) = cards.iter().find(|id| !right(id)) {
        return wrong(choice(first).map_or(otherwise, |c| &c.wrong), keep());
    }
    let wanted = choices.iter().filter(|c| c.right).count();
    let enough = if all { cards.len() == wanted } else { !cards.is_empty() };
    if enough { Verdict::Right } else { wrong(otherwise, keep()) }
}

impl Order {
    /// What is said of a card that is laid on top of these.
    fn breaks(&self, laid: &[String], card: &str) -> Option<&Said> {
        let lies = |id: &str| laid.iter().any(|other| other == id);
        if let Some((_, say)) = self.out.iter().find(|(out, _)| out == card) {
            return Some(say);
        }
        if self.before.iter().any(|(first, then)| then == card && !lies(first)) {
            let early = self.early.iter().find(|e| e.card == card && !lies(&e.before));
            return Some(early.map_or(&self.otherwise, |e| &e.say));
        }
        None
    }

    fn broken_by(&self, cards: &[String]) -> Option<Wrong> {
        cards.iter().enumerate().find_map(|(at, card)| {
            let laid = cards.get(..at).unwrap_or_default();
            self.breaks(laid, card).map(|say| Wrong { say: say.clone(), keep: laid.to_vec() })
        })
    }

    /// Ids of the cards that are used.
    pub(super) fn used(&self) -> impl Iterator<Item = &String> {
        let out = |id: &String| self.out.iter().any(|(out, _)| out == id);
        self.cards.iter().map(|c| &c.id).filter(move |id| !out(id))
    }

    fn finished(&self, cards: &[String]) -> Verdict {
        let lacking: Vec<&String> = self.used().filter(|id| !cards.contains(id)).collect();
        let Some(first) = lacking.first() else { return Verdict::Right };
        let said = self.missing.iter().find(|(card, _)| lacking.contains(&card));
        let said = said.or_else(|| self.missing.iter().find(|(card, _)| card == *first));
        wrong(said.map_or(&self.otherwise, |(_, say)| say), cards.to_vec())
    }
}

impl Placing {
    fn broken_by(&self, placed: &[(String, String)]) -> Option<Wrong> {
        placed.iter().enumerate().find_map(|(at, (id, place))| {
            let before = placed.get(..at).unwrap_or_default();
            let keep = || before.iter().map(|(card, _)| card.clone()).collect();
            let card = self.cards.iter().find(|c| c.card.id == *id)?;
            if !card.allows(place) {
                let said = card.wrong.iter().find(|(there, _)| there == place);
                let say = said.map_or(&card.otherwise, |(_, say)| say).clone();
                return Some(Wrong { say, keep: keep() });
            }
            let room = self
                .once
                .as_ref()
                .filter(|_| self.completed(placed.get(..=at).unwrap_or_default()).is_none());
            room.map(|say| Wrong { say: say.clone(), keep: keep() })
        })
    }

    fn finished(&self, placed: &[(String, String)]) -> Verdict {
        let open = self.cards.iter().find(|c| !placed.iter().any(|(id, _)| *id == c.card.id));
        if let Some(open) = open {
            return wrong(&open.otherwise, placed.iter().map(|(card, _)| card.clone()).collect());
        }
        let note = self.cards.iter().find_map(|card| {
            let (_, place) = placed.iter().find(|(id, _)| *id == card.card.id)?;
            card.also.iter().find(|(there, _)| there == place && !card.right.contains(there))
        });
        note.map_or(Verdict::Right, |(_, say)| Verdict::AlsoRight(say.clone()))
    }
}

impl super::Placed {
    /// Whether the card may go there.
    pub(super) fn allows(&self, place: &str) -> bool {
        self.right.iter().any(|there| there == place) || self.also.iter().any(|(there, _)| there == place)
    }
}

impl Setting {
    fn has(&self, number: i32) -> bool {
        let steps = i64::from(number) - i64::from(self.from);
        (self.from..=self.to).contains(&number) && steps % i64::from(self.step.max(1)) == 0
    }

    fn judge(&self, number: i32) -> Verdict {
        if number > self.right {
            wrong(&self.over, Vec::new())
        } else if number < self.least {
            wrong(&self.under, Vec::new())
        } else {
            Verdict::Right
        }
    }
}
