//! The pages of a renter who is alone with the tablet.

use super::tour::{Tour, Visit};
use super::{Kiosk, TourFault};
use crate::kiosk::Message as Told;
use crate::kiosk::screen::reread::{Message, Page, Place, State};
use crate::kiosk::screen::{self, Action, Screen};
use crate::route::{Zone, build};
use crate::script::End;

/// More questions than a guide has.
const QUESTIONS: usize = 40;

impl<P: Kiosk, V: Visit> Tour<'_, '_, P, V> {
    /// The cover, plan and list, a search, a topic, all cautions, every guide, the numbers, the emergency card.
    pub(super) fn reread(&mut self, unit: &str) -> Result<(), TourFault> {
        self.part("reread");
        let reader = self.app().settings.staff.clone();
        self.act(Action::Reread { unit: unit.to_owned(), reader })?;
        self.page("cover")?;
        self.tell(Message::PageChosen(Page::Home))?;
        self.page("plan")?;
        for (zone, name) in [(Zone::Inside, "inside"), (Zone::Leaving, "road"), (Zone::Desk, "papers")] {
            self.tell(Message::ZoneChosen(zone))?;
            self.page(name)?;
        }
        self.tell(Message::ZoneChosen(Zone::Outside))?;
        self.tell(Message::PegPressed(1))?;
        self.page("stop")?;
        for (query, name) in [("smell", "found"), ("xqzjw", "nothing-found")] {
            self.tell(Message::QueryChanged(query.to_owned()))?;
            self.page(name)?;
        }
        self.tell(Message::QueryCleared)?;
        self.reread_topic(unit)?;
        for (page, name) in
            [(Page::Cautions, "cautions"), (Page::Numbers, "numbers"), (Page::Guides, "guides")]
        {
            self.tell(Message::PageChosen(page))?;
            self.page(name)?;
        }
        self.reread_guides(unit)?;
        self.driver_tell(Told::EmergencyToggled)?;
        self.part("emergency");
        self.page("")?;
        self.driver_tell(Told::EmergencyToggled)
    }

    fn tell(&mut self, message: Message) -> Result<(), TourFault> {
        self.send(screen::Message::Reread(message))
    }

    /// The topic with the most cautions.
    fn reread_topic(&mut self, unit: &str) -> Result<(), TourFault> {
        let route = build(&self.app().lot, unit);
        let steps = route.map(|r| r.steps).unwrap_or_default();
        let Some(step) = steps.into_iter().max_by_key(|s| s.cautions.len()) else { return Ok(()) };
        self.tell(Message::PageChosen(Page::Topic(step.id.clone())))?;
        self.page(&format!("topic-{}", step.id))?;
        self.tell(Message::BackPressed)
    }

    /// Every guide to the end that 'no' to all leads to.
    fn reread_guides(&mut self, unit: &str) -> Result<(), TourFault> {
        let ids: Vec<String> = self.app().lot.guides.keys().cloned().collect();
        for id in ids {
            if Place::first(&self.app().lot, unit, &id).is_none() {
                continue;
            }
            self.tell(Message::GuideChosen(id.clone()))?;
            for number in 1..QUESTIONS {
                let Some(place) = self.reread_place() else { break };
                if place.guide != id {
                    break;
                }
                self.page(&format!("{id}-{number}"))?;
                match place.end() {
                    Some(End::Fixed | End::Call | End::Leave | End::Wait) => break,
                    None if place.is_hazard() => self.tell(Message::HazardRead)?,
                    None => self.tell(Message::Answered(false))?,
                }
            }
            self.tell(Message::HomePressed)?;
        }
        Ok(())
    }

    fn reread_place(&self) -> Option<Place> {
        let Screen::Reread(state) = self.app().screen() else { return None };
        State::place(state).cloned()
    }
}
