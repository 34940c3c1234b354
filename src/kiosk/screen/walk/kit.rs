//! What is lent: all as listed in one tap, and single corrections.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length, Padding};

use super::page::BAR;
use super::sheet::Sheet;
use super::{Draft, Message, Page, Pressed, SheetKind, fit};
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, Type};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::Item;
use crate::walk::{Event, Walk};
use crate::words::{Args, format};

/// The control that counts all items.
pub(super) const ALL: &str = "all-items";
/// Width of a count, as written.
const COUNT: f32 = 56.0;
/// Most of one item.
const MOST: u16 = 999;

/// One item that is being counted.
#[derive(Debug, Clone)]
pub(super) struct Counting {
    tag: String,
    count: u16,
    note: String,
}

impl Counting {
    /// An item as it was counted, else as listed.
    pub fn of(walk: &Walk, tag: String) -> Self {
        let listed = walk.route().items.iter().find(|i| i.tag == tag).map_or(0, |i| i.count);
        let (count, note) =
            walk.item(&tag).map_or((listed, String::new()), |t| (t.value.count, t.value.note.clone()));
        Self { tag, count, note }
    }

    /// Takes in what changed.
    pub fn change(&mut self, draft: Draft) {
        match draft {
            Draft::Count(count) => self.count = count.min(MOST),
            Draft::Note(note) => self.note = note,
            _ => {}
        }
    }

    /// What it says.
    pub fn event(&self) -> Event {
        Event::ItemCounted { tag: self.tag.clone(), count: self.count, note: self.note.trim().to_owned() }
    }
}

/// All items that are not counted yet, as they are listed.
pub(super) fn as_listed(walk: &Walk) -> Vec<Event> {
    let left = walk.route().items.iter().filter(|i| walk.item(&i.tag).is_none());
    left.map(|i| Event::ItemCounted { tag: i.tag.clone(), count: i.count, note: String::new() }).collect()
}

