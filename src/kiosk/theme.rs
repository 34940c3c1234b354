//! How the kiosk looks: palettes, measures, letters. The only place with a raw color or a raw size.
//!
//! All measures are given at a scale of 1, where the short side of the window is 800 px, and go through
//! [`Look`], which is made anew from the size of the window at every layout. The toolkit's own scale factor
//! is left alone: its resize events arrive already divided by it, so a factor that follows the size could
//! run one event behind.

pub mod contrast;
pub mod fonts;
pub mod palette;
pub mod style;

pub use palette::{Palette, Theme};

use iced::{Color, Font, Size};

/// The short side, in logical pixels, at which every measure is drawn as it is written.
pub const REFERENCE_SIDE: f32 = 800.0;

/// Steps of the one spacing scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gap {
    /// 4 px: between a label and what it labels.
    Tiny,
    /// 8 px: between lines that belong together.
    Small,
    /// 12 px: between neighbors in a row.
    Medium,
    /// 16 px: inside a panel.
    Large,
    /// 24 px: the edge of a page, between its parts.
    Wide,
    /// 32 px: before a new thought.
    Huge,
}

/// The roles that text plays, each with one size and one weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Type {
    /// The signal word of a caution page: 64 px bold.
    Signal,
    /// The title of a page: 38 px bold.
    Title,
    /// What is dangerous, on a caution page: 34 px bold.
    Hazard,
    /// A computed number: 34 px bold.
    Figure,
    /// What to do, on a caution page: 26 px.
    Lead,
    /// The title of a part: 24 px bold.
    Section,
    /// Running text: 22 px.
    Body,
    /// Running text that stands out, and buttons: 22 px bold.
    Strong,
    /// Side remarks, chips: 20 px.
    Small,
    /// Labels above a part, signal words in a list: 20 px bold.
    Label,
}

/// How large the reader wants the text, on top of the scale of the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum TextSize {
    /// As written.
    #[default]
    Usual,
    /// A fifth larger: also where a renter's page starts.
    Large,
    /// Two fifths larger.
    Largest,
}

impl TextSize {
    /// All of them, from small to large.
    pub const ALL: [Self; 3] = [Self::Usual, Self::Large, Self::Largest];

    /// The factor on every text size.
    #[must_use]
    pub const fn factor(self) -> f32 {
        match self {
            Self::Usual => 1.0,
            Self::Large => 1.2,
            Self::Largest => 1.4,
        }
    }

    /// Its name, as on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Usual => "usual",
            Self::Large => "large",
            Self::Largest => "largest",
        }
    }

    /// The next size; after the largest comes the usual one again.
    #[must_use]
    pub const fn next(self) -> Self {
        match self {
            Self::Usual => Self::Large,
            Self::Large => Self::Largest,
            Self::Largest => Self::Usual,
        }
    }

    /// One size up, as far as there is one.
    #[must_use]
    pub const fn larger(self) -> Self {
        match self {
            Self::Usual => Self::Large,
            Self::Large | Self::Largest => Self::Largest,
        }
    }
}

/// The hand that presses: the other one holds the tablet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one: feet of pages and what stands beside them change sides.
    Left,
}

/// How the people at this tablet want it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wishes {
    /// Palette.
    pub theme: Theme,
    /// Text size.
    pub text: TextSize,
    /// The tablet's own factor on every measure; 0 stands for none.
    pub scale: f32,
    /// Which hand presses.
    pub hand: Hand,
    /// Whether nothing moves by itself.
    pub still: bool,
}

/// Everything a view needs to know about how to draw. Small, so it is copied about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// Which palette.
    pub theme: Theme,
    /// How large the reader wants the text.
    pub text: TextSize,
    /// Measures on the screen over measures as written.
    pub scale: f32,
    /// The size of the window in logical pixels.
    pub window: Size,
    /// Which hand presses.
    pub hand: Hand,
    /// Whether nothing moves by itself: what would, goes in steps.
    pub still: bool,
}

impl Look {
    /// A look for a window of this size. `setting` is the tablet's own factor, 1 where none is set; both are
    /// kept within bounds that can still be used.
    #[must_use]
    pub fn new(theme: Theme, text: TextSize, window: Size, setting: f32) -> Self {
        let side = window.width.min(window.height).max(1.0);
        let setting = if setting.is_finite() { setting.clamp(0.5, 2.0) } else { 1.0 };
        let scale = (side / REFERENCE_SIDE * setting).clamp(0.4, 6.0);
        Self { theme, text, scale, window, hand: Hand::Right, still: false }
    }

