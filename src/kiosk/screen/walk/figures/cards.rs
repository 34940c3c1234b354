//! The cards of figures on the page of a step.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::super::{Message, Page, SheetKind, fit};
use super::{Card, Lack};
use crate::figures::{Detail, Figure, Outcome, say_projection, value_text};
use crate::kiosk::theme::{Gap, Look, Type, style};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::words::{Args, Reader, Words};

/// Side of the sign that leads on, as written.
const ON: f32 = 22.0;
/// Inputs that a card names first, the most telling before.
const TELLING: [&str; 9] = [
    "trip.house_volts",
    "trip.start.fuel",
    "trip.start.propane",
    "trip.people",
    "trip.highest",
    "trip.coldest",
    "trip.start.fresh",
    "trip.slope.side",
    "trip.supply",
];

/// A number of a figure: what it is of, where there are several, and the number in words.
pub(in crate::kiosk) struct Number {
    /// What it is of; empty where there is one.
    pub of: String,
    /// With its measure.
    pub value: String,
    /// The letters it is set in: large ones for a number, smaller ones for a sentence.
    role: Type,
}

/// The numbers that a card shows.
pub(in crate::kiosk) fn numbers(words: &Words, reader: &Reader, figure: &Figure) -> Vec<Number> {
    if let Detail::Projection(projection) = &figure.detail {
        let value = say_projection(words, reader, projection).first;
        return vec![Number { of: String::new(), value, role: Type::Strong }];
    }
    if figure.verdict.is_some() || figure.outcomes.is_empty() {
        let value = value_text(words, reader, figure);
        return vec![Number { of: String::new(), value, role: Type::Strong }];
    }
    // Nobody has said what is to be on: the limits are what there is to tell.
    let telling = |o: &&Outcome| {
        !matches!(figure.detail, Detail::Loads(_)) || o.of.as_deref().is_some_and(|of| of.starts_with("most"))
    };
    let alone = |outcome: &Outcome| {
        let of = outcome.of.as_deref().map(|of| {
            let said = words.try_say(reader, &format!("part-{of}"), &Args::new());
            said.unwrap_or_else(|_| of.to_owned())
        });
        let outcome = Outcome { of: None, ..outcome.clone() };
        let one = Figure { outcomes: vec![outcome], detail: Detail::None, ..figure.clone() };
        Number { of: of.unwrap_or_default(), value: value_text(words, reader, &one), role: Type::Figure }
    };
    figure.outcomes.iter().filter(telling).map(alone).collect()
}

/// What a card says, in the words of the renter.
struct Face {
    title: String,
    numbers: Vec<Number>,
    basis: String,
}

impl<'a> Page<'a> {
    /// Who reads the figures: the renter, in their language and measures.
    pub(super) fn figure_reader(&self) -> Reader {
        self.renter.as_ref().map_or_else(|| self.ctx.settings.staff.clone(), |s| s.reader().clone())
    }

    /// Words for whoever reads the figures.
    pub(super) fn say_figure(&self, key: &str, args: &Args) -> String {
        self.ctx.scripts.words.say(&self.figure_reader(), key, args)
    }

