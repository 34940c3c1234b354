//! A topic, with all its words; and all cautions of the unit.

use iced::Length;
use iced::widget::{Column, column, container, row};

use super::{Message, Page, Show};
use crate::figures::{self, Figure, Given, State as Computed};
use crate::kiosk::screen::caution::grave as caution;
use crate::kiosk::screen::walk::figures::numbers;
use crate::kiosk::theme::{Gap, Look, Type};
use crate::kiosk::ui::{self, Element};
use crate::route::{Signal, Step};
use crate::words::Args;

/// Figures that speak of the height of the lot, of what is switched on, or of a full battery: where the renter is
/// they would mislead.
const NOT_HERE: [&str; 7] = [
    "generator_watts",
    "generator_dial",
    "loads_fit",
    "trip_projection",
    "awning_verdict",
    "battery_nights",
    "battery_days",
];

/// Whether a figure counts from full tanks: nobody knows what is left in them now.
pub(super) fn from_full(figure: &Figure) -> bool {
    figure.inputs.iter().any(|input| input.name.starts_with("assumed.start"))
}

impl<'a> Show<'a> {
    /// A topic.
    pub(super) fn topic(&self, id: &str) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let Some(step) = self.state.prepared.route.step(id) else { return self.home() };
        let text = self.speaker.step(step);
        let title = text.title.clone();
        let (know, shown) = self.topic_words(look, step, text);
        let seen = self.topic_seen(look, step);
        let cautions = self.topic_cautions(look, step);
        let all: Element<'a, Message> = if look.portrait() {
            column![seen, know].push(cautions).push(shown).spacing(look.gap(Gap::Wide)).into()
        } else {
            let left = column![know].push(cautions).push(shown).spacing(look.gap(Gap::Wide));
            let left = left.width(Length::FillPortion(56));
            row![left, container(seen).width(Length::FillPortion(44))].spacing(look.gap(Gap::Wide)).into()
        };
        self.paged(Some(title), all, None)
    }

    /// What to know, with remarks for this unit; and what staff show here.
    fn topic_words(
        &self,
        look: &Look,
        step: &Step,
        text: crate::script::StepText,
    ) -> (Element<'a, Message>, Element<'a, Message>) {
        let small = look.gap(Gap::Small);
        let part = |key: &str, lines: Vec<String>| {
            let lines = lines.into_iter().map(|line| ui::body(look, line).width(Length::Fill).into());
            let lines: Column<'a, Message, _, _> = Column::with_children(lines).spacing(small);
            column![ui::label(look, self.say(key)), lines].spacing(look.gap(Gap::Tiny))
        };
        let know = (!text.know.is_empty()).then(|| part("reread-know", text.know));
        let done = (!text.show.is_empty()).then(|| part("reread-done", text.show));
        let notes = text.notes.into_iter();
        let notes = notes.map(|note| ui::note(look, self.say("walk-this-unit"), Some(note)));
        let leaving: Vec<String> = step.leaving.iter().map(|l| self.say(&format!("leaving-{l}"))).collect();
        let leaving = (!leaving.is_empty()).then(|| part("reread-leaving", leaving));
        let wide = look.gap(Gap::Wide);
        let know = column![].push(know).extend(notes).push(leaving).spacing(wide).width(Length::Fill);
        (know.into(), column![].push(done).width(Length::Fill).into())
    }

    /// The picture, where it is, and the numbers.
    fn topic_seen(&self, look: &Look, step: &Step) -> Element<'a, Message> {
        let height = look.px(if look.portrait() { 300.0 } else { 330.0 });
        let missing = self.say("walk-no-picture");
        let picture = self.state.picture.as_ref();
        let picture = picture.map(|p| container(p.view(look, missing)).height(height).width(Length::Fill));
        let sheet = self.ctx.scripts.units.get(&self.state.unit);
        let place = sheet.and_then(|s| s.value.places.get(&step.place));
        let place = place.filter(|_| step.at.is_some()).map(|place| {
            let own = place.value.words.as_ref().map(|w| w.value.clone());
            let words = self.say(&own.unwrap_or_else(|| format!("place-{}", step.place)));
            ui::body(look, self.say_with("walk-where", Args::new().text("place", words))).width(Length::Fill)
        });
        column![]
            .push(picture)
            .push(place)
            .push(self.topic_numbers(look, step))
            .spacing(look.gap(Gap::Medium))
            .into()
    }

    /// The figures of the step that hold for every trip.
    fn topic_numbers(&self, look: &Look, step: &Step) -> Option<Element<'a, Message>> {
        let facts = self.ctx.scripts.facts(&self.state.unit)?;
        let given = Given { facts: &facts, trip: None };
        let named = step.figures.iter().filter(|id| !NOT_HERE.contains(&id.as_str()));
        let computed = named
            .filter_map(|id| figures::one(id, given))
            .filter(|f| f.state == Computed::Ok && !from_full(f));
        let cards: Vec<Element<'a, Message>> = computed.map(|f| self.figure(look, &f)).collect();
        let label = ui::label(look, self.say("reread-numbers-here"));
        let cards =
            (!cards.is_empty()).then(|| Column::with_children(cards).spacing(look.gap(Gap::Small)))?;
        Some(column![label, cards].spacing(look.gap(Gap::Tiny)).into())
    }

    /// A figure: its name and its numbers.
    pub(super) fn figure(&self, look: &Look, figure: &Figure) -> Element<'a, Message> {
        let (words, reader) = (&self.ctx.scripts.words, &self.state.reader);
        let lines = numbers(words, reader, figure).into_iter().map(|number| {
            if number.of.is_empty() {
                number.value
            } else {
                self.say_with(
                    "reread-number-of",
                    Args::new().text("of", number.of).text("value", number.value),
                )
            }
        });
        self.number(look, self.say(&format!("figure-{}", figure.id)), lines.collect())
    }

    /// A number, or several, below their name.
    pub(super) fn number(&self, look: &Look, name: String, values: Vec<String>) -> Element<'a, Message> {
        // Long ones are sentences rather than numbers.
        let role = |value: &String| if value.chars().count() > 26 { Type::Strong } else { Type::Figure };
        let values = values.into_iter().map(|v| {
            let role = role(&v);
            ui::text(look, role, v).color(look.ink()).width(Length::Fill).into()
        });
        let name = ui::small(look, name).color(look.ink()).width(Length::Fill);
        ui::panel(look, column![name].extend(values).spacing(look.gap(Gap::Tiny))).into()
    }

    fn topic_cautions(&self, look: &Look, step: &Step) -> Option<Element<'a, Message>> {
        if step.cautions.is_empty() {
            return None;
        }
        let panels = step.cautions.iter().map(|c| self.caution_panel(look, &c.id, c.signal, c.hazard, false));
        let panels = Column::with_children(panels).spacing(look.gap(Gap::Medium));
        let label = ui::label(look, self.say("reread-caution-labels"));
        let print = ui::small(look, self.say("reread-small-print"));
        Some(column![label, panels, print].spacing(look.gap(Gap::Small)).width(Length::Fill).into())
    }

    /// All cautions: the gravest first, each leading to its topic.
    pub(super) fn cautions(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let steps = &self.state.prepared.route.steps;
        let signals = [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice];
        let mut rows = Vec::new();
        for signal in signals {
            for step in steps {
                for c in step.cautions.iter().filter(|c| c.signal == signal) {
                    let text = self.speaker.caution(c);
                    let message = Message::PageChosen(Page::Topic(step.id.clone()));
                    let words = (caution::signal(signal), text.signal);
                    let end = iced::widget::Space::new();
                    let card = ui::caution_card(look, words, (text.hazard, text.avoid), end, Some(message));
                    rows.push(card);
                }
            }
        }
        let all = self.columns(look, rows);
        self.paged(Some(self.say("reread-all-cautions")), all, None)
    }
}
