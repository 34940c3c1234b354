//! After two wrong tries: the agent shows the real thing, then the renter does it again.

use iced::widget::{column, container};
use iced::{Alignment, Length};

use super::super::Message as PageMessage;
use super::super::refusal::AGENT_HOLD;
use super::Message;
use super::view::{Page, remark};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element, HoldEvent};
use crate::words::Args;

pub(super) fn view<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let staff = |key: &str, args: &Args| page.show.ctx.say_with(&format!("demo-page-{key}"), args);
    let named = page.show.named();
    let said = page.demo.reply.as_ref().map(|reply| {
        let line = page.show.speaker.reply(&reply.say).0;
        remark(page, false, line)
    });
    let words = column![ui::title(look, page.say("help-give")).align_x(Alignment::Center)]
        .push(said)
        .push(ui::rule(look))
        .push(ui::label(look, staff("for-agent", &Args::new())))
        .push(ui::hazard_line(look, staff("help-show", &named)).align_x(Alignment::Center))
        .push(ui::lead(look, page.text.prompt.clone()).align_x(Alignment::Center))
        .push(ui::small(look, staff("help-evidence", &Args::new())).align_x(Alignment::Center))
        .spacing(look.gap(Gap::Wide))
        .align_x(Alignment::Center)
        .max_width(look.px(860.0));
    let middle = container(ui::scroll(look, container(words).center_x(Length::Fill)))
        .center_y(Length::Fill)
        .padding(look.gap(Gap::Huge));
    let foot: Element<'a, PageMessage> = if page.show.hall.saving {
        ui::saving(look, page.show.say("saving")).fill().into()
    } else {
        agent_hold(page, "demo-helped", staff("helped", &named), Message::Helped)
    };
    column![middle, container(foot).padding(look.gap(Gap::Wide))].height(Length::Fill).into()
}

/// What only the agent may say: they hold on, longer than anybody taps.
pub(super) fn agent_hold<'a>(
    page: &Page<'_, '_, 'a>,
    id: &'static str,
    label: String,
    held: fn(HoldEvent) -> Message,
) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let line = page.show.ctx.say("demo-page-agent-hold");
    let hold = ui::hold(look, label, line, move |event| PageMessage::Demo(held(event)))
        .id(id)
        .page(page.show.state.turn)
        .lasting(AGENT_HOLD);
    container(Element::from(hold)).center_x(Length::Fill).into()
}
