//! What the place of each night offers: all nights in one press, by week where there are many, and each alone.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};
use jiff::Span;
use jiff::civil::Date;

use super::{Draft, Message};
use crate::figures::{HookUp, Trip};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::opening::parts;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::walk::limits::NIGHTS_MAX;
use crate::words::Args;

/// Nights of a week; up to so many each night has its own row.
const WEEK: usize = 7;
/// What a place may offer, and the key of its word.
const KINDS: [(HookUp, &str); 4] = [
    (HookUp::Full, "opening-plan-hook-full"),
    (HookUp::Water, "opening-plan-hook-water"),
    (HookUp::Power, "opening-plan-hook-power"),
    (HookUp::None, "opening-plan-hook-none"),
];

/// Nights one after the other, counted from 0; the second is the first that no longer counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Nights(pub u16, pub u16);

impl Nights {
    fn range(self) -> std::ops::Range<usize> {
        usize::from(self.0)..usize::from(self.1)
    }
}

/// What a night's place offers; nothing where nobody has told.
pub(super) fn at(trip: &Trip, night: usize) -> HookUp {
    trip.hook_up.get(night).copied().unwrap_or(HookUp::None)
}

/// Sets what the places of some nights of a trip offer; those beyond its end are dropped.
pub(super) fn put(trip: &mut Trip, nights: u16, which: Nights, kind: HookUp) {
    let count = usize::from(nights).min(NIGHTS_MAX);
    trip.hook_up.resize(count, HookUp::None);
    for night in which.range() {
        if let Some(place) = trip.hook_up.get_mut(night) {
            *place = kind;
        }
    }
}

/// How many nights have power at least, and how many have nothing.
pub(super) fn counts(trip: &Trip) -> (usize, usize) {
    let nights = usize::from(trip.nights);
    let with = (0..nights).filter(|night| at(trip, *night) != HookUp::None).count();
    (with, nights - with)
}

/// The rows.
pub(super) fn view<'a>(draft: &Draft, ctx: &Ctx<'a>, nights: u16) -> Element<'a, Message> {
    let look = &ctx.look;
    let mut rows: Vec<Element<'a, Message>> = Vec::new();
    let one_by_one = usize::from(nights) <= WEEK;
    if nights > 1 {
        let label = ui::label(look, ctx.say("opening-plan-all-nights"));
        rows.push(line(draft, ctx, label.into(), Nights(0, nights)));
        rows.push(ui::rule(look));
    }
    if one_by_one {
        rows.extend((0..nights).map(|night| night_line(draft, ctx, night)));
    } else {
        let weeks = (0..nights).step_by(WEEK).enumerate();
        for (index, from) in weeks {
            let which = Nights(from, from.saturating_add(7).min(nights));
            let open = draft.week == Some(index);
            rows.push(week_line(draft, ctx, which, (index, open)));
            if open {
                rows.extend((which.0..which.1).map(|night| night_line(draft, ctx, night)));
            }
        }
    }
    let rows = Column::with_children(rows).spacing(look.gap(Gap::Small));
    let explained = ui::small(look, ctx.say("opening-plan-hook-explained"));
    let content = column![explained, rows].spacing(look.gap(Gap::Medium));
    parts::labeled(look, ctx.say("opening-plan-hook"), content)
}

fn night_line<'a>(draft: &Draft, ctx: &Ctx<'a>, night: u16) -> Element<'a, Message> {
    let label = ui::body(&ctx.look, day(draft.leaves, ctx, night));
    line(draft, ctx, label.into(), Nights(night, night.saturating_add(1)))
}

fn week_line<'a>(
    draft: &Draft,
    ctx: &Ctx<'a>,
    which: Nights,
    (index, open): (usize, bool),
) -> Element<'a, Message> {
    let look = &ctx.look;
    let (from, to) = (day(draft.leaves, ctx, which.0), day(draft.leaves, ctx, which.1.saturating_sub(1)));
    let words = if which.1.saturating_sub(which.0) > 1 {
        ctx.say_with("opening-plan-nights", &Args::new().text("from", from).text("to", to))
    } else {
        from
    };
    let sign = if open { Symbol::Up } else { Symbol::Down };
    let key = if open { "opening-plan-week-close" } else { "opening-plan-week-open" };
    let each = ui::quiet(look, ctx.say(key), Message::WeekPressed(index)).after(sign);
    let head = row![ui::body(look, words).width(Length::Fill), Element::from(each)]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
    column![head, chips(draft, ctx, which), ui::rule(look)].spacing(look.gap(Gap::Small)).into()
}

/// A label and what may be chosen; the label keeps a column of its own.
fn line<'a>(
    draft: &Draft,
    ctx: &Ctx<'a>,
    label: Element<'a, Message>,
    which: Nights,
) -> Element<'a, Message> {
    let look = &ctx.look;
    let label = container(label).width(look.px(92.0 * look.text.factor()));
    row![label, container(chips(draft, ctx, which)).width(Length::Fill)]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center)
        .into()
}

fn chips<'a>(draft: &Draft, ctx: &Ctx<'a>, which: Nights) -> Element<'a, Message> {
    let all = KINDS.map(|(kind, key)| {
        let chosen = which.range().all(|night| at(&draft.plan, night) == kind);
        Choice::new(ctx.say(key), chosen, Message::HookUpChosen(which, kind))
    });
    ui::choices(&ctx.look, all)
}

/// The day on which a night begins.
fn day(leaves: Option<Date>, ctx: &Ctx<'_>, night: u16) -> String {
    match leaves.and_then(|first| first.checked_add(Span::new().days(i64::from(night))).ok()) {
        Some(day) => {
            let weekday = u64::try_from(day.weekday().to_monday_one_offset()).unwrap_or(1);
            let args = Args::new().number("weekday", weekday).text("date", day.day().to_string());
            ctx.say_with("opening-plan-night", &args)
        }
        None => night.saturating_add(1).to_string(),
    }
}
