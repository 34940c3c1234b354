//! What the pages of the Opening share: the row of steps, the foot, columns, steppers, lines of what is wrong.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::{Message, Page};
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::{Gap, Look, TextSize};
use crate::kiosk::ui::{self, Edge, Element, Symbol};
use crate::walk::{Missing, Person, Walk};
use crate::words::Args;

/// Names of one field for each of twelve people.
macro_rules! ids {
    ($name:literal) => {
        [
            concat!($name, "-1"),
            concat!($name, "-2"),
            concat!($name, "-3"),
            concat!($name, "-4"),
            concat!($name, "-5"),
            concat!($name, "-6"),
            concat!($name, "-7"),
            concat!($name, "-8"),
            concat!($name, "-9"),
            concat!($name, "-10"),
            concat!($name, "-11"),
            concat!($name, "-12"),
        ]
    };
}
pub(super) use ids;

/// How far a page is, by what is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stage {
    Open,
    Part,
    Done,
}

fn stage(walk: &Walk, page: Page) -> Stage {
    let lacks = walk.missing_to_open().iter().filter(|m| Page::of(m) == page).count();
    let begun = match page {
        Page::Trip => walk.agent().is_some() || walk.reader().is_some() || walk.booking().is_some(),
        Page::Licences => walk.present().is_some() || walk.drivers().any(|d| walk.licence(d.id).is_some()),
        Page::Party | Page::Plan | Page::Ready | Page::Stop => false,
    };
    match (lacks, begun) {
        // Nobody drives yet, so that no license lacks either.
        (0, _) if page == Page::Licences && walk.people().is_empty() => Stage::Open,
        // Nobody must plan a trip: it is done when somebody has.
        (0, _) if page == Page::Plan && walk.planned().is_none() => Stage::Open,
        (0, _) => Stage::Done,
        (_, true) => Stage::Part,
        (_, false) => Stage::Open,
    }
}

/// The named steps, each a way to its page; the one that is open stands out and is no button.
pub(super) fn steps<'a>(ctx: &Ctx<'a>, walk: &Walk, here: Page) -> Element<'a, Message> {
    let look = &ctx.look;
    let cells: Vec<Element<'a, Message>> =
        Page::STEPS.into_iter().map(|page| step(ctx, walk, page, here)).collect();
    // Five large words do not fit beside each other where the page is narrow.
    let beside = if look.portrait() && look.text != TextSize::Usual { 3 } else { Page::STEPS.len() };
    in_rows(look, beside, cells)
}

fn step<'a>(ctx: &Ctx<'a>, walk: &Walk, page: Page, here: Page) -> Element<'a, Message> {
    let look = &ctx.look;
    let key = match page {
        Page::Trip => "opening-step-trip",
        Page::Party => "opening-step-party",
        Page::Licences => "opening-step-licenses",
        Page::Plan => "opening-step-plan",
        Page::Ready | Page::Stop => "opening-step-ready",
    };
    let mark = match stage(walk, page) {
        Stage::Open => Symbol::Ring,
        Stage::Part => Symbol::Open,
        Stage::Done => Symbol::TickDisc,
    };
    let words = ctx.say(key);
    // On a narrow page, a longer word gets more room.
    let share =
        if look.portrait() { u16::try_from(words.chars().count()).unwrap_or(1).saturating_add(8) } else { 1 };
    let words = match (page == here, look.portrait()) {
        (true, false) => ui::strong(look, words),
        (false, false) => ui::body(look, words),
        (true, true) => ui::label(look, words).color(look.ink()),
        (false, true) => ui::small(look, words).color(look.ink()),
    };
    let line = row![
        ui::symbol_in(look, mark, 28.0, look.colors().accent, look.colors().leaf),
        words.width(Length::Fill)
    ]
    .spacing(look.gap(Gap::Small))
    .align_y(Alignment::Center);
    let cell = if page == here {
        ui::at_least(look.target(), ui::chosen_panel(look, line).align_y(Alignment::Center).into())
    } else {
        ui::press_panel(look, Edge::Press, line, Message::PageChosen(page))
    };
    container(cell).width(Length::FillPortion(share)).into()
}

