//! A whole handoff of the Heron, as hands do it: by pointer at a window, or with fingers in memory.

use iced::Point;
use sendoff::kiosk::screen::Screen;
use sendoff::route::{Scale, Step};
use sendoff::script::Speaker;
use sendoff::walk::StepState;
use sendoff::words::Reader;

use crate::kiosk_support::{Kiosk, Press, lot};

/// The step at which the renter asks something.
const ASKED_AT: &str = "keys";
/// The step that is left out.
const LEFT_OUT: &str = "awning";

/// Whoever can be told what to do on the screen.
pub trait Hands {
    /// The kiosk that says where things are.
    fn kiosk(&mut self) -> &mut Kiosk;

    /// Presses these words; of several the first is 0.
    fn press_nth(&mut self, words: &str, nth: usize);

    /// Presses what is called so by its id.
    fn press_id(&mut self, id: &str);

    /// Puts a text into an empty field.
    fn fill(&mut self, id: &str, text: &str);

    /// Comes to the end of a page, and waits until that counts.
    fn read_to_the_end(&mut self);

    /// Presses what is called so by its id until the ring around it closes.
    fn hold(&mut self, id: &str);

    /// Writes a name around these words.
    fn sign(&mut self, words: &str);

    /// Presses these words, after which no walk is open.
    fn seal(&mut self, words: &str);

    /// Presses a point of the screen.
    fn press_at(&mut self, at: Point);

    fn press(&mut self, words: &str) {
        self.press_nth(words, 0);
    }

    /// Presses these words where they stand last: a card lies over its page.
    fn press_last(&mut self, words: &str) {
        let there = self.kiosk().look().texts.iter().filter(|text| text.text == words).count();
        self.press_nth(words, there.saturating_sub(1));
    }
}

/// Leads the whole handoff from the Yard to the sealed record, and tells what was done, in order. `between` comes in
/// before every page of the walk, with how many there were.
pub fn lead<H: Hands>(hands: &mut H, mut between: impl FnMut(&mut H, usize)) -> Vec<String> {
    hands.press("Start the walk");
    let mut done = opening(hands);
    for pages in 0..400 {
        between(hands, pages);
        match hands.kiosk().screen() {
            Screen::Walk(_) => step(hands, &mut done),
            Screen::Caution(_) => page(hands, &mut done),
            Screen::Closing(_) => {
                done.extend(closing(hands));
                return done;
            }
            other => panic!("not on the way: {other:?}"),
        }
    }
    panic!("the walk does not end");
}

fn opening(hands: &mut impl Hands) -> Vec<String> {
    hands.fill("opening-agent", "JM");
    hands.press("Miles and gallons");
    hands.fill("opening-booking", "Q-1183");
    hands.press("5");
    hands.press("Next");
    hands.fill("opening-name-1", "Ann Marlow");
    hands.fill("opening-age-1", "41");
    hands.press("Drives");
    hands.press("Next");
    for (field, text) in
        [("class", "B"), ("country", "Norway"), ("year", "2031"), ("month", "5"), ("day", "31")]
    {
        hands.fill(&format!("opening-{field}-1"), text);
    }
    // The first is the title of the license.
    hands.press_nth("Ann Marlow", 1);
    hands.press("Next");
    // Nobody must plan a trip.
    hands.press("Next");
    hands.press("First time");
    hands.press("Nobody");
    hands.press("Start the walk");
    told(&[
        "agent JM",
        "reader en-US us",
        "booking Q-1183, 5 nights",
        "party Ann Marlow 41 drives",
        "license 1 B Norway 2031-05-31",
        "present 1",
        "first time true",
        "translator ``",
        "opened",
    ])
}

fn told(lines: &[&str]) -> Vec<String> {
    lines.iter().map(|&line| line.to_owned()).collect()
}

/// Does what the step that is open asks for, and goes on.
fn step(hands: &mut impl Hands, done: &mut Vec<String>) {
    let lot = lot();
    let speaker = Speaker::new(&lot, "heron", Reader::default()).unwrap();
    let route = hands.kiosk().walk().route().clone();
    let Screen::Walk(open) = hands.kiosk().screen() else { panic!("no step is open") };
    let step = &route.steps[open.position()];
    if step.id == ASKED_AT && hands.kiosk().walk().questions().is_empty() {
        ask(hands, done);
    }
    if step.id == LEFT_OUT {
        return leave_out(hands, done);
    }
    if step.kit && hands.kiosk().walk().item(&route.items[0].tag).is_none() {
        hands.press(&format!("All {} as listed", route.items.len()));
        done.extend(route.items.iter().map(|item| format!("item {} {}", item.tag, item.count)));
    }
    if step.readings.iter().any(|r| hands.kiosk().walk().reading(&r.id).is_none()) {
        readings(hands, step, &speaker, done);
    }
    for line in step.leaving.iter().filter(|l| hands.kiosk().walk().leaving(l).is_none()).collect::<Vec<_>>()
    {
        hands.press_id(&format!("leaving-{line}-good"));
        done.push(format!("leaving {line} good"));
    }
    let seen: Vec<String> = hands.kiosk().look().words().into_iter().map(str::to_owned).collect();
    let onward = seen.iter().find(|w| {
        ["Shown. Next: ", "Give the tablet to the renter: ", "Next: ", "To the closing"]
            .iter()
            .any(|start| w.starts_with(start))
    });
    let onward = onward.unwrap_or_else(|| panic!("nothing leads on: {seen:#?}")).clone();
    if matches!(hands.kiosk().walk().step_state(&step.id), StepState::Open) {
        done.push(format!("shown {}", step.id));
    }
    hands.press(&onward);
}

