//! What lies over the page while something is said that one tap cannot say.

use iced::widget::{Column, Row, column, row};
use iced::{Alignment, Length};

use super::{Draft, Message, Page, Pressed, SheetKind, kit, marks, readings, swap, way};
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element};
use crate::route::Step;
use crate::walk::{Event, NotShown, Walk, Who};

/// Most common questions that are offered for a topic.
const QUESTIONS: u8 = 6;

/// A sheet and what is not yet said on it.
#[derive(Debug, Clone)]
pub(super) enum Sheet {
    /// Why the step is not shown.
    NotShown { reason: Option<NotShown>, note: String },
    /// A question of the renter.
    Question { text: String, answered: bool },
    /// Readings of the step.
    Readings(readings::Drafts),
    /// Condition marks.
    Marks(marks::Marking),
    /// One loaned item.
    Item(kit::Counting),
    /// How the figure with this id is known.
    Figure(String),
    /// The whole walk.
    Overview,
    /// Why the unit is not handed over.
    Stop { reason: String },
    /// Which unit the party takes instead.
    Swap(swap::Swapping),
}

impl Sheet {
    /// A sheet as it opens: with what was said before.
    pub fn open(kind: SheetKind, walk: &Walk, step: &Step) -> Self {
        match kind {
            SheetKind::NotShown => Self::NotShown { reason: None, note: String::new() },
            SheetKind::Question => Self::Question { text: String::new(), answered: true },
            SheetKind::Readings => Self::Readings(readings::Drafts::of(walk, step)),
            SheetKind::Marks => Self::Marks(marks::Marking::new()),
            SheetKind::Item(tag) => Self::Item(kit::Counting::of(walk, tag)),
            SheetKind::Figure(id) => Self::Figure(id),
            SheetKind::Overview => Self::Overview,
            SheetKind::Stop => Self::Stop { reason: String::new() },
            SheetKind::Swap => Self::Swap(swap::Swapping::default()),
        }
    }

    /// Takes in what changed.
    pub fn change(&mut self, draft: Draft, hall: &Hall) {
        match (self, draft) {
            (Self::NotShown { reason, .. }, Draft::NotShown(chosen)) => *reason = Some(chosen),
            (Self::NotShown { note, .. }, Draft::Note(words))
            | (Self::Question { text: note, .. }, Draft::Note(words) | Draft::Question(words))
            | (Self::Stop { reason: note }, Draft::Note(words)) => *note = words,
            (Self::Question { answered, .. }, Draft::Answered(yes)) => *answered = yes,
            (Self::Readings(drafts), draft) => drafts.change(draft),
            (Self::Marks(marking), draft) => marking.change(draft, hall),
            (Self::Item(counting), draft) => counting.change(draft),
            (Self::Swap(swapping), draft) => swapping.change(draft),
            _ => {}
        }
    }

    /// What the sheet says when it is kept; nothing while something lacks.
    pub fn events(&self, walk: &Walk, step: &Step) -> Vec<Event> {
        let id = || step.id.clone();
        let events = match self {
            Self::NotShown { reason: Some(reason), note } => {
                vec![Event::StepNotShown { step: id(), reason: *reason, note: note.clone() }]
            }
            Self::Question { text, answered } => {
                let text = text.trim().to_owned();
                vec![Event::QuestionNoted { step: id(), caution: None, text, answered: *answered }]
            }
            Self::Readings(drafts) => return drafts.events(walk),
            Self::Marks(marking) => marking.event(walk).into_iter().collect(),
            Self::Item(counting) => vec![counting.event()],
            Self::Stop { reason } => {
                vec![Event::HandoverStopped { reason: reason.trim().to_owned(), by: Who::Agent }]
            }
            // A swap is more than an event: another walk begins with it.
            Self::NotShown { reason: None, .. } | Self::Figure(_) | Self::Overview | Self::Swap(_) => {
                Vec::new()
            }
        };
        if events.iter().all(|e| way::probe(walk, e.clone()).is_ok()) { events } else { Vec::new() }
    }

    /// What is left of the sheet once it is kept.
    pub fn kept(self) -> Option<Self> {
        matches!(self, Self::Marks(_)).then(|| Self::Marks(marks::Marking::new()))
    }
}

/// Reasons for leaving a step out, most frequent first.
const REASONS: [NotShown; 5] =
    [NotShown::Weather, NotShown::Declined, NotShown::Known, NotShown::OutOfOrder, NotShown::NoTime];

/// Words of a reason.
pub(super) const fn reason_key(reason: NotShown) -> &'static str {
    match reason {
        NotShown::Weather => "walk-reason-weather",
        NotShown::Declined => "walk-reason-declined",
        NotShown::Known => "walk-reason-known",
        NotShown::OutOfOrder => "walk-reason-out-of-order",
        NotShown::NoTime => "walk-reason-no-time",
    }
}

