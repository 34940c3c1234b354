//! A record that was opened: judged anew, then its file and its place in the chain, what came of the handoff in short,
//! and its whole text, section by section.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::sheet::{self, Line, PART, Section};
use super::{Message, State};
use crate::kiosk::context::Ctx;
use crate::kiosk::office::{After, Before, Broken, Held, Opened};
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Choice, Element, InkPoint, Stroke, Symbol};
use crate::record::seal::RecordId;
use crate::record::verify::JudgedAt;
use crate::walk::Ink;
use crate::words::{Args, format};

use super::brief;
use super::filters::{good_key, kind_key};
use super::table::{fault_words, sentence};

/// A record as it is shown.
#[derive(Debug)]
pub struct Record {
    pub(super) opened: Opened,
    sections: Vec<Section>,
    ink: Vec<(String, f32, Vec<Stroke>)>,
    /// The section that is shown: 0 is the page of the file, then those of the text.
    section: usize,
    /// Which part of a long section.
    part: usize,
}

impl Record {
    pub(super) fn new(opened: Opened) -> Self {
        let held = opened.held.as_ref().ok();
        let sections = held.map_or_else(Vec::new, |held| sheet::sections(&held.text));
        let ink = held.map_or_else(Vec::new, |held| {
            held.ink
                .iter()
                .map(|(name, ink)| (name.clone(), f32::from(ink.height.max(1)), strokes(ink)))
                .collect()
        });
        Self { opened, sections, ink, section: 0, part: 0 }
    }

    pub(super) fn show(&mut self, section: usize) {
        (self.section, self.part) = (section.min(self.sections.len()), 0);
    }

    pub(super) fn turn(&mut self, on: bool) {
        let last = self.shown().map_or(0, |section| section.lines.len().saturating_sub(1) / PART);
        self.part = if on { (self.part + 1).min(last) } else { self.part.saturating_sub(1) };
    }

    fn shown(&self) -> Option<&Section> {
        self.sections.get(self.section.checked_sub(1)?)
    }
}

/// Handwriting as the pad knows it.
fn strokes(ink: &Ink) -> Vec<Stroke> {
    let on = |n: i16| u16::try_from(n.max(0)).unwrap_or(0);
    let stroke =
        |points: &Vec<(i16, i16)>| points.iter().map(|(x, y)| InkPoint { x: on(*x), y: on(*y) }).collect();
    ink.strokes.iter().map(stroke).collect()
}

impl State {
    pub(super) fn record_page<'a>(&'a self, ctx: &Ctx<'a>, record: &'a Record) -> Element<'a, Message> {
        let look = &ctx.look;
        let gap = look.gap(Gap::Large);
        let content: Element<'a, Message> = match (&record.opened.held, record.shown()) {
            (Err(broken), _) => broken_page(ctx, &record.opened, broken),
            (Ok(held), None) => file_page(ctx, record, held),
            (Ok(_), Some(section)) => section_page(ctx, record, section),
        };
        let parts = self.parts(ctx, record);
        let upright = look.portrait() || look.text == TextSize::Largest;
        // A section begins at its top.
        let key = record.section * 1000 + record.part;
        let page: Element<'a, Message> = match parts {
            Some(parts) if !upright => {
                let parts = ui::scroll(look, container(parts).padding(iced::Padding::default().right(gap)));
                let parts = container(parts.height(Length::Fill)).width(look.px(330.0));
                let content = container(content).padding(iced::Padding::default().right(gap));
                let content = keyed(key, ui::scroll(look, content).height(Length::Fill).into());
                row![parts, content].spacing(gap).into()
            }
            parts => {
                let page = column![].push(parts).push(content).spacing(gap);
                let page = container(page).padding(iced::Padding::default().right(gap));
                keyed(key, ui::scroll(look, page).height(Length::Fill).into())
            }
        };
        let page = column![head(ctx, record), container(page).height(Length::Fill)].spacing(gap);
        let page = container(page).padding(look.gap(Gap::Wide)).height(Length::Fill);
        ui::on_escape(page, Message::Back)
    }

    /// The sections, to choose from.
    fn parts<'a>(&self, ctx: &Ctx<'a>, record: &'a Record) -> Option<Element<'a, Message>> {
        if record.sections.is_empty() {
            return None;
        }
        let look = &ctx.look;
        let first = ctx.say("office-overview");
        let titles =
            std::iter::once(first).chain(record.sections.iter().map(|section| lower(&section.title)));
        let choices = titles
            .enumerate()
            .map(|(at, title)| Choice::new(title, at == record.section, Message::SectionChosen(at)));
        if look.portrait() || look.text == TextSize::Largest {
            return Some(ui::choices(look, choices));
        }
        let rows = choices.map(|choice| ui::radio_row(look, choice));
        Some(Column::with_children(rows).spacing(look.gap(Gap::Small)).into())
    }
}

