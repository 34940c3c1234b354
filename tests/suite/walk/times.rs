//! Where the time of a walk goes: to what each event speaks of, never below zero, pauses and jumps of the clock aside.

use jiff::{SignedDuration, Timestamp};
use proptest::prelude::*;
use sendoff::route::Route;
use sendoff::walk::{Entry, Event, Pace, Walk};

use super::support::{began, entries, mark, opening, round, route, signing, step_shown};

fn at(seconds: i64) -> Timestamp {
    super::support::at(0).checked_add(SignedDuration::from_secs(seconds)).unwrap()
}

/// A walk whose events come so many seconds after each other.
fn walked(events: impl IntoIterator<Item = Event>, gap: i64) -> Walk {
    let all = entries([began()].into_iter().chain(events).collect::<Vec<Event>>());
    let timed: Vec<Entry> = (0..).zip(all).map(|(n, entry)| Entry { at: at(n * gap), ..entry }).collect();
    Walk::replay(route(), &timed).unwrap()
}

fn sum(walk: &Walk) -> u64 {
    let steps: u64 = walk.route().steps.iter().map(|s| walk.times().step(&s.id)).sum();
    steps + walk.times().opening + walk.times().closing
}

#[test]
fn all_time_is_accounted_for() {
    let whole = walked(opening().into_iter().chain(round()).chain(signing()), 30);
    let passed = u64::try_from(whole.events() - 1).unwrap() * 30_000;
    assert_eq!(whole.times().worked(), passed);
    assert_eq!(sum(&whole), passed, "nothing is left over at the end");
    assert_eq!(whole.times().paused, 0);
    assert!(whole.times().hand_overs >= 2 && whole.times().with_renter > 0);
}

#[test]
fn what_speaks_of_no_step_belongs_to_the_next() {
    let mut walk = walked(opening(), 10);
    let before = walk.last_at();
    let say = |walk: &mut Walk, seconds: i64, event| {
        let at = before.checked_add(SignedDuration::from_secs(seconds)).unwrap();
        walk.apply(&Entry { at, offset_minutes: 0, event }).unwrap();
    };
    say(&mut walk, 40, mark(1));
    assert_eq!(walk.times().step("keys"), 0);
    say(&mut walk, 100, step_shown("keys"));
    assert_eq!(walk.times().step("keys"), 100_000);
}

#[test]
fn a_long_gap_is_a_pause() {
    let mut walk = walked(opening(), 10);
    let worked = walk.times().worked();
    let at = walk.last_at().checked_add(SignedDuration::from_secs(3600)).unwrap();
    walk.apply(&Entry { at, offset_minutes: 0, event: step_shown("keys") }).unwrap();
    assert_eq!((walk.times().worked(), walk.times().paused), (worked, 3_600_000));
}

#[test]
fn a_jump_adds_and_takes_nothing() {
    for to in [-86_400, 86_400] {
        let mut walk = walked(opening(), 10);
        let (before, worked) = (walk.last_at(), walk.times().worked());
        let later = |seconds: i64| before.checked_add(SignedDuration::from_secs(seconds)).unwrap();
        let jumped = Event::ClockJumped { from: later(20), to: later(to) };
        walk.apply(&Entry { at: later(to), offset_minutes: 0, event: jumped }).unwrap();
        walk.apply(&Entry { at: later(to + 15), offset_minutes: 0, event: step_shown("keys") }).unwrap();
        assert_eq!(walk.times().worked(), worked + 35_000, "{to}");
        assert_eq!(walk.times().step("keys"), 35_000);
        assert_eq!(walk.clock_jumps().len(), 1);
    }
}

#[test]
fn a_jump_may_be_told_at_any_time_before_the_seal_and_leaves_signatures_as_they_are() {
    let mut walk = walked(opening().into_iter().chain(round()), 10);
    for event in signing() {
        let sealing = matches!(event, Event::SealBegun { .. });
        let jumped = Event::ClockJumped { from: at(0), to: at(1) };
        let signed = walk.signatures().len();
        let entry = Entry { at: walk.last_at(), offset_minutes: 0, event: jumped.clone() };
        walk.apply(&entry).unwrap();
        assert_eq!(walk.signatures().len(), signed);
        walk.apply(&Entry { at: walk.last_at(), offset_minutes: 0, event }).unwrap();
        if sealing {
            assert!(walk.accepts(&Entry { at: walk.last_at(), offset_minutes: 0, event: jumped }).is_err());
        }
    }
    let none = Event::ClockJumped { from: at(0), to: at(0) };
    assert!(walked(opening(), 1).accepts(&Entry { at: at(0), offset_minutes: 0, event: none }).is_err());
}

/// Time that the author of the route gives a step, in seconds.
fn own(route: &Route) -> u64 {
    u64::from(route.steps[0].minutes) * 60
}

#[test]
fn an_estimate_is_the_authors_until_walks_are_learned_from_and_nears_what_they_took() {
    let mut pace = Pace::default();
    let walk = walked(opening().into_iter().chain(round()), 400);
    let step = &walk.route().steps[0];
    assert_eq!(pace.seconds(step), own(walk.route()));
    let took = walk.times().step(&step.id) / 1000;
    assert!(took > own(walk.route()));
    // Three of the author's against n of the tablet's: the rule of the module, by hand.
    let most = took.min(own(walk.route()) * 4);
    for n in 1..=20_u64 {
        pace.learn(&walk);
        let n = n.min(9);
        assert_eq!(pace.seconds(step), (3 * own(walk.route()) + n * most) / (3 + n));
    }
    assert!(pace.is_sound());
    let open = walked(opening(), 10);
    assert_eq!(open.minutes_left(&pace), pace.minutes(open.route()));
    assert!(pace.minutes(open.route()) > open.minutes_left(&Pace::default()));
}

#[test]
fn a_step_that_is_no_longer_shown_is_forgotten_after_fifty_walks() {
    let mut pace = Pace::default();
    pace.learn(&walked(opening().into_iter().chain(round()), 30));
    let known = pace.known();
    assert!(known > 0);
    let nothing = walked(opening(), 30);
    (0..49).for_each(|_| pace.learn(&nothing));
    assert_eq!(pace.known(), known);
    pace.learn(&nothing);
    assert_eq!(pace.known(), 0);
}

proptest! {
    #[test]
    fn no_duration_is_below_zero_and_none_is_longer_than_the_walk(gaps in prop::collection::vec(-5_000_i64..5_000, 60)) {
        let all = entries([began()].into_iter().chain(opening()).chain(round()).collect::<Vec<Event>>());
        let mut now = 0;
        let mut forward = 0;
        let timed: Vec<Entry> = all
            .into_iter()
            .zip(gaps)
            .enumerate()
            .map(|(n, (entry, gap))| {
                if n > 0 {
                    now += gap;
                    forward += gap.max(0);
                }
                Entry { at: at(now), ..entry }
            })
            .collect();
        // An expired licence or a due date in the past may be refused; what is applied is what counts.
        let mut walk = Walk::begin(route(), &timed[0]).unwrap();
        let applied = timed[1..].iter().take_while(|entry| walk.apply(entry).is_ok()).count();
        prop_assume!(applied == timed.len() - 1);
        let times = walk.times();
        let counted = times.worked() + times.paused;
        prop_assert_eq!(counted, u64::try_from(forward).unwrap() * 1000);
        prop_assert!(times.with_renter <= times.worked());
    }
}
