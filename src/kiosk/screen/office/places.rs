//! Where records come from or go to: what is plugged in, the folder that the settings name, any other folder.

use std::path::PathBuf;

use iced::widget::column;

use super::Message;
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::yard::name_of;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::words::Args;

/// The places there are, and a folder that is typed.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Places {
    /// None while they are being looked for.
    pub found: Option<Vec<PathBuf>>,
    /// The folder that is typed.
    pub typed: String,
}

impl Places {
    /// The typed folder, if one is.
    #[must_use]
    pub fn folder(&self) -> Option<PathBuf> {
        let typed = self.typed.trim();
        (!typed.is_empty()).then(|| PathBuf::from(typed))
    }

    /// The places to choose from. `to` names one on its button; `why` says what a folder is for.
    pub(super) fn view<'a>(&'a self, ctx: &Ctx<'a>, to: &str, typed: &str) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Large);
        let mut page = column![].spacing(gap);
        match &self.found {
            None => page = page.push(ui::body(look, ctx.say("office-places-looking"))),
            Some(places) => {
                if places.is_empty() {
                    page = page.push(ui::body(look, ctx.say("office-places-none")));
                }
                for place in places {
                    let words = ctx.say_with(to, &Args::new().text("place", name_of(place)));
                    let choose = ui::secondary(look, words, Message::PlaceChosen(place.clone())).fill();
                    page = page.push(
                        column![Element::from(choose), ui::small(look, place.display().to_string())]
                            .spacing(look.gap(Gap::Tiny)),
                    );
                }
                page = page.push(ui::secondary(look, ctx.say("office-places-again"), Message::PlacesAsked));
            }
        }
        let field = ui::field(look, "office-folder", &self.typed, Message::FolderTyped)
            .label(ctx.say("office-folder"))
            .placeholder(ctx.say("office-folder-example"))
            .on_submit(Message::FolderGiven);
        let given = self
            .folder()
            .map(|_| ui::secondary(look, ctx.say(typed), Message::FolderGiven).id("office-folder-go"));
        page.push(Element::from(field)).push(given).into()
    }
}
