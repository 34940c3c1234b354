//! Cards in order, choices, loads, a number, and what is shown on the unit.

use iced::widget::canvas::{Path, Stroke};
use iced::widget::{Column, Space, column, container, row};
use iced::{Alignment, Length, Point};

use super::super::Message as PageMessage;
use super::view::{Page, sent};
use super::{Message, help};
use crate::kiosk::theme::{Gap, style};
use crate::kiosk::ui::{self, Choice, Edge, Element};
use crate::script::demo::{Setting, Task, Try};

/// More cards than this stand in two columns, so that all are in sight at once.
const ONE_COLUMN: usize = 6;

/// Side of a knob, in pixels as written.
const KNOB: f32 = 112.0;

/// More steps than this are drawn without marks.
const MARKS: i32 = 24;

/// Cards laid one after the other: the laid ones come first, with their numbers.
pub(super) fn order<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let Try::Cards(laid) = &page.demo.so_far else { return ui::body(&page.show.look, "").into() };
    let tray = page.due.order.iter().filter(|id| !laid.contains(id));
    let last = laid.last();
    let mut cards: Vec<Element<'a, PageMessage>> = Vec::new();
    for (at, id) in laid.iter().enumerate() {
        let back = last == Some(id) && !page.stays(id) && !page.show.hall.saving;
        cards.push(laid_card(page, at, id, back));
    }
    cards.extend(tray.map(|id| tray_card(page, id)));
    in_columns(page, cards)
}

fn in_columns<'a>(page: &Page<'_, '_, 'a>, cards: Vec<Element<'a, PageMessage>>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let gap = look.gap(Gap::Small);
    let column = |cards: Vec<Element<'a, PageMessage>>| Column::with_children(cards).spacing(gap);
    if cards.len() <= ONE_COLUMN || look.portrait() {
        return ui::peek_scroll(look, column(cards));
    }
    let half = cards.len().div_ceil(2);
    let mut first = cards;
    let second = first.split_off(half);
    let both = row![column(first).width(Length::Fill), column(second).width(Length::Fill)].spacing(gap);
    ui::peek_scroll(look, both)
}

fn laid_card<'a>(page: &Page<'_, '_, 'a>, at: usize, id: &str, back: bool) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let number = ui::circle_number(look, u16::try_from(at + 1).unwrap_or(u16::MAX), true, 40.0);
    let line = row![number, ui::strong(look, page.name(id)).width(Length::Fill)]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center);
    if back {
        return ui::press_panel(look, Edge::Chosen, line, sent(Message::Card(id.to_owned())));
    }
    ui::at_least(look.target(), ui::chosen_panel(look, line).into())
}

fn tray_card<'a>(page: &Page<'_, '_, 'a>, id: &str) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let ring = ui::symbol(look, ui::Symbol::Ring, 32.0);
    let line =
        row![container(ring).padding([0.0, look.px(4.0)]), ui::body(look, page.name(id)).width(Length::Fill)]
            .spacing(look.gap(Gap::Large))
            .align_y(Alignment::Center);
    if page.show.hall.saving {
        return ui::at_least(look.target(), ui::panel(look, line).into());
    }
    ui::press_panel(look, Edge::Press, line, sent(Message::Card(id.to_owned())))
}

/// Choices: one, or with boxes all that hold.
pub(super) fn choose<'a>(page: &Page<'_, '_, 'a>, all: bool) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let Try::Cards(chosen) = &page.demo.so_far else { return ui::body(look, "").into() };
    let rows = page.due.order.iter().map(|id| {
        let on = chosen.contains(id);
        let message = sent(Message::Card(id.clone()));
        if page.show.hall.saving {
            return ui::at_least(look.target(), ui::panel(look, ui::body(look, page.name(id))).into());
        }
        if all {
            return container(ui::checkbox(look, on, ui::body(look, page.name(id)), message)).into();
        }
        ui::radio_row(look, Choice::new(page.name(id), on, message))
    });
    let key = match page.due.part.task {
        Task::Together(_) => "choose-together",
        _ if all => "choose-all",
        _ => "choose-one",
    };
    let hint = ui::small(look, page.say(key));
    let rows = Column::with_children(rows).spacing(look.gap(Gap::Medium));
    ui::peek_scroll(look, column![hint, rows].spacing(look.gap(Gap::Medium)))
}

