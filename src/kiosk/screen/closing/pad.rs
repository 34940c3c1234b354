//! The pad to sign on, and the signature that comes of it.

use iced::widget::{container, responsive};
use iced::{Alignment, Length, Size};

use super::{Message, Show, State};
use crate::kiosk::hall::Hall;
use crate::kiosk::screen::Action;
use crate::kiosk::theme::{Gap, style};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::walk::{Event, Ink};

use super::sign::signer;

impl State {
    /// Proposes the signature of whoever signs now. Only shape is kept.
    pub(super) fn sign(&mut self, hall: &Hall) -> Action {
        let Some(by) = signer(self, hall) else { return Action::None };
        if self.strokes.is_empty() {
            return Action::None;
        }
        let small = |n: u16| i16::try_from(n).unwrap_or(i16::MAX);
        let strokes =
            self.strokes.iter().map(|s| s.iter().map(|p| (small(p.x), small(p.y))).collect()).collect();
        // A window that was turned meanwhile must not cut what is there.
        let lowest = self.strokes.iter().flatten().map(|p| p.y).max().unwrap_or(0);
        let ink = Ink { height: self.height.max(lowest).max(1), strokes };
        self.propose(vec![Event::Signed { by, ink }])
    }
}

/// The pad, as large as the space. It lies in nothing that scrolls.
pub(super) fn view<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let (look, strokes) = (show.look, show.state.strokes.as_slice());
    let colors = look.colors();
    let ground = style::ground(&look, colors.leaf, colors.edge);
    let pad = responsive(move |size: Size| {
        let height = (size.height / size.width.max(1.0) * ui::ink::WIDTH).clamp(1.0, 4000.0).round() as u16;
        ui::ink(&look, strokes, move |event| Message::Inked(event, height))
    });
    container(pad)
        .padding(look.gap(Gap::Small))
        .width(Length::Fill)
        .height(Length::Fill)
        .style(move |_| ground)
        .into()
}

/// What can be done with what is written; nothing while the pad is empty.
pub(super) fn tools<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    if show.state.strokes.is_empty() {
        return ui::small(look, show.say("sign-hint")).into();
    }
    iced::widget::row![
        ui::chip(look, show.say("sign-undo"), Message::UndoPressed).before(Symbol::Left).height(56.0),
        ui::chip(look, show.say("sign-clear"), Message::ClearPressed).before(Symbol::Cross).height(56.0),
    ]
    .spacing(look.gap(Gap::Medium))
    .align_y(Alignment::Center)
    .wrap()
    .vertical_spacing(look.gap(Gap::Small))
    .into()
}
