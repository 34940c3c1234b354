//! Whether every page of a unit fits: measured from where its texts and targets lie, without drawing anything.

mod deck;

use std::any::Any;
use std::collections::BTreeSet;
use std::sync::Arc;

use iced::advanced::graphics::text::{Paragraph, cosmic_text::Buffer};
use iced::advanced::text::Paragraph as _;
use iced::advanced::widget::operation::Scrollable;
use iced::advanced::widget::{Id, Operation};
use iced::{Point, Rectangle, Size, Vector};
use iced_runtime::user_interface::Cache;

use deck::Deck;
pub use deck::Sample;

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
/// What two texts may share before one lies over the other, in pixels.
const TOUCH: f32 = 1.5;
/// What a text may stick out, in pixels: sizes are rounded.
const SLACK: f32 = 0.5;
/// Longest text that is told of a fault, in characters.
const TOLD: usize = 60;

/// Everything that has no words, is cut, broken, laid over something else or too small for a finger, on any page of
/// a unit in any of the [`SIZES`] and text sizes: the step, or the part of the walk, and what is wrong. Text that can
/// be scrolled to is not cut.
#[must_use]
pub fn overflows(scripts: &Arc<Scripts>, unit: &str) -> Vec<(String, String)> {
    let languages = &scripts.lot.value.languages;
    languages.iter().flat_map(|language| measured(scripts, unit, language, Sample::Turns).found).collect()
}

/// What was measured.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Measured {
    /// Pages of the unit.
    pub pages: usize,
    /// Layouts of all pages together.
    pub layouts: usize,
    /// As [`overflows`] tells it.
    pub found: Vec<(String, String)>,
}

/// As [`overflows`], in one language, be it offered or not, and in the combinations that `sample` chooses.
#[must_use]
pub fn measured(scripts: &Arc<Scripts>, unit: &str, language: &str, sample: Sample) -> Measured {
    let manner =
        Manner { size: SIZES[0], theme: Theme::Paper, text: TextSize::Usual, language: language.to_owned() };
    let mut measure = Measure {
        out: Measured::default(),
        deck: Deck::new(sample),
        caches: Default::default(),
        told: BTreeSet::new(),
    };
    if let Err(fault) = lead(scripts, unit, &manner, true, &mut measure) {
        let step = match &fault {
            TourFault::Stuck { step, .. } => step.clone(),
            _ => unit.to_owned(),
        };
        measure.out.found.push((step, fault.to_string()));
    }
    measure.out
}

/// Measures each page in the combinations that are dealt.
struct Measure {
    out: Measured,
    deck: Deck,
    /// What widgets remember, by size: most of a page stands on the next one too.
    caches: [[Cache; TEXTS.len()]; SIZES.len()],
    told: BTreeSet<(String, String)>,
}

impl Visit for Measure {
    fn page<P: Kiosk>(&mut self, page: &Page, driver: &mut Driver<'_, P>) -> Result<(), TourFault> {
        let (size, text, theme) = (driver.size, driver.state.settings.text, driver.state.settings.theme);
        self.out.pages += 1;
        for (at_size, at_text, at_theme) in self.deck.deal() {
            let (Some(&(width, height)), Some(&wanted_text), Some(&wanted_theme), Some(cache)) = (
                SIZES.get(at_size),
                TEXTS.get(at_text),
                Theme::ALL.get(at_theme),
                self.caches.get_mut(at_size).and_then(|caches| caches.get_mut(at_text)),
            ) else {
                continue;
            };
            driver.size = Size::new(width as f32, height as f32);
            (driver.state.settings.text, driver.state.settings.theme) = (wanted_text, wanted_theme);
            driver.cache = std::mem::take(cache);
            let mut fit = Fit::new(driver.size);
            driver.operate(&mut fit);
            *cache = std::mem::take(&mut driver.cache);
            self.out.layouts += 1;
            for fault in fit.faults() {
                // One fault is told once, at the first size that has it.
                if self.told.insert((page.name(), fault.text)) {
                    let (name, text, theme) = (page.name(), wanted_text.word(), wanted_theme.word());
                    let what =
                        format!("{name}, {width} by {height} px, {text} text, {theme}: {}", fault.what);
                    self.out.found.push((page.step.clone(), what));
                }
            }
        }
        (driver.size, driver.state.settings.text, driver.state.settings.theme) = (size, text, theme);
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

/// Something that can be pressed, and where it lies.
#[derive(Clone, Copy)]
struct Press {
    bounds: Rectangle,
    visible: Option<Rectangle>,
    least: f32,
    round: bool,
}

impl Press {
    /// Whether words stand half on it and half beside it, where one cannot know whether they belong to it.
    fn halves(&self, words: &Words) -> bool {
        let (Some(seen), Some(text), false) = (self.visible, words.visible, self.round) else { return false };
        let both = seen.intersection(&text);
        both.is_some_and(|both| both.width > TOUCH && both.height > TOUCH)
            && !words.text.trim().is_empty()
            && !words.bounds.is_within(&self.bounds.expand(TOUCH))
            && !self.bounds.is_within(&words.bounds.expand(TOUCH))
    }

    /// Whether a finger on one may be meant for the other. What lies within another is part of it.
    fn meets(&self, other: &Self) -> bool {
        let (a, b) = (self.bounds, other.bounds);
        if self.round && other.round {
            return a.center().distance(b.center()) < (a.width + b.width) / 2.0 - TOUCH;
        }
        let (Some(seen), Some(other)) = (self.visible, other.visible) else { return false };
        let both = seen.intersection(&other);
        both.is_some_and(|both| both.width > TOUCH && both.height > TOUCH)
            && !a.is_within(&b.expand(TOUCH))
            && !b.is_within(&a.expand(TOUCH))
    }
}

/// Walks over a page and notes where everything lies.
struct Fit {
    window: Rectangle,
    texts: Vec<Words>,
    targets: Vec<Press>,
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
        for (index, target) in self.targets.iter().enumerate() {
            let Rectangle { width, height, .. } = target.bounds;
            let least = target.least;
            if width.min(height) < least - SLACK {
                let what = format!(
                    "a target of {width:.0} by {height:.0} px is too small for a finger: at least {least:.0}"
                );
                faults.push(Unfit { text: "target".to_owned(), what });
            }
            for words in self.texts.iter().filter(|words| target.halves(words)) {
                let what = format!("'{}' lies half over a target at {:?}", told(&words.text), target.bounds);
                faults.push(Unfit { text: format!("half {}", words.text), what });
            }
            for other in self.targets.iter().skip(index + 1).filter(|other| target.meets(other)) {
                let what = format!("a target at {:?} lies over one at {:?}", target.bounds, other.bounds);
                faults.push(Unfit { text: "target over target".to_owned(), what });
            }
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
        // How a key without a message is said.
        if words.text.contains('⟨') {
            return unfit(format!("'{text}' has no words"));
        }
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

    fn custom(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        if let Some(Pressable { least, round, .. }) = state.downcast_ref::<Pressable>().copied() {
            let visible = self.sight.intersection(&(bounds + self.moved));
            self.targets.push(Press { bounds, visible, least, round });
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
    let laid: usize = buffer.lines.iter().map(|l| l.layout_opt().map_or(1, Vec::len)).sum();
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

#[cfg(test)]
mod tests;
