//! Components of the kiosk. Each takes a [`Look`] and plain data, is generic over the
//! message, and holds no product knowledge: screens bring the words.
//!
//! Everything that can be pressed is a [`tap`](fn@tap): a scroll by touch may start on it, one finger counts,
//! and it can be reached and pressed by keyboard. There is no disabled state: what cannot be used is absent.

pub(in crate::kiosk) mod around;
mod aside;
pub mod button;
pub mod choice;
pub mod dialog;
pub mod drawing;
pub mod field;
mod focus;
#[cfg(test)]
pub(crate) mod gallery;
pub mod hazard;
pub mod hold;
pub mod idle;
pub mod ink;
pub mod kept_scroll;
pub mod keyboard;
pub mod layered;
pub mod panel;
pub mod peek;
pub mod pin;
pub mod pinned;
pub mod plot;
pub mod qr;
pub mod rows;
pub mod signal;
pub mod symbol;
pub mod tap;
#[cfg(test)]
mod tests;
pub mod typing;
pub mod words;

pub use aside::hand_row;
pub use button::{Button, chip, primary, quiet, saving, secondary, strong_chip};
pub use choice::{Choice, checkbox, choices, radio_row, stepper};
pub use dialog::{alone, dialog, headed_dialog, on_escape};
pub use drawing::drawing;
pub use field::{Field, Keys, field};
pub use hazard::{Hazard, hazard_symbol};
pub use hold::{Hold, HoldEvent, hold};
pub use idle::when_idle;
pub use ink::{InkEvent, InkPoint, Stroke, ink, ink_view};
pub use kept_scroll::{Scrolled, kept_scroll};
pub use keyboard::{Board, KeyPress, Layer, Layout, keyboard, number_pad};
pub use layered::{Over, layered};
pub use panel::{
    Edge, chosen_panel, figure_card, note, panel, press_panel, progress, rule, scroll, signed_note,
};
pub use peek::peek_scroll;
pub use pin::{PinKey, pin_pad};
pub use pinned::{at_least, pinned};
pub use plot::trip_plot;
pub use qr::qr_code;
pub use rows::{RowStep, RowsEvent, rows};
pub use signal::{Signal, caution_card, on_signal, signal_badge, signal_header};
pub use symbol::{Symbol, circle_number, symbol, symbol_in};
pub use tap::{Among, Pressable, Tap, tap};
pub use typing::{Typed, with_keyboard};
pub use words::{body, cell, figure, hazard_line, label, lead, section, small, strong, text, title};

use iced::Size;
use iced::widget::{container, responsive};

use super::theme::{Look, Wishes, style};

/// Everything on the screen is one of these.
pub type Element<'a, Message> = iced::Element<'a, Message, iced::Theme, iced::Renderer>;

/// The outermost layer of a screen: makes the look from the size of the window, paints the ground, lets Tab
/// go from one control to the next, and with `keys` brings up our own keyboard for text fields.
pub fn root<'a, M: 'a>(
    wishes: Wishes,
    keys: Option<Typed>,
    view: impl Fn(Look) -> Element<'a, M> + 'a,
) -> Element<'a, M> {
    responsive(move |size: Size| {
        let look = Look::wished(wishes, size);
        let page = with_keyboard(&look, view(look), keys.clone());
        let colors = look.colors();
        container(page)
            .width(iced::Fill)
            .height(iced::Fill)
            .style(move |_| style::flat(colors.paper, colors.ink))
            .into()
    })
    .into()
}
