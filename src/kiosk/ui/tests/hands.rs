//! Taps, holds and strokes, by mouse and by finger.

use std::time::Duration;

use iced::keyboard::key::Named;
use iced::{Point, Vector};

use super::*;
use crate::kiosk::plan;

const MS: fn(u64) -> Duration = Duration::from_millis;

#[test]
fn a_tap_counts_by_mouse_and_by_finger() {
    on!(Page::Walk, |driver| {
        driver.click("Question").unwrap();
        driver.touch("Mark").unwrap();
        assert_eq!(driver.state().log, [Message::Pressed("question"), Message::Pressed("mark")]);
    });
}

/// The toolkit's own simulator comes to the same as our driver.
#[test]
fn a_tap_counts_in_the_simulator_too() {
    let look = Look::new(Theme::Paper, TextSize::Usual, Size::new(1280.0, 800.0), 1.0);
    let button: Element<'_, &str> = primary(&look, "Go on", "go").into();
    let mut simulator = iced_test::simulator(button);
    simulator.click("Go on").unwrap();
    assert_eq!(simulator.into_messages().collect::<Vec<_>>(), ["go"]);
}

#[test]
fn a_drag_that_starts_on_a_row_scrolls_and_presses_nothing() {
    on!(Page::List, |driver| {
        let from = driver.must_find("Row 5").unwrap();
        driver.drag(from, from + Vector::new(0.0, -300.0)).unwrap();
        assert_eq!(driver.state().log, []);
        let moved = driver.must_find("Row 6").unwrap();
        assert!(moved.y < from.y, "the list has not scrolled");
        driver.touch("Row 8").unwrap();
        assert_eq!(driver.state().log, [Message::Row(8)]);
    });
}

#[test]
fn a_slip_within_reach_still_counts_and_a_slide_away_does_not() {
    on!(Page::Walk, |driver| {
        let at = driver.must_find("Question").unwrap();
        driver.finger_down(1, at).unwrap();
        driver.finger_to(1, at + Vector::new(10.0, 6.0)).unwrap();
        driver.finger_up(1, at + Vector::new(10.0, 6.0)).unwrap();
        assert_eq!(driver.state().log.len(), 1);
        driver.finger_down(1, at).unwrap();
        driver.finger_to(1, at + Vector::new(30.0, 0.0)).unwrap();
        driver.finger_to(1, at).unwrap();
        driver.finger_up(1, at).unwrap();
        assert_eq!(driver.state().log.len(), 1);
        driver.mouse_down(at).unwrap();
        driver.mouse_to(at + Vector::new(0.0, -200.0)).unwrap();
        driver.mouse_up().unwrap();
        assert_eq!(driver.state().log.len(), 1);
    });
}

#[test]
fn a_second_finger_does_no_harm_to_a_tap() {
    on!(Page::Walk, |driver| {
        let first = driver.must_find("Question").unwrap();
        driver.finger_down(1, first).unwrap();
        driver.finger_down(2, Point::new(700.0, 600.0)).unwrap();
        driver.finger_up(2, Point::new(700.0, 600.0)).unwrap();
        driver.finger_up(1, first).unwrap();
        assert_eq!(driver.state().log, [Message::Pressed("question")]);
    });
}

#[test]
fn a_finger_that_is_lost_presses_nothing() {
    on!(Page::Walk, |driver| {
        let position = driver.must_find("Question").unwrap();
        driver.finger_down(1, position).unwrap();
        let id = iced::touch::Finger(1);
        driver.send(&[iced::Event::Touch(iced::touch::Event::FingerLost { id, position })]).unwrap();
        driver.finger_up(1, position).unwrap();
        assert_eq!(driver.state().log, []);
    });
}

#[test]
fn a_hold_closes_after_its_time() {
    on!(Page::Caution, |driver| {
        driver.hold("Press and hold", MS(1300)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done)]);
        let at = driver.must_find("Press and hold").unwrap();
        driver.mouse_down(at).unwrap();
        driver.wait(MS(1190)).unwrap();
        assert_eq!(driver.state().log.len(), 1);
        driver.wait(MS(60)).unwrap();
        assert_eq!(driver.state().log.len(), 2);
        driver.mouse_up().unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done), Message::Hold(HoldEvent::Done)]);
    });
}

#[test]
fn a_hold_let_go_early_says_too_short() {
    on!(Page::Caution, |driver| {
        driver.hold("Press and hold", MS(700)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::TooShort)]);
        let at = driver.must_find("Press and hold").unwrap();
        driver.finger_down(1, at).unwrap();
        driver.wait(MS(300)).unwrap();
        driver.finger_to(1, at - Vector::new(0.0, 200.0)).unwrap();
        driver.wait(MS(2000)).unwrap();
        let short = Message::Hold(HoldEvent::TooShort);
        assert_eq!(driver.state().log, [short.clone(), short]);
    });
}

#[test]
fn the_margin_of_a_hold_counts_and_a_second_finger_does_no_harm() {
    on!(Page::Caution, |driver| {
        let hold =
            driver.targets().into_iter().max_by(|a, b| a.bounds.height.total_cmp(&b.bounds.height)).unwrap();
        let corner = Point::new(hold.bounds.x + 2.0, hold.bounds.y + 2.0);
        driver.finger_down(7, corner).unwrap();
        driver.wait(MS(600)).unwrap();
        driver.finger_to(7, corner + Vector::new(20.0, 20.0)).unwrap();
        driver.finger_down(8, Point::new(500.0, 300.0)).unwrap();
        driver.finger_to(8, Point::new(520.0, 320.0)).unwrap();
        driver.finger_up(8, Point::new(520.0, 320.0)).unwrap();
        driver.wait(MS(700)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done)]);
    });
}

