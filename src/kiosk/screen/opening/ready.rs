//! The last page: what was entered, in words; first time; who translates; what is still missing.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::offer::{Offer, Spot};
use super::{parts, trip};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::walk::{Event, Missing, Walk};
use crate::words::{Args, format};

/// Who may translate: the role as it is kept, and the key of its words.
const ROLES: [(&str, &str); 4] = [
    ("", "opening-translator-nobody"),
    ("travel companion", "opening-translator-companion"),
    ("staff", "opening-translator-staff"),
    ("interpreter by phone", "opening-translator-phone"),
];

/// What is chosen.
#[derive(Debug)]
pub(super) struct Draft {
    first_time: Option<bool>,
    translator: Option<String>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// Whether it is their first time.
    FirstTime(bool),
    /// Who translates.
    Translator(String),
}

impl Draft {
    pub(super) fn new(walk: &Walk) -> Self {
        Self {
            first_time: walk.first_time().map(|f| f.value),
            translator: walk.translator().map(|t| t.value.clone()),
        }
    }

    pub(super) fn update(&mut self, message: Message) {
        match message {
            Message::FirstTime(first) => self.first_time = Some(first),
            Message::Translator(role) => self.translator = Some(role),
        }
    }

    pub(super) fn offer(&self, walk: &Walk, ctx: &Ctx<'_>, offer: &mut Offer) {
        if let Some(first_time) = self.first_time {
            offer.put(walk, ctx, Event::ExperienceSet { first_time }, |_| Spot::Party);
        }
        if let Some(role) = self.translator.clone() {
            offer.put(walk, ctx, Event::TranslatorSet { role }, |_| Spot::Party);
        }
    }

    /// What is missing before the walk may start, besides what is chosen here and goes along with the start.
    pub(super) fn missing(&self, walk: &Walk) -> Vec<Missing> {
        let mut missing = walk.missing_to_open();
        missing.retain(|m| !(*m == Missing::Experience && self.first_time.is_some()));
        missing
    }

    /// `plan` is the plan of the trip in a sentence, where there is one.
    pub(super) fn view<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        walk: &'a Walk,
        plan: Option<String>,
    ) -> Element<'a, super::Message> {
        let look = &ctx.look;
        let first = [(true, "opening-first-yes"), (false, "opening-first-no")].map(|(yes, key)| {
            Choice::new(ctx.say(key), self.first_time == Some(yes), Message::FirstTime(yes))
        });
        let known = ROLES.iter().any(|(role, _)| self.translator.as_deref() == Some(role));
        let other = self.translator.iter().filter(|_| !known);
        let other = other.map(|role| Choice::new(role.clone(), true, Message::Translator(role.clone())));
        let roles = ROLES.iter().map(|(role, key)| {
            let chosen = self.translator.as_deref() == Some(role);
            Choice::new(ctx.say(key), chosen, Message::Translator((*role).to_owned()))
        });
        let asked: Element<'a, Message> = column![
            parts::labeled(look, ctx.say("opening-first"), ui::choices(look, first)),
            parts::labeled(look, ctx.say("opening-translator"), ui::choices(look, roles.chain(other))),
        ]
        .spacing(look.gap(Gap::Wide))
        .into();
        // What is asked on this very page needs no line that leads to it.
        let mut missing = self.missing(walk);
        missing.retain(|m| *m != Missing::Experience);
        let lines = parts::missing_lines(ctx, walk, &missing);
        let mut known = Column::new().spacing(look.gap(Gap::Huge)).width(Length::Fill);
        let mut aside = column![asked.map(super::Message::Ready)].spacing(look.gap(Gap::Huge));
        if !lines.is_empty() {
            let lines = Column::with_children(lines).spacing(look.gap(Gap::Medium));
            known = known.push(parts::labeled(look, ctx.say("opening-missing"), lines));
        } else if self.first_time.is_some() {
            let done = ui::symbol_in(look, Symbol::TickDisc, 32.0, look.colors().accent, look.colors().leaf);
            let words = ui::lead(look, ctx.say("opening-nothing-missing")).width(Length::Fill);
            aside = aside.push(row![done, words].spacing(look.gap(Gap::Medium)).align_y(Alignment::Center));
        }
        known = known.push(summary(ctx, walk, plan));
        parts::two(look, (known.into(), aside.into()), (1, 1))
    }
}

/// What is kept, a line for each part; what is missing has none.
fn summary<'a, M: 'a>(ctx: &Ctx<'a>, walk: &Walk, plan: Option<String>) -> Element<'a, M> {
    let look = &ctx.look;
    let mut lines: Vec<(&str, String)> = Vec::new();
    if let Some(booking) = walk.booking().map(|b| &b.value) {
        let nights = counted(ctx, "opening-nights-count", usize::from(booking.nights));
        let time = format::time(&ctx.scripts.words, &ctx.settings.staff, booking.due_back.local.time());
        let args = Args::new()
            .text("nights", nights)
            .text("day", trip::day(ctx, booking.due_back.local.date()))
            .text("time", time)
            .text("booking", booking.reference.clone());
        let key = if booking.reference.is_empty() { "opening-sum-trip" } else { "opening-sum-trip-booking" };
        lines.push(("opening-step-trip", ctx.say_with(key, &args)));
    }
    lines.extend(plan.map(|plan| ("opening-step-plan", plan)));
    if !walk.people().is_empty() {
        lines.push(("opening-sum-drivers", parts::names(ctx, walk.drivers())));
        let others = || walk.people().iter().filter(|p| !p.driver);
        if others().next().is_some() {
            lines.push(("opening-sum-others", parts::names(ctx, others())));
        }
        let seen: Vec<String> = walk
            .drivers()
            .filter_map(|driver| {
                let licence = &walk.licence(driver.id)?.value;
                let args = Args::new()
                    .text("name", parts::name_of(ctx, driver))
                    .text("class", licence.class.clone())
                    .text("country", licence.country.clone())
                    .text("expiry", format::date(&ctx.scripts.words, &ctx.settings.staff, licence.expiry));
                Some(ctx.say_with("opening-sum-license", &args))
            })
            .collect();
        if !seen.is_empty() {
            lines.push(("opening-sum-licenses", seen.join("\n")));
        }
    }
    if walk.present().is_some() {
        let here = walk.people().iter().filter(|p| walk.is_present(p.id));
        lines.push(("opening-sum-here", parts::names(ctx, here)));
    }
    if let Some(reader) = walk.reader().map(|r| &r.value) {
        let args = Args::new()
            .text("language", trip::own_name(ctx, &reader.language))
            .text("measures", trip::measures_name(ctx, &reader.measures));
        lines.push(("opening-sum-reads", ctx.say_with("opening-sum-reader", &args)));
    }
    if let Some(agent) = walk.agent() {
        lines.push(("opening-sum-agent", agent.to_owned()));
    }
    let mut page = Column::new().spacing(look.gap(Gap::Medium));
    for (index, (key, words)) in lines.into_iter().enumerate() {
        let label = container(ui::strong(look, ctx.say(key))).width(Length::FillPortion(2));
        let line =
            row![label, ui::body(look, words).width(Length::FillPortion(5))].spacing(look.gap(Gap::Large));
        page = page.push((index > 0).then(|| ui::rule(look))).push(line);
    }
    page.into()
}