    /// All figures of the step, below a label; nothing where none show.
    pub(in super::super) fn figures(&self, width: f32) -> Option<Element<'a, Message>> {
        let look = &self.ctx.look;
        if self.state.figures.is_empty() {
            return None;
        }
        let cards = self.faces().map(|card| self.card(card, width));
        let label = ui::label(look, self.say_figure("walk-figures", &Args::new()));
        let cards = Column::with_children(cards).spacing(look.gap(Gap::Small));
        Some(column![label, cards].spacing(look.gap(Gap::Small)).width(Length::Fill).into())
    }

    /// About how high the figures stand at a width.
    pub(in super::super) fn figures_height(&self, width: f32) -> f32 {
        let look = &self.ctx.look;
        let one = |card: &Card| {
            let face = self.face(card);
            let inner = inner(look, width);
            let text = |role, words: &str, width| fit::room(look, role, words, width).height;
            let numbers: f32 = face.numbers.iter().map(|n| text(n.role, &n.value, inner)).sum();
            let beside = beside(look, &face, inner);
            let left = beside.map_or(inner, |taken| inner - taken);
            let words = text(Type::Small, &face.title, left) + text(Type::Small, &face.basis, left);
            let content = if beside.is_some() { words.max(numbers) } else { words + numbers };
            look.target().max(content + 2.0 * look.gap(Gap::Small)) + look.gap(Gap::Small)
        };
        let label = look.size(Type::Label) * 1.3 + look.gap(Gap::Large);
        let all: f32 = self.faces().map(one).sum();
        if self.state.figures.is_empty() { 0.0 } else { all + label }
    }

    /// The cards that are shown as one with this card.
    fn sharing<'c>(&'c self, card: &'c Card) -> impl Iterator<Item = &'c Card> {
        let same = move |other: &&Card| {
            if card.lack.is_some() { other.lack == card.lack } else { other.figure.id == card.figure.id }
        };
        self.state.figures.iter().filter(same)
    }

    /// The first card of all that are shown as one.
    fn faces(&self) -> impl Iterator<Item = &Card> {
        let first =
            |card: &&Card| self.sharing(card).next().is_some_and(|first| first.figure.id == card.figure.id);
        self.state.figures.iter().filter(first)
    }

    fn face(&self, card: &Card) -> Face {
        let (words, reader) = (&self.ctx.scripts.words, self.figure_reader());
        let titles: Vec<String> = self
            .sharing(card)
            .map(|card| words.say(&reader, &format!("figure-{}", card.figure.id), &Args::new()))
            .collect();
        let title = titles.join("\n");
        match &card.lack {
            None => Face {
                title,
                numbers: numbers(words, &reader, &card.figure),
                basis: self.basis(&card.figure),
            },
            Some(lack) => {
                let value = value_text(words, &reader, &card.figure);
                let numbers = vec![Number { of: String::new(), value, role: Type::Small }];
                Face { title, numbers, basis: self.way_out(lack) }
            }
        }
    }

    /// What a figure rests on, in one line.
    fn basis(&self, figure: &Figure) -> String {
        let (words, reader) = (&self.ctx.scripts.words, self.figure_reader());
        let inputs = || figure.inputs.iter().filter(|i| matches!(i.from, "trip" | "reading"));
        let named = TELLING.iter().find_map(|name| inputs().find(|input| input.name == *name));
        let Some(input) = named.or_else(|| inputs().next()) else {
            let from = figure.inputs.first().map_or("sheet", |input| input.from);
            return words.say(&reader, &format!("walk-figure-from-{from}"), &Args::new());
        };
        if input.name == "trip.people" {
            let count = input.quantity.map(|q| q.amount()).unwrap_or_default();
            return words.say(&reader, "walk-figure-people", &Args::new().number("count", count));
        }
        let explained = crate::figures::explain(words, &reader, figure);
        let at = figure.inputs.iter().position(|other| other == input).unwrap_or(0);
        let Some(told) = explained.inputs.into_iter().nth(at) else { return String::new() };
        let key = if input.from == "reading" { "walk-figure-read" } else { "walk-figure-planned" };
        words.say(&reader, key, &Args::new().text("name", told.name).text("value", told.value))
    }

    /// What to do where a figure lacks something: words for staff, who do it.
    fn way_out(&self, lack: &Lack) -> String {
        match lack {
            Lack::Plan => self.ctx.say("walk-figure-plan"),
            Lack::Reading { reading, .. } => {
                let reading = self.say_unit(&format!("reading-{reading}"));
                self.ctx.say_with("walk-figure-take", &Args::new().text("reading", reading))
            }
        }
    }

    /// Where a tap on a card leads.
    fn leads(&self, card: &Card) -> Option<Message> {
        match &card.lack {
            None => Some(Message::SheetAsked(SheetKind::Figure(card.figure.id.to_owned()))),
            Some(Lack::Plan) => None,
            Some(Lack::Reading { step, .. }) if *step == self.state.step => {
                Some(Message::SheetAsked(SheetKind::Readings))
            }
            Some(Lack::Reading { step, .. }) => Some(Message::StepChosen(*step)),
        }
    }

    fn card(&self, card: &Card, width: f32) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let colors = look.colors();
        let face = self.face(card);
        let taken = beside(look, &face, inner(look, width));
        let message = self.leads(card);
        let on = message.as_ref().map(|_| ui::symbol(look, Symbol::Right, ON));
        let title = ui::small(look, face.title).color(look.ink()).width(Length::Fill);
        let basis =
            if card.lack.is_some() { ui::strong(look, face.basis) } else { ui::small(look, face.basis) };
        let basis = basis.width(Length::Fill);
        let line = match taken {
            Some(taken) => {
                // A row that may wrap takes all it is given.
                let numbers = Column::with_children(face.numbers.into_iter().map(|n| number(look, n)));
                let numbers = numbers.width(taken - look.gap(Gap::Medium));
                let left = column![title, basis].width(Length::Fill);
                row![left, numbers.align_x(Alignment::End)].push(on)
            }
            None => {
                let numbers = Column::with_children(face.numbers.into_iter().map(|n| number(look, n)));
                row![column![title, numbers.width(Length::Fill), basis].width(Length::Fill)].push(on)
            }
        };
        let line = line.spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
        let edge = if message.is_some() { colors.edge } else { colors.line };
        let ground = style::ground(look, colors.leaf, edge);
        let face = container(line)
            .padding([look.gap(Gap::Small), look.gap(Gap::Large)])
            .width(Length::Fill)
            .style(move |_| ground);
        let face = ui::at_least(look.target(), face.align_y(Alignment::Center).into());
        match message {
            Some(message) => ui::tap(look, face, message).into(),
            None => face,
        }
    }
}

/// A number as it stands, behind what it is of.
pub(super) fn number<'a>(look: &Look, number: Number) -> Element<'a, Message> {
    let value = ui::text(look, number.role, number.value).color(look.ink());
    if number.of.is_empty() {
        return value.into();
    }
    row![ui::small(look, number.of), value]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center)
        .wrap()
        .into()
}

/// Room for words in a card.
fn inner(look: &Look, width: f32) -> f32 {
    width - 2.0 * look.gap(Gap::Large) - look.px(ON) - look.gap(Gap::Medium)
}

/// The room that numbers take beside the words, if there is enough for both without a torn word.
fn beside(look: &Look, face: &Face, inner: f32) -> Option<f32> {
    if face.numbers.iter().any(|number| number.role != Type::Figure) {
        return None;
    }
    let wide = |role, words: &str| fit::room(look, role, words, f32::INFINITY).width;
    let numbers = face.numbers.iter().map(|n| {
        let of = if n.of.is_empty() { 0.0 } else { wide(Type::Small, &n.of) + look.gap(Gap::Small) };
        of + wide(n.role, &n.value)
    });
    let taken = numbers.fold(0.0, f32::max) + look.gap(Gap::Medium) + look.px(2.0);
    let torn = [&face.title, &face.basis].into_iter().any(|w| {
        let all = wide(Type::Small, w);
        let least = (fit::longest_word(look, Type::Small, w) * 1.1).max((all / 2.0).min(inner));
        // Words in less than a third of the card stand as a tower.
        least.max(inner / 3.0) > inner - taken
    });
    (!torn).then_some(taken)
}
