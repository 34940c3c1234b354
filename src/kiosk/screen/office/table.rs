//! The table: as many rows as fit, with heads that sort.

use iced::widget::{Column, Row, column, container, responsive, row};
use iced::{Alignment, Background, Length, Size};
use jiff::Timestamp;
use jiff::tz::Offset;

use super::filters::{good_key, kind_key};
use super::list::Found;
use super::{Message, State};
use crate::archive::index::{Hit, Sort};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::counted;
use crate::kiosk::theme::{Gap, Look, TextSize, Type};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::words::format;

/// A column: its share of the width, and the orders that its head offers.
struct Head {
    share: f32,
    sorts: &'static [(Sort, &'static str)],
    /// What its head says where it offers no order.
    key: &'static str,
}

const VERDICT: Head = Head { share: 1.5, sorts: &[], key: "office-col-verdict" };
const RENTER: Head = Head { share: 2.3, sorts: &[(Sort::Renter, "office-col-renter")], key: "" };
const UNIT: Head = Head { share: 1.9, sorts: &[(Sort::Unit, "office-col-unit")], key: "" };
const SEALED: Head = Head { share: 2.4, sorts: &[(Sort::Sealed, "office-col-sealed")], key: "" };
const RECEIVED: Head = Head { share: 2.4, sorts: &[(Sort::Received, "office-col-received")], key: "" };
const HEADS: [Head; 5] = [VERDICT, RENTER, UNIT, SEALED, RECEIVED];

/// How rows are laid out.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Shape {
    /// All columns, with heads.
    Wide,
    /// What one knows a record by; the orders stand above the table.
    Narrow,
}

fn shape(look: &Look) -> Shape {
    if look.portrait() || look.text != TextSize::Usual { Shape::Narrow } else { Shape::Wide }
}

/// The height of a row: two lines, and never less than a target.
fn height(look: &Look) -> f32 {
    let lines = (look.size(Type::Strong) + look.size(Type::Small)) * 1.3;
    (lines + look.gap(Gap::Medium)).max(look.target()).ceil()
}

