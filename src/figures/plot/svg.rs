//! A plot as a drawing for documents: plain SVG in one color, that of the text around it.

use std::fmt::Write as _;

use super::{Line, Mark, Plot, Spot, Texts, dashes};

/// Size of the drawing, and where the square lies in it.
const WIDTH: f64 = 720.0;
const HEIGHT: f64 = 320.0;
const LEFT: f64 = 84.0;
const TOP: f64 = 24.0;
const ACROSS: f64 = 380.0;
const DOWN: f64 = 250.0;
/// Where names stand.
const NAMES: f64 = LEFT + ACROSS + 46.0;
/// Half the side of a mark.
const MARK: f64 = 6.0;

/// The drawing. Names no font but a generic one, and nothing outside of itself.
#[must_use]
pub fn svg(plot: &Plot, texts: &Texts) -> String {
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" \
         font-family=\"sans-serif\" font-size=\"14\" fill=\"currentColor\" stroke=\"none\">\n<title>{}</title>\n",
        escaped(&texts.title)
    );
    frame(&mut out, plot, texts);
    for (index, line) in plot.lines.iter().enumerate() {
        drawn(&mut out, line);
        if let Some(label) = plot.labels.iter().find(|label| label.line == index) {
            let name = texts.names.get(index).map_or("", String::as_str);
            let end = texts.ends.get(index).map_or("", String::as_str);
            named(&mut out, line, label.y, name, end);
        }
    }
    if let (Some(line), Some(day)) = (plot.first(), &texts.first) {
        let (x, y) = at(line.end);
        let anchor = if line.end.x < 0.2 {
            "start"
        } else if line.end.x > 0.8 {
            "end"
        } else {
            "middle"
        };
        put(&mut out, (x, y - 14.0), anchor, true, day);
    }
    out.push_str("</svg>\n");
    out
}

/// A place of the square in the drawing.
fn at(spot: Spot) -> (f64, f64) {
    (LEFT + spot.x * ACROSS, TOP + (1.0 - spot.y) * DOWN)
}

fn frame(out: &mut String, plot: &Plot, texts: &Texts) {
    let (left, right, floor) = (LEFT, LEFT + ACROSS, TOP + DOWN);
    for x in &plot.grid {
        let x = LEFT + x * ACROSS;
        rule(out, (x, TOP), (x, floor), 0.5);
    }
    rule(out, (left, TOP), (right, TOP), 0.5);
    rule(out, (left, floor), (right, floor), 1.5);
    rule(out, (left, TOP), (left, floor), 1.5);
    put(out, (left - 8.0, TOP + 5.0), "end", false, &texts.all);
    put(out, (left - 8.0, floor + 5.0), "end", false, &texts.none);
    for (tick, name) in plot.ticks.iter().zip(&texts.days) {
        let middle = LEFT + (tick.from + tick.to) / 2.0 * ACROSS;
        put(out, (middle, floor + 22.0), "middle", false, name);
    }
}

fn rule(out: &mut String, from: (f64, f64), to: (f64, f64), width: f64) {
    let ((x1, y1), (x2, y2)) = (from, to);
    // Writing to a string cannot fail.
    let _ = writeln!(
        out,
        "<path d=\"M{x1} {y1} L{x2} {y2}\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"{width}\"/>"
    );
}

fn put(out: &mut String, (x, y): (f64, f64), anchor: &str, bold: bool, text: &str) {
    let weight = if bold { " font-weight=\"bold\"" } else { "" };
    let text = escaped(text);
    let _ = writeln!(out, "<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\"{weight}>{text}</text>");
}

/// A line and the mark at its end.
fn drawn(out: &mut String, line: &Line) {
    let width = if line.first { 3.5 } else { 1.5 };
    let way: Vec<String> = line.way.iter().map(|spot| at(*spot)).map(|(x, y)| format!("{x},{y}")).collect();
    let dash: Vec<String> =
        dashes(line.resource).iter().map(|d| (f64::from(*d) * width).to_string()).collect();
    let dash =
        if dash.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{}\"", dash.join(" ")) };
    let _ = writeln!(
        out,
        "<polyline class=\"line {}\" points=\"{}\" fill=\"none\" stroke=\"currentColor\" \
         stroke-width=\"{width}\" stroke-linejoin=\"round\"{dash}/>",
        line.resource.word(),
        way.join(" ")
    );
    mark(out, line, at(line.end), "end");
}

fn mark(out: &mut String, line: &Line, (x, y): (f64, f64), class: &str) {
    let shape = Mark::of(line.resource);
    let body = match shape {
        Mark::Disc => format!("<circle r=\"{MARK}\"/>"),
        Mark::Ring => {
            format!("<circle r=\"{}\" fill=\"#fff\" stroke=\"currentColor\" stroke-width=\"2\"/>", MARK - 1.0)
        }
        _ => {
            let points: Vec<String> =
                shape.corners().iter().map(|(dx, dy)| format!("{},{}", dx * MARK, dy * MARK)).collect();
            format!("<polygon points=\"{}\"/>", points.join(" "))
        }
    };
    let resource = line.resource.word();
    let _ = writeln!(out, "<g class=\"{class} {resource}\" transform=\"translate({x} {y})\">{body}</g>");
}

/// The name of a line beside the square, with its mark, and a thin line to where it ends with the trip.
fn named(out: &mut String, line: &Line, y: f64, name: &str, end: &str) {
    let (_, y) = at(Spot { x: 1.0, y });
    if line.end.x >= 1.0 {
        let (x, from) = at(line.end);
        rule(out, (x + MARK + 2.0, from), (NAMES - 16.0, y), 0.5);
    }
    mark(out, line, (NAMES - 8.0, y), "sample");
    put(out, (NAMES + 6.0, y + 5.0), "start", line.first, &format!("{name}: {end}"));
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // XML has no other control letters.
            control if control.is_control() => out.push(' '),
            other => out.push(other),
        }
    }
    out
}
