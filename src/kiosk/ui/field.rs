//! A text field: label, field, and a line that says what is wrong.

use iced::widget::{Id, column, row, text_input};
use iced::{Alignment, Padding};

use super::symbol::{Symbol, symbol};
use super::{Element, words};
use crate::kiosk::theme::{Gap, Look, Type, style};

/// What a field is for; it decides which keys come up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Keys {
    /// Letters, digits and the usual marks.
    #[default]
    Letters,
    /// Letters for a name: each word begins with a capital.
    Names,
    /// Digits alone: a PIN, an age, a year.
    Digits,
    /// Digits with a decimal point: a reading, a weight.
    Decimal,
    /// Digits with the signs of telephone numbers.
    Phone,
}

/// A field that is being put together.
pub struct Field<'a, M> {
    look: Look,
    id: &'static str,
    label: Option<String>,
    value: &'a str,
    placeholder: String,
    error: Option<String>,
    secret: bool,
    find: bool,
    keys: Keys,
    on_input: Box<dyn Fn(String) -> M + 'a>,
    on_submit: Option<M>,
}

/// A field with this id that shows `value` and sends what becomes of it.
pub fn field<'a, M>(
    look: &Look,
    id: &'static str,
    value: &'a str,
    on_input: impl Fn(String) -> M + 'a,
) -> Field<'a, M> {
    Field {
        look: *look,
        id,
        label: None,
        value,
        placeholder: String::new(),
        error: None,
        secret: false,
        find: false,
        keys: Keys::Letters,
        on_input: Box::new(on_input),
        on_submit: None,
    }
}

impl<M> Field<'_, M> {
    /// What it asks for, above it.
    #[must_use]
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = Some(label.into());
        self
    }

    /// What stands in it while it is empty.
    #[must_use]
    pub fn placeholder(mut self, words: impl Into<String>) -> Self {
        self.placeholder = words.into();
        self
    }

    /// What is wrong with what stands in it, if anything.
    #[must_use]
    pub fn error(mut self, error: Option<String>) -> Self {
        self.error = error;
        self
    }

    /// Shows dots: for a PIN or a passphrase.
    #[must_use]
    pub fn secret(mut self) -> Self {
        self.secret = true;
        self
    }

    /// With a lens, for a search.
    #[must_use]
    pub fn find(mut self) -> Self {
        self.find = true;
        self
    }

    /// Brings up letters with a capital at the head of each word, until Shift says otherwise.
    #[must_use]
    pub fn names(mut self) -> Self {
        self.keys = Keys::Names;
        self
    }

    /// Brings up digits alone.
    #[must_use]
    pub fn digits(mut self) -> Self {
        self.keys = Keys::Digits;
        self
    }

    /// Brings up digits and a decimal point.
    #[must_use]
    pub fn decimal(mut self) -> Self {
        self.keys = Keys::Decimal;
        self
    }

    /// Brings up digits and the signs of telephone numbers.
    #[must_use]
    pub fn phone(mut self) -> Self {
        self.keys = Keys::Phone;
        self
    }

    /// What Enter, or Done on our keyboard, sends.
    #[must_use]
    pub fn on_submit(mut self, message: M) -> Self {
        self.on_submit = Some(message);
        self
    }
}

impl<'a, M: Clone + 'a> From<Field<'a, M>> for Element<'a, M> {
    fn from(field: Field<'a, M>) -> Self {
        let look = field.look;
        let size = look.size(Type::Body);
        // The text is as high as the target asks, whatever its size.
        let pad = ((look.target() - size * 1.3) / 2.0).max(look.gap(Gap::Small));
        let left = if field.find { look.px(60.0) } else { look.gap(Gap::Large) };
        let input = text_input(&field.placeholder, field.value)
            .id(Id::new(field.id))
            .font(Look::font(Type::Body))
            .size(size)
            .line_height(iced::widget::text::LineHeight::Relative(1.3))
            .padding(Padding { top: pad, bottom: pad, left, right: look.gap(Gap::Large) })
            .secure(field.secret)
            .on_input(field.on_input)
            .on_submit_maybe(field.on_submit)
            .style(style::field(look, field.error.is_some()));
        let input: Element<'a, M> = super::typing::marked(&look, input, field.keys);
        let input: Element<'a, M> = if field.find {
            let lens = iced::widget::container(symbol(&look, Symbol::Search, 28.0))
                .padding(Padding::default().left(look.gap(Gap::Large)))
                .center_y(iced::Fill);
            iced::widget::stack![input, lens].into()
        } else {
            input
        };
        let wrong = field.error.map(|error| {
            row![symbol(&look, Symbol::Alert, 22.0), words::strong(&look, error)]
                .spacing(look.gap(Gap::Small))
                .align_y(Alignment::Center)
        });
        column![]
            .push(field.label.map(|label| words::label(&look, label)))
            .push(input)
            .push(wrong)
            .spacing(look.gap(Gap::Tiny))
            .into()
    }
}
