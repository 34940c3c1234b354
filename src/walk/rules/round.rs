//! Rules of the walk round the unit: steps, questions, cautions, readings, items, marks, leaving check, consent.

use super::super::event::{Answer, Entry, Event, Mark, NotShown, PersonId, Shown, Who};
use super::super::limits::{self, NOTE_MAX};
use super::super::state::{ReadingState, Response, StepState};
use super::super::{Refused, Walk};
use super::{news, unknown};
use crate::route::{Answers, Ask, Caution, Signal, Step};

impl Walk {
    pub(super) fn accepts_round(&self, entry: &Entry) -> Result<(), Refused> {
        self.still_changing()?;
        if self.opened.is_none() {
            return Err(Refused::NotOpened);
        }
        match &entry.event {
            Event::StepShown { step, language } => {
                self.route.step(step).ok_or_else(|| unknown("step", step))?;
                limits::language(language)?;
                news(*self.step_state(step) != self.shown_now(language))
            }
            Event::StepNotShown { step, reason, note } => self.accepts_not_shown(step, *reason, note),
            Event::QuestionNoted { step, caution, text, .. } => {
                limits::text("question", text, NOTE_MAX)?;
                self.accepts_question(step, caution.as_deref())
            }
            Event::CautionAnswered { .. } | Event::CautionRefused { .. } => {
                self.accepts_response(&entry.event)
            }
            Event::DemonstrationTried(tried) => {
                let caution = self.demonstrated_by(&tried.caution, tried.by)?;
                limits::shown(&tried.shown)?;
                tried.reply.as_ref().map_or(Ok(()), limits::shown)?;
                self.accepts_try(caution, tried)
            }
            Event::DemonstrationHelped(helped) => {
                let caution = self.demonstrated_by(&helped.caution, helped.person)?;
                self.accepts_help(caution, helped)
            }
            Event::MarkPlaced { mark } => self.accepts_mark(mark),
            Event::MarkRemoved { number } => {
                if self.marks.contains_key(number) {
                    Ok(())
                } else {
                    Err(Refused::NoMark { number: *number })
                }
            }
            Event::ConsentAnswered { by, given, shown } => {
                self.adult_present(*by)?;
                limits::shown(shown)?;
                let is = self.consents.get(by);
                news(!is.is_some_and(|c| c.value.given == *given && c.value.shown == *shown))
            }
            other => self.accepts_value(other),
        }
    }

    fn accepts_not_shown(&self, step: &str, reason: NotShown, note: &str) -> Result<(), Refused> {
        let found = self.route.step(step).ok_or_else(|| unknown("step", step))?;
        limits::text("note", note, NOTE_MAX)?;
        if reason == NotShown::NoTime && note.trim().is_empty() {
            return Err(Refused::NeedsNote);
        }
        let state = StepState::NotShown { reason, note: note.to_owned() };
        news(*self.step_state(step) != state)?;
        let was_shown = matches!(self.step_state(step), StepState::Shown { .. });
        let answered = found.cautions.iter().any(|c| self.responses.contains_key(&c.id));
        if was_shown && answered {
            return Err(Refused::CautionsAnswered { step: step.to_owned() });
        }
        Ok(())
    }

    fn accepts_question(&self, step: &str, caution: Option<&str>) -> Result<(), Refused> {
        let found = self.route.step(step).ok_or_else(|| unknown("step", step))?;
        let Some(caution) = caution else { return Ok(()) };
        self.route.caution(caution).ok_or_else(|| unknown("caution", caution))?;
        if found.cautions.iter().any(|c| c.id == caution) {
            Ok(())
        } else {
            Err(Refused::OtherStep { caution: caution.to_owned(), step: step.to_owned() })
        }
    }

    /// An answer to a caution, or the refusal of one.
    fn accepts_response(&self, event: &Event) -> Result<(), Refused> {
        let (Event::CautionAnswered { caution: id, version, by, shown, .. }
        | Event::CautionRefused { caution: id, version, by, shown, .. }) = event
        else {
            return Ok(());
        };
        let (step, caution) = self.route.caution(id).ok_or_else(|| unknown("caution", id))?;
        if *version != caution.version {
            return Err(Refused::OtherVersion {
                caution: id.clone(),
                version: caution.version,
                shown: *version,
            });
        }
        self.may_respond(step, caution, *by)?;
        limits::shown(shown)?;
        if let Event::CautionRefused { reason, .. } = event {
            limits::words("reason", reason, NOTE_MAX)?;
        }
        if let Event::CautionAnswered { how, .. } = event {
            self.is_enough(caution, *how, *by)?;
        }
        if self.says_nothing_new(event, shown) {
            return Err(Refused::AlreadyAnswered { caution: id.clone(), person: *by });
        }
        Ok(())
    }

