//! Taking records in: from where, how far it is, what became of them.

use std::path::{Path, PathBuf};

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::table::sentence;
use super::{Message, State};
use crate::archive::import::{Bad, Summary};
use crate::kiosk::context::Ctx;
use crate::kiosk::office::Answer;
use crate::kiosk::screen::counted;
use crate::kiosk::screen::yard::name_of;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::words::{Args, format};

/// Most reasons that are shown at once: each is laid out with every frame.
const SHOWN: usize = 60;

/// How far it is.
#[derive(Debug, Clone)]
pub enum TakeIn {
    /// It is asked from where.
    Where,
    /// Records are read and filed: so many of so many.
    Busy {
        /// Places done.
        done: usize,
        /// Places in all.
        of: usize,
    },
    /// What became of them.
    Done {
        /// Where they came from.
        place: PathBuf,
        /// What was done, or why it stopped.
        result: Result<Box<Summary>, String>,
    },
}

impl TakeIn {
    /// What is told of it, as it is shown.
    pub(super) fn of(answer: Answer) -> Option<Self> {
        match answer {
            Answer::Taking { done, of } => Some(Self::Busy { done, of }),
            Answer::Took { place, result } => Some(Self::Done { place, result }),
            _ => None,
        }
    }
}

impl State {
    pub(super) fn take_in_page<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        take: &'a TakeIn,
        quarantined: usize,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let content: Element<'a, Message> = match take {
            TakeIn::Where => column![
                ui::body(look, ctx.say("office-take-what")),
                ui::panel(look, self.places.view(ctx, "office-take-from", "office-take-folder")),
            ]
            .push((quarantined > 0).then(|| super::quarantine::way(ctx, quarantined)))
            .spacing(look.gap(Gap::Large))
            .into(),
            TakeIn::Busy { done, of } => busy(ctx, *done, *of),
            TakeIn::Done { place, result: Ok(summary) } => told(ctx, place, summary),
            TakeIn::Done { result: Err(why), .. } => ui::signed_note(
                look,
                Symbol::Alert,
                ctx.say("office-take-stopped"),
                ctx.say_with("office-take-stopped-why", &Args::new().text("why", sentence(why))),
            ),
        };
        let back: Element<'a, Message> = match take {
            TakeIn::Busy { .. } => {
                ui::secondary(look, ctx.say("office-to-yard"), Message::YardAsked).id("office-to-yard").into()
            }
            TakeIn::Where => {
                ui::secondary(look, ctx.say("office-back"), Message::Back).id("office-back").into()
            }
            TakeIn::Done { .. } => {
                ui::primary(look, ctx.say("office-back"), Message::Back).id("office-back").into()
            }
        };
        let more = matches!(take, TakeIn::Done { .. })
            .then(|| ui::secondary(look, ctx.say("office-take-more"), Message::TakeInAsked));
        let gap = look.gap(Gap::Medium);
        let ways = row![].push(more).push(back).spacing(gap);
        let title = ui::title(look, ctx.say("office-take")).width(Length::Fill);
        let head: Element<'a, Message> = if look.portrait() || look.text != TextSize::Usual {
            column![title, ways.wrap().vertical_spacing(gap)].spacing(gap).into()
        } else {
            row![title, ways].spacing(gap).align_y(Alignment::Center).into()
        };
        let page = column![head, content].spacing(look.gap(Gap::Large));
        let page = container(container(page).max_width(look.px(980.0)))
            .width(Length::Fill)
            .align_x(Alignment::Center)
            .padding(look.gap(Gap::Wide));
        let page = ui::scroll(look, page).height(Length::Fill);
        if matches!(take, TakeIn::Busy { .. }) { page.into() } else { ui::on_escape(page, Message::Back) }
    }
}

fn busy<'a>(ctx: &Ctx<'a>, done: usize, of: usize) -> Element<'a, Message> {
    let look = &ctx.look;
    let number = |count: usize| format::number(&ctx.scripts.words, &ctx.settings.staff, count.into());
    let mut page = column![ui::body(look, ctx.say("office-take-busy"))].spacing(look.gap(Gap::Large));
    if of > 0 {
        let args = Args::new().text("done", number(done)).text("of", number(of));
        page = page
            .push(ui::progress(look, done as f32 / of as f32))
            .push(ui::small(look, ctx.say_with("office-progress", &args)));
    }
    page.push(ui::small(look, ctx.say("office-take-goes-on"))).into()
}

