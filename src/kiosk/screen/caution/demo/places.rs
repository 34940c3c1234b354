//! Cards that are put somewhere: sorted into bins, matched, or people who are given seats.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length, Point};

use super::super::Message as PageMessage;
use super::Message;
use super::view::{Page, sent};
use crate::kiosk::plan::{self, PlanSeat};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Edge, Element};
use crate::script::demo::{Task, Try};
use crate::words::Args;

/// Width of a bin with a word of at most so many letters, in pixels as written.
const BIN: f32 = 120.0;
/// See [`BIN`].
const SHORT: usize = 4;

/// Where a card lies.
fn place_of<'p>(page: &'p Page<'_, '_, '_>, card: &str) -> Option<&'p str> {
    let Try::Placed(placed) = &page.demo.so_far else { return None };
    placed.iter().find(|(id, _)| id == card).map(|(_, place)| place.as_str())
}

/// A card a row, with the bins as chips beside it.
pub(super) fn sort<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let rows = page.due.order.iter().map(|id| {
        let here = place_of(page, id);
        let open = !page.stays(id) && !page.show.hall.saving;
        let bins = page.text.places.iter().filter(|bin| open || here == Some(&bin.id)).map(|bin| {
            let chosen = here == Some(bin.id.as_str());
            let put = sent(Message::Put { card: id.clone(), place: bin.id.clone() });
            if open {
                let chip = ui::chip(look, bin.text.clone(), put).chosen(chosen).height(64.0);
                // A short word is no smaller to hit than a long one.
                let short = bin.text.chars().count() <= SHORT;
                if short { chip.width(look.px(BIN)).into() } else { chip.into() }
            } else {
                fixed(page, bin.text.clone())
            }
        });
        let bins = Row::with_children(bins)
            .spacing(look.gap(Gap::Medium))
            .wrap()
            .vertical_spacing(look.gap(Gap::Small));
        let words = ui::lead(look, page.name(id)).width(Length::Fill);
        let content: Element<'a, PageMessage> = if look.portrait() || page.text.places.len() > 2 {
            column![words, bins].spacing(look.gap(Gap::Medium)).into()
        } else {
            row![words, bins].spacing(look.gap(Gap::Large)).align_y(Alignment::Center).into()
        };
        ui::panel(look, content).into()
    });
    let rows = Column::with_children(rows).spacing(look.gap(Gap::Medium));
    ui::peek_scroll(look, rows)
}

/// What stays from the last try: a tick and its words, nothing to press.
fn fixed<'a>(page: &Page<'_, '_, 'a>, words: String) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    row![ui::symbol(look, ui::Symbol::TickDisc, 28.0), ui::strong(look, words)]
        .spacing(look.gap(Gap::Small))
        .align_y(Alignment::Center)
        .into()
}

/// A card is taken on the left, and put somewhere on the right.
pub(super) fn take_and_put<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let seats = matches!(page.due.part.task, Task::Seats(_));
    let gap = look.gap(if seats { Gap::Tiny } else { Gap::Small });
    let cards = page.due.order.iter().map(|id| card(page, id, seats));
    let left = column![ui::label(look, page.say(if seats { "who" } else { "what" }))]
        .push(Column::with_children(cards).spacing(gap))
        .spacing(look.gap(Gap::Small));
    let places = page.text.places.iter().enumerate();
    let places = places.map(|(at, place)| target(page, &place.id, seats.then_some(at)));
    let right = column![ui::label(look, page.say(if seats { "seat" } else { "goes-to" }))]
        .push(Column::with_children(places).spacing(gap))
        .spacing(look.gap(Gap::Small));
    let both = row![left.width(Length::Fill), right.width(Length::Fill)].spacing(look.gap(Gap::Large));
    ui::peek_scroll(look, both)
}

