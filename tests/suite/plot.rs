//! The plot of a trip: its geometry for any trip, its words, and its drawing for documents.
#![allow(clippy::float_cmp, reason = "ends, edges and heights are kept as they are, not computed anew")]

use proptest::prelude::*;
use sendoff::figures::plot::{Mark, Plot, Room, Texts, dashes, svg};
use sendoff::figures::projection::{Course, Point, Projection, Resource};
use sendoff::measure::{Measure, System};
use sendoff::words::Reader;

use super::kiosk_support::{PSEUDO, lot};
use super::seal::{has, run, words};

const ROOM: Room = Room { label: 0.16, days: 7 };

/// A course through these levels, one a day; with `end` a fall to nothing within the last day.
fn course(resource: Resource, levels: &[f64], nights: u16, end: Option<f64>) -> Course {
    let mut points: Vec<Point> =
        levels.iter().zip(0_u16..).map(|(left, day)| Point { day: f64::from(day), left: *left }).collect();
    let ends = end.map(|part| f64::from(nights - 1) + part);
    match ends {
        Some(day) => points.push(Point { day, left: 0.0 }),
        None => points.push(Point { day: f64::from(nights), left: 0.25 }),
    }
    Course { resource, whole: 40.0, measure: Measure::GallonUs, points, ends }
}

fn any_projection() -> impl Strategy<Value = Projection> {
    let line = (prop::collection::vec(0.0..=1.0, 1..40), prop::option::of(0.05..=1.0));
    let lines = prop::collection::vec(line, 0..=6);
    (1_u16..40, prop::option::of(1_u8..=7), lines).prop_map(|(nights, weekday, lines)| {
        let courses = lines.into_iter().zip(Resource::ALL).map(|((levels, end), resource)| {
            let levels: Vec<f64> = levels.into_iter().take(usize::from(nights)).collect();
            course(resource, &levels, nights, end)
        });
        Projection { nights, weekday, courses: courses.collect(), unknown: Vec::new(), helps: Vec::new() }
    })
}

