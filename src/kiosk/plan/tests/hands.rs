//! What fingers, mouse, wheel and keys do on the plan.

use std::time::Duration;

use iced::advanced::widget::operation::Focusable;
use iced::advanced::widget::{Id, Operation};
use iced::keyboard::key::Named;
use iced::{Point, Rectangle, Size, Vector};

use super::super::*;
use super::UNIT;
use crate::kiosk::headless::Driver;
use crate::kiosk::theme::{Look, TextSize, Theme, fonts};
use crate::kiosk::ui::Element;
use crate::kiosk::ui::gallery;

const SIZE: (u32, u32) = (400, 700);

#[derive(Debug, Clone, Copy, PartialEq)]
enum Message {
    Peg(u16),
    Held((f64, f64)),
    Place(usize),
    Zoomed(Zoom),
}

struct Page {
    shape: PlanShape,
    pegs: Vec<Peg>,
    places: Vec<PlanPlace>,
    zoom: Zoom,
    log: Vec<Message>,
}

impl Page {
    fn new() -> Self {
        let (shape, pegs) = (gallery::wren(), gallery::pegs());
        Self { shape, pegs, places: Vec::new(), zoom: Zoom::default(), log: Vec::new() }
    }

    fn update(&mut self, message: Message) {
        match message {
            Message::Zoomed(zoom) => self.zoom = zoom,
            other => self.log.push(other),
        }
    }

    fn look() -> Look {
        // The short side makes the scale: 800 px for one as written.
        Look::new(Theme::Paper, TextSize::Usual, Size::new(800.0, 800.0), 1.0)
    }

    fn view(&self) -> Element<'_, Message> {
        let view = view(&Self::look(), &self.shape, &self.pegs, Orientation::NoseUp, Floor::Outside);
        let view = view.on_hold(Message::Held).zoom(self.zoom, Message::Zoomed);
        let view = if self.places.is_empty() {
            view.on_peg(Message::Peg)
        } else {
            view.on_place(&self.places, Message::Place)
        };
        view.into()
    }

    fn plan(&self) -> PlanLayout {
        let size = Size::new(SIZE.0 as f32, SIZE.1 as f32);
        layout_zoomed(&self.shape, &self.pegs, (size, Orientation::NoseUp, Floor::Outside), UNIT, self.zoom)
    }
}

/// Runs `$work` on a driver of a page; the type of the program has no name to pass it around by.
macro_rules! on {
    ($page:expr, |$driver:ident| $work:block) => {{
        fonts::prepare();
        let program =
            iced::application(Page::new, Page::update, Page::view).theme(|_: &Page| iced::Theme::Light);
        let mut $driver = Driver::with_state(&program, $page, SIZE).unwrap();
        $driver.send(&[]).unwrap();
        let _ = $driver.render();
        $work
    }};
}

const MS: fn(u64) -> Duration = Duration::from_millis;
/// On the grass, where there is neither peg nor control.
const GRASS: Point = Point::new(20.0, 30.0);

#[test]
fn a_finger_held_down_sets_a_mark_and_a_short_touch_does_not() {
    on!(Page::new(), |driver| {
        let at = driver.state().plan().place((10.0, 200.0));
        driver.finger_down(1, at).unwrap();
        driver.wait(MS(400)).unwrap();
        driver.finger_up(1, at).unwrap();
        driver.wait(MS(1000)).unwrap();
        assert_eq!(driver.state().log, []);
        driver.finger_down(1, at).unwrap();
        driver.wait(MS(800)).unwrap();
        driver.finger_up(1, at).unwrap();
        let [Message::Held((x, y))] = driver.state().log.as_slice() else {
            panic!("{:?}", driver.state().log)
        };
        assert!((x - 10.0).abs() < 0.5 && (y - 200.0).abs() < 0.5, "{x}, {y}");
    });
}

#[test]
fn a_finger_that_moves_on_or_lies_on_a_peg_sets_no_mark() {
    on!(Page::new(), |driver| {
        driver.finger_down(1, GRASS).unwrap();
        driver.wait(MS(200)).unwrap();
        driver.finger_to(1, GRASS + Vector::new(40.0, 0.0)).unwrap();
        driver.wait(MS(1000)).unwrap();
        driver.finger_up(1, GRASS).unwrap();
        assert_eq!(driver.state().log, []);
        let peg = driver.state().plan().pegs[0].center;
        driver.finger_down(1, peg).unwrap();
        driver.wait(MS(1000)).unwrap();
        driver.finger_up(1, peg).unwrap();
        assert_eq!(driver.state().log, [Message::Peg(1)], "a slow tap is a tap");
    });
}

#[test]
fn the_wheel_looks_from_nearer_and_keeps_its_place() {
    on!(Page::new(), |driver| {
        let at = driver.state().plan().place((20.0, 150.0));
        driver.wheel(at, -3.0).unwrap();
        let plan = driver.state().plan();
        assert!((plan.zoom.times() - 1.2_f32.powi(3)).abs() < 0.01, "{:?}", plan.zoom);
        assert!(plan.place((20.0, 150.0)).distance(at) < 1.0);
        driver.wheel(at, 50.0).unwrap();
        assert!(driver.state().zoom.is_whole());
    });
}

