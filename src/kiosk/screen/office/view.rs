//! What stands on the page of the list, and before the archive is open.

use iced::widget::{Row, column, container, row};
use iced::{Alignment, Length};

use super::list::Found;
use super::table::{instead, sentence};
use super::{Message, State};
use crate::archive::index::Count;
use crate::kiosk::context::Ctx;
use crate::kiosk::office::{Ready, Remark};
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element, RowStep, RowsEvent, Symbol};
use crate::words::{Args, format};

/// While the archive is being opened.
pub(super) fn opening<'a>(ctx: &Ctx<'a>, done: usize, of: usize) -> Element<'a, Message> {
    let look = &ctx.look;
    let number = |count: usize| format::number(&ctx.scripts.words, &ctx.settings.staff, count.into());
    let mut words = column![ui::title(look, ctx.say("office-opening"))].spacing(look.gap(Gap::Large));
    if of > 0 {
        let args = Args::new().text("done", number(done)).text("of", number(of));
        words = words
            .push(ui::body(look, ctx.say("office-indexing")))
            .push(ui::progress(look, done as f32 / of as f32))
            .push(ui::small(look, ctx.say_with("office-progress", &args)));
    }
    let words = words.push(yard(ctx)).max_width(look.px(760.0));
    container(words).padding(look.gap(Gap::Wide)).center_x(Length::Fill).into()
}

/// The archive cannot be read.
pub(super) fn shut<'a>(ctx: &Ctx<'a>, why: &str) -> Element<'a, Message> {
    let again = ui::primary(&ctx.look, ctx.say("office-again"), Message::Again).into();
    let line = ctx.say_with("office-shut-why", &Args::new().text("why", sentence(why)));
    instead(ctx, Symbol::Alert, ctx.say("office-shut"), line, vec![again, yard(ctx)])
}

/// While a record is being opened.
pub(super) fn reading<'a>(ctx: &Ctx<'a>, id: &str) -> Element<'a, Message> {
    let look = &ctx.look;
    let line = ctx.say_with("office-reading", &Args::new().text("id", id.to_owned()));
    let back = ui::secondary(look, ctx.say("office-back"), Message::Back).id("office-back");
    let words = column![ui::title(look, line), ui::body(look, ctx.say("office-reading-what")), back];
    let words = words.spacing(look.gap(Gap::Large)).max_width(look.px(760.0));
    ui::on_escape(container(words).padding(look.gap(Gap::Wide)).center_x(Length::Fill), Message::Back)
}

/// The file of a record cannot be read.
pub(super) fn gone<'a>(ctx: &Ctx<'a>, id: &str, why: &str) -> Element<'a, Message> {
    let look = &ctx.look;
    let again = ui::secondary(look, ctx.say("office-again"), Message::RecordChosen(id.to_owned())).into();
    let back = ui::primary(look, ctx.say("office-back"), Message::Back).id("office-back").into();
    let title = ctx.say_with("office-gone", &Args::new().text("id", id.to_owned()));
    let line = ctx.say_with("office-gone-why", &Args::new().text("why", sentence(why)));
    ui::on_escape(instead(ctx, Symbol::ShieldBroken, title, line, vec![back, again]), Message::Back)
}

fn take_in<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    ui::secondary(&ctx.look, ctx.say("office-take"), Message::TakeInAsked).id("office-take").into()
}

fn yard<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    ui::secondary(&ctx.look, ctx.say("office-to-yard"), Message::YardAsked).id("office-to-yard").into()
}

