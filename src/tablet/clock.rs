//! Notices that the tablet's clock was set, or moved to another time zone.
//!
//! The time of day is held against a clock that nobody can set. Both go on by the same; where they do not, the time
//! of day has jumped. A clock that is drawn right a little at a time, as time services do, is no jump.

use std::time::Duration;

use jiff::{SignedDuration, Timestamp};

use crate::ports::Clock;

/// Differences up to this are none: two looks do not fall on the same moment.
const SLACK: SignedDuration = SignedDuration::from_secs(10);
/// A clock may be drawn by one part in so many of the time that has passed; the system's limit is one in 2000.
const DRAWN: i32 = 1000;

/// A jump of the clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Jump {
    /// What it would say.
    pub from: Timestamp,
    /// What it says.
    pub to: Timestamp,
}

/// What a look at the clock brought.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct News {
    /// It was set.
    pub jump: Option<Jump>,
    /// The machine was moved to this time zone.
    pub zone: Option<String>,
}

impl News {
    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.jump.is_none() && self.zone.is_none()
    }
}

/// One look at the clock.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Look {
    now: Timestamp,
    running: Option<Duration>,
    zone: Option<String>,
}

/// Remembers the last look.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Timekeeper {
    last: Option<Look>,
}

impl Timekeeper {
    /// Looks at a clock; what is new since the last look.
    pub fn look(&mut self, clock: &dyn Clock) -> News {
        let look = Look { now: clock.now(), running: clock.running(), zone: clock.zone() };
        let news = self.last.as_ref().map_or_else(News::default, |last| News {
            jump: jump(last, &look),
            zone: look.zone.clone().filter(|_| last.zone.is_some() && last.zone != look.zone),
        });
        self.last = Some(look);
        news
    }
}

/// What the clock did between two looks. Without a clock that nobody can set, only a step back can be told.
fn jump(last: &Look, look: &Look) -> Option<Jump> {
    let passed = match (last.running, look.running) {
        (Some(before), Some(now)) => SignedDuration::try_from(now.checked_sub(before)?).ok(),
        _ => None,
    };
    let (from, slack) = match passed {
        Some(passed) => (last.now.checked_add(passed).ok()?, SLACK + passed / DRAWN),
        None if look.now < last.now => (last.now, SLACK),
        None => return None,
    };
    let off = look.now.duration_since(from).abs();
    (off > slack).then_some(Jump { from, to: look.now })
}

/// The jump that is known for certain when something is found on the disk that was written later than now.
#[must_use]
pub fn behind(written: Timestamp, now: Timestamp) -> Option<Jump> {
    (written.duration_since(now) > SLACK).then_some(Jump { from: written, to: now })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::ports::fake::{FixedClock, SetClock};

    const START: i64 = 1_784_905_800;

    fn at(seconds: i64) -> Timestamp {
        Timestamp::from_second(START + seconds).unwrap()
    }

    #[test]
    fn a_clock_that_is_left_alone_has_no_news() {
        let clock = SetClock::new(at(0));
        let mut keeper = Timekeeper::default();
        for seconds in [0, 1, 60, 40_000, 86_400 * 30] {
            clock.pass(Duration::from_secs(seconds));
            assert!(keeper.look(&clock).is_empty(), "{seconds}");
        }
    }

    #[test]
    fn a_clock_that_is_set_is_told_with_both_times_and_once() {
        let clock = SetClock::new(at(0));
        let mut keeper = Timekeeper::default();
        let _ = keeper.look(&clock);
        clock.pass(Duration::from_secs(100));
        clock.set(at(-3600));
        assert_eq!(keeper.look(&clock).jump, Some(Jump { from: at(100), to: at(-3600) }));
        assert!(keeper.look(&clock).is_empty());
        clock.set(at(7200));
        assert_eq!(keeper.look(&clock).jump, Some(Jump { from: at(-3600), to: at(7200) }));
    }

    #[test]
    fn a_time_zone_is_told_when_it_changes() {
        let clock = SetClock::new(at(0));
        let mut keeper = Timekeeper::default();
        clock.set_zone("America/Denver");
        let _ = keeper.look(&clock);
        clock.set_zone("Europe/Oslo");
        let news = keeper.look(&clock);
        assert_eq!((news.zone.as_deref(), news.jump), (Some("Europe/Oslo"), None));
        assert!(keeper.look(&clock).is_empty());
    }

    #[test]
    fn without_a_running_clock_a_step_back_is_told_all_the_same() {
        let mut keeper = Timekeeper::default();
        let _ = keeper.look(&FixedClock(at(0)));
        assert!(keeper.look(&FixedClock(at(5000))).is_empty());
        assert_eq!(keeper.look(&FixedClock(at(4000))).jump, Some(Jump { from: at(5000), to: at(4000) }));
    }

    proptest! {
        #[test]
        fn a_jump_is_told_exactly_when_the_clock_is_set(steps in prop::collection::vec((0_u64..10_000, prop::option::of(-90_000_i64..90_000)), 1..40)) {
            let clock = SetClock::new(at(0));
            let mut keeper = Timekeeper::default();
            let _ = keeper.look(&clock);
            for (passed, set) in steps {
                clock.pass(Duration::from_secs(passed));
                let right = clock.now();
                if let Some(by) = set {
                    clock.set(right.checked_add(SignedDuration::from_secs(by)).unwrap());
                }
                let by = set.unwrap_or(0).abs();
                let slack = 10 + i64::try_from(passed / 1000).unwrap();
                let jump = keeper.look(&clock).jump;
                if by > slack + 1 {
                    prop_assert_eq!(jump, Some(Jump { from: right, to: clock.now() }));
                } else if by <= slack {
                    prop_assert_eq!(jump, None);
                }
            }
        }
    }
}
