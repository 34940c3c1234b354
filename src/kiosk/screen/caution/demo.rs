//! A demonstration: the renter shows that a caution was understood, part by part.
//!
//! What is due, in which order it stands and what stays from the last try comes from the walk; this page holds only
//! the try that is being made. The first card that breaks a rule ends it.

mod cards;
mod help;
mod places;
mod point;
mod view;

pub(super) use view::view;

use super::pages;
use super::{Saving, Show, answer};
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::screen::Action;
use crate::kiosk::screen::walk::picture::{Decoded, Picture};
use crate::kiosk::ui::HoldEvent;
use crate::route::Caution;
use crate::script::demo::{Part, Said, Task, Try};
use crate::walk::{Answer, Demonstrating, Due, Event, Helped, PersonId};

/// State of the page: the try that is being made.
#[derive(Debug)]
pub struct State {
    /// Which part this try is of, and the how manieth; another one starts afresh.
    of: Of,
    so_far: Try,
    /// The card that is to be put somewhere.
    taken: Option<String>,
    /// What is said of the last try.
    reply: Option<Reply>,
    picture: Option<(String, Picture)>,
}

/// A part, and the tries at it before this one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
struct Of {
    demonstration: String,
    part: String,
    tries: usize,
}

/// What is said after a try.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Reply {
    say: Said,
    right: bool,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// The page of the caution was read; the demonstration may begin.
    Begun,
    /// Back to the words of the caution.
    WordsAsked,
    /// A card was tapped: laid, taken back, chosen, or taken to be put somewhere.
    Card(String),
    /// The card at hand goes here.
    Place(String),
    /// This card goes there.
    Put {
        /// The card.
        card: String,
        /// Where.
        place: String,
    },
    /// A number was set.
    Number(i32),
    /// The try is finished.
    Finished,
    /// All that does not stay is taken back.
    Cleared,
    /// The agent says that it was shown on the unit, and holds on to say so.
    Shown(HoldEvent),
    /// The agent says that it was not shown yet.
    NotShown,
    /// The remark after a right try was read.
    RemarkRead,
    /// The agent has shown the real thing, and holds on to say so.
    Helped(HoldEvent),
}

impl State {
    /// The page of what is due now.
    pub(super) fn new(due: &Due<'_>, ctx: &Ctx<'_>, reply: Option<(Said, bool)>) -> Self {
        let of =
            Of { demonstration: due.demonstration.id.clone(), part: due.part.id.clone(), tries: due.tries };
        let picture = due.part.picture.clone();
        let picture = picture.map(|id| (id.clone(), Picture::load(&ctx.scripts.bundle, &id)));
        let so_far = start(due);
        let reply = reply.map(|(say, right)| Reply { say, right });
        let mut state = Self { of, so_far, taken: None, reply, picture };
        state.take_next(due);
        state
    }

    /// Whether this page is of what is due.
    fn is_of(&self, due: &Due<'_>) -> bool {
        self.of.demonstration == due.demonstration.id
            && self.of.part == due.part.id
            && self.of.tries == due.tries
    }

    /// The first card that lies nowhere is at hand.
    fn take_next(&mut self, due: &Due<'_>) {
        let Try::Placed(placed) = &self.so_far else { return };
        let free = |id: &&String| !placed.iter().any(|(card, _)| card == *id);
        self.taken = due.order.iter().find(free).cloned();
    }

    /// Takes a card in hand; says whether the try is over.
    fn card(&mut self, due: &Due<'_>, id: &str) -> bool {
        let one = matches!(&due.part.task, Task::Choose(c) if !c.all)
            || matches!(&due.part.task, Task::Point(p) if !p.all);
        match &mut self.so_far {
            Try::Cards(cards) if one => {
                *cards = vec![id.to_owned()];
                true
            }
            Try::Cards(cards) if matches!(due.part.task, Task::Order(_)) => match cards.last() {
                // The last card comes back with a tap, unless it stays from the try before.
                Some(last) if last == id => {
                    if !due.kept.iter().any(|kept| kept == id) {
                        let _ = cards.pop();
                    }
                    false
                }
                _ if cards.iter().any(|laid| laid == id) => false,
                _ => {
                    cards.push(id.to_owned());
                    let all = cards.len() == due.order.len();
                    all || due.part.judge_so_far(&self.so_far).is_some()
                }
            },
            Try::Cards(cards) => {
                if let Some(at) = cards.iter().position(|on| on == id) {
                    let _ = cards.remove(at);
                } else {
                    cards.push(id.to_owned());
                }
                false
            }
            Try::Placed(placed) => {
                let stays = due.kept.iter().any(|kept| kept == id);
                if !stays {
                    placed.retain(|(card, _)| card != id);
                    self.taken = Some(id.to_owned());
                }
                false
            }
            Try::Number(_) | Try::Shown(_) => false,
        }
    }

