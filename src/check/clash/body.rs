//! Measures of the body: what is inside another is not larger.

use crate::measure::Length;
use crate::unit::{RoofTop, UnitKind};

use super::{Clashes, beyond};

impl Clashes<'_> {
    pub(super) fn body(&mut self) {
        let s = self.sheet;
        let size = &s.size.value;
        let is_zero = |length: &Length| length.quantity().amount().is_zero();
        // A measure that was not taken is told by itself.
        if [&size.length, &size.body_length, &size.width, &size.height].into_iter().any(is_zero) {
            return;
        }
        let hint = "`length` is overall, with tongue and bumpers; measure both again";
        let is = self.more(&size.body_length, &size.length);
        self.wrong(is, &["size", "body_length"], "the body is longer than the whole unit", hint);
        let is = size.mirrors.get().is_some_and(|m| self.more(&size.width, m));
        let hint = "measure from the outer edge of one mirror to that of the other, as the unit is driven";
        self.wrong(is, &["size", "mirrors"], "the unit is narrower over the mirrors than the body", hint);
        let is = size.track.is_some_and(|track| self.more(&track, &size.width));
        let hint = "measure from the middle of the left tire to the middle of the right one";
        self.wrong(is, &["size", "track"], "the wheels stand further apart than the body is wide", hint);
        self.axles();
        let is = self.more(&s.safety.value.sill, &size.height);
        let hint = "measure from the ground to the lowest window that is an exit";
        self.wrong(is, &["safety", "sill"], "the exit window is higher than the roof", hint);
        let top = s.roof.value.highest == RoofTop::RoofAir && s.roof_air.value.get().is_none();
        let hint = "give `roof_air`, or name what stands highest on the roof";
        self.wrong(
            top,
            &["roof", "highest"],
            "a roof air conditioner stands highest, but none is fitted",
            hint,
        );
        let hint = "list every door and window that people can get out by, and add its place";
        self.wrong(s.exits.is_empty(), &["exits"], "the unit has no way out", hint);
        self.parts();
    }

    /// Axles lie below the body, and the tail swings inside the circle that the corner drives.
    fn axles(&mut self) {
        let s = self.sheet;
        let size = &s.size.value;
        let behind = self.si(&size.rear_overhang);
        let (ahead, field) = match size.wheelbase.get() {
            Some(wheelbase) if s.kind != UnitKind::Trailer => (self.si(wheelbase), "wheelbase"),
            _ => (0.0, "rear_overhang"),
        };
        let is = beyond(ahead + behind, self.si(&size.body_length));
        let hint = "the wheelbase is from axle to axle, the overhang from the rear axle to the bumper";
        self.wrong(is, &["size", field], "the axles lie outside the body", hint);
        let is = self.more(&size.rear_overhang, &size.turn_radius);
        let hint = "the radius is from the middle of the turning circle to the rear outer corner";
        self.wrong(
            is,
            &["size", "turn_radius"],
            "the corner turns in a circle smaller than the overhang",
            hint,
        );
        let is = self.more(&size.cut_in, &size.turn_radius);
        let hint = "measure how far the rear wheels run inside the front ones in a full turn";
        self.wrong(is, &["size", "cut_in"], "the wheels cut in further than the unit turns", hint);
    }

    /// Awning and slide-outs fit on the side they are on.
    fn parts(&mut self) {
        let s = self.sheet;
        let size = &s.size.value;
        if let Some(awning) = s.awning.value.get() {
            let is = self.more(&awning.length, &size.body_length);
            let hint = "`length` runs along the unit, `reach` away from it";
            self.wrong(is, &["awning", "length"], "the awning is longer than the body", hint);
            // EN 13561 has the wind classes 0 to 3.
            let is = awning.wind_class.is_some_and(|class| class > 3);
            self.wrong(
                is,
                &["awning", "wind_class"],
                "there are no wind classes above 3",
                "read it from the label",
            );
        }
        for (i, slide) in s.slides.iter().enumerate() {
            let path = ["slides", &i.to_string()];
            let is = !beyond(self.si(&slide.to), self.si(&slide.from));
            let hint = "`from` is the front edge, `to` the rear one, both from the nose or coupler";
            self.wrong(is, &path, "the slide-out ends before it begins", hint);
            let is = self.more(&slide.to, &size.length);
            self.wrong(is, &path, "the slide-out reaches past the rear of the unit", hint);
        }
    }
}
