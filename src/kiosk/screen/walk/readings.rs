//! Readings of a step: a gauge to tap, a number to type, or why it could not be read.

use std::collections::BTreeMap;

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Border, Length, border};

use super::sheet::Sheet;
use super::{Draft, Message, Page, SheetKind, fit, way};
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, Type};
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::measure::Quantity;
use crate::route::{Off, Reading, Scale, Step};
use crate::walk::{Event, NotRead, ReadingState, Walk};
use crate::words::{Args, format};

/// Names of the fields, in the order of a step's readings.
const FIELDS: [&str; 6] = [
    "walk-reading-1",
    "walk-reading-2",
    "walk-reading-3",
    "walk-reading-4",
    "walk-reading-5",
    "walk-reading-6",
];
/// Names of the fields for remarks.
const NOTES: [&str; 6] =
    ["walk-unread-1", "walk-unread-2", "walk-unread-3", "walk-unread-4", "walk-unread-5", "walk-unread-6"];
/// Why a reading could not be taken.
const WHY: [NotRead; 3] = [NotRead::Broken, NotRead::Unreachable, NotRead::WrongMoment];

/// A reading that is not yet kept.
#[derive(Debug, Clone, PartialEq, Eq)]
enum OneDraft {
    Value(String),
    Not { reason: Option<NotRead>, note: String },
}

/// What is typed and tapped for the readings of a step, and what of it is new.
#[derive(Debug, Clone)]
pub(super) struct Drafts {
    drafts: BTreeMap<String, OneDraft>,
    measures: BTreeMap<String, String>,
}

impl Drafts {
    /// The readings of a step as they were taken, or empty.
    pub fn of(walk: &Walk, step: &Step) -> Self {
        let draft = |r: &Reading| match walk.reading(&r.id).map(|t| &t.value) {
            None => OneDraft::Value(String::new()),
            Some(ReadingState::Taken { value, .. }) => OneDraft::Value(value.clone()),
            Some(ReadingState::NotTaken { reason, note }) => {
                OneDraft::Not { reason: Some(*reason), note: note.clone() }
            }
        };
        let measure = |r: &Reading| match &r.scale {
            Scale::Number { measure, .. } => measure.clone(),
            Scale::Parts(_) | Scale::Choice(_) => String::new(),
        };
        Self {
            drafts: step.readings.iter().map(|r| (r.id.clone(), draft(r))).collect(),
            measures: step.readings.iter().map(|r| (r.id.clone(), measure(r))).collect(),
        }
    }

    /// Takes in what changed.
    pub fn change(&mut self, draft: Draft) {
        let (reading, new) = match draft {
            Draft::Reading(reading, value) => (reading, OneDraft::Value(value)),
            Draft::NotRead(reading, None) => (reading, OneDraft::Value(String::new())),
            Draft::NotRead(reading, Some(reason)) => {
                let note = match self.drafts.get(&reading) {
                    Some(OneDraft::Not { note, .. }) => note.clone(),
                    _ => String::new(),
                };
                (reading, OneDraft::Not { reason: Some(reason), note })
            }
            Draft::NotReadAsked(reading) => (reading, OneDraft::Not { reason: None, note: String::new() }),
            Draft::ReadingNote(reading, note) => {
                let reason = match self.drafts.get(&reading) {
                    Some(OneDraft::Not { reason, .. }) => *reason,
                    _ => None,
                };
                (reading, OneDraft::Not { reason, note })
            }
            _ => return,
        };
        let _ = self.drafts.insert(reading, new);
    }

    /// What one draft says, if it says something.
    fn event(&self, reading: &str) -> Option<Event> {
        match self.drafts.get(reading)? {
            OneDraft::Value(value) if value.trim().is_empty() => None,
            OneDraft::Value(value) => Some(Event::ReadingTaken {
                reading: reading.to_owned(),
                value: value.trim().to_owned(),
                measure: self.measures.get(reading).cloned().unwrap_or_default(),
            }),
            OneDraft::Not { reason, note } => {
                let note = note.trim().to_owned();
                reason.map(|reason| Event::ReadingNotTaken { reading: reading.to_owned(), reason, note })
            }
        }
    }

    /// What of a draft the walk would not take; one that says nothing new is no fault.
    fn is_wrong(&self, walk: &Walk, reading: &str) -> bool {
        use crate::walk::Refused;
        let refused = self.event(reading).and_then(|e| way::probe(walk, e).err());
        refused.is_some_and(|r| r != Refused::AlreadySo)
    }

