//! What holds on every page of a unit: the keyboard reaches everything and shows where it is, and what is drawn
//! stands out.
//!
//! Most pages of a walk are alike. Each page is asked whether all its targets can have the focus; the first page
//! of each kind, with about as many targets, is gone through key by key and looked at in every theme.

use std::any::Any;
use std::collections::BTreeSet;

use iced::advanced::widget::Id;
use iced::advanced::widget::operation::{Focusable, Operation};
use iced::keyboard::key::Named;
use iced::{Color, Rectangle, Size};

use super::{Kiosk, Manner, Page, TourFault, Visit, lead};
use crate::kiosk::headless::{Driver, Frame, Target, TargetKind};
use crate::kiosk::theme::contrast::ratio;
use crate::kiosk::theme::palette::safety;
use crate::kiosk::theme::{TextSize, Theme};
use crate::kiosk::ui::Pressable;
use crate::script::{Bundle, Scripts};

const SIZE: (u32, u32) = (1280, 800);
/// Sheets over the page of a step, which Escape closes.
const SHEETS: [&str; 7] = ["whole-walk", "question", "not-shown", "stop", "marks", "readings", "item"];

fn lot() -> std::sync::Arc<Scripts> {
    crate::kiosk::scripts(Bundle::demo()).unwrap()
}

fn manner(language: &str) -> Manner {
    Manner { size: SIZE, theme: Theme::Paper, text: TextSize::Usual, language: language.into() }
}

/// What kind of page it is: its screen, its part, and about how much can be pressed.
fn kind<P: Kiosk>(page: &Page, driver: &Driver<'_, P>, targets: usize) -> String {
    let screen = std::mem::discriminant(driver.state().screen());
    let part = page.part.split('-').next().unwrap_or_default();
    format!("{screen:?} {part} {}", targets / 3)
}

/// Everything that can be pressed or written in, each once; a field is told as a target by its frame too.
fn targets<P: Kiosk>(driver: &mut Driver<'_, P>) -> Vec<Target> {
    let mut found: Vec<Target> = Vec::new();
    for target in driver.targets() {
        match found.iter_mut().find(|t| t.bounds == target.bounds) {
            Some(same) => same.focused |= target.focused,
            None => found.push(target),
        }
    }
    found
}

/// Where everything is that can have the focus, while nothing is scrolled.
#[derive(Default)]
struct Focusables(Vec<Rectangle>);

impl Operation for Focusables {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn focusable(&mut self, _id: Option<&Id>, bounds: Rectangle, _state: &mut dyn Focusable) {
        self.0.push(bounds);
    }
}

/// Where discs are that can be pressed.
#[derive(Default)]
struct Discs(BTreeSet<[i32; 4]>);

impl Operation for Discs {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn custom(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        if state.downcast_ref::<Pressable>().is_some_and(|pressable| pressable.round) {
            self.0.insert(rounded(bounds));
        }
    }
}

fn rounded(b: Rectangle) -> [i32; 4] {
    [b.x, b.y, b.width, b.height].map(|v| v.round() as i32)
}

/// Goes through pages by keyboard.
#[derive(Default)]
struct ByKeys {
    kinds: BTreeSet<String>,
    pages: usize,
    rings: usize,
    faults: Vec<String>,
}

impl ByKeys {
    /// Tab visits each target once, brings it into view, and draws a ring on it.
    fn walk<P: Kiosk>(
        &mut self,
        page: &Page,
        driver: &mut Driver<'_, P>,
        count: usize,
    ) -> Result<(), TourFault> {
        let mut reached = BTreeSet::new();
        let mut before: Option<(usize, Rectangle, Frame)> = None;
        for step in 0..count {
            driver.key(Named::Tab)?;
            let now = targets(driver);
            let focused: Vec<usize> = (0..now.len()).filter(|at| now[*at].focused).collect();
            let [at] = focused[..] else {
                self.faults.push(format!("{}: {} targets have the focus", page.name(), focused.len()));
                return Ok(());
            };
            let target = &now[at];
            reached.insert(at);
            let sight = target.visible.unwrap_or_default();
            if sight.area() < target.bounds.area().min(20_000.0) * 0.9 {
                self.faults.push(format!(
                    "{}: the focus at {:?} is out of sight",
                    page.name(),
                    target.bounds
                ));
            }
            // Two renders in a row, now and then: the ring goes from one to the other.
            if step % 8 > 1 {
                before = None;
                continue;
            }
            let frame = driver.render();
            if let Some((was, bounds, old)) = before.take()
                && now.get(was).is_some_and(|t| t.bounds == bounds)
            {
                self.rings += 1;
                for (name, bounds) in [("left", bounds), ("got", sight)] {
                    let changed = differing(&old, &frame, bounds);
                    if changed < 60 {
                        let what = format!("what {name} the focus at {bounds:?} changed {changed} pixels");
                        self.faults.push(format!("{}: {what}", page.name()));
                    }
                }
            }
            before = Some((at, target.bounds, frame));
        }
        if reached.len() != count {
            let missed = count - reached.len();
            self.faults.push(format!("{}: Tab misses {missed} of {count} targets", page.name()));
        }
        Ok(())
    }
}