/// So many beside each other, in rows of equal parts.
pub(super) fn in_rows<'a, M: 'a>(look: &Look, beside: usize, cells: Vec<Element<'a, M>>) -> Element<'a, M> {
    let gap = look.gap(Gap::Medium);
    let mut rows: Vec<Element<'a, M>> = Vec::new();
    let mut cells = cells.into_iter().peekable();
    while cells.peek().is_some() {
        let line: Vec<Element<'a, M>> = cells.by_ref().take(beside.max(1)).collect();
        rows.push(Row::with_children(line).spacing(gap).into());
    }
    Column::with_children(rows).spacing(gap).into()
}

/// Two parts beside each other, or below each other where the page is narrow.
pub(super) fn two<'a, M: 'a>(
    look: &Look,
    (first, second): (Element<'a, M>, Element<'a, M>),
    shares: (u16, u16),
) -> Element<'a, M> {
    if look.portrait() {
        return column![first, second].spacing(look.gap(Gap::Huge)).into();
    }
    let part = |content, share| container(content).width(Length::FillPortion(share));
    row![part(first, shares.0), part(second, shares.1)].spacing(look.gap(Gap::Huge)).into()
}

/// As [`two`], closer together: the parts belong to one thing.
pub(super) fn two_close<'a, M: 'a>(
    look: &Look,
    first: Element<'a, M>,
    second: Element<'a, M>,
) -> Element<'a, M> {
    let gap = look.gap(Gap::Medium);
    // Large letters need the width of the page.
    if look.portrait() || look.text != TextSize::Usual {
        return column![first, second].spacing(gap).into();
    }
    let part = |content, share| container(content).width(Length::FillPortion(share));
    row![part(first, 1), part(second, 1)].spacing(gap).into()
}

/// A part with its label above.
pub(super) fn labeled<'a, M: 'a>(
    look: &Look,
    label: String,
    content: impl Into<Element<'a, M>>,
) -> Element<'a, M> {
    column![ui::label(look, label), content.into()].spacing(look.gap(Gap::Small)).width(Length::Fill).into()
}

/// What is wrong, below what it is about.
pub(super) fn wrong<'a, M: 'a>(look: &Look, text: Option<String>) -> Option<Element<'a, M>> {
    let text = text?;
    let line = row![ui::symbol(look, Symbol::Alert, 24.0), ui::strong(look, text).width(Length::Fill)];
    Some(line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center).into())
}

/// One sign to press, as large as a target.
pub(super) fn sign<'a, M: Clone + 'a>(look: &Look, which: Symbol, message: M) -> Element<'a, M> {
    let sign = container(ui::symbol(look, which, 28.0)).center_x(Length::Fill);
    container(ui::press_panel(look, Edge::Press, sign, message)).width(look.target()).into()
}

/// A value with one less and one more at its sides. What would leave the bounds is absent.
pub(super) fn stepper<'a, M: Clone + 'a>(
    look: &Look,
    value: String,
    less: Option<M>,
    more: Option<M>,
) -> Element<'a, M> {
    let side = |which, message: Option<M>| match message {
        Some(message) => sign(look, which, message),
        None => iced::widget::Space::new().width(look.target()).height(look.target()).into(),
    };
    let value = ui::section(look, value).width(Length::Fill).align_x(Alignment::Center);
    row![side(Symbol::Minus, less), value, side(Symbol::Plus, more)]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center)
        .into()
}

