//! The words of a step: its title, what to show, what to know, remarks for this unit; and what is missing.

use iced::widget::{Column, column, row};
use iced::{Alignment, Length};

use super::{Message, Page, fit};
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::{Gap, Look, Type};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::Zone;
use crate::walk::{Missing, StepState};
use crate::words::{Args, format};

/// The words of a step as they stand on the page.
pub(super) struct Text {
    title: String,
    show: Vec<String>,
    know: Vec<String>,
    notes: Vec<String>,
}

/// The letters that lines are set in.
#[derive(Debug, Clone, Copy)]
pub(super) struct Letters {
    look: Look,
    role: Type,
}

impl Letters {
    /// As running text is set.
    pub const fn usual(look: &Look) -> Self {
        Self { look: *look, role: Type::Body }
    }

    fn size(self) -> f32 {
        self.look.size(self.role)
    }

    /// The room of a number before a line.
    fn indent(self) -> f32 {
        self.look.size(self.role) * 1.35
    }

    fn text<'a>(self, content: String) -> ui::words::Text<'a> {
        ui::text(&self.look, self.role, content).color(self.look.ink()).width(Length::Fill)
    }
}

impl Text {
    /// The largest letters in which it fits: nobody reads small ones at arm's length who need not. Where none do,
    /// it scrolls in the usual ones.
    pub fn largest(&self, look: &Look, width: f32, height: f32) -> Letters {
        let larger = Letters { look: look.larger(), role: Type::Lead };
        let usual = [Type::Lead, Type::Body, Type::Small].map(|role| Letters { look: *look, role });
        let fits = |letters: &Letters| self.height(*letters, width) <= height;
        std::iter::once(larger).chain(usual).find(fits).unwrap_or(Letters::usual(look))
    }

    /// The letters where something stands below that takes `below`: it may shrink them to running text, never
    /// further.
    pub fn beside(&self, look: &Look, width: f32, height: f32, below: f32) -> Letters {
        let alone = self.largest(look, width, height);
        let usual = Letters::usual(look);
        let sizes = [Letters { role: Type::Lead, ..usual }, usual];
        if alone.size() <= usual.size() || self.height(alone, width) <= height - below {
            return alone;
        }
        let fits = |letters: &Letters| self.height(*letters, width) <= height - below;
        sizes.into_iter().find(fits).unwrap_or(usual)
    }

    /// The height it takes at a width.
    pub fn height(&self, letters: Letters, width: f32) -> f32 {
        let Letters { look, role } = letters;
        let inner = width - letters.indent();
        let lines = |all: &[String], width: f32| -> f32 {
            all.iter().map(|l| fit::room(&look, role, l, width).height + look.gap(Gap::Small)).sum()
        };
        let label = look.size(Type::Label) * 1.3 + look.gap(Gap::Large);
        let notes = if self.notes.is_empty() { 0.0 } else { lines(&self.notes, inner) + label * 2.0 };
        let title = fit::room(&look, Type::Title, &self.title, width).height;
        title + lines(&self.show, inner) + lines(&self.know, width) + notes + 2.0 * label
    }

    /// As it stands on the page.
    pub fn view<'a>(self, ctx: &Ctx<'a>, letters: Letters) -> Element<'a, Message> {
        let look = &ctx.look;
        let small = look.gap(Gap::Small);
        let show = (1_u16..).zip(self.show).map(|(number, line)| {
            let number = ctx.say_with("walk-line-number", &Args::new().number("number", number));
            row![letters.text(number).width(letters.indent()), letters.text(line)].into()
        });
        let know = self.know.into_iter().map(|line| letters.text(line).into());
        let part = |key: &str, lines: Column<'a, Message, iced::Theme, iced::Renderer>| {
            column![ui::label(look, ctx.say(key)), lines.spacing(small)].spacing(look.gap(Gap::Tiny))
        };
        let mut all = column![ui::title(look, self.title)].spacing(look.gap(Gap::Large)).width(Length::Fill);
        all = all.push(part("walk-show", Column::with_children(show)));
        all = all.push(part("walk-know", Column::with_children(know)));
        for note in self.notes {
            all = all.push(ui::note(look, ctx.say("walk-this-unit"), Some(note)));
        }
        all.into()
    }
}

impl<'a> Page<'a> {
    /// The words of the step: what to show for staff, what to know for the renter.
    pub(super) fn text(&self) -> Text {
        let step = self.step;
        let know = self.renter.as_ref().map(|s| step.know.iter().map(|k| s.say(k)).collect());
        let all = |keys: &[String]| keys.iter().map(|k| self.say_unit(k)).collect();
        Text {
            title: self.say_unit(&format!("step-{}", step.id)),
            show: all(&step.show),
            know: know.unwrap_or_default(),
            notes: all(&step.notes),
        }
    }

