//! What runs together: every row of handbook E.3's table, site ratings, what to switch off.

use super::*;
use sendoff::figures::Detail;
use sendoff::figures::loads::{self, Fit, Item, Limits, Rule};

fn fit(unit: &str, supply: &str, on: &str, more: &str) -> (Option<&'static str>, Fit, Vec<String>) {
    let loads: Vec<String> = on
        .split(" + ")
        .filter(|id| !id.is_empty())
        .map(|id| match id.strip_suffix('*') {
            Some(id) => format!("(load: \"{id}\", settled: true)"),
            None => format!("(load: \"{id}\")"),
        })
        .collect();
    let figure = of(unit, "loads_fit", &format!("supply: {supply}, on: [{}]{more}", loads.join(", ")));
    let values = shown(&figure);
    let Detail::Loads(fit) = figure.detail else { panic!("no loads") };
    (figure.verdict, *fit, values)
}

/// Unit, supply, more of the trip, loads (a star marks what has settled), sum, long loads, answer.
type Row = (&'static str, &'static str, &'static str, &'static str, u32, Option<u32>, &'static str);

const ROWS: [Row; 26] = [
    ("wren", "Post(\"15 A\")", "", "fridge + charger* + coffee", 1525, Some(565), "yes"),
    ("wren", "Post(\"15 A\")", "", "air-front + charger*", 1800, Some(1800), "no"),
    ("wren", "Post(\"15 A\")", "", "water-heater + charger*", 1640, Some(1640), "no"),
    ("wren", "Post(\"15 A\")", "", "fridge + charger + coffee", 2245, Some(1285), "no"),
    ("wren", "Post(\"30 A\")", "", "air-front + fridge + charger*", 2125, Some(2125), "yes"),
    ("wren", "Post(\"30 A\")", "", "air-front + fridge + charger* + microwave", 3625, Some(2125), "no"),
    ("wren", "Post(\"30 A\")", "", "air-front + charger* + microwave", 3300, Some(1800), "yes"),
    ("wren", "Post(\"30 A\")", "", "air-front + water-heater + fridge + charger*", 3525, Some(3525), "no"),
    ("wren", "Post(\"30 A\")", "", "coffee + toaster", 1860, Some(0), "no"),
    ("wren", "Generator", ", highest: \"5200 ft\"", "air-front + charger", 2520, Some(2520), "yes"),
    ("wren", "Generator", ", highest: \"5200 ft\"", "air-front + charger + coffee", 3480, Some(2520), "no"),
    (
        "wren",
        "Generator",
        ", highest: \"5200 ft\"",
        "air-front + microwave + charger*",
        3300,
        Some(1800),
        "yes",
    ),
    (
        "wren",
        "Generator",
        ", highest: \"8000 ft\"",
        "air-front + microwave + charger*",
        3300,
        Some(1800),
        "no",
    ),
    ("plover", "Inverter", "", "induction + laptop", 1390, None, "yes"),
    ("plover", "Inverter", "", "induction + water-heater", 2100, None, "no"),
    ("plover", "Inverter", "", "coffee + hair-dryer", 2000, None, "no"),
    ("plover", "Inverter", "", "microwave + tv", 1090, None, "yes"),
    ("plover", "Post(\"15 A\")", "", "charger* + induction", 1420, Some(120), "yes"),
    ("plover", "Post(\"15 A\")", "", "charger + water-heater", 1760, Some(1760), "no"),
    ("plover", "Post(\"30 A\")", "", "charger + water-heater + induction", 3060, Some(1760), "yes"),
    ("heron", "Post(\"50 A\")", "", "air-front + charger + fridge + tv", 3185, Some(3185), "yes"),
    ("heron", "Post(\"50 A\")", "", "air-bed + out-fridge + microwave + coffee", 4130, Some(1670), "yes"),
    ("heron", "Post(\"50 A\")", "", "coffee + hair-dryer", 2460, Some(0), "no"),
    ("heron", "Post(\"30 A\")", "", "air-front + air-bed + charger*", 3480, Some(3480), "no"),
    ("heron", "Post(\"30 A\")", "", "air-front + charger* + microwave", 3420, Some(1920), "yes"),
    ("heron", "Post(\"15 A\")", "", "fridge + charger* + coffee", 1525, Some(565), "yes"),
];

#[test]
fn the_table_of_what_runs_together() {
    for (unit, supply, more, on, sum, long, answer) in ROWS {
        let (verdict, fit, values) = fit(unit, supply, on, more);
        assert_eq!(verdict, Some(answer), "{unit} on {supply}: {on}: {:?}", fit.breaks);
        assert_eq!(values.first(), Some(&format!("{sum} W")), "{on}");
        if let Some(long) = long {
            assert_eq!(values.get(1), Some(&format!("{long} W")), "{on}");
        }
        assert_eq!(fit.breaks.is_empty(), answer == "yes");
    }
}

/// The reasons the table gives.
#[test]
fn the_broken_rule_is_named() {
    let rule = |unit, supply, on, more| {
        fit(unit, supply, on, more).1.breaks.first().map(|b| (b.rule, b.sum - b.limit))
    };
    assert_eq!(rule("wren", "Post(\"15 A\")", "water-heater + charger*", ""), Some((Rule::Long, 200.0)));
    assert_eq!(
        rule("wren", "Post(\"30 A\")", "air-front + fridge + charger* + microwave", ""),
        Some((Rule::Total, 25.0))
    );
    assert_eq!(rule("wren", "Post(\"30 A\")", "coffee + toaster", ""), Some((Rule::Branch, 60.0)));
    assert_eq!(
        rule("heron", "Post(\"30 A\")", "air-front + air-bed + charger*", ""),
        Some((Rule::Long, 600.0))
    );
}

/// NEC 551.73: 20 A 2,400 VA, 30 A 3,600 VA, 50 A 120/240 V 12,000 VA since 2017 and 9,600 VA before, which is
/// what 80 % leaves for hours (NEC 210.20). A 30 A unit on a 50 A post still gets 30 A.
#[test]
fn site_ratings() {
    for (unit, post, most, long) in [
        ("wren", "20 A", "2400 W", "1920 W"),
        ("wren", "30 A", "3600 W", "2880 W"),
        ("wren", "50 A", "3600 W", "2880 W"),
        ("heron", "50 A", "12000 W", "9600 W"),
        ("heron", "30 A", "3600 W", "2880 W"),
        ("heron", "15 A", "1800 W", "1440 W"),
    ] {
        let figure = of(unit, "loads_fit", &format!("supply: Post(\"{post}\")"));
        assert_eq!(figure.part("most").map(|q| q.to_string()), Some(most.into()), "{unit} on {post}");
        assert_eq!(figure.part("most-long").map(|q| q.to_string()), Some(long.into()), "{unit} on {post}");
    }
}

/// A published list of RV loads: 12.5 + 12.5 + 9 + 10 + 2 A are 46.0 A (it prints 55) on a 30 A site.
#[test]
fn a_published_sum_is_corrected() {
    let items: Vec<Item> = [12.5, 12.5, 9.0, 10.0, 2.0]
        .iter()
        .enumerate()
        .map(|(at, a)| item(&at.to_string(), a * 120.0))
        .collect();
    let limits = post(30.0);
    let broken = loads::judge(&items, &limits);
    assert!((broken[0].sum / 120.0 - 46.0).abs() < 1e-9);
}

fn item(id: &str, watts: f64) -> Item {
    Item {
        id: id.into(),
        watts,
        long: false,
        leg: None,
        branch: false,
        start: None,
        allowed: true,
        propane: false,
    }
}

fn post(amperes: f64) -> Limits {
    let each = amperes * 120.0;
    Limits { legs: 1, each, long: Some(each * 0.8), branch: None, surge: None, post: true }
}

#[test]
fn remedies_are_the_smallest_and_work() {
    let (_, fit, _) = fit("wren", "Post(\"30 A\")", "air-front + fridge + charger* + microwave", "");
    // One thing is enough, and the refrigerator can go on propane.
    assert!(fit.remedies.iter().all(|r| r.off.len() + r.on_propane.len() == 1), "{:?}", fit.remedies);
    assert!(fit.remedies.iter().any(|r| r.on_propane == ["fridge"]));
    assert_eq!(fit.remedies.len(), 4, "25 W too much: any one of them");
}

/// On a 15 A household outlet everything small runs and batteries charge, but not the roof air conditioner: of any
/// unit (common practice, no source).
#[test]
fn roof_air_never_runs_on_a_household_outlet() {
    for unit in ["wren", "heron"] {
        let (verdict, fit, _) = fit(unit, "Post(\"15 A\")", "air-front", "");
        assert_eq!(verdict, Some("no"), "{unit}");
        assert!(fit.sets.iter().all(|set| set.iter().all(|id| !id.starts_with("air-"))), "{unit}");
        assert!(!fit.sets.is_empty() && fit.always == ["charger"]);
    }
    let small = Item { long: true, ..item("air-front", 1_000.0) };
    assert_eq!(loads::judge([&small], &post(15.0)).first().map(|b| b.rule), Some(Rule::RoofAir));
    assert!(loads::fits([&small], &post(20.0)));
}

/// Without shore power, generator or inverter there are no 120 V loads that fit.
#[test]
fn without_a_supply_nothing_runs() {
    let (verdict, fit, _) = fit("heron", "Nothing", "tv", "");
    assert_eq!((verdict, fit.sets.is_empty()), (Some("no"), true));
    assert_eq!(missing_fitted("heron", "Generator"), State::NotFitted);
    assert_eq!(missing_fitted("wren", "Inverter"), State::NotFitted);
}

fn missing_fitted(unit: &str, supply: &str) -> State {
    of(unit, "loads_fit", &format!("supply: {supply}")).state
}

/// A motor draws up to three times as much as it starts (a motor-home manual, section 8).
#[test]
fn a_known_start_is_counted() {
    let facts = facts_with(
        "wren",
        &[(
            "(id: \"air-front\", draw: \"1560 W\", long: true)",
            "(id: \"air-front\", draw: \"1560 W\", long: true, start: \"3200 W\")",
        )],
        &[],
    );
    let judge = |on: &str| {
        let trip = trip(&format!("supply: Generator, highest: \"5200 ft\", on: [{on}]"));
        figure(&facts, "loads_fit", Some(&trip)).verdict
    };
    assert_eq!(judge("(load: \"air-front\")"), Some("yes"), "3,200 of 3,342 W");
    assert_eq!(
        judge("(load: \"air-front\"), (load: \"charger\", settled: true)"),
        Some("no"),
        "3,440 of 3,342 W"
    );
}

#[test]
fn unknown_loads_are_missing() {
    assert_eq!(missing(&of("wren", "loads_fit", "on: [(load: \"sauna\")]")), "loads.sauna");
    assert_eq!(missing(&of("wren", "loads_fit", "on: [(load: \"tv\"), (load: \"tv\")]")), "trip.on.tv");
}

/// The search of sets against plain counting of all of them.
#[test]
fn counting_agrees_with_trying_everything() {
    let items: Vec<Item> = (0..12_u32)
        .map(|at| Item {
            long: at % 3 == 0,
            branch: at % 2 == 0,
            ..item(&at.to_string(), f64::from(at * 137 % 900 + 60))
        })
        .collect();
    let limits = Limits { branch: Some((1_800.0, 1_440.0)), ..post(30.0) };
    let plain = (0..1_u32 << items.len())
        .filter(|mask| {
            let set = items.iter().enumerate().filter(|(at, _)| mask >> at & 1 == 1).map(|(_, item)| item);
            loads::fits(set, &limits)
        })
        .count();
    assert_eq!(loads::count_fitting(&items, &limits), u64::try_from(plain).expect("a count"));
    // Each largest set fits, and with anything more it does not.
    for set in loads::largest_sets(&items, &[], &limits) {
        let chosen: Vec<&Item> = items.iter().filter(|item| set.contains(&item.id)).collect();
        assert!(loads::fits(chosen.iter().copied(), &limits));
        for more in items.iter().filter(|item| !set.contains(&item.id)) {
            assert!(!loads::fits(chosen.iter().copied().chain([more]), &limits), "{set:?} with {}", more.id);
        }
    }
}
