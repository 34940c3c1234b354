//! What a renter presses in a demonstration, one thing after the other.

use iced::keyboard::{Key, key::Named};
use sendoff::kiosk::screen::Screen;
use sendoff::kiosk::screen::caution::State;
use sendoff::route::{Ask, Caution};
use sendoff::script::demo::{DemoText, Part, Task, Try};
use sendoff::script::{Scripts, Speaker};
use sendoff::walk::{Answer, Demonstrating, Due, Event, PersonId, Walk};
use sendoff::words::{Args, Reader};

use super::{Kiosk, Placed, staff_reader};

/// Something that is pressed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Press {
    /// These very words; of several the first is 0.
    Words(String, usize),
    /// What is called so by its id.
    Id(&'static str),
    /// What is called so by its id, until the ring around it closes.
    Hold(&'static str),
}

/// Controls that are pressed whatever is asked.
const ALWAYS: [&str; 2] = ["caution-show", "demo-go-on"];

impl Kiosk {
    fn pages(&self) -> Option<&State> {
        if let Screen::Caution(state) = self.screen() { Some(state) } else { None }
    }

    /// Who answers the page that is open, and its one caution.
    pub fn asked(&self) -> Option<(Caution, PersonId)> {
        let hall = self.app.hall()?;
        let state = self.pages()?;
        let (_, cautions) = state.page(hall)?;
        match cautions.as_slice() {
            [caution] => Some(((*caution).clone(), state.person()?)),
            _ => None,
        }
    }

    /// What is pressed by whoever is to take the tablet next; nothing while somebody has it.
    pub fn next_turn(&self) -> Option<Press> {
        let next = self.pages()?.turns().first().copied()?;
        let args = Args::new().text("name", self.walk().person(next)?.name.clone());
        Some(Press::Words(self.renter().say_with("caution-page-turn-take", args), 0))
    }

    /// What the renter reads with.
    pub fn renter(&self) -> Speaker<'_> {
        let walk = self.walk();
        let read = walk.reader().unwrap().value.clone();
        let system = if read.measures == "metric" {
            sendoff::measure::System::Metric
        } else {
            staff_reader(&self.setup.lot).system
        };
        Speaker::new(&self.setup.lot, &walk.route().unit, Reader::new(&read.language, system)).unwrap()
    }

    /// Tabs on until what holds this has the focus: words, of several the nth from 0, or a control by its id.
    pub fn tab_to(&mut self, press: &Press) {
        for _ in 0..120 {
            self.key(Key::Named(Named::Tab), None);
            self.tick(std::time::Instant::now());
            let seen = self.look();
            let wanted = match press {
                Press::Words(words, nth) => seen.texts.iter().filter(|t| t.text == *words).nth(*nth),
                Press::Id(id) | Press::Hold(id) => {
                    seen.focusable.iter().find(|(name, _)| name == id).map(|(_, placed)| placed)
                }
            };
            let wanted = wanted.unwrap_or_else(|| panic!("{press:?} is not among {:#?}", seen.words()));
            // Where a scroll is over something else, places are the same only within it.
            let holds = |f: &Placed| f.scroll == wanted.scroll && f.bounds.contains(wanted.bounds.center());
            if seen.focused.as_ref().is_some_and(holds) {
                return;
            }
        }
        panic!("the focus does not come to {press:?}");
    }

    /// What is to be pressed next in the demonstration that is open, done rightly or wrongly; nothing where none is.
    pub fn presses(&mut self, wrong: bool) -> Vec<Press> {
        let Some((caution, person)) = self.asked() else { return Vec::new() };
        if caution.demonstrations.is_empty() {
            return Vec::new();
        }
        let seen = self.look();
        if seen.focusable.iter().any(|(name, _)| name == "demo-helped") {
            return vec![Press::Hold("demo-helped")];
        }
        if let Some(id) = ALWAYS.into_iter().find(|id| seen.focusable.iter().any(|(name, _)| name == id)) {
            return vec![Press::Id(id)];
        }
        let walk = self.walk();
        let Demonstrating::Due(due) = walk.demonstrating(&caution, person) else {
            panic!("{} is not due: {:#?}", caution.id, seen.words())
        };
        let answer = if wrong { due.part.wrong_answer() } else { None };
        let answer = answer.or_else(|| due.part.model_answer()).unwrap();
        presses(&due, &self.renter().demonstration(due.part, &due.order), &answer)
    }
}

