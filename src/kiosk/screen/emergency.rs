//! The emergency card: whom to call, what to do first, where things are on this unit. One tap away on every page.

use iced::widget::{Column, column, row};
use iced::{Alignment, Length};

use super::super::Message;
use super::super::context::Ctx;
use super::super::theme::{Gap, TextSize};
use super::super::ui::{self, Element, Hazard};
use super::Screen;
use crate::script::Speaker;
use crate::words::{Args, Reader};

/// What can happen, its sign, and the lines that say what to do; a line that the unit has no words for is left out.
const WHEN: [(Hazard, &str, &[&str]); 3] = [
    (Hazard::Fire, "emergency-fire", &["emergency-fire-do"]),
    (Hazard::Explosion, "emergency-gas", &["emergency-gas-do", "emergency-gas-away", "emergency-no-propane"]),
    (Hazard::Gas, "emergency-co", &["emergency-co-do"]),
];

/// Where things are on the unit; one that it does not have is left out.
const PLACES: [&str; 3] = ["emergency-shut-off", "emergency-exits", "emergency-extinguisher"];

/// Says the card: for the renter's unit in their language, else for staff.
struct Card<'c, 'a> {
    ctx: &'c Ctx<'a>,
    reader: Reader,
    speaker: Option<Speaker<'a>>,
    unit: Option<String>,
}

impl<'a> Card<'_, 'a> {
    fn say(&self, key: &str) -> String {
        self.ctx.scripts.words.say(&self.reader, key, &Args::new())
    }

    /// A line with values of the unit; none where there is no unit, or it lacks what the line is about.
    fn line(&self, key: &str) -> Option<String> {
        let line = match &self.speaker {
            Some(speaker) => speaker.try_say(key).ok(),
            None => self.ctx.scripts.words.try_say(&self.reader, key, &Args::new()).ok(),
        };
        line.filter(|line| !line.is_empty())
    }

    fn phones(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let phones = &self.ctx.scripts.lot.value.phone.value;
        let line = |key: &str, number: &str| -> Element<'a, Message> {
            row![ui::body(look, self.say(key)).width(Length::Fill), ui::figure(look, number.to_owned())]
                .spacing(look.gap(Gap::Wide))
                .align_y(Alignment::Center)
                .into()
        };
        let lines = column![
            line("emergency-call", &phones.emergency),
            line("emergency-road", &phones.road),
            line("emergency-day", &phones.day),
        ];
        lines.spacing(look.gap(Gap::Small)).into()
    }

    /// What to do first, by what has happened.
    fn first(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let parts = WHEN.iter().map(|(sign, title, lines)| {
            let lines: Vec<String> = lines.iter().filter_map(|key| self.line(key)).collect();
            let words = column![
                ui::strong(look, self.say(title)),
                ui::body(look, lines.join(" ")).width(Length::Fill)
            ];
            row![ui::hazard_symbol(look, *sign, 60.0), words.width(Length::Fill)]
                .spacing(look.gap(Gap::Large))
                .into()
        });
        Column::with_children(parts).spacing(look.gap(Gap::Medium)).into()
    }

    /// What to say on the phone, and where things are.
    fn places(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let unit = self.unit.as_ref().map(|unit| {
            let name = self.say(&format!("unit-{unit}"));
            let kind = self.say(&format!("unit-{unit}.kind"));
            let args = Args::new().text("unit", name).text("kind", kind);
            match &self.speaker {
                Some(speaker) => speaker.say_with("emergency-this", args),
                None => self.ctx.scripts.words.say(&self.reader, "emergency-this", &args),
            }
        });
        let places = PLACES.iter().filter(|_| self.unit.is_some()).filter_map(|key| self.line(key));
        let lines = unit.into_iter().chain(places);
        let lines = lines.map(|line| ui::body(look, line).width(Length::Fill).into());
        column![ui::body(look, self.say("emergency-where")).width(Length::Fill)]
            .extend(lines)
            .spacing(look.gap(Gap::Small))
            .into()
    }
}

/// The card over an open screen: its head, which stays in sight, and the rest.
pub(super) fn card<'a>(screen: &Screen, ctx: &Ctx<'a>) -> (Element<'a, Message>, Element<'a, Message>) {
    let look = &ctx.look;
    let unit = match screen {
        Screen::Reread(state) => Some(state.unit().to_owned()),
        _ => ctx.hall.map(|hall| hall.walk.route().unit.clone()),
    };
    let reader = reader(screen, ctx);
    let speaker = unit.as_ref().and_then(|unit| Speaker::new(ctx.scripts, unit, reader.clone()));
    let card = Card { ctx, reader, speaker, unit };
    let close = ui::primary(look, card.say("emergency-close"), Message::EmergencyToggled);
    let title = ui::title(look, card.say("emergency-title")).width(Length::Fill);
    // Large letters leave the title no room beside the button.
    let head: Element<'a, Message> = if look.text == TextSize::Usual {
        row![title, Element::from(close)].spacing(look.gap(Gap::Large)).align_y(Alignment::Center).into()
    } else {
        column![title, Element::from(close.fill())].spacing(look.gap(Gap::Medium)).into()
    };
    let rest = column![
        ui::strong(look, card.say("emergency-first")),
        card.phones(),
        ui::rule(look),
        card.first(),
        ui::rule(look),
        card.places(),
    ];
    (head, rest.spacing(look.gap(Gap::Large)).into())
}

/// Who reads what lies around a screen.
pub(super) fn reader(screen: &Screen, ctx: &Ctx<'_>) -> Reader {
    match screen {
        Screen::Reread(state) => state.reader().clone(),
        _ => ctx.settings.staff.clone(),
    }
}
