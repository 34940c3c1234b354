//! A whole handoff with a finger, while another one lies on the glass, and scrolls begin on buttons.

use std::time::Instant;

use iced::Point;
use sendoff::kiosk::screen::Screen;
use sendoff::ports::Clock as _;
use sendoff::walk::Phase;

use crate::deeds;
use crate::finger::{Does, Finger, drag, tell};
use crate::handoff::lead;
use crate::kiosk_support::{Kiosk, SIZES, Setup};

/// What a record might tell otherwise than it was.
const PLANTED: [(&str, &str); 7] = [
    ("/readings/0/outcome/value", "74"),
    ("/items/3/counted/count", "9"),
    ("/leaving/0/checked/good", "no"),
    ("/party/people/0/licence/expiry", "2030-05-31"),
    ("/questions/0/text", "Can I copy the keys?"),
    ("/signatures/0/by/number", "2"),
    ("/copy/chosen/choice", "declined"),
];
/// A finger that is down elsewhere.
const OTHER: u64 = 7;

/// Taps while another finger lies in an upper corner of the glass.
fn beside_another(kiosk: &mut Kiosk, at: Point, _now: Instant) {
    // A touch beside our keys puts them away.
    if kiosk.shows("Done") {
        tell(kiosk, 1, Does::Press, at);
        return tell(kiosk, 1, Does::Lift, at);
    }
    let width = kiosk.setup.size.0;
    let corner = Point::new(if at.x < width / 2.0 { width - 2.0 } else { 2.0 }, 2.0);
    tell(kiosk, OTHER, Does::Press, corner);
    tell(kiosk, 1, Does::Press, at);
    tell(kiosk, OTHER, Does::Move, Point::new(corner.x, 3.0));
    tell(kiosk, 1, Does::Lift, at);
    tell(kiosk, OTHER, Does::Lift, corner);
}

#[test]
fn a_whole_handoff_with_a_finger_is_sealed_as_it_was_done() {
    for size in [SIZES[0], SIZES[2]] {
        let mut finger = Finger::new(Setup::new().keys().size(size).boot(), beside_another);
        let now = finger.kiosk.setup.clock.now();
        let done = lead(&mut finger, |finger, pages| {
            finger.kiosk.resize(if pages % 10 < 5 { size } else { (size.1, size.0) });
            finger.wait(50);
        });
        let files = finger.kiosk.setup.disk.files();
        let sealed = files.into_iter().find(|(path, _)| path.extension().is_some_and(|e| e == "zip"));
        let told = deeds::record(&sealed.expect("a sealed record").1);
        let within = (now, finger.kiosk.setup.clock.now());
        deeds::agree(&told, &done, &[], within);
        assert!(deeds::differs(&told, &done, &["mark 1 dent hand by agent".to_owned()], within).is_some());
        assert!(deeds::differs(&told, &done, &[], (now, now)).is_some(), "times are looked at");
        for (place, other) in PLANTED {
            let mut planted = told.clone();
            *planted.pointer_mut(place).unwrap_or_else(|| panic!("no {place}")) = other.into();
            assert!(deeds::differs(&planted, &done, &[], within).is_some(), "{place}: {other}");
        }
    }
}

/// On every page of the walk: a finger comes down on something that can be pressed, moves on, and is lifted. That is
/// a scroll, or nothing, and never a press.
#[test]
fn a_scroll_that_begins_on_a_button_presses_nothing() {
    let mut finger = Finger::new(Setup::new().keys().boot(), |kiosk: &mut Kiosk, at, _| {
        tell(kiosk, 1, Does::Press, at);
        tell(kiosk, 1, Does::Lift, at);
    });
    lead(&mut finger, |finger, pages| {
        if pages % 4 > 0 {
            return;
        }
        let kiosk = &mut finger.kiosk;
        let before = (kiosk.walk().events(), shown(kiosk));
        let targets: Vec<Point> =
            kiosk.look().pressable.iter().filter_map(|p| p.visible).map(|v| v.center()).collect();
        for at in targets {
            let step = if at.y > 400.0 { -30.0 } else { 30.0 };
            let way: Vec<Point> = (0_u8..7).map(|i| Point::new(at.x, at.y + step * f32::from(i))).collect();
            drag(kiosk, 1, &way);
        }
        assert_eq!((kiosk.walk().events(), shown(kiosk)), before, "page {pages}");
        assert_eq!(kiosk.walk().phase(), Phase::Walking);
        kiosk.no_notice();
    });
}

/// What the page says; of a renter's page alone that it is one, since it says whether it was read to its end.
fn shown(kiosk: &mut Kiosk) -> Vec<String> {
    match kiosk.screen() {
        Screen::Walk(_) => kiosk.look().words().into_iter().map(str::to_owned).collect(),
        other => vec![format!("{:?}", std::mem::discriminant(other))],
    }
}