impl<'a> Page<'a> {
    /// The sheet that lies over the page.
    pub(super) fn sheet(&self, sheet: &'a Sheet) -> Element<'a, Message> {
        match sheet {
            Sheet::NotShown { reason, note } => self.not_shown(sheet, *reason, note),
            Sheet::Question { text, answered } => self.question(sheet, text, *answered),
            Sheet::Readings(drafts) => self.reading_sheet(sheet, drafts),
            Sheet::Item(counting) => self.item_sheet(sheet, counting),
            Sheet::Figure(id) => match self.state.figures.iter().find(|card| card.figure.id == id) {
                Some(card) => self.figure_sheet(card),
                None => ui::secondary(&self.ctx.look, self.ctx.say("walk-sheet-away"), Message::SheetClosed)
                    .into(),
            },
            Sheet::Overview => self.overview(),
            Sheet::Stop { reason } => self.stop(sheet, reason),
            Sheet::Swap(swapping) => self.swap_sheet(swapping),
            Sheet::Marks(marking) => self.mark_sheet(sheet, marking),
        }
    }

    /// The buttons of a sheet: keep, as soon as it can be kept, and away.
    pub(super) fn ends(&self, sheet: &Sheet, keep: String, away: Message) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let away = ui::secondary(look, self.ctx.say("walk-sheet-away"), away);
        let mut line = Row::new().spacing(look.gap(Gap::Medium));
        if self.saving(&Pressed::Sheet) {
            line = line.push(ui::saving(look, self.ctx.say("walk-saving")));
        } else if let Some(words) = self.lacks(sheet) {
            return self.lacking(words, away.into());
        } else if !sheet.events(self.walk(), self.step).is_empty() {
            line = line.push(ui::primary(look, keep, Message::SheetKept));
        }
        line.push(away).wrap().vertical_spacing(look.gap(Gap::Medium)).into()
    }

    /// In place of the button that keeps a sheet: what is to be done before it is there.
    pub(super) fn lacking(&self, words: String, away: Element<'a, Message>) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let words = ui::small(look, words).color(look.ink()).width(Length::Fill);
        row![words, away].spacing(look.gap(Gap::Large)).align_y(Alignment::Center).into()
    }

    /// What is to be done before the button that keeps the sheet is there: in words, where it will be.
    fn lacks(&self, sheet: &Sheet) -> Option<String> {
        if self.saving(&Pressed::Sheet) || !sheet.events(self.walk(), self.step).is_empty() {
            return None;
        }
        let key = match sheet {
            Sheet::Readings(drafts) => return Some(self.readings_lack(drafts)),
            Sheet::NotShown { reason: None, .. } => "walk-not-shown-lacks",
            Sheet::NotShown { reason: Some(_), .. } => "walk-not-shown-lacks-words",
            Sheet::Marks(_) => "walk-mark-lacks",
            Sheet::Item(_) => "walk-item-lacks",
            Sheet::Stop { .. } => "walk-stop-lacks",
            Sheet::Question { .. } | Sheet::Figure(_) | Sheet::Overview | Sheet::Swap(_) => return None,
        };
        Some(self.ctx.say(key))
    }

    /// A field for words.
    pub(super) fn note_field(
        &self,
        note: &'a str,
        label: &str,
        error: Option<String>,
    ) -> Element<'a, Message> {
        ui::field(&self.ctx.look, "walk-note", note, |words| Message::Draft(Draft::Note(words)))
            .label(self.ctx.say(label))
            .error(error)
            .into()
    }

    fn not_shown(&self, sheet: &Sheet, reason: Option<NotShown>, note: &'a str) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let rows = REASONS.map(|one| {
            let message = Message::Draft(Draft::NotShown(one));
            ui::radio_row(look, Choice::new(ctx.say(reason_key(one)), reason == Some(one), message))
        });
        let step = vec![Event::StepNotShown {
            step: self.step.id.clone(),
            reason: reason.unwrap_or(NotShown::Weather),
            note: note.to_owned(),
        }];
        // The walk itself says when a reason needs words.
        let needs =
            step.into_iter().any(|e| way::probe(self.walk(), e) == Err(crate::walk::Refused::NeedsNote));
        let error = (reason.is_some() && needs).then(|| ctx.say("walk-note-needed"));
        column![
            ui::section(look, ctx.say("walk-not-shown-title")),
            ui::small(look, ctx.say("walk-not-shown-what")).color(look.ink()),
            Column::with_children(rows).spacing(look.gap(Gap::Small)),
            self.note_field(note, "walk-note", error),
            self.ends(sheet, ctx.say("walk-not-shown-keep"), Message::SheetClosed),
        ]
        .spacing(look.gap(Gap::Large))
        .into()
    }

    fn question(&self, sheet: &Sheet, text: &'a str, answered: bool) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let common = (1..=QUESTIONS).map_while(|n| {
            let key = format!("question-{}-{n}", self.step.topic);
            let words = &ctx.scripts.words;
            words.has(words.source_language(), &key).then(|| {
                let question = self.say_unit(&key);
                // It is not one of this unit.
                if question.is_empty() {
                    return None;
                }
                let chosen = question == text;
                let line = chosen.then(|| self.say_unit(&format!("{key}.answer")));
                let message = Message::Draft(Draft::Question(question.clone()));
                Some(ui::radio_row(look, Choice { label: question, line, chosen, message }))
            })
        });
        let common: Vec<Element<'a, Message>> = common.flatten().collect();
        let was = |yes: bool, key: &str| {
            Choice::new(ctx.say(key), answered == yes, Message::Draft(Draft::Answered(yes)))
        };
        column![
            ui::section(look, ctx.say("walk-question-title")),
            Column::with_children(common).spacing(look.gap(Gap::Small)),
            self.note_field(text, "walk-question-words", None),
            ui::choices(look, [was(true, "walk-question-answered"), was(false, "walk-question-open")]),
            self.ends(sheet, ctx.say("walk-question-keep"), Message::SheetClosed),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }

    fn stop(&self, sheet: &Sheet, reason: &'a str) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        column![
            ui::section(look, ctx.say("walk-stop-title")),
            ui::body(look, ctx.say("walk-stop-what")),
            self.note_field(reason, "walk-stop-reason", None),
            self.ends(sheet, ctx.say("walk-stop-keep"), Message::SheetClosed),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }
}
