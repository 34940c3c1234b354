//! What is on the screen and where, by one walk over the widgets.

use std::any::Any;

use iced::advanced::widget::operation::{Focusable, Scrollable, TextInput};
use iced::advanced::widget::{Id, Operation};
use iced::{Rectangle, Vector};

use crate::kiosk::ui::Pressable;

/// A text on the screen.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// What it says.
    pub text: String,
    /// Where it is, whether in sight or not.
    pub bounds: Rectangle,
    /// The part of it that scrolls leave in sight.
    pub visible: Option<Rectangle>,
}

/// What can be done with a target.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TargetKind {
    /// It can be pressed.
    Press,
    /// It can be written in.
    Field,
}

/// Something that can be pressed or written in.
#[derive(Debug, Clone, PartialEq)]
pub struct Target {
    /// What can be done with it.
    pub kind: TargetKind,
    /// Where it is, whether in sight or not.
    pub bounds: Rectangle,
    /// The part of it that scrolls leave in sight.
    pub visible: Option<Rectangle>,
    /// Whether it has the focus.
    pub focused: bool,
}

pub(super) struct Survey {
    pub texts: Vec<Shown>,
    pub targets: Vec<Target>,
    /// What scrolls around leave in sight, and how far they have moved their content.
    sight: Rectangle,
    moved: Vector,
    around: Vec<(Rectangle, Vector)>,
}

impl Default for Survey {
    fn default() -> Self {
        Self {
            texts: Vec::new(),
            targets: Vec::new(),
            sight: Rectangle::INFINITE,
            moved: Vector::ZERO,
            around: Vec::new(),
        }
    }
}

impl Survey {
    fn place(&self, bounds: Rectangle) -> (Rectangle, Option<Rectangle>) {
        let bounds = bounds + self.moved;
        (bounds, self.sight.intersection(&bounds))
    }
}

impl Operation for Survey {
    fn traverse(&mut self, operate: &mut dyn FnMut(&mut dyn Operation)) {
        // A scroll announces itself just before its content is walked over; leaving the content ends it.
        let before = self.around.pop().unwrap_or((self.sight, self.moved));
        operate(self);
        (self.sight, self.moved) = before;
    }

    fn scrollable(
        &mut self,
        _id: Option<&Id>,
        bounds: Rectangle,
        _content: Rectangle,
        translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        let (_, visible) = self.place(bounds);
        self.around.push((self.sight, self.moved));
        self.moved -= translation;
        self.sight = visible.unwrap_or_default();
    }

    fn text(&mut self, _id: Option<&Id>, bounds: Rectangle, text: &str) {
        let (bounds, visible) = self.place(bounds);
        self.texts.push(Shown { text: text.to_owned(), bounds, visible });
    }

    fn custom(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Any) {
        if state.is::<Pressable>() {
            let (bounds, visible) = self.place(bounds);
            self.targets.push(Target { kind: TargetKind::Press, bounds, visible, focused: false });
        }
    }

    fn text_input(&mut self, _id: Option<&Id>, bounds: Rectangle, _state: &mut dyn TextInput) {
        let (bounds, visible) = self.place(bounds);
        self.targets.push(Target { kind: TargetKind::Field, bounds, visible, focused: false });
    }

    fn focusable(&mut self, _id: Option<&Id>, bounds: Rectangle, state: &mut dyn Focusable) {
        let (bounds, _) = self.place(bounds);
        if let Some(target) = self.targets.iter_mut().rev().find(|target| target.bounds == bounds) {
            target.focused = state.is_focused();
        }
    }
}
