//! The numbers of the unit on one page, large: what a bridge, a gauge or somebody on the phone asks for.

use iced::widget::column;

use super::topic::from_full;
use super::{Message, Show};
use crate::figures::{self, Given, State as Computed};
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Element};

/// A part of the page: its key, its numbers, its figures.
type Part = (&'static str, &'static [&'static str], &'static [&'static str]);

/// Numbers by part. A number that the unit does not have is left out; its words are `reread-number-<id>`.
const PARTS: [Part; 6] = [
    ("size", &["height", "length", "width", "mirrors"], &["clearance_min_sign", "rig_length", "tail_swing"]),
    ("wheels", &["tires", "spare", "torque"], &[]),
    (
        "tanks",
        &["fuel", "fuel-tank", "fresh", "grey", "grey-galley", "black", "cassette", "propane"],
        &["water_weight"],
    ),
    ("limits", &["awning", "speed", "wind", "step", "bunk", "regulator"], &[]),
    ("weight", &["occc", "ccc", "gvwr", "gcwr", "tongue", "belts", "beds"], &[]),
    ("power", &["cord", "house-low", "generator", "inverter"], &["propane_hours"]),
];

/// Numbers that the lot has even for a unit without the equipment.
const NEEDS: [(&str, &str); 1] = [("awning", "awning")];

impl<'a> Show<'a> {
    /// Numbers of the unit.
    pub(super) fn numbers(&self) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let parts = PARTS.iter().filter_map(|part| self.numbers_of(look, part));
        let all = column![].extend(parts).spacing(look.gap(Gap::Wide));
        self.paged(Some(self.say("reread-numbers")), all.into(), None)
    }

    fn numbers_of(&self, look: &Look, (part, ids, figures): &Part) -> Option<Element<'a, Message>> {
        let facts = self.ctx.scripts.facts(&self.state.unit)?;
        let has = |id: &str| {
            let needs = NEEDS.iter().find(|(of, _)| *of == id).map(|(_, needs)| *needs);
            needs.is_none_or(|needs| facts.is_fitted(needs) == Some(true))
        };
        let mut cards: Vec<Element<'a, Message>> = Vec::new();
        for id in ids.iter().filter(|id| has(id)) {
            let key = format!("reread-number-{id}");
            let Ok(value) = self.speaker.try_say(&key) else { continue };
            cards.push(self.number(look, self.say(&format!("{key}.label")), vec![value]));
        }
        let given = Given { facts: &facts, trip: None };
        let computed = figures.iter().filter_map(|id| figures::one(id, given));
        for figure in computed.filter(|f| f.state == Computed::Ok && !from_full(f)) {
            cards.push(self.figure(look, &figure));
        }
        let head = ui::section(look, self.say(&format!("reread-part-{part}")));
        (!cards.is_empty())
            .then(|| column![head, self.columns(look, cards)].spacing(look.gap(Gap::Small)).into())
    }
}
