//! Your copy: the record is sealed; its id, its digest, and a code that holds both.

use std::path::PathBuf;

use iced::widget::{column, container, row};
use iced::{Alignment, Length};

use super::Action;
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::tablet::Finished;

/// State of the screen.
#[derive(Debug)]
pub struct State {
    finished: Finished,
    folder: String,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// A folder for the copy was typed.
    FolderChanged(String),
    /// The record is to be copied there.
    CopyAsked,
    /// Back to the Yard.
    DonePressed,
}

impl State {
    /// The screen as it opens.
    #[must_use]
    pub fn new(finished: Finished) -> Self {
        Self { finished, folder: String::new() }
    }

    /// The record that was sealed.
    #[must_use]
    pub fn finished(&self) -> &Finished {
        &self.finished
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message) -> Action {
        match message {
            Message::FolderChanged(folder) => {
                self.folder = folder;
                Action::None
            }
            Message::CopyAsked => {
                Action::SaveCopy { record: self.finished.path.clone(), to: PathBuf::from(self.folder.trim()) }
            }
            Message::DonePressed => Action::ToYard,
        }
    }

    /// What the code on the slip says: id and digest, to be held against the record at any time.
    #[must_use]
    pub fn slip(&self) -> String {
        format!("SENDOFF {} {}", self.finished.id, self.finished.digest).to_uppercase()
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let speaker = ctx.renter();
        let say = |key: &str| speaker.as_ref().map_or_else(|| ctx.say(key), |s| s.say(key));
        let digest = self.finished.digest.to_string();
        // In blocks of eight, so that two people can compare it aloud.
        let blocks: Vec<String> =
            digest.as_bytes().chunks(8).map(|b| String::from_utf8_lossy(b).into_owned()).collect();
        let words = column![
            ui::title(look, say("sealed-title")),
            ui::body(look, say("sealed-what")),
            ui::label(look, say("sealed-id")),
            ui::section(look, self.finished.id.to_string()),
            ui::label(look, say("sealed-digest")),
            ui::strong(look, blocks.join(" ")),
            ui::body(look, say("sealed-compare")),
        ]
        .spacing(look.gap(Gap::Medium))
        .width(Length::Fill);
        let code = ui::qr_code(look, &self.slip(), 260.0);
        let top: Element<'a, Message> = if look.portrait() {
            column![words, code].spacing(look.gap(Gap::Large)).align_x(Alignment::Center).into()
        } else {
            row![words, code].spacing(look.gap(Gap::Huge)).align_y(Alignment::Center).into()
        };
        let field = ui::field(look, "copy-folder", &self.folder, Message::FolderChanged)
            .label(ctx.say("sealed-folder"))
            .placeholder(ctx.say("sealed-folder-example"));
        let mut copy = column![Element::from(field)].spacing(look.gap(Gap::Medium));
        if !self.folder.trim().is_empty() {
            copy = copy.push(ui::secondary(look, ctx.say("sealed-save"), Message::CopyAsked));
        }
        let page = column![
            ui::panel(look, top),
            ui::panel(look, copy),
            Element::from(ui::primary(look, ctx.say("sealed-done"), Message::DonePressed).fill()),
        ]
        .spacing(look.gap(Gap::Large));
        ui::scroll(look, container(page).padding(look.gap(Gap::Wide))).height(Length::Fill).into()
    }
}
