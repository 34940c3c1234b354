//! Who may sit where on the road.

use serde::Deserialize;

use crate::unit::{Faces, Seat};

use super::form::SeatsForm;
use super::on::Unit;
use super::{Card, Placed, Placing, Said};

/// How somebody rides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Rider {
    /// An adult.
    Adult,
    /// Tall enough for a belt alone, too young to drive.
    Teen,
    /// A child on a booster: a seat that faces forward and is marked for child seats.
    Booster,
    /// A baby in a child seat that faces the rear: such a seat as well, and never in front of an airbag.
    Baby,
}

/// The seat at the wheel.
const WHEEL: &str = "driver";

impl SeatsForm {
    /// As many of the people as the unit has belts, and where each may sit.
    pub(super) fn on(&self, unit: &Unit<'_>) -> Placing {
        let seats = &unit.sheet.seats;
        let belts = seats.iter().filter(|s| s.belt).count();
        let cards = self.people.iter().take(belts).map(|p| {
            let rider = p.value.rides;
            let (right, other): (Vec<&Seat>, Vec<&Seat>) =
                seats.iter().partition(|s| self.slip(s, rider).is_none());
            let wrong =
                other.into_iter().filter_map(|s| Some((s.id.clone(), unit.say(self.slip(s, rider)?))));
            Placed {
                card: unit.card(&p.value.id.value),
                right: right.into_iter().map(|s| s.id.clone()).collect(),
                also: Vec::new(),
                wrong: wrong.collect(),
                otherwise: unit.say(&self.no_room),
            }
        });
        Placing {
            cards: cards.collect(),
            into: seats.iter().map(|s| Card { id: s.id.clone(), name: seat_name(&s.id) }).collect(),
            once: Some(unit.say(&self.no_room)),
        }
    }

    /// What is wrong with a seat for somebody, if anything is.
    fn slip(&self, seat: &Seat, rider: Rider) -> Option<&crate::source::At<String>> {
        let child = matches!(rider, Rider::Booster | Rider::Baby);
        if !seat.belt {
            Some(&self.no_belt)
        } else if seat.airbag && rider == Rider::Baby {
            Some(&self.airbag)
        } else if child && !(seat.tether && seat.faces == Faces::Forward) {
            Some(&self.not_marked)
        } else if seat.id == WHEEL && rider != Rider::Adult {
            Some(&self.driver)
        } else {
            None
        }
    }
}

fn seat_name(id: &str) -> Said {
    Said::new(format!("seat-{id}"), Vec::new())
}