/// New, known, bad; then what one should do something about.
fn told<'a>(ctx: &Ctx<'a>, place: &Path, summary: &'a Summary) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Large);
    let from = ctx.say_with("office-take-came-from", &Args::new().text("place", name_of(place)));
    let counts = [
        (Symbol::Plus, "office-take-new", summary.new.len()),
        (Symbol::Tick, "office-take-known", summary.known),
        (
            if summary.bad.is_empty() { Symbol::Tick } else { Symbol::ShieldBroken },
            "office-take-bad",
            summary.bad.len(),
        ),
    ];
    let counts =
        counts.into_iter().map(|(sign, key, count)| line(ctx, sign, counted(ctx, key, count), count > 0));
    let mut page = column![
        ui::small(look, from),
        ui::panel(look, Column::with_children(counts).spacing(look.gap(Gap::Medium)))
    ]
    .spacing(gap)
    .width(Length::Fill);
    if !summary.rehearsals.is_empty() {
        let count = summary.rehearsals.len();
        page = page.push(line(ctx, Symbol::Question, counted(ctx, "office-take-rehearsals", count), false));
    }
    if !summary.bad.is_empty() {
        let bad =
            summary.bad.iter().take(SHOWN).map(|(path, bad)| refused(ctx, &path.display().to_string(), bad));
        let list = Column::with_children(bad).spacing(gap);
        let mut list = column![ui::section(look, ctx.say("office-take-bad-title")), list].spacing(gap);
        let more = summary.bad.len().saturating_sub(SHOWN);
        if more > 0 {
            list = list.push(ui::small(look, counted(ctx, "office-take-bad-more", more)));
        }
        page = page.push(ui::panel(look, list));
    }
    let chains =
        summary.chains.iter().take(SHOWN).map(|finding| {
            line(ctx, Symbol::Alert, finding.say(&ctx.scripts.words, &ctx.settings.staff), false)
        });
    let receipts = summary.no_receipt.iter().map(|(folder, why)| {
        let args = Args::new().text("place", folder.display().to_string()).text("why", why.clone());
        line(ctx, Symbol::Alert, ctx.say_with("office-take-no-receipt", &args), false)
    });
    let logs = summary.refused.iter().map(|(log, why)| {
        let args = Args::new().text("place", log.display().to_string()).text("why", why.clone());
        line(ctx, Symbol::Alert, ctx.say_with("office-take-log-refused", &args), false)
    });
    let remarks: Vec<Element<'a, Message>> = chains.chain(receipts).chain(logs).collect();
    if !remarks.is_empty() {
        let remarks = Column::with_children(remarks).spacing(gap);
        page = page.push(ui::panel(
            look,
            column![ui::section(look, ctx.say("office-take-remarks")), remarks].spacing(gap),
        ));
    }
    if !summary.receipts.is_empty() {
        page = page.push(ui::body(look, ctx.say("office-take-receipt")));
    }
    page.into()
}

fn line<'a>(ctx: &Ctx<'a>, sign: Symbol, words: String, strong: bool) -> Element<'a, Message> {
    let look = &ctx.look;
    let words = if strong { ui::strong(look, words) } else { ui::body(look, words) };
    row![ui::symbol(look, sign, 28.0), words.width(Length::Fill)]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center)
        .into()
}

/// A file that was not taken: which, why, and where it is kept with its reason.
fn refused<'a>(ctx: &Ctx<'a>, path: &str, bad: &'a Bad) -> Element<'a, Message> {
    let look = &ctx.look;
    let kept = bad.kept.as_ref().map(|kept| {
        ui::small(look, ctx.say_with("office-take-kept", &Args::new().text("place", kept.clone())))
    });
    let why = ctx.say_with("office-apart-why", &Args::new().text("why", sentence(&bad.why)));
    column![ui::strong(look, path.to_owned()), ui::body(look, why)]
        .push(kept)
        .spacing(look.gap(Gap::Tiny))
        .into()
}
