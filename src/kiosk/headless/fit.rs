//! Whether every page of a unit fits: measured from where its texts and targets lie, without drawing anything.

use std::any::Any;
use std::collections::BTreeSet;
use std::sync::Arc;

use iced::advanced::graphics::text::{Paragraph, cosmic_text::Buffer};
use iced::advanced::text::Paragraph as _;
use iced::advanced::widget::operation::{Scrollable, TextInput};
use iced::advanced::widget::{Id, Operation};
use iced::{Point, Rectangle, Size, Vector};
use iced_runtime::user_interface::Cache;

use super::Driver;
use crate::kiosk::preview::{Kiosk, Manner, Page, TourFault, Visit, lead};
use crate::kiosk::theme::{TextSize, Theme};
use crate::kiosk::ui::Pressable;
use crate::kiosk::ui::words::Laid;
use crate::script::Scripts;

/// The sizes of window that every page must fit, in pixels: landscape, large landscape, upright.
pub const SIZES: [(u32, u32); 3] = [(1280, 800), (1920, 1200), (800, 1280)];
/// The text sizes that every page must fit.
const TEXTS: [TextSize; 3] = [TextSize::Usual, TextSize::Large, TextSize::Largest];
/// The least side of a target over the short side of the window: 44 px at 800, less half a pixel.
const LEAST_TARGET: f32 = 43.5 / 800.0;
/// What two texts may share before one lies over the other, in pixels.
const TOUCH: f32 = 1.5;
/// What a text may stick out, in pixels: sizes are rounded.
const SLACK: f32 = 0.5;
/// Longest text that is told of a fault, in characters.
const TOLD: usize = 60;

/// Everything that is cut, broken, laid over something else or too small for a finger, on any page of a unit in
/// any of the [`SIZES`] and text sizes: the step, or the part of the walk, and what is wrong. Text that can be
/// scrolled to is not cut.
#[must_use]
pub fn overflows(scripts: &Arc<Scripts>, unit: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for language in &scripts.lot.value.languages {
        let manner =
            Manner { size: SIZES[0], theme: Theme::Paper, text: TextSize::Usual, language: language.clone() };
        let mut measure = Measure::default();
        if let Err(fault) = lead(scripts, unit, &manner, true, &mut measure) {
            let step = match &fault {
                TourFault::Stuck { step, .. } => step.clone(),
                _ => unit.to_owned(),
            };
            measure.found.push((step, fault.to_string()));
        }
        found.append(&mut measure.found);
    }
    found
}

/// Measures each page at every size.
#[derive(Default)]
struct Measure {
    found: Vec<(String, String)>,
    /// What widgets remember, by size: most of a page stands on the next one too.
    caches: [[Cache; TEXTS.len()]; SIZES.len()],
    told: BTreeSet<(String, String)>,
}

impl Visit for Measure {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        let (size, text) = (driver.size, driver.state.settings.text);
        for (wanted, caches) in SIZES.iter().zip(&mut self.caches) {
            driver.size = Size::new(wanted.0 as f32, wanted.1 as f32);
            for (wanted_text, cache) in TEXTS.iter().zip(caches) {
                driver.state.settings.text = *wanted_text;
                driver.cache = std::mem::take(cache);
                let mut fit = Fit::new(driver.size);
                driver.operate(&mut fit);
                *cache = std::mem::take(&mut driver.cache);
                for fault in fit.faults() {
                    // One fault is told once, at the first size that has it.
                    let new = self.told.insert((page.name(), fault.text));
                    if new {
                        let what = format!(
                            "{}, {} by {} px, {} text: {}",
                            page.name(),
                            wanted.0,
                            wanted.1,
                            wanted_text.word(),
                            fault.what
                        );
                        self.found.push((page.step.clone(), what));
                    }
                }
            }
        }
        (driver.size, driver.state.settings.text) = (size, text);
        Ok(())
    }
}

/// Something that does not fit.
struct Unfit {
    /// What it is about, whatever the size.
    text: String,
    what: String,
}

/// A text and where it lies.
struct Words {
    text: String,
    bounds: Rectangle,
    visible: Option<Rectangle>,
    scroll: Option<usize>,
    laid: Option<Paragraph>,
}

/// Walks over a page and notes where everything lies.
struct Fit {
    window: Rectangle,
    texts: Vec<Words>,
    targets: Vec<Rectangle>,
    scrolls: Vec<Rectangle>,
    sight: Rectangle,
    moved: Vector,
    within: Option<usize>,
    next: Option<(Rectangle, Vector, Option<usize>)>,
}

impl Fit {
    fn new(size: Size) -> Self {
        let window = Rectangle::new(Point::ORIGIN, size);
        Self {
            window,
            texts: Vec::new(),
            targets: Vec::new(),
            scrolls: Vec::new(),
            sight: window,
            moved: Vector::ZERO,
            within: None,
            next: None,
        }
    }

