//! The letters: Atkinson Hyperlegible, and Fira Sans (which the toolkit brings) for Greek and Cyrillic.

use std::borrow::Cow;
use std::sync::PoisonError;

use iced::Font;
use iced::advanced::graphics::text::{cosmic_text::fontdb, font_system};
use iced::font::Weight;

/// The family name inside the bundled files.
pub const FAMILY: &str = "Atkinson Hyperlegible";

/// Running text.
pub const REGULAR: Font = Font::with_name(FAMILY);

/// Words that stand out.
pub const BOLD: Font = Font { weight: Weight::Bold, ..REGULAR };

const FILES: [&[u8]; 2] = [
    include_bytes!("../../../assets/fonts/AtkinsonHyperlegible_400Regular.ttf"),
    include_bytes!("../../../assets/fonts/AtkinsonHyperlegible_700Bold.ttf"),
];

/// The bundled files, for the settings of the program.
#[must_use]
pub fn files() -> Vec<Cow<'static, [u8]>> {
    FILES.iter().map(|bytes| Cow::Borrowed(*bytes)).collect()
}

/// Loads the bundled files and lets every generic family mean them. Without this, a slanted letter of a
/// generic family stops the program on a machine that has no fonts. Call it before the first frame.
pub fn prepare() {
    load(files());
    let mut system = font_system().write().unwrap_or_else(PoisonError::into_inner);
    let fonts = system.raw().db_mut();
    fonts.set_sans_serif_family(FAMILY);
    fonts.set_serif_family(FAMILY);
    fonts.set_monospace_family(FAMILY);
    fonts.set_cursive_family(FAMILY);
    fonts.set_fantasy_family(FAMILY);
}

/// Loads font files, each once: what a window does with the fonts of its settings.
pub fn load(files: Vec<Cow<'static, [u8]>>) {
    let mut system = font_system().write().unwrap_or_else(PoisonError::into_inner);
    for bytes in files {
        system.load_font(bytes);
    }
}

/// Forgets the fonts of the machine, so that a frame is the same on any other. Returns how many faces are left.
pub fn only_bundled() -> usize {
    prepare();
    let mut system = font_system().write().unwrap_or_else(PoisonError::into_inner);
    let fonts = system.raw().db_mut();
    let others: Vec<_> = fonts
        .faces()
        .filter(|face| !matches!(face.source, fontdb::Source::Binary(_)))
        .map(|face| face.id)
        .collect();
    for id in others {
        fonts.remove_face(id);
    }
    fonts.len()
}