impl State {
    /// The orders that can be asked for, where no heads offer them.
    pub(super) fn orders<'a>(&self, ctx: &Ctx<'a>) -> Option<Element<'a, Message>> {
        let look = &ctx.look;
        let best = (!self.words.trim().is_empty()).then_some((Sort::Best, "office-sort-best"));
        let columns = HEADS.iter().flat_map(|head| head.sorts).copied();
        let all: Vec<_> = match shape(look) {
            Shape::Narrow => best.into_iter().chain(columns).collect(),
            Shape::Wide => best.into_iter().collect(),
        };
        if all.is_empty() {
            return None;
        }
        let chips = all.into_iter().map(|(sort, key)| {
            let chosen = self.sort() == sort;
            let mut chip =
                ui::chip(look, ctx.say(key), Message::SortChosen(sort)).chosen(chosen).height(52.0);
            if let Some(way) = self.way(sort) {
                chip = chip.after(way);
            }
            chip.into()
        });
        let gap = look.gap(Gap::Small);
        Some(Row::with_children(chips).spacing(gap).wrap().vertical_spacing(gap).into())
    }

    /// The way a chosen order goes: down from the newest, or from A.
    fn way(&self, sort: Sort) -> Option<Symbol> {
        (self.sort() == sort && sort != Sort::Best).then_some(if self.reversed {
            Symbol::Up
        } else {
            Symbol::Down
        })
    }

    fn heads<'a>(&self, ctx: &Ctx<'a>, widths: &[f32]) -> Element<'a, Message> {
        let look = &ctx.look;
        let heads = HEADS.iter().zip(widths).map(|(head, width)| {
            let Some((sort, key)) = head.sorts.first() else {
                return container(ui::label(look, ctx.say(head.key))).width(*width).into();
            };
            let colors = look.colors();
            let label = ui::label(look, ctx.say(key)).color(colors.ink);
            let sign = self.way(*sort).map(|way| ui::symbol(look, way, 20.0));
            let face = row![label].push(sign).spacing(look.gap(Gap::Tiny)).align_y(Alignment::Center);
            let face = container(face).width(*width).align_y(Alignment::Center);
            let face = ui::at_least(look.small_target(), face.into());
            ui::tap(look, face, Message::SortChosen(*sort)).into()
        });
        container(Row::with_children(heads).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center))
            .padding(iced::Padding::default().left(look.line() + look.px(8.0) + look.gap(Gap::Small)))
            .into()
    }

    /// The table. It finds out by itself how many rows fit.
    pub(super) fn table<'a>(&'a self, ctx: &Ctx<'a>, found: &'a Found) -> Element<'a, Message> {
        let ctx = *ctx;
        responsive(move |size| self.table_of(&ctx, found, size)).into()
    }

    fn table_of<'a>(&'a self, ctx: &Ctx<'a>, found: &'a Found, size: Size) -> Element<'a, Message> {
        let look = &ctx.look;
        let shape = shape(look);
        let widths = widths(look, size.width);
        let row_height = height(look);
        let head_height = if shape == Shape::Wide { look.small_target() + look.gap(Gap::Tiny) } else { 0.0 };
        let fits = ((size.height - head_height - look.line() * 2.0) / row_height).floor().max(1.0) as usize;
        let shown = found.shown(fits);
        let chosen = shown.iter().position(|at| found.is_chosen(*at));
        let rows = shown.iter().map(|at| {
            let cells = found.row(*at).map(|hit| match shape {
                Shape::Wide => wide(ctx, hit, &widths),
                Shape::Narrow => narrow(ctx, hit, size.width - look.px(BAR) - look.gap(Gap::Small)),
            });
            framed(look, row_height, found.is_chosen(*at), cells)
        });
        let rows = ui::rows(look, "office-rows", (row_height, fits), rows.collect(), chosen, move |event| {
            Message::Rows(event, fits)
        });
        let table = container(rows).width(Length::Fill);
        let table = row![table].push(found.span(fits).map(|span| position(look, span)));
        let table = table.spacing(look.gap(Gap::Small)).height(Length::Shrink);
        let heads = (shape == Shape::Wide).then(|| self.heads(ctx, &widths));
        column![].push(heads).push(table).spacing(look.gap(Gap::Tiny)).into()
    }
}

/// Where the shown rows lie in all of them: nothing to press.
fn position<'a>(look: &Look, (from, to): (f32, f32)) -> Element<'a, Message> {
    let (width, line, colors) = (look.px(BAR), look.line(), look.colors());
    let least = look.px(28.0);
    ui::drawing(width, Length::Fill, move |frame| {
        use iced::Point;
        use iced::widget::canvas::{Path, Stroke};
        let whole = Size::new(width - line, frame.height() - line);
        let bar =
            Path::rounded_rectangle(Point::new(line / 2.0, line / 2.0), whole, (whole.width / 2.0).into());
        frame.stroke(&bar, Stroke::default().with_color(colors.edge).with_width(line));
        let height = (whole.height * (to - from)).max(least).min(whole.height);
        let top = ((whole.height - height) * from / (1.0 - (to - from)).max(f32::EPSILON)).max(0.0);
        let at = Point::new(line / 2.0, line / 2.0 + top.min(whole.height - height));
        let thumb = Path::rounded_rectangle(at, Size::new(whole.width, height), (whole.width / 2.0).into());
        frame.fill(&thumb, colors.ink);
    })
}

/// Width of the bar beside the table.
const BAR: f32 = 14.0;

/// Widths of the columns.
fn widths(look: &Look, width: f32) -> Vec<f32> {
    let width = width - look.px(BAR) - look.gap(Gap::Small) - look.line() * 2.0 - look.px(8.0);
    let gaps = look.gap(Gap::Medium) * (HEADS.len() as f32 - 1.0) + look.gap(Gap::Large) * 2.0;
    let shares: f32 = HEADS.iter().map(|head| head.share).sum();
    HEADS.iter().map(|head| ((width - gaps) * head.share / shares).max(1.0).floor()).collect()
}

