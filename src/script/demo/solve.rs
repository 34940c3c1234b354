//! How a part is done rightly, and one way to do it wrong.

use super::{Choice, Order, Part, Placing, Task, Try};

impl Part {
    /// A right answer; none where there is none.
    #[must_use]
    pub fn model_answer(&self) -> Option<Try> {
        let answer = match &self.task {
            Task::Order(order) => Try::Cards(order.in_order()?),
            Task::Sort(p) | Task::Match(p) | Task::Seats(p) => Try::Placed(p.completed(&[])?),
            Task::Choose(choosing) => right_of(choosing.choices.iter(), choosing.all),
            Task::Point(pointing) => right_of(pointing.spots.iter().map(|s| &s.choice), pointing.all),
            Task::Together(together) => Try::Cards(together.largest()?),
            Task::Set(setting) => Try::Number(setting.right),
            Task::Show => Try::Shown(true),
        };
        (self.takes(&answer) && self.judge(&answer).is_right()).then_some(answer)
    }

    /// A wrong answer; none where everything is right. Ends as a try ends: with the card that breaks a rule.
    #[must_use]
    pub fn wrong_answer(&self) -> Option<Try> {
        let mut all: Vec<Try> = match &self.task {
            Task::Order(order) => order.cards.iter().rev().map(|c| Try::Cards(vec![c.id.clone()])).collect(),
            Task::Sort(p) | Task::Match(p) | Task::Seats(p) => {
                let places = |card: &super::Placed| {
                    let id = card.card.id.clone();
                    p.into.iter().map(move |place| Try::Placed(vec![(id.clone(), place.id.clone())]))
                };
                let wrong = p.cards.iter().flat_map(places);
                wrong.filter(|given| self.judge_so_far(given).is_some()).collect()
            }
            Task::Choose(_) | Task::Point(_) => {
                self.items().into_iter().map(|c| Try::Cards(vec![c.id.clone()])).collect()
            }
            Task::Together(_) => {
                let ids: Vec<String> = self.items().into_iter().map(|c| c.id.clone()).collect();
                let alone = ids.iter().map(|id| Try::Cards(vec![id.clone()]));
                alone.chain([Try::Cards(ids.clone()), Try::Cards(Vec::new())]).collect()
            }
            Task::Set(setting) => vec![Try::Number(setting.from), Try::Number(setting.last())],
            Task::Show => vec![Try::Shown(false)],
        };
        all.retain(|given| self.takes(given) && !self.judge(given).is_right());
        all.into_iter().next()
    }
}

impl super::Setting {
    /// The largest number that can be set.
    fn last(&self) -> i32 {
        let step = self.step.max(1);
        self.to.saturating_sub(self.to.saturating_sub(self.from).rem_euclid(step))
    }
}

fn right_of<'a>(choices: impl Iterator<Item = &'a Choice>, all: bool) -> Try {
    let right = choices.filter(|c| c.right).map(|c| c.card.id.clone());
    Try::Cards(if all { right.collect() } else { right.take(1).collect() })
}

impl Order {
    /// The cards that are used, each as soon as it may come; none where cards wait for each other.
    pub(super) fn in_order(&self) -> Option<Vec<String>> {
        let mut open: Vec<&String> = self.used().collect();
        let mut laid: Vec<String> = Vec::new();
        while !open.is_empty() {
            let waits = |id: &String| {
                self.before.iter().any(|(first, then)| then == id && !laid.iter().any(|other| other == first))
            };
            let next = open.iter().position(|id| !waits(id))?;
            laid.push(open.remove(next).clone());
        }
        Some(laid)
    }
}

impl Placing {
    /// These cards and all others where they belong; none where somebody has no place left.
    pub(super) fn completed(&self, placed: &[(String, String)]) -> Option<Vec<(String, String)>> {
        let open: Vec<&super::Placed> =
            self.cards.iter().filter(|c| !placed.iter().any(|(id, _)| *id == c.card.id)).collect();
        self.fill(&open, &mut placed.to_vec())
    }

    fn fill(
        &self,
        open: &[&super::Placed],
        placed: &mut Vec<(String, String)>,
    ) -> Option<Vec<(String, String)>> {
        // Whoever has the fewest places goes first, so that the search stays short.
        let Some(next) = open.iter().min_by_key(|c| c.right.len()) else { return Some(placed.clone()) };
        let rest: Vec<&super::Placed> = open.iter().copied().filter(|c| c.card.id != next.card.id).collect();
        for place in &next.right {
            if self.once.is_some() && placed.iter().any(|(_, taken)| taken == place) {
                continue;
            }
            placed.push((next.card.id.clone(), place.clone()));
            if let Some(done) = self.fill(&rest, placed) {
                return Some(done);
            }
            let _ = placed.pop();
        }
        None
    }
}
