//! First start: the tablet gets its name and its key.

use iced::widget::{column, container};
use iced::{Alignment, Length};

use super::{Action, Screen, staff};
use crate::kiosk::context::Ctx;
use crate::kiosk::gate::Purpose;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::record::keys::check_tablet_name;

/// Name of a tablet that goes straight on with the demo lot.
const DEMO: &str = "demo";

/// State of the screen.
#[derive(Debug)]
pub struct State {
    demo: bool,
    name: String,
    fault: Option<String>,
    fingerprint: Option<String>,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// The name was typed.
    NameChanged(String),
    /// The name is to be used.
    NameGiven,
    /// Straight on with the demo lot.
    DemoChosen,
    /// The fingerprint was read.
    GoneOn,
    /// The first person with a PIN is to be added.
    PersonAsked,
}

impl State {
    /// The screen as it opens.
    #[must_use]
    pub fn new(demo: bool) -> Self {
        Self { demo, name: String::new(), fault: None, fingerprint: None }
    }

    /// The screen once the key is made.
    #[must_use]
    pub fn named(fingerprint: String, demo: bool) -> Self {
        Self { fingerprint: Some(fingerprint), ..Self::new(demo) }
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match message {
            Message::NameChanged(name) => {
                self.name = name;
                self.fault = None;
                Action::None
            }
            Message::NameGiven => match check_tablet_name(&self.name) {
                Ok(()) => Action::Name(self.name.clone()),
                Err(fault) => {
                    self.fault = Some(fault.to_string());
                    Action::None
                }
            },
            Message::DemoChosen => Action::Name(DEMO.to_owned()),
            Message::GoneOn => Action::ToYard,
            // A data folder that knows people already has its gate.
            Message::PersonAsked if ctx.crew.signs_on() => Action::Gate(Purpose::Staff),
            Message::PersonAsked => Action::open(Screen::Staff(staff::State::new(None))),
        }
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let content = match &self.fingerprint {
            Some(fingerprint) => column![
                ui::title(look, ctx.say("first-named")),
                ui::body(look, ctx.say("first-fingerprint")),
                ui::section(look, fingerprint.clone()),
                ui::body(look, ctx.say("first-office")),
                ui::primary(look, ctx.say("first-go-on"), Message::GoneOn),
                ui::rule(look),
                ui::body(look, ctx.say("first-person-why")),
                ui::secondary(look, ctx.say("staff-first-title"), Message::PersonAsked),
            ],
            None => {
                let field = ui::field(look, "tablet-name", &self.name, Message::NameChanged)
                    .label(ctx.say("first-name"))
                    .placeholder(ctx.say("first-name-example"))
                    .error(self.fault.clone())
                    .on_submit(Message::NameGiven);
                let mut content = column![
                    ui::title(look, ctx.say("first-title")),
                    ui::body(look, ctx.say("first-why")),
                    Element::from(field),
                ];
                if !self.name.is_empty() {
                    content = content.push(ui::primary(look, ctx.say("first-make-key"), Message::NameGiven));
                }
                if self.demo {
                    content = content
                        .push(ui::rule(look))
                        .push(ui::body(look, ctx.say("first-demo-why")))
                        .push(ui::secondary(look, ctx.say("first-demo"), Message::DemoChosen));
                }
                content
            }
        };
        let panel = ui::panel(look, content.spacing(look.gap(Gap::Large))).max_width(look.px(760.0));
        let page =
            container(panel).width(Length::Fill).align_x(Alignment::Center).padding(look.gap(Gap::Wide));
        ui::scroll(look, page).height(Length::Fill).into()
    }
}
