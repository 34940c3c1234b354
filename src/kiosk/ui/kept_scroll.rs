//! A page part that scrolls, and is where it was when the page is laid out in another way: after the tablet was turned.

use std::cell::Cell;
use std::rc::Rc;

use iced::advanced::Shell;
use iced::advanced::widget::Operation;
use iced::advanced::widget::operation::Scrollable;
use iced::widget::scrollable::RelativeOffset;
use iced::{Length, Rectangle, Vector};

use super::Element;
use super::around::{Around, Behavior, Input};
use crate::kiosk::theme::Look;

/// How far something is scrolled, from 0 to 1. Each page has its own.
#[derive(Debug, Clone, Default)]
pub struct Scrolled(Rc<Cell<f32>>);

/// Scrolls `content` in the whole height of its space, to where `scrolled` says, and keeps that up to date.
pub fn kept_scroll<'a, M: 'a>(
    look: &Look,
    scrolled: &Scrolled,
    content: impl Into<Element<'a, M>>,
) -> Element<'a, M> {
    let content = super::scroll(look, content).height(Length::Fill).into();
    Element::new(Around { content, margin: 0.0, behavior: Keep(scrolled.clone()) })
}

struct Keep(Scrolled);

/// The page it was last scrolled for; none where it is laid out anew.
#[derive(Default)]
struct Last(Option<Scrolled>);

impl<M> Behavior<M> for Keep {
    type State = Last;

    fn handle(&self, _state: &mut Last, _input: &Input<'_>, _shell: &mut Shell<'_, M>) {}

    fn inside(&self, last: &mut Last, operate: &mut dyn FnMut(&mut dyn Operation)) {
        let Self(scrolled) = self;
        let same = last.0.as_ref().is_some_and(|last| Rc::ptr_eq(&last.0, &scrolled.0));
        if same {
            let mut read = Read(None);
            operate(&mut read);
            if let Some(part) = read.0 {
                scrolled.0.set(part);
            }
        } else {
            operate(&mut Restore(scrolled.0.get()));
            last.0 = Some(scrolled.clone());
        }
    }
}

/// How far it is scrolled, where it can be.
struct Read(Option<f32>);

impl Operation for Read {
    fn traverse(&mut self, _operate: &mut dyn FnMut(&mut dyn Operation)) {}

    fn scrollable(
        &mut self,
        _id: Option<&iced::advanced::widget::Id>,
        bounds: Rectangle,
        content: Rectangle,
        translation: Vector,
        _state: &mut dyn Scrollable,
    ) {
        let room = content.height - bounds.height;
        // Where all of it fits now, it may not fit once the tablet is turned back.
        if room > 1.0 {
            self.0 = Some((translation.y / room).clamp(0.0, 1.0));
        }
    }
}

struct Restore(f32);

impl Operation for Restore {
    fn traverse(&mut self, _operate: &mut dyn FnMut(&mut dyn Operation)) {}

    fn scrollable(
        &mut self,
        _id: Option<&iced::advanced::widget::Id>,
        _bounds: Rectangle,
        _content: Rectangle,
        _translation: Vector,
        state: &mut dyn Scrollable,
    ) {
        state.snap_to(RelativeOffset { x: None, y: Some(self.0) });
    }
}