/// The renter asks something that is not answered yet.
fn ask(hands: &mut impl Hands, done: &mut Vec<String>) {
    hands.press("Question");
    hands.press("Can I copy the key?");
    hands.press("Not answered");
    hands.press("Note the question");
    done.push(format!("question at {ASKED_AT}, open: Can I copy the key?"));
}

fn leave_out(hands: &mut impl Hands, done: &mut Vec<String>) {
    hands.press("Not shown...");
    hands.press("The weather: wind, rain, ice, darkness");
    hands.press("Leave it out");
    done.push(format!("left out {LEFT_OUT}: weather"));
}

/// Places a mark where the middle of the plan is in a window that is 1280 wide and 800 high.
pub fn mark(hands: &mut impl Hands) -> String {
    hands.press("Mark");
    hands.press_at(Point::new(440.0, 430.0));
    hands.press("Dent");
    hands.press("up to a hand");
    hands.press("Ann Marlow");
    hands.press("Place the mark");
    hands.press("Back to the step");
    "mark 1 dent hand by person 1".to_owned()
}

fn readings(hands: &mut impl Hands, step: &Step, speaker: &Speaker<'_>, done: &mut Vec<String>) {
    hands.press(&speaker.say(&format!("reading-{}", step.readings[0].id)));
    let mut gauges = 0;
    for (index, reading) in step.readings.iter().enumerate() {
        match &reading.scale {
            Scale::Parts(parts) => {
                hands.press_nth(&format!("{}/{parts}", parts - 1), gauges);
                done.push(format!("reading {} {}/{parts}", reading.id, parts - 1));
                gauges += 1;
            }
            Scale::Number { measure, .. } => {
                let value = match measure.as_str() {
                    "mi" => "48213.4",
                    "h" => "612.4",
                    "psi" => "75",
                    _ => "12.6",
                };
                hands.fill(&format!("walk-reading-{}", index + 1), value);
                done.push(format!("reading {} {value}", reading.id));
            }
            Scale::Choice(words) => {
                // Two cylinders offer the same words.
                let before = step.readings[..index].iter().filter(|r| r.scale == reading.scale).count();
                hands.press_nth(&speaker.say(&format!("choice-{}", words[0])), before);
                done.push(format!("reading {} {}", reading.id, words[0]));
            }
        }
    }
    let keep = match step.readings.len() {
        1 => "Keep the reading".to_owned(),
        n => format!("Keep {n} readings"),
    };
    hands.press(&keep);
}

/// Answers the renter's page that is open.
fn page(hands: &mut impl Hands, done: &mut Vec<String>) {
    if hands.kiosk().shows("I have the tablet again") {
        return hands.hold("caution-agent");
    }
    hands.read_to_the_end();
    for read in ["I have read this", "I have read all of this"] {
        if hands.kiosk().shows(read) {
            done.push("1 confirms by read".to_owned());
            return hands.press(read);
        }
    }
    if hands.kiosk().presses(false).is_empty() {
        done.push("1 confirms by hold".to_owned());
        return hands.hold("caution-hold");
    }
    demonstrate(hands);
    done.push("1 confirms by demonstrate".to_owned());
}

/// Does the demonstrations of the page that is open; the first part once wrongly.
fn demonstrate(hands: &mut impl Hands) {
    let asked = hands.kiosk().asked();
    let caution = asked.as_ref().unwrap().0.id.clone();
    for _ in 0..200 {
        let tried = hands.kiosk().walk().attempts(&caution).len();
        for press in hands.kiosk().presses(tried == 0) {
            match press {
                Press::Words(words, nth) => hands.press_nth(&words, nth),
                Press::Id(id) => hands.press_id(id),
                Press::Hold(id) => hands.hold(id),
            }
        }
        if hands.kiosk().asked() != asked {
            return;
        }
    }
    panic!("the demonstration does not end: {:#?}", hands.kiosk().look().words());
}

fn closing(hands: &mut impl Hands) -> Vec<String> {
    let sign = "Write with a finger or a pen. The button Done comes once you have written.";
    hands.press("I am Ann Marlow");
    hands.press("Go on to sign");
    hands.press("On a screen");
    hands.press("Go on to sign");
    hands.sign(sign);
    hands.press("Done");
    hands.press("A picture of the screen");
    hands.hold("closing-agent");
    hands.sign(sign);
    hands.press("Done");
    hands.seal("Seal the record");
    assert!(matches!(hands.kiosk().screen(), Screen::Sealed(_)), "{:?}", hands.kiosk().app.notice());
    told(&[
        "consent 1 given",
        "signed by person 1",
        "copy offered",
        "copy slip",
        "signed by agent",
        "handed over",
    ])
}
