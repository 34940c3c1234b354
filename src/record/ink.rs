//! Handwriting as an SVG picture: shape only, no time and no pressure.
//!
//! Every number is whole or a half, so that the same ink gives the same bytes on every machine.

use std::fmt::Write as _;

use crate::walk::Ink;

/// Width of the pen in the units of the field, which is 1000 wide.
const PEN: u8 = 6;

/// The picture: one path for each stroke. Between the middles of two neighbors runs a quadratic curve whose
/// control point is the point between them, so that corners of the sampling do not show.
#[must_use]
pub fn svg(ink: &Ink) -> String {
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1000 {}\">\n\
         <g fill=\"none\" stroke=\"#000\" stroke-width=\"{PEN}\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n",
        ink.height
    );
    for stroke in ink.strokes.iter().filter(|stroke| !stroke.is_empty()) {
        svg.push_str("<path d=\"");
        path(&mut svg, stroke);
        svg.push_str("\"/>\n");
    }
    svg.push_str("</g>\n</svg>\n");
    svg
}

fn path(svg: &mut String, stroke: &[(i16, i16)]) {
    let (Some(first), Some(last)) = (stroke.first(), stroke.last()) else { return };
    let _ = write!(svg, "M{} {}", first.0, first.1);
    for pair in stroke.windows(2).skip(1) {
        if let [control, next] = pair {
            let _ = write!(
                svg,
                "Q{} {} {} {}",
                control.0,
                control.1,
                Half::between(control.0, next.0),
                Half::between(control.1, next.1)
            );
        }
    }
    // A stroke of one point is a dot: a line of no length with a round cap.
    let _ = write!(svg, "L{} {}", last.0, last.1);
}

/// A number of halves.
struct Half(i32);

impl Half {
    fn between(a: i16, b: i16) -> Self {
        Self(i32::from(a) + i32::from(b))
    }
}

impl std::fmt::Display for Half {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let halves = self.0.unsigned_abs();
        write!(f, "{sign}{}{}", halves / 2, if halves.is_multiple_of(2) { "" } else { ".5" })
    }
}

/// Handwriting read back from a picture that [`svg`] wrote; `None` for any other.
#[must_use]
pub fn read(picture: &str) -> Option<Ink> {
    let (_, rest) = picture.split_once("viewBox=\"0 0 1000 ")?;
    let height = rest.split_once('"')?.0.parse().ok()?;
    let paths = rest.lines().filter_map(|line| line.strip_prefix("<path d=\"")?.strip_suffix("\"/>"));
    let strokes = paths.map(points).collect::<Option<_>>()?;
    let ink = Ink { height, strokes };
    // Only what is written the same way again was read rightly.
    (svg(&ink) == picture).then_some(ink)
}

/// The points of a stroke: where it begins, what its curves are drawn to, where it ends.
fn points(path: &str) -> Option<Vec<(i16, i16)>> {
    let point = |text: &str| {
        let mut numbers = text.split(' ').map(str::parse::<i16>);
        Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
    };
    let (drawn, last) = path.strip_prefix('M')?.split_once('L')?;
    let mut parts = drawn.split('Q');
    let mut stroke = vec![point(parts.next()?)?];
    for part in parts {
        stroke.push(point(part)?);
    }
    let last = point(last)?;
    // A dot ends where it begins.
    if stroke.len() > 1 || stroke.first() != Some(&last) {
        stroke.push(last);
    }
    Some(stroke)
}

#[cfg(test)]
mod tests;
