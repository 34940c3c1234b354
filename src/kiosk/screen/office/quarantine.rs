//! What was not taken in and waits in quarantine: which files, and why.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::details::{fact, facts, in_groups};
use super::table::{fault_words, sentence};
use super::take_in::TakeIn;
use super::{Action, Ask, Message, Page, Stage, State};
use crate::archive::Kept;
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::words::{Args, format};

/// Most files that are shown at once: each is laid out with every frame.
const SHOWN: usize = 60;

/// The files in quarantine.
#[derive(Debug, Default)]
pub struct Apart {
    /// None while they are being looked at; why they cannot be.
    pub(super) files: Option<Result<Vec<Kept>, String>>,
    /// The one that is looked at closely.
    pub(super) open: Option<usize>,
}

impl Apart {
    fn opened(&self) -> Option<&Kept> {
        self.files.as_ref()?.as_ref().ok()?.get(self.open?)
    }
}

impl State {
    /// Takes in the file once more that is looked at.
    pub(super) fn again(&mut self) -> Action {
        let Page::Quarantine(apart) = &self.page else { return Action::None };
        let (Some(kept), Stage::Open(ready)) = (apart.opened(), &self.stage) else { return Action::None };
        let file = kept.path.split('/').fold(ready.dir.clone(), |path, part| path.join(part));
        self.page = Page::TakeIn(TakeIn::Busy { done: 0, of: 0 });
        Action::Office(vec![Ask::TakeIn(file)])
    }
}

/// The way here, with how many files there are.
pub(super) fn way<'a>(ctx: &Ctx<'a>, count: usize) -> Element<'a, Message> {
    let look = &ctx.look;
    let line = row![
        ui::symbol(look, Symbol::ShieldBroken, 32.0),
        ui::body(look, counted(ctx, "office-apart-count", count)).width(Length::Fill)
    ];
    let way = ui::secondary(look, ctx.say("office-apart-look"), Message::QuarantineAsked).id("office-apart");
    let line = line.spacing(look.gap(Gap::Medium)).align_y(Alignment::Center);
    ui::panel(
        look,
        column![ui::section(look, ctx.say("office-apart")), line, way].spacing(look.gap(Gap::Large)),
    )
    .into()
}

impl Apart {
    pub(super) fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Large);
        let content = match (&self.files, self.opened()) {
            (_, Some(kept)) => one(ctx, kept),
            (None, _) => ui::body(look, ctx.say("office-apart-reading")).into(),
            (Some(Err(why)), _) => {
                let why = ctx.say_with("office-shut-why", &Args::new().text("why", sentence(why)));
                ui::signed_note(look, Symbol::Alert, ctx.say("office-apart-shut"), why)
            }
            (Some(Ok(files)), _) => list(ctx, files),
        };
        let back = ui::secondary(look, ctx.say("office-back"), Message::Back).id("office-back");
        let title = ui::title(look, ctx.say("office-apart")).width(Length::Fill);
        let head = row![title, back].spacing(gap).align_y(Alignment::Center);
        let page = column![head, content].spacing(gap);
        let page = container(container(page).max_width(look.px(980.0)))
            .width(Length::Fill)
            .align_x(Alignment::Center)
            .padding(look.gap(Gap::Wide));
        ui::on_escape(ui::scroll(look, page).height(Length::Fill), Message::Back)
    }
}

/// Why a file was not taken, in a few words.
fn reason(ctx: &Ctx<'_>, kept: &Kept) -> String {
    if kept.filed { ctx.say("office-apart-filed") } else { fault_words(ctx, &kept.code) }
}

fn list<'a>(ctx: &Ctx<'a>, files: &'a [Kept]) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Large);
    if files.is_empty() {
        return ui::body(look, ctx.say("office-apart-none")).into();
    }
    let rows = files.iter().enumerate().take(SHOWN).map(|(at, kept)| {
        let sign = if kept.filed { Symbol::Shield } else { Symbol::ShieldBroken };
        let name = kept.path.rsplit('/').next().unwrap_or_default();
        let words = column![ui::strong(look, name), ui::body(look, reason(ctx, kept))]
            .push(kept.at.map(|at| {
                let at = format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at));
                ui::small(look, ctx.say_with("office-apart-looked-at", &Args::new().text("when", at)))
            }))
            .spacing(look.gap(Gap::Tiny))
            .width(Length::Fill);
        let open = ui::secondary(look, ctx.say("office-apart-open"), Message::KeptChosen(at));
        let words = row![ui::symbol(look, sign, 40.0), words]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center)
            .width(Length::Fill);
        if look.portrait() && look.text != TextSize::Usual {
            return column![words, open].spacing(look.gap(Gap::Small)).into();
        }
        row![words, open].spacing(look.gap(Gap::Medium)).align_y(Alignment::Center).into()
    });
    let mut page = column![
        ui::body(look, ctx.say("office-apart-what")),
        ui::panel(look, Column::with_children(rows).spacing(gap))
    ]
    .spacing(gap);
    let more = files.len().saturating_sub(SHOWN);
    if more > 0 {
        page = page.push(ui::small(look, counted(ctx, "office-apart-more", more)));
    }
    page.into()
}

/// One file: why, and what to do about it.
fn one<'a>(ctx: &Ctx<'a>, kept: &'a Kept) -> Element<'a, Message> {
    let look = &ctx.look;
    let or_not_known =
        |text: &str| if text.is_empty() { ctx.say("office-apart-not-known") } else { text.to_owned() };
    let at = kept.at.map(|at| format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at)));
    let sign = if kept.filed { Symbol::Shield } else { Symbol::ShieldBroken };
    let why = if kept.why.is_empty() {
        ctx.say("office-apart-no-reason")
    } else {
        ctx.say_with("office-apart-why", &Args::new().text("why", sentence(&kept.why)))
    };
    let lines = vec![
        fact(ctx, ctx.say("office-path"), kept.path.clone()),
        fact(ctx, ctx.say("office-apart-from"), or_not_known(&kept.from)),
        fact(ctx, ctx.say("office-apart-at"), or_not_known(&at.unwrap_or_default())),
        fact(ctx, ctx.say("office-apart-digest"), or_not_known(&in_groups(&kept.digest))),
    ];
    let next = if kept.filed { "office-apart-filed-what" } else { "office-apart-next" };
    let again = (!kept.filed).then(|| {
        ui::primary(look, ctx.say("office-apart-again"), Message::KeptAgain).id("office-apart-again")
    });
    column![
        ui::signed_note(look, sign, reason(ctx, kept), why),
        ui::body(look, ctx.say(next)),
        ui::panel(look, facts(ctx, ctx.say("office-file"), lines)),
    ]
    .push(again)
    .spacing(look.gap(Gap::Large))
    .width(Length::Fill)
    .into()
}