/// A row on its ground; one that has not come yet is empty.
fn framed<'a>(
    look: &Look,
    height: f32,
    chosen: bool,
    cells: Option<Element<'a, Message>>,
) -> Element<'a, Message> {
    let colors = look.colors();
    let ground = if chosen { colors.tint } else { colors.leaf };
    let line = look.px(1.0).max(1.0);
    // Not by color alone: a bar beside what is chosen.
    let bar =
        container(iced::widget::Space::new().width(look.px(8.0)).height(Length::Fill)).style(move |_| {
            container::Style {
                background: chosen.then_some(Background::Color(colors.ink)),
                ..container::Style::default()
            }
        });
    let below = container(iced::widget::Space::new().width(Length::Fill).height(line)).style(move |_| {
        container::Style { background: Some(Background::Color(colors.line)), ..container::Style::default() }
    });
    let cells = cells.unwrap_or_else(|| iced::widget::Space::new().into());
    let inside = container(cells)
        .padding([0.0, look.gap(Gap::Small)])
        .width(Length::Fill)
        .height(Length::Fill)
        .align_y(Alignment::Center);
    container(column![row![bar, inside].height(Length::Fill), below])
        .height(height)
        .width(Length::Fill)
        .style(move |_| container::Style {
            background: Some(Background::Color(ground)),
            ..container::Style::default()
        })
        .into()
}

/// Two lines of a cell.
fn two<'a>(look: &Look, width: f32, upper: (&str, Type), lower: &str) -> Element<'a, Message> {
    let cell = |text: &str, role: Type| (!text.is_empty()).then(|| ui::cell(look, role, text, width));
    column![].push(cell(upper.0, upper.1)).push(cell(lower, Type::Small)).width(width).into()
}

fn verdict<'a>(ctx: &Ctx<'a>, hit: &Hit) -> (Element<'a, Message>, String) {
    let good = hit.fault.is_none();
    let sign = if good { Symbol::Shield } else { Symbol::ShieldBroken };
    (ui::symbol(&ctx.look, sign, 30.0), ctx.say(good_key(good)))
}

fn wide<'a>(ctx: &Ctx<'a>, hit: &Hit, widths: &[f32]) -> Element<'a, Message> {
    let look = &ctx.look;
    let [verdict_width, renter, unit, sealed, received] = widths else {
        return iced::widget::Space::new().into();
    };
    let (sign, word) = verdict(ctx, hit);
    let gap = look.gap(Gap::Small);
    let word_width = verdict_width - look.px(30.0) - gap;
    let first = row![sign, ui::cell(look, Type::Label, &word, word_width)]
        .spacing(gap)
        .align_y(Alignment::Center)
        .width(*verdict_width);
    let mut cells = vec![first.into()];
    if let Some(fault) = &hit.fault {
        // Nothing of what it says is known.
        cells.push(two(look, *renter, (&hit.id, Type::Strong), &fault_words(ctx, fault)));
        cells.push(two(look, unit + sealed + look.gap(Gap::Medium), ("", Type::Body), &hit.path));
    } else {
        let kind = hit.kind.map_or_else(String::new, |kind| ctx.say(kind_key(kind)));
        let name = if hit.unit_name.is_empty() { &hit.unit } else { &hit.unit_name };
        cells.push(two(look, *renter, (name_of(ctx, hit).as_str(), Type::Strong), &hit.booking));
        cells.push(two(look, *unit, (name, Type::Body), &kind));
        cells.push(two(look, *sealed, (&when(ctx, hit.sealed, hit.offset_minutes), Type::Body), &hit.id));
    }
    let came = hit.received.map_or_else(
        || ctx.say("office-no-receipt"),
        |at| format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at)),
    );
    cells.push(two(look, *received, (&came, Type::Body), &remarks(ctx, hit)));
    Row::with_children(cells).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center).into()
}

