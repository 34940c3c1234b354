//! The outermost layer around a page: Tab moves the focus, arrow keys move it among things to choose from, and our
//! own keys come up for a text field.
//!
//! The keys speak to the field as a real keyboard would, by key events, so that caret, selection and limits
//! work alike, and screens need not know which of the two was used. While the keys are up the page is shorter,
//! and the field is scrolled into view. A key pressed on a real keyboard puts ours away until a field is touched
//! again.

use iced::advanced::layout::{self, Layout};
use iced::advanced::widget::{Operation, Tree, tree};
use iced::advanced::{Clipboard, Shell, Widget, mouse, overlay, renderer};
use std::time::Duration;

use iced::keyboard::{self, Key, key::Named};
use iced::time::Instant;
use iced::{Event, Length, Point, Rectangle, Size, Vector, touch, window};

use super::around::{Around, Behavior, Input};
use super::field::Keys;
use super::focus::{Beside, Count, FindField, FindFocused, FocusAt, Reveal, Way, WithoutFocus};
use super::keyboard::{Board, KeyPress, Layer, Layout as Letters, keyboard as letter_keys, number_pad};
use super::{Element, tap};
use crate::kiosk::theme::{Gap, Look};

/// How our own keys come up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Typed {
    /// The word on the key that ends.
    pub done: String,
    /// Whose letters, until another layout is asked for.
    pub layout: Letters,
}

/// Two presses of Shift within this time keep capital letters.
const TWICE: Duration = Duration::from_millis(500);

/// Lets Tab and Shift+Tab go through `page`. With `keys` our own keys come up for text fields.
pub fn with_keyboard<'a, M: 'a>(
    look: &Look,
    page: impl Into<Element<'a, M>>,
    keys: Option<Typed>,
) -> Element<'a, M> {
    let up = iced::widget::Space::new().into();
    Element::new(Typing { look: *look, page: page.into(), keys, up })
}

struct Typing<'a, M> {
    look: Look,
    page: Element<'a, M>,
    keys: Option<Typed>,
    up: Element<'a, KeyPress>,
}

#[derive(Default)]
struct State {
    open: Option<Keys>,
    layer: Layer,
    /// The key whose variants are offered.
    held: Option<char>,
    /// The layout that was asked for, and the one it was asked for instead of.
    chosen: Option<(Letters, Letters)>,
    /// A real key was pressed last: ours step aside.
    real: bool,
    /// The time of the last redraw, and when Shift was last pressed.
    now: Option<Instant>,
    shifted: Option<Instant>,
    /// The mouse is held down: what it was pressed on stays where it is until it is let go.
    mouse_down: bool,
    /// The page has changed its height: what has the focus may have to come into view.
    reveal: bool,
}

impl State {
    /// The layout that is shown; one that was asked for holds until the reader changes.
    fn layout(&self, base: Letters) -> Letters {
        self.chosen.filter(|(instead_of, _)| *instead_of == base).map_or(base, |(_, chosen)| chosen)
    }
}

/// What an update lends to the page, so that it can be asked more than once.
struct Lent<'l, 'b> {
    layout: Layout<'l>,
    cursor: mouse::Cursor,
    renderer: &'l iced::Renderer,
    clipboard: &'b mut dyn Clipboard,
    viewport: Rectangle,
}

