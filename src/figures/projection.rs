//! The trip day by day: water, waste, battery, propane and generator fuel, what runs out first, and what helps.
//!
//! Days are counted from the handoff: day 1 runs from 0.0 to 1.0. Every course counts what is *left*, in waste
//! tanks the room, so that all lines of a plot fall toward the same floor.

use crate::measure::{Measure, Quantity, Rounding};

use super::battery_day::off_grid;
use super::gas::daily_gas;
use super::generator::fuel_level;
use super::projection_help::{Help, helps};
use super::trip::HookUp;
use super::water::{daily_use, free_at_start, fresh_at_start, grey_tanks, toilet_tank};
use super::work::{Work, quantity};
use super::{Asked, COMMON_PRACTICE, Detail, Figure, Given, Input, Outcome, State, Trip};

/// Something that runs out, or fills up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Resource {
    /// Fresh water.
    Fresh,
    /// Room in the grey tanks.
    Grey,
    /// Room in the toilet tank.
    Toilet,
    /// House battery.
    Battery,
    /// Propane.
    Propane,
    /// Fuel that the generator can reach.
    Generator,
}

impl Resource {
    /// All of them, in the order they are shown.
    pub const ALL: [Self; 6] =
        [Self::Fresh, Self::Grey, Self::Toilet, Self::Battery, Self::Propane, Self::Generator];

    /// The resource as keys and JSON spell it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fresh => "fresh",
            Self::Grey => "grey",
            Self::Toilet => "toilet",
            Self::Battery => "battery",
            Self::Propane => "propane",
            Self::Generator => "generator",
        }
    }
}

/// A point of a course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Days since the handoff.
    pub day: f64,
    /// Part of the whole that is left, 0 to 1.
    pub left: f64,
}

/// How one resource goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Which.
    pub resource: Resource,
    /// The whole, in `measure`.
    pub whole: f64,
    /// Measure of the whole.
    pub measure: Measure,
    /// The line, to the end of the trip or to where it reaches the floor.
    pub points: Vec<Point>,
    /// When it runs out, in days; none when it lasts.
    pub ends: Option<f64>,
}

/// A trip day by day.
#[derive(Debug, Clone, PartialEq)]
pub struct Projection {
    /// Nights of the trip.
    pub nights: u16,
    /// Day of the week of day 1, 1 Monday to 7 Sunday, where the trip says when it leaves.
    pub weekday: Option<u8>,
    /// A course for each resource that the unit has and that could be computed.
    pub courses: Vec<Course>,
    /// Resources that could not be computed, and the fact that is missing.
    pub unknown: Vec<(Resource, String)>,
    /// What helps; each makes something last longer.
    pub helps: Vec<Help>,
}

