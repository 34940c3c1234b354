//! The page of the trip: agent, language and measures, booking, nights, due back.

use iced::widget::{column, row};
use iced::{Alignment, Length};
use jiff::civil::{DateTime, Time};
use jiff::{Span, tz::Offset};

use super::offer::{Faults, Offer, Spot};
use super::parts;
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::{Hall, system_of};
use crate::kiosk::lapse;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Choice, Element};
use crate::script::Scripts;
use crate::walk::{Event, LocalTime, Phase, Refused, Walk};
use crate::words::{Args, PSEUDO_LANGUAGE, Reader, Words, clean_name, format};

/// When a unit is due back where nothing else is said.
const DUE: Time = Time::constant(10, 0, 0, 0);
/// Minutes of one step of the time.
const STEP: i64 = 30;
/// Nights that one press sets.
const USUAL: [u16; 4] = [3, 5, 7, 14];
/// Most nights of a walk.
const MOST: u16 = 365;

/// What is typed and chosen.
#[derive(Debug)]
pub(super) struct Draft {
    agent: String,
    language: Option<String>,
    measures: Option<String>,
    reference: String,
    nights: Option<u16>,
    due: Option<DateTime>,
}

/// What happened on the page.
#[derive(Debug, Clone)]
pub enum Message {
    /// The staff code was typed.
    AgentTyped(String),
    /// Another agent takes the walk over.
    AgentAsked,
    /// A language was chosen.
    LanguageChosen(String),
    /// Measures were chosen.
    MeasuresChosen(String),
    /// The booking reference was typed.
    ReferenceTyped(String),
    /// The nights were set.
    NightsSet(u16),
    /// Due back so many days later or earlier.
    DayMoved(i8),
    /// Due back so many steps later or earlier in the day.
    TimeMoved(i8),
}

impl Draft {
    pub(super) fn new(hall: &Hall) -> Self {
        let walk = &hall.walk;
        let (reader, booking) = (walk.reader().map(|r| &r.value), walk.booking().map(|b| &b.value));
        // Where there is no choice, nobody need choose.
        let only = match hall.scripts.lot.value.languages.as_slice() {
            [one] => Some(one.clone()),
            _ => None,
        };
        Self {
            agent: walk.agent().unwrap_or_default().to_owned(),
            language: reader.map(|r| r.language.clone()).or(only),
            measures: reader.map(|r| r.measures.clone()),
            reference: booking.map(|b| b.reference.clone()).unwrap_or_default(),
            nights: booking.map(|b| b.nights),
            due: booking.map(|b| b.due_back.local),
        }
    }

    pub(super) fn update(&mut self, message: Message, ctx: &Ctx<'_>) {
        match message {
            Message::AgentTyped(code) => self.agent = code,
            // The gate asks for a PIN.
            Message::AgentAsked => {}
            Message::LanguageChosen(language) => self.language = Some(language),
            Message::MeasuresChosen(measures) => self.measures = Some(measures),
            Message::ReferenceTyped(reference) => self.reference = reference,
            Message::NightsSet(nights) => {
                let nights = nights.clamp(1, MOST);
                let day = today(ctx).checked_add(Span::new().days(i64::from(nights)));
                let time = self.due.map_or(DUE, DateTime::time);
                (self.nights, self.due) = (Some(nights), day.ok().map(|day| day.to_datetime(time)));
            }
            Message::DayMoved(days) => self.move_due(Span::new().days(i64::from(days))),
            Message::TimeMoved(steps) => self.move_due(Span::new().minutes(i64::from(steps) * STEP)),
        }
    }

    fn move_due(&mut self, by: Span) {
        self.due = self.due.map(|due| due.checked_add(by).unwrap_or(due));
    }

    pub(super) fn offer(&self, walk: &Walk, ctx: &Ctx<'_>, offer: &mut Offer) {
        let code = clean_name(&self.agent);
        // Where agents have PINs, whoever signed on leads.
        if !code.is_empty() && !ctx.crew.signs_on() {
            offer.put(walk, ctx, Event::AgentOn { code }, |_| Spot::Agent);
        }
        match (self.language.clone(), self.measures.clone()) {
            (Some(language), Some(measures)) => {
                offer.put(walk, ctx, Event::ReaderSet { language, measures }, |_| Spot::Reader);
            }
            (None, Some(_)) => offer.wrong(Spot::Reader, "opening-fault-language"),
            (_, None) => {}
        }
        let reference = clean_name(&self.reference);
        match (self.nights, self.due) {
            (Some(nights), Some(local)) => {
                let due_back = LocalTime { local, offset_minutes: offset_at(ctx.scripts, ctx.now, local) };
                offer.put(walk, ctx, Event::BookingSet { reference, nights, due_back }, |refused| {
                    match refused {
                        Refused::DueBackPast { .. } => Spot::Due,
                        Refused::Range { .. } => Spot::Nights,
                        _ => Spot::Reference,
                    }
                });
            }
            _ if !reference.is_empty() => offer.wrong(Spot::Nights, "opening-fault-nights"),
            _ => {}
        }
    }

