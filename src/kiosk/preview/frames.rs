//! Every page as a picture, and sheets of small ones to look at together.

use std::sync::Arc;

use iced::advanced::widget::operation::Scrollable;
use iced::advanced::widget::operation::scrollable::AbsoluteOffset;
use iced::advanced::widget::{Id, Operation};
use iced::widget::{Column, Row, column, container, image as raster};
use iced::{Length, Rectangle, Size, Vector};

use super::{Kiosk, Manner, Page, TourFault, Visit, lead};
use crate::kiosk::headless::{Driver, Frame};
use crate::kiosk::theme::{Gap, Look, TextSize, Theme, fonts, style};
use crate::kiosk::ui::{self, Element};
use crate::script::Scripts;

/// Most pictures of one page: what is longer than this many screens is told by its own length.
const MOST_SCREENS: usize = 8;
/// The part of a screen that is scrolled at once, so that a line is seen whole on one of two.
const TURN: f32 = 0.8;
/// The longer side of a small picture on a sheet, in pixels.
const SMALL: u32 = 460;
/// Rows of a sheet.
const ROWS: usize = 6;
/// Width of a sheet, in pixels.
const SHEET: u32 = 1960;

/// Shows every page of a unit, in walking order, as a picture with its name: a page that scrolls as several.
/// Sheets of small pictures follow at the end.
///
/// # Errors
/// See [`TourFault`]; `take` may refuse a picture.
pub fn preview(
    scripts: &Arc<Scripts>,
    unit: &str,
    manner: &Manner,
    take: &mut dyn FnMut(&str, &Frame) -> Result<(), String>,
) -> Result<(), TourFault> {
    let mut frames = Frames { take, small: Vec::new() };
    lead(scripts, unit, manner, false, &mut frames)?;
    let Frames { take, small } = frames;
    let (width, height) = manner.size;
    let columns = columns(width, height);
    let sheets: Vec<&[Small]> = small.chunks(columns * ROWS).collect();
    for (index, cells) in sheets.iter().enumerate() {
        let name = if sheets.len() == 1 {
            "contact-sheet".to_owned()
        } else {
            format!("contact-sheet-{}", index + 1)
        };
        take(&name, &sheet(cells, columns)?).map_err(TourFault::Taken)?;
    }
    Ok(())
}

/// Draws each page.
struct Frames<'t> {
    take: &'t mut dyn FnMut(&str, &Frame) -> Result<(), String>,
    small: Vec<Small>,
}

impl Visit for Frames<'_> {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        driver.settle_now()?;
        for screen in 1..=MOST_SCREENS {
            let name = if screen == 1 { page.name() } else { format!("{}_{screen}", page.name()) };
            let frame = driver.render();
            (self.take)(&name, &frame).map_err(TourFault::Taken)?;
            self.small.push(Small::of(&name, &frame));
            let mut scroll = ScrollOn { moved: false };
            driver.operate(&mut scroll);
            if !scroll.moved {
                break;
            }
            driver.settle_now()?;
        }
        Ok(())
    }
}

/// Scrolls on wherever something lies below.
struct ScrollOn {
    moved: bool,
}

impl Operation for ScrollOn {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        bounds: Rectangle,
        content: Rectangle,
        translation: Vector,
        state: &mut dyn Scrollable,
    ) {
        if translation.y + bounds.height + 1.0 < content.height {
            state.scroll_by(AbsoluteOffset { x: 0.0, y: bounds.height * TURN }, bounds, content);
            self.moved = true;
        }
    }
}

/// A small picture with its name.
#[derive(Debug, Clone)]
struct Small {
    name: String,
    picture: raster::Handle,
    size: (u32, u32),
}

impl Small {
    fn of(name: &str, frame: &Frame) -> Self {
        let (width, height) = (frame.width.max(1), frame.height.max(1));
        let long = width.max(height);
        let part = |side: u32| (side * SMALL / long).max(1);
        let size = (part(width), part(height));
        let whole = image::RgbaImage::from_raw(frame.width, frame.height, frame.rgba.clone());
        let small = image::imageops::thumbnail(&whole.unwrap_or_default(), size.0, size.1);
        Self {
            name: name.to_owned(),
            picture: raster::Handle::from_rgba(size.0, size.1, small.into_raw()),
            size,
        }
    }
}

/// How many small pictures stand side by side.
fn columns(width: u32, height: u32) -> usize {
    let wide = (width * SMALL / width.max(height).max(1)).max(1);
    usize::try_from((SHEET / (wide + 24)).max(1)).unwrap_or(1)
}

fn look(size: Size) -> Look {
    // Measures as written, whatever the size of the sheet.
    Look { scale: 1.0, ..Look::new(Theme::Paper, TextSize::Usual, size, 1.0) }
}

/// One sheet.
fn sheet(cells: &[Small], columns: usize) -> Result<Frame, TourFault> {
    let rows = cells.len().div_ceil(columns.max(1));
    let tall = cells.first().map_or(1, |c| c.size.1) + 64;
    let height = u32::try_from(rows).unwrap_or(1) * tall + 32;
    let size = Size::new(SHEET as f32, height as f32);
    let sheet = Sheet { cells: cells.to_vec(), columns, size };
    let program = iced::application(move || sheet.clone(), |_: &mut Sheet, (): ()| {}, page)
        .theme(|_: &Sheet| style::toolkit(Theme::Paper))
        .default_font(fonts::REGULAR);
    Ok(Driver::open(&program, (SHEET, height))?.render())
}

/// What stands on a sheet.
#[derive(Debug, Clone)]
struct Sheet {
    cells: Vec<Small>,
    columns: usize,
    size: Size,
}

fn page(sheet: &Sheet) -> Element<'_, ()> {
    let look = look(sheet.size);
    let cell = |small: &Small| -> Element<'_, ()> {
        let (width, height) = (small.size.0 as f32, small.size.1 as f32);
        column![
            raster(small.picture.clone()).width(width).height(height),
            ui::small(&look, small.name.clone()).width(Length::Fixed(width)),
        ]
        .spacing(look.gap(Gap::Tiny))
        .into()
    };
    let rows = sheet.cells.chunks(sheet.columns.max(1)).map(|line| {
        Element::from(
            Row::with_children(line.iter().map(cell))
                .spacing(look.gap(Gap::Large))
                .height(Length::Fixed(line.first().map_or(1.0, |c| c.size.1 as f32) + 64.0)),
        )
    });
    let colors = look.colors();
    container(Column::with_children(rows))
        .padding(look.gap(Gap::Large))
        .width(Length::Fill)
        .height(Length::Fill)
        .style(move |_| style::flat(colors.wash, colors.ink))
        .into()
}
