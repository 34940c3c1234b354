//! No meaning by color alone: states that differ in meaning differ in shape, on a screen without colors.
//!
//! | what | states | differ by |
//! | --- | --- | --- |
//! | chip | chosen or not | a bar below its words |
//! | row of a choice | chosen or not | a filled ring, bold words |
//! | box | ticked or not | a tick |
//! | stop on the plan | open, here, part done, done, skipped, unanswered | size, ring, fill, tick, stroke, mark |
//! | Shift | small, one capital, locked | capital letters on the keys; a bar below its arrow |
//! | signal word | DANGER, WARNING, CAUTION, NOTICE | the word itself |
//! | button | to press, or being saved | its words and a sign before them |

use super::*;
use crate::kiosk::headless::Frame;
use crate::kiosk::plan::{self, Floor, Orientation, Peg, PegState};
use crate::kiosk::theme::contrast::ratio;

/// Two shades of grey that stand out from each other like this are no mere tint (WCAG 2.2, 1.4.11).
const SHADE: f64 = 3.0;
/// Pixels that make a shape.
const SHAPE: usize = 24;

/// How many pixels have clearly another brightness.
fn apart(a: &Frame, b: &Frame) -> usize {
    let of = |p: &[u8]| iced::Color::from_rgb8(p[0], p[1], p[2]);
    let pairs = a.rgba.chunks_exact(4).zip(b.rgba.chunks_exact(4));
    pairs.filter(|(a, b)| a != b && ratio(of(a), of(b)) >= SHADE).count()
}

/// What makes a part.
type Part = std::rc::Rc<dyn Fn(&Look) -> Element<'static, ()>>;

fn alone((look, part): &(Look, Part)) -> Element<'_, ()> {
    let ground = look.colors().leaf;
    container(part(look))
        .width(iced::Fill)
        .height(iced::Fill)
        .style(move |_| style::flat(ground, ground))
        .into()
}

/// A part alone on a page of one theme.
fn drawn(theme: Theme, part: impl Fn(&Look) -> Element<'static, ()> + 'static) -> Frame {
    fonts::only_bundled();
    let size = Size::new(400.0, 300.0);
    let look = Look { scale: 1.0, ..Look::new(theme, TextSize::Usual, size, 1.0) };
    let part: Part = std::rc::Rc::new(part);
    let boot = move || (look, std::rc::Rc::clone(&part));
    let program = iced::application(boot, |_: &mut (Look, Part), (): ()| (), alone)
        .theme(move |_: &(Look, Part)| style::toolkit(theme))
        .default_font(fonts::REGULAR);
    Driver::open(&program, (400, 300)).unwrap().render()
}

fn all_differ(what: &str, frames: &[(Theme, Vec<(String, Frame)>)]) {
    for (theme, frames) in frames {
        for (index, (one, a)) in frames.iter().enumerate() {
            for (other, b) in &frames[index + 1..] {
                let apart = apart(a, b);
                assert!(apart >= SHAPE, "{what} in {theme:?}: {one} and {other} differ in {apart} pixels");
            }
        }
    }
}

fn each<T: std::fmt::Debug + Copy + 'static>(
    what: &str,
    states: &[T],
    part: fn(&Look, T) -> Element<'static, ()>,
) {
    let frames: Vec<_> = Theme::ALL
        .into_iter()
        .map(|theme| {
            let of = |state: T| (format!("{state:?}"), drawn(theme, move |look| part(look, state)));
            (theme, states.iter().map(|state| of(*state)).collect())
        })
        .collect();
    all_differ(what, &frames);
}

#[test]
fn states_of_choices_differ_without_colors() {
    each("a chip", &[false, true], |look, chosen| choices(look, [Choice::new("Right", chosen, ())]));
    each("a row", &[false, true], |look, chosen| radio_row(look, Choice::new("Right", chosen, ())));
    each("a box", &[false, true], |look, ticked| checkbox(look, ticked, body(look, "I agree"), ()));
    each("a panel", &[false, true], |look, chosen| {
        let words = body(look, "Driver 1");
        if chosen {
            radio_row(look, Choice::new("Driver 1", true, ()))
        } else {
            press_panel(look, Edge::Press, words, ())
        }
    });
    each("a button", &[false, true], |look, saved| {
        if saved { saving(look, "Saving").into() } else { primary(look, "Go on", ()).into() }
    });
}

#[test]
fn signal_words_and_shift_differ_without_colors() {
    let all = [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice];
    each("a signal word", &all, |look, signal| {
        let word = format!("{signal:?}").to_uppercase();
        signal_badge(look, signal, word)
    });
    each("Shift", &[Layer::Small, Layer::Capital, Layer::Lock], |look, layer| {
        keyboard(look, Board { layer, ..Board::default() }, "Done", |_| ())
    });
}

/// Every state of a stop against every other, in the same place.
#[test]
fn states_of_stops_differ_without_colors() {
    let states = gallery::STATES;
    each("a stop", &states, |look, state: PegState| {
        let shape: &'static plan::PlanShape = Box::leak(Box::new(gallery::wren()));
        let pegs: &'static [Peg] =
            Box::leak(Box::new([Peg { number: 7, at: (150.0, 40.0), inside: false, state }]));
        plan::view(look, shape, pegs, Orientation::NoseUp, Floor::Outside).into()
    });
}

/// Two tints of one shape are told as what they are.
#[test]
fn a_mere_tint_is_no_difference() {
    let flat = |tint: bool| {
        drawn(Theme::Paper, move |look| {
            let color = if tint { look.colors().tint } else { look.colors().leaf };
            container(body(look, "Right")).padding(20).style(move |_| style::flat(color, color)).into()
        })
    };
    assert!(apart(&flat(false), &flat(true)) < SHAPE);
}
