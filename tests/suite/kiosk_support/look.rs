//! What is on the screen and where: words, what can be pressed, what is cut off or lies over each other.

use std::any::Any;

use iced::advanced::widget::operation::scrollable::AbsoluteOffset;
use iced::advanced::widget::operation::{Focusable, Scrollable, TextInput};
use iced::advanced::widget::{Id, Operation};
use iced::{Point, Rectangle, Size, Vector};
use sendoff::kiosk::ui::Pressable;

/// Something and where it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// Its words; empty for what has none.
    pub text: String,
    /// Where it lies, as if nothing were scrolled.
    pub bounds: Rectangle,
    /// The part that can be seen, on the screen.
    pub visible: Option<Rectangle>,
    /// Which scroll it lies in.
    pub scroll: Option<usize>,
    /// Where it lies now, on the screen or beyond.
    pub at: Rectangle,
    /// What can be seen of that scroll, or the window.
    pub around: Rectangle,
}

/// Everything on the screen.
#[derive(Debug, Default)]
pub struct Seen {
    pub texts: Vec<Placed>,
    pub pressable: Vec<Placed>,
    /// What can have the focus and has an id.
    pub focusable: Vec<(String, Placed)>,
    /// What has the focus.
    pub focused: Option<Placed>,
    window: Rectangle,
    /// Width of each scroll, from its left edge.
    scrolls: Vec<Rectangle>,
}

impl Seen {
    pub fn words(&self) -> Vec<&str> {
        self.texts.iter().map(|t| t.text.as_str()).collect()
    }

    /// Whether some text contains these words.
    pub fn contains(&self, words: &str) -> bool {
        self.texts.iter().any(|t| t.text.contains(words))
    }

    /// Faults of the page: text that is cut off or squeezed, text over text, targets too small for a finger.
    pub fn faults(&self) -> Vec<String> {
        let mut faults: Vec<String> = self.texts.iter().filter_map(|t| self.cut(t)).collect();
        let seen: Vec<(&Placed, Rectangle)> =
            self.texts.iter().filter_map(|t| t.visible.map(|v| (t, v))).collect();
        for (index, (one, a)) in seen.iter().enumerate() {
            for (other, b) in &seen[index + 1..] {
                if a.intersection(b).is_some_and(|both| both.width > 1.5 && both.height > 1.5) {
                    faults.push(format!("`{}` lies over `{}`: {a:?} {b:?}", one.text, other.text));
                }
            }
        }
        let least = 43.5 * self.window.width.min(self.window.height) / 800.0;
        for target in &self.pressable {
            if target.bounds.width < least || target.bounds.height < least {
                faults.push(format!("a target of {:?} is too small for a finger", target.bounds));
            }
        }
        faults
    }

    fn cut(&self, placed: &Placed) -> Option<String> {
        let b = placed.bounds;
        let letters = placed.text.chars().count();
        if letters == 0 {
            return None;
        }
        if b.width < 1.0 || b.height < 1.0 || (letters > 3 && b.width < 0.7 * b.height && b.height > 100.0) {
            return Some(format!("`{}` is squeezed: {b:?}", placed.text));
        }
        // A scroll moves only up and down: it must be as wide as what is in it.
        let around = placed.scroll.map_or(self.window, |scroll| self.scrolls[scroll]);
        let aside = b.x < around.x - 0.5 || b.x + b.width > around.x + around.width + 0.5;
        let below = placed.scroll.is_none()
            && (b.y < around.y - 0.5 || b.y + b.height > around.y + around.height + 0.5);
        (aside || below).then(|| format!("`{}` is cut off: {b:?} in {around:?}", placed.text))
    }
}

/// Collects everything on the screen.
pub struct Look {
    pub seen: Seen,
    viewport: Rectangle,
    translation: Vector,
    within: Option<usize>,
    around: Vec<(Rectangle, Vector, Option<usize>)>,
    field: Option<String>,
}

impl Look {
    pub fn new((width, height): (f32, f32)) -> Self {
        let window = Rectangle::new(Point::ORIGIN, Size::new(width, height));
        Self {
            seen: Seen { window, ..Seen::default() },
            viewport: window,
            translation: Vector::ZERO,
            within: None,
            around: vec![(window, Vector::ZERO, None)],
            field: None,
        }
    }

    fn placed(&self, text: &str, bounds: Rectangle) -> Placed {
        let at = bounds + self.translation;
        let visible = self.viewport.intersection(&at);
        Placed { text: text.to_owned(), bounds, visible, scroll: self.within, at, around: self.viewport }
    }
}

impl Operation for Look {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        self.around.push((self.viewport, self.translation, self.within));
        operate(self);
        let _ = self.around.pop();
        let last = self.around.last().copied();
        (self.viewport, self.translation, self.within) = last.expect("the window is around everything");
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        bounds: Rectangle,
        _content: Rectangle,
        translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        self.viewport = self.viewport.intersection(&(bounds + self.translation)).unwrap_or_default();
        self.translation -= translation;
        self.within = Some(self.seen.scrolls.len());
        self.seen.scrolls.push(bounds);
    }

    fn text(&mut self, _id: Option<&Id>, bounds: Rectangle, text: &str) {
        let placed = self.placed(text, bounds);
        self.seen.texts.push(placed);
    }

    fn text_input(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn TextInput) {
        self.field = Some(state.text().to_owned());
    }

    fn focusable(&mut self, id: Option<&Id>, bounds: Rectangle, state: &mut dyn Focusable) {
        let text = self.field.take().unwrap_or_default();
        if state.is_focused() {
            self.seen.focused = Some(self.placed(&text, bounds));
        }
        if let Some(id) = id {
            let placed = self.placed(&text, bounds);
            self.seen.focusable.push((name_of(id), placed));
        }
    }

    fn custom(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        if state.is::<Pressable>() {
            let placed = self.placed("", bounds);
            self.seen.pressable.push(placed);
        }
    }
}

/// The name that an id was given.
fn name_of(id: &Id) -> String {
    let shown = format!("{id:?}");
    shown.split('"').nth(1).unwrap_or_default().to_owned()
}

/// Scrolls one scroll so that a part of its content can be seen.
pub struct Reveal {
    scroll: usize,
    part: Rectangle,
    seen: usize,
}

impl Reveal {
    pub fn new(scroll: usize, part: Rectangle) -> Self {
        Self { scroll, part, seen: 0 }
    }
}

impl Operation for Reveal {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        bounds: Rectangle,
        content: Rectangle,
        translation: Vector,
        state: &mut dyn Scrollable,
    ) {
        if self.seen == self.scroll {
            let top = self.part.y - translation.y - bounds.y;
            let bottom = top + self.part.height - bounds.height;
            let by = if top < 0.0 {
                top
            } else if bottom > 0.0 {
                bottom.min(top)
            } else {
                0.0
            };
            if by != 0.0 {
                state.scroll_by(AbsoluteOffset { x: 0.0, y: by }, bounds, content);
            }
        }
        self.seen += 1;
    }
}

/// Marks everything in a text field, as a triple click does.
pub struct SelectAll<'i>(&'i str);

impl<'i> SelectAll<'i> {
    pub fn new(id: &'i str) -> Self {
        Self(id)
    }
}

impl Operation for SelectAll<'_> {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn text_input(&mut self, id: Option<&Id>, _bounds: Rectangle, state: &mut dyn TextInput) {
        if id.is_some_and(|id| name_of(id) == self.0) {
            state.select_all();
        }
    }
}