    /// Where it is, in the words of this unit.
    pub(super) fn place(&self) -> Option<Element<'a, Message>> {
        if super::way::zone(self.walk(), self.state.step) == Zone::Desk {
            return None;
        }
        let sheet = self.hall.scripts.units.get(&self.walk().route().unit)?;
        let place = sheet.value.places.get(&self.step.place)?;
        let own = place.value.words.as_ref().map(|w| w.value.clone());
        let key = own.unwrap_or_else(|| format!("place-{}", self.step.place));
        // The leaving check goes once around, wherever its step is placed.
        let words = self.say_unit(if self.step.leaving.is_empty() { &key } else { "place-around" });
        let line = self.ctx.say_with("walk-where", &Args::new().text("place", words));
        Some(ui::small(&self.ctx.look, line).width(Length::Fill).into())
    }

    /// Questions that were noted at this step.
    pub(super) fn asked(&self) -> Option<Element<'a, Message>> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let asked = self.walk().questions().iter().filter(|q| q.value.step == self.step.id);
        let lines: Vec<Element<'a, Message>> = asked
            .map(|q| {
                let key = if q.value.answered { "walk-asked" } else { "walk-asked-open" };
                let text = q.value.text.trim();
                let text = if text.is_empty() { ctx.say("walk-asked-no-words") } else { text.to_owned() };
                let line = ctx.say_with(key, &Args::new().text("text", text));
                row![ui::symbol(look, Symbol::Question, 24.0), ui::small(look, line).width(Length::Fill)]
                    .spacing(look.gap(Gap::Small))
                    .into()
            })
            .collect();
        (!lines.is_empty()).then(|| Column::with_children(lines).spacing(look.gap(Gap::Small)).into())
    }

    /// What is still missing at this stop, of the steps that were passed.
    pub(super) fn still_missing(&self) -> Option<Element<'a, Message>> {
        let (look, ctx, walk) = (&self.ctx.look, &self.ctx, self.walk());
        let route = walk.route();
        let stop = route.stop_of(self.state.step).and_then(|i| route.stops.get(i))?;
        let next = super::way::onward(walk, self.state.step);
        let passed = stop.steps.clone().filter(|i| {
            // Where the walk goes anyway, nothing is missing yet.
            if next == super::way::Onward::Step(*i) {
                return false;
            }
            let settled = route.steps.get(*i).is_some_and(|s| *walk.step_state(&s.id) != StepState::Open);
            settled || *i < self.state.step
        });
        let mut lines: Vec<String> =
            passed.flat_map(|i| walk.missing_at(i)).filter_map(|m| self.missing(&m)).collect();
        if self.step.kit && *walk.step_state(&self.step.id) != StepState::Open {
            let tally = walk.items_settled();
            let left = tally.all.saturating_sub(tally.done);
            lines.extend((left > 0).then(|| crate::kiosk::screen::counted(ctx, "walk-missing-items", left)));
        }
        if lines.is_empty() {
            return None;
        }
        let head = row![ui::symbol(look, Symbol::Alert, 26.0), ui::strong(look, ctx.say("walk-missing"))]
            .spacing(look.gap(Gap::Small))
            .align_y(Alignment::Center);
        let lines = lines.into_iter().map(|l| ui::small(look, l).width(Length::Fill).into());
        let all = column![head].extend(lines).spacing(look.gap(Gap::Tiny));
        Some(ui::panel(look, all).into())
    }

    /// How much is missing at this stop that should be done before the tablet changes hands.
    pub(super) fn open_at_stop(&self) -> usize {
        let route = self.walk().route();
        let stop = route.stop_of(self.state.step).and_then(|i| route.stops.get(i));
        stop.map_or(0, |stop| self.open_in(stop.steps.clone()))
    }

    /// How much is missing at this step that should be done before the next one.
    pub(super) fn open_here(&self) -> usize {
        self.open_in(self.state.step..self.state.step + 1)
    }

    fn open_in(&self, steps: std::ops::Range<usize>) -> usize {
        let walk = self.walk();
        let counts = |m: &Missing| {
            matches!(m, Missing::Reading { .. } | Missing::Leaving { .. } | Missing::LeavingNotGood { .. })
        };
        let missing = steps.clone().flat_map(|i| walk.missing_at(i)).filter(counts).count();
        let kit = walk.route().steps.get(steps).unwrap_or_default().iter().any(|s| s.kit);
        let items = walk.items_settled();
        missing + if kit { items.all.saturating_sub(items.done) } else { 0 }
    }

    /// One missing thing in words; answers of the step at hand stand in its own rows.
    fn missing(&self, missing: &Missing) -> Option<String> {
        let ctx = &self.ctx;
        let here = missing.step() == Some(self.step.id.as_str());
        let step = || self.say_unit(&format!("step-{}", missing.step().unwrap_or_default()));
        let args = Args::new().text("step", step());
        Some(match missing {
            Missing::Step { .. } => ctx.say_with("walk-missing-step", &args),
            // Answers are asked for at the end of the stop, all at once.
            Missing::Answer { .. } => return None,
            Missing::AnswerKept { .. } if here => return None,
            Missing::AnswerKept { caution, by, .. } => {
                let title = self.say_unit(&format!("caution-{caution}.title"));
                ctx.say_with(
                    "walk-missing-answer-kept",
                    &args.text("caution", title).text("who", self.name(*by)),
                )
            }
            Missing::Reading { reading, .. } => {
                let reading = self.say_unit(&format!("reading-{reading}"));
                ctx.say_with("walk-missing-reading", &args.text("reading", reading))
            }
            Missing::Leaving { item, .. } => ctx.say_with(
                "walk-missing-leaving",
                &args.text("line", self.say_unit(&format!("leaving-{item}"))),
            ),
            Missing::LeavingNotGood { item, .. } => {
                let line = self.say_unit(&format!("leaving-{item}"));
                ctx.say_with("walk-missing-leaving-not-good", &args.text("line", line))
            }
            _ => return None,
        })
    }

    /// Minutes as staff read them.
    pub(super) fn minutes(&self, minutes: u32) -> String {
        format::duration_minutes(&self.ctx.scripts.words, &self.ctx.settings.staff, minutes)
    }
}
