//! The gate's page: a card over the page that was open.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::{Gate, HOLD, Message, Stage};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::tablet::staff::Staff;
use crate::words::Args;

impl Gate {
    /// What stands on the card. `staff` says why nobody is known when their file cannot be used.
    pub(in crate::kiosk) fn view<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        staff: Result<&'a Staff, &'a str>,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let key = self.purpose.key();
        let words =
            column![ui::section(look, ctx.say(key)), ui::body(look, ctx.say(&format!("{key}.line"))),]
                .spacing(look.gap(Gap::Medium));
        match staff {
            Err(why) => {
                let why = ctx.say_with("gate-unreadable", &Args::new().text("why", why.to_owned()));
                column![words, ui::note(look, ctx.say("gate-shut"), Some(why)), self.back(ctx)]
                    .spacing(look.gap(Gap::Large))
                    .into()
            }
            Ok(staff) if staff.is_empty() => self.hold(ctx, words),
            Ok(staff) => self.pad(ctx, words, staff),
        }
    }

    /// The way back, and the emergency card, which is within reach here as everywhere.
    fn back<'a>(&self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let back = ui::secondary(look, ctx.say("gate-back"), Message::Left).id("gate-back");
        row![back, ui::strong_chip(look, ctx.say("emergency"), Message::EmergencyAsked)]
            .spacing(look.gap(Gap::Large))
            .align_y(Alignment::Center)
            .wrap()
            .vertical_spacing(look.gap(Gap::Small))
            .into()
    }

    /// Nobody has a PIN.
    fn hold<'a>(&self, ctx: &Ctx<'a>, words: Column<'a, Message>) -> Element<'a, Message> {
        let look = &ctx.look;
        let title = if self.short { "gate-hold-longer" } else { "gate-hold" };
        let ring = ui::hold(look, ctx.say(title), ctx.say("gate-no-pin"), Message::Held)
            .id("gate-hold")
            .lasting(HOLD);
        column![words, Element::from(ring), self.back(ctx)].spacing(look.gap(Gap::Large)).into()
    }

    fn pad<'a>(
        &'a self,
        ctx: &Ctx<'a>,
        words: Column<'a, Message>,
        staff: &'a Staff,
    ) -> Element<'a, Message> {
        let look = &ctx.look;
        let mut left = words;
        let may = || staff.people().iter().filter(|m| self.purpose.lets(m.role));
        if may().count() > 1 {
            let all = may().map(|m| {
                let chosen = self.who.as_deref() == Some(m.code.as_str());
                Choice::new(m.code.clone(), chosen, Message::WhoChosen(m.code.clone()))
            });
            let people: Element<'a, Message> = if self.stage == Stage::Checking {
                ui::strong(look, self.who.clone().unwrap_or_default()).into()
            } else {
                ui::choices(look, all)
            };
            left = left.push(ui::label(look, ctx.say("gate-who"))).push(people);
        }
        let wait = self.who.as_ref().map_or(0, |who| staff.wait(who, ctx.now));
        left = left.push(self.told(ctx, wait));
        if self.stage != Stage::Checking {
            left = left.push(self.back(ctx));
        }
        let asks = self.who.is_some() && self.stage != Stage::Checking && wait == 0;
        if !asks {
            return left.spacing(look.gap(Gap::Large)).into();
        }
        let end = self.pin.is_whole().then(|| ctx.say("gate-end"));
        let pad = ui::pin_pad(look, self.pin.len(), end, Message::Key);
        let left = left.spacing(look.gap(Gap::Large));
        if look.portrait() {
            return column![left, pad].spacing(look.gap(Gap::Wide)).align_x(Alignment::Center).into();
        }
        row![container(left).width(Length::Fill), pad].spacing(look.gap(Gap::Wide)).into()
    }

    /// How the last try went, without a hint; how long to wait.
    fn told<'a>(&'a self, ctx: &Ctx<'a>, wait: u32) -> Element<'a, Message> {
        let look = &ctx.look;
        let told = |words: String| -> Element<'a, Message> {
            row![ui::symbol(look, Symbol::Alert, 28.0), ui::strong(look, words).width(Length::Fill)]
                .spacing(look.gap(Gap::Small))
                .align_y(Alignment::Center)
                .into()
        };
        let mut lines = column![].spacing(look.gap(Gap::Small));
        lines = match &self.stage {
            Stage::Asking if self.who.is_none() => lines.push(ui::body(look, ctx.say("gate-choose"))),
            Stage::Asking if wait == 0 => lines.push(ui::body(look, ctx.say("gate-type"))),
            Stage::Asking => lines,
            Stage::Checking => lines.push(ui::body(look, ctx.say("gate-checking"))),
            Stage::Wrong => lines.push(told(ctx.say("gate-wrong"))),
            Stage::Unchecked(why) => lines.push(told(why.clone())),
        };
        if wait > 0 && self.stage != Stage::Checking {
            let (key, count) =
                if wait > 90 { ("gate-wait-minutes", wait.div_ceil(60)) } else { ("gate-wait", wait) };
            let count = usize::try_from(count).unwrap_or(0);
            lines = lines.push(ui::body(look, counted(ctx, key, count)));
        }
        lines.into()
    }
}