    /// Puts a card somewhere; says whether the try is over.
    fn put(&mut self, due: &Due<'_>, card: &str, place: &str) -> bool {
        if due.kept.iter().any(|kept| kept == card) {
            return false;
        }
        let once = matches!(&due.part.task, Task::Seats(_));
        let Try::Placed(placed) = &mut self.so_far else { return false };
        if once && placed.iter().any(|(other, there)| there == place && other != card) {
            return false;
        }
        placed.retain(|(other, _)| other != card);
        placed.push((card.to_owned(), place.to_owned()));
        let all = placed.len() == due.order.len();
        self.take_next(due);
        all || due.part.judge_so_far(&self.so_far).is_some()
    }

    /// Whether something would be taken back.
    fn can_clear(&self, due: &Due<'_>) -> bool {
        match &self.so_far {
            Try::Cards(cards) => cards.len() > due.kept.len(),
            Try::Placed(placed) => placed.len() > due.kept.len(),
            Try::Number(_) | Try::Shown(_) => false,
        }
    }

    /// Whether a try as it stands may be handed in by a button.
    fn can_finish(&self, part: &Part) -> bool {
        match (&part.task, &self.so_far) {
            (Task::Choose(c), Try::Cards(cards)) => c.all && !cards.is_empty(),
            (Task::Point(p), Try::Cards(cards)) => p.all && !cards.is_empty(),
            (Task::Order(order), Try::Cards(cards)) => !order.out.is_empty() && !cards.is_empty(),
            (Task::Together(_), _) | (Task::Set(_), _) => true,
            _ => false,
        }
    }
}

/// A try as it begins: what stays of the last one.
fn start(due: &Due<'_>) -> Try {
    let last = due.last.map(|tried| &tried.answer);
    let stays = |id: &String| due.kept.iter().any(|kept| kept == id);
    match (&due.part.task, last) {
        (Task::Order(_) | Task::Choose(_) | Task::Point(_) | Task::Together(_), Some(Try::Cards(cards))) => {
            Try::Cards(cards.iter().filter(|id| stays(id)).cloned().collect())
        }
        (Task::Order(_) | Task::Choose(_) | Task::Point(_) | Task::Together(_), _) => Try::Cards(Vec::new()),
        (Task::Sort(_) | Task::Match(_) | Task::Seats(_), Some(Try::Placed(placed))) => {
            Try::Placed(placed.iter().filter(|(id, _)| stays(id)).cloned().collect())
        }
        (Task::Sort(_) | Task::Match(_) | Task::Seats(_), _) => Try::Placed(Vec::new()),
        (Task::Set(_), Some(Try::Number(number))) => Try::Number(*number),
        (Task::Set(setting), _) => Try::Number(setting.from),
        (Task::Show, _) => Try::Shown(false),
    }
}

/// What somebody has to do for a caution now, and whether the agent shows it first.
fn due<'a>(show: &Show<'_, 'a>, caution: &'a Caution) -> Option<(Due<'a>, bool)> {
    let person = show.state.person?;
    match show.hall.walk.demonstrating(caution, person) {
        Demonstrating::Due(due) => Some((due, false)),
        Demonstrating::Help(due) => Some((due, true)),
        Demonstrating::None | Demonstrating::Passed => None,
    }
}

impl super::State {
    /// The photo that is to be decoded now, told once.
    pub(in crate::kiosk) fn photo_wanted(&mut self) -> Option<String> {
        self.demo.as_mut()?.picture.as_mut()?.1.wanted()
    }

    /// A photo is decoded, or cannot be. One of a page that was left meanwhile is too late.
    pub(in crate::kiosk) fn decoded(&mut self, id: &str, photo: Decoded) {
        if let Some((_, picture)) = self.demo.as_mut().and_then(|demo| demo.picture.as_mut()) {
            picture.decoded(id, photo);
        }
    }

    /// Whether a caution is answered by a demonstration of whoever answers.
    pub(super) fn is_demonstrated(&self, hall: &Hall, caution: &Caution) -> bool {
        let state = self.person.map(|person| hall.walk.demonstrating(caution, person));
        state.is_some_and(|state| state != Demonstrating::None)
    }

