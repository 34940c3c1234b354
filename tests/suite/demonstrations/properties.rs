//! What holds for every part on every unit, and for any try.

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::Index;
use sendoff::script::demo::{Part, Task, Try, Verdict};

use super::{UNITS, route, speaker};

fn all_parts() -> Vec<(&'static str, String, Part)> {
    let mut all = Vec::new();
    for unit in UNITS {
        for (id, demonstration) in route(unit).demonstrations {
            all.extend(demonstration.parts.into_iter().map(|part| (unit, id.clone(), part)));
        }
    }
    all
}

#[test]
fn every_part_has_a_right_and_a_wrong_answer() {
    let all = all_parts();
    assert!(all.len() > 50, "{} parts", all.len());
    for (unit, id, part) in all {
        let at = format!("{unit} {id}/{}", part.id);
        let right = part.model_answer().unwrap_or_else(|| panic!("{at} has no right answer"));
        assert!(part.takes(&right), "{at}");
        assert_eq!(part.judge(&right), Verdict::Right, "{at}");
        assert_eq!(part.judge_so_far(&right), None, "{at}");
        let wrong = part.wrong_answer().unwrap_or_else(|| panic!("{at} has no wrong answer"));
        assert!(part.takes(&wrong) && !part.judge(&wrong).is_right(), "{at}");
    }
}

/// No page has a hole, and no two things on it read the same.
#[test]
fn every_page_can_be_read() {
    for (unit, id, part) in all_parts() {
        let speaker = speaker(unit);
        let text = speaker.demonstration(&part, &[]);
        let at = format!("{unit} {id}/{}: {text:?}", part.id);
        assert!(!text.prompt.is_empty() && text.prompt.ends_with(['.', '?']), "{at}");
        for named in [&text.items, &text.places] {
            let mut texts: Vec<&str> = named.iter().map(|n| n.text.as_str()).collect();
            assert!(texts.iter().all(|t| !t.is_empty() && !t.contains(['{', '}'])), "{at}");
            texts.sort_unstable();
            texts.dedup();
            assert_eq!(texts.len(), named.len(), "{at}");
        }
        if let Some(wrong) = part.wrong_answer() {
            let (said, digest) =
                part.judge(&wrong).reply().map(|said| speaker.reply(said)).unwrap_or_default();
            assert!(said.ends_with('.') && digest.len() == 64 && !said.contains(['{', '}']), "{at} {said}");
        }
    }
}

/// A digest binds the order shown.
#[test]
fn another_order_is_another_page() {
    let part = super::part("wren", "dump-order", "order");
    let speaker = speaker("wren");
    let one = part.order_shown("t2-000001", "dump-order", 0, &[], &[]);
    let other = part.order_shown("t2-000001", "dump-order", 1, &[], &[]);
    assert_ne!(one, other);
    assert_ne!(speaker.demonstration(&part, &one).digest(), speaker.demonstration(&part, &other).digest());
    assert_eq!(one, part.order_shown("t2-000001", "dump-order", 0, &[], &[]), "the same for the same try");
    assert_ne!(one, part.order_shown("t2-000002", "dump-order", 0, &[], &[]), "another walk, another order");
}

/// A try of the form that a part takes, made of chance.
fn any_try(part: &Part, picks: &[Index], places: &[Index], count: usize) -> Try {
    let mut ids: Vec<String> = part.items().into_iter().map(|card| card.id.clone()).collect();
    let mut taken = Vec::new();
    for pick in picks.iter().take(count) {
        if !ids.is_empty() {
            taken.push(ids.remove(pick.index(ids.len())));
        }
    }
    match &part.task {
        Task::Sort(p) | Task::Match(p) | Task::Seats(p) => {
            let mut free: Vec<&str> = p.into.iter().map(|place| place.id.as_str()).collect();
            let mut placed = Vec::new();
            for (id, place) in taken.into_iter().zip(places) {
                if free.is_empty() {
                    break;
                }
                let at = place.index(free.len());
                placed.push((id, free[at].to_owned()));
                if p.once.is_some() {
                    let _ = free.remove(at);
                }
            }
            Try::Placed(placed)
        }
        Task::Choose(c) if !c.all => Try::Cards(taken.into_iter().take(1).collect()),
        Task::Point(p) if !p.all => Try::Cards(taken.into_iter().take(1).collect()),
        Task::Set(setting) => {
            let steps = (setting.to - setting.from) / setting.step;
            let at = picks[0].index(usize::try_from(steps).unwrap() + 1);
            Try::Number(setting.from + setting.step * i32::try_from(at).unwrap())
        }
        Task::Show => Try::Shown(count.is_multiple_of(2)),
        _ => Try::Cards(taken),
    }
}