/// A number with one less and one more.
pub(super) fn set<'a>(page: &Page<'_, '_, 'a>, setting: &Setting) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let Try::Number(number) = page.demo.so_far else { return ui::body(look, "").into() };
    let step = |to: Option<i32>| {
        to.filter(|n| (setting.from..=setting.to).contains(n) && !page.show.hall.saving)
            .map(|n| sent(Message::Number(n)))
    };
    let value = page.show.speaker.setting(setting, number);
    let less = step(number.checked_sub(setting.step));
    let more = step(number.checked_add(setting.step));
    let knob = |id: &'static str, sign, to: Option<PageMessage>| -> Element<'a, PageMessage> {
        let side = look.px(KNOB).max(look.target());
        let Some(to) = to else { return Space::new().width(side).height(side).into() };
        let colors = look.colors();
        let ground = style::ground(look, colors.leaf, colors.edge);
        let words = ui::small(look, page.say(if sign == ui::Symbol::Plus { "more" } else { "less" }));
        let face = column![ui::symbol(look, sign, 36.0), words.center()].align_x(Alignment::Center);
        let face = container(face).center(side).style(move |_| ground);
        ui::tap(look, face, to).id(id).into()
    };
    let value = container(ui::figure(look, value).align_x(Alignment::Center)).center_x(Length::Fill);
    let dial =
        row![knob("demo-less", ui::Symbol::Minus, less), value, knob("demo-more", ui::Symbol::Plus, more)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
    let dial = container(dial).max_width(look.px(560.0));
    let middle = column![dial, scale(page, setting, number), ui::small(look, page.say("set"))]
        .spacing(look.gap(Gap::Wide))
        .align_x(Alignment::Center);
    container(middle).center(Length::Fill).into()
}

/// Where the number stands between the smallest and the largest.
fn scale<'a>(page: &Page<'_, '_, 'a>, setting: &Setting, number: i32) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let (colors, line, dot) = (look.colors(), look.line(), look.px(14.0));
    let steps = setting.to.saturating_sub(setting.from) / setting.step.max(1);
    let at = number.saturating_sub(setting.from) / setting.step.max(1);
    let drawing = ui::drawing(look.px(440.0), look.px(48.0), move |frame| {
        let (width, middle) = (frame.width() - 2.0 * dot, frame.height() / 2.0);
        let place = |step: i32| Point::new(dot + width * step as f32 / steps.max(1) as f32, middle);
        let stroke = Stroke::default().with_color(colors.edge).with_width(line);
        frame.stroke(&Path::line(place(0), place(steps)), stroke);
        if steps <= MARKS {
            for step in 0..=steps {
                let half = iced::Vector::new(0.0, dot * 0.7);
                frame.stroke(&Path::line(place(step) - half, place(step) + half), stroke);
            }
        }
        frame.fill(&Path::circle(place(at), dot), colors.accent);
    });
    container(drawing).into()
}

/// Something is shown on the unit itself; the agent says whether it was.
pub(super) fn show<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let staff = |key: &str| page.show.ctx.say(&format!("demo-page-{key}"));
    let mut parts = column![ui::label(look, staff("for-agent")), ui::section(look, staff("agent-says"))]
        .spacing(look.gap(Gap::Large));
    if !page.show.hall.saving {
        let no = ui::secondary(look, staff("not-shown"), sent(Message::NotShown)).fill().height(72.0);
        parts = parts
            .push(help::agent_hold(page, "demo-shown", staff("shown"), Message::Shown))
            .push(Element::from(no.id("demo-not-shown")));
    }
    let agent = container(ui::panel(look, parts)).max_width(look.px(680.0));
    let all = column![ui::lead(look, page.say("show")), agent].spacing(look.gap(Gap::Huge));
    ui::scroll(look, all).height(Length::Fill).into()
}
