//! The geometry of a trip's plot: pure numbers in a unit square, for screens and documents alike.
//!
//! Across lie the days, from the handoff at 0 to the end of the trip at 1. Upward lies what is left, from nothing
//! at 0 to all at 1; of waste tanks it is the room that is left, so that every line falls toward the same floor.
//! A line ends exactly where its supply does, or with the trip. No meaning hangs on color: every resource has a
//! mark and dashes of its own, and its name stands at the side.

mod svg;
mod texts;

use super::day_of;
use super::projection::{Projection, Resource};

pub use svg::svg;
pub use texts::Texts;

/// A place in the unit square.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// Across: 0 is the handoff, 1 the end of the trip.
    pub x: f64,
    /// Up: 0 is nothing left, 1 all.
    pub y: f64,
}

/// The sign at the end of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// A disc.
    Disc,
    /// A square.
    Square,
    /// A square on its corner.
    Diamond,
    /// A triangle, point up.
    Up,
    /// A triangle, point down.
    Down,
    /// A ring.
    Ring,
}

impl Mark {
    /// Corners of the sign around its middle, within one unit either way; none for round ones.
    #[must_use]
    pub const fn corners(self) -> &'static [(f64, f64)] {
        match self {
            Self::Disc | Self::Ring => &[],
            Self::Square => &[(-0.85, -0.85), (0.85, -0.85), (0.85, 0.85), (-0.85, 0.85)],
            Self::Diamond => &[(0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0)],
            Self::Up => &[(0.0, -1.0), (1.0, 0.8), (-1.0, 0.8)],
            Self::Down => &[(0.0, 1.0), (1.0, -0.8), (-1.0, -0.8)],
        }
    }

    /// The sign of a resource.
    #[must_use]
    pub const fn of(resource: Resource) -> Self {
        match resource {
            Resource::Fresh => Self::Disc,
            Resource::Grey => Self::Square,
            Resource::Toilet => Self::Diamond,
            Resource::Battery => Self::Up,
            Resource::Propane => Self::Down,
            Resource::Generator => Self::Ring,
        }
    }
}

/// Lengths of line and gap, in widths of the line; none for an unbroken line.
#[must_use]
pub const fn dashes(resource: Resource) -> &'static [f32] {
    match resource {
        Resource::Fresh => &[],
        Resource::Grey => &[5.0, 2.5],
        Resource::Toilet => &[1.5, 2.0],
        Resource::Battery => &[8.0, 2.5],
        Resource::Propane => &[6.0, 2.0, 1.5, 2.0],
        Resource::Generator => &[3.0, 4.0],
    }
}

/// How one resource goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Which.
    pub resource: Resource,
    /// Its way, from the handoff to its end.
    pub way: Vec<Spot>,
    /// Where it ends; its mark stands here.
    pub end: Spot,
    /// The day of the trip on which it runs out, counted from 1; none when it lasts.
    pub day: Option<u16>,
    /// Whether it is what ends first.
    pub first: bool,
}

/// A day of the trip on the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tick {
    /// The day, counted from 1.
    pub day: u16,
    /// Day of the week, 1 Monday to 7 Sunday, where it is known.
    pub weekday: Option<u8>,
    /// Where it begins.
    pub from: f64,
    /// Where what its name stands for ends: this day, or all up to the next that is named.
    pub to: f64,
}

/// Where the name of a line stands, beside the square.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Label {
    /// Position of the line in [`Plot::lines`].
    pub line: usize,
    /// The middle of the name.
    pub y: f64,
}

/// How much room names have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Height of the name of a line, as a part of the height of the square.
    pub label: f64,
    /// Most names of days that go side by side.
    pub days: u16,
}

/// The plot of a trip.
#[derive(Debug, Clone, PartialEq)]
pub struct Plot {
    /// Nights of the trip.
    pub nights: u16,
    /// Lines, in the order of the projection.
    pub lines: Vec<Line>,
    /// Where days begin, without the first.
    pub grid: Vec<f64>,
    /// Days that are named.
    pub ticks: Vec<Tick>,
    /// Names of lines, from above to below.
    pub labels: Vec<Label>,
    /// Height of each name; smaller than asked for where there are too many.
    pub label: f64,
}

impl Plot {
    /// The plot of a projection.
    #[must_use]
    pub fn new(projection: &Projection, room: Room) -> Self {
        let nights = projection.nights.max(1);
        let across = |day: f64| (day / f64::from(nights)).clamp(0.0, 1.0);
        let first = projection.first().map(|(resource, _)| resource);
        let lines: Vec<Line> = projection
            .courses
            .iter()
            .filter_map(|course| {
                let spot =
                    |p: &super::projection::Point| Spot { x: across(p.day), y: p.left.clamp(0.0, 1.0) };
                let way: Vec<Spot> = course.points.iter().map(spot).collect();
                let end = *way.last()?;
                let (resource, day) = (course.resource, course.ends.map(day_of));
                Some(Line { resource, way, end, day, first: first == Some(resource) })
            })
            .collect();
        let (labels, label) = labels(&lines, room.label);
        Self {
            nights,
            grid: (1..nights).map(|day| across(f64::from(day))).collect(),
            ticks: ticks(nights, projection.weekday, room.days),
            lines,
            labels,
            label,
        }
    }

    /// The line that ends first.
    #[must_use]
    pub fn first(&self) -> Option<&Line> {
        self.lines.iter().find(|line| line.first)
    }

    /// Day of the week of a day counted from 1, where it is known.
    #[must_use]
    pub fn weekday(&self, day: u16) -> Option<u8> {
        weekday(self.ticks.first()?.weekday, day)
    }
}

/// Day of the week of a day of the trip.
fn weekday(first: Option<u8>, day: u16) -> Option<u8> {
    let offset = u8::try_from(day.saturating_sub(1) % 7).ok()?;
    first.filter(|first| (1..=7).contains(first)).map(|first| (first - 1 + offset) % 7 + 1)
}

/// Every day, or every so many where not all names go side by side.
fn ticks(nights: u16, first: Option<u8>, most: u16) -> Vec<Tick> {
    let step = nights.div_ceil(most.max(1)).max(1);
    let at = |day: u16| f64::from(day) / f64::from(nights);
    (0..nights)
        .step_by(usize::from(step))
        .map(|before| {
            let day = before + 1;
            let to = at(before.saturating_add(step).min(nights));
            Tick { day, weekday: weekday(first, day), from: at(before), to }
        })
        .collect()
}

/// Puts names beside the ends of their lines, moved apart where they would lie over each other. On the floor the
/// line that ends last is the highest.
fn labels(lines: &[Line], height: f64) -> (Vec<Label>, f64) {
    let mut order: Vec<(usize, Spot)> = lines.iter().map(|line| line.end).enumerate().collect();
    order.sort_by(|(_, a), (_, b)| b.y.total_cmp(&a.y).then(b.x.total_cmp(&a.x)));
    let count = u32::try_from(order.len().max(1)).unwrap_or(u32::MAX);
    let height = height.clamp(0.0, 1.0 / f64::from(count));
    let mut labels = Vec::with_capacity(order.len());
    let mut most = 1.0 - height / 2.0;
    for (line, end) in order {
        let y = end.y.min(most);
        labels.push(Label { line, y });
        most = y - height;
    }
    let mut least = height / 2.0;
    for label in labels.iter_mut().rev() {
        label.y = label.y.max(least);
        least = label.y + height;
    }
    (labels, height)
}