/// The foot: what is seldom wanted, back, and the primary at the end; narrow pages have it full width below.
pub(super) fn foot<'a>(
    look: &Look,
    back: Option<ui::Button<Message>>,
    seldom: Vec<Option<ui::Button<Message>>>,
    primary: Option<ui::Button<Message>>,
) -> Element<'a, Message> {
    let gap = look.gap(Gap::Large);
    let back = back.map(Element::from);
    let seldom = seldom.into_iter().flatten().map(Element::from);
    let quiet = Row::with_children(back.into_iter().chain(seldom)).spacing(gap).align_y(Alignment::Center);
    let quiet = container(quiet.wrap().vertical_spacing(look.gap(Gap::Small))).width(Length::Fill);
    if look.portrait() {
        return column![quiet]
            .push(primary.map(|p| Element::from(p.fill())))
            .spacing(look.gap(Gap::Medium))
            .into();
    }
    let primary = primary.map(|p| Element::from(p.width(look.px(340.0))));
    ui::hand_row(look, std::iter::once(quiet.into()).chain(primary).collect())
        .spacing(gap)
        .align_y(Alignment::Center)
        .into()
}

/// The question before what is wrong on the page is left behind.
pub(super) fn leaving<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let look = &ctx.look;
    column![
        ui::section(look, ctx.say("opening-leave-title")),
        ui::body(look, ctx.say("opening-leave-what")),
        row![
            ui::primary(look, ctx.say("opening-leave-stay"), Message::YardDropped),
            ui::secondary(look, ctx.say("opening-leave-go"), Message::YardConfirmed),
        ]
        .spacing(look.gap(Gap::Medium))
        .wrap()
        .vertical_spacing(look.gap(Gap::Medium)),
    ]
    .spacing(look.gap(Gap::Large))
    .into()
}

/// What is missing, each line the way to its page.
pub(super) fn missing_lines<'a>(
    ctx: &Ctx<'a>,
    walk: &Walk,
    missing: &[Missing],
) -> Vec<Element<'a, Message>> {
    let look = &ctx.look;
    let line = |m: &Missing| {
        let words = ui::body(look, missing_words(ctx, walk, m)).width(Length::Fill);
        let line = row![ui::symbol(look, Symbol::Ring, 24.0), words, ui::symbol(look, Symbol::Right, 20.0)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        ui::press_panel(look, Edge::Press, line, Message::PageChosen(Page::of(m)))
    };
    missing.iter().map(line).collect()
}

fn missing_words(ctx: &Ctx<'_>, walk: &Walk, missing: &Missing) -> String {
    let name = |id| walk.person(id).map_or_else(String::new, |p| name_of(ctx, p));
    let day = |date| crate::words::format::date(&ctx.scripts.words, &ctx.settings.staff, date);
    match missing {
        Missing::Agent => ctx.say("opening-missing-agent"),
        Missing::Reader => ctx.say("opening-missing-reader"),
        Missing::Party => ctx.say("opening-missing-party"),
        Missing::Licence { person } => {
            ctx.say_with("opening-missing-license", &Args::new().text("name", name(*person)))
        }
        Missing::LicenceTooShort { person, expiry, until } => {
            let args = Args::new()
                .text("name", name(*person))
                .text("expiry", day(*expiry))
                .text("until", day(*until));
            ctx.say_with("opening-missing-license-short", &args)
        }
        Missing::Present => ctx.say("opening-missing-present"),
        Missing::Experience => ctx.say("opening-missing-experience"),
        Missing::Booking => ctx.say("opening-missing-booking"),
        other => ctx.say_with("opening-fault-other", &Args::new().text("why", other.to_string())),
    }
}

/// The name of a person, or their number where a child has none.
pub(super) fn name_of(ctx: &Ctx<'_>, person: &Person) -> String {
    if person.name.is_empty() {
        ctx.say_with("opening-person", &Args::new().number("number", u64::from(person.id.0)))
    } else {
        person.name.clone()
    }
}

/// Names of people, joined by the rule of the language.
pub(super) fn names<'p>(ctx: &Ctx<'_>, people: impl Iterator<Item = &'p Person>) -> String {
    let names: Vec<String> = people.map(|p| name_of(ctx, p)).collect();
    crate::words::format::list(&ctx.scripts.words, &ctx.settings.staff, &names)
}