fn keyed<'a>(key: usize, element: Element<'a, Message>) -> Element<'a, Message> {
    iced::widget::keyed_column([(key, element)]).height(Length::Fill).into()
}

/// Heads of the text are in capitals, which read badly in a list.
fn lower(title: &str) -> String {
    let mut letters = title.chars();
    let first: String = letters.next().into_iter().collect();
    if title.chars().any(char::is_lowercase) {
        title.to_owned()
    } else {
        first + &letters.as_str().to_lowercase()
    }
}

/// The way back, and which record it is.
fn head<'a>(ctx: &Ctx<'a>, record: &'a Record) -> Element<'a, Message> {
    let look = &ctx.look;
    let good = record.opened.held.is_ok();
    let sign = if good { Symbol::Shield } else { Symbol::ShieldBroken };
    let words = column![
        ui::section(look, ctx.say(good_key(good))),
        ui::small(look, record.opened.id.clone()).width(Length::Fill)
    ]
    .width(Length::Fill);
    let back = ui::secondary(look, ctx.say("office-back"), Message::Back).id("office-back");
    let which = row![ui::symbol(look, sign, 52.0), words]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center)
        .width(Length::Fill);
    let export = ui::secondary(look, ctx.say("office-export"), Message::ExportAsked).id("office-export");
    let gap = look.gap(Gap::Medium);
    let ways = row![export, back].spacing(gap);
    if look.portrait() || look.text != TextSize::Usual {
        return column![which, ways.wrap().vertical_spacing(gap)].spacing(gap).into();
    }
    row![which, ways].spacing(look.gap(Gap::Large)).align_y(Alignment::Center).into()
}

/// A label with its value below it, or beside it where there is room.
pub(super) fn fact<'a>(ctx: &Ctx<'a>, label: String, value: String) -> Element<'a, Message> {
    let look = &ctx.look;
    let label = ui::small(look, label);
    let value = ui::body(look, value).width(Length::Fill);
    if look.portrait() || look.text != TextSize::Usual {
        return column![label, value].into();
    }
    row![container(label).width(look.px(230.0)), value].spacing(look.gap(Gap::Medium)).into()
}

pub(super) fn facts<'a>(
    ctx: &Ctx<'a>,
    title: String,
    facts: Vec<Element<'a, Message>>,
) -> Column<'a, Message> {
    let look = &ctx.look;
    column![ui::section(look, title)].extend(facts).spacing(look.gap(Gap::Medium)).width(Length::Fill)
}

/// The file, the seal, the receipt.
fn file<'a>(ctx: &Ctx<'a>, opened: &Opened) -> Vec<Element<'a, Message>> {
    let look = ctx;
    let time = |at| format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at));
    let say = |key: &str| ctx.say(key);
    let received = opened.received.map_or_else(|| say("office-no-receipt-what"), time);
    let judged = match opened.judged {
        JudgedAt::Received(at) => ctx.say_with("office-judged-received", &Args::new().text("when", time(at))),
        JudgedAt::Now(at) => ctx.say_with("office-judged-now", &Args::new().text("when", time(at))),
    };
    vec![
        fact(look, say("office-path"), opened.path.clone()),
        fact(look, say("office-received"), received),
        fact(look, say("office-judged"), judged),
    ]
}

