//! A demonstration as people write it.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::measure::Ratio;
use crate::source::At;
use crate::unit::When;

use super::super::form::Guarded;
use super::given::Given;
use super::seats::Rider;

/// A file of a demonstration. Its words are `demo-<id>-<part>` for a question, `demo-<id>-card-<card>`,
/// `demo-<id>-into-<place>` and `demo-<id>-say-<reply>`.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DemoForm {
    /// Id, as the file is named.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Parts in sequence.
    pub parts: Vec<At<PartForm>>,
}

/// A part of a demonstration.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartForm {
    /// Id within the demonstration.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Picture.
    #[serde(default, alias = "picture?")]
    pub picture: Option<At<String>>,
    /// Pictures for other equipment: the first whose condition holds is shown instead.
    #[serde(default, alias = "instead?")]
    pub instead: Vec<Guarded>,
    /// What the question takes as given.
    #[serde(default, alias = "given?")]
    pub given: Given,
    /// What is to be done.
    pub task: TaskForm,
}

impl PartForm {
    /// All pictures that it names.
    pub fn pictures(&self) -> impl Iterator<Item = &At<String>> {
        self.picture.iter().chain(self.instead.iter().map(|other| &other.name))
    }
}

/// What is to be done.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub enum TaskForm {
    /// Put cards in order.
    Order(OrderForm),
    /// Sort cards into bins.
    Sort(PlacingForm),
    /// Match left to right.
    Match(PlacingForm),
    /// Give people seats.
    Seats(SeatsForm),
    /// Choose one or all.
    Choose(ChooseForm),
    /// Switch on what runs together.
    Together(TogetherForm),
    /// Set a number.
    Set(SetForm),
    /// Point at something.
    Point(PointForm),
    /// Show it on the unit.
    Show,
}

/// Cards to put in order.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OrderForm {
    /// Cards that are used.
    pub cards: Vec<Guarded>,
    /// Cards that must stay out.
    #[serde(default, alias = "out?")]
    pub out: Vec<OutForm>,
    /// Lists of cards, each of which comes before the next.
    pub before: Vec<Vec<At<String>>>,
    /// What is said of a card that is laid too early; the first that fits is said.
    #[serde(default, alias = "early?")]
    pub early: Vec<EarlyForm>,
    /// What is said of a card that is left out.
    #[serde(default, alias = "missing?")]
    pub missing: Vec<MissingForm>,
    /// What is said where nothing else fits.
    pub otherwise: At<String>,
}

/// A card that must stay out.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OutForm {
    /// The card.
    pub card: At<String>,
    /// What is said when it is used.
    pub say: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
}

/// A card that is laid before another.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EarlyForm {
    /// The card that is laid.
    pub card: At<String>,
    /// The card that should lie already.
    pub before: At<String>,
    /// What is said.
    pub say: At<String>,
}

/// A card that is left out.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MissingForm {
    /// The card.
    pub card: At<String>,
    /// What is said.
    pub say: At<String>,
}

/// Cards to sort or to match.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlacingForm {
    /// Cards.
    pub cards: Vec<At<CardForm>>,
    /// Where they can go.
    pub into: Vec<Guarded>,
    /// Figure whose verdict is where a card belongs; without it each card says so.
    #[serde(default, alias = "judge?")]
    pub judge: Option<At<String>>,
    /// A place that is always taken as right, and what is said then.
    #[serde(default, alias = "also_right?")]
    pub also_right: Option<(At<String>, At<String>)>,
    /// What is said where nothing else fits.
    pub otherwise: At<String>,
}

/// A card to put somewhere.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CardForm {
    /// Id within the part.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// What the card takes as given, for a figure and for its words.
    #[serde(default, alias = "given?")]
    pub given: Given,
    /// Where it belongs: the first whose condition holds.
    #[serde(default, alias = "to?")]
    pub to: Vec<Guarded>,
    /// What is said when it goes elsewhere, by place.
    #[serde(default, alias = "say?")]
    pub say: BTreeMap<String, At<String>>,
}

