//! Something is pointed at: on the plan of the unit, or in a picture. The names of the spots stand beside it, for
//! the keyboard and for reading aloud.

use iced::widget::{Column, column, container, responsive, row, stack};
use iced::{Alignment, Length, Point, Rectangle, Size};

use super::super::Message as PageMessage;
use super::Message;
use super::view::{Page, said, sent};
use crate::kiosk::plan::{self, Floor, Orientation, PlanPlace};
use crate::kiosk::screen::walk::picture::Picture;
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Edge, Element};
use crate::script::demo::{Pointing, Surface, Try};

/// Side of a target in a picture, in pixels as written.
const SPOT: f32 = 64.0;

/// A spot: where, its number, whether it is pointed at, and what pressing it says.
type Pin = ((f64, f64), u16, bool, Option<PageMessage>);

pub(super) fn view<'a>(page: &Page<'_, '_, 'a>, pointing: &'a Pointing) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let Try::Cards(chosen) = &page.demo.so_far else { return container("").into() };
    let spots: Vec<(&str, (f64, f64), bool)> = page
        .due
        .order
        .iter()
        .filter_map(|id| pointing.spots.iter().find(|spot| spot.choice.card.id == *id))
        .map(|spot| (spot.choice.card.id.as_str(), spot.at, chosen.contains(&spot.choice.card.id)))
        .collect();
    let ground = match pointing.on {
        Surface::Plan => on_plan(page, &spots),
        Surface::Picture => on_picture(page, &spots),
    };
    let names = spots.iter().enumerate().map(|(at, (id, _, on))| name(page, at, id, *on));
    let hint = ui::small(look, page.say(if pointing.all { "point-all" } else { "point-one" }));
    let reply = page.demo.reply.as_ref().map(|reply| said(page, reply));
    let names = column![]
        .push(reply)
        .push(hint)
        .push(Column::with_children(names).spacing(look.gap(Gap::Small)))
        .spacing(look.gap(Gap::Small));
    let names = ui::scroll(look, names);
    if look.portrait() {
        let ground = container(ground).height(Length::FillPortion(3));
        return column![ground, container(names).height(Length::FillPortion(2))]
            .spacing(look.gap(Gap::Medium))
            .height(Length::Fill)
            .into();
    }
    row![
        container(ground).width(Length::FillPortion(3)).height(Length::Fill),
        container(names).width(Length::FillPortion(2)).height(Length::Fill)
    ]
    .spacing(look.gap(Gap::Large))
    .height(Length::Fill)
    .into()
}

fn number(at: usize) -> u16 {
    u16::try_from(at + 1).unwrap_or(u16::MAX)
}

/// A spot by its name.
fn name<'a>(page: &Page<'_, '_, 'a>, at: usize, id: &str, on: bool) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let words = ui::body(look, page.name(id)).width(Length::Fill);
    let line = row![ui::circle_number(look, number(at), on, 36.0), words]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
    if page.show.hall.saving {
        return ui::at_least(look.target(), ui::panel(look, line).into());
    }
    let edge = if on { Edge::Chosen } else { Edge::Press };
    ui::press_panel(look, edge, line, sent(Message::Card(id.to_owned())))
}

fn on_plan<'a>(page: &Page<'_, '_, 'a>, spots: &[(&str, (f64, f64), bool)]) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let shape = &page.show.hall.shape;
    let inside = spots
        .iter()
        .any(|(_, (x, y), _)| x.abs() < shape.width / 2.0 - 6.0 && *y > 6.0 && *y < shape.length - 6.0);
    let orientation = if look.portrait() { Orientation::NoseLeft } else { Orientation::NoseUp };
    let floor = if inside { Floor::Inside } else { Floor::Outside };
    let places: Vec<PlanPlace> =
        spots.iter().map(|(_, at, chosen)| PlanPlace { at: *at, chosen: *chosen }).collect();
    let ids: Vec<String> = spots.iter().map(|(id, ..)| (*id).to_owned()).collect();
    let message = move |index: usize| sent(Message::Card(ids.get(index).cloned().unwrap_or_default()));
    plan::view(look, shape, &[], orientation, floor).on_place(&places, message).into()
}

fn on_picture<'a>(page: &Page<'_, '_, 'a>, spots: &[(&str, (f64, f64), bool)]) -> Element<'a, PageMessage> {
    let look = page.show.look;
    let Some((_, picture)) = &page.demo.picture else { return container("").into() };
    let missing = page.show.speaker.say("no-picture");
    let saving = page.show.hall.saving;
    let pins: Vec<Pin> = spots
        .iter()
        .enumerate()
        .map(|(at, (id, place, on))| {
            let message = (!saving).then(|| sent(Message::Card((*id).to_owned())));
            (*place, number(at), *on, message)
        })
        .collect();
    responsive(move |size| pinned(&look, size, picture, &missing, &pins)).into()
}

/// The picture with its targets, as large as the space.
fn pinned<'a>(
    look: &Look,
    size: Size,
    picture: &'a Picture,
    missing: &str,
    pins: &[Pin],
) -> Element<'a, PageMessage> {
    let shown = picture.view(look, missing.to_owned());
    // Without a picture the names beside it do.
    let Some(drawn) = picture.shown_in(look, size) else { return shown };
    let mut parts = Vec::new();
    let at = |from: f32, length: f32, part: f64| from + length * part as f32 / 1000.0;
    let place = |(x, y): &(f64, f64)| Point::new(at(drawn.x, drawn.width, *x), at(drawn.y, drawn.height, *y));
    // Targets that would lie over each other are as large as they can be.
    let apart = pins.iter().enumerate().flat_map(|(index, one)| {
        let one = place(&one.0);
        pins.iter().skip(index + 1).map(move |other| {
            let by = place(&other.0) - one;
            by.x.abs().max(by.y.abs())
        })
    });
    let side = apart.fold(look.px(SPOT), f32::min).max(look.small_target());
    for (at, number, on, message) in pins {
        let center = place(at);
        let corner = Point::new(
            (center.x - side / 2.0).clamp(0.0, (size.width - side).max(0.0)),
            (center.y - side / 2.0).clamp(0.0, (size.height - side).max(0.0)),
        );
        let face = container(ui::circle_number(look, *number, *on, 44.0)).center(side);
        let part: Element<'a, PageMessage> = match message {
            Some(message) => ui::tap(look, face, message.clone()).radius(side / 2.0).into(),
            None => face.into(),
        };
        parts.push((Rectangle::new(corner, Size::new(side, side)), part));
    }
    // A drawing lies over all that shares its layer.
    stack![shown, ui::pinned(size, parts)].into()
}
