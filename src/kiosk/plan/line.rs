//! The loop around the unit, as a line one can walk along.

use iced::{Point, Rectangle};

/// A closed line, clockwise as drawn nose up, from the front end of the right side.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Loop {
    corners: Vec<Point>,
}

impl Loop {
    /// A rectangle whose corners are cut by `cut`.
    pub(super) fn around(bounds: Rectangle, cut: f32) -> Self {
        let (left, top) = (bounds.x, bounds.y);
        let (right, bottom) = (bounds.x + bounds.width, bounds.y + bounds.height);
        let corners = vec![
            Point::new(right, top + cut),
            Point::new(right, bottom - cut),
            Point::new(right - cut, bottom),
            Point::new(left + cut, bottom),
            Point::new(left, bottom - cut),
            Point::new(left, top + cut),
            Point::new(left + cut, top),
            Point::new(right - cut, top),
        ];
        Self { corners }
    }

    /// The whole line; its end is its start.
    pub(super) fn whole(&self) -> Vec<Point> {
        self.corners.iter().chain(self.corners.first()).copied().collect()
    }

    fn edges(&self) -> impl Iterator<Item = (Point, Point)> {
        self.corners.iter().copied().zip(self.corners.iter().copied().cycle().skip(1))
    }

    fn length(&self) -> f32 {
        self.edges().map(|(a, b)| a.distance(b)).sum()
    }

    /// How far along the line the place nearest to `point` is.
    fn along(&self, point: Point) -> f32 {
        let mut best = (f32::INFINITY, 0.0);
        let mut before = 0.0;
        for (a, b) in self.edges() {
            let length = a.distance(b).max(f32::EPSILON);
            let part = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / (length * length);
            let part = part.clamp(0.0, 1.0);
            let foot = Point::new(a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part);
            let distance = foot.distance(point);
            if distance < best.0 {
                best = (distance, before + part * length);
            }
            before += length;
        }
        best.1
    }

    /// The line from one place to another, the shorter way round; clockwise when both are as long.
    pub(super) fn between(&self, from: Point, to: Point) -> Vec<Point> {
        let (length, a, b) = (self.length(), self.along(from), self.along(to));
        let clockwise = (b - a).rem_euclid(length.max(f32::EPSILON));
        if clockwise <= length / 2.0 {
            self.clockwise(a, clockwise, from, to)
        } else {
            let mut line = self.clockwise(b, length - clockwise, to, from);
            line.reverse();
            line
        }
    }

    fn clockwise(&self, start: f32, distance: f32, from: Point, to: Point) -> Vec<Point> {
        let mut line = vec![from];
        let mut corners = Vec::new();
        let mut before = 0.0;
        for (a, b) in self.edges() {
            corners.push(((before - start).rem_euclid(self.length()), a));
            before += a.distance(b);
        }
        corners.sort_by(|a, b| a.0.total_cmp(&b.0));
        line.extend(
            corners.into_iter().filter(|(at, _)| *at > 0.0 && *at < distance).map(|(_, corner)| corner),
        );
        line.push(to);
        line
    }
}
