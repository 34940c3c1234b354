//! Handing records in: where to, and whose receipt is to be believed.

use std::path::{Path, PathBuf};

use iced::Length;
use iced::widget::{column, row};

use super::{Message, State};
use crate::kiosk::context::Ctx;
use crate::kiosk::gate::Purpose;
use crate::kiosk::hand_in::Ask;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::record::keys::PublicKey;
use crate::words::Args;

/// How far handing in is.
#[derive(Debug, Default, Clone, PartialEq, Eq)]
pub(super) enum HandIn {
    /// Not asked for.
    #[default]
    Closed,
    /// Places are being looked for, or records are being copied.
    Busy,
    /// One of these places.
    Where(Vec<PathBuf>),
    /// A receipt is signed by a key that nobody has said to be the office's.
    Whose(PublicKey),
}

/// What happened there.
#[derive(Debug, Clone)]
pub enum Step {
    /// Records are to be handed in, or sticks looked for again.
    Asked,
    /// To this place.
    Chosen(PathBuf),
    /// The key is that of the office.
    Confirmed,
    /// Not now.
    Left,
}

impl State {
    pub(super) fn hand_in_step(&mut self, step: Step) -> Action {
        match step {
            Step::Asked => {
                self.hand_in = HandIn::Busy;
                Action::HandIn(Ask::Places)
            }
            Step::Chosen(place) => {
                self.hand_in = HandIn::Busy;
                Action::HandIn(Ask::To(place))
            }
            Step::Confirmed => match self.hand_in {
                HandIn::Whose(key) => Action::Gate(Purpose::Office(key)),
                _ => Action::None,
            },
            Step::Left => {
                self.hand_in = HandIn::Closed;
                Action::None
            }
        }
    }

    /// The places that there are.
    pub fn places_found(&mut self, places: Vec<PathBuf>) {
        self.hand_in = HandIn::Where(places);
    }

    /// A receipt was found that is signed by this key.
    pub fn ask_whose(&mut self, key: PublicKey) {
        self.hand_in = HandIn::Whose(key);
    }

    /// The way to hand records in, while some wait.
    pub(super) fn hand_in_view<'a>(&'a self, ctx: &Ctx<'a>) -> Option<Element<'a, Message>> {
        let look = &ctx.look;
        let step = |step| Message::HandIn(step);
        let content = match &self.hand_in {
            HandIn::Closed if self.list.waiting == 0 => return None,
            HandIn::Closed => {
                let ask = ui::secondary(look, ctx.say("yard-hand-in"), step(Step::Asked)).id("yard-hand-in");
                return Some(ask.into());
            }
            HandIn::Busy => column![ui::body(look, ctx.say("yard-hand-in-busy"))],
            HandIn::Where(places) => {
                let line = if places.is_empty() { "yard-hand-in-none" } else { "yard-hand-in-why" };
                let mut page =
                    column![ui::section(look, ctx.say("yard-hand-in-where")), ui::body(look, ctx.say(line)),];
                for place in places {
                    let to = Args::new().text("place", name_of(place));
                    let to = ui::primary(
                        look,
                        ctx.say_with("yard-hand-in-to", &to),
                        step(Step::Chosen(place.clone())),
                    );
                    page = page.push(to.fill());
                }
                let again = ui::secondary(look, ctx.say("yard-hand-in-again"), step(Step::Asked));
                let gap = look.gap(Gap::Medium);
                page.push(row![again, not_now(ctx)].spacing(gap).wrap().vertical_spacing(gap))
            }
            HandIn::Whose(key) => column![
                ui::section(look, ctx.say("yard-office-whose")),
                ui::body(look, ctx.say("yard-office-why")),
                ui::strong(look, key.fingerprint()),
                ui::body(look, ctx.say("yard-office-once")),
                ui::secondary(look, ctx.say("yard-office-yes"), step(Step::Confirmed)).id("yard-office-yes"),
                not_now(ctx),
            ],
        };
        Some(ui::panel(look, content.spacing(look.gap(Gap::Large)).width(Length::Fill)).into())
    }
}

fn not_now<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    ui::secondary(&ctx.look, ctx.say("yard-hand-in-left"), Message::HandIn(Step::Left)).into()
}

/// The last part of a path: the name of a stick.
#[must_use]
pub fn name_of(place: &Path) -> String {
    place.file_name().map_or_else(|| place.display().to_string(), |name| name.to_string_lossy().into_owned())
}