fn file_page<'a>(ctx: &Ctx<'a>, record: &'a Record, held: &'a Held) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Large);
    let seen = &held.seen;
    let sealed = format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(seen.sealed));
    let mut page = column![].spacing(gap).width(Length::Fill);
    if let Some(brief) = brief::of(ctx, held) {
        page = page.push(ui::panel(look, facts(ctx, ctx.say("office-brief"), brief)));
    }
    if !record.ink.is_empty() {
        let ink = record.ink.iter().map(|(name, height, strokes)| drawn(ctx, name, *height, strokes));
        page = page.push(ui::panel(
            look,
            column![ui::section(look, ctx.say("office-ink")), Column::with_children(ink).spacing(gap)]
                .spacing(gap),
        ));
    }
    let mut lines = vec![
        fact(ctx, ctx.say("office-filter-kind"), ctx.say(kind_key(seen.kind))),
        fact(ctx, ctx.say("office-sealed"), sealed),
        fact(ctx, ctx.say("office-digest"), in_groups(&seen.digest.to_string())),
        fact(ctx, ctx.say("office-key"), seen.key.fingerprint()),
    ];
    lines.extend(file(ctx, &record.opened));
    page = page.push(ui::panel(look, facts(ctx, ctx.say("office-file"), lines)));
    page = page.push(ui::panel(look, chain(ctx, held)));
    page.push(ui::small(look, ctx.say("office-seal-means"))).into()
}

/// The place in the chain of the tablet, with the ways to its neighbors.
fn chain<'a>(ctx: &Ctx<'a>, held: &Held) -> Element<'a, Message> {
    let look = &ctx.look;
    let with = |key: &str, id: &RecordId| ctx.say_with(key, &Args::new().text("id", id.to_string()));
    let (before, to_before) = match &held.before {
        Before::First => (ctx.say("office-chain-first"), None),
        Before::Follows(id) => (with("office-chain-follows", id), Some(id)),
        Before::Missing(number) => {
            (ctx.say_with("office-chain-gap-before", &Args::new().number("number", u64::from(*number))), None)
        }
        Before::Other(id) => (with("office-chain-fork-before", id), Some(id)),
    };
    let (after, to_after) = match &held.after {
        After::Nothing => (ctx.say("office-chain-last"), None),
        After::Follows(id) => (with("office-chain-next", id), Some(id)),
        After::Other(id) => (with("office-chain-fork-after", id), Some(id)),
        After::Missing(id) => (with("office-chain-gap-after", id), Some(id)),
    };
    let args =
        Args::new().text("tablet", held.seen.tablet.clone()).number("number", u64::from(held.seen.number));
    let way = |id: Option<&RecordId>, key: &str, name: &'static str| {
        id.map(|id| ui::secondary(look, ctx.say(key), Message::RecordChosen(id.to_string())).id(name))
    };
    let gap = look.gap(Gap::Medium);
    let ways = row![]
        .push(way(to_before, "office-chain-open-before", "office-record-before"))
        .push(way(to_after, "office-chain-open-after", "office-record-after"))
        .spacing(gap)
        .wrap()
        .vertical_spacing(gap);
    facts(
        ctx,
        ctx.say("office-chain"),
        vec![
            ui::body(look, ctx.say_with("office-chain-number", &args)).into(),
            ui::body(look, before).into(),
            ui::body(look, after).into(),
            ways.into(),
        ],
    )
    .into()
}

/// A record that does not verify: why, and nothing of what it says.
fn broken_page<'a>(ctx: &Ctx<'a>, opened: &'a Opened, broken: &'a Broken) -> Element<'a, Message> {
    let look = &ctx.look;
    let title = fault_words(ctx, broken.code);
    let why = ctx.say_with("office-broken-why", &Args::new().text("why", sentence(&broken.why)));
    column![
        ui::signed_note(look, Symbol::ShieldBroken, title, why),
        ui::body(look, ctx.say("office-broken-what")),
        ui::panel(look, facts(ctx, ctx.say("office-file"), file(ctx, opened))),
    ]
    .spacing(look.gap(Gap::Large))
    .width(Length::Fill)
    .into()
}

