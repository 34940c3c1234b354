//! Contrast of two colors as WCAG 2.1 defines it.

use iced::Color;

/// Contrast ratio of two opaque colors, 1 to 21; never rounded, as understanding 1.4.3 asks.
#[must_use]
pub fn ratio(a: Color, b: Color) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Relative luminance, 0 to 1 (w3c.github.io/wcag/guidelines/relative-luminance.html).
#[must_use]
pub fn luminance(color: Color) -> f64 {
    let [r, g, b] = [color.r, color.g, color.b].map(|channel| linear(f64::from(channel)));
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

fn linear(channel: f64) -> f64 {
    if channel <= 0.04045 { channel / 12.92 } else { ((channel + 0.055) / 1.055).powf(2.4) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(a: u32, b: u32) -> f64 {
        let color = |hex: u32| Color::from_rgb8((hex >> 16) as u8, (hex >> 8) as u8, hex as u8);
        ratio(color(a), color(b))
    }

    /// Pairs published in the W3C ACT rule afw4f7 (text contrast), to four digits by `wcag-contrast-ratio` 0.9.
    #[test]
    fn published_pairs_agree() {
        for (a, b, known) in [
            (0x0033_3333, 0x00FF_FFFF, 12.6347),
            (0x0000_0000, 0x0066_6666, 3.6574),
            (0x00AA_AAAA, 0x00FF_FFFF, 2.3231),
            (0x0077_7777, 0x00EE_EEEE, 3.8597),
            (0x0000_00EE, 0x00FF_FFFF, 9.3976),
            (0x0000_0000, 0x00FF_FFFF, 21.0),
            (0x0059_5959, 0x00FF_FFFF, 7.0047),
            (0x0094_9494, 0x00FF_FFFF, 3.0335),
        ] {
            assert!((of(a, b) - known).abs() < 1e-3, "{a:06X} on {b:06X}: {}", of(a, b));
        }
    }
}
