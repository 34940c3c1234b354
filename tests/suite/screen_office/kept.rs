//! The Office screen: what was refused, what goes on while nobody is there, and records by a caution.

use std::path::Path;

use iced::keyboard::key::Named;
use sendoff::kiosk::screen;
use sendoff::kiosk::screen::office::{Change, Message};
use sendoff::kiosk::theme::TextSize;
use sendoff::ports::Disk as _;

use super::support::{self, archive, open};
use super::{ids, press};
use crate::archive::support::OFFICE;
use crate::kiosk_support::{PSEUDO, SIZES, Setup};

#[test]
fn what_waits_in_quarantine_is_told_with_its_reason_and_taken_in_once_that_is_gone() {
    let disk = archive(12);
    let records = support::chain(14);
    support::plant(&disk, "/media/stick", &records[13..]);
    let list = Path::new(OFFICE).join("trust/allowed_signers");
    let trusted = disk.read(&list, 1 << 20).unwrap();
    let nobody: Vec<u8> =
        String::from_utf8(trusted.clone()).unwrap().replace("t2 namespaces", "t9 namespaces").into_bytes();
    disk.plant(&list, &nobody);
    let mut kiosk = open(Setup::new().disk(&disk));
    kiosk.click_id("office-take");
    assert!(!kiosk.shows(&kiosk.say("office-apart")), "nothing was refused yet");
    kiosk.touch("Take in from stick");
    kiosk.expect("One was refused.");
    kiosk.touch(&kiosk.say("office-take-more"));
    kiosk.expect("One file was not taken in. It is kept with its reason.");
    kiosk.click_id("office-apart");
    assert!(kiosk.look().contains("t2-e00f63-000014-"), "{:#?}", kiosk.look().words());
    kiosk.touch(&kiosk.say("office-apart-open"));
    kiosk.expect("/media/stick/t2-e00f63-000014.zip");
    let (refused, again) = (kiosk.say("office-apart-next"), kiosk.say("office-apart-again"));
    kiosk.expect(&refused);
    // Its tablet is listed once more.
    disk.plant(&list, &trusted);
    kiosk.touch(&again);
    kiosk.expect("One new record is filed.");
    kiosk.touch(&kiosk.say("office-take-more"));
    kiosk.click_id("office-apart");
    kiosk.expect(&kiosk.say("office-apart-filed"));
    kiosk.touch(&kiosk.say("office-apart-open"));
    kiosk.expect(&kiosk.say("office-apart-filed-what"));
    assert!(!kiosk.shows(&again));
    for page in ["office-apart-what", "office-take-what"] {
        press(&mut kiosk, Named::Escape);
        kiosk.expect(&kiosk.say(page));
    }
    press(&mut kiosk, Named::Escape);
    assert_eq!(ids(&mut kiosk)[0], "000014", "back to the list");
}

#[test]
fn what_became_of_taking_in_is_kept_for_who_comes_back() {
    use sendoff::kiosk::World;
    use sendoff::kiosk::office::{Answer, Ask};
    let disk = archive(12);
    support::plant(&disk, "/media/stick", &support::chain(14)[12..]);
    let world =
        World::open(crate::archive::support::ports(&disk, support::TAKEN), "/data".into(), true).unwrap();
    let world = world.with_archive(Some(OFFICE.into()));
    let desk = world.office().unwrap();
    let (first, taking) = desk.visit();
    assert!(taking.is_none());
    // Nobody stays to hear it.
    let answers = desk.answers(&world, Ask::TakeIn("/media/stick".into()));
    assert!(answers.iter().any(|answer| matches!(answer, Answer::Taking { done: 1, of: 2 })));
    let (second, taking) = desk.visit();
    let Some(Answer::Took { result: Ok(summary), .. }) = taking else { panic!("{taking:?}") };
    assert_eq!((summary.new.len(), second > first), (2, true));
    assert!(desk.visit().1.is_none(), "it is told once");
}

#[test]
fn a_caution_is_found_by_its_words_and_how_it_was_answered() {
    let mut kiosk = open(Setup::new().disk(&archive(12)));
    let all = ids(&mut kiosk).len();
    kiosk.touch(&kiosk.say("office-filters"));
    kiosk.fill("office-caution", "xqz");
    kiosk.expect(&kiosk.say("office-filter-caution-none"));
    kiosk.fill("office-caution", "lp-supply");
    kiosk.touch("lp-supply-2");
    kiosk.expect(&kiosk.say("office-filter-answer-of-it"));
    kiosk.touch(&kiosk.say("office-answer-refused"));
    kiosk.click_id("office-filters-done");
    let chip = "Caution lp-supply-2";
    let refused = ids(&mut kiosk);
    assert!(refused.len() < all, "{refused:?}");
    kiosk.touch(&kiosk.say("office-answer-refused"));
    kiosk.expect("12 of 12 records");
    kiosk.touch(chip);
    assert!(!kiosk.shows(chip));
}

#[test]
fn the_pages_of_a_record_of_taking_in_and_of_quarantine_fit_every_size() {
    let manners = [(TextSize::Usual, "en-US"), (TextSize::Usual, PSEUDO), (TextSize::Largest, PSEUDO)];
    for (size, (text, staff)) in SIZES.into_iter().flat_map(|size| manners.map(|manner| (size, manner))) {
        let disk = archive(12);
        disk.plant(Path::new("/media/stick/t2-e00f63-000014.zip"), b"half of a file");
        let mut kiosk = open(Setup::new().size(size).text(text).staff(staff).disk(&disk));
        let mut page = |name: &str, message: Message| {
            kiosk.message(sendoff::kiosk::Message::Screen(screen::Message::Office(message)));
            assert_eq!(kiosk.look().faults(), Vec::<String>::new(), "{name} {size:?} {text:?} {staff}");
        };
        page("record", Message::RecordChosen("t2-e00f63-000012".to_owned()));
        page("copy out", Message::ExportAsked);
        page("copied", Message::PlaceChosen("/media/stick".into()));
        page("back", Message::Back);
        page("list", Message::Back);
        page("take in", Message::TakeInAsked);
        page("taken in", Message::PlaceChosen("/media/stick".into()));
        page("take in more", Message::TakeInAsked);
        page("quarantine", Message::QuarantineAsked);
        page("file", Message::KeptChosen(0));
        page("filters", Message::FiltersAsked);
        page("caution", Message::Filter(Change::CautionTyped("awning".to_owned())));
    }
}
