//! `record.txt`, for people.

use sendoff::measure::System;
use sendoff::record::build::handoff;
use sendoff::record::form::{ReadingOutcome, Record};
use sendoff::record::seal::Kind;
use sendoff::record::text::{CONSENT_POINTS, consent_text, render};
use sendoff::walk::{Event, Who};

use super::support::{Led, ROBIN, SCRIPTS, Ways, head, speaker};
use crate::seal::{has, run, words};

/// Digests, key and version go with scripts and program, which others change.
fn steady(text: &str) -> String {
    let text = text.replace(&head(Kind::Handoff).id, "t2-5f3a9c-000123");
    let text = text.replace(SCRIPTS.bundle.digest(), "<digest of the scripts>");
    text.replace(env!("CARGO_PKG_VERSION"), "<version>")
}

/// All snapshots of the suite lie in one folder.
fn snapshot(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("../snapshots");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

/// From a heading to just before another.
fn part<'a>(text: &'a str, from: &str, to: &str) -> &'a str {
    let start = text.find(from).unwrap_or_else(|| panic!("{from} is there"));
    let end = text[start..].find(to).unwrap_or_else(|| panic!("{to} follows {from}"));
    &text[start..start + end]
}

#[test]
fn a_clerk_can_read_it() {
    let caution = "height-clearance-1";
    let (_, text) = Led::whole(Ways { refused: Some(caution), ..Ways::default() }).files();
    let text = steady(&text);
    snapshot("record_front", part(&text, "====", "CAUTIONS AND ANSWERS"));
    snapshot("record_back", part(&text, "QUESTIONS", "WHAT WAS SHOWN"));
    snapshot("record_verify", &text[text.find("HOW TO VERIFY").unwrap()..]);
}

/// The Wren's battery is to be charged below 12.2 V (handbook E.1.7), and the record alone tells it.
#[test]
fn a_reading_out_of_bounds_is_told_from_the_record_alone() {
    let led = Led::whole(Ways::default());
    let mut record = handoff(&led.walk, &SCRIPTS, &head(Kind::Handoff)).unwrap();
    let volts = record.readings.iter().position(|r| r.id == "house-volts").unwrap();
    assert_eq!(
        (record.readings[volts].least.as_deref(), &record.readings[volts].most),
        (Some("12.2"), &None)
    );
    for (read, told) in [("11.6", true), ("12.2", false), ("14.8", false)] {
        let ReadingOutcome::Taken { value, .. } = &mut record.readings[volts].outcome else { panic!() };
        *value = read.into();
        let text = render(&Record::Handoff(Box::new(record.clone())), &SCRIPTS.words);
        assert_eq!(text.contains("Below the least of 12.2 V."), told, "{read}: {text}");
    }
    let tires = record.readings.iter().find(|r| r.id == "tire-front").unwrap();
    // 75 psi less the 10 % of the lot, up to the psi: handbook FIG-22.
    assert_eq!(tires.least.as_deref(), Some("68"));
}

/// A caution and a step with words of their own, so that the lot's wording may change.
#[test]
fn cautions_stand_with_text_and_answers() {
    let caution = "height-clearance-1";
    let led = Led::whole(Ways { refused: Some(caution), hurried: Some("keys-1"), ..Ways::default() });
    let mut record = handoff(&led.walk, &SCRIPTS, &head(Kind::Handoff)).unwrap();
    record.route.steps.retain(|s| s.topic == "height-clearance" || s.id == "keys-door");
    for step in &mut record.route.steps {
        step.title = format!("Step {}", step.id);
        step.texts.iter_mut().for_each(|t| {
            t.show = vec!["Something that staff show.".into()];
            t.know = vec!["Something that is good to know.".into()];
        });
        for caution in &mut step.cautions {
            caution.title = "A title".into();
            for text in &mut caution.texts {
                text.hazard = "What is dangerous.".into();
                text.harm = "What it does.".into();
                text.avoid = "What to do.".into();
                text.reading_ms = 2667;
            }
        }
    }
    let text = steady(&render(&Record::Handoff(Box::new(record)), &SCRIPTS.words));
    snapshot("record_cautions", part(&text, "CAUTIONS AND ANSWERS", "QUESTIONS"));
    snapshot("record_shown", part(&text, "WHAT WAS SHOWN", "FIGURES"));
}

#[test]
fn what_decides_a_dispute_stands_first() {
    let (_, text) = Led::whole(Ways { refused: Some("height-clearance-1"), ..Ways::default() }).files();
    let order = [
        "HANDOFF RECORD",
        "REFUSED",
        "Wants to read it at home first.",
        "NOT SHOWN",
        "Gusts",
        "WHO",
        "THE UNIT",
        "THE TRIP",
        "READINGS",
        "WHAT WAS LENT",
        "WHAT IT CAN COST",
        "MARKS ON THE UNIT",
        "CAUTIONS AND ANSWERS",
        "QUESTIONS",
        "LEAVING CHECK",
        "CONSENT",
        "SIGNATURES",
        "COPY FOR THE RENTER",
        "FIGURES",
        "HOW TO VERIFY",
    ];
    let places: Vec<usize> = order.iter().map(|o| text.find(o).unwrap_or_else(|| panic!("{o}"))).collect();
    assert!(places.is_sorted(), "{places:?}");
}

