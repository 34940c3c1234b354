//! Your copy: it is offered, the renter chooses, the record is sealed.

use iced::widget::{column, row};
use iced::{Alignment, Length};

use super::{AskMessage, Message, Page, Show, pass, sign};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element};
use crate::walk::{CopyChoice, Phase};

pub(super) fn view<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let walk = &show.hall.walk;
    let chosen = walk.copy().map(|c| c.value);
    let option = |choice: CopyChoice, key: &str| -> Element<'a, Message> {
        let line = Some(show.say(&format!("{key}-line")));
        let is = chosen == Some(choice);
        ui::radio_row(
            look,
            Choice { label: show.say(key), line, chosen: is, message: Message::CopyChosen(choice) },
        )
    };
    let mut page = column![].spacing(look.gap(Gap::Large)).width(Length::Fill);
    if let Some(stopped) = walk.stopped() {
        page = page
            .push(sign::stopped_words(show, stopped.value.reason.clone(), stopped.value.by))
            .push(ui::rule(look));
    }
    page = page
        .push(ui::title(look, show.say("copy-title")))
        .push(ui::lead(look, show.say("copy-line")))
        .push(option(CopyChoice::Slip, "copy-slip"))
        .push(option(CopyChoice::Stick, "copy-stick"))
        .push(option(CopyChoice::Declined, "copy-declined"));
    show.page(ui::scroll(look, page).height(Length::Fill), foot(show))
}

fn foot<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let walk = &show.hall.walk;
    if show.hall.saving {
        let key = if show.state.saving { "saving" } else { "sealing" };
        return ui::saving(look, show.staff(key)).fill().into();
    }
    let mut small = row![].spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if !show.state.is_with_agent() {
        small = small.push(pass::to_agent(show));
    } else if matches!(walk.phase(), Phase::Signing | Phase::Stopped) {
        small = small.push(ui::quiet(look, show.staff("reopen"), Message::Ask(AskMessage::ReopenPressed)));
    } else if walk.phase() == Phase::Walking {
        small = small.push(ui::secondary(look, show.staff("back"), Message::PageAsked(Page::Sign)));
    }
    let small = small.wrap();
    let missing = walk.missing_to_seal();
    if !missing.is_empty() {
        let lacks = walk.copy().is_none().then(|| show.lacks(show.say("copy-lacks")));
        let parts = column![].push(lacks).push(small);
        return parts.spacing(look.gap(Gap::Small)).into();
    }
    let seal = ui::primary(look, show.staff("seal"), Message::SealPressed).fill().height(80.0);
    let line = ui::small(look, show.staff("seal-line"));
    if look.portrait() {
        return column![line, Element::from(seal), small].spacing(look.gap(Gap::Medium)).into();
    }
    let left = column![line, small].spacing(look.gap(Gap::Small)).width(Length::FillPortion(1));
    let seal = iced::widget::container(Element::from(seal)).width(Length::FillPortion(1));
    ui::hand_row(look, vec![left.into(), seal.into()])
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::End)
        .into()
}
