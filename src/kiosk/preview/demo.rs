//! The renter's demonstrations in a preview: each part as it opens, after a wrong try, and done rightly.

use super::{Kiosk, Tour, TourFault, Visit, party};
use crate::kiosk::screen;
use crate::kiosk::screen::caution::{self, DemoMessage};
use crate::kiosk::ui::HoldEvent;
use crate::script::demo::{Part, Task, Try};
use crate::walk::{Demonstrating, PersonId};

/// More turns than the demonstrations of one caution can have.
const TURNS: usize = 64;

/// A part that is due.
struct Due {
    demonstration: String,
    part: Part,
    tries: usize,
    kept: Vec<String>,
    /// Whether the agent shows it first.
    help: bool,
}

impl<P: Kiosk, V: Visit> Tour<'_, '_, P, V> {
    /// Does the demonstrations of the page that is open; says whether it has any. The first of the party tries each
    /// part wrongly once, and one of them twice.
    pub(super) fn demonstrate(&mut self) -> Result<bool, TourFault> {
        let Some(of) = self.asked()? else { return Ok(false) };
        if self.due(&of)?.is_none() {
            return Ok(false);
        }
        self.tell_demo(DemoMessage::Begun)?;
        for _ in 0..TURNS {
            match self.due(&of)? {
                Some(due) => self.turn(&due, of.1)?,
                // The page waits for a remark to be read.
                None if self.asked()?.as_ref() == Some(&of) => {
                    self.page(&format!("demo-{}-remark", of.0))?;
                    self.tell_demo(DemoMessage::RemarkRead)?;
                }
                None => return Ok(true),
            }
        }
        Err(self.stuck("the demonstrations do not end"))
    }

    fn turn(&mut self, due: &Due, by: PersonId) -> Result<(), TourFault> {
        let name = format!("demo-{}-{}", due.demonstration, due.part.id);
        let first = party::PARTY.first().is_some_and(|p| p.0 == by);
        if due.help {
            self.page(&format!("{name}-help"))?;
            return self.tell_demo(DemoMessage::Helped(HoldEvent::Done));
        }
        if first && due.tries < 2 {
            self.page(&if due.tries == 0 { name } else { format!("{name}-again") })?;
        }
        let wrong = first && (due.tries == 0 || due.tries == 1 && !self.helped);
        if let Some(answer) = due.part.wrong_answer().filter(|_| wrong) {
            self.helped |= due.tries == 1;
            return self.answer_demo(due, &answer);
        }
        let answer = due.part.model_answer();
        let answer = answer.ok_or_else(|| self.stuck(format!("`{}` has no right answer", due.part.id)))?;
        self.answer_demo(due, &answer)
    }

    /// The one caution of the page that is open, and who answers it.
    fn asked(&self) -> Result<Option<(String, PersonId)>, TourFault> {
        let hall = self.hall()?;
        let Some(state) = self.caution() else { return Ok(None) };
        let Some((_, cautions)) = state.page(&hall) else { return Ok(None) };
        let [caution] = cautions.as_slice() else { return Ok(None) };
        Ok(state.person().map(|person| (caution.id.clone(), person)))
    }

    /// What is due of a caution now.
    fn due(&self, (caution, person): &(String, PersonId)) -> Result<Option<Due>, TourFault> {
        let hall = self.hall()?;
        let Some((_, caution)) = hall.walk.route().caution(caution) else { return Ok(None) };
        let (due, help) = match hall.walk.demonstrating(caution, *person) {
            Demonstrating::Due(due) => (due, false),
            Demonstrating::Help(due) => (due, true),
            Demonstrating::None | Demonstrating::Passed => return Ok(None),
        };
        let (demonstration, part) = (due.demonstration.id.clone(), due.part.clone());
        Ok(Some(Due { demonstration, part, tries: due.tries, kept: due.kept.clone(), help }))
    }

    fn tell_demo(&mut self, message: DemoMessage) -> Result<(), TourFault> {
        self.pass(8);
        self.send(screen::Message::Caution(caution::Message::Demo(message)))
    }

    /// Does what stands in a try, card by card.
    fn answer_demo(&mut self, due: &Due, answer: &Try) -> Result<(), TourFault> {
        let free = |id: &&String| !due.kept.contains(id);
        let mut messages: Vec<DemoMessage> = match answer {
            Try::Cards(cards) => cards.iter().filter(free).cloned().map(DemoMessage::Card).collect(),
            Try::Placed(placed) => {
                let free = placed.iter().filter(|(card, _)| free(&card));
                free.map(|(card, place)| DemoMessage::Put { card: card.clone(), place: place.clone() })
                    .collect()
            }
            Try::Number(number) => vec![DemoMessage::Number(*number)],
            Try::Shown(true) => vec![DemoMessage::Shown(HoldEvent::Done)],
            Try::Shown(false) => vec![DemoMessage::NotShown],
        };
        if is_handed_in(&due.part, answer) {
            messages.push(DemoMessage::Finished);
        }
        messages.into_iter().try_for_each(|message| self.tell_demo(message))
    }
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
