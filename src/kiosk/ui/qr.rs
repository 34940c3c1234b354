//! A code to photograph: dark modules on white whatever the theme, with the quiet margin readers need.

use iced::widget::canvas::Path;
use iced::{Point, Size};

use super::{Element, body, drawing};
use crate::kiosk::theme::{Look, palette};

/// Modules of white around the code (ISO/IEC 18004 asks for four).
const QUIET: usize = 4;

/// The code of a text, `side` wide at a scale of 1. Modules are whole pixels, so that no edge is blurred.
#[must_use]
pub fn qr_code<'a, M: 'a>(look: &Look, text: &str, side: f32) -> Element<'a, M> {
    let Ok(code) = fast_qr::QRBuilder::new(text).build() else { return body(look, text.to_owned()).into() };
    let modules = code.size + 2 * QUIET;
    let count = f32::from(u16::try_from(modules).unwrap_or(u16::MAX));
    let module = (look.px(side) / count).floor().max(2.0);
    let whole = module * count;
    let (white, black) = (palette::CODE.ground, palette::CODE.on);
    drawing(whole, whole, move |frame| {
        frame.fill_rectangle(Point::ORIGIN, Size::new(whole, whole), white);
        let at = |n: usize| f32::from(u16::try_from(n + QUIET).unwrap_or(0)) * module;
        let dark = Path::new(|path| {
            // The rows of the code lie behind each other in `data`.
            for (y, row) in code.data.chunks(code.size.max(1)).take(code.size).enumerate() {
                for (x, _) in row.iter().enumerate().filter(|(_, cell)| cell.value()) {
                    path.rectangle(Point::new(at(x), at(y)), Size::new(module, module));
                }
            }
        });
        frame.fill(&dark, black);
    })
}