/// The seats on the floor of the unit, numbered as in the list; none where not all have a place.
pub(super) fn on_plan<'a>(page: &Page<'_, '_, 'a>) -> Option<Element<'a, PageMessage>> {
    let look = &page.show.look;
    let shape = &page.show.hall.shape;
    let Try::Placed(placed) = &page.demo.so_far else { return None };
    let ids: Vec<String> = page.text.places.iter().map(|place| place.id.clone()).collect();
    let at = |id: &String| shape.seats.iter().find(|(seat, _)| seat == id).map(|(_, at)| *at);
    let taken = |id: &String| placed.iter().any(|(_, place)| place == id);
    let seats: Option<Vec<PlanSeat>> = ids
        .iter()
        .zip(1..)
        .map(|(id, number)| {
            Some(PlanSeat { number, at: at(id)?, taken: taken(id), child: for_children(page, id) })
        })
        .collect();
    let seats = seats.filter(|seats| !seats.is_empty())?;
    let open: Vec<bool> = seats.iter().map(|seat| !seat.taken).collect();
    let at_hand = page.demo.taken.is_some() && !page.show.hall.saving;
    let press = move |at: usize| {
        let free = at_hand && open.get(at) == Some(&true);
        free.then(|| ids.get(at)).flatten().map(|id| sent(Message::Place(id.clone())))
    };
    Some(plan::seats(look, shape, seats, press))
}

/// A card with where it lies; the one at hand stands out.
fn card<'a>(page: &Page<'_, '_, 'a>, id: &str, seats: bool) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let at_hand = page.demo.taken.as_deref() == Some(id);
    let name = page.name(id);
    let name = if at_hand { ui::strong(look, name) } else { ui::body(look, name) };
    let lies = place_of(page, id);
    let line = match lies {
        Some(place) => Some(page.say_with("lies", Args::new().text("place", page.name(place)))),
        None => at_hand.then(|| page.say(if seats { "put-seat" } else { "put" })),
    };
    let line = line.map(|line| ui::small(look, line));
    let words = column![name.width(Length::Fill)].push(line).width(Length::Fill);
    let sign = match (lies, at_hand) {
        (Some(_), _) => ui::Symbol::TickDisc,
        (None, true) => ui::Symbol::Open,
        (None, false) => ui::Symbol::Ring,
    };
    let line =
        row![ui::symbol(look, sign, 28.0), words].spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
    if page.stays(id) || page.show.hall.saving {
        return ui::at_least(look.target(), ui::chosen_panel(look, line).into());
    }
    let edge = if at_hand { Edge::Chosen } else { Edge::Press };
    ui::press_panel(look, edge, line, sent(Message::Card(id.to_owned())))
}

/// Whether a seat is marked for child seats.
fn for_children(page: &Page<'_, '_, '_>, seat: &str) -> bool {
    let unit = page.show.ctx.scripts.units.get(&page.show.hall.walk.route().unit);
    unit.is_some_and(|unit| unit.value.seats.iter().any(|s| s.id == seat && s.tether))
}

/// A place, with who or what is there; a seat has its number on the plan. A seat that is taken can be pressed no more.
fn target<'a>(page: &Page<'_, '_, 'a>, id: &str, seat: Option<usize>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let Try::Placed(placed) = &page.demo.so_far else { return container("").into() };
    let there: Vec<String> =
        placed.iter().filter(|(_, place)| place == id).map(|(card, _)| page.name(card)).collect();
    let full = seat.is_some() && !there.is_empty();
    let mut words = column![ui::body(look, page.name(id)).width(Length::Fill)].width(Length::Fill);
    if seat.is_some() && for_children(page, id) {
        let side = look.px(24.0);
        let look = *look;
        let mark = ui::drawing(Length::Fixed(side), Length::Fixed(side), move |frame| {
            plan::child_mark(frame, &look, Point::new(side / 2.0, side / 2.0), side - look.line());
        });
        let line = row![mark, ui::small(&look, page.say("child-seat")).width(Length::Fill)];
        words = words.push(line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center));
    }
    if full {
        words = words.push(ui::strong(look, there.join(", ")));
    }
    let number = seat.filter(|_| page.show.hall.shape.seats.iter().any(|(seat, _)| seat == id));
    let number = number.map(|at| {
        let number = u16::try_from(at + 1).unwrap_or(u16::MAX);
        ui::circle_number(look, number, full, 36.0)
    });
    let line = row![].push(number).push(words).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
    if full || page.demo.taken.is_none() || page.show.hall.saving {
        return ui::at_least(look.target(), ui::panel(look, line).into());
    }
    ui::press_panel(look, Edge::Press, line, sent(Message::Place(id.to_owned())))
}
