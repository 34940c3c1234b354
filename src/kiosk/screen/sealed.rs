//! Your copy: the record is sealed; its id, its digest, and a code that holds both.

use std::path::PathBuf;

use iced::widget::{column, container, row};
use iced::{Alignment, Length};

use super::Action;
use crate::kiosk::context::Ctx;
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, Symbol};
use crate::tablet::Finished;
use crate::walk::{CopyChoice, Outcome};

/// State of the screen.
#[derive(Debug)]
pub struct State {
    finished: Finished,
    folder: String,
    /// Whether the folder for a copy is asked for, when it was not chosen before.
    saving: bool,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// A copy on a stick is wanted after all.
    SavePressed,
    /// A folder for the copy was typed.
    FolderChanged(String),
    /// The record is to be copied there.
    CopyAsked,
    /// Back to the Yard.
    DonePressed,
    /// The renter wants to read again.
    RereadPressed,
}

impl State {
    /// The screen as it opens.
    #[must_use]
    pub fn new(finished: Finished) -> Self {
        Self { finished, folder: String::new(), saving: false }
    }

    /// The record that was sealed.
    #[must_use]
    pub fn finished(&self) -> &Finished {
        &self.finished
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match message {
            Message::SavePressed => self.saving = true,
            Message::FolderChanged(folder) => self.folder = folder,
            Message::CopyAsked if !self.folder.trim().is_empty() => {
                let to = PathBuf::from(self.folder.trim());
                return Action::SaveCopy { record: self.finished.path.clone(), to };
            }
            Message::CopyAsked => {}
            Message::DonePressed => return Action::ToYard,
            Message::RereadPressed => {
                let Some(hall) = ctx.hall else { return Action::None };
                let unit = hall.walk.route().unit.clone();
                let reader = ctx.renter().map_or_else(|| ctx.settings.staff.clone(), |s| s.reader().clone());
                return Action::Reread { unit, reader };
            }
        }
        Action::None
    }

    /// What the code on the slip says: id and digest, to be held against the record at any time.
    #[must_use]
    pub fn slip(&self) -> String {
        format!("SENDOFF {} {}", self.finished.id, self.finished.digest).to_uppercase()
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let pad = look.gap(Gap::Wide);
        let code = ui::qr_code(look, &self.slip(), 340.0);
        let slip: Element<'a, Message> = if look.portrait() {
            column![container(code).center_x(Length::Fill), self.words(ctx)]
                .spacing(look.gap(Gap::Wide))
                .into()
        } else {
            row![self.words(ctx), code].spacing(look.gap(Gap::Huge)).align_y(Alignment::Center).into()
        };
        let page =
            column![Element::from(ui::panel(look, slip))].push(self.stick(ctx)).spacing(look.gap(Gap::Large));
        let content = container(ui::scroll(look, page).height(Length::Fill))
            .padding(iced::Padding::new(pad).bottom(0.0))
            .height(Length::Fill);
        let foot = container(self.foot(ctx)).padding(iced::Padding::new(pad).top(0.0));
        column![content, foot].spacing(look.gap(Gap::Large)).height(Length::Fill).into()
    }

    /// Whether the copy goes on a stick.
    fn to_stick(&self, ctx: &Ctx<'_>) -> bool {
        let chosen = ctx.hall.and_then(|h| h.walk.copy()).map(|c| c.value);
        self.saving || chosen == Some(CopyChoice::Stick)
    }

    /// Title, id and fingerprint, as the renter reads them.
    fn words<'a>(&self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let speaker = ctx.renter();
        let say = |key: &str| speaker.as_ref().map_or_else(|| ctx.say(key), |s| s.say(key));
        let title = row![
            ui::symbol(look, Symbol::Shield, 48.0),
            ui::title(look, say("sealed-title")).width(Length::Fill)
        ]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
        // In blocks, so that two people can compare it aloud.
        let digest = self.finished.digest.to_string();
        let blocks: Vec<String> =
            digest.as_bytes().chunks(4).map(|b| String::from_utf8_lossy(b).into_owned()).collect();
        column![
            title,
            ui::body(look, say("sealed-what")),
            column![ui::label(look, say("sealed-id")), ui::section(look, self.finished.id.to_string())],
            column![ui::label(look, say("sealed-digest")), ui::section(look, blocks.join(" "))],
            ui::body(look, say("sealed-compare")),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }

    /// The folder to copy to; for the agent.
    fn stick<'a>(&'a self, ctx: &Ctx<'a>) -> Option<Element<'a, Message>> {
        let look = &ctx.look;
        if !self.to_stick(ctx) {
            return None;
        }
        let field = ui::field(look, "copy-folder", &self.folder, Message::FolderChanged)
            .label(ctx.say("sealed-folder"))
            .placeholder(ctx.say("sealed-folder-example"))
            .on_submit(Message::CopyAsked);
        let mut copy = column![Element::from(field)].spacing(look.gap(Gap::Medium));
        if !self.folder.trim().is_empty() {
            copy = copy.push(ui::secondary(look, ctx.say("sealed-save"), Message::CopyAsked));
        }
        Some(ui::panel(look, copy).into())
    }

    fn foot<'a>(&self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let done = ui::primary(look, ctx.say("sealed-done"), Message::DonePressed).fill();
        let save = (!self.to_stick(ctx))
            .then(|| Element::from(ui::secondary(look, ctx.say("sealed-save"), Message::SavePressed)));
        // The lot may have changed since the walk began, and the unit may be gone from it.
        let here = |h: &&Hall| {
            ctx.shapes.contains_key(&h.walk.route().unit)
                && !matches!(h.walk.outcome(), Outcome::NotHandedOver(_))
        };
        let reread = ctx.hall.filter(here).map(|_| {
            Element::from(ui::secondary(look, ctx.say("reread-open-renter"), Message::RereadPressed))
        });
        if look.portrait() {
            return column![Element::from(done)]
                .push(save)
                .push(reread)
                .spacing(look.gap(Gap::Medium))
                .into();
        }
        ui::hand_row(look, save.into_iter().chain(reread).chain([Element::from(done)]).collect())
            .spacing(look.gap(Gap::Wide))
            .align_y(Alignment::Center)
            .into()
    }
}