#[test]
fn two_fingers_drawn_apart_look_from_nearer() {
    on!(Page::new(), |driver| {
        let middle = driver.state().plan().place((0.0, 150.0));
        let beside = |by: f32| (middle - Vector::new(by, 0.0), middle + Vector::new(by, 0.0));
        let (left, right) = beside(40.0);
        driver.finger_down(1, left).unwrap();
        driver.finger_down(2, right).unwrap();
        let (left, right) = beside(80.0);
        driver.finger_to(1, left).unwrap();
        driver.finger_to(2, right).unwrap();
        driver.wait(MS(1000)).unwrap();
        let plan = driver.state().plan();
        assert!((plan.zoom.times() - 2.0).abs() < 0.02, "{:?}", plan.zoom);
        assert!(plan.place((0.0, 150.0)).distance(middle) < 2.0);
        driver.finger_up(1, left).unwrap();
        driver.finger_up(2, right).unwrap();
        assert_eq!(driver.state().log, [], "neither a mark nor a tap");
    });
}

#[test]
fn a_drag_moves_what_is_seen_from_nearer_and_not_the_whole() {
    on!(Page::new(), |driver| {
        driver.drag(GRASS, GRASS + Vector::new(100.0, 200.0)).unwrap();
        assert!(driver.state().zoom.is_whole());
        driver.wheel(Point::new(200.0, 350.0), -5.0).unwrap();
        let before = driver.state().plan().place((0.0, 156.0));
        driver.drag(Point::new(200.0, 350.0), Point::new(200.0, 290.0)).unwrap();
        let after = driver.state().plan().place((0.0, 156.0));
        assert!((after - before - Vector::new(0.0, -60.0)).x.abs() < 1.0, "{before:?} {after:?}");
        assert!((before.y - after.y - 60.0).abs() < 1.0, "{before:?} {after:?}");
        assert_eq!(driver.state().log, []);
    });
}

#[test]
fn a_second_tap_looks_from_nearer_and_again_at_the_whole() {
    on!(Page::new(), |driver| {
        driver.touch_at(GRASS).unwrap();
        driver.wait(MS(100)).unwrap();
        driver.touch_at(GRASS).unwrap();
        assert!(!driver.state().zoom.is_whole());
        driver.wait(MS(1000)).unwrap();
        let at = Point::new(200.0, 350.0);
        driver.touch_at(at).unwrap();
        driver.wait(MS(1000)).unwrap();
        driver.touch_at(at).unwrap();
        assert!(!driver.state().zoom.is_whole(), "two taps a second apart are two taps");
        driver.wait(MS(100)).unwrap();
        driver.touch_at(at).unwrap();
        assert!(driver.state().zoom.is_whole());
    });
}

/// Gives the focus to the first that can have it.
struct First(bool);

impl Operation for First {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn focusable(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Focusable) {
        if !std::mem::replace(&mut self.0, true) {
            state.focus();
        }
    }
}

#[test]
fn keys_look_from_nearer_once_the_plan_has_the_focus() {
    on!(Page::new(), |driver| {
        driver.type_text("+").unwrap();
        assert!(driver.state().zoom.is_whole(), "it has not the focus");
        driver.operate(&mut First(false));
        driver.type_text("+").unwrap();
        let near = driver.state().zoom;
        assert!(near.times() > 1.5);
        driver.key(Named::ArrowDown).unwrap();
        assert!(driver.state().zoom.about().1 > near.about().1, "further to the rear");
        driver.key(Named::ArrowUp).unwrap();
        driver.type_text("-").unwrap();
        assert!(driver.state().zoom.is_whole());
    });
}

#[test]
fn each_control_is_there_only_while_it_does_something() {
    on!(Page::new(), |driver| {
        let controls = |driver: &mut Driver<'_, _>| {
            let all = driver.targets();
            all.iter()
                .filter(|target| (target.bounds.width - 44.0).abs() < 0.5)
                .map(|t| t.bounds.center())
                .collect::<Vec<_>>()
        };
        let [more] = controls(&mut driver)[..] else { panic!("only `nearer` at the whole") };
        driver.touch_at(more).unwrap();
        assert_eq!(controls(&mut driver).len(), 2);
        for _ in 0..4 {
            driver.touch_at(more).unwrap();
        }
        let [less] = controls(&mut driver)[..] else { panic!("only `further` at the nearest") };
        assert!(less.x < more.x);
        assert_eq!(driver.state().log, []);
    });
}

#[test]
fn places_to_point_at_are_told_by_their_position() {
    let mut page = Page::new();
    page.places = [(49.5, 196.0), (-49.5, 60.0)].map(|at| PlanPlace { at, chosen: false }).into();
    let pegs: Vec<Peg> = page
        .places
        .iter()
        .zip(1..)
        .map(|(place, number)| Peg { number, at: place.at, inside: false, state: PegState::Open })
        .collect();
    let plan = Page { pegs, ..Page::new() }.plan();
    on!(page, |driver| {
        driver.touch_at(plan.pegs[1].center).unwrap();
        driver.touch_at(plan.pegs[0].center).unwrap();
        assert_eq!(driver.state().log, [Message::Place(1), Message::Place(0)]);
    });
}
