//! What lies around every screen: the notice at the top, the strip, the gate.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::super::context::Ctx;
use super::super::theme::{Gap, TextSize, Theme};
use super::super::ui::{self, Element};
use super::super::{App, Message, Notice, gate};
use super::{Screen, emergency};
use crate::words::{Args, Reader};

/// Most faults that are shown at once: each is laid out with every frame.
const FAULTS_SHOWN: usize = 40;

/// The open screen with what lies around it.
pub(in crate::kiosk) fn frame<'a>(app: &'a App, ctx: &Ctx<'a>) -> Element<'a, Message> {
    let look = &ctx.look;
    let page = app.screen.view(ctx).map(Message::Screen);
    let mut parts: Vec<Element<'a, Message>> = Vec::new();
    // A renter who is alone has no business with notices for staff, nor with the scripts.
    let alone = matches!(app.screen, Screen::Reread(_));
    if let Some(notice) = app.notice.as_ref().filter(|_| !alone) {
        parts.push(told(ctx, notice));
    }
    if let Some(crumb) = app.screen.crumb(ctx) {
        parts.push(strip(ctx, &emergency::reader(&app.screen, ctx), crumb));
        // The renter's pages in a walk have no crumb.
        if !ctx.faults.all.is_empty() && !alone {
            parts.push(faults(ctx, matches!(app.screen, Screen::Yard(_))));
        }
    }
    let pad = look.gap(Gap::Wide);
    let padding = if parts.is_empty() {
        iced::Padding::ZERO
    } else {
        iced::Padding { top: look.gap(Gap::Large), left: pad, right: pad, bottom: 0.0 }
    };
    // Always there, so that the page stays where it is, and keeps what it remembers, when a notice comes.
    let top = Column::with_children(parts).spacing(look.gap(Gap::Medium)).width(Length::Fill);
    let page: Element<'a, Message> =
        column![container(top).padding(padding), page].height(Length::Fill).into();
    let page = app.covered(ctx, page);
    if app.emergency {
        let (head, card) = emergency::card(&app.screen, ctx);
        return ui::headed_dialog(look, page, head, card, Some(Message::EmergencyToggled));
    }
    if let Some(gate) = &app.gate {
        let card = gate.view(ctx, app.staff.as_ref().map_err(String::as_str)).map(Message::Gate);
        return ui::dialog(look, page, card, Some(Message::Gate(gate::Message::Left)));
    }
    ui::alone(page)
}

/// Something that staff must know.
fn told<'a>(ctx: &Ctx<'a>, notice: &'a Notice) -> Element<'a, Message> {
    let title = ctx.say(if notice.stops { "notice-stops" } else { "notice" });
    let line = row![ui::note(&ctx.look, title, Some(notice.text.clone()))]
        .spacing(ctx.look.gap(Gap::Medium))
        .align_y(Alignment::Center);
    let close =
        (!notice.stops).then(|| ui::secondary(&ctx.look, ctx.say("notice-close"), Message::NoticeClosed));
    line.push(close).into()
}

/// What is wrong with the scripts, each with its place and the way out: a panel on the Yard, else a low bar.
fn faults<'a>(ctx: &Ctx<'a>, panel: bool) -> Element<'a, Message> {
    let look = &ctx.look;
    let all = &ctx.faults.all;
    let title = counted(ctx, "faults-title", all.len());
    let what = ctx.say(if ctx.faults.kept { "faults-kept" } else { "faults-held" });
    let lines = all.iter().take(FAULTS_SHOWN).map(|fault| {
        let place = format!("{} {}", fault.place, fault.code);
        column![
            ui::strong(look, place),
            ui::body(look, fault.what.clone()),
            ui::small(look, fault.hint.clone())
        ]
        .into()
    });
    let mut list = Column::with_children(lines).spacing(look.gap(Gap::Medium)).width(Length::Fill);
    let more = all.len().saturating_sub(FAULTS_SHOWN);
    if more > 0 {
        list = list.push(ui::small(look, counted(ctx, "faults-more", more)));
    }
    let least = look.px(if panel { 300.0 } else { 110.0 });
    let list = container(ui::scroll(look, list)).max_height(least.min(look.window.height * 0.35));
    let head = row![
        ui::symbol(look, ui::Symbol::Alert, 30.0),
        ui::strong(look, title),
        ui::small(look, what).width(Length::Fill)
    ]
    .spacing(look.gap(Gap::Medium))
    .align_y(Alignment::Center);
    ui::chosen_panel(look, column![head, list].spacing(look.gap(Gap::Small))).into()
}

/// The strip above a page: where we are, and what is always within reach.
fn strip<'a>(ctx: &Ctx<'a>, reader: &Reader, crumb: String) -> Element<'a, Message> {
    let look = &ctx.look;
    let say = |key: &str| ctx.scripts.words.say(reader, key, &Args::new());
    let (theme, key) = match ctx.settings.theme {
        Theme::Paper => (Theme::Daylight, "theme-daylight"),
        Theme::Daylight => (Theme::Dusk, "theme-dusk"),
        Theme::Dusk => (Theme::Paper, "theme-paper"),
    };
    let chips = row![
        ui::chip(look, say(key), Message::ThemeChosen(theme)),
        ui::chip(look, say("text-size"), Message::TextSizeAsked),
        ui::strong_chip(look, say("emergency"), Message::EmergencyToggled),
    ]
    .spacing(look.gap(Gap::Medium))
    .align_y(Alignment::Center);
    // Upright, large letters leave the crumb no room beside the chips.
    if look.portrait() && look.text != TextSize::Usual {
        let chips = chips.wrap().vertical_spacing(look.gap(Gap::Small));
        return column![ui::small(look, crumb), chips].spacing(look.gap(Gap::Small)).into();
    }
    row![ui::small(look, crumb).width(Length::Fill), chips]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center)
        .into()
}

/// Words that carry one number.
pub(in crate::kiosk) fn counted(ctx: &Ctx<'_>, key: &str, count: usize) -> String {
    ctx.say_with(key, &Args::new().number("count", u64::try_from(count).unwrap_or(u64::MAX)))
}
