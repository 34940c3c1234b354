//! Operations over a page: where the focus is, how it moves, and how what has it comes into view.

use std::any::Any;

use iced::advanced::widget::operation::scrollable::AbsoluteOffset;
use iced::advanced::widget::operation::{Focusable, Scrollable, TextInput};
use iced::advanced::widget::{Id, Operation};
use iced::{Rectangle, Vector};

use super::field::Keys;
use super::tap::{Among, Pressable};

/// Which way the focus moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Next,
    Previous,
}

/// Finds which text field has the focus, and which keys it wants.
#[derive(Default)]
pub(super) struct FindField {
    wants: Keys,
    pub found: Option<Keys>,
    is_field: bool,
    is_empty: bool,
    /// Whether the field that has the focus holds no text yet.
    empty: bool,
}

impl FindField {
    /// Whether what is typed next is the first letter of a name.
    pub fn begins_name(&self) -> bool {
        self.empty && self.found == Some(Keys::Names)
    }
}

impl Operation for FindField {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn custom(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Any) {
        if let Some(keys) = state.downcast_ref::<Keys>() {
            self.wants = *keys;
        }
    }

    fn text_input(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn TextInput) {
        self.is_field = true;
        self.is_empty = state.text().is_empty();
    }

    fn focusable(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Focusable) {
        if self.is_field && state.is_focused() {
            self.found = Some(self.wants);
            self.empty = self.is_empty;
        }
        self.is_field = false;
        self.wants = Keys::default();
    }
}

/// Counts what can have the focus and where it is.
#[derive(Default)]
pub(super) struct Count {
    total: usize,
    focused: Option<usize>,
}

impl Count {
    /// The place of the focus after moving one on.
    pub(super) fn moved(&self, way: Way) -> usize {
        let last = self.total.saturating_sub(1);
        match (self.focused, way) {
            (None, Way::Next) => 0,
            (None, Way::Previous) => last,
            (Some(at), Way::Next) => {
                if at >= last {
                    0
                } else {
                    at + 1
                }
            }
            (Some(at), Way::Previous) => at.checked_sub(1).unwrap_or(last),
        }
    }
}

impl Operation for Count {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn focusable(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Focusable) {
        if state.is_focused() {
            self.focused = Some(self.total);
        }
        self.total += 1;
    }
}

/// Finds what may be chosen instead of what has the focus.
#[derive(Default)]
pub(super) struct Beside {
    among: Among,
    total: usize,
    /// Where those begin to which the last one seen belongs.
    begin: Option<usize>,
    /// What has the focus, and the first and the last of those it belongs to.
    found: Option<(usize, usize, usize)>,
}

impl Beside {
    /// The one to move to; from the last it goes on to the first.
    pub(super) fn moved(&self, way: Way) -> Option<usize> {
        let (at, first, last) = self.found.filter(|(_, first, last)| first < last)?;
        Some(match way {
            Way::Next if at == last => first,
            Way::Next => at + 1,
            Way::Previous if at == first => last,
            Way::Previous => at.saturating_sub(1),
        })
    }
}

impl Operation for Beside {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn custom(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Any) {
        if let Some(pressable) = state.downcast_ref::<Pressable>() {
            self.among = pressable.among;
        }
    }

    fn focusable(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Focusable) {
        self.begin = match (std::mem::take(&mut self.among), self.begin) {
            (Among::Alone, _) => None,
            (Among::Next, Some(begin)) => Some(begin),
            (Among::First | Among::Next, _) => Some(self.total),
        };
        match (self.begin, &mut self.found) {
            (Some(begin), None) if state.is_focused() => self.found = Some((self.total, begin, self.total)),
            (Some(begin), Some((_, first, last))) if begin == *first => *last = self.total,
            _ => {}
        }
        self.total += 1;
    }
}

/// Gives the focus to the one at a place, and takes it from all others.
pub(super) struct FocusAt {
    at: usize,
    seen: usize,
}

impl FocusAt {
    pub(super) const fn new(at: usize) -> Self {
        Self { at, seen: 0 }
    }

    /// Takes the focus from all.
    pub(super) const fn nowhere() -> Self {
        Self::new(usize::MAX)
    }
}

impl Operation for FocusAt {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        operate(self);
    }

    fn focusable(&mut self, _id: Option<&Id>, _bounds: Rectangle, state: &mut dyn Focusable) {
        if self.seen == self.at {
            state.focus();
        } else {
            state.unfocus();
        }
        self.seen += 1;
    }
}

/// Finds what has the focus and the innermost scroll around it.
#[derive(Default)]
pub(super) struct FindFocused {
    scrolls: usize,
    pending: Option<usize>,
    around: Vec<Option<usize>>,
    pub found: Option<(usize, Rectangle)>,
}

impl Operation for FindFocused {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        let within = self.pending.take().or_else(|| self.around.last().copied().flatten());
        self.around.push(within);
        operate(self);
        let _ = self.around.pop();
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        _bounds: Rectangle,
        _content: Rectangle,
        _translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        self.pending = Some(self.scrolls);
        self.scrolls += 1;
    }

    fn focusable(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Focusable) {
        let within = self.around.last().copied().flatten();
        if let (true, Some(scroll)) = (state.is_focused(), within) {
            self.found = Some((scroll, bounds));
        }
    }
}

/// Scrolls one scroll as far as needed to show a part of its content.
pub(super) struct Reveal {
    scroll: usize,
    part: Rectangle,
    margin: f32,
    seen: usize,
}

impl Reveal {
    pub(super) const fn new(scroll: usize, part: Rectangle, margin: f32) -> Self {
        Self { scroll, part, margin, seen: 0 }
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
            let top = self.part.y - translation.y - bounds.y - self.margin;
            let bottom =
                self.part.y + self.part.height - translation.y - bounds.y - bounds.height + self.margin;
            let by = if top < 0.0 { top } else { bottom.max(0.0).min(top.max(0.0)) };
            if by.abs() > 0.5 {
                state.scroll_by(AbsoluteOffset { x: 0.0, y: by }, bounds, content);
            }
        }
        self.seen += 1;
    }
}

/// Passes everything on but the focus: our own keys can be found and listed, yet Tab does not go through them.
pub(super) struct WithoutFocus<'o>(pub &'o mut dyn Operation);

impl Operation for WithoutFocus<'_> {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        self.0.traverse(&mut |inner| operate(&mut WithoutFocus(inner)));
    }

    fn container(&mut self, id: Option<&Id>, bounds: Rectangle) {
        self.0.container(id, bounds);
    }

    fn text(&mut self, id: Option<&Id>, bounds: Rectangle, text: &str) {
        self.0.text(id, bounds, text);
    }

    fn custom(&mut self, id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        self.0.custom(id, bounds, state);
    }
}