/// People to seat.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SeatsForm {
    /// People; as many of the first as the unit has belts.
    pub people: Vec<At<RiderForm>>,
    /// What is said of a seat without a belt.
    pub no_belt: At<String>,
    /// What is said of a child who faces the rear in front of an airbag.
    pub airbag: At<String>,
    /// What is said of a child on a seat that is not marked for child seats.
    pub not_marked: At<String>,
    /// What is said of somebody at the wheel who is no adult.
    pub driver: At<String>,
    /// What is said when somebody else then has no seat left.
    pub no_room: At<String>,
}

/// One of the people to seat.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RiderForm {
    /// Id within the part.
    pub id: At<String>,
    /// How they ride.
    pub rides: Rider,
}

/// Choices.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChooseForm {
    /// The choices.
    pub choices: Vec<At<ChoiceForm>>,
    /// Whether all that hold are asked for.
    #[serde(default, alias = "all?")]
    pub all: bool,
    /// What is said where nothing else fits.
    pub otherwise: At<String>,
}

/// Whether something holds on a unit.
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
pub enum Truth {
    /// Never.
    #[default]
    No,
    /// Always.
    Yes,
    /// On a unit with such equipment.
    If(When),
    /// Where these loads run together on the supply that the part gives.
    Fits(Vec<At<String>>),
}

/// A choice.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChoiceForm {
    /// Id within the part.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Whether it holds.
    #[serde(default, alias = "right?")]
    pub right: Truth,
    /// What is said when it is chosen and does not hold.
    #[serde(default, alias = "say?")]
    pub say: Option<At<String>>,
}

/// Loads on a supply.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TogetherForm {
    /// Loads to choose from; those that the unit does not have are left out.
    pub loads: Vec<Guarded>,
    /// Loads that do not run together, and what is said then.
    #[serde(default, alias = "wrong?")]
    pub wrong: Vec<TogetherWrong>,
    /// What is said when nothing is on.
    pub none: At<String>,
    /// What is said where nothing else fits.
    pub otherwise: At<String>,
}

/// Loads that do not run together.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TogetherWrong {
    /// The loads.
    pub on: Vec<At<String>>,
    /// What is said.
    pub say: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
}

/// A number to set.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SetForm {
    /// Smallest.
    pub from: i32,
    /// Largest.
    pub to: i32,
    /// From one to the next.
    #[serde(default = "one", alias = "step?")]
    pub step: i32,
    /// What is right.
    pub right: SetRight,
    /// How much less is taken as right.
    #[serde(default, alias = "less?")]
    pub less: Option<Ratio>,
    /// Whether the number rounded down is taken as right.
    #[serde(default, alias = "down?")]
    pub down: bool,
    /// What is said when it is too much.
    pub over: At<String>,
    /// What is said when it is too little.
    pub under: At<String>,
}

const fn one() -> i32 {
    1
}

/// The number that is right.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub enum SetRight {
    /// A figure.
    Figure(At<String>),
    /// A part of a figure, as `half-load`.
    Part(At<String>, At<String>),
    /// A fact that counts something.
    Fact(At<String>),
}

/// Where one points.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Surface {
    /// On the plan of the unit; spots are places of its sheet.
    Plan,
    /// In the picture of the part.
    Picture,
}

/// Something to point at.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PointForm {
    /// Where.
    pub on: Surface,
    /// What can be hit; a place that the unit does not have is left out.
    pub spots: Vec<At<SpotForm>>,
    /// Whether all that are right are asked for.
    #[serde(default, alias = "all?")]
    pub all: bool,
    /// What is said where nothing else fits.
    pub otherwise: At<String>,
}

/// Something that can be hit.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpotForm {
    /// Id within the part; on the plan, the place.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// In a picture: thousandths of its width and height.
    #[serde(default, alias = "at?")]
    pub at: Option<(u16, u16)>,
    /// Whether it is right.
    #[serde(default, alias = "right?")]
    pub right: Truth,
    /// What is said when it is not.
    #[serde(default, alias = "say?")]
    pub say: Option<At<String>>,
}