    /// The caution of the page, if it asks for a demonstration on this unit.
    fn demonstrated<'a>(&self, ctx: &Ctx<'a>) -> Option<(&'a Caution, PersonId)> {
        let hall = ctx.hall?;
        let (step, cautions) = self.page(hall)?;
        let [caution] = cautions.as_slice() else { return None };
        let by = self.person?;
        pages::who_may(&hall.walk, step, caution).contains(&by).then_some((*caution, by))
    }

    /// Takes a message of the demonstration in.
    pub(super) fn demo(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some((caution, by)) = self.demonstrated(ctx) else { return Action::None };
        let Some(hall) = ctx.hall else { return Action::None };
        if matches!(message, Message::WordsAsked) {
            self.demo = None;
            return Action::None;
        }
        let due = match hall.walk.demonstrating(caution, by) {
            Demonstrating::Due(due) | Demonstrating::Help(due) => due,
            Demonstrating::Passed => return self.answer(ctx, Answer::Demonstrate),
            Demonstrating::None => return Action::None,
        };
        if matches!(message, Message::Begun) {
            if self.whole.is_some() {
                self.demo = Some(State::new(&due, ctx, None));
            }
            return Action::None;
        }
        if matches!(message, Message::Helped(HoldEvent::Done)) {
            let helped = Helped {
                caution: caution.id.clone(),
                demonstration: due.demonstration.id.clone(),
                part: due.part.id.clone(),
                person: by,
            };
            return self.propose(Saving::Demonstration, vec![Event::DemonstrationHelped(helped)]);
        }
        let Some(demo) = self.demo.as_mut() else { return Action::None };
        let over = match message {
            Message::Card(id) => demo.card(&due, &id),
            Message::Place(place) => demo.taken.clone().is_some_and(|card| demo.put(&due, &card, &place)),
            Message::Put { card, place } => demo.put(&due, &card, &place),
            Message::Number(number) => {
                demo.so_far = Try::Number(number);
                false
            }
            Message::Finished => demo.can_finish(due.part),
            Message::Cleared => {
                let reply = demo.reply.clone().map(|r| (r.say, r.right));
                *demo = State::new(&due, ctx, reply);
                false
            }
            Message::Shown(HoldEvent::Done) => {
                demo.so_far = Try::Shown(true);
                true
            }
            Message::NotShown => {
                demo.so_far = Try::Shown(false);
                true
            }
            Message::RemarkRead => {
                demo.reply = None;
                false
            }
            Message::Shown(HoldEvent::TooShort)
            | Message::Begun
            | Message::WordsAsked
            | Message::Helped(_) => false,
        };
        if over { self.hand_in(ctx, caution, by, &due) } else { Action::None }
    }

    /// Proposes the try as it stands.
    fn hand_in(&mut self, ctx: &Ctx<'_>, caution: &Caution, by: PersonId, due: &Due<'_>) -> Action {
        let Some((demo, speaker)) = self.demo.as_mut().zip(ctx.renter()) else { return Action::None };
        if !due.part.takes(&demo.so_far) {
            return Action::None;
        }
        let verdict = due.part.judge(&demo.so_far);
        demo.reply = verdict.reply().map(|say| Reply { say: say.clone(), right: verdict.is_right() });
        let looked_ms = answer::looked_ms(ctx, self.whole);
        let tried = due.tried(&speaker, &caution.id, (by, demo.so_far.clone()), looked_ms);
        self.propose(Saving::Demonstration, vec![Event::DemonstrationTried(tried)])
    }

    /// A try, or the help of the agent, is kept: what comes next.
    pub(super) fn demo_saved(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some((caution, by)) = self.demonstrated(ctx) else { return Action::None };
        let Some(hall) = ctx.hall else { return Action::None };
        let reply = self.demo.as_ref().and_then(|demo| demo.reply.clone());
        match hall.walk.demonstrating(caution, by) {
            Demonstrating::Due(due) | Demonstrating::Help(due) => {
                let said = reply.map(|r| (r.say, r.right));
                let of_this =
                    |d: &State| d.of.demonstration == due.demonstration.id && d.of.part == due.part.id;
                // What was said of another part is kept only when it is a remark to be read.
                let same = self.demo.as_ref().is_some_and(of_this);
                let said = said.filter(|(_, right)| same || *right);
                // The help of the agent clears what was said before.
                let helped = self.demo.as_ref().is_some_and(|d| d.is_of(&due));
                self.demo = Some(State::new(&due, ctx, said.filter(|_| !helped)));
                self.turn += 1;
                Action::None
            }
            // A remark after the last part is read before the page goes.
            Demonstrating::Passed if reply.is_some() => Action::None,
            Demonstrating::Passed => self.answer(ctx, Answer::Demonstrate),
            Demonstrating::None => Action::None,
        }
    }
}
