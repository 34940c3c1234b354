//! The plot of a trip on the screen: the geometry of [`crate::figures::plot`] in the colors of the look.
//!
//! Lines are drawn; every word is a text of its own, so that it wraps, grows with the reader's size and is
//! measured like the rest of the page.

mod draw;

use iced::advanced::text::{self as letters, Paragraph as _};
use iced::alignment::Vertical;
use iced::widget::{Column, Row, Space, column, container, row};
use iced::{Alignment, Length, Pixels, Point, Rectangle, Size};

use super::{Element, drawing, pinned, text};
use crate::figures::plot::{Label, Line, Plot, Room, Texts};
use crate::figures::projection::Projection;
use crate::kiosk::theme::{Gap, Look, Type};
use crate::words::{Reader, Words};

/// Half the side of a mark, as written; lines keep this far from the edge of their drawing.
const MARK: f32 = 9.0;
/// Width of the way from the end of a line to its name.
const WAY: f32 = 34.0;
/// Width of the sample before a name.
const SAMPLE: f32 = 46.0;
/// The narrowest page part that a plot has to go into.
const NARROW: f32 = 690.0;
/// The least width of lines that can be told apart.
const LEAST: f32 = 220.0;

/// A trip day by day: what is left of each supply, and which one ends first. The lines are `height` high and as
/// wide as their space; days stand above them, the day of the first end below. Names stand beside them, or below
/// where they are too long for that.
pub fn trip_plot<'a, M: 'a>(
    look: &Look,
    words: &Words,
    reader: &Reader,
    projection: &Projection,
    height: f32,
) -> Element<'a, M> {
    let every = Plot::new(projection, Room { label: 0.0, days: u16::MAX });
    let texts = Texts::of(words, reader, &every);
    let face = Face::new(*look, &every, &texts, height);
    let plot = Plot::new(projection, Room { label: f64::from(face.label / face.inner), days: face.days });
    let texts = Texts::of(words, reader, &plot);
    let key: Element<'a, M> = match face.names {
        Names::Beside { .. } => Space::new().into(),
        Names::Below => face.key(&plot, &texts),
    };
    column![face.days_row(&texts), face.middle(&plot, &texts), face.flag(&plot, &texts), key]
        .spacing(look.gap(Gap::Tiny))
        .width(Length::Fill)
        .into()
}

/// Where names stand.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Names {
    /// Beside the lines, in a column of this width, name and end in one line or in two.
    Beside { width: f32, lines: u8 },
    /// Below the lines.
    Below,
}

/// What goes where, measured.
#[derive(Debug, Clone, Copy)]
struct Face {
    look: Look,
    height: f32,
    /// Height of the square itself.
    inner: f32,
    /// Width of the words at the upward axis.
    side: f32,
    names: Names,
    /// Height of a name.
    label: f32,
    /// How many names of days go side by side.
    days: u16,
}

impl Face {
    fn new(look: Look, plot: &Plot, texts: &Texts, height: f32) -> Self {
        let inner = (height - 2.0 * look.px(MARK)).max(1.0);
        let side = width(&look, Type::Small, &texts.all).max(width(&look, Type::Small, &texts.none));
        let page = look.window.width.min(look.px(NARROW)) - side - look.gap(Gap::Small);
        let count = plot.lines.len().max(1) as f32;
        let line = look.size(Type::Small) * 1.3;
        let wide = |parts: &dyn Fn(&str, &str) -> f32| {
            let names = texts.names.iter().zip(&texts.ends).map(|(name, end)| parts(name, end));
            names.fold(0.0, f32::max) + look.px(SAMPLE) + look.gap(Gap::Small)
        };
        let strong = |words: &str| width(&look, Type::Label, words);
        let two = wide(&|name, end| strong(name).max(strong(end)));
        let one = wide(&|name, end| strong(&joined(name, end)));
        let fits = |names: f32, lines: f32| {
            page - names - look.px(WAY) >= look.px(LEAST) && count * lines * line <= inner
        };
        let names = if fits(two, 2.0) {
            Names::Beside { width: two, lines: 2 }
        } else if fits(one, 1.0) {
            Names::Beside { width: one, lines: 1 }
        } else {
            Names::Below
        };
        let (taken, lines) = match names {
            Names::Beside { width, lines } => (width + look.px(WAY), f32::from(lines)),
            Names::Below => (0.0, 1.0),
        };
        let day = texts.days.iter().map(|day| width(&look, Type::Small, day)).fold(1.0, f32::max);
        // The marks at both ends take room as well.
        let room = page - taken - 2.0 * look.px(MARK) - look.gap(Gap::Large);
        let days = (room / (day + look.gap(Gap::Small))).max(1.0) as u16;
        Self { look, height, inner, side, names, label: lines * line, days }
    }

    /// What stands left of the lines.
    fn left(&self) -> f32 {
        self.side + self.look.gap(Gap::Small)
    }

    /// What stands right of the lines.
    fn right(&self) -> f32 {
        match self.names {
            Names::Beside { width, .. } => width + self.look.px(WAY),
            Names::Below => 0.0,
        }
    }

