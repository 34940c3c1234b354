//! By keyboard, by ours and by a real one.

use iced::keyboard::key::Named;

use super::*;
use crate::kiosk::headless::TargetKind;

#[test]
fn tab_goes_through_everything_and_enter_presses_it() {
    on!(Page::List, |driver| {
        for _ in 0..3 {
            driver.key(Named::Tab).unwrap();
        }
        driver.key(Named::Enter).unwrap();
        driver.key_shifted(Named::Tab).unwrap();
        driver.key(Named::Space).unwrap();
        assert_eq!(driver.state().log, [Message::Row(3), Message::Row(2)]);
    });
}

#[test]
fn what_has_the_focus_comes_into_view() {
    on!(Page::List, |driver| {
        for _ in 0..30 {
            driver.key(Named::Tab).unwrap();
        }
        let focused = driver.targets().into_iter().find(|target| target.focused).unwrap();
        assert_eq!(focused.visible, Some(focused.bounds), "the focus is out of sight");
        driver.key_shifted(Named::Tab).unwrap();
        driver.key(Named::Enter).unwrap();
        assert_eq!(driver.state().log, [Message::Row(29)]);
    });
}

#[test]
fn a_press_takes_the_focus_away() {
    on!(Page::List, |driver| {
        driver.key(Named::Tab).unwrap();
        driver.touch("Row 4").unwrap();
        driver.key(Named::Enter).unwrap();
        assert_eq!(driver.state().log, [Message::Row(4)]);
    });
}

/// Also where a hold takes the press for itself.
#[test]
fn a_hold_takes_the_focus_from_a_button() {
    on!(Page::Caution, |driver| {
        driver.key(Named::Tab).unwrap();
        assert!(driver.targets().iter().any(|target| target.focused));
        let at = driver.must_find("Press and hold").unwrap();
        driver.finger_down(1, at).unwrap();
        assert!(driver.targets().iter().all(|target| !target.focused));
    });
}

#[test]
fn our_keys_come_up_for_a_field_and_write_into_it() {
    on!(Page::Type, |driver| {
        assert_eq!(driver.find("q"), None);
        let field = driver.targets().into_iter().find(|target| target.kind == TargetKind::Field).unwrap();
        driver.touch_at(field.bounds.center()).unwrap();
        for key in ["s", "a", "m"] {
            driver.touch(key).unwrap();
        }
        assert_eq!(driver.state().name, "sam");
        let back = driver.must_find("Done").unwrap() - iced::Vector::new(233.0, 0.0);
        driver.touch_at(back).unwrap();
        assert_eq!(driver.state().name, "sa");
        let shift = driver.must_find("?#é").unwrap() - iced::Vector::new(137.0, 0.0);
        driver.touch_at(shift).unwrap();
        driver.touch("M").unwrap();
        driver.touch("y").unwrap();
        driver.touch("?#é").unwrap();
        driver.touch("ö").unwrap();
        assert_eq!(driver.state().name, "saMyö");
        driver.touch("Done").unwrap();
        assert_eq!(driver.find("abc"), None);
        assert_eq!(driver.find("q"), None);
    });
}

#[test]
fn a_real_keyboard_writes_into_a_field_as_well() {
    on!(Page::Type, |driver| {
        driver.key(Named::Tab).unwrap();
        driver.type_text("Sam").unwrap();
        driver.key(Named::Backspace).unwrap();
        assert_eq!(driver.state().name, "Sa");
    });
}

#[test]
fn a_field_below_the_keys_comes_into_view() {
    on!(Page::Type, |driver| {
        let last = driver.targets().into_iter().rfind(|target| target.kind == TargetKind::Field).unwrap();
        assert!(last.bounds.y > 480.0, "the test needs a field where the keys will be");
        driver.touch_at(last.bounds.center()).unwrap();
        let keys = driver.must_find("1").unwrap();
        let focused = driver.targets().into_iter().find(|target| target.focused).unwrap();
        assert!(focused.visible.is_some_and(|seen| seen.y + seen.height < keys.y), "{focused:?}");
    });
}

#[test]
fn tab_does_not_go_through_our_keys() {
    on!(Page::Type, |driver| {
        for _ in 0..4 {
            driver.key(Named::Tab).unwrap();
            let focused = driver.targets().into_iter().find(|target| target.focused).unwrap();
            assert_eq!(focused.kind, TargetKind::Field);
        }
    });
}

#[test]
fn the_number_pad_says_which_key_was_pressed() {
    on!(Page::Digits, |driver| {
        for key in ["4", "0", ".", "Done"] {
            driver.touch(key).unwrap();
        }
        let presses = [KeyPress::Char('4'), KeyPress::Char('0'), KeyPress::Char('.'), KeyPress::Done];
        assert_eq!(driver.state().log, presses.map(Message::Key));
    });
}

#[test]
fn a_dialog_leaves_nothing_of_the_page_below() {
    on!(Page::Dialog, |driver| {
        assert_eq!(driver.find("Nothing holds it"), None);
        let covered = driver.texts();
        assert_eq!(covered.len(), 4, "{covered:?}");
        driver.touch_at(iced::Point::new(100.0, 100.0)).unwrap();
        driver.click_at(iced::Point::new(56.0, 414.0)).unwrap();
        assert_eq!(driver.state().log, []);
        driver.touch("No").unwrap();
        driver.key(Named::Tab).unwrap();
        driver.key(Named::Tab).unwrap();
        driver.key(Named::Enter).unwrap();
        driver.key(Named::Escape).unwrap();
        assert_eq!(driver.state().log, ["no", "yes", "closed"].map(Message::Pressed));
    });
}
