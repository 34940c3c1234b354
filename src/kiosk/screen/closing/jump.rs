//! What is missing: in words, and the way there.

use iced::widget::{column, row};
use iced::{Alignment, Length};

use super::{Message, Page, Show, State};
use crate::kiosk::hall::Hall;
use crate::kiosk::screen::{Action, Screen, counted, opening, walk};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::walk::Missing;
use crate::walk::{Arg, PersonId};
use crate::words::{Args, Value, format};

/// How many places are listed; the rest is counted.
const LISTED: usize = 6;
/// How many things are listed at one place.
const AT_ONE_PLACE: usize = 2;

/// Back to the walk where it stands.
pub(super) fn back(hall: &Hall) -> Action {
    Action::open(Screen::Walk(walk::State::new(hall)))
}

impl State {
    /// Where something that is missing can be made good.
    pub(super) fn jump(&mut self, hall: &Hall, missing: &Missing) -> Action {
        match missing {
            Missing::Agent
            | Missing::Reader
            | Missing::Party
            | Missing::Licence { .. }
            | Missing::LicenceTooShort { .. }
            | Missing::Present
            | Missing::Experience
            | Missing::Booking
            | Missing::Opened => Action::open(Screen::Opening(opening::State::new(hall))),
            Missing::Item { .. } => match hall.walk.route().steps.iter().find(|s| s.kit) {
                Some(step) => Action::open(Screen::Walk(walk::State::at_step(hall, &step.id))),
                None => back(hall),
            },
            Missing::Step { step }
            | Missing::Answer { step, .. }
            | Missing::AnswerKept { step, .. }
            | Missing::Reading { step, .. }
            | Missing::Leaving { step, .. }
            | Missing::LeavingNotGood { step, .. } => {
                Action::open(Screen::Walk(walk::State::at_step(hall, step)))
            }
            Missing::Consent | Missing::Signature { .. } | Missing::SignatureKept { .. } => {
                self.page = Page::Sign;
                Action::None
            }
            Missing::CopyOffered | Missing::CopyChoice => {
                self.page = Page::Copy;
                Action::None
            }
        }
    }
}

/// What has to be made good before anybody may sign. The consent has its own place, before the signatures.
pub(super) fn before_signing(hall: &Hall) -> Vec<Missing> {
    let mut missing = hall.walk.missing_to_sign();
    missing.retain(|m| *m != Missing::Consent);
    missing
}

/// What is missing, for the agent: a line for each place that leads there.
pub(super) fn list<'a>(show: &Show<'_, 'a>, missing: Vec<Missing>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let all = missing.len();
    if all == 0 {
        return None;
    }
    let title = counted(show.ctx, "closing-missing-title", all);
    let mut lines = column![ui::section(look, title)].spacing(look.gap(Gap::Small));
    let places = by_place(missing);
    let rest: usize = places.iter().skip(LISTED).map(Vec::len).sum();
    for place in places.into_iter().take(LISTED) {
        lines = lines.push(place_line(show, place));
    }
    if rest > 0 {
        lines = lines.push(ui::small(look, counted(show.ctx, "closing-missing-more", rest)));
    }
    Some(ui::chosen_panel(look, lines).into())
}

/// What belongs to one step stands together, in the order of the walk.
fn by_place(missing: Vec<Missing>) -> Vec<Vec<Missing>> {
    let mut places: Vec<Vec<Missing>> = Vec::new();
    for missing in missing {
        let same = |place: &&mut Vec<Missing>| {
            missing.step().is_some() && place.first().is_some_and(|first| first.step() == missing.step())
        };
        match places.last_mut().filter(same) {
            Some(place) => place.push(missing),
            None => places.push(vec![missing]),
        }
    }
    places
}

fn place_line<'a>(show: &Show<'_, 'a>, place: Vec<Missing>) -> Element<'a, Message> {
    let look = &show.look;
    let mut text = column![].spacing(look.gap(Gap::Tiny)).width(Length::Fill);
    // A step that was not shown says its own name.
    let names_step = |m: &Missing| !matches!(m, Missing::Step { .. });
    let step = place.first().filter(|m| names_step(m)).and_then(Missing::step);
    if let Some(step) = step {
        text = text.push(ui::strong(look, named(show, "step", step)));
    }
    for missing in place.iter().take(AT_ONE_PLACE) {
        text = text.push(ui::body(look, words(show, missing)));
    }
    if place.len() > AT_ONE_PLACE {
        let more = counted(show.ctx, "closing-missing-more", place.len() - AT_ONE_PLACE);
        text = text.push(ui::small(look, more));
    }
    let line = row![text, ui::symbol(look, Symbol::Right, 24.0)];
    let line = line.spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
    match place.into_iter().next() {
        Some(first) => ui::press_panel(look, ui::Edge::Press, line, Message::Jumped(first)),
        None => line.into(),
    }
}

fn words(show: &Show<'_, '_>, missing: &Missing) -> String {
    let mut args = Args::new();
    for (name, arg) in missing.args() {
        args.set(name, value(show, name, arg));
    }
    let key = missing.key();
    show.staff_with(key, &args)
}

fn value(show: &Show<'_, '_>, name: &str, arg: Arg) -> Value {
    let (scripts, settings) = (show.ctx.scripts, show.ctx.settings);
    let date = |d| format::date(&scripts.words, &settings.staff, d);
    let person = |id: PersonId| show.name(id);
    match arg {
        Arg::Text(id) => Value::Text(named(show, name, &id)),
        Arg::Number(number) => Value::Number(number.into()),
        Arg::Date(day) => Value::Text(date(day)),
        Arg::Person(id) => Value::Text(person(id)),
        Arg::Agent | Arg::Missing(_) => Value::Text(String::new()),
    }
}

/// What staff call something that events know by its id.
fn named(show: &Show<'_, '_>, kind: &str, id: &str) -> String {
    let route = show.hall.walk.route();
    let unit = &route.unit;
    let said = |key: &str| show.ctx.staff(unit).map(|s| s.say(key));
    let found = match kind {
        "step" => said(&format!("step-{id}")),
        "caution" => said(&format!("caution-{id}.title")),
        "reading" => said(&format!("reading-{id}")),
        // An item of the kit by its tag, else a line of the leaving check.
        "item" => match route.items.iter().find(|i| i.tag == id) {
            Some(item) => said(&item.words),
            None => said(&format!("leaving-{id}")),
        },
        _ => None,
    };
    found.unwrap_or_else(|| id.to_owned())
}