#[test]
fn a_hold_is_not_live_before_its_time_and_starts_afresh_on_a_new_page() {
    let late = |gallery: &mut Gallery| gallery.live_after = MS(1000);
    on!(Page::Caution, late, |driver| {
        driver.hold("Press and hold", MS(900)).unwrap();
        assert_eq!(driver.state().log, []);
        driver.wait(MS(200)).unwrap();
        driver.hold("Press and hold", MS(1300)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done)]);
        driver.message(Message::NextPage).unwrap();
        driver.hold("Press and hold", MS(900)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done), Message::NextPage]);
    });
}

/// The ring goes in four steps, and its middle says how many are left.
#[test]
fn a_hold_without_motion_counts_steps() {
    let still = |gallery: &mut Gallery| gallery.still = true;
    on!(Page::Caution, still, |driver| {
        let at = driver.must_find("Press and hold").unwrap();
        driver.finger_down(1, at).unwrap();
        let mut frames = Vec::new();
        for _ in 0..23 {
            driver.wait(MS(50)).unwrap();
            frames.push(driver.render().rgba);
        }
        frames.dedup();
        assert_eq!(frames.len(), 4, "steps that were drawn in 1.15 s");
        driver.wait(MS(100)).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::Done)]);
    });
    on!(Page::Caution, |driver| {
        let at = driver.must_find("Press and hold").unwrap();
        driver.finger_down(1, at).unwrap();
        let mut frames = Vec::new();
        for _ in 0..23 {
            driver.wait(MS(50)).unwrap();
            frames.push(driver.render().rgba);
        }
        frames.dedup();
        assert!(frames.len() > 15, "with motion it closes smoothly: {}", frames.len());
    });
}

#[test]
fn a_hold_works_by_keyboard() {
    on!(Page::Caution, |driver| {
        for _ in 0..20 {
            driver.key(Named::Tab).unwrap();
            if driver.targets().iter().any(|target| target.focused && target.bounds.height > 130.0) {
                break;
            }
        }
        driver.key_down(Named::Space).unwrap();
        driver.wait(MS(400)).unwrap();
        driver.key_up(Named::Space).unwrap();
        driver.key_down(Named::Enter).unwrap();
        driver.wait(MS(1300)).unwrap();
        driver.key_up(Named::Enter).unwrap();
        assert_eq!(driver.state().log, [Message::Hold(HoldEvent::TooShort), Message::Hold(HoldEvent::Done)]);
    });
}

/// The pad of the page to sign on reaches from 24 to 1256 px across, under its title and consent.
#[test]
fn strokes_come_in_units_of_the_pad_by_mouse_and_by_finger() {
    on!(Page::Sign, |driver| {
        let at = |x: f32, y: f32| Point::new(x, y);
        driver.mouse_down(at(640.0, 400.0)).unwrap();
        driver.mouse_to(at(700.0, 420.0)).unwrap();
        driver.mouse_to(at(2000.0, 420.0)).unwrap();
        driver.mouse_up().unwrap();
        driver.finger_down(3, at(100.0, 300.0)).unwrap();
        driver.finger_down(4, at(900.0, 500.0)).unwrap();
        driver.finger_to(4, at(950.0, 500.0)).unwrap();
        driver.finger_to(3, at(160.0, 310.0)).unwrap();
        driver.finger_up(4, at(950.0, 500.0)).unwrap();
        driver.finger_up(3, at(160.0, 310.0)).unwrap();
        let strokes: Vec<_> = driver.state().strokes.iter().skip(1).cloned().collect();
        let [by_mouse, by_finger] = strokes.as_slice() else { panic!("{strokes:?}") };
        assert_eq!(by_mouse.iter().map(|point| point.x).collect::<Vec<_>>(), [500, 549, 1000]);
        assert_eq!(by_finger.len(), 2);
        assert!(by_finger[0].x.abs_diff(62) <= 1 && by_finger[1].x.abs_diff(110) <= 1, "{by_finger:?}");
    });
}

/// A place on the plan of the gallery: 336 by 712 px, nose up, 24 px from the corner of the window.
fn in_gallery(place: impl Fn(&plan::PlanLayout) -> Point) -> Point {
    let size = Size::new(336.0, 712.0);
    let laid = plan::layout(
        &gallery::wren(),
        &gallery::pegs(),
        size,
        plan::Orientation::NoseUp,
        plan::Floor::Outside,
        1.0,
    );
    place(&laid) + Vector::new(24.0, 24.0)
}

#[test]
fn a_peg_is_tapped_where_it_stands_and_a_mark_set_where_one_taps() {
    on!(Page::Walk, |driver| {
        // Peg 10 stands before the nose.
        driver.touch_at(in_gallery(|plan| plan.pegs[9].center)).unwrap();
        assert_eq!(driver.state().log, [Message::Peg(10)]);
    });
    on!(Page::Walk, |gallery: &mut Gallery| gallery.marking = true, |driver| {
        driver.touch_at(in_gallery(|plan| plan.place((0.0, 0.0)))).unwrap();
        let [Message::Point(x, y)] = driver.state().log.as_slice() else {
            panic!("{:?}", driver.state().log)
        };
        assert!(x.abs() <= 2 && y.abs() <= 3, "the nose is at {x}, {y}");
        driver.drag(Point::new(100.0, 300.0), Point::new(200.0, 500.0)).unwrap();
        assert_eq!(driver.state().log.len(), 1);
    });
}