impl Visit for ByKeys {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        self.pages += 1;
        let found = targets(driver);
        let mut focusable = Focusables::default();
        driver.operate(&mut focusable);
        let pressed: BTreeSet<_> = found.iter().map(|t| rounded(t.bounds)).collect();
        let reached: BTreeSet<_> = focusable.0.iter().map(|b| rounded(*b)).collect();
        for bounds in pressed.symmetric_difference(&reached) {
            let what = if pressed.contains(bounds) { "cannot have the focus" } else { "cannot be pressed" };
            self.faults.push(format!("{}: what lies at {bounds:?} {what}", page.name()));
        }
        if self.kinds.insert(kind(page, driver, found.len())) {
            self.walk(page, driver, found.len())?;
            if SHEETS.contains(&page.part.as_str()) {
                let before = targets(driver).len();
                driver.key(Named::Escape)?;
                if targets(driver).len() == before {
                    self.faults.push(format!("{}: Escape closes nothing", page.name()));
                }
            }
            driver.forget();
        }
        Ok(())
    }
}

/// How many pixels of a part differ clearly.
fn differing(a: &Frame, b: &Frame, part: Rectangle) -> usize {
    let mut count = 0;
    for_pixels(a, part, |at| {
        let far = (0..3).any(|c| a.rgba[at + c].abs_diff(b.rgba[at + c]) > 24);
        count += usize::from(far);
    });
    count
}

fn for_pixels(frame: &Frame, part: Rectangle, mut with: impl FnMut(usize)) {
    let whole = Rectangle::with_size(Size::new(frame.width as f32, frame.height as f32));
    let Some(part) = part.intersection(&whole) else { return };
    for y in part.y as usize..(part.y + part.height) as usize {
        for x in part.x as usize..(part.x + part.width) as usize {
            with((y * frame.width as usize + x) * 4);
        }
    }
}

#[test]
fn the_keyboard_reaches_everything_on_every_page_and_shows_where_it_is() {
    let mut visit = ByKeys::default();
    lead(&lot(), "wren", &manner("en-US"), true, &mut visit).unwrap();
    assert!(
        visit.pages > 150 && visit.kinds.len() > 15 && visit.rings > 20,
        "{} pages, {:?}, {} rings",
        visit.pages,
        visit.kinds,
        visit.rings
    );
    assert_eq!(visit.faults, Vec::<String>::new());
}

/// Looks at pages, each kind in every theme.
#[derive(Default)]
struct Contrast {
    kinds: BTreeSet<String>,
    texts: usize,
    edges: usize,
    faults: Vec<String>,
}

fn color(frame: &Frame, at: usize) -> Color {
    Color::from_rgb8(frame.rgba[at], frame.rgba[at + 1], frame.rgba[at + 2])
}

/// The most common color of a part, and the contrast of whatever stands out most from it.
fn most(frame: &Frame, part: Rectangle) -> Option<(Color, f64)> {
    let mut seen: std::collections::BTreeMap<[u8; 3], usize> = std::collections::BTreeMap::new();
    for_pixels(frame, part, |at| {
        *seen.entry([frame.rgba[at], frame.rgba[at + 1], frame.rgba[at + 2]]).or_default() += 1;
    });
    let ground = seen.iter().max_by_key(|(_, count)| **count)?.0;
    let of = |[r, g, b]: [u8; 3]| Color::from_rgb8(r, g, b);
    // A color that covers next to nothing is the blur between two others.
    let stands = seen.iter().filter(|(_, count)| **count >= 2).map(|(c, _)| ratio(of(*c), of(*ground)));
    Some((of(*ground), stands.fold(1.0, f64::max)))
}

/// How clearly what begins at a place, seen in a direction, stands out from what is there before. A neighbor may
/// begin at once, or a line of a panel lie close by: it is compared with two places before.
fn stands_out(frame: &Frame, (x, y, dx, dy): (f32, f32, f32, f32)) -> Option<f64> {
    let at = |n: f32| {
        let (x, y) = ((x + dx * n).floor(), (y + dy * n).floor());
        let inside = x >= 0.0 && y >= 0.0 && x < frame.width as f32 && y < frame.height as f32;
        inside.then(|| color(frame, (y as usize * frame.width as usize + x as usize) * 4))
    };
    let before = [-1.5, -5.0].into_iter().filter_map(at);
    let found =
        before.flat_map(|outside| (0..8).filter_map(move |n| Some(ratio(at(n as f32 + 0.5)?, outside))));
    found.reduce(f64::max)
}