/// The first so many steps of a try.
fn prefix(given: &Try, count: usize) -> Try {
    match given {
        Try::Cards(cards) => Try::Cards(cards[..count.min(cards.len())].to_vec()),
        Try::Placed(placed) => Try::Placed(placed[..count.min(placed.len())].to_vec()),
        other => other.clone(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn what_is_judged_on_the_way_agrees_with_the_end(
        which: Index,
        picks in vec(any::<Index>(), 12),
        places in vec(any::<Index>(), 12),
        count in 1..12_usize,
    ) {
        let all = all_parts();
        let (_, _, part) = &all[which.index(all.len())];
        let given = any_try(part, &picks, &places, count);
        prop_assume!(part.takes(&given));
        let verdict = part.judge(&given);
        let mut first = None;
        for length in 0..=12 {
            let so_far = part.judge_so_far(&prefix(&given, length));
            match (&first, so_far) {
                (None, Some(wrong)) => first = Some(wrong),
                // What broke a rule stays broken, and the correction stays the same.
                (Some(before), after) => prop_assert_eq!(Some(before), after.as_ref()),
                (None, None) => {}
            }
        }
        if let Some(wrong) = first {
            prop_assert_eq!(&verdict, &Verdict::Wrong(wrong));
        }
        if let Verdict::Wrong(wrong) = &verdict {
            let ids: Vec<&str> = part.items().into_iter().map(|c| c.id.as_str()).collect();
            prop_assert!(wrong.keep.iter().all(|id| ids.contains(&id.as_str())));
            // What stays is right as far as it goes.
            let kept = match &given {
                Try::Cards(cards) => Try::Cards(cards.iter().filter(|c| wrong.keep.contains(c)).cloned().collect()),
                Try::Placed(all) => {
                    Try::Placed(all.iter().filter(|(c, _)| wrong.keep.contains(c)).cloned().collect())
                }
                other => other.clone(),
            };
            prop_assert!(part.judge_so_far(&kept).is_none());
        }
    }

    #[test]
    fn a_shuffle_is_a_permutation_that_begins_with_what_stays(
        which: Index,
        walk in "[a-z0-9-]{1,20}",
        tries in 0..9_usize,
        stay in 0..4_usize,
    ) {
        let all = all_parts();
        let (_, id, part) = &all[which.index(all.len())];
        let ids: Vec<String> = part.items().into_iter().map(|c| c.id.clone()).collect();
        let kept: Vec<String> = match part.model_answer() {
            Some(Try::Cards(cards)) => cards.into_iter().take(stay).collect(),
            Some(Try::Placed(placed)) => placed.into_iter().map(|(card, _)| card).take(stay).collect(),
            _ => Vec::new(),
        };
        let order = part.order_shown(&walk, id, tries, &kept, &[]);
        prop_assert_eq!(&order[..kept.len()], &kept[..]);
        let (mut sorted, mut given) = (order.clone(), ids.clone());
        sorted.sort();
        given.sort();
        prop_assert_eq!(sorted, given);
        // Cards never stand ready in the right order, unless no other is left.
        if let (Task::Order(_), true) = (&part.task, order.len() > kept.len() + 1) {
            prop_assert!(part.judge_so_far(&Try::Cards(order.clone())).is_some());
        }
        // What is to be done anew stands anew: never twice as it stood, where there is room for another order.
        if order.len() > kept.len() + 2 {
            let again = part.order_shown(&walk, id, tries + 1, &kept, &order);
            prop_assert_ne!(again, order);
        }
    }
}
