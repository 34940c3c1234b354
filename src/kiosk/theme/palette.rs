//! The three palettes and the safety colors, as data.

use iced::Color;

/// The palettes a page can wear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theme {
    /// Warm paper and dark ink.
    #[default]
    Paper,
    /// White, black and thick edges, for the sun.
    Daylight,
    /// Dark, for evenings.
    Dusk,
}

impl Theme {
    /// All of them, in the order in which a control goes through them.
    pub const ALL: [Self; 3] = [Self::Paper, Self::Daylight, Self::Dusk];

    /// Its name, as settings hold it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Paper => "paper",
            Self::Daylight => "daylight",
            Self::Dusk => "dusk",
        }
    }

    /// Its colors.
    #[must_use]
    pub const fn palette(self) -> &'static Palette {
        match self {
            Self::Paper => &PAPER,
            Self::Daylight => &DAYLIGHT,
            Self::Dusk => &DUSK,
        }
    }
}

/// The colors of one theme. Every one of `ink` and `soft` is read on every ground at 7:1 or better, and every
/// edge of something tappable stands out from it at 3:1 or better.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Palette {
    /// Ground of a page.
    pub paper: Color,
    /// Ground of a panel.
    pub leaf: Color,
    /// Ground of what is drawn: furniture, cab, shade.
    pub wash: Color,
    /// Ground of what is chosen.
    pub tint: Color,
    /// Text.
    pub ink: Color,
    /// Text that steps back.
    pub soft: Color,
    /// Decoration only.
    pub line: Color,
    /// Edge of anything that can be pressed.
    pub edge: Color,
    /// The one accent.
    pub accent: Color,
    /// Text on the accent.
    pub on_accent: Color,
    /// Fills half of what is half done; ink is read on it.
    pub half: Color,
    /// What dims a page below a dialog.
    pub shade: Color,
}

/// Two colors that belong together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    /// The ground.
    pub ground: Color,
    /// What is written or drawn on it.
    pub on: Color,
}

const fn rgb(hex: u32) -> Color {
    Color::from_rgb8((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

const fn shade(hex: u32, alpha: f32) -> Color {
    let Color { r, g, b, .. } = rgb(hex);
    Color { r, g, b, a: alpha }
}

/// A code to photograph: black on white in every theme.
pub const CODE: Pair = Pair { ground: rgb(0x00FF_FFFF), on: rgb(0x0000_0000) };

const PAPER: Palette = Palette {
    paper: rgb(0x00F4_EEDF),
    leaf: rgb(0x00FC_F9F1),
    wash: rgb(0x00E8_E0CC),
    tint: rgb(0x00DC_E7DF),
    ink: rgb(0x001F_2B2A),
    soft: rgb(0x003B_4744),
    line: rgb(0x00CF_C5AC),
    edge: rgb(0x006F_6A58),
    accent: rgb(0x0018_5247),
    on_accent: rgb(0x00FC_F9F1),
    half: rgb(0x0092_8C77),
    shade: shade(0x001F_2B2A, 0.55),
};

const DAYLIGHT: Palette = Palette {
    paper: rgb(0x00FF_FFFF),
    leaf: rgb(0x00FF_FFFF),
    wash: rgb(0x00F0_EDE4),
    tint: rgb(0x00D9_F2E6),
    ink: rgb(0x0000_0000),
    soft: rgb(0x0000_0000),
    line: rgb(0x0000_0000),
    edge: rgb(0x0000_0000),
    accent: rgb(0x0000_3D31),
    on_accent: rgb(0x00FF_FFFF),
    half: rgb(0x008C_8C8C),
    shade: shade(0x0000_0000, 0.6),
};

const DUSK: Palette = Palette {
    paper: rgb(0x0014_1B1A),
    leaf: rgb(0x001D_2624),
    wash: rgb(0x002A_342F),
    tint: rgb(0x001F_3D35),
    ink: rgb(0x00F4_EDDC),
    soft: rgb(0x00D3_CDBC),
    line: rgb(0x0046_524D),
    edge: rgb(0x0098_978A),
    accent: rgb(0x008F_D6BF),
    on_accent: rgb(0x000C_1B17),
    half: rgb(0x006D_716A),
    shade: shade(0x0000_0000, 0.65),
};

/// sRGB approximations of the safety colors of ANSI Z535.1, the same in every theme. White on red and on blue
/// stays below 7:1, so signal words are never set smaller than large text (14 pt bold), for which 4.5:1 does.
pub mod safety {
    use super::{Pair, rgb};

    /// DANGER: white on safety red.
    pub const RED: Pair = Pair { ground: rgb(0x00C8_102E), on: rgb(0x00FF_FFFF) };
    /// WARNING: black on safety orange.
    pub const ORANGE: Pair = Pair { ground: rgb(0x00FF_8200), on: rgb(0x0000_0000) };
    /// CAUTION, and the hazard triangles: black on safety yellow.
    pub const YELLOW: Pair = Pair { ground: rgb(0x00FF_D100), on: rgb(0x0000_0000) };
    /// NOTICE: white on safety blue.
    pub const BLUE: Pair = Pair { ground: rgb(0x0000_57B8), on: rgb(0x00FF_FFFF) };
}

#[cfg(test)]
mod tests {
    use super::super::contrast::ratio;
    use super::*;

    fn grounds(p: &Palette) -> [Color; 4] {
        [p.paper, p.leaf, p.wash, p.tint]
    }

    #[test]
    fn text_stands_out_at_seven_to_one_on_every_ground() {
        for theme in Theme::ALL {
            let p = theme.palette();
            for ground in grounds(p) {
                for text in [p.ink, p.soft] {
                    let r = ratio(text, ground);
                    assert!(r >= 7.0, "{theme:?}: {text:?} on {ground:?} is {r}");
                }
            }
            let r = ratio(p.on_accent, p.accent);
            assert!(r >= 7.0, "{theme:?}: on accent {r}");
        }
    }

    #[test]
    fn edges_of_what_can_be_pressed_stand_out_at_three_to_one() {
        for theme in Theme::ALL {
            let p = theme.palette();
            for ground in grounds(p) {
                for edge in [p.edge, p.accent, p.ink] {
                    let r = ratio(edge, ground);
                    assert!(r >= 3.0, "{theme:?}: {edge:?} on {ground:?} is {r}");
                }
            }
        }
    }

    /// Numbers of pegs are large text (bold, 19 px and up): 4:1 lies between AA and AAA for it.
    #[test]
    fn what_is_half_done_shows_and_its_number_is_read() {
        for theme in Theme::ALL {
            let p = theme.palette();
            assert!(ratio(p.half, p.leaf) >= 3.0, "{theme:?}: {}", ratio(p.half, p.leaf));
            assert!(ratio(p.ink, p.half) >= 4.0, "{theme:?}: {}", ratio(p.ink, p.half));
        }
    }

    /// Ratios as computed in `facts.md` section 12; large bold text needs 4.5:1 for AAA (WCAG 2.1, 1.4.6).
    #[test]
    fn signal_words_can_be_read() {
        for (pair, known) in
            [(safety::RED, 5.88), (safety::ORANGE, 8.45), (safety::YELLOW, 14.37), (safety::BLUE, 6.87)]
        {
            let r = ratio(pair.on, pair.ground);
            assert!((r - known).abs() < 0.005, "{r} is not {known}");
            assert!(r >= 4.5);
        }
    }
}