/// East Asian widths by Python's `unicodedata`, an outside source: lines, and not our own count of them.
#[test]
fn no_line_is_wider_than_72_columns_in_any_language() {
    for (language, system) in [("en-US", System::Us), ("en-US", System::Metric), ("en-XA", System::Us)] {
        let (_, text) = Led::whole(Ways { language, system, ..Ways::default() }).files();
        for line in text.lines() {
            assert!(line.chars().count() <= 72, "{language}: {line}");
            assert_eq!(line.trim_end(), line);
        }
        assert!(!text.contains('⟨'), "{language}: {:?}", text.lines().find(|l| l.contains('⟨')));
        assert!(!text.contains('\u{A0}'));
    }
    let wide = "鍵をなくした場合はどうすればよいですか。新しい鍵はいくらしますか。いつ届きますか。".repeat(3);
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    led.say(Event::QuestionNoted { step: "keys".into(), caution: None, text: wide, answered: true });
    led.consent();
    led.sign();
    led.begin_seal();
    let (_, text) = led.files();
    if !has("python3", &["-c", "import unicodedata"]) {
        return;
    }
    let script = "import sys,unicodedata as u\n\
                  w=lambda l: sum(0 if u.combining(c) else 2 if u.east_asian_width(c) in 'WF' else 1 for c in l)\n\
                  print(max(w(l) for l in sys.stdin.buffer.read().decode().split('\\n')))";
    let out = run(std::path::Path::new("."), "python3", &["-c", script], text.as_bytes());
    assert!(words(&out).trim().parse::<usize>().unwrap() <= 72, "{}", words(&out));
}

#[test]
fn the_pseudo_language_comes_through_whole() {
    let led = Led::whole(Ways { language: "en-XA", ..Ways::default() });
    let record = led.record();
    let (_, text) = led.files();
    let texts = record.route.steps.iter().flat_map(|s| &s.cautions).flat_map(|c| &c.texts);
    assert!(texts.clone().count() > 20);
    assert!(texts.clone().all(|t| t.language == "en-XA"));
    assert!(text.contains("Robin Vale"));
    assert!(!text.contains("HANDOFF RECORD"));
}

#[test]
fn demo_and_rehearsal_say_so_in_every_section() {
    let led = Led::whole(Ways { rehearsal: true, ..Ways::default() });
    let (_, text) = led.files();
    // A section lies between two rules: before its head, and behind it.
    let dashes = "-".repeat(72);
    let sections = text.lines().filter(|l| **l == dashes).count() / 2 + 1;
    for notice in ["DEMO:", "REHEARSAL:"] {
        assert_eq!(text.lines().filter(|l| l.starts_with(notice)).count(), sections, "{notice}");
    }
    assert!(sections > 15);
    let record = led.record();
    assert!(record.head.demo && record.head.rehearsal);
}

#[test]
fn what_people_typed_cannot_pose_as_the_record_itself() {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    let text = format!("ok\n{}\nSIGNATURES\nnobody", "-".repeat(72));
    led.say(Event::QuestionNoted { step: "keys".into(), caution: None, text, answered: true });
    led.consent();
    led.sign();
    led.begin_seal();
    let (_, text) = led.files();
    assert_eq!(text.lines().filter(|l| *l == "SIGNATURES").count(), 1);
    assert!(text.contains("\n    SIGNATURES\n    nobody\n"));
}

#[test]
fn paper_is_noted_too() {
    let mut led = Led::begin(Ways::default());
    led.open();
    led.round();
    let (_, text) = consent_text(&speaker("en-US", System::Us));
    let shown = sendoff::walk::Shown { text, language: "en-US".into() };
    led.say(Event::ConsentAnswered { by: ROBIN, given: false, shown });
    led.sign();
    led.begin_seal();
    let (_, text) = led.files();
    assert!(text.contains("Robin Vale (1) asked for paper"));
    assert!(led.walk.signature(Who::Agent).is_some());
}

/// 15 USC 7001(c)(1), by the count of facts: seven points, then the sentence agreed to.
#[test]
fn the_consent_makes_seven_points() {
    let (lines, digest) = consent_text(&speaker("en-US", System::Us));
    assert_eq!((lines.len(), digest.len()), (CONSENT_POINTS + 2, 64));
    let text = lines.join("\n");
    for wanted in [
        "paper instead",
        "take back your yes",
        "nothing else",
        "new address",
        "paper copy",
        "you need",
        "I agree",
    ] {
        assert!(text.contains(wanted), "{wanted}");
    }
    assert!(text.contains("555-0142"), "the lot's phone is filled in");
    let mut hashed = text.clone();
    hashed.push('\n');
    assert_eq!(sendoff::record::seal::Digest::of(hashed.as_bytes()).to_string(), digest);
}
