//! Places of a data sheet: named, inside the body, in the third that their station says.

use crate::measure::{Length, Measure};
use crate::script::From;
use crate::source::{At, place_of};
use crate::unit::{Sheet, Side, Station};

use super::Check;

/// How far a measured point may be off, in inches.
const SLACK: f64 = 1.0;

fn inches(length: &Length) -> f64 {
    length.quantity().to(Measure::Inch).unwrap_or(f64::NAN)
}

/// The body seen from above, in inches.
struct Body {
    half: f64,
    length: f64,
    /// How far a tongue reaches ahead of the body.
    tongue: f64,
    /// 1 where the curb side is on the right, nose up.
    curb: f64,
}

impl Body {
    fn of(sheet: &Sheet) -> Self {
        let size = &sheet.size.value;
        Self {
            half: inches(&size.width) / 2.0,
            length: inches(&size.body_length),
            tongue: inches(&size.length) - inches(&size.body_length),
            curb: if sheet.curb == Side::Right { 1.0 } else { -1.0 },
        }
    }

    /// Whether it can be measured against; a size of zero is told by itself.
    fn has_size(&self) -> bool {
        self.half > 0.0 && self.length > 0.0
    }

    fn holds(&self, (x, y): (f64, f64)) -> bool {
        libm::fabs(x) <= self.half + SLACK && (-SLACK - self.tongue..=self.length + SLACK).contains(&y)
    }

    /// Whether a point lies on the side and in the third that a station names.
    fn fits(&self, station: Station, (x, y): (f64, f64)) -> bool {
        let third = self.length / 3.0;
        let (from, to) = match station {
            Station::CurbFront | Station::StreetFront | Station::Front => (0.0, third),
            Station::CurbMid | Station::StreetMid => (third, 2.0 * third),
            Station::CurbRear | Station::StreetRear | Station::Rear => (2.0 * third, self.length),
            _ => return true,
        };
        let side = x * self.curb;
        let on_side = match station {
            Station::CurbFront | Station::CurbMid | Station::CurbRear => side > 0.0,
            Station::StreetFront | Station::StreetMid | Station::StreetRear => side < 0.0,
            _ => true,
        };
        on_side && (from - SLACK..=to + SLACK).contains(&y)
    }
}

impl Check<'_> {
    /// References name places of the sheet, and each place has words.
    pub(super) fn places(&mut self, sheet: &From<Sheet>) {
        let body = Body::of(&sheet.value);
        for (id, entry) in &sheet.value.places {
            if self.is_full() {
                return;
            }
            self.shape(id, || sheet.place(entry));
            let place = &entry.value;
            match &place.words {
                Some(words) => self.message(words.value.clone(), || sheet.place(words)),
                None => self.message(format!("place-{id}"), || sheet.place(entry)),
            }
            self.message(format!("station-{}", place.station.word()), || sheet.place(entry));
            let Some((x, y)) = place.at.as_ref().filter(|_| body.has_size()) else { continue };
            let at = (inches(x), inches(y));
            let point = || place_of(&sheet.file, &["places", id, "at"]);
            if !body.holds(at) {
                let what = format!("`{id}` lies outside the body");
                let hint = "measure from the middle of the nose: right with the nose up, then back";
                self.note("place.outside", point(), what, hint);
            } else if !body.fits(place.station, at) {
                let what = format!("`{id}` does not lie where {} says", place.station.word());
                let hint =
                    "correct the point or the station: sides by the curb, thirds of the length from the nose";
                self.note("place.station", point(), what, hint);
            }
        }
        for exit in &sheet.value.exits {
            self.place_ref(sheet, &exit.place);
            self.message(exit.key(), || sheet.place(exit.words.as_ref().unwrap_or(&exit.place)));
        }
        self.rooms(sheet, &body);
    }

    /// Furniture is drawn from its front corner to its rear corner, inside the body.
    fn rooms(&mut self, sheet: &From<Sheet>, body: &Body) {
        for (at, room) in sheet.value.rooms.iter().enumerate() {
            let place = || place_of(&sheet.file, &["rooms", &at.to_string()]);
            let (from, to) =
                ((inches(&room.from.0), inches(&room.from.1)), (inches(&room.to.0), inches(&room.to.1)));
            if from.0 >= to.0 || from.1 >= to.1 {
                let hint =
                    "`from` is the front corner on the left with the nose up, `to` the rear one on the right";
                self.fault("room.corners", place(), "the corners are the wrong way round", hint);
            } else if body.has_size() && (!body.holds(from) || !body.holds(to)) {
                self.note(
                    "place.outside",
                    place(),
                    "the furniture lies outside the body",
                    "measure it again",
                );
            }
        }
    }

    fn place_ref(&mut self, sheet: &From<Sheet>, place: &At<String>) {
        if sheet.value.places.contains_key(&place.value) {
            return;
        }
        let known = sheet.value.places.keys().map(String::as_str);
        let hint = self.hint(&place.value, known, "add it to `places`");
        let what = format!("the unit has no place `{}`", place.value);
        self.fault("place.unknown", sheet.place(place), what, hint);
    }
}
