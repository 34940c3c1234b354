//! By keyboard, by ours and by a real one.

use std::time::Duration;

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

/// Rows and chips to choose from; beside them arrow keys do nothing.
#[test]
fn arrow_keys_go_through_things_to_choose_from() {
    on!(Page::Parts, |driver| {
        let on = |driver: &mut Driver<'_, _>, key: Named, text: &str| {
            driver.key(key).unwrap();
            let at = driver.must_find(text).unwrap();
            let focused: Vec<_> = driver.targets().into_iter().filter(|target| target.focused).collect();
            focused.len() == 1 && focused[0].bounds.contains(at)
        };
        let tabs = (0..20).position(|_| on(&mut driver, Named::Tab, "Nothing holds it"));
        assert!(tabs.is_some(), "the first row has the focus");
        assert!(on(&mut driver, Named::ArrowDown, "It may stay out"));
        assert!(on(&mut driver, Named::ArrowDown, "Nothing holds it"), "from the last to the first");
        assert!(on(&mut driver, Named::ArrowUp, "It may stay out"));
        assert!(on(&mut driver, Named::Tab, "Fresh"));
        assert!(on(&mut driver, Named::ArrowLeft, "House battery"));
        assert!(on(&mut driver, Named::Tab, "The keys are with the renter"));
        assert!(on(&mut driver, Named::ArrowDown, "The keys are with the renter"));
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

/// Touches a key of the last row by its place: Shift, marks, layout, space, back, done.
macro_rules! last_row {
    ($driver:ident, $at:expr) => {{
        let done = $driver.must_find("Done").unwrap();
        let mut row: Vec<_> = $driver
            .targets()
            .into_iter()
            .filter(|target| target.bounds.contains(iced::Point::new(target.bounds.center_x(), done.y)))
            .collect();
        row.sort_by(|a, b| a.bounds.x.total_cmp(&b.bounds.x));
        assert_eq!(row.len(), 6, "{row:?}");
        $driver.touch_at(row[$at].bounds.center()).unwrap();
    }};
}
const SHIFT: usize = 0;
const LAYOUT: usize = 2;
const SPACE: usize = 3;
const BACK: usize = 4;

/// Opens the first field of the page.
macro_rules! touch_field {
    ($driver:ident) => {{
        let field = $driver.targets().into_iter().find(|target| target.kind == TargetKind::Field).unwrap();
        $driver.touch_at(field.bounds.center()).unwrap();
    }};
}

#[test]
fn our_keys_come_up_for_a_field_and_write_into_it() {
    on!(Page::Type, |driver| {
        assert_eq!(driver.find("q"), None);
        touch_field!(driver);
        for key in ["s", "a", "m"] {
            driver.touch(key).unwrap();
        }
        assert_eq!(driver.state().name, "sam");
        last_row!(driver, BACK);
        assert_eq!(driver.state().name, "sa");
        last_row!(driver, SPACE);
        last_row!(driver, SHIFT);
        driver.touch("M").unwrap();
        driver.touch("y").unwrap();
        driver.touch("?#é").unwrap();
        driver.touch("ö").unwrap();
        assert_eq!(driver.state().name, "sa Myö");
        driver.touch("Done").unwrap();
        assert_eq!(driver.find("abc"), None);
        assert_eq!(driver.find("q"), None);
    });
}

/// The first letter of each word, until Shift says otherwise.
#[test]
fn a_name_begins_with_capitals() {
    on!(Page::Type, |driver| {
        let last = driver.targets().into_iter().rfind(|target| target.kind == TargetKind::Field).unwrap();
        driver.touch_at(last.bounds.center()).unwrap();
        for key in ["S", "a", "m"] {
            driver.touch(key).unwrap();
        }
        last_row!(driver, SPACE);
        driver.touch("V").unwrap();
        driver.touch("a").unwrap();
        last_row!(driver, SPACE);
        last_row!(driver, SHIFT);
        driver.touch("d").unwrap();
        assert_eq!(driver.state().name, "Sam Va d");
        driver.touch("Done").unwrap();
        // Two touches of one place in one moment would choose a word.
        driver.touch_at(last.bounds.center() + iced::Vector::new(60.0, 0.0)).unwrap();
        driver.touch("e").unwrap();
        assert_eq!(driver.state().name, "Sam Va de", "one goes on with what was begun");
    });
}

#[test]
fn shift_twice_keeps_capitals_and_slowly_twice_does_not() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        last_row!(driver, SHIFT);
        driver.wait(Duration::from_millis(200)).unwrap();
        last_row!(driver, SHIFT);
        for key in ["A", "B"] {
            driver.touch(key).unwrap();
        }
        last_row!(driver, SHIFT);
        driver.touch("c").unwrap();
        last_row!(driver, SHIFT);
        driver.wait(Duration::from_millis(2000)).unwrap();
        last_row!(driver, SHIFT);
        driver.touch("d").unwrap();
        assert_eq!(driver.state().name, "ABcd");
    });
}

