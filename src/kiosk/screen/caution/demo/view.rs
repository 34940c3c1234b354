//! The page of a demonstration: the question, what it is answered with, the picture, and what is said of a try.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::super::foot::{self, chips};
use super::super::{Message as PageMessage, Show, grave};
use super::{Message, Reply, State, cards, due, help, places, point};
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element};
use crate::route::Caution;
use crate::script::demo::{DemoText, Task, Try};
use crate::walk::Due;
use crate::words::Args;

/// What the parts of the page are made from.
pub(super) struct Page<'p, 's, 'a> {
    pub show: &'p Show<'s, 'a>,
    pub demo: &'a State,
    pub due: Due<'a>,
    pub text: DemoText,
}

impl Page<'_, '_, '_> {
    /// Words of the page.
    pub fn say(&self, key: &str) -> String {
        self.show.speaker.say(&format!("demo-page-{key}"))
    }

    /// Words of the page, filled.
    pub fn say_with(&self, key: &str, args: Args) -> String {
        self.show.speaker.say_with(&format!("demo-page-{key}"), args)
    }

    /// Words of a card, a choice, a spot or a place.
    pub fn name(&self, id: &str) -> String {
        let named = self.text.items.iter().chain(&self.text.places).find(|named| named.id == id);
        named.map(|named| named.text.clone()).unwrap_or_default()
    }

    /// Whether a card stays from the last try.
    pub fn stays(&self, id: &str) -> bool {
        self.due.kept.iter().any(|kept| kept == id)
    }
}

/// A message of the demonstration as one of the page.
pub(super) fn sent(message: Message) -> PageMessage {
    PageMessage::Demo(message)
}

pub(in super::super) fn view<'a>(
    show: &Show<'_, 'a>,
    caution: &'a Caution,
    demo: &'a State,
) -> Element<'a, PageMessage> {
    let Some((due, agent_first)) = due(show, caution) else {
        return passed(show, demo);
    };
    let text = show.speaker.demonstration(due.part, &due.order);
    let page = Page { show, demo, due, text };
    if agent_first {
        return help::view(&page);
    }
    let look = &show.look;
    let answer = answer(&page);
    let body: Element<'a, PageMessage> = match (beside(&page), look.portrait()) {
        (Some(beside), false) => row![
            container(answer).width(Length::FillPortion(3)).height(Length::Fill),
            container(beside).width(Length::FillPortion(2)).height(Length::Fill)
        ]
        .spacing(look.gap(Gap::Wide))
        .height(Length::Fill)
        .into(),
        (Some(beside), true) => column![
            container(beside).height(Length::FillPortion(2)),
            container(answer).height(Length::FillPortion(5))
        ]
        .spacing(look.gap(Gap::Large))
        .height(Length::Fill)
        .into(),
        (None, _) => container(answer).height(Length::Fill).into(),
    };
    // Words in another language are whole from now on: what is said next is bound to them.
    let inside = column![top(&page), grave::end_of_page(show), body]
        .spacing(look.gap(Gap::Large))
        .padding(iced::Padding::new(look.gap(Gap::Huge)).top(look.gap(Gap::Wide)).bottom(0.0))
        .height(Length::Fill);
    column![inside, bar(&page)].height(Length::Fill).into()
}

/// The foot: how far, and back; the question and the refusal; what hands the try in.
fn bar<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    if page.show.hall.saving {
        let saving = ui::saving(look, page.show.say("saving")).fill();
        return foot::bar(page.show, iced::widget::Space::new().into(), Some(saving.into()));
    }
    let words = ui::secondary(look, page.say("words"), sent(Message::WordsAsked)).id("demo-words");
    let clear = page.demo.can_clear(&page.due).then(|| {
        Element::from(ui::secondary(look, page.say("clear"), sent(Message::Cleared)).id("demo-clear"))
    });
    let back = row![Element::from(words)].push(clear).spacing(look.gap(Gap::Medium));
    let back = column![]
        .push(progress(page))
        .push(back.wrap().vertical_spacing(look.gap(Gap::Small)))
        .spacing(look.gap(Gap::Small));
    let done = page.demo.can_finish(page.due.part).then(|| {
        let done = ui::primary(look, page.say("done"), sent(Message::Finished)).fill().height(72.0);
        Element::from(done.id("demo-done"))
    });
    foot::bar(page.show, back.into(), done)
}

/// Whose turn it is, and the question.
fn top<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let title = column![
        ui::label(look, page.say_with("turn", page.show.named())),
        ui::hazard_line(look, page.text.prompt.clone())
    ]
    .spacing(look.gap(Gap::Tiny))
    .width(Length::Fill);
    if look.portrait() {
        return column![chips(page.show), title].spacing(look.gap(Gap::Medium)).into();
    }
    row![title, chips(page.show)].spacing(look.gap(Gap::Wide)).into()
}

/// What the question is answered with.
fn answer<'a>(page: &Page<'_, '_, 'a>) -> Element<'a, PageMessage> {
    match &page.due.part.task {
        Task::Order(_) => cards::order(page),
        Task::Choose(choosing) => cards::choose(page, choosing.all),
        Task::Together(_) => cards::choose(page, true),
        Task::Set(setting) => cards::set(page, setting),
        Task::Sort(_) => places::sort(page),
        Task::Match(_) | Task::Seats(_) => places::take_and_put(page),
        Task::Point(pointing) => point::view(page, pointing),
        Task::Show => cards::show(page),
    }
}

