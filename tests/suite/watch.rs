//! The watch over the last touch, held against the plain rule: it is locked once nobody touched it for so long,
//! dimmed before that, and only the first touch after dimming wakes it.

use std::time::Duration;

use proptest::prelude::*;
use sendoff::kiosk::watch::{Idle, Shade, Watch};

const IDLE: Idle = Idle { dim: Duration::from_secs(120), lock: Duration::from_secs(600) };

fn at(seconds: u64) -> Duration {
    Duration::from_secs(seconds)
}

#[test]
fn it_dims_then_locks_and_a_touch_wakes_it_only_from_dim() {
    let mut watch = Watch::new(IDLE, at(1000));
    watch.tick(at(1119));
    assert_eq!(watch.shade(), Shade::Awake);
    watch.tick(at(1120));
    assert_eq!(watch.shade(), Shade::Dim);
    watch.touched(at(1121));
    assert_eq!(watch.shade(), Shade::Awake);
    watch.tick(at(1721));
    assert_eq!(watch.shade(), Shade::Locked);
    watch.touched(at(1722));
    assert_eq!(watch.shade(), Shade::Locked, "a cover is taken off, not touched away");
    watch.unlocked(at(1730));
    assert_eq!((watch.shade(), watch.rests(at(1730))), (Shade::Awake, Some(IDLE.dim)));
}

#[test]
fn a_tablet_that_slept_through_the_time_is_locked_at_the_first_touch() {
    let mut watch = Watch::new(IDLE, at(0));
    watch.touched(at(9 * 3600));
    assert_eq!(watch.shade(), Shade::Locked);
}

#[derive(Debug, Clone, Copy)]
enum Said {
    Touch,
    Tick,
    Unlock,
}

fn said() -> impl Strategy<Value = (Said, u64)> {
    let kind = prop_oneof![3 => Just(Said::Touch), 4 => Just(Said::Tick), 1 => Just(Said::Unlock)];
    (kind, prop_oneof![0_u64..5, 100_u64..130, 500_u64..700])
}

proptest! {
    #[test]
    fn it_follows_the_rule(all in prop::collection::vec(said(), 0..60)) {
        let mut watch = Watch::new(IDLE, Duration::ZERO);
        let (mut now, mut last, mut locked) = (0, 0, false);
        for (what, passed) in all {
            now += passed;
            locked |= now - last >= 600 && !matches!(what, Said::Unlock);
            match what {
                Said::Touch => watch.touched(at(now)),
                Said::Tick => watch.tick(at(now)),
                Said::Unlock => watch.unlocked(at(now)),
            }
            match what {
                Said::Touch if !locked => last = now,
                Said::Unlock => (locked, last) = (false, now),
                _ => {}
            }
            let shade = watch.shade();
            prop_assert_eq!(shade == Shade::Locked, locked);
            if matches!(what, Said::Tick) && !locked {
                prop_assert_eq!(shade == Shade::Dim, now - last >= 120);
            }
            // One timer is enough: it never runs longer than until the next change, and not at all once locked.
            match watch.rests(at(now)) {
                None => prop_assert!(locked),
                Some(rest) => prop_assert!(rest <= IDLE.lock),
            }
        }
    }

    #[test]
    fn waiting_as_long_as_it_rests_brings_the_next_change(touches in prop::collection::vec(0_u64..119, 0..20)) {
        let mut watch = Watch::new(IDLE, Duration::ZERO);
        let mut now = Duration::ZERO;
        for passed in touches {
            now += at(passed);
            watch.touched(now);
        }
        for shade in [Shade::Dim, Shade::Locked] {
            now += watch.rests(now).unwrap();
            watch.tick(now);
            prop_assert_eq!(watch.shade(), shade);
        }
        prop_assert_eq!(watch.rests(now), None);
    }
}