impl<M> Typing<'_, M> {
    fn page_update(
        &mut self,
        tree: &mut Tree,
        event: &Event,
        lent: &mut Lent<'_, '_>,
        shell: &mut Shell<'_, M>,
    ) {
        let (cursor, renderer, viewport) = (lent.cursor, lent.renderer, lent.viewport);
        let page = self.page.as_widget_mut();
        page.update(tree, event, lent.layout, cursor, renderer, lent.clipboard, shell, &viewport);
    }

    fn page_operate(&mut self, tree: &mut Tree, lent: &Lent<'_, '_>, operation: &mut dyn Operation) {
        self.page.as_widget_mut().operate(tree, lent.layout, lent.renderer, operation);
    }

    fn move_focus(&mut self, tree: &mut Tree, lent: &Lent<'_, '_>, way: Way) {
        let mut count = Count::default();
        self.page_operate(tree, lent, &mut count);
        self.page_operate(tree, lent, &mut FocusAt::new(count.moved(way)));
        self.reveal_focus(tree, lent);
    }

    /// Among things to choose from the focus goes to the next one; elsewhere it stays.
    fn move_beside(&mut self, tree: &mut Tree, lent: &Lent<'_, '_>, way: Way) -> bool {
        let mut beside = Beside::default();
        self.page_operate(tree, lent, &mut beside);
        let Some(at) = beside.moved(way) else { return false };
        self.page_operate(tree, lent, &mut FocusAt::new(at));
        self.reveal_focus(tree, lent);
        true
    }

    fn reveal_focus(&mut self, tree: &mut Tree, lent: &Lent<'_, '_>) {
        let mut find = FindFocused::default();
        self.page_operate(tree, lent, &mut find);
        if let Some((scroll, part)) = find.found {
            let margin = self.look.gap(Gap::Large);
            self.page_operate(tree, lent, &mut Reveal::new(scroll, part, margin));
        }
    }

    /// Does to the field what a real key would do.
    fn press(
        &mut self,
        state: &mut State,
        tree: &mut Tree,
        press: KeyPress,
        lent: &mut Lent<'_, '_>,
        shell: &mut Shell<'_, M>,
    ) {
        let before = (state.layer, state.held, state.chosen);
        let twice = matches!((state.shifted, state.now), (Some(last), Some(now)) if now.duration_since(last) <= TWICE);
        state.layer = state.layer.after(press, twice);
        if state.open == Some(Keys::Names) && press == KeyPress::Char(' ') && state.layer == Layer::Small {
            state.layer = Layer::Capital;
        }
        state.shifted = state.now.filter(|_| press == KeyPress::Shift);
        state.held = if let KeyPress::Held(letter) = press { Some(letter) } else { None };
        if press == KeyPress::Layout {
            let base = self.base_layout();
            state.chosen = Some((base, state.layout(base).next()));
        }
        if (state.layer, state.held, state.chosen) != before {
            shell.invalidate_layout();
            shell.request_redraw();
        }
        match press {
            KeyPress::Char(letter) => {
                let mut text = [0; 4];
                let text = letter.encode_utf8(&mut text);
                self.page_update(tree, &key_event(Key::Character((&*text).into()), Some(text)), lent, shell);
            }
            KeyPress::Backspace => {
                self.page_update(tree, &key_event(Key::Named(Named::Backspace), None), lent, shell);
            }
            KeyPress::Done => {
                self.page_update(tree, &key_event(Key::Named(Named::Enter), None), lent, shell);
                self.page_operate(tree, lent, &mut FocusAt::nowhere());
            }
            KeyPress::Shift | KeyPress::Layer | KeyPress::Layout | KeyPress::Held(_) => {}
        }
    }

    /// Notices that a field has got or lost the focus.
    fn watch(
        &mut self,
        state: &mut State,
        tree: &mut Tree,
        event: &Event,
        lent: &Lent<'_, '_>,
        shell: &mut Shell<'_, M>,
    ) {
        if self.keys.is_none() {
            return;
        }
        let mut find = FindField::default();
        self.page_operate(tree, lent, &mut find);
        let wanted = find.found.filter(|_| !state.real);
        if wanted != state.open && matches!(event, Event::Keyboard(_)) {
            // Letters that come in one go are written into the same field: it must not be made anew between them,
            // before the page knows of the first.
            shell.request_redraw();
        } else if wanted != state.open && !(state.mouse_down && wanted.is_none()) {
            state.open = wanted;
            state.layer = if find.begins_name() { Layer::Capital } else { Layer::default() };
            state.held = None;
            state.reveal = true;
            shell.invalidate_layout();
            shell.request_redraw();
        }
    }

    fn build_keys(&self, state: &State) -> Element<'static, KeyPress> {
        let done = self.keys.as_ref().map_or("", |keys| keys.done.as_str());
        match state.open {
            None => iced::widget::Space::new().into(),
            Some(Keys::Letters | Keys::Names) => {
                let layout = state.layout(self.base_layout());
                let board = Board { layout, layer: state.layer, held: state.held };
                letter_keys(&self.look, board, done, |press| press)
            }
            Some(pad) => number_pad(&self.look, pad, done, |press| press),
        }
    }

    fn base_layout(&self) -> Letters {
        self.keys.as_ref().map_or_else(Letters::default, |keys| keys.layout)
    }

    /// Before the page sees an event: what it says of who types.
    fn notice(&self, state: &mut State, event: &Event, on_keys: bool, taken: bool, shell: &mut Shell<'_, M>) {
        match event {
            Event::Window(window::Event::RedrawRequested(now)) => state.now = Some(*now),
            Event::Keyboard(keyboard::Event::KeyPressed { .. }) => state.real = true,
            Event::Mouse(mouse::Event::ButtonReleased(mouse::Button::Left) | mouse::Event::CursorLeft) => {
                state.mouse_down = false;
            }
            _ if begins_press(event) => {
                state.mouse_down |=
                    matches!(event, Event::Mouse(mouse::Event::ButtonPressed(mouse::Button::Left)));
                state.real &= on_keys;
                // A press beside the variants puts them away.
                if state.held.is_some() && !taken {
                    state.held = None;
                    shell.invalidate_layout();
                    shell.request_redraw();
                }
            }
            _ => {}
        }
    }
}