/// Three nights from a Friday: water ends within the second day, propane lasts.
fn short() -> Projection {
    let fresh = Course {
        ends: Some(1.5),
        points: vec![Point { day: 0.0, left: 1.0 }, Point { day: 1.5, left: 0.0 }],
        ..course(Resource::Fresh, &[1.0], 3, None)
    };
    let propane = course(Resource::Propane, &[1.0], 3, None);
    Projection {
        nights: 3,
        weekday: Some(5),
        courses: vec![fresh, propane],
        unknown: Vec::new(),
        helps: Vec::new(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn everything_lies_in_the_square_and_marks_stand_on_ends(projection in any_projection()) {
        let plot = Plot::new(&projection, ROOM);
        prop_assert_eq!(plot.lines.len(), projection.courses.len());
        for (line, course) in plot.lines.iter().zip(&projection.courses) {
            for spot in &line.way {
                prop_assert!((0.0..=1.0).contains(&spot.x) && (0.0..=1.0).contains(&spot.y), "{spot:?}");
            }
            prop_assert!(line.way.windows(2).all(|pair| pair[0].x <= pair[1].x));
            prop_assert_eq!(Some(&line.end), line.way.last());
            match course.ends {
                Some(end) => {
                    prop_assert_eq!(line.end.y, 0.0);
                    prop_assert!((line.end.x - end / f64::from(projection.nights)).abs() < 1e-12);
                }
                None => prop_assert_eq!(line.end.x, 1.0),
            }
        }
        let first = plot.lines.iter().filter(|line| line.first).count();
        prop_assert_eq!(first, usize::from(projection.first().is_some()));
    }

    #[test]
    fn names_do_not_lie_over_each_other(projection in any_projection(), label in 0.0..0.5) {
        let plot = Plot::new(&projection, Room { label, ..ROOM });
        let mut named: Vec<usize> = plot.labels.iter().map(|label| label.line).collect();
        named.sort_unstable();
        prop_assert_eq!(named, (0..plot.lines.len()).collect::<Vec<_>>());
        for pair in plot.labels.windows(2) {
            prop_assert!(pair[0].y - pair[1].y >= plot.label - 1e-9, "{:?}", plot.labels);
        }
        for label in &plot.labels {
            let half = plot.label / 2.0 - 1e-9;
            prop_assert!(label.y >= half && label.y <= 1.0 - half, "{:?}", plot.labels);
        }
        if label * projection.courses.len() as f64 <= 1.0 && !plot.lines.is_empty() {
            prop_assert_eq!(plot.label, label);
        }
    }

    #[test]
    fn days_fill_the_axis(projection in any_projection(), days in 1_u16..12) {
        let plot = Plot::new(&projection, Room { days, ..ROOM });
        prop_assert!(plot.ticks.len() <= usize::from(days));
        prop_assert_eq!(plot.grid.len(), usize::from(projection.nights) - 1);
        prop_assert_eq!(plot.ticks[0].from, 0.0);
        prop_assert_eq!(plot.ticks.last().unwrap().to, 1.0);
        for pair in plot.ticks.windows(2) {
            prop_assert!((pair[0].to - pair[1].from).abs() < 1e-12);
        }
        for tick in &plot.ticks {
            let weekday = projection.weekday.map(|first| (u16::from(first) + tick.day - 2) % 7 + 1);
            prop_assert_eq!(tick.weekday.map(u16::from), weekday);
        }
    }
}

#[test]
fn every_resource_has_a_mark_and_dashes_of_its_own() {
    for (index, one) in Resource::ALL.into_iter().enumerate() {
        for other in &Resource::ALL[index + 1..] {
            assert_ne!(Mark::of(one), Mark::of(*other), "{one:?} {other:?}");
            assert_ne!(dashes(one), dashes(*other), "{one:?} {other:?}");
        }
    }
}

/// Lines at the same place: the highest names first, the rest below, none off the square.
#[test]
fn names_are_moved_apart_from_one_spot() {
    let courses = Resource::ALL.map(|resource| course(resource, &[1.0], 4, None)).to_vec();
    let projection = Projection { nights: 4, weekday: None, courses, unknown: Vec::new(), helps: Vec::new() };
    let plot = Plot::new(&projection, Room { label: 0.15, days: 9 });
    let ys: Vec<f64> = plot.labels.iter().map(|label| (label.y * 1000.0).round() / 1000.0).collect();
    assert_eq!(ys, [0.825, 0.675, 0.525, 0.375, 0.225, 0.075]);
}

#[test]
fn words_say_what_ends_when() {
    let plot = Plot::new(&short(), ROOM);
    let texts = Texts::of(&lot().words, &Reader::new("en-US", System::Us), &plot);
    assert_eq!(texts.days, ["Fri", "Sat", "Sun"]);
    assert_eq!(texts.names, ["Fresh water", "Propane"]);
    assert_eq!(texts.ends, ["to Saturday", "lasts"]);
    assert_eq!(texts.first.as_deref(), Some("Saturday"));
    // Where the week comes round again, a weekday alone says too little.
    let long = Plot::new(&Projection { nights: 9, ..short() }, ROOM);
    let texts = Texts::of(&lot().words, &Reader::new("en-US", System::Us), &long);
    assert_eq!(texts.days, ["day 1", "day 3", "day 5", "day 7", "day 9"]);
    assert_eq!(texts.first.as_deref(), Some("Saturday (day 2)"));
}

#[test]
fn a_plot_without_lines_is_only_a_frame() {
    let projection =
        Projection { nights: 0, weekday: None, courses: Vec::new(), unknown: Vec::new(), helps: Vec::new() };
    let plot = Plot::new(&projection, ROOM);
    assert!(plot.lines.is_empty() && plot.labels.is_empty() && plot.first().is_none());
    let texts = Texts::of(&lot().words, &Reader::new("en-US", System::Us), &plot);
    assert!(!svg(&plot, &texts).contains("polyline"));
}

/// The parser of Python's own library, told to print every line's last point and every mark.
const READ: &str = "\
import sys,xml.dom.minidom\n\
d=xml.dom.minidom.parseString(sys.stdin.buffer.read())\n\
assert d.documentElement.tagName=='svg'\n\
for p in d.getElementsByTagName('polyline'):\n\
\x20print('line',p.getAttribute('class').split()[1],p.getAttribute('points').split()[-1].replace(',',' '))\n\
for g in d.getElementsByTagName('g'):\n\
\x20c=g.getAttribute('class').split()\n\
\x20if c[0]=='end': print('mark',c[1],g.getAttribute('transform')[10:-1])\n";

#[test]
fn the_drawing_is_xml_and_its_marks_stand_where_its_lines_end() {
    if !has("python3", &["-c", "import xml.dom.minidom"]) {
        return;
    }
    for language in ["en-US", PSEUDO] {
        let plot = Plot::new(&short(), ROOM);
        let mut texts = Texts::of(&lot().words, &Reader::new(language, System::Metric), &plot);
        texts.names[0].push_str(" <&> \"\u{7}\"");
        let drawing = svg(&plot, &texts);
        let out = run(std::path::Path::new("."), "python3", &["-c", READ], drawing.as_bytes());
        assert!(out.status.success(), "{}", words(&out));
        let told = words(&out);
        let of = |kind: &str| -> Vec<String> {
            told.lines().filter_map(|l| l.strip_prefix(kind)).map(str::to_owned).collect()
        };
        assert_eq!(of("line"), of("mark"));
        assert_eq!(of("line").len(), 2);
        // Half of three days across, and the floor: at 84 + 380 / 2 and 24 + 250.
        assert_eq!(of("line")[0], " fresh 274 274");
    }
}

#[test]
fn the_drawing_names_nothing_outside_of_itself() {
    let plot = Plot::new(&short(), ROOM);
    let texts = Texts::of(&lot().words, &Reader::new("en-US", System::Us), &plot);
    let drawing = svg(&plot, &texts);
    assert!(drawing.contains("font-family=\"sans-serif\""));
    assert_eq!(drawing.matches("http").count(), 1, "the name of the format alone");
    for foreign in ["href", "url(", "@import", "<image", "<style"] {
        assert!(!drawing.contains(foreign), "{foreign}");
    }
}
