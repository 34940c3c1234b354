//! The trouble guides, step by step: hazards first, one question a page, and how it ends.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::{Message, Page, Show};
use crate::kiosk::theme::{Gap, Look};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::script::{CautionForm, End, Guide, Scripts, Way};
use crate::unit::Facts;
use crate::words::Args;

/// A place in a guide: all of it, so that the way back is exact.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The guide.
    pub guide: String,
    /// Where in it.
    pub at: At,
    /// The row that was answered before, and whether with yes: what is to be said of it stands here.
    pub answered: Option<(String, bool)>,
}

/// Where in a guide.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum At {
    /// At a hazard, counted from 0.
    Hazard(usize),
    /// At a row, by its id.
    Row(String),
    /// At an end.
    End(End),
}

/// A guide that is for a unit, with the unit's facts.
fn of<'s>(scripts: &'s Scripts, unit: &str, id: &str) -> Option<(&'s Guide, Facts)> {
    let facts = scripts.facts(unit)?;
    let guide = &scripts.guides.get(id)?.value;
    guide.fits(&facts).then_some((guide, facts))
}

impl Place {
    /// Where a guide begins on a unit; none when it is not for it.
    #[must_use]
    pub fn first(scripts: &Scripts, unit: &str, id: &str) -> Option<Self> {
        let (guide, facts) = of(scripts, unit, id)?;
        let begin = At::Row(guide.first(&facts)?.id.value.clone());
        let at = if guide.hazards(&facts).next().is_some() { At::Hazard(0) } else { begin };
        Some(Self { guide: id.to_owned(), at, answered: None })
    }

    /// Whether a hazard is to be read here.
    #[must_use]
    pub const fn is_hazard(&self) -> bool {
        matches!(self.at, At::Hazard(_))
    }

    /// How it ends here, if it does.
    #[must_use]
    pub const fn end(&self) -> Option<End> {
        match self.at {
            At::End(end) => Some(end),
            At::Hazard(_) | At::Row(_) => None,
        }
    }

    /// Behind the hazard that was read.
    #[must_use]
    pub fn read(&self, scripts: &Scripts, unit: &str) -> Option<Self> {
        let At::Hazard(here) = self.at else { return None };
        let (guide, facts) = of(scripts, unit, &self.guide)?;
        let at = if here + 1 < guide.hazards(&facts).count() {
            At::Hazard(here + 1)
        } else {
            At::Row(guide.first(&facts)?.id.value.clone())
        };
        Some(Self { at, ..self.clone() })
    }

    /// Where an answer leads.
    #[must_use]
    pub fn answered(&self, scripts: &Scripts, unit: &str, yes: bool) -> Option<Self> {
        let At::Row(id) = &self.at else { return None };
        let (guide, facts) = of(scripts, unit, &self.guide)?;
        let (_, row) = guide.row(id)?;
        let answered = Some((id.clone(), yes));
        let target = if yes { &row.yes } else { &row.no };
        Some(match target.on(&facts)? {
            Way::Row(id) => Self { at: At::Row(id.value.clone()), answered, ..self.clone() },
            Way::End(end) => Self { at: At::End(end), answered, ..self.clone() },
            Way::Guide(id) => Self::first(scripts, unit, &id.value)?,
        })
    }
}

