//! The plan beside the words: where the stops are, how they stand, and how far the walk has come.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::page::SIDE;
use super::{Message, Page, SheetKind, fit, way};
use crate::kiosk::hall::Hall;
use crate::kiosk::plan::{self, Floor, Orientation, Peg, PegState, PlanMark, PlanShape, Side};
use crate::kiosk::theme::{Gap, Type, style};
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::route::Zone;
use crate::unit::Station;
use crate::walk::{self, StepState, Walk};
use crate::words::{Args, format};

/// Height of the plan as a strip, in portrait: as much as the unit needs to fill its length.
const STRIP: f32 = 340.0;

/// The stops that have a place on the plan; the one with this step is where the walk is.
pub(super) fn pegs(hall: &Hall, step: usize) -> Vec<Peg> {
    let walk = &hall.walk;
    let route = walk.route();
    let here = route.stop_of(step);
    let placed =
        route.stops.iter().enumerate().filter(|(_, s)| matches!(s.zone, Zone::Outside | Zone::Inside));
    placed
        .filter_map(|(index, stop)| {
            let state = if here == Some(index) { PegState::Here } else { state(walk.peg(index)?) };
            let station = route.steps.get(stop.steps.start)?.station;
            let at = hall.shape.point(station, stop.at)?;
            Some(Peg { number: stop.number, at, inside: stop.zone == Zone::Inside, state })
        })
        .collect()
}

fn state(peg: walk::Peg) -> PegState {
    match peg {
        walk::Peg::Open => PegState::Open,
        walk::Peg::PartDone => PegState::PartDone,
        walk::Peg::Done => PegState::Done,
        walk::Peg::Skipped => PegState::Skipped,
        walk::Peg::Unanswered => PegState::Unanswered,
    }
}

/// Condition marks as the plan draws them.
pub(super) fn marks(walk: &Walk) -> Vec<PlanMark> {
    let inches = |tenths: i32| f64::from(tenths) / 10.0;
    walk.marks()
        .map(|m| PlanMark { at: (inches(m.value.at.x), inches(m.value.at.y)), number: m.value.number })
        .collect()
}

/// Where a tap on a peg leads: to the first open step of its stop, else to the first of all.
pub(super) fn step_of_peg(walk: &Walk, floor: Floor, number: u16) -> Option<usize> {
    let zone = if floor == Floor::Inside { Zone::Inside } else { Zone::Outside };
    let route = walk.route();
    let stop = route.stops.iter().find(|s| s.zone == zone && s.number == number)?;
    let open = |i: &usize| route.steps.get(*i).is_some_and(|s| *walk.step_state(&s.id) == StepState::Open);
    stop.steps.clone().find(open).or(Some(stop.steps.start))
}

/// The side one stands at for a station; at nose and rear the curb side, where the walk began.
pub(super) fn near(shape: &PlanShape, station: Station) -> Side {
    let street = matches!(station, Station::StreetFront | Station::StreetMid | Station::StreetRear);
    match (shape.curb, street) {
        (Side::Left, true) => Side::Right,
        (Side::Right, true) => Side::Left,
        (curb, false) => curb,
    }
}

impl<'a> Page<'a> {
    fn plan(&self, orientation: Orientation) -> Element<'a, Message> {
        let (state, look) = (self.state, &self.ctx.look);
        // Before leaving nothing stands out any more.
        let leaving = way::zone(self.walk(), state.step) == Zone::Leaving;
        let shape = if leaving { &self.hall.stowed } else { &self.hall.shape };
        plan::view(look, shape, &state.pegs, orientation, state.floor)
            .marks(&state.marks)
            .on_peg(Message::PegPressed)
            .on_hold(Message::PointHeld)
            .zoom(state.zoom, Message::Zoomed)
            .into()
    }

    /// The plan at the side, in landscape.
    pub(super) fn side(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let plan = container(self.plan(Orientation::NoseUp)).width(Length::Fill).height(Length::Fill);
        let content =
            column![plan, self.progress(), self.floors(Length::Fill)].spacing(look.gap(Gap::Medium));
        ui::panel(look, content).padding(look.gap(Gap::Medium)).height(Length::Fill).into()
    }

    /// The plan as a strip of this side, in portrait, with what stands below it.
    pub(super) fn strip(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let colors = look.colors();
        let ground = style::ground(look, colors.leaf, colors.line);
        let side = near(&self.hall.shape, self.step.station);
        let whole = self.plan(Orientation::standing_at(side));
        let plan = container(whole).width(Length::Fill).height(look.px(STRIP)).padding(look.line());
        let plan = plan.style(move |_| ground);
        let below = row![container(self.progress()).width(Length::Fill), self.floors(Length::Shrink)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        column![plan, below].spacing(look.gap(Gap::Small)).into()
    }

    /// Outside or inside: one tap between the two.
    fn floors(&self, width: Length) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let floor = |floor, key: &str| {
            Choice::new(self.ctx.say(key), self.state.floor == floor, Message::FloorChosen(floor))
        };
        let all = [floor(Floor::Outside, "walk-outside"), floor(Floor::Inside, "walk-inside")];
        let half = (look.px(SIDE) - 2.0 * look.gap(Gap::Medium) - look.gap(Gap::Small)) / 2.0
            - 2.0 * look.gap(Gap::Large);
        let torn = all.iter().any(|c| fit::longest_word(look, Type::Small, &c.label) > half);
        let chips = all.map(|c| {
            Element::from(ui::chip(look, c.label, c.message).chosen(c.chosen).height(52.0).width(width))
        });
        if torn && width == Length::Fill {
            return Column::with_children(chips).spacing(look.gap(Gap::Small)).into();
        }
        Row::with_children(chips).spacing(look.gap(Gap::Small)).into()
    }

    /// Which stop of how many, and the minutes left; a press shows the whole walk.
    fn progress(&self) -> Element<'a, Message> {
        let (look, ctx, walk) = (&self.ctx.look, &self.ctx, self.walk());
        let (number, of) = way::numbered(walk, self.state.step);
        let zone = way::zone(walk, self.state.step);
        let args = Args::new()
            .text("zone", ctx.say(zone_key(zone)))
            .number("number", number)
            .number("count", u64::try_from(of).unwrap_or(0));
        let first = if matches!(zone, Zone::Outside | Zone::Inside) {
            ctx.say_with("walk-position", &args)
        } else {
            ctx.say(zone_key(zone))
        };
        let time = format::duration_minutes(
            &ctx.scripts.words,
            &ctx.settings.staff,
            walk.minutes_left(&self.hall.pace),
        );
        let words = column![
            ui::strong(look, first),
            ui::small(look, ctx.say_with("walk-time-left", &Args::new().text("time", time))),
        ]
        .width(Length::Fill);
        let line = row![words, ui::symbol(look, Symbol::Right, 22.0)]
            .spacing(look.gap(Gap::Small))
            .padding([look.gap(Gap::Tiny), look.gap(Gap::Small)])
            .align_y(Alignment::Center);
        let face = ui::at_least(look.target(), container(line).width(Length::Fill).into());
        ui::tap(look, face, Message::SheetAsked(SheetKind::Overview)).into()
    }
}

/// Words of a zone.
pub(super) const fn zone_key(zone: Zone) -> &'static str {
    match zone {
        Zone::Desk => "walk-desk",
        Zone::Outside => "walk-outside",
        Zone::Inside => "walk-inside",
        Zone::Leaving => "walk-leaving",
    }
}