#[test]
fn what_is_typed_goes_in_at_the_caret() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        for key in ["a", "c"] {
            driver.touch(key).unwrap();
        }
        let field = driver.targets().into_iter().find(|target| target.kind == TargetKind::Field).unwrap();
        driver.touch_at(field.bounds.position() + iced::Vector::new(4.0, field.bounds.height / 2.0)).unwrap();
        driver.touch("b").unwrap();
        assert_eq!(driver.state().name, "bac");
    });
}

#[test]
fn a_held_key_offers_its_variants_and_the_finger_slides_onto_one() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        let e = driver.must_find("e").unwrap();
        driver.finger_down(1, e).unwrap();
        driver.wait(Duration::from_millis(300)).unwrap();
        assert_eq!(driver.find("ê"), None, "too early");
        driver.wait(Duration::from_millis(300)).unwrap();
        let variant = driver.must_find("ê").unwrap();
        assert!(variant.y < e.y, "they stand over the key");
        driver.finger_to(1, variant).unwrap();
        driver.finger_up(1, variant).unwrap();
        assert_eq!((driver.state().name.clone().as_str(), driver.find("ê")), ("ê", None));
        driver.touch("t").unwrap();
        assert_eq!(driver.state().name, "êt", "the key is free again");
    });
}

#[test]
fn a_held_key_may_be_let_go_and_a_variant_tapped_or_left() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        let hold = Duration::from_millis(600);
        driver.hold("n", hold).unwrap();
        assert_eq!(driver.state().name, "", "a held key writes nothing itself");
        driver.touch("ñ").unwrap();
        assert_eq!(driver.state().name, "ñ");
        driver.hold("u", hold).unwrap();
        driver.touch("b").unwrap();
        assert_eq!((driver.state().name.clone().as_str(), driver.find("ü")), ("ñb", None));
        let at = driver.must_find("o").unwrap();
        driver.mouse_down(at).unwrap();
        driver.wait(hold).unwrap();
        let at = driver.must_find("ø").unwrap();
        driver.mouse_to(at).unwrap();
        driver.mouse_up().unwrap();
        assert_eq!(driver.state().name, "ñbø");
    });
}

#[test]
fn two_thumbs_may_be_down_at_once() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        let (a, l) = (driver.must_find("a").unwrap(), driver.must_find("l").unwrap());
        driver.finger_down(1, a).unwrap();
        driver.finger_down(2, l).unwrap();
        driver.finger_up(1, a).unwrap();
        driver.finger_up(2, l).unwrap();
        assert_eq!(driver.state().name, "al");
    });
}

#[test]
fn the_layout_follows_the_reader_and_its_key_changes_it() {
    let german = |gallery: &mut Gallery| gallery.layout = Layout::De;
    on!(Page::Type, german, |driver| {
        touch_field!(driver);
        let (y, x) = (driver.must_find("y").unwrap(), driver.must_find("x").unwrap());
        assert!(y.x < x.x, "y stands where others have z");
        driver.touch("ü").unwrap();
        last_row!(driver, LAYOUT);
        assert_eq!(driver.find("ü"), None);
        driver.touch("Done").unwrap();
        touch_field!(driver);
        assert!(driver.find("EN").is_some(), "it stays as it was chosen");
        for (sign, own) in [("ES", "ñ"), ("FR", "ç"), ("DE", "ö")] {
            last_row!(driver, LAYOUT);
            assert!(driver.find(sign).is_some() && driver.find(own).is_some(), "{sign}");
        }
    });
}

#[test]
fn our_keys_step_aside_for_a_real_keyboard() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        assert!(driver.find("q").is_some());
        driver.type_text("Sam").unwrap();
        assert_eq!((driver.state().name.clone().as_str(), driver.find("q")), ("Sam", None));
        driver.key(Named::Tab).unwrap();
        assert_eq!(driver.find("q"), None, "nor do they come up for the next field");
        touch_field!(driver);
        assert!(driver.find("q").is_some(), "a touch brings them back");
    });
}

/// What is pressed with the mouse must not move away from under it before it is let go.
#[test]
fn our_keys_stay_while_the_mouse_is_held_down_elsewhere() {
    on!(Page::Type, |driver| {
        touch_field!(driver);
        driver.mouse_down(iced::Point::new(4.0, 4.0)).unwrap();
        assert!(driver.find("q").is_some());
        driver.mouse_up().unwrap();
        assert_eq!(driver.find("q"), None);
    });
}