impl<'a> Show<'a> {
    /// What can be wrong: danger first.
    pub(super) fn guides(&self) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let (grave, rest): (Vec<_>, Vec<_>) = self.state.prepared.guides.iter().partition(|g| g.grave);
        let mut danger: Vec<Element<'a, Message>> =
            grave.iter().map(|g| self.guide_row(look, &g.id, true)).collect();
        danger.extend(
            ["reread-cover-smell", "reread-cover-fire"]
                .map(|key| self.way(look, self.say(key), Symbol::Alert, Message::EmergencyPressed)),
        );
        let part = |key: &str, rows: Vec<Element<'a, Message>>| {
            let rows = self.columns(look, rows);
            column![ui::section(look, self.say(key)), rows].spacing(look.gap(Gap::Small))
        };
        let rest = rest.iter().map(|g| self.guide_row(look, &g.id, false)).collect();
        let all = column![part("reread-guides-first", danger), part("reread-guides-rest", rest)]
            .spacing(look.gap(Gap::Wide));
        self.paged(Some(self.say("reread-wrong")), all.into(), None)
    }

    fn guide_row(&self, look: &Look, id: &str, grave: bool) -> Element<'a, Message> {
        let sign = if grave { Symbol::Alert } else { Symbol::Right };
        self.way(look, self.say(&format!("guide-{id}")), sign, Message::GuideChosen(id.to_owned()))
    }

    /// A page of a guide.
    pub(super) fn guide(&self, place: &Place) -> Element<'a, Message> {
        let found = of(self.ctx.scripts, &self.state.unit, &place.guide);
        let Some((guide, facts)) = found else { return self.guides() };
        match &place.at {
            At::Hazard(at) => match guide.hazards(&facts).nth(*at) {
                Some(hazard) => self.guide_hazard(place, hazard),
                None => self.guides(),
            },
            At::Row(row) => self.guide_question(place, (row, guide.number(row, &facts))),
            At::End(end) => self.guide_end(place, *end),
        }
    }

    fn guide_title(&self, place: &Place) -> String {
        self.say(&format!("guide-{}", place.guide))
    }

    /// What can kill here, before the first question; read and tapped through, and kept nowhere.
    fn guide_hazard(&self, place: &Place, hazard: &CautionForm) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let panel = self.caution_panel(look, &hazard.id.value, hazard.signal, hazard.hazard, true);
        let above = ui::section(look, self.say("reread-guide-hazard"));
        let all = column![above, panel, ui::small(look, self.say("reread-small-print"))]
            .spacing(look.gap(Gap::Large));
        let on = ui::primary(look, self.say("reread-guide-go-on"), Message::HazardRead)
            .fill()
            .height(80.0)
            .id("reread-go-on");
        self.paged(Some(self.guide_title(place)), all.into(), Some(on.into()))
    }

    /// What to say of the answer before, if there is something.
    fn remark(&self, place: &Place) -> Option<String> {
        let (row, yes) = place.answered.as_ref()?;
        let word = if *yes { "yes" } else { "no" };
        self.speaker.try_say(&format!("row-{}-{row}.{word}", place.guide)).ok()
    }

    fn remark_note(&self, look: &Look, place: &Place) -> Option<Element<'a, Message>> {
        let word = place.answered.as_ref().map_or("no", |(_, yes)| if *yes { "yes" } else { "no" });
        let title = self.say_with("reread-guide-answer", Args::new().text("answer", word));
        self.remark(place).map(|line| ui::note(look, title, Some(line)))
    }

    fn guide_question(&self, place: &Place, (row, number): (&str, Option<usize>)) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let key = format!("row-{}-{row}", place.guide);
        let number = u64::try_from(number.unwrap_or(0)).unwrap_or(0);
        let number = Args::new().number("number", number);
        let grave = self.state.prepared.guides.iter().any(|g| g.grave && g.id == place.guide);
        let stop = if grave {
            ui::note(&self.ctx.look, self.say("reread-guide-call"), None)
        } else {
            let stop = self.say(&format!("guide-{}.stop", place.guide));
            ui::note(&self.ctx.look, self.say("reread-guide-stop"), Some(stop))
        };
        let doing = self.speaker.try_say(&key).ok().map(|text| ui::lead(look, text));
        let all = column![]
            .push(self.remark_note(look, place))
            .push(ui::label(look, self.say_with("reread-guide-row", number)))
            .push(doing)
            .push(ui::hazard_line(look, self.say(&format!("{key}.ask"))))
            .push(stop)
            .spacing(look.gap(Gap::Large))
            .width(Length::Fill);
        let answer = |key: &str, yes, id| {
            let button = ui::secondary(look, self.say(key), Message::Answered(yes));
            Element::from(button.bold().fill().height(88.0).id(id))
        };
        let answers = row![answer("reread-yes", true, "reread-yes"), answer("reread-no", false, "reread-no")]
            .spacing(look.gap(Gap::Wide));
        self.paged(Some(self.guide_title(place)), all.into(), Some(answers.into()))
    }

    fn guide_end(&self, place: &Place, end: End) -> Element<'a, Message> {
        let look = &self.ctx.look.larger();
        let key = format!("guide-end-{}", end.word());
        let sign = match end {
            End::Fixed => Symbol::TickDisc,
            End::Call => Symbol::Question,
            End::Leave => Symbol::Alert,
            End::Wait => Symbol::Open,
        };
        let head = row![
            ui::symbol(look, sign, 64.0),
            ui::text(look, crate::kiosk::theme::Type::Hazard, self.say(&key)).width(Length::Fill)
        ]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center);
        let phones = match end {
            End::Leave => Some(self.phones(look, true)),
            End::Call | End::Wait => Some(self.phones(look, false)),
            End::Fixed => None,
        };
        let note = self.speaker.try_say(&format!("guide-{}.note", place.guide)).ok();
        let all = column![head]
            .push(self.remark_note(look, place))
            .push(ui::lead(look, self.say(&format!("{key}.what"))))
            .push(phones)
            .push(note.map(|line| ui::body(look, line)))
            .spacing(look.gap(Gap::Large))
            .width(Length::Fill);
        let again = Message::GuideChosen(place.guide.clone());
        let ways = Row::new()
            .push(ui::secondary(look, self.say("reread-guide-again"), again))
            .push(ui::secondary(look, self.say("reread-guide-home"), Message::HomePressed))
            .spacing(look.gap(Gap::Medium))
            .wrap()
            .vertical_spacing(look.gap(Gap::Medium));
        self.paged(Some(self.guide_title(place)), all.into(), Some(ways.into()))
    }

    /// The numbers to call: who comes to save a life first.
    pub(super) fn phones(&self, look: &Look, emergency: bool) -> Element<'a, Message> {
        let phones = &self.ctx.scripts.lot.value.phone.value;
        let line = |key: &str, number: &str| -> Element<'a, Message> {
            row![ui::lead(look, self.say(key)).width(Length::Fill), ui::figure(look, number.to_owned())]
                .spacing(look.gap(Gap::Wide))
                .align_y(Alignment::Center)
                .into()
        };
        let first = emergency.then(|| line("reread-emergency-number", &phones.emergency));
        let lines =
            Column::new().push(first).push(line("reread-road", &phones.road)).spacing(look.gap(Gap::Small));
        container(ui::panel(look, lines)).width(Length::Fill).into()
    }

    /// Opens the list of guides.
    pub(super) const fn to_guides() -> Message {
        Message::PageChosen(Page::Guides)
    }
}