impl Projection {
    /// What runs out first, and when.
    #[must_use]
    pub fn first(&self) -> Option<(Resource, f64)> {
        let ends = self.courses.iter().filter_map(|course| Some((course.resource, course.ends?)));
        ends.min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// What happens to a resource on a day.
struct Flow<'a> {
    whole: f64,
    start: f64,
    measure: Measure,
    /// What is added on a day (taken, below zero), by day from 0.
    net: &'a dyn Fn(usize) -> f64,
    /// Whether it is made full at the start of a day.
    full: &'a dyn Fn(usize) -> bool,
}

/// Walks through the days; a line ends where it reaches the floor.
fn course(resource: Resource, nights: u16, flow: &Flow<'_>) -> Course {
    let whole = flow.whole;
    let part = |left: f64| if whole > 0.0 { (left / whole).clamp(0.0, 1.0) } else { 0.0 };
    let mut left = flow.start;
    let mut points = vec![Point { day: 0.0, left: part(left) }];
    let mut ends = None;
    for (at, day) in (0..nights).enumerate() {
        let day = f64::from(day);
        if (flow.full)(at) && left < whole {
            left = whole;
            points.push(Point { day, left: 1.0 });
        }
        let net = (flow.net)(at);
        if left + net < -1e-9 {
            let end = day + left / -net;
            ends = Some(end);
            points.push(Point { day: end, left: 0.0 });
            break;
        }
        let room = whole - left;
        if net > room && net > 0.0 {
            // It is full before the day is over.
            points.push(Point { day: day + room / net, left: 1.0 });
        }
        left = (left + net).clamp(0.0, whole);
        points.push(Point { day: day + 1.0, left: part(left) });
    }
    Course { resource, whole, measure: flow.measure, points, ends }
}

/// What the night's place of a day offers; nothing where the list ends.
fn hook_up(trip: &Trip, day: usize) -> HookUp {
    trip.hook_up.get(day).copied().unwrap_or(HookUp::None)
}

fn on_day(days: &[u16], at: usize) -> bool {
    days.iter().any(|day| usize::from(*day) == at + 1)
}

/// The course of one resource.
fn resource_course(w: &mut Work<'_>, resource: Resource) -> Option<Course> {
    let trip = w.trip()?;
    let nights = trip.nights;
    match resource {
        Resource::Fresh => {
            let daily = daily_use(w)?.all;
            let start = fresh_at_start(w)?;
            let whole = w.take("water.fresh", Measure::GallonUs)?;
            w.step("daily", daily, Measure::GallonUs);
            Some(course(
                resource,
                nights,
                &Flow {
                    whole,
                    start,
                    measure: Measure::GallonUs,
                    net: &|day| if hook_up(trip, day).has_water() { 0.0 } else { -daily },
                    full: &|day| on_day(&trip.fill, day),
                },
            ))
        }
        Resource::Grey => {
            let daily = daily_use(w)?.grey;
            let whole = grey_tanks(w)?;
            let start = whole * free_at_start(w, "start.grey", quantity(trip.start.grey))?;
            w.step("daily", daily, Measure::GallonUs);
            Some(course(
                resource,
                nights,
                &Flow {
                    whole,
                    start,
                    measure: Measure::GallonUs,
                    net: &|day| if hook_up(trip, day) == HookUp::Full { 0.0 } else { -daily },
                    full: &|day| on_day(&trip.empty, day),
                },
            ))
        }
        Resource::Toilet => {
            let daily = daily_use(w)?;
            if !daily.has_toilet {
                return w.not_fitted();
            }
            let sewer = w.has("waste.black");
            let whole = toilet_tank(w)?;
            let start = whole * free_at_start(w, "start.black", quantity(trip.start.black))?;
            w.step("daily", daily.toilet, Measure::GallonUs);
            Some(course(
                resource,
                nights,
                &Flow {
                    whole,
                    start,
                    measure: Measure::GallonUs,
                    // A cassette is carried away by hand: a sewer at the pitch does not empty it.
                    net: &|day| if sewer && hook_up(trip, day) == HookUp::Full { 0.0 } else { -daily.toilet },
                    full: &|day| on_day(&trip.empty, day),
                },
            ))
        }
        Resource::Battery => battery_course(w, trip),
        Resource::Propane => propane_course(w, trip),
        Resource::Generator => generator_course(w, trip),
    }
}

fn battery_course(w: &mut Work<'_>, trip: &Trip) -> Option<Course> {
    let day = off_grid(w)?;
    let charges = w.has("charger");
    w.step("daily", day.need - day.gain, Measure::AmpereHour);
    Some(course(
        Resource::Battery,
        trip.nights,
        &Flow {
            whole: day.there,
            start: day.there,
            measure: Measure::AmpereHour,
            net: &|at| {
                if charges && hook_up(trip, at).has_power() { day.there } else { day.gain - day.need }
            },
            full: &|_| false,
        },
    ))
}

fn propane_course(w: &mut Work<'_>, trip: &Trip) -> Option<Course> {
    w.fitted("propane")?;
    let full = w.take("propane.full", Measure::Pound)?;
    let level = w.level("start.propane", quantity(trip.start.propane), "assumed.start_propane")?;
    let heat = w.take("assumed.propane_heat", Measure::BtuPerPound)?;
    let gas = daily_gas(w)?;
    if heat <= 0.0 {
        return w.missing("assumed.propane_heat");
    }
    // On a post the refrigerator runs on 120 V, if it can.
    if w.given.facts.is_not_known("loads") {
        return w.missing("loads");
    }
    let fridge_on_post = w.given.facts.lists().loads.iter().any(|load| load.id.value == "fridge");
    let on_post = if fridge_on_post { gas.always + gas.water } else { gas.sum() };
    w.step("daily", gas.sum() / heat, Measure::Pound);
    Some(course(
        Resource::Propane,
        trip.nights,
        &Flow {
            whole: full,
            start: full * level,
            measure: Measure::Pound,
            net: &|at| -(if hook_up(trip, at).has_power() { on_post } else { gas.sum() }) / heat,
            full: &|day| on_day(&trip.refill, day),
        },
    ))
}

fn generator_course(w: &mut Work<'_>, trip: &Trip) -> Option<Course> {
    w.fitted("generator")?;
    let tank = w.take("engine.tank", Measure::GallonUs)?;
    let pickup = w.take("generator.pickup", Measure::Fraction)?;
    let burn = w.take("generator.burn_half", Measure::GallonUsPerHour)?;
    let level = fuel_level(w)?;
    let hours = match quantity(trip.generator_run) {
        Some(hours) => w.asked("generator_run", Some(hours), Measure::Hour)?,
        None => 0.0,
    };
    w.step("daily", hours * burn, Measure::GallonUs);
    Some(course(
        Resource::Generator,
        trip.nights,
        &Flow {
            whole: tank * (1.0 - pickup).max(0.0),
            start: tank * (level - pickup).max(0.0),
            measure: Measure::GallonUs,
            net: &|at| if hook_up(trip, at).has_power() { 0.0 } else { -(hours * burn) },
            full: &|day| on_day(&trip.refuel, day),
        },
    ))
}

/// The courses of a trip with what a day without a hook-up takes, the inputs they used, and what could not be computed.
type Courses = (Vec<(Course, f64)>, Vec<Input>, Vec<(Resource, String)>);

/// Works out one course, and what came of it.
fn course_alone(asked: Asked<'_>, resource: Resource) -> (Figure, Option<Course>) {
    let mut found = None;
    let figure = Work::run(asked, "trip_projection", Rounding::Down, COMMON_PRACTICE, |w| {
        found = Some(resource_course(w, resource)?);
        Some(())
    });
    (figure, found)
}

/// The course of one resource; none when it could not be computed.
pub(super) fn course_of(given: Given<'_>, resource: Resource) -> Option<Course> {
    Work::quietly(given, |w| resource_course(w, resource))
}

/// Works out every course by itself: what is missing for one does not hide the others.
fn courses(asked: Asked<'_>) -> Courses {
    let (mut all, mut inputs, mut unknown) = (Vec::new(), Vec::<Input>::new(), Vec::new());
    for resource in Resource::ALL {
        let (figure, found) = course_alone(asked, resource);
        match (figure.state, found) {
            (State::Ok, Some(course)) => {
                let daily = figure.steps.iter().rev().find(|step| step.name == "daily");
                all.push((course, daily.map_or(0.0, |step| step.exact)));
                for input in figure.inputs {
                    if !inputs.contains(&input) {
                        inputs.push(input);
                    }
                }
            }
            (State::Missing(name), _) => unknown.push((resource, name)),
            _ => {}
        }
    }
    (all, inputs, unknown)
}

/// A course in the formula: what there is, what a day takes, how long it lasts.
fn tell_course(w: &mut Work<'_>, course: &Course, daily: f64) {
    let start = course.whole * course.points.first().map_or(0.0, |point| point.left);
    let (of, measure) = (Some(course.resource.word()), course.measure);
    let numbers = [("start", start, measure), ("daily", daily, measure)];
    match course.ends {
        Some(end) => {
            let [start, daily] = numbers;
            w.tell_of("ends", of, &[start, daily, ("end", floor_tenth(end), Measure::Day)]);
        }
        None if daily <= 0.0 => w.tell_of("rests", of, &numbers),
        None => w.tell_of("lasts", of, &numbers),
    }
}

/// Down to a tenth, as the figure shows it.
fn floor_tenth(days: f64) -> f64 {
    crate::measure::rounded(days, 1, Rounding::Down).map_or(days, crate::measure::decimal_to_f64)
}

/// The trip day by day. Values: when each resource that does not last runs out, first what ends first, in days
/// down to a tenth; none when all last.
pub(super) fn trip_projection(asked: Asked<'_>) -> Figure {
    Work::run(asked, "trip_projection", Rounding::Down, COMMON_PRACTICE, |w| {
        let trip = w.trip()?;
        let nights = Quantity::new(rust_decimal::Decimal::from(trip.nights), Measure::Fraction);
        w.input("trip.nights", nights, "trip");
        if trip.nights == 0 {
            return w.missing("trip.nights");
        }
        let weekday = match &trip.leaves {
            None => None,
            Some(date) => match date.parse::<jiff::civil::Date>() {
                Ok(date) => u8::try_from(date.weekday().to_monday_one_offset()).ok(),
                Err(_) => return w.missing("trip.leaves"),
            },
        };
        let (courses, inputs, unknown) = courses(w.asked_for());
        if courses.is_empty() {
            let name = unknown.first().map_or("trip", |(_, name)| name).to_owned();
            return w.missing(&name);
        }
        w.figure.inputs.extend(inputs);
        for (course, daily) in &courses {
            tell_course(w, course, *daily);
        }
        let courses: Vec<Course> = courses.into_iter().map(|(course, _)| course).collect();
        let mut ends: Vec<(Resource, f64)> =
            courses.iter().filter_map(|course| Some((course.resource, course.ends?))).collect();
        ends.sort_by(|a, b| a.1.total_cmp(&b.1));
        for (resource, end) in &ends {
            w.put_outcome(Outcome {
                of: Some(resource.word().into()),
                exact: *end,
                measure: Measure::Day,
                places: 1,
                rounding: Rounding::Down,
                counted: None,
            })?;
            w.say(|| format!("{} {}", resource.word(), super::work::plain(*end)));
        }
        w.figure.verdict = Some(match (ends.is_empty(), unknown.is_empty()) {
            (false, _) => "runs-out",
            (true, true) => "lasts",
            (true, false) => "unknown",
        });
        let helps = helps(w.given.facts, trip, &courses);
        w.figure.detail = Detail::Projection(Box::new(Projection {
            nights: trip.nights,
            weekday,
            courses,
            unknown,
            helps,
        }));
        Some(())
    })
}