    pub(super) fn view<'a>(&'a self, ctx: &Ctx<'a>, faults: &Faults) -> Element<'a, Message> {
        let look = &ctx.look;
        let languages = offered(ctx, self.language.as_deref()).into_iter().map(|tag| {
            let chosen = self.language.as_deref() == Some(tag.as_str());
            Choice::new(own_name(ctx, &tag), chosen, Message::LanguageChosen(tag))
        });
        let measures = ctx.scripts.lot.value.measures.iter().map(|word| {
            let chosen = self.measures.as_ref() == Some(word);
            Choice::new(measures_name(ctx, word), chosen, Message::MeasuresChosen(word.clone()))
        });
        let who = column![
            self.agent_view(ctx, faults),
            parts::labeled(look, ctx.say("opening-language"), ui::choices(look, languages)),
            parts::labeled(look, ctx.say("opening-measures"), ui::choices(look, measures)),
        ]
        .push(self.asked_again(ctx))
        .push(parts::wrong(look, faults.at(ctx, Spot::Reader)))
        .spacing(look.gap(Gap::Wide));
        let reference = ui::field(look, "opening-booking", &self.reference, Message::ReferenceTyped)
            .label(ctx.say("opening-booking"))
            .placeholder(ctx.say("opening-booking-example"))
            .error(faults.at(ctx, Spot::Reference));
        let trip = column![Element::from(reference), self.nights_view(ctx)]
            .push(parts::wrong(look, faults.at(ctx, Spot::Nights)))
            .push(self.due.map(|due| self.due_view(ctx, due)))
            .push(parts::wrong(look, faults.at(ctx, Spot::Due)))
            .spacing(look.gap(Gap::Wide));
        parts::two(look, (who.into(), trip.into()), (1, 1))
    }

    /// In the middle of a walk: how many answers another language or other measures ask for again.
    fn asked_again<'a>(&self, ctx: &Ctx<'a>) -> Option<Element<'a, Message>> {
        let hall = ctx.hall.filter(|hall| hall.walk.phase() != Phase::Opening)?;
        let (language, measures) = self.language.as_ref().zip(self.measures.as_ref())?;
        let now = hall.walk.reader().map(|r| (&r.value.language, &r.value.measures));
        if now == Some((language, measures)) {
            return None;
        }
        let count = lapse::count(hall, language, measures);
        Some(ui::note(&ctx.look, counted(ctx, "opening-asked-again", count), None))
    }

    /// Who leads: typed, or whoever signed on.
    fn agent_view<'a>(&'a self, ctx: &Ctx<'a>, faults: &Faults) -> Element<'a, Message> {
        let look = &ctx.look;
        if !ctx.crew.signs_on() {
            return ui::field(look, "opening-agent", &self.agent, Message::AgentTyped)
                .label(ctx.say("opening-agent"))
                .placeholder(ctx.say("opening-agent-example"))
                .error(faults.at(ctx, Spot::Agent))
                .into();
        }
        let agent = ctx.hall.and_then(|hall| hall.walk.agent());
        let key = if agent.is_some() { "yard-sign-on-other" } else { "yard-sign-on" };
        let other = ui::secondary(look, ctx.say(key), Message::AgentAsked).id("opening-agent-other");
        let line = row![]
            .push(agent.map(|code| ui::section(look, code.to_owned())))
            .push(other)
            .spacing(look.gap(Gap::Large))
            .align_y(Alignment::Center);
        parts::labeled(look, ctx.say("opening-agent-on"), line)
    }

    fn nights_view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let nights = self.nights.unwrap_or(0);
        let text = match self.nights {
            Some(nights) => counted(ctx, "opening-nights-count", usize::from(nights)),
            None => ctx.say("opening-nights-none"),
        };
        let less = (nights > 1).then(|| Message::NightsSet(nights.saturating_sub(1)));
        let more = (nights < MOST).then(|| Message::NightsSet(nights.saturating_add(1)));
        // A number alone would make a chip too narrow for a finger.
        let width = look.px(60.0 * look.text.factor());
        let usual = USUAL.map(|n| {
            let number = format::number(&ctx.scripts.words, &ctx.settings.staff, n.into());
            let chip = ui::chip(look, number, Message::NightsSet(n)).chosen(self.nights == Some(n));
            Element::from(chip.height(52.0).width(width))
        });
        let usual = iced::widget::Row::with_children(usual).spacing(look.gap(Gap::Small));
        let stepper = parts::stepper(look, text, less, more);
        let gap = look.gap(Gap::Large);
        // Large letters need the width of the part.
        let line: Element<'a, Message> = if look.text == TextSize::Usual {
            row![stepper, usual].spacing(gap).align_y(Alignment::Center).into()
        } else {
            column![stepper, usual].spacing(gap).into()
        };
        parts::labeled(look, ctx.say("opening-nights"), line)
    }

    fn due_view<'a>(&'a self, ctx: &Ctx<'a>, due: DateTime) -> Element<'a, Message> {
        let look = &ctx.look;
        let first = today(ctx);
        let day = parts::stepper(
            look,
            day(ctx, due.date()),
            (due.date() > first).then_some(Message::DayMoved(-1)),
            Some(Message::DayMoved(1)),
        );
        let at = |moved: i8| {
            let minutes = i64::from(due.hour()) * 60 + i64::from(due.minute()) + i64::from(moved) * STEP;
            (0..24 * 60).contains(&minutes).then_some(Message::TimeMoved(moved))
        };
        let time = format::time(&ctx.scripts.words, &ctx.settings.staff, due.time());
        let time = parts::stepper(look, time, at(-1), at(1));
        let days = first.until(due.date()).map_or(0, |span| span.get_days());
        let other = self.nights.is_some_and(|nights| i32::from(nights) != days);
        let other = other
            .then(|| ui::small(look, counted(ctx, "opening-due-days", usize::try_from(days).unwrap_or(0))));
        let content = column![day, time].push(other).spacing(look.gap(Gap::Medium)).width(Length::Fill);
        parts::labeled(look, ctx.say("opening-due"), content)
    }
}