    /// Puts something exactly above or below the square.
    fn aligned<'a, M: 'a>(&self, content: Element<'a, M>) -> Element<'a, M> {
        let edge = self.look.px(MARK);
        row![
            Space::new().width(self.left() + edge),
            container(content).width(Length::Fill),
            Space::new().width(self.right() + edge),
        ]
        .into()
    }

    fn days_row<'a, M: 'a>(&self, texts: &Texts) -> Element<'a, M> {
        let days = texts.days.iter().map(|day| {
            let day = text(&self.look, Type::Small, day.clone());
            day.width(Length::Fill).align_x(Alignment::Center).into()
        });
        self.aligned(Row::with_children(days).into())
    }

    fn middle<'a, M: 'a>(&self, plot: &Plot, texts: &Texts) -> Element<'a, M> {
        let look = self.look;
        let end = |words: &str| text(&look, Type::Small, words.to_owned());
        let side = column![end(&texts.all), Space::new().height(Length::Fill), end(&texts.none)]
            .align_x(Alignment::End)
            .width(self.side)
            .height(self.height);
        let (mark, drawn) = (look.px(MARK), plot.clone());
        let lines = drawing(Length::Fill, self.height, move |frame| draw::lines(&look, frame, &drawn, mark));
        let line = row![side, Space::new().width(look.gap(Gap::Small)), lines];
        let Names::Beside { width, .. } = self.names else { return line.into() };
        let drawn = plot.clone();
        let ways = drawing(look.px(WAY), self.height, move |frame| draw::ways(&look, frame, &drawn, mark));
        let parts = plot
            .labels
            .iter()
            .filter_map(|label| Some((self.place(label, width), self.name(plot, texts, label.line, true)?)))
            .collect();
        line.push(ways).push(pinned(Size::new(width, self.height), parts)).into()
    }

    /// Where a name stands in its column.
    fn place(&self, label: &Label, width: f32) -> Rectangle {
        let middle = self.look.px(MARK) + (1.0 - label.y as f32) * self.inner;
        Rectangle::new(Point::new(0.0, middle - self.label / 2.0), Size::new(width, self.label))
    }

    /// The sample of a line, its name, and how far it lasts.
    fn name<'a, M: 'a>(
        &self,
        plot: &Plot,
        texts: &Texts,
        index: usize,
        beside: bool,
    ) -> Option<Element<'a, M>> {
        let look = self.look;
        let line: Line = plot.lines.get(index)?.clone();
        let role = if line.first { Type::Label } else { Type::Small };
        let put = |words: String| {
            let words = text(&look, role, words).color(look.ink());
            if beside { words } else { words.width(Length::Fill) }
        };
        let (name, end) = (texts.names.get(index)?, texts.ends.get(index)?);
        let said: Element<'a, M> = match self.names {
            Names::Beside { lines: 2, .. } => column![put(name.clone()), put(end.clone())].into(),
            _ => put(joined(name, end)).into(),
        };
        let mark = look.px(MARK);
        let sample = drawing(look.px(SAMPLE), look.px(26.0), move |frame| {
            draw::sample(&look, frame, &line, mark);
        });
        let whole = row![sample, said].spacing(look.gap(Gap::Small)).align_y(Alignment::Center);
        Some(if beside { container(whole).center_y(Length::Fill).into() } else { whole.into() })
    }

    /// The day on which the first one ends, below its mark.
    fn flag<'a, M: 'a>(&self, plot: &Plot, texts: &Texts) -> Element<'a, M> {
        let (Some(line), Some(day)) = (plot.first(), &texts.first) else { return Space::new().into() };
        let (look, colors) = (&self.look, self.look.colors());
        let ground = super::panel::colored(look, colors.accent, colors.on_accent);
        let day = text(look, Type::Label, day.clone()).color(colors.on_accent);
        let flag =
            container(day).padding([look.gap(Gap::Tiny), look.gap(Gap::Medium)]).style(move |_| ground);
        // As far across the row as the mark is across the square: the flag always touches what is above it.
        let part = |x: f64| Length::FillPortion((x * 1000.0) as u16);
        let x = line.end.x.clamp(0.001, 0.999);
        self.aligned(row![Space::new().width(part(x)), flag, Space::new().width(part(1.0 - x))].into())
    }

    /// Names below each other.
    fn key<'a, M: 'a>(&self, plot: &Plot, texts: &Texts) -> Element<'a, M> {
        let names = plot.labels.iter().filter_map(|label| self.name(plot, texts, label.line, false));
        Column::with_children(names).spacing(self.look.gap(Gap::Tiny)).width(Length::Fill).into()
    }
}

/// A name and how far it lasts, in one line.
fn joined(name: &str, end: &str) -> String {
    format!("{name}: {end}")
}

/// The width of words in a role, with a hair to spare.
fn width(look: &Look, role: Type, words: &str) -> f32 {
    type Paragraph = <iced::Renderer as letters::Renderer>::Paragraph;
    let paragraph = Paragraph::with_text(letters::Text {
        content: words,
        bounds: Size::INFINITE,
        size: Pixels(look.size(role)),
        line_height: letters::LineHeight::Relative(1.3),
        font: Look::font(role),
        align_x: letters::Alignment::Default,
        align_y: Vertical::Top,
        shaping: letters::Shaping::default(),
        wrapping: letters::Wrapping::None,
    });
    paragraph.min_bounds().width.ceil() + 1.0
}