/// The answer that a caution asks for.
pub fn how(caution: &Caution) -> Answer {
    match caution.ask {
        Ask::Read => Answer::Read,
        Ask::Demonstrate if !caution.demonstrations.is_empty() => Answer::Demonstrate,
        Ask::Hold | Ask::Demonstrate => Answer::Hold,
    }
}

/// The next part of what a caution asks to be demonstrated, done rightly.
pub fn due(lot: &Scripts, walk: &Walk, caution: &str, by: PersonId, language: &str) -> Option<Event> {
    let (_, found) = walk.route().caution(caution)?;
    let Demonstrating::Due(due) = walk.demonstrating(found, by) else { return None };
    let system = staff_reader(lot).system;
    let speaker = Speaker::new(lot, &walk.route().unit, Reader::new(language, system)).unwrap();
    let answer = due.part.model_answer().unwrap();
    Some(Event::DemonstrationTried(due.tried(&speaker, caution, (by, answer), 9000)))
}

fn name(text: &DemoText, id: &str) -> String {
    let all = text.items.iter().chain(&text.places);
    all.filter(|named| named.id == id).map(|named| named.text.clone()).next().unwrap()
}

/// Which presses make this answer of a page that has just opened.
fn presses(due: &Due<'_>, text: &DemoText, answer: &Try) -> Vec<Press> {
    let free = |id: &&String| !due.kept.contains(id);
    let mut all: Vec<Press> = match answer {
        Try::Cards(cards) => cards.iter().filter(free).map(|id| Press::Words(name(text, id), 0)).collect(),
        Try::Placed(placed) => {
            let kept = |id: &String| due.kept.contains(id);
            // Where cards lie already, in the order of the page.
            let lie: Vec<(String, String)> = match due.last.map(|tried| &tried.answer) {
                Some(Try::Placed(last)) => last.iter().filter(|(card, _)| kept(card)).cloned().collect(),
                _ => Vec::new(),
            };
            let mut presses = Vec::new();
            for (card, place) in placed.iter().filter(|(card, _)| !kept(card)) {
                if let Task::Sort(_) = &due.part.task {
                    let before = due.order.iter().take_while(|id| *id != card);
                    let shown = |id: &&String| !kept(id) || lie.contains(&((*id).clone(), place.clone()));
                    presses.push(Press::Words(name(text, place), before.filter(shown).count()));
                } else {
                    presses.push(Press::Words(name(text, card), 0));
                    presses.push(Press::Words(name(text, place), 0));
                }
            }
            presses
        }
        Try::Number(number) => {
            let Task::Set(setting) = &due.part.task else { panic!("no number is asked for") };
            let now = match due.last.map(|tried| &tried.answer) {
                Some(Try::Number(last)) => *last,
                _ => setting.from,
            };
            let steps = (number - now) / setting.step;
            let knob = if steps < 0 { "demo-less" } else { "demo-more" };
            vec![Press::Id(knob); steps.unsigned_abs() as usize]
        }
        Try::Shown(true) => vec![Press::Hold("demo-shown")],
        Try::Shown(false) => vec![Press::Id("demo-not-shown")],
    };
    if is_handed_in(due.part, answer) {
        all.push(Press::Id("demo-done"));
    }
    all
}

/// Whether a try ends with a button, and not with its last card.
fn is_handed_in(part: &Part, answer: &Try) -> bool {
    match (&part.task, answer) {
        (Task::Choose(choosing), _) => choosing.all,
        (Task::Point(pointing), _) => pointing.all,
        (Task::Together(_) | Task::Set(_), _) => true,
        (Task::Order(order), Try::Cards(cards)) => {
            cards.len() < order.cards.len() && part.judge_so_far(answer).is_none()
        }
        _ => false,
    }
}