impl<'a> Page<'a> {
    /// The list in a space of its own: what is not counted yet above it, always in sight.
    pub(super) fn kit(&self, width: f32) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let rows = container(self.item_rows(width - look.px(BAR)))
            .padding(Padding::ZERO.right(look.gap(Gap::Small)));
        column![self.kit_head(width), ui::kept_scroll(look, &self.state.scrolled.1, rows)]
            .spacing(look.gap(Gap::Medium))
            .into()
    }

    /// The list below other things.
    pub(super) fn kit_rows(&self, width: f32) -> Element<'a, Message> {
        column![self.kit_head(width), self.item_rows(width)].spacing(self.ctx.look.gap(Gap::Medium)).into()
    }

    /// How many are counted, and all the others in one tap.
    fn kit_head(&self, width: f32) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let tally = self.walk().items_settled();
        let number = |n: usize| u64::try_from(n).unwrap_or(0);
        let args = Args::new().number("done", number(tally.done)).number("count", number(tally.all));
        let words = ctx.say_with("walk-items-counted", &args);
        let left = tally.all.saturating_sub(tally.done);
        let saving = self.saving(&Pressed::Line(ALL.to_owned()));
        let label = match (saving, tally.done) {
            (true, _) => ctx.say("walk-saving"),
            (false, 0) => counted(ctx, "walk-items-all", left),
            (false, _) => counted(ctx, "walk-items-rest", left),
        };
        let natural = |role, text: &str| fit::room(look, role, text, f32::INFINITY).width;
        let needs = natural(Type::Strong, &words) + natural(Type::Strong, &label) + look.px(130.0);
        let words = ui::strong(look, words).width(Length::Fill);
        let all: Option<Element<'a, Message>> = if saving {
            Some(ui::saving(look, label).into())
        } else {
            (left > 0)
                .then(|| ui::secondary(look, label, Message::AllAsListed).before(Symbol::Tick).bold().into())
        };
        if needs > width {
            return column![words].push(all).spacing(look.gap(Gap::Small)).into();
        }
        row![words].push(all).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center).into()
    }

    fn item_rows(&self, width: f32) -> Element<'a, Message> {
        let rows = self.walk().route().items.iter().map(|item| self.item(item, width));
        Column::with_children(rows).spacing(self.ctx.look.gap(Gap::Small)).into()
    }

    fn item(&self, item: &'a Item, width: f32) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let colors = look.colors();
        let counted = self.walk().item(&item.tag).map(|t| &t.value);
        let (sign, color, state) = match counted {
            None => (None, colors.ink, "walk-item-open"),
            Some(c) if c.count == item.count => (Some(Symbol::TickDisc), colors.accent, "walk-item-counted"),
            Some(_) => (Some(Symbol::Alert), colors.ink, "walk-item-other"),
        };
        let note = counted.map(|c| c.note.as_str()).filter(|n| !n.is_empty());
        let said = ctx.say(state);
        // In words what became of it; a sign only where something was counted: an empty ring would look like a box
        // to tick.
        let state = row![]
            .push(sign.map(|sign| ui::symbol::symbol_in(look, sign, 22.0, color, colors.leaf)))
            .push(ui::small(look, said.clone()))
            .spacing(look.gap(Gap::Small))
            .align_y(Alignment::Center);
        let words = column![ui::body(look, self.item_words(item))]
            .push(note.map(|n| ui::small(look, n.to_owned())))
            .width(Length::Fill);
        let args =
            Args::new().number("count", counted.map_or(item.count, |c| c.count)).number("listed", item.count);
        let key = match counted {
            Some(c) if c.count != item.count => "walk-item-differs",
            _ => "walk-item-count",
        };
        let price = self.price(item);
        let natural = |text: &str| fit::room(look, Type::Small, text, f32::INFINITY).width;
        let side = natural(&said).max(natural(&price) + look.px(COUNT)) + look.px(80.0);
        let count = row![
            ui::small(look, price),
            ui::strong(look, ctx.say_with(key, &args)).width(look.px(COUNT)).align_x(Alignment::End),
        ]
        .align_y(Alignment::Center);
        // Beside long words in large letters there is no room: then it stands below them.
        let words: Element<'a, Message> = if width - side >= look.size(Type::Body) * 9.0 {
            row![words, column![count, state].align_x(Alignment::End)]
                .spacing(look.gap(Gap::Medium))
                .align_y(Alignment::Center)
                .into()
        } else {
            column![words, count, state].width(Length::Fill).into()
        };
        let line = row![words, ui::symbol(look, Symbol::Right, 22.0)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        ui::press_panel(look, ui::Edge::Press, line, Message::SheetAsked(SheetKind::Item(item.tag.clone())))
    }

    fn item_words(&self, item: &Item) -> String {
        let args = Args::new().text("tag", item.tag.clone()).text("item", self.say_unit(&item.words));
        self.ctx.say_with("walk-item", &args)
    }

    fn price(&self, item: &Item) -> String {
        let ctx = &self.ctx;
        let currency = &ctx.scripts.lot.value.currency;
        let price = format::money(&ctx.scripts.words, &ctx.settings.staff, &item.price, currency);
        ctx.say_with(
            if item.count == 1 { "walk-item-price" } else { "walk-item-price-each" },
            &Args::new().text("price", price),
        )
    }

    /// One item by itself.
    pub(super) fn item_sheet(&self, sheet: &Sheet, counting: &'a Counting) -> Element<'a, Message> {
        let (look, ctx) = (&self.ctx.look, &self.ctx);
        let Some(item) = self.walk().route().items.iter().find(|i| i.tag == counting.tag) else {
            return ui::quiet(look, ctx.say("walk-sheet-away"), Message::SheetClosed).into();
        };
        let step = |count: Option<u16>| count.filter(|c| *c <= MOST).map(|c| Message::Draft(Draft::Count(c)));
        let number = format::number(&ctx.scripts.words, &ctx.settings.staff, counting.count.into());
        let listed = Args::new().number("listed", item.count).text("price", self.price(item));
        column![
            ui::section(look, self.item_words(item)),
            ui::body(look, ctx.say_with("walk-item-listed", &listed)),
            ui::stepper(
                look,
                number,
                step(counting.count.checked_sub(1)),
                step(counting.count.checked_add(1))
            ),
            self.note_field(&counting.note, "walk-item-note", None),
            self.ends(sheet, ctx.say("walk-item-keep"), Message::SheetClosed),
        ]
        .spacing(look.gap(Gap::Large))
        .width(Length::Fill)
        .into()
    }
}