    fn faults(&self) -> Vec<Unfit> {
        let mut faults: Vec<Unfit> = self.texts.iter().filter_map(|t| self.cut(t)).collect();
        let seen: Vec<(&Words, Rectangle)> =
            self.texts.iter().filter_map(|t| t.visible.map(|v| (t, v))).collect();
        for (index, (one, a)) in seen.iter().enumerate() {
            for (other, b) in seen.iter().skip(index + 1) {
                if a.intersection(b).is_some_and(|both| both.width > TOUCH && both.height > TOUCH) {
                    let text = format!("over {} {}", one.text, other.text);
                    let what = format!("'{}' lies over '{}'", told(&one.text), told(&other.text));
                    faults.push(Unfit { text, what });
                }
            }
        }
        let least = LEAST_TARGET * self.window.width.min(self.window.height);
        for target in self.targets.iter().filter(|t| t.width < least || t.height < least) {
            let what = format!(
                "a target of {:.0} by {:.0} px is too small for a finger: at least {least:.0}",
                target.width, target.height
            );
            faults.push(Unfit { text: "target".to_owned(), what });
        }
        faults
    }

    /// Why a text cannot be read.
    fn cut(&self, words: &Words) -> Option<Unfit> {
        let bounds = words.bounds;
        if words.text.trim().is_empty() {
            return None;
        }
        let unfit = |what: String| Some(Unfit { text: words.text.clone(), what });
        let text = told(&words.text);
        if let Some(laid) = &words.laid {
            if let Some(word) = broken_word(laid.buffer()) {
                return unfit(format!("the word '{}' is wider than its place and is broken", told(&word)));
            }
            let needed = laid.min_bounds();
            let cut = needed.width > bounds.width + SLACK || needed.height > bounds.height + SLACK;
            if cut || hides_lines(laid.buffer()) {
                return unfit(format!(
                    "'{text}' is cut: it needs {:.0} by {:.0} px and has {:.0} by {:.0}",
                    needed.width, needed.height, bounds.width, bounds.height
                ));
            }
        }
        if bounds.width < 1.0 || bounds.height < 1.0 {
            return unfit(format!("'{text}' is squeezed to nothing"));
        }
        // A scroll moves only up and down: it must be as wide as what is in it.
        let around = words.scroll.and_then(|s| self.scrolls.get(s)).copied().unwrap_or(self.window);
        let aside = bounds.x < around.x - SLACK || bounds.x + bounds.width > around.x + around.width + SLACK;
        let below = words.scroll.is_none()
            && (bounds.y < around.y - SLACK || bounds.y + bounds.height > around.y + around.height + SLACK);
        if aside || below { unfit(format!("'{text}' sticks out of its place and is cut")) } else { None }
    }
}

impl Operation for Fit {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        // A scroll announces itself just before its content is walked over; leaving the content ends it.
        let before = self.next.take().unwrap_or((self.sight, self.moved, self.within));
        operate(self);
        (self.sight, self.moved, self.within) = before;
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        bounds: Rectangle,
        _content: Rectangle,
        translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        self.next = Some((self.sight, self.moved, self.within));
        self.sight = self.sight.intersection(&(bounds + self.moved)).unwrap_or_default();
        self.moved -= translation;
        self.within = Some(self.scrolls.len());
        self.scrolls.push(bounds);
    }

    fn text(&mut self, _id: Option<&Id>, bounds: Rectangle, text: &str) {
        let visible = self.sight.intersection(&(bounds + self.moved));
        let words = Words { text: text.to_owned(), bounds, visible, scroll: self.within, laid: None };
        self.texts.push(words);
    }

    fn text_input(&mut self, _id: Option<&Id>, bounds: Rectangle, _state: &mut dyn TextInput) {
        self.targets.push(bounds);
    }

    fn custom(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        if state.is::<Pressable>() {
            self.targets.push(bounds);
        } else if let (Some(laid), Some(words)) = (state.downcast_ref::<Laid>(), self.texts.last_mut()) {
            words.laid = Some(laid.0.clone());
        }
    }
}

/// The first word that goes on in the next line without a hyphen.
fn broken_word(buffer: &Buffer) -> Option<String> {
    let mut before: Option<(usize, usize)> = None;
    for run in buffer.layout_runs() {
        let start = run.glyphs.iter().map(|g| g.start).min()?;
        let end = run.glyphs.iter().map(|g| g.end).max()?;
        if before == Some((run.line_i, start))
            && let (Some(left), Some(right)) = (run.text.get(..start), run.text.get(start..))
            && left.chars().next_back().is_some_and(char::is_alphanumeric)
            && right.chars().next().is_some_and(char::is_alphanumeric)
        {
            let head = left.rsplit(char::is_whitespace).next().unwrap_or_default();
            let tail = right.split(char::is_whitespace).next().unwrap_or_default();
            return Some(format!("{head}{tail}"));
        }
        before = Some((run.line_i, end));
    }
    None
}

/// Whether there are lines for which there is no room.
fn hides_lines(buffer: &Buffer) -> bool {
    let laid: usize = buffer.lines.iter().map(|l| l.layout_opt().map_or(1, |lines| lines.len())).sum();
    buffer.layout_runs().count() < laid
}

/// A text as it is told, cut where it is long.
fn told(text: &str) -> String {
    let mut shown: String = text.chars().take(TOLD).collect();
    if text.chars().count() > TOLD {
        shown.push('…');
    }
    shown
}