/// A window that draws slowly gets several letters between two frames, and the first of them puts our keys away.
#[test]
fn letters_that_come_in_one_go_are_all_written() {
    use iced::keyboard::{self, Key, key};
    on!(Page::Type, |driver| {
        touch_field!(driver);
        assert!(driver.find("q").is_some());
        let letters = ["s", "a", "m"].map(|letter| {
            iced::Event::Keyboard(keyboard::Event::KeyPressed {
                key: Key::Character(letter.into()),
                modified_key: Key::Character(letter.into()),
                physical_key: key::Physical::Unidentified(key::NativeCode::Unidentified),
                location: keyboard::Location::Standard,
                modifiers: keyboard::Modifiers::empty(),
                text: Some(letter.into()),
                repeat: false,
            })
        });
        driver.send(&letters).unwrap();
        assert_eq!((driver.state().name.clone().as_str(), driver.find("q")), ("sam", None));
    });
}

/// Every letter of every layout has a shape in the bundled letters.
#[test]
fn no_key_shows_an_empty_box() {
    use iced::advanced::graphics::text::{cosmic_text as cosmic, font_system, to_attributes};
    fonts::only_bundled();
    let mut letters: Vec<char> = Vec::new();
    for layout in Layout::ALL {
        for layer in [Layer::Small, Layer::Capital, Layer::Marks] {
            for letter in layout.rows(layer).concat() {
                letters.push(letter);
                letters.extend(layout.variants(letter));
            }
        }
    }
    let mut system = font_system().write().unwrap();
    let system = system.raw();
    for letter in letters {
        let mut buffer = cosmic::Buffer::new(system, cosmic::Metrics::new(20.0, 26.0));
        let attributes = to_attributes(fonts::BOLD);
        buffer.set_text(system, &letter.to_string(), &attributes, cosmic::Shaping::Advanced, None);
        buffer.shape_until_scroll(system, false);
        let drawn = buffer.layout_runs().all(|run| run.glyphs.iter().all(|glyph| glyph.glyph_id != 0));
        assert!(drawn, "no letters have `{letter}`");
    }
}

/// Keys and variants are large enough and lie within the window, at every size of window and text.
#[test]
fn keys_and_variants_fit_every_window() {
    fonts::prepare();
    for size in [(1280u32, 800u32), (1920, 1200), (800, 1280)] {
        for (layout, held) in [(Layout::De, "o"), (Layout::FrCa, "a"), (Layout::EnUs, "z")] {
            for text in [TextSize::Usual, TextSize::Largest] {
                let program = program(Page::Type, Theme::Paper);
                let mut state = Gallery::new(Page::Type, Theme::Paper);
                (state.layout, state.text) = (layout, text);
                let mut driver = Driver::with_state(&program, state, size).unwrap();
                touch_field!(driver);
                driver.hold(held, Duration::from_millis(600)).unwrap();
                let scale = size.0.min(size.1) as f32 / 800.0;
                let keys = driver.must_find("1").unwrap().y - 40.0 * scale;
                for target in driver.targets().iter().filter(|target| target.bounds.y > keys) {
                    let b = target.bounds;
                    let fits = b.x >= -0.01 && b.x + b.width <= size.0 as f32 + 0.01;
                    let below = b.y + b.height <= size.1 as f32 + 0.01;
                    assert!(fits && below, "{layout:?} {held} at {size:?}: {b:?}");
                    assert!(b.width.min(b.height) >= 43.99 * scale, "{layout:?} at {size:?}: {b:?}");
                }
            }
        }
    }
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
fn the_pads_say_which_key_was_pressed() {
    on!(Page::Digits, |driver| {
        for key in ["4", "0", ".", "Done"] {
            driver.touch(key).unwrap();
        }
        let presses = [KeyPress::Char('4'), KeyPress::Char('0'), KeyPress::Char('.'), KeyPress::Done];
        assert_eq!(driver.state().log, presses.map(Message::Key));
    });
}

/// A PIN has no point, a telephone number its signs.
#[test]
fn each_pad_has_the_signs_of_its_numbers() {
    for (pad, has, lacks) in [
        (Keys::Digits, &["0", "9"][..], &[".", "+", "*", "#"][..]),
        (Keys::Decimal, &["0", "."], &["+", "*", "#"]),
        (Keys::Phone, &["0", "+", "*", "#"], &["."]),
    ] {
        let change = |gallery: &mut Gallery| gallery.pad = pad;
        on!(Page::Digits, change, |driver| {
            for sign in has {
                driver.touch(sign).unwrap();
                let letter = sign.chars().next().unwrap();
                assert_eq!(driver.state().log.last(), Some(&Message::Key(KeyPress::Char(letter))));
            }
            for sign in lacks {
                assert_eq!(driver.find(sign), None, "{pad:?}");
            }
        });
    }
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
