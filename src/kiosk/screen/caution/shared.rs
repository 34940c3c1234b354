//! A page for the milder cautions of a step: a panel each, and one answer for all.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::foot::{self, chips, who};
use super::{Message, Show, grave};
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Element};
use crate::route::{Caution, Step};

pub(super) fn view<'a>(show: &Show<'_, 'a>, step: &Step, cautions: &[&Caution]) -> Element<'a, Message> {
    let look = &show.look;
    let step_title = show.speaker.step(step).title;
    let title = column![foot::whose(show), ui::title(look, step_title)]
        .spacing(look.gap(Gap::Tiny))
        .width(Length::Fill);
    let mut end = row![].spacing(look.gap(Gap::Large)).align_y(Alignment::Center);
    if let Some(count) = foot::count(show) {
        end = end.push(ui::section(look, count));
    }
    let end = end.push(chips(show));
    let top: Element<'a, Message> = if look.portrait() {
        column![end, title].spacing(look.gap(Gap::Large)).into()
    } else {
        row![title, end].spacing(look.gap(Gap::Wide)).into()
    };
    let alone = cautions.len() == 1;
    let panels: Vec<Element<'a, Message>> = cautions.iter().map(|c| panel(show, c, alone)).collect();
    let list = Column::with_children(panels)
        .push(grave::end_of_page(show))
        .push(ui::small(look, show.say("small-print")))
        .spacing(look.gap(Gap::Large));
    let page = column![top, ui::scroll(look, list).height(Length::Fill)]
        .spacing(look.gap(Gap::Wide))
        .padding(iced::Padding::new(look.gap(Gap::Huge)).bottom(0.0))
        .height(Length::Fill);
    let bar = foot::bar(show, who(show, step, cautions, true), Some(answer(show, cautions.len())));
    column![page, bar].height(Length::Fill).into()
}

/// Signal word, what is dangerous, what it does, what to do; larger where it stands alone.
fn panel<'a>(show: &Show<'_, 'a>, caution: &Caution, alone: bool) -> Element<'a, Message> {
    let look = &show.look;
    let text = show.speaker.caution(caution);
    let words = if alone {
        column![ui::hazard_line(look, text.hazard), ui::lead(look, text.harm), ui::lead(look, text.avoid)]
            .spacing(look.gap(Gap::Large))
    } else {
        column![ui::section(look, text.hazard), ui::body(look, text.harm), ui::lead(look, text.avoid)]
            .spacing(look.gap(Gap::Small))
    };
    let words = words.width(Length::Fill);
    let badge = ui::signal_badge(look, grave::signal(caution.signal), text.signal);
    let content: Element<'a, Message> = if look.portrait() {
        column![badge, words].spacing(look.gap(Gap::Medium)).into()
    } else {
        row![container(badge), words].spacing(look.gap(Gap::Wide)).into()
    };
    ui::panel(look, content).into()
}

/// One answer for the page, or what is needed before it.
fn answer<'a>(show: &Show<'_, 'a>, count: usize) -> Element<'a, Message> {
    let look = &show.look;
    if show.hall.saving {
        return ui::saving(look, show.say("saving")).fill().into();
    }
    if let Some(hint) = foot::not_yet(show) {
        return hint;
    }
    let key = if count == 1 { "read" } else { "read-all" };
    ui::primary(look, show.say(key), Message::ReadPressed).fill().height(80.0).id("caution-read").into()
}
