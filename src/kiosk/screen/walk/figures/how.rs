//! *How we know*: what a figure came from, all of it.

use iced::widget::{Column, column, row};
use iced::{Alignment, Length};

use super::super::{Message, Page};
use super::cards::{number, numbers};
use super::{Card, loads};
use crate::figures::{self, Detail, Explained, ExplainedInput, Figure};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::words::Args;

/// Height of the lines of a trip, as written.
const PLOT: f32 = 280.0;

impl<'a> Page<'a> {
    /// The sheet of a figure that is shown on this step.
    pub(in super::super) fn figure_sheet(&self, card: &Card) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (words, reader) = (&self.ctx.scripts.words, self.figure_reader());
        let told = figures::explain(words, &reader, &card.figure);
        let values = numbers(words, &reader, &card.figure).into_iter().map(|n| number(look, n));
        let head = column![
            ui::label(look, self.say_figure("walk-how", &Args::new())),
            ui::section(look, told.title.clone()),
            Column::with_children(values),
        ]
        .spacing(look.gap(Gap::Small));
        let back = ui::primary(look, self.ctx.say("walk-figure-back"), Message::SheetClosed);
        column![head]
            .push(self.warned(&told))
            .extend(self.detail(&card.figure))
            .push(self.worked_out(&card.figure, &told))
            .push(self.inputs(&told.inputs))
            .push(self.rest(&told))
            .push(Element::from(back))
            .spacing(look.gap(Gap::Wide))
            .width(Length::Fill)
            .into()
    }

    fn part(&self, key: &str, lines: Vec<String>) -> Option<Element<'a, Message>> {
        let look = &self.ctx.look;
        let lines: Vec<String> = lines.into_iter().filter(|line| !line.is_empty()).collect();
        if lines.is_empty() {
            return None;
        }
        let lines = lines.into_iter().map(|line| ui::body(look, line).width(Length::Fill).into());
        let lines = Column::with_children(lines).spacing(look.gap(Gap::Small));
        let label = ui::label(look, self.say_figure(key, &Args::new()));
        Some(column![label, lines].spacing(look.gap(Gap::Tiny)).width(Length::Fill).into())
    }

    fn warned(&self, told: &Explained) -> Option<Element<'a, Message>> {
        (!told.caution.is_empty()).then(|| ui::note(&self.ctx.look, told.caution.clone(), None))
    }

    fn worked_out(&self, figure: &Figure, told: &Explained) -> Option<Element<'a, Message>> {
        // The days stand in the plot; where nothing is on, there is no sum to tell.
        let told_already = matches!(figure.detail, Detail::Projection(_))
            || matches!(&figure.detail, Detail::Loads(fit) if fit.on.is_empty());
        if told_already {
            return None;
        }
        self.part("walk-how-formula", vec![told.formula.clone()])
    }

    /// What it was computed from, each with where it came from.
    fn inputs(&self, inputs: &[ExplainedInput]) -> Option<Element<'a, Message>> {
        let look = &self.ctx.look;
        if inputs.is_empty() {
            return None;
        }
        let rows = inputs.iter().map(|input| {
            let name = column![ui::body(look, input.name.clone()), ui::small(look, input.from.clone())];
            let value = ui::strong(look, input.value.clone()).align_x(Alignment::End);
            row![name.width(Length::FillPortion(3)), value.width(Length::FillPortion(2))]
                .spacing(look.gap(Gap::Medium))
                .into()
        });
        let mut all: Vec<Element<'a, Message>> = Vec::new();
        for row in rows {
            if !all.is_empty() {
                all.push(ui::rule(look));
            }
            all.push(row);
        }
        let label = ui::label(look, self.say_figure("walk-how-inputs", &Args::new()));
        let rows = Column::with_children(all).spacing(look.gap(Gap::Small));
        Some(column![label, rows].spacing(look.gap(Gap::Small)).width(Length::Fill).into())
    }

    /// What it does not know, how it was rounded, and who says so.
    fn rest(&self, told: &Explained) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let source = self.say_figure("walk-how-source", &Args::new().text("source", told.source.clone()));
        column![]
            .push(self.part("walk-how-caveat", vec![told.caveat.clone()]))
            .push(ui::small(look, told.rounding.clone()))
            .push(ui::small(look, source))
            .spacing(look.gap(Gap::Small))
            .width(Length::Fill)
            .into()
    }

    /// What a figure holds beyond numbers.
    fn detail(&self, figure: &Figure) -> Vec<Element<'a, Message>> {
        let (words, reader) = (&self.ctx.scripts.words, self.figure_reader());
        match &figure.detail {
            Detail::None | Detail::Bill(_) => Vec::new(),
            Detail::Loads(fit) => {
                let said = loads::said(words, &reader, fit);
                let parts = [
                    ("walk-how-breaks", said.breaks),
                    ("walk-how-remedies", said.remedies),
                    ("walk-how-sets", said.sets),
                    ("walk-how-always", vec![said.always]),
                ];
                parts.into_iter().filter_map(|(key, lines)| self.part(key, lines)).collect()
            }
            Detail::Projection(projection) => {
                let look = &self.ctx.look;
                let said = figures::say_projection(words, &reader, projection);
                let plot = ui::trip_plot(look, words, &reader, projection, look.px(PLOT));
                let courses = said.courses.into_iter().map(|(_, line)| line).chain(said.unknown).collect();
                let parts = [("walk-how-courses", courses), ("walk-how-helps", said.helps)];
                std::iter::once(plot)
                    .chain(parts.into_iter().filter_map(|(key, lines)| self.part(key, lines)))
                    .collect()
            }
        }
    }
}
