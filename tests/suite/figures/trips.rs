//! A trip day by day.

use super::*;
use sendoff::figures::projection::{Projection, Resource};
use sendoff::figures::{Action, Detail, Help};

fn projection(unit: &str, fields: &str) -> Projection {
    let figure = of(unit, "trip_projection", fields);
    assert_eq!(figure.state, State::Ok);
    let Detail::Projection(projection) = figure.detail else { panic!("no projection") };
    *projection
}

fn ends(projection: &Projection, resource: Resource) -> Option<f64> {
    projection.courses.iter().find(|c| c.resource == resource).unwrap_or_else(|| panic!("{resource:?}")).ends
}

/// Off grid a course ends when the figure of its days says (handbook E.3: 2.0, 2.5 and 4.1 days; 1.6 nights).
#[test]
fn off_grid_it_ends_as_the_figures_say() {
    let fields = "nights: 5, hook_up: [], start: (fuel: \"7/8\")";
    let course = projection("wren", fields);
    assert_eq!(course.first().map(|(r, _)| r), Some(Resource::Battery));
    for (resource, id) in [
        (Resource::Fresh, "fresh_days"),
        (Resource::Grey, "grey_days"),
        (Resource::Toilet, "toilet_days"),
        (Resource::Battery, "battery_nights"),
    ] {
        let exact = of("wren", id, fields).outcomes[0].exact;
        let end = ends(&course, resource).expect("an end");
        assert!((end - exact).abs() < 1e-9, "{id}: {end} against {exact}");
    }
    assert_eq!(ends(&course, Resource::Propane), None, "5.4 days");
    assert_eq!(ends(&course, Resource::Generator), None);
    assert!(course.unknown.is_empty());
}

/// Handbook E.3: Plover lasts 3.7 days off grid on a sunny day's gain.
#[test]
fn sun_slows_the_battery() {
    let course = projection("plover", "nights: 6, people: [(age: 30), (age: 31)], start: (fuel: \"1\")");
    let end = ends(&course, Resource::Battery).expect("an end");
    assert!((end - 360.0 / 97.1).abs() < 1e-9, "{end}");
}

#[test]
fn markers_stand_where_the_lines_end() {
    let course = projection("wren", "nights: 5, start: (fuel: \"7/8\", fresh: \"1/2\")");
    for line in &course.courses {
        let last = line.points.last().expect("a point");
        assert!(line.points.windows(2).all(|pair| pair[0].day <= pair[1].day), "{:?}", line.resource);
        assert!(line.points.iter().all(|p| (0.0..=1.0).contains(&p.left)), "{:?}", line.resource);
        match line.ends {
            Some(end) => {
                assert!((last.day - end).abs() < 1e-12 && last.left.abs() < 1e-12, "{:?}", line.resource);
            }
            None => assert!((last.day - 5.0).abs() < 1e-12, "{:?}", line.resource),
        }
    }
}

/// A full hook-up holds water and waste still, fills the battery, and takes the refrigerator off propane.
#[test]
fn hook_ups_carry_the_day() {
    let on = projection("wren", "nights: 5, hook_up: [Full, Full, Full, Full, Full], start: (fuel: \"7/8\")");
    assert!(on.courses.iter().all(|c| c.ends.is_none()) && on.helps.is_empty());
    let off =
        projection("wren", "nights: 5, hook_up: [Full, None, None, Full, Full], start: (fuel: \"7/8\")");
    assert!((ends(&off, Resource::Battery).expect("an end") - (1.0 + 80.0 / 48.7)).abs() < 1e-9);
    // A cassette is not emptied by a sewer.
    let cassette = projection("plover", "nights: 3, hook_up: [Full, Full, Full], start: (fuel: \"1\")");
    assert!(ends(&cassette, Resource::Toilet).is_some());
}

/// Each suggestion, done, gains what it says; none gains nothing.
#[test]
fn suggestions_gain_what_they_say() {
    let fields = "nights: 7, start: (fuel: \"7/8\"), leaves: \"2026-07-24\"";
    let before = projection("wren", fields);
    assert!(
        before.helps.iter().any(|h| h.resource == Resource::Toilet && matches!(h.action, Action::Empty(5)))
    );
    for help in &before.helps {
        let Help { action, resource, before: was, after } = *help;
        assert!(after.is_none_or(|after| after > was), "{help:?}");
        let more = match action {
            Action::Careful => ", use: Careful".to_owned(),
            Action::Fill(day) => format!(", fill: [{day}]"),
            Action::Empty(day) => format!(", empty: [{day}]"),
            Action::Refill(day) => format!(", refill: [{day}]"),
            Action::Refuel(day) => format!(", refuel: [{day}]"),
            Action::Generator(hours) => format!(", generator_run: \"{hours} h\""),
            Action::Drive => ", driving: \"2 h\"".to_owned(),
            Action::InverterOff => continue,
            Action::Power(day) => {
                let mut nights = ["None"; 7];
                nights[usize::from(day) - 1] = "Power";
                format!(", hook_up: [{}]", nights.join(", "))
            }
        };
        let then = projection("wren", &format!("{fields}{more}"));
        assert_eq!(ends(&then, resource), after, "{help:?}");
    }
    assert_eq!(before.weekday, Some(5), "24 July 2026 is a Friday");
}

/// What is not known is said, and never reads as lasting.
#[test]
fn unknown_courses_are_told() {
    let course = projection("wren", "nights: 1, use: Careful");
    assert_eq!(course.unknown, [(Resource::Generator, "trip.start.fuel".to_owned())]);
    let figure = of("wren", "trip_projection", "nights: 1, use: Careful");
    assert_eq!(figure.verdict, Some("unknown"));
    assert_eq!(missing(&of("wren", "trip_projection", "nights: 0")), "trip.nights");
    assert_eq!(missing(&of("wren", "trip_projection", "leaves: \"Friday\"")), "trip.leaves");
}