    /// What is new, once nothing is wrong.
    pub fn events(&self, walk: &Walk) -> Vec<Event> {
        if self.drafts.keys().any(|id| self.is_wrong(walk, id)) {
            return Vec::new();
        }
        let said = self.drafts.keys().filter_map(|id| self.event(id));
        said.filter(|e| way::probe(walk, e.clone()).is_ok()).collect()
    }
}

impl<'a> Page<'a> {
    /// The readings of the step, as rows that open the sheet.
    pub(super) fn reading_rows(&self) -> Vec<Element<'a, Message>> {
        let look = &self.ctx.look;
        let row_of = |reading: &Reading| {
            let name = self.say_unit(&format!("reading-{}", reading.id));
            let taken = self.walk().reading(&reading.id).map(|t| &t.value);
            let off = self.off_state(reading, taken);
            let sign = match taken {
                Some(ReadingState::Taken { .. }) if off.is_some() => Some(Symbol::Alert),
                Some(ReadingState::Taken { .. }) => Some(Symbol::TickDisc),
                Some(ReadingState::NotTaken { .. }) => Some(Symbol::Cross),
                // An empty ring would look like a box to tick.
                None => None,
            };
            let words = self.taken(taken);
            let value = match taken {
                Some(ReadingState::Taken { .. }) => ui::strong(look, words),
                _ => ui::small(look, words),
            };
            let color = if off.is_some() { look.colors().ink } else { look.colors().accent };
            let sign = sign.map(|s| ui::symbol::symbol_in(look, s, 28.0, color, look.colors().leaf));
            let line = row![]
                .push(sign)
                .push(ui::body(look, name).width(Length::Fill))
                .push(value)
                .push(ui::symbol(look, Symbol::Right, 22.0))
                .spacing(look.gap(Gap::Medium))
                .align_y(Alignment::Center);
            let all = column![line].push(off.map(|(what, to_do)| {
                column![ui::strong(look, what), ui::small(look, to_do).color(look.ink())].width(Length::Fill)
            }));
            let all = all.spacing(look.gap(Gap::Tiny));
            ui::press_panel(look, ui::Edge::Press, all, Message::SheetAsked(SheetKind::Readings))
        };
        self.step.readings.iter().map(row_of).collect()
    }

    /// That what was read lies out of the bounds, and what to do about it.
    fn off_state(&self, reading: &Reading, state: Option<&ReadingState>) -> Option<(String, String)> {
        match state {
            Some(ReadingState::Taken { value, .. }) => self.off(reading, value),
            Some(ReadingState::NotTaken { .. }) | None => None,
        }
    }

    /// Whether something that was read at the step lies out of its bounds.
    pub(super) fn reads_off(&self) -> bool {
        let off = |r: &Reading| self.off_state(r, self.walk().reading(&r.id).map(|t| &t.value));
        self.step.readings.iter().any(|r| off(r).is_some())
    }

    /// That a value lies out of the bounds, and what to do about it.
    fn off(&self, reading: &Reading, value: &str) -> Option<(String, String)> {
        let Scale::Number { measure, .. } = &reading.scale else { return None };
        let (key, part, bound) = match reading.off(value)? {
            Off::Below(least) => ("walk-reading-below", "below", least),
            Off::Above(most) => ("walk-reading-above", "above", most),
        };
        let args = Args::new()
            .text("value", self.measured(value, measure))
            .text("bound", self.measured(&bound.to_string(), measure));
        let to_do = self.say_unit(&format!("reading-{}.{part}", reading.id));
        let to_do = self.ctx.say_with("walk-reading-agent", &Args::new().text("what", to_do));
        Some((self.ctx.say_with(key, &args), to_do))
    }

    /// What became of a reading, in words.
    fn taken(&self, state: Option<&ReadingState>) -> String {
        let ctx = &self.ctx;
        match state {
            None => ctx.say("walk-reading-open"),
            Some(ReadingState::Taken { value, measure }) => self.measured(value, measure),
            Some(ReadingState::NotTaken { reason, note }) => {
                let why = ctx.say(why_key(*reason));
                if note.trim().is_empty() {
                    return why;
                }
                ctx.say_with("crumb-two", &Args::new().text("first", why).text("second", note.clone()))
            }
        }
    }

    /// A value with its measure, as it was read: nothing is converted.
    fn measured(&self, value: &str, measure: &str) -> String {
        let (words, staff) = (&self.ctx.scripts.words, &self.ctx.settings.staff);
        let Ok(quantity) = Quantity::parse(&format!("{value} {measure}")) else { return value.to_owned() };
        if measure.is_empty() {
            return value.to_owned();
        }
        let amount = quantity.amount();
        let args = Args::new().text("amount", format::number(words, staff, amount)).number("n", amount);
        words.say(staff, &format::measure_key(quantity.measure()), &args)
    }

    /// The sheet with all readings of the step.
    pub(super) fn reading_sheet(&self, sheet: &Sheet, drafts: &'a Drafts) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let blocks =
            self.step.readings.iter().enumerate().map(|(index, r)| self.reading_block(drafts, r, index));
        let count = drafts.events(self.walk()).len();
        column![
            ui::section(look, ctx.say("walk-readings-title")),
            Column::with_children(blocks).spacing(look.gap(Gap::Large)),
            self.ends(sheet, counted(ctx, "walk-readings-keep", count), Message::SheetClosed),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }

    /// What is to be done on the sheet before anything can be kept.
    pub(super) fn readings_lack(&self, drafts: &Drafts) -> String {
        let ctx = &self.ctx;
        if drafts.drafts.keys().any(|id| drafts.is_wrong(self.walk(), id)) {
            return ctx.say("walk-readings-lack-right");
        }
        if drafts.drafts.keys().any(|id| drafts.event(id).is_some()) {
            return ctx.say("walk-readings-kept");
        }
        counted(ctx, "walk-readings-lack", self.step.readings.len())
    }

    fn reading_block(&self, drafts: &'a Drafts, reading: &'a Reading, index: usize) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let id = &reading.id;
        let head = column![
            ui::strong(look, self.say_unit(&format!("reading-{id}"))),
            ui::small(look, self.say_unit(&format!("reading-{id}.how"))),
        ]
        .width(Length::Fill);
        if let Some(OneDraft::Not { reason, note }) = drafts.drafts.get(id) {
            return column![head, self.unread(reading, *reason, note, index)]
                .spacing(look.gap(Gap::Small))
                .into();
        }
        let value = match drafts.drafts.get(id) {
            Some(OneDraft::Value(value)) => value.as_str(),
            _ => "",
        };
        let control = match &reading.scale {
            Scale::Parts(parts) => self.gauge(reading, *parts, value),
            Scale::Choice(words) => self.reading_choice(reading, words, value),
            Scale::Number { .. } => self.number(drafts, reading, value, index),
        };
        let not =
            ui::quiet(look, ctx.say("walk-reading-not"), Message::Draft(Draft::NotReadAsked(id.clone())));
        let head = row![head, Element::from(not)].spacing(look.gap(Gap::Large));
        let off = self.off(reading, value.trim()).filter(|_| !drafts.is_wrong(self.walk(), id));
        let off = off.map(|(what, to_do)| ui::signed_note(look, Symbol::Alert, what, to_do));
        column![head, control].push(off).spacing(look.gap(Gap::Small)).into()
    }

    fn number(
        &self,
        drafts: &Drafts,
        reading: &'a Reading,
        value: &'a str,
        index: usize,
    ) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let Scale::Number { measure, step, min, max, .. } = &reading.scale else {
            return iced::widget::Space::new().into();
        };
        let say = |n: rust_decimal::Decimal| self.measured(&n.to_string(), measure);
        let range = Args::new().text("min", say(*min)).text("max", say(*max)).text("step", say(*step));
        let wrong = drafts.is_wrong(self.walk(), &reading.id);
        let unit = self.measure_word(measure);
        let id = FIELDS.get(index).copied().unwrap_or("walk-reading");
        let field = ui::field(look, id, value, |v| Message::Draft(Draft::Reading(reading.id.clone(), v)))
            .decimal()
            .error(wrong.then(|| ctx.say_with("walk-reading-range", &range)));
        row![container(Element::from(field)).width(look.px(320.0)), ui::strong(look, unit)]
            .spacing(look.gap(Gap::Medium))
            .align_y(if wrong { Alignment::Start } else { Alignment::Center })
            .into()
    }

    /// The sign of a measure alone.
    fn measure_word(&self, measure: &str) -> String {
        let (words, staff) = (&self.ctx.scripts.words, &self.ctx.settings.staff);
        let Ok(one) = Quantity::parse(&format!("2 {measure}")) else { return measure.to_owned() };
        let args = Args::new().text("amount", "").number("n", 2);
        words.say(staff, &format::measure_key(one.measure()), &args).trim().to_owned()
    }

    /// A gauge in parts: every mark is a target, what lies below the chosen one is filled.
    fn gauge(&self, reading: &'a Reading, parts: u8, value: &str) -> Element<'a, Message> {
        let chosen: Option<u8> = value.split_once('/').and_then(|(n, _)| n.parse().ok());
        let cells = (0..=parts).map(|n| {
            let draft = Draft::Reading(reading.id.clone(), format!("{n}/{parts}"));
            self.cell((n, parts), chosen, Message::Draft(draft))
        });
        Row::with_children(cells).into()
    }

    /// What stands on a mark: words at the ends where a mark has room for them.
    fn mark_words(&self, n: u8, parts: u8) -> String {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let room = look.px(700.0) / (f32::from(parts) + 1.0) - look.gap(Gap::Small);
        let end = match n {
            0 => Some(ctx.say("walk-gauge-empty")),
            n if n == parts => Some(ctx.say("walk-gauge-full")),
            _ => None,
        };
        end.filter(|e| fit::room(look, Type::Strong, e, f32::INFINITY).width <= room)
            .unwrap_or_else(|| format!("{n}/{parts}"))
    }

    fn cell(&self, (n, parts): (u8, u8), chosen: Option<u8>, message: Message) -> Element<'a, Message> {
        let (look, colors) = (self.ctx.look, self.ctx.look.colors());
        let (is, below) = (chosen == Some(n), chosen.is_some_and(|c| n < c));
        let (fill, ink) = if is {
            (colors.accent, colors.on_accent)
        } else if below {
            (colors.tint, colors.ink)
        } else {
            (colors.leaf, colors.ink)
        };
        let radius = match n {
            0 => border::left(look.radius()),
            n if n == parts => border::right(look.radius()),
            _ => border::Radius::default(),
        };
        let style = container::Style {
            background: Some(fill.into()),
            border: Border { color: colors.edge, width: look.line(), radius },
            snap: true,
            ..container::Style::default()
        };
        let label = self.mark_words(n, parts);
        let text = ui::text(&look, if is { Type::Strong } else { Type::Small }, label).color(ink);
        let face = container(text).center_x(Length::Fill).center_y(look.target()).style(move |_| style);
        ui::tap(&look, face, message).radius(0.0).among(ui::Among::at(n.into())).into()
    }

    fn reading_choice(&self, reading: &'a Reading, words: &[String], value: &str) -> Element<'a, Message> {
        let all = words.iter().map(|word| {
            let message = Message::Draft(Draft::Reading(reading.id.clone(), word.clone()));
            Choice::new(self.say_unit(&format!("choice-{word}")), value == word, message)
        });
        ui::choices(&self.ctx.look, all)
    }

    /// Why it could not be read, and the way back to reading it.
    fn unread(
        &self,
        reading: &'a Reading,
        reason: Option<NotRead>,
        note: &'a str,
        index: usize,
    ) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let id = &reading.id;
        let why = WHY.map(|one| {
            let message = Message::Draft(Draft::NotRead(id.clone(), Some(one)));
            Choice::new(ctx.say(why_key(one)), reason == Some(one), message)
        });
        let name = NOTES.get(index).copied().unwrap_or("walk-unread");
        let field =
            ui::field(look, name, note, |words| Message::Draft(Draft::ReadingNote(id.clone(), words)))
                .label(ctx.say("walk-note"));
        let back = ui::quiet(
            look,
            ctx.say("walk-reading-after-all"),
            Message::Draft(Draft::NotRead(id.clone(), None)),
        );
        column![ui::choices(look, why), Element::from(field), Element::from(back)]
            .spacing(look.gap(Gap::Small))
            .into()
    }
}

/// Words of a reason.
const fn why_key(reason: NotRead) -> &'static str {
    match reason {
        NotRead::Broken => "walk-unread-broken",
        NotRead::Unreachable => "walk-unread-unreachable",
        NotRead::WrongMoment => "walk-unread-wrong-moment",
    }
}
