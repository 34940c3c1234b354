//! The last page: the tablet goes back to the agent.

use iced::widget::{column, container};
use iced::{Alignment, Length};

use super::refusal::AGENT_HOLD;
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
        pages::all_lacking(walk, show.state.stop).into_iter().map(|id| show.name(id)).collect();
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
    let staff = |key: &str| show.staff(key, &Args::new());
    let hold = ui::hold(look, staff("go-on"), staff("go-on-line"), Message::GivenBack)
        .id("caution-agent")
        .page(show.state.turn)
        .lasting(AGENT_HOLD);
    let foot = column![ui::label(look, staff("for-agent")), Element::from(hold)]
        .align_x(Alignment::Center)
        .width(Length::Fill);
    column![middle, ui::rule(look), container(foot).padding(look.gap(Gap::Wide))].height(Length::Fill).into()
}
