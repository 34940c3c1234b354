//! Looking at a part of the unit from nearer by.

use iced::{Point, Vector};

use super::PlanLayout;

/// How near one looks: the whole unit, or a part of it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Zoom {
    /// How many times larger than the whole, less one: zero is the whole.
    more: f32,
    /// What lies in the middle of the view, in inches.
    about: (f64, f64),
}

impl Zoom {
    /// How many times larger the plan may be.
    pub(super) const MOST: f32 = 5.0;

    /// A place of the unit in the middle of the view, so many times larger than the whole.
    #[must_use]
    pub fn new(times: f32, about: (f64, f64)) -> Self {
        let more = if times.is_finite() { times.clamp(1.0, Self::MOST) - 1.0 } else { 0.0 };
        if more < 0.02 { Self::default() } else { Self { more, about } }
    }

    /// How many times larger than the whole.
    #[must_use]
    pub fn times(&self) -> f32 {
        1.0 + self.more
    }

    /// What lies in the middle of the view, in inches.
    #[must_use]
    pub fn about(&self) -> (f64, f64) {
        self.about
    }

    /// As near, but with what lies at a point of `plan` in the middle.
    pub(super) fn around(self, plan: &PlanLayout, at: Point) -> Self {
        Self::new(self.times(), plan.within(plan.on_unit(at)))
    }

    /// Whether the whole unit is seen.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.more <= 0.0
    }

    /// Whether one can look from nearer still.
    #[must_use]
    pub fn can_grow(&self) -> bool {
        self.times() < Self::MOST - 0.01
    }
}

impl PlanLayout {
    /// The middle of the view.
    #[must_use]
    pub fn middle(&self) -> Point {
        Point::new(self.size.width / 2.0, self.size.height / 2.0)
    }

    /// The same view `factor` times larger; what lies under `at` stays there.
    #[must_use]
    pub fn larger(&self, factor: f32, at: Point) -> Zoom {
        let times = (self.zoom.times() * factor).clamp(1.0, Zoom::MOST);
        let factor = times / self.zoom.times();
        // The place that lies in the middle afterwards lies here now.
        let back = (self.middle() - at) * (1.0 / factor.max(f32::EPSILON));
        Zoom::new(times, self.within(self.on_unit(at + back)))
    }

    /// The same view with its content moved by `by` pixels.
    #[must_use]
    pub fn moved(&self, by: Vector) -> Zoom {
        Zoom::new(self.zoom.times(), self.within(self.on_unit(self.middle() - by)))
    }

    /// The nearest place on the ground around the unit.
    fn within(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (from, to) = self.extent;
        (x.clamp(from.0, to.0.max(from.0)), y.clamp(from.1, to.1.max(from.1)))
    }
}
