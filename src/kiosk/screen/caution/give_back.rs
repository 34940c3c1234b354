//! The last page: the tablet goes back to the agent.

use iced::widget::{Space, column, container};
use iced::{Alignment, Length};

use super::{Message, Show, pages};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::words::{Args, format};

pub(super) fn view<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let walk = &show.hall.walk;
    let mut words = column![
        ui::symbol(look, ui::Symbol::TickDisc, 112.0),
        ui::title(look, show.say("thanks")).align_x(Alignment::Center),
        ui::hazard_line(look, show.say("give-back")).align_x(Alignment::Center),
    ]
    .spacing(look.gap(Gap::Wide))
    .align_x(Alignment::Center)
    .max_width(look.px(860.0));
    let away: Vec<String> =
        pages::all_away(walk, show.state.stop).into_iter().map(|id| show.name(id)).collect();
    if !away.is_empty() {
        let names = format::list(&show.ctx.scripts.words, &show.ctx.settings.staff, &away);
        let line = show.staff("still-away", &Args::new().text("names", names));
        words = words.push(ui::body(look, line).align_x(Alignment::Center));
    }
    if pages::is_kept(walk, show.state.stop) {
        let line = show.staff("still-kept", &Args::new());
        words = words.push(ui::strong(look, line).align_x(Alignment::Center));
    }
    let middle = container(ui::scroll(look, container(words).center_x(Length::Fill)))
        .center_y(Length::Fill)
        .padding(look.gap(Gap::Huge));
    let foot = ui::primary(look, show.staff("go-on", &Args::new()), Message::GivenBack).fill();
    column![middle, container(Element::from(foot)).padding(look.gap(Gap::Wide)), Space::new()]
        .height(Length::Fill)
        .into()
}