fn section_page<'a>(ctx: &Ctx<'a>, record: &'a Record, section: &'a Section) -> Element<'a, Message> {
    let look = &ctx.look;
    let gap = look.gap(Gap::Large);
    let mut page =
        column![ui::title(look, lower(&section.title))].spacing(look.gap(Gap::Small)).width(Length::Fill);
    if !section.notice.is_empty() {
        page = page.push(ui::small(look, section.notice.clone()));
    }
    let parts = section.lines.len().div_ceil(PART);
    if parts > 1 {
        let args = Args::new()
            .number("part", u64::try_from(record.part + 1).unwrap_or(0))
            .number("parts", u64::try_from(parts).unwrap_or(0));
        page = page.push(ui::strong(look, ctx.say_with("office-part", &args)));
    }
    page = page.push(ui::rule(look));
    for line in section.lines.iter().skip(record.part * PART).take(PART) {
        page = page.push(drawn_line(ctx, line));
        if let Line::Para(_, _, text) = line {
            for (name, height, strokes) in record.ink.iter().filter(|(name, ..)| text.contains(name.as_str()))
            {
                page = page.push(drawn(ctx, name, *height, strokes));
            }
        }
    }
    let turn = |there: bool, on: bool, key: &str, sign: Symbol| {
        there.then(|| ui::secondary(look, ctx.say(key), Message::PartTurned(on)).before(sign))
    };
    let turns = row![]
        .push(turn(record.part > 0, false, "office-part-before", Symbol::Left))
        .push(turn(record.part + 1 < parts, true, "office-part-after", Symbol::Right))
        .spacing(gap);
    page.push((parts > 1).then(|| container(turns).padding(iced::Padding::default().top(gap)))).into()
}

fn drawn_line<'a>(ctx: &Ctx<'a>, line: &'a Line) -> Element<'a, Message> {
    let look = &ctx.look;
    let deep =
        |depth: usize| iced::widget::Space::new().width(look.px(12.0) * depth.saturating_sub(2) as f32);
    match line {
        Line::Gap => iced::widget::Space::new().height(look.gap(Gap::Medium)).into(),
        Line::Field(label, value) => fact(ctx, label.clone(), in_groups(value)),
        Line::Row(depth, left, right) => {
            let ends = row![
                deep(*depth),
                ui::body(look, left.as_str()).width(Length::FillPortion(3)),
                ui::strong(look, in_groups(right)).width(Length::FillPortion(2)).align_x(Alignment::End)
            ];
            column![ends.spacing(look.gap(Gap::Small)), ui::rule(look)].spacing(look.gap(Gap::Tiny)).into()
        }
        Line::Para(depth, mark, text) => {
            let mark = mark.trim_end();
            let text = match mark {
                "*" => ui::strong(look, in_groups(text)),
                _ => ui::body(look, in_groups(text)),
            };
            let sign: Option<Element<'a, Message>> = match mark {
                "" => None,
                "*" => Some(bullet(ctx)),
                ">" => Some(ui::symbol(look, Symbol::Right, 20.0)),
                _ => Some(ui::body(look, mark.to_owned()).into()),
            };
            Row::new()
                .push((*depth > 2).then(|| deep(*depth)))
                .push(sign)
                .push(text.width(Length::Fill))
                .spacing(look.gap(Gap::Small))
                .into()
        }
    }
}

/// Digests in groups of four, as on the slip, so that they can be compared and no line breaks within a group.
pub(super) fn in_groups(text: &str) -> String {
    let is_digest = |word: &str| word.len() >= DIGEST && word.bytes().all(|b| b.is_ascii_hexdigit());
    let grouped = |word: &str| {
        let letters: Vec<char> = word.chars().collect();
        let groups: Vec<String> = letters.chunks(4).map(|group| group.iter().collect()).collect();
        groups.join(" ")
    };
    let words = text.split(' ').map(|word| if is_digest(word) { grouped(word) } else { word.to_owned() });
    words.collect::<Vec<_>>().join(" ")
}

/// Hex digits from which on a word is a digest.
const DIGEST: usize = 32;

fn bullet<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let look = &ctx.look;
    let (side, ink) = (look.px(20.0), look.ink());
    ui::drawing(side, look.px(28.0), move |frame| {
        let center = frame.center();
        frame.fill(&iced::widget::canvas::Path::circle(center, side * 0.22), ink);
    })
}

/// Handwriting, drawn as it was written.
fn drawn<'a>(ctx: &Ctx<'a>, name: &'a str, height: f32, strokes: &'a [Stroke]) -> Element<'a, Message> {
    let look = &ctx.look;
    let width = look.px(420.0);
    // The pad's own unit: a thousandth of its width. A field that is very high is cut to a square.
    let pad = container(ui::ink_view(look, strokes))
        .width(width)
        .height((width * height / 1000.0).min(width))
        .clip(true);
    let ground = crate::kiosk::theme::style::ground(look, look.colors().leaf, look.colors().line);
    column![container(pad).style(move |_| ground), ui::small(look, name)].spacing(look.gap(Gap::Tiny)).into()
}
