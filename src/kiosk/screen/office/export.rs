//! Copying a record out: the sealed file as it is, or its text for people.

use std::path::PathBuf;

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::places::Places;
use super::table::sentence;
use super::{Message, State};
use crate::kiosk::context::Ctx;
use crate::kiosk::office::What;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::words::Args;

/// What is copied, and what came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Export {
    /// What.
    pub what: What,
    /// Whether its text can be copied too: only of a record that verified.
    pub text: bool,
    /// Whether it is being written.
    pub busy: bool,
    /// The file that was written, or why not.
    pub result: Option<Result<PathBuf, String>>,
}

impl Export {
    /// Nothing is copied yet; `text` says whether there is a text to copy.
    #[must_use]
    pub const fn new(text: bool) -> Self {
        Self { what: What::Sealed, text, busy: false, result: None }
    }
}

impl State {
    pub(super) fn export_page<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        export: &'a Export,
        places: &'a Places,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Large);
        let back = ui::secondary(look, ctx.say("office-back"), Message::Back).id("office-back");
        let head = row![ui::title(look, ctx.say("office-export")).width(Length::Fill), back];
        let mut page = column![head.spacing(gap).align_y(Alignment::Center)].spacing(gap);
        if let Some(result) = &export.result {
            page = page.push(match result {
                Ok(path) => {
                    let args = Args::new().text("path", path.display().to_string());
                    ui::signed_note(
                        look,
                        Symbol::Tick,
                        ctx.say("office-export-done"),
                        ctx.say_with("office-export-where", &args),
                    )
                }
                Err(why) => {
                    let args = Args::new().text("why", sentence(why));
                    ui::signed_note(
                        look,
                        Symbol::Alert,
                        ctx.say("office-export-not"),
                        ctx.say_with("office-export-why", &args),
                    )
                }
            });
        }
        if export.busy {
            page = page.push(ui::saving(look, ctx.say("office-export-busy")));
        } else {
            let all =
                [What::Sealed, What::Text].into_iter().filter(|what| *what == What::Sealed || export.text);
            let choices = all.map(|what| {
                let (label, line) = match what {
                    What::Sealed => ("office-export-sealed", "office-export-sealed-what"),
                    What::Text => ("office-export-text", "office-export-text-what"),
                };
                let choice = Choice::new(ctx.say(label), export.what == what, Message::WhatChosen(what));
                ui::radio_row(look, Choice { line: Some(ctx.say(line)), ..choice })
            });
            page = page
                .push(Column::with_children(choices).spacing(look.gap(Gap::Small)))
                .push(ui::panel(look, places.view(ctx, "office-export-to", "office-export-folder")));
        }
        let page = container(container(page).max_width(look.px(980.0)))
            .width(Length::Fill)
            .align_x(Alignment::Center)
            .padding(look.gap(Gap::Wide));
        ui::on_escape(ui::scroll(look, page).height(Length::Fill), Message::Back)
    }
}
