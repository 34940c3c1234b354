//! Each worked case: right answers, and each wrong one with its correction. Handbook part C.

use sendoff::script::demo::Try;

use super::{cards, part, placed, reply, speaker, told};

type Orders<'a> = &'a [(&'a [&'a str], &'a str)];

fn orders(unit: &str, demo: &str, cases: Orders<'_>) {
    let part = part(unit, demo, "order");
    for (laid, expected) in cases {
        assert_eq!(told(&part, &cards(laid)), *expected, "{unit} {demo} {laid:?}");
    }
}

fn choices(unit: &str, demo: &str, of: &str, cases: &[(&str, &str)]) {
    let part = part(unit, demo, of);
    assert_eq!(part.items().len(), cases.len(), "{unit} {demo}/{of}: each choice has its case");
    for (choice, expected) in cases {
        assert_eq!(told(&part, &cards(&[choice])), *expected, "{unit} {demo} {choice}");
    }
}

/// T-01.
#[test]
fn one_grey_tank_is_dumped_in_this_order() {
    let all: [&str; 9] =
        ["gloves", "hose", "open-black", "close-black", "open-grey", "close-grey", "lift", "wash", "bowl"];
    orders(
        "wren",
        "dump-order",
        &[
            (&all, "right"),
            (&["gloves", "hose", "open-grey"], "black-first"),
            (&["gloves", "open-black"], "hose-first"),
            (&["gloves", "open-grey"], "hose-first"),
            (&["gloves", "hose", "open-black", "open-grey"], "one-at-a-time"),
            (&all[..8], "dry-tank"),
            (&["wash"], "look-again"),
        ],
    );
    let dump = part("wren", "dump-order", "order");
    let said = reply("wren", &dump, &cards(&all[..8]));
    assert_eq!(said, "A dry tank makes solids stick. Add 2 gal (7.6 L) of water and a sachet.");
}

/// T-02.
#[test]
fn two_grey_tanks_end_with_the_shower() {
    let all = ["open-black", "close-black", "open-two", "close-two", "open-one", "close-one"];
    orders(
        "heron",
        "dump-order-two",
        &[
            (&all, "right"),
            (&["open-two"], "black-first"),
            (&["open-one"], "black-first"),
            (&["open-black", "close-black", "open-one"], "kitchen-first"),
            (&["open-black", "open-two"], "one-at-a-time"),
            (&["open-black", "close-black", "open-two", "leave-open"], "shut"),
        ],
    );
}

/// T-03: judged by the rule of FIG-10, not by a list.
#[test]
fn loads_on_a_household_outlet_are_judged_by_their_figure() {
    let loads = |unit, on: &[&str]| {
        let part = part(unit, "outlet-loads", "loads");
        (told(&part, &cards(on)), reply(unit, &part, &cards(on)))
    };
    for on in [&["fridge", "coffee"][..], &["microwave"], &["coffee"], &["fridge"]] {
        assert_eq!(loads("wren", on).0, "right", "{on:?}");
        assert_eq!(loads("heron", on).0, "right", "{on:?}");
    }
    let air = "The air conditioner and the charger draw 1,800 W for hours. The limit for hours is 1,440 W. \
               The plug can melt.";
    assert_eq!(loads("wren", &["air-front"]), ("air".into(), air.into()));
    assert_eq!(loads("wren", &["fridge", "air-front"]).0, "air");
    let (key, said) = loads("wren", &["water-heater"]);
    assert!(key == "water-heater" && said.starts_with("1,640 W"), "{said}");
    let (key, said) = loads("wren", &["fridge", "microwave"]);
    assert!(key == "microwave" && said.contains("2,065 W"), "{said}");
    assert_eq!(loads("wren", &[]).0, "nothing");
    for on in ["induction", "water-heater", "hair-dryer"] {
        assert_eq!(loads("plover", &[on]).0, "right", "{on}");
    }
    let (key, said) = loads("plover", &["water-heater", "induction"]);
    assert!(key == "one-big" && said.contains("2,220 W"), "{said}");
    assert_eq!(loads("heron", &["air-front"]).0, "air");
    assert_eq!(loads("heron", &["air-bed"]).0, "air");
    let offered = |unit| part(unit, "outlet-loads", "loads").items().len();
    assert_eq!((offered("wren"), offered("plover"), offered("heron")), (5, 3, 5));
}

/// T-04.
#[test]
fn one_air_conditioner_runs_on_a_smaller_post() {
    let cases = [("one-air", "right"), ("both-airs", "both"), ("two-posts", "two-posts"), ("low", "low")];
    choices("heron", "two-airs", "hot-day", &cases);
    let hot = part("heron", "two-airs", "hot-day");
    let said = reply("heron", &hot, &cards(&["both-airs"]));
    assert!(said.contains("3,480 W") && said.contains("2,880 W"), "{said}");
}

/// T-05.
#[test]
fn the_awning_comes_in_with_the_wind_or_when_nobody_watches() {
    for unit in super::UNITS {
        let wind = part(unit, "awning-wind", "wind");
        let sorted =
            |sit, hike, gusts| told(&wind, &placed(&[("sit", sit), ("hike", hike), ("gusts", gusts)]));
        assert_eq!(sorted("out", "in", "in"), "right", "{unit}");
        assert_eq!(sorted("in", "in", "in"), "also safe", "{unit}");
        assert_eq!(told(&wind, &placed(&[("hike", "out")])), "hike", "{unit}");
        let gusts = placed(&[("gusts", "out")]);
        assert_eq!(told(&wind, &gusts), "limit", "{unit}");
        assert_eq!(reply(unit, &wind, &gusts), "The limit is 15 mph (24 km/h).");
    }
}

/// T-06.
#[test]
fn each_post_has_its_plug() {
    for unit in ["wren", "plover"] {
        let plug = part(unit, "which-plug", "posts");
        let right = [
            ("post-mid", "cord"),
            ("post-both", "cord"),
            ("post-big", "adapter-big"),
            ("outlet", "adapter-small"),
            ("dryer", "nothing"),
        ];
        assert_eq!(told(&plug, &placed(&right)), "right", "{unit}");
        assert_eq!(told(&plug, &placed(&[("dryer", "adapter-big")])), "dryer");
        assert_eq!(told(&plug, &placed(&[("post-both", "adapter-big")])), "more-power");
        assert_eq!(told(&plug, &placed(&[("outlet", "cord")])), "no-force");
        assert_eq!(told(&plug, &placed(&[("post-big", "cord")])), "look-again");
    }
    let plug = part("heron", "which-plug", "posts");
    let right =
        [("post-mid", "adapter-mid"), ("post-big", "cord"), ("outlet", "adapters-two"), ("dryer", "nothing")];
    assert_eq!(told(&plug, &placed(&right)), "right");
    assert_eq!(told(&plug, &placed(&[("dryer", "cord")])), "dryer");
}

/// T-07: 5, 9, 3; one step down is right as well.
#[test]
fn the_dial_shows_thousands_of_feet() {
    let dial = |at: &str, number: i32| told(&part("wren", "altitude-dial", at), &Try::Number(number));
    for (at, right, wrong) in [
        ("marrow", &[5][..], &[(4, "thousands"), (6, "thousands"), (9, "thousands")][..]),
        ("cinder", &[8, 9], &[(5, "too-low"), (7, "too-low"), (10, "thousands")]),
        ("sallow", &[3], &[(9, "too-high"), (4, "too-high"), (2, "thousands")]),
    ] {
        for number in right {
            assert_eq!(dial(at, *number), "right", "{at} {number}");
        }
        for (number, key) in wrong {
            assert_eq!(dial(at, *number), *key, "{at} {number}");
        }
    }
    let marrow = part("wren", "altitude-dial", "marrow");
    assert!(!marrow.takes(&Try::Number(52)), "the dial ends at ten");
    assert!(super::plain(&speaker("wren").said(&marrow.prompt)).contains("5,200 ft"));
}

/// T-08: on a unit without propane it is left out.
#[test]
fn the_propane_is_shut_off_at_its_place() {
    for unit in ["wren", "heron"] {
        let place = part(unit, "propane-shut-off", "place");
        assert_eq!(told(&place, &cards(&["lp-valve"])), "right", "{unit}");
        assert_eq!(told(&place, &cards(&["furnace-exhaust"])), "exhaust", "{unit}");
        let turns = [("right", "right"), ("left", "clockwise"), ("pull", "clockwise")];
        choices(unit, "propane-shut-off", "turn", &turns);
    }
    let place = part("wren", "propane-shut-off", "place");
    assert_eq!(told(&place, &cards(&["generator"])), "generator");
    let both = part("heron", "propane-shut-off", "cylinders");
    assert_eq!(told(&both, &cards(&["valve-a", "valve-b"])), "right");
    assert_eq!(told(&both, &cards(&["valve-b"])), "both");
    assert_eq!(told(&both, &cards(&["arrow", "valve-b"])), "arrow");
    let show = part("wren", "propane-shut-off", "show");
    assert_eq!(told(&show, &Try::Shown(true)), "right");
    assert_eq!(told(&show, &Try::Shown(false)), sendoff::script::demo::SHOW_AGAIN);
}

/// T-08 where there is no propane: the diesel heater is turned off, at its own control, and never by the battery switch
/// (handbook B40).
#[test]
fn the_diesel_heater_is_turned_off_at_its_own_control() {
    let places = [
        ("heater-panel", "right"),
        ("disconnect", "battery"),
        ("heater-exhaust", "pipe"),
        ("water-heater-switch", "water"),
    ];
    choices("plover", "heater-off", "where", &places);
    choices("plover", "heater-off", "fan", &[("wait", "right"), ("battery", "cool"), ("pump", "pump")]);
    let fan = part("plover", "heater-off", "fan");
    let cooling = reply("plover", &fan, &cards(&["battery"]));
    assert!(cooling.contains("5 min") && cooling.contains("ruined"), "{cooling}");
    assert!(reply("plover", &fan, &cards(&["pump"])).contains("10 min"));
    let show = part("plover", "heater-off", "show");
    assert_eq!(told(&show, &Try::Shown(true)), "right");
    assert_eq!(told(&show, &Try::Shown(false)), sendoff::script::demo::SHOW_AGAIN);
    // A place stands alone on its card: it begins with a capital.
    let place = part("plover", "heater-off", "where");
    let order: Vec<String> = place.items().iter().map(|card| card.id.clone()).collect();
    for card in speaker("plover").demonstration(&place, &order).items {
        assert!(card.text.starts_with(char::is_uppercase), "{}", card.text);
    }
}

/// T-09: Wren 11 ft 9 in, Plover 9 ft 10 in, Heron 11 ft 6 in. Plover's signs are lower than those of the handbook:
/// 9 ft 8 in and 2.95 m (9 ft 8 in) are both below its limit. Nobody passes below every sign.
#[test]
fn signs_are_judged_by_the_lowest_that_will_do() {
    for (unit, low, meters, of) in
        [("wren", "no", "no", ""), ("plover", "no", "no", "-van"), ("heron", "no", "yes", "")]
    {
        let signs = part(unit, "may-i-pass", "signs");
        let (first, second) = (format!("low{of}"), format!("meters{of}"));
        let sorted = |low, meters, high, tree| {
            let all = [(first.as_str(), low), (second.as_str(), meters), ("high", high), ("tree", tree)];
            told(&signs, &placed(&all))
        };
        assert_eq!(sorted(low, meters, "yes", "unknown"), "right", "{unit}");
        assert_eq!(sorted(low, meters, "yes", "yes"), "tree", "{unit}");
        assert_eq!(sorted(low, meters, "no", "unknown"), "compare", "{unit}");
    }
    let signs = part("wren", "may-i-pass", "signs");
    assert_eq!(told(&signs, &placed(&[("low", "yes")])), "bumps");
    let meters = placed(&[("meters", "yes")]);
    assert_eq!(told(&signs, &meters), "meters");
    assert_eq!(
        reply("wren", &signs, &meters),
        "Read the measure on the sign. 3.55 m is less than your 3.59 m."
    );
    assert!(super::plain(&speaker("wren").said(&signs.prompt)).contains("11 ft 9 in"));
    let roof = [("nothing-up", "right"), ("same-limit", "roof"), ("slowly", "roof")];
    choices("wren", "may-i-pass", "roof", &roof);
}

/// T-10.
#[test]
fn at_a_smell_of_gas_people_go_out_first() {
    let all = ["no-sparks", "out", "valve", "away", "call", "stay-out"];
    for unit in ["wren", "heron"] {
        orders(
            unit,
            "gas-smell",
            &[
                (&all, "right"),
                (&["fan"], "fan"),
                (&["no-sparks", "out", "lighter"], "lighter"),
                (&["no-sparks", "call"], "phone"),
                (&["no-sparks", "out", "valve", "call"], "far-first"),
                (&["no-sparks", "valve"], "people-first"),
                (&["no-sparks", "out", "bags"], "bags"),
            ],
        );
    }
    let order = part("wren", "gas-smell", "order");
    let items = speaker("wren").demonstration(&order, &[]).items;
    let text =
        |id: &str| items.iter().find(|i| i.id == id).map(|i| super::plain(&i.text)).unwrap_or_default();
    assert_eq!(text("call"), "Call 911, then 555-0187");
    assert_eq!(text("away"), "Go 300 ft (92 m) away, against the wind and uphill");
}

/// T-11.
#[test]
fn at_the_carbon_monoxide_alarm_everyone_goes_out_first() {
    for unit in super::UNITS {
        let cases = [("outside", "right"), ("windows", "windows"), ("silence", "silence"), ("call", "call")];
        choices(unit, "co-alarm", "first", &cases);
        let cases = [("outside-help", "right"), ("sleep", "quiet"), ("pills", "quiet")];
        choices(unit, "co-alarm", "headache", &cases);
    }
}

/// T-12.
#[test]
fn the_tap_feeds_the_water_inlet() {
    let cases =
        [("city-inlet", "right"), ("rinse-inlet", "rinse"), ("fuel-cap", "fuel"), ("fresh-fill", "fresh")];
    choices("wren", "which-inlet", "inlet", &cases);
    let cases = [("city-inlet", "right"), ("rinse-inlet", "rinse"), ("fresh-fill", "fresh")];
    choices("heron", "which-inlet", "inlet", &cases);
    for unit in ["wren", "heron"] {
        let cases = [("white", "right"), ("rinse-hose", "hose"), ("sewer-hose", "hose")];
        choices(unit, "which-inlet", "hose", &cases);
        let cases = [("regulator", "right"), ("straight", "pressure"), ("half-open", "pressure")];
        choices(unit, "which-inlet", "tap", &cases);
    }
    let tap = part("wren", "which-inlet", "tap");
    let said = reply("wren", &tap, &cards(&["straight"]));
    assert_eq!(said, "The tap can be 100 psi (689 kPa). Your pipes can take 60 psi (413 kPa).");
}

/// T-13: steps 7, 8 and 9 in any order among themselves.
#[test]
fn the_trailer_is_coupled_in_this_order() {
    let start = ["chock", "back-up", "lower", "latch", "lift-test", "bars"];
    let coupling = part("heron", "couple-trailer", "order");
    for free in [
        ["chains", "cable", "plug"],
        ["chains", "plug", "cable"],
        ["cable", "chains", "plug"],
        ["cable", "plug", "chains"],
        ["plug", "chains", "cable"],
        ["plug", "cable", "chains"],
    ] {
        let all: Vec<&str> = start.iter().copied().chain(free).chain(["jack-up", "chocks-out"]).collect();
        assert_eq!(told(&coupling, &cards(&all)), "right", "{free:?}");
    }
    orders(
        "heron",
        "couple-trailer",
        &[
            (&["chock", "back-up", "lower", "latch", "chocks-out"], "chocks-last"),
            (&["chock", "back-up", "lower", "latch", "bars"], "lift-test"),
            (&["chock", "back-up", "lower", "latch", "chains"], "lift-test"),
            (&["chock", "back-up", "lower", "bars"], "latch-first"),
            (&["lower"], "look-again"),
        ],
    );
}

/// T-14.
#[test]
fn the_breakaway_cable_goes_to_the_frame() {
    let cases =
        [("frame-ring", "right"), ("chain", "chain"), ("chain-hook", "chain"), ("ball-mount", "ball-mount")];
    choices("heron", "breakaway-cable", "place", &cases);
    let cases = [("slack", "right"), ("short", "short"), ("drag", "drag")];
    choices("heron", "breakaway-cable", "length", &cases);
}

/// T-15: 55 h at three quarters and half load; 50 to 55 is accepted.
#[test]
fn the_generator_stops_at_its_pickup() {
    let cases = [("fill-up", "right"), ("broken", "broken"), ("crank", "crank"), ("oil", "oil")];
    choices("wren", "generator-stopped", "why", &cases);
    let hours = part("wren", "generator-stopped", "hours");
    for (number, expected) in
        [(55, "right"), (50, "right"), (45, "above-mark"), (60, "above-mark"), (80, "above-mark")]
    {
        assert_eq!(told(&hours, &Try::Number(number)), expected, "{number}");
    }
    assert!(reply("wren", &hours, &Try::Number(80)).ends_with("That is about 55 hours."));
}

/// T-16.
#[test]
fn children_sit_on_marked_seats_and_everyone_has_a_belt() {
    let seats = part("wren", "who-sits-where", "seats");
    let right = [
        ("adult", "driver"),
        ("other-adult", "passenger"),
        ("teen", "dinette-3"),
        ("child", "dinette-1"),
        ("baby", "dinette-2"),
    ];
    assert_eq!(told(&seats, &placed(&right)), "right");
    assert_eq!(told(&seats, &placed(&[("baby", "passenger")])), "airbag");
    assert_eq!(told(&seats, &placed(&[("child", "sofa")])), "no-belt");
    assert_eq!(told(&seats, &placed(&[("child", "dinette-3")])), "not-marked");
    assert_eq!(told(&seats, &placed(&[("teen", "driver")])), "driver");
    assert_eq!(told(&seats, &placed(&[("adult", "dinette-1")])), "no-room");
    let seats = part("plover", "who-sits-where", "seats");
    assert_eq!(seats.items().len(), 4, "four belts, four people");
    let right = [("adult", "driver"), ("other-adult", "passenger"), ("child", "rear-1"), ("baby", "rear-2")];
    assert_eq!(told(&seats, &placed(&right)), "right");
    assert_eq!(told(&seats, &placed(&[("baby", "passenger")])), "airbag");
    let belts = part("wren", "who-sits-where", "belts");
    assert_eq!(told(&belts, &Try::Number(6)), "right");
    assert_eq!(told(&belts, &Try::Number(7)), "belts");
    assert_eq!(reply("wren", &belts, &Try::Number(7)), "There are 6 belts. That means 6 people.");
    assert_eq!(told(&part("plover", "who-sits-where", "belts"), &Try::Number(4)), "right");
}

/// T-17: the lot plans to 90 % of 2,000 W.
#[test]
fn one_big_load_runs_on_the_inverter() {
    let pairs = part("plover", "one-big-load", "pairs");
    assert_eq!(told(&pairs, &cards(&["cook-laptop", "microwave-tv"])), "right");
    assert_eq!(told(&pairs, &cards(&["microwave-tv", "cook-laptop"])), "right");
    assert_eq!(told(&pairs, &cards(&["cook-laptop"])), "more");
    assert_eq!(told(&pairs, &cards(&["cook-laptop", "cook-heater"])), "shuts-off");
    assert_eq!(told(&pairs, &cards(&["coffee-dryer"])), "at-limit");
    let said = reply("plover", &pairs, &cards(&["cook-heater"]));
    assert_eq!(said, "2,100 W is too much for an inverter of 2,000 W. The inverter shuts off.");
    let said = reply("plover", &pairs, &cards(&["coffee-dryer"]));
    assert!(said.starts_with("2,000 W") && said.contains("1,800 W"), "{said}");
}

/// T-18.
#[test]
fn the_slide_out_comes_in_after_a_look() {
    let all = ["look-inside", "look-outside", "watcher", "hold", "flush"];
    orders(
        "heron",
        "slide-in",
        &[
            (&all, "right"),
            (&["hold"], "look-first"),
            (&["look-inside", "hold"], "look-first"),
            (&["look-inside", "look-outside", "watcher", "let-go"], "let-go"),
            (&all[..4], "gap"),
        ],
    );
}

/// T-19.
#[test]
fn a_long_descent_begins_with_a_low_gear() {
    for unit in super::UNITS {
        let cases = [
            ("low-gear", "right"),
            ("light-brake", "light-brake"),
            ("neutral", "neutral"),
            ("shift-late", "shift-late"),
        ];
        choices(unit, "long-descent", "top", &cases);
        let all = ["slow", "gear", "brake", "smell"];
        let cases: Orders<'_> =
            &[(&all, "right"), (&["slow", "brake"], "gear-first"), (&["gear"], "slow-first")];
        orders(unit, "long-descent", cases);
    }
    let top = part("wren", "long-descent", "top");
    let said = super::plain(&speaker("wren").said(&top.prompt));
    assert!(said.contains("7 %") && said.contains("6 mi"), "{said}");
}

/// T-20, and its canopy of 11 ft 5 in.
#[test]
fn each_engine_has_its_fuel() {
    let pumps = |unit, right: &str, wrong: &str| {
        let cases = [(right, "right"), (wrong, "wrong-fuel"), ("exhaust-fluid", "no-fuel")];
        choices(unit, "which-nozzle", "pump", &cases);
    };
    pumps("wren", "gasoline", "diesel");
    pumps("plover", "diesel", "gasoline");
    choices("wren", "which-nozzle", "cap", &[("black-cap", "right"), ("water-cap", "water-cap")]);
    let caps = [("green-cap", "right"), ("blue-cap", "blue-cap"), ("water-cap", "water-cap")];
    choices("plover", "which-nozzle", "cap", &caps);
    for (unit, may) in [("wren", "no"), ("plover", "yes")] {
        let cases = [("read", "right"), ("color", "color"), ("fits", "color")];
        choices(unit, "which-nozzle", "word", &cases);
        let canopy = part(unit, "which-nozzle", "canopy");
        assert_eq!(told(&canopy, &placed(&[("canopy", may)])), "right", "{unit}");
        let other = if may == "no" { "yes" } else { "no" };
        assert_eq!(told(&canopy, &placed(&[("canopy", other)])), "canopy", "{unit}");
    }
}
