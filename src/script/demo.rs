//! Demonstrations: small tasks in which a renter shows that they understood.
//!
//! [`DemoForm`] is what people write in `walkthroughs/demonstrations/<id>.ron`. [`Demonstration::on`] makes of it
//! what one unit asks: conditions are settled, and whatever has a number is judged by the figures of that unit.
//! From there on everything is pure: [`Part::judge`] says whether a try is right, [`Part::order_shown`] in which
//! order things stand on the page, [`Part::model_answer`] how it is done.

mod form;
mod given;
mod judge;
mod loads;
mod on;
mod order;
mod said;
mod seats;
mod shuffle;
mod solve;

pub use form::{
    CardForm, ChoiceForm, ChooseForm, DemoForm, EarlyForm, MissingForm, OrderForm, OutForm, PartForm,
    PlacingForm, PointForm, RiderForm, SeatsForm, SetForm, SetRight, SpotForm, Surface, TaskForm,
    TogetherForm, TogetherWrong, Truth,
};
pub use given::Given;
pub use judge::{SHOW_AGAIN, Try, Verdict, Wrong};
pub use said::{DemoText, Named};
pub use seats::Rider;

use crate::figures::loads::{Item, Limits};
use crate::measure::Quantity;

/// A message with values of its own, beside those of the unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// Key of the message.
    pub key: String,
    /// Values by the names of their variables.
    pub with: Vec<(String, Carried)>,
}

/// A value that a message carries.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Carried {
    /// Said in the reader's measures.
    Measured(Quantity),
    /// Said as it is written, since it stands so on a sign.
    Written(Quantity),
    /// A whole number.
    Count(i32),
}

/// A demonstration as one unit asks it.
#[derive(Debug, Clone, PartialEq)]
pub struct Demonstration {
    /// Id.
    pub id: String,
    /// Parts in sequence; never empty.
    pub parts: Vec<Part>,
}

/// One page of a demonstration: a question and what it is answered with.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Id within the demonstration.
    pub id: String,
    /// The question.
    pub prompt: Said,
    /// Picture beside the question; for [`Surface::Picture`] the one that is pointed at.
    pub picture: Option<String>,
    /// What is to be done.
    pub task: Task,
}

/// What is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum Task {
    /// Cards are put in order.
    Order(Order),
    /// Cards are sorted into bins; a bin takes any number of cards.
    Sort(Placing),
    /// Each thing on the left gets one on the right; one on the right may serve several, or none.
    Match(Placing),
    /// People are given seats; a seat takes one of them.
    Seats(Placing),
    /// One choice, or all that hold.
    Choose(Choosing),
    /// Loads that run together on a supply.
    Together(Together),
    /// A number is set.
    Set(Setting),
    /// Something is pointed at.
    Point(Pointing),
    /// It is shown on the unit itself; the agent says whether it was.
    Show,
}

/// Something with a name on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// Id within the part.
    pub id: String,
    /// Its words.
    pub name: Said,
}

/// Cards to put in order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Order {
    /// All cards, also those that stay out.
    pub cards: Vec<Card>,
    /// Cards that must not be used, and what is said when they are.
    pub out: Vec<(String, Said)>,
    /// Which card comes before which.
    pub before: Vec<(String, String)>,
    /// A card laid before another, and what is said then; the first that fits is said.
    pub early: Vec<Early>,
    /// A card left out, and what is said then.
    pub missing: Vec<(String, Said)>,
    /// Said where nothing else fits.
    pub otherwise: Said,
}

/// A card that is laid while another one is still missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Early {
    /// The card that is laid.
    pub card: String,
    /// The card that should lie already.
    pub before: String,
    /// What is said.
    pub say: Said,
}

/// Cards to put somewhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placing {
    /// Cards with where they belong.
    pub cards: Vec<Placed>,
    /// Where they can go: bins, things on the right, seats.
    pub into: Vec<Card>,
    /// For seats, which take one person each: what is said when somebody has none left.
    pub once: Option<Said>,
}

/// A card and where it belongs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placed {
    /// The card.
    pub card: Card,
    /// Where it belongs: any of these.
    pub right: Vec<String>,
    /// Where it may go as well, and what is said then.
    pub also: Vec<(String, Said)>,
    /// What is said when it goes there.
    pub wrong: Vec<(String, Said)>,
    /// What is said when it goes anywhere else.
    pub otherwise: Said,
}

/// One of the choices.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// The choice.
    pub card: Card,
    /// Whether it holds.
    pub right: bool,
    /// What is said when it is chosen and does not hold.
    pub wrong: Said,
}

