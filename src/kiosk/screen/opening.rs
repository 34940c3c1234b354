//! Opening.

use super::{Action, Screen};
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::ui::{self, Element};

/// State of the screen: only what is not yet said.
#[derive(Debug)]
pub struct State {}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {}

impl State {
    /// The screen as it opens.
    #[must_use]
    pub fn new(_hall: &Hall) -> Self {
        Self {}
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, _ctx: &Ctx<'_>) -> Action {
        match message {}
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, _ctx: &Ctx<'_>) -> Action {
        Action::None
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        ui::title(&ctx.look, "opening").into()
    }
}