impl State {
    pub(super) fn list_page<'a>(&'a self, ctx: &Ctx<'a>, ready: &'a Ready) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Medium);
        let rest: Element<'a, Message> = match &self.shown {
            None => iced::widget::Space::new().into(),
            Some(found) if found.is_empty() => self.nothing(ctx, ready),
            Some(found) => self.table(ctx, found),
        };
        let page = column![self.bar(ctx)]
            .push(self.told(ctx, ready))
            .push(self.below(ctx, ready))
            .push(container(rest).height(Length::Fill))
            .spacing(gap);
        container(page).padding(look.gap(Gap::Wide)).height(Length::Fill).into()
    }

    /// The search field, and the ways from here.
    fn bar<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let field = ui::field(look, "office-words", &self.words, Message::Typed)
            .placeholder(ctx.say("office-words-example"))
            .on_submit(Message::Rows(RowsEvent::Opened, self.fits))
            .find();
        let clear = (!self.words.is_empty())
            .then(|| ui::secondary(look, ctx.say("office-clear"), Message::Cleared).into());
        let filters =
            ui::secondary(look, ctx.say("office-filters"), Message::FiltersAsked).id("office-filters");
        let ways = clear.into_iter().chain([filters.into(), take_in(ctx), yard(ctx)]);
        let gap = look.gap(Gap::Medium);
        let ways = Row::with_children(ways).spacing(gap);
        if look.portrait() || look.text != TextSize::Usual {
            let ways = ways.wrap().vertical_spacing(gap);
            return column![Element::from(field), ways].spacing(gap).into();
        }
        row![container(Element::from(field)).width(Length::Fill), ways]
            .spacing(gap)
            .align_y(Alignment::Center)
            .into()
    }

    /// What one must know of the archive.
    fn told<'a>(&self, ctx: &Ctx<'a>, ready: &'a Ready) -> Option<Element<'a, Message>> {
        let look = &ctx.look;
        if let Some(why) = &self.trouble {
            let again = ui::secondary(look, ctx.say("office-again"), Message::Again);
            let line = row![ui::note(look, ctx.say("office-no-search"), Some(sentence(why)))].push(again);
            return Some(line.spacing(look.gap(Gap::Medium)).align_y(Alignment::Center).into());
        }
        let (key, args) = match ready.remark.as_ref()? {
            Remark::Remade { why } => ("office-remade", Args::new().text("why", why.clone())),
            Remark::Unkept { why } => ("office-unkept", Args::new().text("why", why.clone())),
            Remark::Behind { why, missing } => {
                let count = u64::try_from(*missing).unwrap_or(u64::MAX);
                ("office-behind", Args::new().text("why", why.clone()).number("count", count))
            }
        };
        let line = row![
            ui::symbol(look, Symbol::Alert, 22.0),
            ui::small(look, ctx.say_with(key, &args)).width(Length::Fill)
        ];
        Some(line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center).into())
    }

    /// How many there are, what is asked for, and the way through the pages.
    fn below<'a>(&'a self, ctx: &Ctx<'a>, ready: &'a Ready) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Medium);
        let chips = self.filters.chips(ctx);
        let chips =
            (!chips.is_empty()).then(|| Row::with_children(chips).spacing(gap).wrap().vertical_spacing(gap));
        let count = self.shown.as_ref().and_then(|found| said_count(ctx, found, ready));
        let words = column![]
            .push(count.map(|count| ui::strong(look, count)))
            .push(self.orders(ctx))
            .push(chips)
            .spacing(look.gap(Gap::Small))
            .width(Length::Fill);
        let turns = self.shown.as_ref().map(|found| {
            let (above, below) = found.beyond(self.fits);
            let turn = |there: bool, key: &str, step: RowStep, sign: Symbol, id: &'static str| {
                there.then(|| {
                    let message = Message::Rows(RowsEvent::Step(step), self.fits);
                    ui::secondary(look, ctx.say(key), message).before(sign).id(id)
                })
            };
            row![]
                .push(turn(above, "office-page-up", RowStep::PageUp, Symbol::Up, "office-page-up"))
                .push(turn(below, "office-page-down", RowStep::PageDown, Symbol::Down, "office-page-down"))
                .spacing(gap)
        });
        row![words].push(turns).spacing(gap).align_y(Alignment::Center).into()
    }

    /// Nothing was found, or nothing is there.
    fn nothing<'a>(&'a self, ctx: &Ctx<'a>, ready: &'a Ready) -> Element<'a, Message> {
        let look = &ctx.look;
        if ready.records == 0 {
            return instead(
                ctx,
                Symbol::Open,
                ctx.say("office-empty"),
                ctx.say("office-empty-what"),
                vec![take_in(ctx)],
            );
        }
        let mut ways: Vec<Element<'a, Message>> = Vec::new();
        if !self.words.trim().is_empty() {
            ways.push(ui::secondary(look, ctx.say("office-clear"), Message::Cleared).into());
        }
        if !self.filters.is_empty() {
            ways.push(ui::secondary(look, ctx.say("office-filters-clear"), Message::FiltersCleared).into());
        }
        instead(ctx, Symbol::Search, ctx.say("office-nothing"), ctx.say("office-nothing-what"), ways)
    }
}

/// How many records were found.
fn said_count(ctx: &Ctx<'_>, found: &Found, ready: &Ready) -> Option<String> {
    let all = found.query()
        == &crate::archive::index::Query {
            sort: found.query().sort,
            reversed: found.query().reversed,
            ..Default::default()
        };
    if found.is_empty() {
        return None;
    }
    let number = |count: u64| format::number(&ctx.scripts.words, &ctx.settings.staff, count.into());
    match found.count {
        Some(Count::Exactly(1)) => Some(counted(ctx, "office-count", 1)),
        Some(Count::Exactly(count)) => {
            let key = if all { "office-count-all" } else { "office-count-of" };
            let args = Args::new().text("count", number(count)).text("of", number(ready.records.max(count)));
            Some(ctx.say_with(key, &args))
        }
        Some(Count::MoreThan(count)) => {
            Some(ctx.say_with("office-count-more", &Args::new().text("count", number(count))))
        }
        None => None,
    }
}
