//! Handing records in from the Yard: two taps, and a key that staff compare once.

use std::path::Path;

use sendoff::ports::fake::MemoryDisk;
use sendoff::words::Args;

use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup};
use crate::outbox::{office_takes, tablet};
use sendoff::kiosk::theme::TextSize;

fn to_stick(kiosk: &Kiosk) -> String {
    let lot = &kiosk.setup.lot;
    let reader = sendoff::words::Reader::new(&kiosk.setup.staff, sendoff::kiosk::staff_reader(lot).system);
    lot.words.say(&reader, "yard-hand-in-to", &Args::new().text("place", "office"))
}

/// Lets the three seconds run that stand in for a PIN.
fn hold(kiosk: &mut Kiosk) {
    let mut now = std::time::Instant::now();
    kiosk.tick(now);
    let at = kiosk.reach(&kiosk.say("gate-hold"), 0);
    kiosk.finger_down(at);
    for _ in 0..70 {
        now += std::time::Duration::from_millis(50);
        kiosk.tick(now);
    }
    kiosk.finger_up(at);
}

#[test]
fn records_are_handed_in_with_two_taps_and_struck_off_by_the_receipt() {
    let disk = MemoryDisk::new();
    let (own, records) = tablet(&disk, 2);
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.touch(&kiosk.say("yard-hand-in"));
    kiosk.touch(&to_stick(&kiosk));
    let told = kiosk.app.notice().unwrap().text.clone();
    assert!(told.contains("2 records are copied to office"), "{told}");
    let copy = Path::new("/media/office/sendoff-records").join(format!("{}.zip", records[0].id));
    assert!(disk.files().iter().any(|(path, _)| *path == copy));
    let archive = office_takes(&disk, &own);
    kiosk.click_id("yard-hand-in");
    kiosk.click(&to_stick(&kiosk));
    // Nobody has said yet whose key it is.
    kiosk.expect(&archive.office_key().unwrap().fingerprint());
    kiosk.click_id("yard-office-yes");
    hold(&mut kiosk);
    assert_eq!(own.office().unwrap().as_ref(), Some(archive.office_key().unwrap().public()));
    kiosk.click_id("yard-hand-in");
    kiosk.click(&to_stick(&kiosk));
    let told = kiosk.app.notice().unwrap().text.clone();
    assert!(told.contains("The office has 2 records"), "{told}");
    assert!(own.waiting().unwrap().is_empty());
    assert!(!kiosk.shows(&kiosk.say("yard-hand-in")), "nothing waits");
}

#[test]
fn a_key_that_was_not_compared_is_not_kept() {
    let disk = MemoryDisk::new();
    let (own, _) = tablet(&disk, 1);
    own.hand_in(Path::new("/media/office")).unwrap();
    office_takes(&disk, &own);
    let mut kiosk = Setup::new().disk(&disk).boot();
    kiosk.click_id("yard-hand-in");
    kiosk.click(&to_stick(&kiosk));
    kiosk.click_id("yard-office-yes");
    kiosk.click_id("gate-back");
    kiosk.click(&kiosk.say("yard-hand-in-left"));
    kiosk.expect(&kiosk.say("yard-hand-in"));
    assert_eq!(own.office().unwrap(), None);
    assert_eq!(own.waiting().unwrap().len(), 1);
}

#[test]
fn without_a_stick_it_says_so_and_looks_again() {
    let disk = MemoryDisk::new();
    let (_, _) = tablet(&disk, 1);
    let bare = MemoryDisk::new();
    for (path, bytes) in disk.files() {
        bare.plant(&path, &bytes);
    }
    let mut kiosk = Setup::new().disk(&bare).boot();
    kiosk.click_id("yard-hand-in");
    kiosk.expect(&kiosk.say("yard-hand-in-none"));
    bare.plant(Path::new("/media/office/x"), b"");
    kiosk.click(&kiosk.say("yard-hand-in-again"));
    kiosk.expect(&to_stick(&kiosk));
}

/// The Yard with each state of handing in.
fn states(setup: impl Fn() -> Setup, look: &mut dyn FnMut(&mut Kiosk, &str)) {
    let disk = MemoryDisk::new();
    let (own, _) = tablet(&disk, 2);
    let mut kiosk = setup().disk(&disk).boot();
    look(&mut kiosk, "yard");
    kiosk.click_id("yard-hand-in");
    look(&mut kiosk, "where");
    kiosk.click(&to_stick(&kiosk));
    look(&mut kiosk, "copied");
    office_takes(&disk, &own);
    kiosk.click_id("yard-hand-in");
    kiosk.click(&to_stick(&kiosk));
    look(&mut kiosk, "whose");
}

#[test]
fn handing_in_fits_everywhere() {
    let mut faults = Vec::new();
    for size in SIZES {
        for text in [TextSize::Usual, TextSize::Largest] {
            for language in ["en-US", PSEUDO] {
                let setup = || Setup::new().size(size).text(text).staff(language);
                states(setup, &mut |kiosk, state| {
                    let found = kiosk.look().faults();
                    faults.extend(
                        found.into_iter().map(|f| format!("{size:?} {text:?} {language} {state}: {f}")),
                    );
                });
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

/// Each step took twice as long as its author thinks: three walks of the author against nine of twice the time come to
/// 1.75 times.
#[test]
fn a_card_says_how_long_the_walk_took_on_this_tablet() {
    let disk = MemoryDisk::new();
    let mut kiosk = Setup::new().disk(&disk).boot();
    let route = sendoff::route::build(&kiosk.setup.lot, "wren").unwrap();
    let count = route.steps.len();
    let minutes = |sum: u32| format!("{count} steps, about {}\u{a0}h {}\u{a0}min", sum / 60, sum % 60);
    let own: u32 = route.steps.iter().map(|s| u32::from(s.minutes)).sum();
    kiosk.expect(&minutes(own));
    let past = route.steps.iter().map(|step| {
        let seconds = u32::from(step.minutes) * 120;
        format!("\"{}\": (seconds: {:?}, missed: 0)", step.id, [seconds; 9])
    });
    let pace = format!("(steps: {{{}}})", past.collect::<Vec<_>>().join(", "));
    disk.plant(Path::new("/data/pace.ron"), pace.as_bytes());
    let mut kiosk = Setup::new().disk(&disk).boot();
    let seconds: u64 = route.steps.iter().map(|s| u64::from(s.minutes) * 105).sum();
    kiosk.expect(&minutes(u32::try_from(seconds.div_ceil(60)).unwrap()));
}

#[test]
fn frames_of_handing_in() {
    let Some(dir) = std::env::var_os("SENDOFF_FRAMES").map(|d| d.to_string_lossy().into_owned()) else {
        return;
    };
    for (name, size) in [("land", SIZES[0]), ("large", SIZES[1]), ("port", SIZES[2])] {
        for language in ["en-US", PSEUDO] {
            states(|| Setup::new().size(size).staff(language), &mut |kiosk, state| {
                let at = kiosk.reach(&kiosk.say("yard-key-open"), 0);
                let _ = at;
                kiosk.save(&format!("{dir}/hand-in-{state}-{name}-{language}.png"));
            });
        }
    }
}
