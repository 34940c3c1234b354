//! Lines, marks and grid of a plot.

use iced::widget::canvas::{Frame, LineCap, LineDash, LineJoin, Path, Stroke};
use iced::{Color, Point, Size};

use crate::figures::plot::{Line, Mark, Plot, Spot, dashes};
use crate::kiosk::theme::Look;

/// A spot of the square on a drawing that keeps `edge` free on every side.
fn at(size: Size, edge: f32, spot: Spot) -> Point {
    let (width, height) = (size.width - 2.0 * edge, size.height - 2.0 * edge);
    Point::new(edge + spot.x as f32 * width, edge + (1.0 - spot.y as f32) * height)
}

fn color(look: &Look, line: &Line) -> Color {
    let colors = look.colors();
    if line.first { colors.accent } else { colors.soft }
}

fn width(look: &Look, line: &Line) -> f32 {
    if line.first { look.px(6.0) } else { look.line() * 1.2 }
}

/// The square: days, axes, lines and the marks at their ends, the first end on top.
pub(super) fn lines(look: &Look, frame: &mut Frame, plot: &Plot, edge: f32) {
    let (size, colors) = (frame.size(), look.colors());
    if size.width <= 2.0 * edge || size.height <= 2.0 * edge {
        return;
    }
    let spot = |x: f64, y: f64| at(size, edge, Spot { x, y });
    let thin = Stroke::default().with_color(colors.line).with_width(look.px(1.0));
    if let Some(line) = plot.first() {
        let ground = Path::new(|path| {
            path.move_to(spot(0.0, 0.0));
            for point in &line.way {
                path.line_to(at(size, edge, *point));
            }
            path.line_to(spot(line.end.x, 0.0));
            path.close();
        });
        frame.fill(&ground, colors.tint);
    }
    for x in plot.grid.iter().copied().chain([1.0]) {
        frame.stroke(&Path::line(spot(x, 0.0), spot(x, 1.0)), thin);
    }
    frame.stroke(&Path::line(spot(0.0, 1.0), spot(1.0, 1.0)), thin);
    let axis = Stroke::default().with_color(colors.edge).with_width(look.line());
    frame.stroke(&Path::line(spot(0.0, 1.0), spot(0.0, 0.0)), axis);
    frame.stroke(&Path::line(spot(0.0, 0.0), spot(1.0, 0.0)), axis);
    let others = plot.lines.iter().filter(|line| !line.first);
    for line in others.chain(plot.first()) {
        let points: Vec<Point> = line.way.iter().map(|point| at(size, edge, *point)).collect();
        stroke(look, frame, line, &points);
        mark(look, frame, line, at(size, edge, line.end), edge);
    }
}

/// Thin ways from the ends of lines that last to their names.
pub(super) fn ways(look: &Look, frame: &mut Frame, plot: &Plot, edge: f32) {
    let size = frame.size();
    let stroke = Stroke::default().with_color(look.colors().edge).with_width(look.px(1.0));
    for label in &plot.labels {
        let Some(line) = plot.lines.get(label.line).filter(|line| line.day.is_none()) else { continue };
        let from = at(size, edge, Spot { x: 0.0, y: line.end.y });
        let to = at(size, edge, Spot { x: 1.0, y: label.y });
        frame.stroke(
            &Path::line(Point::new(0.0, from.y), Point::new(size.width - look.px(4.0), to.y)),
            stroke,
        );
    }
}

/// A short piece of a line with its mark.
pub(super) fn sample(look: &Look, frame: &mut Frame, line: &Line, edge: f32) {
    let middle = frame.height() / 2.0;
    let end = Point::new(frame.width() - edge, middle);
    stroke(look, frame, line, &[Point::new(0.0, middle), end]);
    mark(look, frame, line, end, edge);
}

fn stroke(look: &Look, frame: &mut Frame, line: &Line, points: &[Point]) {
    let width = width(look, line);
    // A heavy line keeps about the rhythm of a thin one.
    let unit = width.min(look.line() * 1.8);
    let lengths: Vec<f32> = dashes(line.resource).iter().map(|part| part * unit).collect();
    let path = Path::new(|path| {
        let mut points = points.iter();
        if let Some(first) = points.next() {
            path.move_to(*first);
        }
        for point in points {
            path.line_to(*point);
        }
    });
    let stroke = Stroke {
        line_join: LineJoin::Round,
        line_cap: LineCap::Butt,
        line_dash: LineDash { segments: &lengths, offset: 0 },
        ..Stroke::default().with_color(color(look, line)).with_width(width)
    };
    frame.stroke(&path, stroke);
}

fn mark(look: &Look, frame: &mut Frame, line: &Line, middle: Point, half: f32) {
    let (colors, color) = (look.colors(), color(look, line));
    let half = half * if line.first { 1.0 } else { 0.8 };
    match Mark::of(line.resource) {
        Mark::Disc => frame.fill(&Path::circle(middle, half), color),
        Mark::Ring => {
            let width = look.px(3.0);
            let ring = Path::circle(middle, half - width / 2.0);
            frame.fill(&ring, colors.leaf);
            frame.stroke(&ring, Stroke::default().with_color(color).with_width(width));
        }
        shape => {
            let corners: Vec<Point> = shape
                .corners()
                .iter()
                .map(|(x, y)| Point::new(middle.x + *x as f32 * half, middle.y + *y as f32 * half))
                .collect();
            let path = Path::new(|path| {
                let mut corners = corners.iter();
                if let Some(first) = corners.next() {
                    path.move_to(*first);
                }
                for corner in corners {
                    path.line_to(*corner);
                }
                path.close();
            });
            frame.fill(&path, color);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kiosk::theme::Theme;
    use crate::kiosk::theme::contrast::ratio;

    /// WCAG 2.1, 1.4.11: what is needed to understand a drawing stands out at 3:1.
    #[test]
    fn lines_marks_and_axes_stand_out_from_every_ground() {
        for theme in Theme::ALL {
            let colors = theme.palette();
            for ground in [colors.paper, colors.leaf, colors.tint] {
                for line in [colors.accent, colors.soft, colors.edge] {
                    assert!(ratio(line, ground) >= 3.0, "{theme:?}");
                }
            }
            assert!(ratio(colors.on_accent, colors.accent) >= 7.0, "{theme:?}");
        }
    }

    #[test]
    fn the_square_keeps_its_edge_free() {
        let (size, edge) = (Size::new(218.0, 118.0), 9.0);
        assert_eq!(at(size, edge, Spot { x: 0.0, y: 1.0 }), Point::new(9.0, 9.0));
        assert_eq!(at(size, edge, Spot { x: 1.0, y: 0.0 }), Point::new(209.0, 109.0));
        assert_eq!(at(size, edge, Spot { x: 0.5, y: 0.5 }), Point::new(109.0, 59.0));
    }
}