fn key_event(key: Key, text: Option<&str>) -> Event {
    Event::Keyboard(keyboard::Event::KeyPressed {
        key: key.clone(),
        modified_key: key,
        physical_key: keyboard::key::Physical::Unidentified(keyboard::key::NativeCode::Unidentified),
        location: keyboard::Location::Standard,
        modifiers: keyboard::Modifiers::default(),
        text: text.map(Into::into),
        repeat: false,
    })
}

fn begins_press(event: &Event) -> bool {
    matches!(
        event,
        Event::Mouse(mouse::Event::ButtonPressed(_)) | Event::Touch(touch::Event::FingerPressed { .. })
    )
}

impl<M> Widget<M, iced::Theme, iced::Renderer> for Typing<'_, M> {
    fn size(&self) -> Size<Length> {
        Size::new(Length::Fill, Length::Fill)
    }

    fn tag(&self) -> tree::Tag {
        tree::Tag::of::<State>()
    }

    fn state(&self) -> tree::State {
        tree::State::new(State::default())
    }

    fn children(&self) -> Vec<Tree> {
        vec![Tree::new(&self.page), Tree::new(&self.up)]
    }

    fn diff(&self, tree: &mut Tree) {
        // The keys are made, and compared, in the layout: only there is it known which ones.
        if let Some(page) = tree.children.first_mut() {
            page.diff(&self.page);
        }
    }

    fn layout(
        &mut self,
        tree: &mut Tree,
        renderer: &iced::Renderer,
        limits: &layout::Limits,
    ) -> layout::Node {
        let size = limits.max();
        self.up = self.build_keys(tree.state.downcast_ref());
        let [page_tree, keys_tree] = tree.children.as_mut_slice() else { return layout::Node::new(size) };
        keys_tree.diff(&self.up);
        let whole = layout::Limits::new(Size::ZERO, size);
        let keys = self.up.as_widget_mut().layout(keys_tree, renderer, &whole);
        let height = (size.height - keys.size().height).max(0.0);
        let rest = Size::new(size.width, height);
        let page =
            self.page.as_widget_mut().layout(page_tree, renderer, &layout::Limits::new(Size::ZERO, rest));
        layout::Node::with_children(size, vec![page, keys.move_to(Point::new(0.0, height))])
    }

    fn operate(
        &mut self,
        tree: &mut Tree,
        layout: Layout<'_>,
        renderer: &iced::Renderer,
        operation: &mut dyn Operation,
    ) {
        let mut places = layout.children();
        let [page_tree, keys_tree] = tree.children.as_mut_slice() else { return };
        let (Some(page_place), Some(keys_place)) = (places.next(), places.next()) else { return };
        self.page.as_widget_mut().operate(page_tree, page_place, renderer, operation);
        self.up.as_widget_mut().operate(keys_tree, keys_place, renderer, &mut WithoutFocus(operation));
    }

    fn update(
        &mut self,
        tree: &mut Tree,
        event: &Event,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        renderer: &iced::Renderer,
        clipboard: &mut dyn Clipboard,
        shell: &mut Shell<'_, M>,
        viewport: &Rectangle,
    ) {
        let mut places = layout.children();
        let Tree { state, children, .. } = tree;
        let state = state.downcast_mut::<State>();
        let [page_tree, keys_tree] = children.as_mut_slice() else { return };
        let (Some(page_place), Some(keys_place)) = (places.next(), places.next()) else { return };

        let mut presses = Vec::new();
        let mut local = Shell::new(&mut presses);
        let keys = self.up.as_widget_mut();
        keys.update(keys_tree, event, keys_place, cursor, renderer, clipboard, &mut local, viewport);
        shell.request_redraw_at(local.redraw_request());
        let (taken, on_keys) = (local.is_event_captured(), cursor.is_over(keys_place.bounds()));
        self.notice(state, event, on_keys, taken, shell);

        let mut lent = Lent { layout: page_place, cursor, renderer, clipboard, viewport: *viewport };
        // A press on the keys must not reach the page: its field would lose the focus.
        if !(begins_press(event) && on_keys) {
            self.page_update(page_tree, event, &mut lent, shell);
        }
        for press in presses {
            self.press(state, page_tree, press, &mut lent, shell);
        }
        if let Event::Keyboard(keyboard::Event::KeyPressed { key: Key::Named(key), modifiers, .. }) = event
            && !shell.is_event_captured()
        {
            let moved = match key {
                Named::Tab => {
                    let way = if modifiers.shift() { Way::Previous } else { Way::Next };
                    self.move_focus(page_tree, &lent, way);
                    true
                }
                Named::ArrowDown | Named::ArrowRight => self.move_beside(page_tree, &lent, Way::Next),
                Named::ArrowUp | Named::ArrowLeft => self.move_beside(page_tree, &lent, Way::Previous),
                _ => false,
            };
            if moved {
                shell.capture_event();
                shell.request_redraw();
            }
        }
        if let Event::Window(window::Event::RedrawRequested(_)) = event
            && std::mem::take(&mut state.reveal)
        {
            self.reveal_focus(page_tree, &lent);
        }
        self.watch(state, page_tree, event, &lent, shell);
    }

    fn draw(
        &self,
        tree: &Tree,
        renderer: &mut iced::Renderer,
        theme: &iced::Theme,
        style: &renderer::Style,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
    ) {
        let mut places = layout.children();
        let [page_tree, keys_tree] = tree.children.as_slice() else { return };
        let (Some(page_place), Some(keys_place)) = (places.next(), places.next()) else { return };
        self.page.as_widget().draw(page_tree, renderer, theme, style, page_place, cursor, viewport);
        if tree.state.downcast_ref::<State>().open.is_some() {
            use iced::advanced::Renderer as _;
            renderer.with_layer(keys_place.bounds(), |renderer| {
                self.up.as_widget().draw(keys_tree, renderer, theme, style, keys_place, cursor, viewport);
            });
        }
    }

    fn mouse_interaction(
        &self,
        tree: &Tree,
        layout: Layout<'_>,
        cursor: mouse::Cursor,
        viewport: &Rectangle,
        renderer: &iced::Renderer,
    ) -> mouse::Interaction {
        let (Some(page_tree), Some(place)) = (tree.children.first(), layout.children().next()) else {
            return mouse::Interaction::None;
        };
        self.page.as_widget().mouse_interaction(page_tree, place, cursor, viewport, renderer)
    }

    fn overlay<'b>(
        &'b mut self,
        tree: &'b mut Tree,
        layout: Layout<'b>,
        renderer: &iced::Renderer,
        viewport: &Rectangle,
        translation: Vector,
    ) -> Option<overlay::Element<'b, M, iced::Theme, iced::Renderer>> {
        let (page_tree, place) = (tree.children.first_mut()?, layout.children().next()?);
        self.page.as_widget_mut().overlay(page_tree, place, renderer, viewport, translation)
    }
}

/// Says of a text field which keys it wants.
pub(super) fn marked<'a, M: 'a>(look: &Look, field: impl Into<Element<'a, M>>, keys: Keys) -> Element<'a, M> {
    let behavior = Wants { keys, least: look.target() };
    Element::new(Around { content: field.into(), margin: 0.0, behavior })
}

struct Wants {
    keys: Keys,
    least: f32,
}

impl<M> Behavior<M> for Wants {
    type State = ();

    fn handle(&self, (): &mut (), _input: &Input<'_>, _shell: &mut Shell<'_, M>) {}

    fn operate(&self, (): &mut (), bounds: Rectangle, operation: &mut dyn Operation) {
        let mut keys = self.keys;
        operation.custom(None, bounds, &mut keys);
        operation.custom(None, bounds, &mut tap::Pressable::new(self.least));
    }
}