impl Contrast {
    fn texts<P: Kiosk>(&mut self, name: &str, driver: &mut Driver<'_, P>, frame: &Frame) {
        for text in driver.texts() {
            let (Some(seen), true) = (text.visible, text.text.chars().any(char::is_alphanumeric)) else {
                continue;
            };
            if seen.area() < text.bounds.area() * 0.95 {
                continue;
            }
            let Some((ground, found)) = most(frame, seen) else { continue };
            // Signal words are large and bold: 4.5:1 does (WCAG 2.2, 1.4.6).
            let signal = [safety::RED, safety::ORANGE, safety::YELLOW, safety::BLUE];
            let least = if signal.iter().any(|pair| pair.ground == ground) { 4.5 } else { 7.0 };
            self.texts += 1;
            if found < least {
                self.faults.push(format!("{name}: '{}' has {found:.2}:1, not {least}:1", text.text));
            }
        }
    }

    /// From outside to inside over each side: an edge or a fill stands out, or nothing is there.
    fn edges(&mut self, name: &str, targets: &[Target], frame: &Frame) {
        for (index, target) in targets.iter().enumerate() {
            let b = target.bounds;
            // The plan and what lies on it are drawings: their lines are in colors that the palette is tested for.
            let nested = targets
                .iter()
                .enumerate()
                .any(|(other, t)| other != index && (t.bounds.is_within(&b) || b.is_within(&t.bounds)));
            if nested || target.visible != Some(b) {
                continue;
            }
            let x = b.x + b.width * 0.31;
            let sides = [
                (x, b.y, 0.0, 1.0),
                (x, b.y + b.height, 0.0, -1.0),
                (b.x, b.center_y(), 1.0, 0.0),
                (b.x + b.width, b.center_y(), -1.0, 0.0),
            ];
            let found = sides.into_iter().filter_map(|side| stands_out(frame, side)).reduce(f64::min);
            // What has no edge on some side is words or a box of its own: those are looked at as texts.
            if let Some(found) = found.filter(|found| *found > 1.08) {
                self.edges += 1;
                if found < 3.0 {
                    self.faults.push(format!("{name}: the edge of {b:?} has {found:.2}:1"));
                }
            }
        }
    }

    fn look<P: Kiosk>(&mut self, page: &Page, theme: Theme, driver: &mut Driver<'_, P>) {
        let frame = driver.render();
        let name = format!("{} {}", page.name(), theme.word());
        self.texts(&name, driver, &frame);
        let mut discs = Discs::default();
        driver.operate(&mut discs);
        // A disc is where a peg is hit: what is drawn there is smaller, in colors that the palette is tested for.
        let edged = |t: &Target| t.kind == TargetKind::Press && !discs.0.contains(&rounded(t.bounds));
        let found: Vec<Target> = targets(driver).into_iter().filter(edged).collect();
        self.edges(&name, &found, &frame);
    }
}

impl Visit for Contrast {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        let count = targets(driver).len();
        if self.kinds.insert(kind(page, driver, count)) {
            for theme in Theme::ALL {
                driver.state_mut().settings.theme = theme;
                self.look(page, theme, driver);
            }
            driver.state_mut().settings.theme = Theme::Paper;
        }
        Ok(())
    }
}

/// Ratios of WCAG 2.2: 1.4.6 for text, 1.4.11 for edges; measured on the drawn pixels.
#[test]
fn what_is_drawn_stands_out_in_every_theme() {
    let mut visit = Contrast::default();
    lead(&lot(), "wren", &manner("en-US"), true, &mut visit).unwrap();
    assert!(visit.texts > 1000 && visit.edges > 300, "{} texts, {} edges", visit.texts, visit.edges);
    assert_eq!(visit.faults, Vec::<String>::new());
}

/// Soft grey on paper, and an edge that hardly shows: both are found.
#[test]
fn weak_text_and_weak_edges_are_found() {
    let ground = [0xF4, 0xEE, 0xDF, 255];
    let mut frame = Frame { rgba: ground.repeat(200 * 100), width: 200, height: 100 };
    let mut fill = |part: Rectangle, shade: [u8; 4]| {
        let plain = Frame { rgba: Vec::new(), width: 200, height: 100 };
        for_pixels(&plain, part, |at| frame.rgba[at..at + 4].copy_from_slice(&shade));
    };
    let rectangle = |x, y, width, height| Rectangle { x, y, width, height };
    fill(rectangle(20.0, 20.0, 4.0, 20.0), [0x80, 0x80, 0x80, 255]);
    fill(rectangle(80.0, 20.0, 80.0, 60.0), [0xCF, 0xC5, 0xAC, 255]);
    fill(rectangle(82.0, 22.0, 76.0, 56.0), ground);
    let (_, text) = most(&frame, rectangle(15.0, 15.0, 40.0, 30.0)).unwrap();
    assert!(text > 3.0 && text < 4.5, "{text}");
    let mut looked = Contrast::default();
    let bounds = rectangle(80.0, 20.0, 80.0, 60.0);
    let target = Target { kind: TargetKind::Press, bounds, visible: Some(bounds), focused: false };
    looked.edges("planted", std::slice::from_ref(&target), &frame);
    assert_eq!(looked.faults.len(), 1, "{:?}", looked.faults);
}