fn narrow<'a>(ctx: &Ctx<'a>, hit: &Hit, width: f32) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Medium);
    let sign_width = look.size(Type::Label) * 6.4;
    let rest = (width - sign_width - gap * 3.0 - look.px(8.0) - look.gap(Gap::Small) * 2.0).max(1.0);
    let (left, right) = ((rest * 0.52).floor(), (rest * 0.48).floor());
    let (sign, word) = verdict(ctx, hit);
    let sign = column![sign, ui::cell(look, Type::Label, &word, sign_width)]
        .align_x(Alignment::Center)
        .width(sign_width);
    let (who, what, when, which) = if let Some(fault) = &hit.fault {
        (hit.id.clone(), fault_words(ctx, fault), String::new(), hit.path.clone())
    } else {
        let kind = hit.kind.map_or_else(String::new, |kind| ctx.say(kind_key(kind)));
        let name = if hit.unit_name.is_empty() { &hit.unit } else { &hit.unit_name };
        let args = crate::words::Args::new().text("first", name.clone()).text("second", kind);
        let remarks = remarks(ctx, hit);
        let which = if remarks.is_empty() { hit.id.clone() } else { remarks };
        let when = when(ctx, hit.sealed, hit.offset_minutes);
        (name_of(ctx, hit), ctx.say_with("crumb-two", &args), when, which)
    };
    let cells = [
        sign.into(),
        two(look, left, (&who, Type::Strong), &what),
        two(look, right, (&when, Type::Body), &which),
    ];
    Row::with_children(cells).spacing(gap).align_y(Alignment::Center).into()
}

/// The renter, or what stands in for a name where there is none.
fn name_of(ctx: &Ctx<'_>, hit: &Hit) -> String {
    if hit.renter.is_empty() { ctx.say("office-no-name") } else { hit.renter.clone() }
}

fn when(ctx: &Ctx<'_>, at: Option<Timestamp>, offset_minutes: i16) -> String {
    let offset = Offset::from_seconds(i32::from(offset_minutes) * 60).unwrap_or(Offset::UTC);
    at.map_or_else(String::new, |at| {
        format::date_time(&ctx.scripts.words, &ctx.settings.staff, offset.to_datetime(at))
    })
}

/// Why a record is not believed, in a few words.
pub(super) fn fault_words(ctx: &Ctx<'_>, code: &str) -> String {
    ctx.say_with("office-fault", &crate::words::Args::new().text("code", code.to_owned()))
}

/// What the program says of a fault, as a sentence of its own begins.
pub(super) fn sentence(why: &str) -> String {
    let mut letters = why.trim_end_matches('.').chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    first + letters.as_str()
}

/// What one should look at.
fn remarks(ctx: &Ctx<'_>, hit: &Hit) -> String {
    let some = |key: &str, count: u32| {
        (count > 0).then(|| counted(ctx, key, usize::try_from(count).unwrap_or(usize::MAX)))
    };
    let all: Vec<String> = [some("office-refused", hit.refused), some("office-not-shown", hit.not_shown)]
        .into_iter()
        .flatten()
        .collect();
    all.into_iter()
        .reduce(|first, second| {
            ctx.say_with("crumb-two", &crate::words::Args::new().text("first", first).text("second", second))
        })
        .unwrap_or_default()
}

/// What stands where the table would.
pub(super) fn instead<'a>(
    ctx: &Ctx<'a>,
    sign: Symbol,
    title: String,
    line: String,
    ways: Vec<Element<'a, Message>>,
) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Medium);
    let ways = Row::with_children(ways).spacing(gap).wrap().vertical_spacing(gap);
    let words: Column<'a, Message> = column![
        ui::symbol(look, sign, 72.0),
        ui::title(look, title).align_x(Alignment::Center),
        ui::body(look, line).align_x(Alignment::Center),
        ways
    ]
    .spacing(look.gap(Gap::Large))
    .align_x(Alignment::Center)
    .max_width(look.px(760.0));
    let page = container(words).padding(look.gap(Gap::Wide)).center_x(Length::Fill);
    ui::scroll(look, page).height(Length::Fill).into()
}
