//! What you take and what it can cost. For the renter to read; what is still missing comes first, for the agent.

use iced::widget::{Column, column, row};
use iced::{Alignment, Length};

use super::account::{self, Part};
use super::{AskMessage, Message, Page, Show, costs, jump, pass};
use crate::kiosk::theme::{Gap, style};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::walk::Phase;

pub(super) fn view<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let missing = jump::before_signing(show.hall);
    let ready = missing.is_empty();
    let mut all: Column<'a, Message> = column![].spacing(look.gap(Gap::Large));
    all = all.push(jump::list(show, missing)).push(refused(show)).push(off(show));
    let happened = account::happened(show);
    let lent = costs::lent(show);
    if look.portrait() {
        let below = happened.into_iter().chain(lent).chain(costs::charged(show, 1)).collect();
        all = all.push(parts(show, below));
    } else {
        let gap = look.gap(Gap::Large);
        let beside = |left: Element<'a, Message>, right| row![left, right].spacing(gap);
        all = all.push(beside(parts(show, happened), parts(show, lent.into_iter().collect())));
        let mut charged = costs::charged(show, 2).into_iter();
        let first = parts(show, charged.next().into_iter().collect());
        all = all.push(beside(first, parts(show, charged.collect())));
    }
    let content =
        column![ui::title(look, show.say("take-title")), ui::scroll(look, all).height(Length::Fill),]
            .spacing(look.gap(Gap::Large));
    show.page(content, foot(show, ready))
}

/// What was refused stands before everything else.
fn refused<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let lines = account::refusals(show);
    if lines.is_empty() {
        return None;
    }
    let mut words = column![ui::section(look, show.say("take-refused"))].spacing(look.gap(Gap::Small));
    for (line, decision) in lines {
        words = words
            .push(column![ui::strong(look, line), ui::body(look, decision)].spacing(look.gap(Gap::Tiny)));
    }
    Some(ui::chosen_panel(look, words).into())
}

/// What was read and is not as it should be: in words and with a sign, before what is counted and charged.
fn off<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let lines = account::off(show);
    if lines.is_empty() {
        return None;
    }
    let head = row![ui::symbol(look, Symbol::Alert, 30.0), ui::section(look, show.say("take-off"))]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center);
    let mut words = column![head].spacing(look.gap(Gap::Small));
    for (line, to_do) in lines {
        words =
            words.push(column![ui::strong(look, line), ui::body(look, to_do)].spacing(look.gap(Gap::Tiny)));
    }
    // An edge in ink: the tint of what is chosen would look like praise.
    let ground = style::ground(look, look.colors().leaf, look.colors().ink);
    Some(ui::panel(look, words).style(move |_| ground).into())
}

/// Parts below each other, each a panel with its lines.
fn parts<'a>(show: &Show<'_, 'a>, parts: Vec<Part>) -> Element<'a, Message> {
    let look = &show.look;
    let panel = |part: Part| -> Element<'a, Message> {
        let mut lines = column![ui::section(look, part.title)].spacing(look.gap(Gap::Medium));
        for line in part.lines {
            lines = lines.push(ui::rule(look)).push(pair(show, line.0, line.1));
        }
        ui::panel(look, lines).into()
    };
    Column::with_children(parts.into_iter().map(panel))
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
}

/// Something at the left, its value at the right.
fn pair<'a>(show: &Show<'_, 'a>, left: String, right: String) -> Element<'a, Message> {
    let look = &show.look;
    if right.is_empty() {
        return ui::body(look, left).into();
    }
    row![
        ui::body(look, left).width(Length::FillPortion(3)),
        ui::strong(look, right).width(Length::FillPortion(2)).align_x(Alignment::End),
    ]
    .spacing(look.gap(Gap::Medium))
    .into()
}

fn foot<'a>(show: &Show<'_, 'a>, ready: bool) -> Element<'a, Message> {
    let look = &show.look;
    let walking = show.hall.walk.phase() == Phase::Walking;
    let mut small = row![].spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if !show.state.is_with_agent() {
        // What only the agent may do waits until the agent has the tablet.
        small = small.push(pass::to_agent(show));
    } else if walking {
        small = small.push(ui::secondary(look, show.staff("take-back"), Message::BackPressed));
    }
    if show.state.is_with_agent() && show.hall.walk.stopped().is_none() {
        small = small.push(ui::quiet(look, show.staff("stop"), Message::Ask(AskMessage::StopPressed)));
    }
    let small = small.wrap().vertical_spacing(look.gap(Gap::Small));
    if !ready {
        let lacks = show.staff(if walking { "take-lacks" } else { "take-lacks-elsewhere" });
        if look.portrait() {
            return column![show.lacks(lacks), small].spacing(look.gap(Gap::Medium)).into();
        }
        return ui::hand_row(look, vec![small.into(), show.lacks(lacks)])
            .spacing(look.gap(Gap::Wide))
            .align_y(Alignment::Center)
            .into();
    }
    let go_on = ui::primary(look, show.say("take-go-on"), Message::PageAsked(Page::Sign)).fill();
    if look.portrait() {
        return column![Element::from(go_on), small].spacing(look.gap(Gap::Medium)).into();
    }
    ui::hand_row(look, vec![Element::from(small), Element::from(go_on)])
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::Center)
        .into()
}