/// Today on the lot.
fn today(ctx: &Ctx<'_>) -> jiff::civil::Date {
    ctx.local(ctx.now).date()
}

/// The lot's offset from UTC in minutes at a time on its wall. A time that the clocks skip gets the later one.
fn offset_at(scripts: &Scripts, now: jiff::Timestamp, local: DateTime) -> i16 {
    let mut minutes = scripts.offset_minutes(now);
    // One look with the offset of today finds the right side of a change of clocks, the second settles it.
    for _ in 0..2 {
        let offset = Offset::from_seconds(i32::from(minutes) * 60).unwrap_or(Offset::UTC);
        minutes = offset.to_timestamp(local).map_or(minutes, |at| scripts.offset_minutes(at));
    }
    minutes
}

/// A day with its weekday.
pub(super) fn day(ctx: &Ctx<'_>, date: jiff::civil::Date) -> String {
    let weekday = u64::try_from(date.weekday().to_monday_one_offset()).unwrap_or(1);
    let date = format::date(&ctx.scripts.words, &ctx.settings.staff, date);
    ctx.say_with("opening-day", &Args::new().number("weekday", weekday).text("date", date))
}

/// Languages to choose from: the lot's, and the one made to see what breaks where it is in use already.
fn offered(ctx: &Ctx<'_>, chosen: Option<&str>) -> Vec<String> {
    let mut tags = ctx.scripts.lot.value.languages.clone();
    let pseudo = Words::is_pseudo(&ctx.settings.staff.lang) || chosen.is_some_and(Words::is_pseudo);
    if pseudo && !tags.iter().any(|tag| Words::is_pseudo(tag)) {
        tags.push(PSEUDO_LANGUAGE.to_owned());
    }
    tags
}

/// A language by its own name; by its tag where it does not say.
pub(in crate::kiosk) fn own_name(ctx: &Ctx<'_>, tag: &str) -> String {
    let (words, key) = (&ctx.scripts.words, "opening-language-own");
    let reader = Reader::new(tag, ctx.settings.staff.system);
    words.try_say(&reader, key, &Args::new()).unwrap_or_else(|_| tag.to_owned())
}

/// Measures by what they count in.
pub(in crate::kiosk) fn measures_name(ctx: &Ctx<'_>, word: &str) -> String {
    let system = format::system_word(system_of(word));
    ctx.say_with("opening-measures-name", &Args::new().text("system", system))
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;

    use super::*;
    use crate::script::Bundle;

    /// The demo lot keeps US mountain time. Its clocks go back on the first Sunday of November, which is
    /// November 1 in 2026 (15 USC 260a), at two in the morning: UTC-6 before, UTC-7 after.
    #[test]
    fn due_back_has_the_offset_of_its_own_day() {
        let lot = crate::kiosk::scripts(Bundle::demo()).unwrap();
        let now = "2026-07-24T15:10:00Z".parse().unwrap();
        for (day, hour, minutes) in [
            (date(2026, 7, 29), 10, -360),
            (date(2026, 10, 31), 23, -360),
            (date(2026, 11, 1), 0, -360),
            (date(2026, 11, 1), 10, -420),
            (date(2027, 1, 4), 10, -420),
            (date(2027, 3, 15), 10, -360),
        ] {
            assert_eq!(offset_at(&lot, now, day.at(hour, 0, 0, 0)), minutes, "{day} {hour}");
        }
    }
}