    /// Whether this is the kind of answer that the caution asks for.
    fn is_enough(&self, caution: &Caution, how: Answer, by: PersonId) -> Result<(), Refused> {
        let asks_more = !caution.demonstrations.is_empty() && caution.ask == Ask::Demonstrate;
        match how {
            Answer::Read if caution.ask != Ask::Read => Err(Refused::TooWeak { caution: caution.id.clone() }),
            Answer::Demonstrate if asks_more && !self.has_demonstrated(caution, by) => {
                Err(Refused::NotDemonstrated { caution: caution.id.clone() })
            }
            Answer::Hold | Answer::TwoTaps if asks_more => {
                Err(Refused::NotDemonstrated { caution: caution.id.clone() })
            }
            _ => Ok(()),
        }
    }

    /// The caution whose demonstration this person may do now.
    fn demonstrated_by(&self, id: &str, by: PersonId) -> Result<&Caution, Refused> {
        let (step, caution) = self.route.caution(id).ok_or_else(|| unknown("caution", id))?;
        self.may_respond(step, caution, by)?;
        Ok(caution)
    }

    /// Whether this person may speak to this caution now.
    fn may_respond(&self, step: &Step, caution: &Caution, by: PersonId) -> Result<(), Refused> {
        self.adult_present(by)?;
        if caution.who == Answers::EachDriver && !self.person(by).is_some_and(|p| p.driver) {
            return Err(Refused::NotADriver { person: by });
        }
        let on_the_page = match self.step_state(&step.id) {
            StepState::Shown { .. } => true,
            StepState::NotShown { .. } => caution.signal == Signal::Danger,
            StepState::Open => false,
        };
        if on_the_page {
            Ok(())
        } else {
            Err(Refused::StepFirst { step: step.id.clone(), caution: caution.id.clone() })
        }
    }

    /// Whether the last word of this person was the same over the same page.
    fn says_nothing_new(&self, event: &Event, page: &Shown) -> bool {
        match event {
            Event::CautionAnswered { caution, by, .. } => {
                matches!(self.response(caution, *by).map(|r| &r.value),
                    Some(Response::Answered { shown, .. }) if shown == page)
            }
            Event::CautionRefused { caution, by, reason, decision, .. } => {
                matches!(self.response(caution, *by).map(|r| &r.value),
                    Some(Response::Refused { reason: r, decision: d, shown })
                        if r == reason && d == decision && shown == page)
            }
            _ => false,
        }
    }

    fn accepts_mark(&self, mark: &Mark) -> Result<(), Refused> {
        limits::range("number of a mark", i64::from(mark.number), 1, 999)?;
        limits::text("note", &mark.note, NOTE_MAX)?;
        // No unit is longer than 100 m; what exactly lies on it, the plan decides.
        for part in [mark.at.x, mark.at.y] {
            limits::range("place of a mark in tenths of an inch", i64::from(part), -40_000, 40_000)?;
        }
        if let Who::Person(id) = mark.by {
            self.in_party(id)?;
        }
        if self.marks.contains_key(&mark.number) || self.removed.contains_key(&mark.number) {
            return Err(Refused::MarkUsed { number: mark.number });
        }
        Ok(())
    }

    /// Readings, items and lines of the leaving check.
    fn accepts_value(&self, event: &Event) -> Result<(), Refused> {
        match event {
            Event::ReadingTaken { reading: id, value, measure } => {
                let reading = self.route.reading(id).ok_or_else(|| unknown("reading", id))?;
                limits::reading(reading, value, measure)?;
                let state = ReadingState::Taken { value: value.clone(), measure: measure.clone() };
                news(self.readings.get(id).map(|r| &r.value) != Some(&state))
            }
            Event::ReadingNotTaken { reading: id, reason, note } => {
                self.route.reading(id).ok_or_else(|| unknown("reading", id))?;
                limits::text("note", note, NOTE_MAX)?;
                let state = ReadingState::NotTaken { reason: *reason, note: note.clone() };
                news(self.readings.get(id).map(|r| &r.value) != Some(&state))
            }
            Event::ItemCounted { tag, count, note } => {
                if !self.route.items.iter().any(|i| i.tag == *tag) {
                    return Err(unknown("item", tag));
                }
                limits::range("number of items", i64::from(*count), 0, 999)?;
                limits::text("remark", note, NOTE_MAX)?;
                let is = self.items.get(tag);
                news(!is.is_some_and(|i| i.value.count == *count && i.value.note == *note))
            }
            Event::LeavingChecked { item, good } => {
                if !self.route.steps.iter().any(|s| s.leaving.contains(item)) {
                    return Err(unknown("leaving line", item));
                }
                news(self.leaving.get(item).map(|l| l.value) != Some(*good))
            }
            _ => Ok(()),
        }
    }
}
