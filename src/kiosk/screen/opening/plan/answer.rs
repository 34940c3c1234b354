//! What comes of a plan: how the trip goes day by day, and the figures of the trip that are worth knowing.

use iced::widget::{Column, column, row};
use iced::{Alignment, Length};

use super::Message;
use crate::figures::projection::Projection;
use crate::figures::{self, Detail, Figure, Given, State, Trip};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::opening::parts;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Edge, Element, Symbol};
use crate::unit::Facts;
use crate::words::{Args, Reader};

/// Figures beside the projection, in the order they are shown; those of what is not fitted are left out.
const WORTH: [&str; 8] = [
    "tow_check",
    "payload_left",
    "fresh_days",
    "battery_days",
    "battery_nights",
    "propane_days",
    "generator_watts",
    "rig_length",
];
/// Height of the plot, as written.
const PLOT: f32 = 300.0;

/// Figures of a trip, computed as it changes and shown as often as need be.
#[derive(Debug)]
pub(super) struct Answer {
    projection: Option<Figure>,
    figures: Vec<Figure>,
}

impl Answer {
    /// Computes them.
    pub(super) fn of(facts: &Facts, trip: &Trip) -> Self {
        let given = Given { facts, trip: Some(trip) };
        let figures: Vec<Figure> = WORTH.iter().filter_map(|id| figures::one(id, given)).collect();
        // Nights alone would be another count than the plot's, which counts by day as well.
        let by_day = figures.iter().any(|figure| figure.id == "battery_days" && figure.state == State::Ok);
        let figures = figures.into_iter().filter(|figure| !(by_day && figure.id == "battery_nights"));
        Self {
            projection: figures::one("trip_projection", given),
            figures: figures.filter(|figure| figure.state != State::NotFitted).collect(),
        }
    }

    /// The trip day by day, where it could be computed.
    pub(super) fn projection(&self) -> Option<&Projection> {
        match &self.projection.as_ref()?.detail {
            Detail::Projection(projection) => Some(projection),
            _ => None,
        }
    }

    /// What runs out first, in a sentence.
    pub(super) fn first(&self, ctx: &Ctx<'_>, reader: &Reader) -> String {
        let words = &ctx.scripts.words;
        match (self.projection(), &self.projection) {
            (Some(projection), _) => figures::say_projection(words, reader, projection).first,
            (None, Some(figure)) => figures::value_text(words, reader, figure),
            (None, None) => String::new(),
        }
    }

    pub(super) fn view<'a>(
        &self,
        ctx: &Ctx<'a>,
        reader: &Reader,
        open: Option<&'static str>,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let words = &ctx.scripts.words;
        let mut page = column![ui::section(look, self.first(ctx, reader))]
            .spacing(look.gap(Gap::Wide))
            .width(Length::Fill);
        if let Some(projection) = self.projection() {
            let said = figures::say_projection(words, reader, projection);
            page = page.push(ui::trip_plot(look, words, reader, projection, look.px(PLOT)));
            let unknown = said.unknown.into_iter().map(|line| unknown(ctx, line));
            page = page.push(part(ctx, "opening-plan-unknown", unknown.collect()));
            let helps = said.helps.into_iter().map(|line| ui::body(look, line).into());
            page = page.push(part(ctx, "opening-plan-helps", helps.collect()));
        }
        let figures: Vec<Element<'a, Message>> =
            self.figures.iter().map(|figure| card(ctx, reader, figure, open == Some(figure.id))).collect();
        page.push(Column::with_children(figures).spacing(look.gap(Gap::Medium))).into()
    }
}

/// Lines under their label; none where there are no lines.
fn part<'a>(
    ctx: &Ctx<'a>,
    key: &'static str,
    lines: Vec<Element<'a, Message>>,
) -> Option<Element<'a, Message>> {
    let look = &ctx.look;
    let lines = (!lines.is_empty()).then(|| Column::with_children(lines).spacing(look.gap(Gap::Small)))?;
    Some(parts::labeled(look, ctx.say(key), lines))
}

fn unknown<'a>(ctx: &Ctx<'a>, line: String) -> Element<'a, Message> {
    let look = &ctx.look;
    row![ui::symbol(look, Symbol::Question, 22.0), ui::body(look, line).width(Length::Fill)]
        .spacing(look.gap(Gap::Medium))
        .into()
}

/// One figure: its name and value; pressed, how it was worked out.
fn card<'a>(ctx: &Ctx<'a>, reader: &Reader, figure: &Figure, open: bool) -> Element<'a, Message> {
    let look = &ctx.look;
    let said = figures::explain(&ctx.scripts.words, reader, figure);
    // One number stands out; many in a sentence are read.
    let many = figure.outcomes.len() > 2;
    let value = if many { ui::body(look, said.value) } else { ui::strong(look, said.value) };
    let mut text =
        column![ui::small(look, said.title), value].spacing(look.gap(Gap::Tiny)).width(Length::Fill);
    let below_zero = figure.outcomes.iter().any(|outcome| outcome.exact < 0.0);
    if below_zero && !said.caution.is_empty() {
        text = text.push(parts::wrong(look, Some(said.caution)));
    }
    if open {
        let source = ctx.say_with("opening-plan-source", &Args::new().text("source", said.source));
        for line in [said.formula, said.caveat, source].into_iter().filter(|line| !line.is_empty()) {
            text = text.push(ui::small(look, line));
        }
    }
    // What could not be computed has no way it was.
    if figure.state != State::Ok {
        return ui::panel(look, text).into();
    }
    let sign = if open { Symbol::Up } else { Symbol::Down };
    let line =
        row![text, ui::symbol(look, sign, 20.0)].spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
    ui::press_panel(look, Edge::Press, line, Message::HowPressed(figure.id))
}