    /// A look as it is wished for.
    #[must_use]
    pub fn wished(wishes: Wishes, window: Size) -> Self {
        let setting = if wishes.scale > 0.0 { wishes.scale } else { 1.0 };
        let Wishes { hand, still, .. } = wishes;
        Self { hand, still, ..Self::new(wishes.theme, wishes.text, window, setting) }
    }

    /// The same look with text one size up: pages of the renter start there.
    #[must_use]
    pub fn larger(self) -> Self {
        Self { text: self.text.larger(), ..self }
    }

    /// A measure as written, on this screen.
    #[must_use]
    pub fn px(&self, written: f32) -> f32 {
        written * self.scale
    }

    /// A step of the spacing scale, on this screen.
    #[must_use]
    pub fn gap(&self, gap: Gap) -> f32 {
        self.px(match gap {
            Gap::Tiny => 4.0,
            Gap::Small => 8.0,
            Gap::Medium => 12.0,
            Gap::Large => 16.0,
            Gap::Wide => 24.0,
            Gap::Huge => 32.0,
        })
    }

    /// The size of a role's letters, on this screen, as large as the reader wants it.
    #[must_use]
    pub fn size(&self, role: Type) -> f32 {
        let written = match role {
            Type::Signal => 64.0,
            Type::Title => 38.0,
            Type::Hazard | Type::Figure => 34.0,
            Type::Lead => 26.0,
            Type::Section => 24.0,
            Type::Body | Type::Strong => 22.0,
            Type::Small | Type::Label => 20.0,
        };
        // Large words need no help, and would push the rest off the page.
        let wanted = match role {
            Type::Signal => 1.0,
            Type::Title | Type::Hazard | Type::Figure => (1.0 + self.text.factor()) / 2.0,
            _ => self.text.factor(),
        };
        self.px(written * wanted)
    }

    /// The font of a role.
    #[must_use]
    pub const fn font(role: Type) -> Font {
        match role {
            Type::Body | Type::Small | Type::Lead => fonts::REGULAR,
            _ => fonts::BOLD,
        }
    }

    /// The colors.
    #[must_use]
    pub const fn colors(&self) -> &'static Palette {
        self.theme.palette()
    }

    /// The color of running text.
    #[must_use]
    pub const fn ink(&self) -> Color {
        self.colors().ink
    }

    /// The width of lines: 2 px, and 3 px in daylight.
    #[must_use]
    pub fn line(&self) -> f32 {
        self.px(match self.theme {
            Theme::Daylight => 3.0,
            Theme::Paper | Theme::Dusk => 2.0,
        })
    }

    /// The radius of corners: 6 px.
    #[must_use]
    pub fn radius(&self) -> f32 {
        self.px(6.0)
    }

    /// The height of what the walk needs to press: 64 px.
    #[must_use]
    pub fn target(&self) -> f32 {
        self.px(64.0)
    }

    /// The height of the smallest thing that can be pressed: 44 px.
    #[must_use]
    pub fn small_target(&self) -> f32 {
        self.px(44.0)
    }

    /// Whether the window is higher than wide.
    #[must_use]
    pub fn portrait(&self) -> bool {
        self.window.height > self.window.width
    }

    /// The toolkit's theme, for its own widgets.
    #[must_use]
    pub fn toolkit(&self) -> iced::Theme {
        style::toolkit(self.theme)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_follows_the_short_side() {
        let at = |w, h| Look::new(Theme::Paper, TextSize::Usual, Size::new(w, h), 1.0).scale;
        assert!((at(1280.0, 800.0) - 1.0).abs() < 1e-6);
        assert!((at(800.0, 1280.0) - 1.0).abs() < 1e-6);
        assert!((at(1920.0, 1200.0) - 1.5).abs() < 1e-6);
    }

    #[test]
    fn no_window_or_setting_makes_a_useless_scale() {
        for setting in [f32::NAN, f32::INFINITY, -3.0, 0.0, 1e9] {
            for side in [0.0, 1.0, 240.0, 1e6] {
                let look = Look::new(Theme::Dusk, TextSize::Largest, Size::new(side, side), setting);
                assert!((0.4..=6.0).contains(&look.scale), "{side} {setting}");
            }
        }
    }

    #[test]
    fn a_size_up_never_goes_past_the_largest() {
        assert_eq!(TextSize::Largest.larger(), TextSize::Largest);
        assert_eq!(TextSize::Usual.next().next().next(), TextSize::Usual);
    }
}