/// The picture, and below it what is said of the last try.
fn beside<'a>(page: &Page<'_, '_, 'a>) -> Option<Element<'a, PageMessage>> {
    let look = &page.show.look;
    // Where the picture itself is pointed at, it stands with the answer.
    let pointed = matches!(page.due.part.task, Task::Point(_));
    // Where the letters are largest, what is said needs its room.
    let crowded = page.demo.reply.is_some() && look.text == TextSize::Largest;
    let drawn: Option<Element<'a, PageMessage>> = match &page.due.part.task {
        Task::Seats(_) => places::on_plan(page),
        _ => page.demo.picture.as_ref().filter(|_| !pointed).map(|(_, picture)| {
            let missing = page.show.speaker.say("no-picture");
            picture.view(look, missing)
        }),
    };
    let picture = drawn.filter(|_| !crowded).map(|drawn| container(drawn).height(Length::Fill));
    let reply = page.demo.reply.as_ref().filter(|_| !pointed).map(|reply| said(page, reply));
    if picture.is_none() && reply.is_none() {
        return None;
    }
    let reply = reply.map(|reply| match look.text {
        // Beside a picture, or in the largest letters, it may need more room than there is.
        TextSize::Largest => container(ui::scroll(look, reply)),
        _ if look.portrait() => container(ui::scroll(look, reply)),
        _ => container(reply),
    });
    if look.portrait() && picture.is_some() && reply.is_some() {
        let parts = row![].push(picture.map(|p| p.width(Length::FillPortion(2))));
        let words = reply.map(|r| r.width(Length::FillPortion(3)));
        return Some(parts.push(words).spacing(look.gap(Gap::Large)).into());
    }
    Some(Column::new().push(picture).push(reply).spacing(look.gap(Gap::Large)).into())
}

/// What is said of the last try, and what stays of it.
pub(super) fn said<'a>(page: &Page<'_, '_, 'a>, reply: &Reply) -> Element<'a, PageMessage> {
    let mut line = page.show.speaker.reply(&reply.say).0;
    if !reply.right && !page.due.kept.is_empty() && matches!(page.due.part.task, Task::Order(_)) {
        let count = u64::try_from(page.due.kept.len()).unwrap_or_default();
        line = format!("{line} {}", page.say_with("stay", Args::new().number("count", count)));
    }
    if !reply.right
        && let Some(pair) = wrong_pair(page)
    {
        line = format!("{pair} {line}");
    }
    remark(page, reply.right, line)
}

/// Which pair of the last try was wrong, where cards are matched.
fn wrong_pair(page: &Page<'_, '_, '_>) -> Option<String> {
    let Task::Match(_) = page.due.part.task else { return None };
    let Try::Placed(placed) = &page.due.last?.answer else { return None };
    let (card, place) = placed.iter().find(|(card, _)| !page.stays(card))?;
    let args = Args::new().text("card", page.name(card)).text("place", page.name(place));
    Some(page.say_with("wrong-pair", args))
}

/// What is said of a try, with its sign.
pub(super) fn remark<'a>(page: &Page<'_, '_, 'a>, right: bool, line: String) -> Element<'a, PageMessage> {
    let look = &page.show.look;
    let (sign, title) = if right { (ui::Symbol::TickDisc, "right") } else { (ui::Symbol::Alert, "not-yet") };
    ui::signed_note(look, sign, page.say(title), line)
}

/// Which try it is, and how far.
fn progress<'a>(page: &Page<'_, '_, 'a>) -> Option<Element<'a, PageMessage>> {
    let look = &page.show.look;
    let number = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    let parts = page.due.demonstration.parts.len();
    let at = page.due.demonstration.parts.iter().position(|p| p.id == page.due.part.id).unwrap_or_default();
    let mut words = Vec::new();
    if parts > 1 {
        words.push(
            page.say_with("part", Args::new().number("part", number(at + 1)).number("parts", number(parts))),
        );
    }
    if page.due.tries > 0 {
        words.push(page.say_with("try", Args::new().number("try", number(page.due.tries + 1))));
    }
    let placed = match (&page.due.part.task, &page.demo.so_far) {
        (Task::Order(_), Try::Cards(cards)) => Some(cards.len()),
        (_, Try::Placed(placed)) => Some(placed.len()),
        _ => None,
    };
    if let Some(placed) = placed {
        let args = Args::new().number("placed", number(placed)).number("all", number(page.due.order.len()));
        words.push(page.say_with("placed", args));
    }
    (!words.is_empty()).then(|| ui::small(look, words.join(" · ")).into())
}

/// After the last part: the remark that is still to be read.
fn passed<'a>(show: &Show<'_, 'a>, demo: &'a State) -> Element<'a, PageMessage> {
    let look = &show.look;
    let say = |key: &str| show.speaker.say(&format!("demo-page-{key}"));
    let line = demo.reply.as_ref().map(|reply| show.speaker.reply(&reply.say).0);
    let whose = show.say_with("for", show.named());
    let words = column![ui::label(look, whose), ui::symbol(look, ui::Symbol::TickDisc, 96.0)]
        .push(ui::title(look, say("right")))
        .push(line.map(|line| ui::hazard_line(look, line)))
        .push(grave::end_of_page(show))
        .spacing(look.gap(Gap::Wide))
        .align_x(Alignment::Center)
        .max_width(look.px(860.0));
    let middle = container(ui::scroll(look, container(words).center_x(Length::Fill)))
        .center_y(Length::Fill)
        .padding(look.gap(Gap::Huge));
    let foot: Element<'a, PageMessage> = if show.hall.saving {
        ui::saving(look, show.say("saving")).fill().into()
    } else {
        ui::primary(look, say("go-on"), sent(Message::RemarkRead)).fill().id("demo-go-on").into()
    };
    column![middle, container(foot).padding(look.gap(Gap::Wide))].height(Length::Fill).into()
}