/// Choices.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choosing {
    /// The choices.
    pub choices: Vec<Choice>,
    /// Whether all that hold are asked for; otherwise one of them is.
    pub all: bool,
    /// What is said when too little is chosen.
    pub otherwise: Said,
}

/// Loads that run together, judged by the rule of the figure `loads_fit`.
#[derive(Debug, Clone, PartialEq)]
pub struct Together {
    /// Loads to choose from.
    pub loads: Vec<(Card, Item)>,
    /// Loads that run in any case, as the charger does.
    pub always: Vec<Item>,
    /// What the supply gives.
    pub limits: Limits,
    /// Loads that do not run together, and what is said then; the first set that is on and does not fit is said.
    pub wrong: Vec<(Vec<String>, Said)>,
    /// What is said when nothing is on.
    pub none: Said,
    /// Said where nothing else fits.
    pub otherwise: Said,
}

/// A number to set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Setting {
    /// Smallest.
    pub from: i32,
    /// Largest.
    pub to: i32,
    /// From one to the next.
    pub step: i32,
    /// The number that is right.
    pub right: i32,
    /// Smallest that is taken as right.
    pub least: i32,
    /// Key of the words round the number, with `$number` and `$number_n` in it.
    pub value: String,
    /// What is said when it is too much.
    pub over: Said,
    /// What is said when it is too little.
    pub under: Said,
}

/// Something to point at.
#[derive(Debug, Clone, PartialEq)]
pub struct Pointing {
    /// Where.
    pub on: Surface,
    /// What can be hit, in the order of the file.
    pub spots: Vec<Spot>,
    /// Whether all that are right are asked for; otherwise one of them is.
    pub all: bool,
    /// What is said when too little is pointed at.
    pub otherwise: Said,
}

/// Something that can be hit.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// What it is.
    pub choice: Choice,
    /// On the plan: inches from the middle line and from the nose. In a picture: thousandths of its width and height.
    pub at: (f64, f64),
}

impl Part {
    /// What stands on the page in an order of its own: cards, choices, spots, loads. Empty where a number is set or
    /// something is shown.
    #[must_use]
    pub fn items(&self) -> Vec<&Card> {
        match &self.task {
            Task::Order(order) => order.cards.iter().collect(),
            Task::Sort(placing) | Task::Match(placing) | Task::Seats(placing) => {
                placing.cards.iter().map(|c| &c.card).collect()
            }
            Task::Choose(choosing) => choosing.choices.iter().map(|c| &c.card).collect(),
            Task::Together(together) => together.loads.iter().map(|(card, _)| card).collect(),
            Task::Point(pointing) => pointing.spots.iter().map(|s| &s.choice.card).collect(),
            Task::Set(_) | Task::Show => Vec::new(),
        }
    }

    /// Every message of the part: question, items, places and all that may be said after a try.
    #[must_use]
    pub fn all_said(&self) -> Vec<&Said> {
        let mut all = vec![&self.prompt];
        all.extend(self.items().into_iter().map(|card| &card.name));
        all.extend(self.places().iter().map(|card| &card.name));
        match &self.task {
            Task::Order(order) => {
                all.extend(order.out.iter().chain(&order.missing).map(|(_, say)| say));
                all.extend(order.early.iter().map(|e| &e.say));
                all.push(&order.otherwise);
            }
            Task::Sort(placing) | Task::Match(placing) | Task::Seats(placing) => {
                all.extend(
                    placing.cards.iter().flat_map(|c| c.also.iter().chain(&c.wrong)).map(|(_, say)| say),
                );
                all.extend(placing.cards.iter().map(|c| &c.otherwise).chain(&placing.once));
            }
            Task::Choose(choosing) => {
                all.extend(choosing.choices.iter().filter(|c| !c.right).map(|c| &c.wrong));
                all.extend(choosing.all.then_some(&choosing.otherwise));
            }
            // Its replies get their sums as they are said.
            Task::Together(_) | Task::Show => {}
            Task::Set(setting) => all.extend([&setting.over, &setting.under]),
            Task::Point(pointing) => {
                all.extend(pointing.spots.iter().filter(|s| !s.choice.right).map(|s| &s.choice.wrong));
                all.extend(pointing.all.then_some(&pointing.otherwise));
            }
        }
        all
    }

    /// Where cards can go: bins, things on the right, seats; in the order of the file.
    #[must_use]
    pub fn places(&self) -> &[Card] {
        match &self.task {
            Task::Sort(placing) | Task::Match(placing) | Task::Seats(placing) => &placing.into,
            _ => &[],
        }
    }
}

impl Demonstration {
    /// The part of this id.
    #[must_use]
    pub fn part(&self, id: &str) -> Option<&Part> {
        self.parts.iter().find(|part| part.id == id)
    }
}
