//! What every page of the renter has below and beside its words: who answers, a question, a refusal, another
//! language, another size of text.

use iced::widget::{Row, column, container, row};
use iced::{Alignment, Length};

use super::{AskMessage, Message, Show, pages};
use crate::kiosk::theme::{Gap, Hand, TextSize};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::{Answers, Caution, Step};
use crate::walk::PersonId;
use crate::words::{Args, Reader};

/// Which caution of how many that wait for whoever has the tablet; none where all are on the page.
pub(super) fn count(show: &Show<'_, '_>) -> Option<String> {
    let (first, last, all) = show.state.count(show.hall)?;
    let number = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    let args = Args::new().number("first", number(first)).number("last", number(last));
    let args = args.number("all", number(all));
    Some(show.say_with(if first == last { "of" } else { "of-several" }, args))
}

/// Whose page it is; on their first one also that they are to read it themselves.
pub(super) fn whose<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    // Where the letters are largest, there is no room to say more.
    let room = show.look.text != TextSize::Largest;
    let key = if room && show.state.is_first(show.hall) { "for-first" } else { "for" };
    ui::strong(&show.look, show.say_with(key, show.named())).into()
}

/// Another size of text, and another language where the lot offers one.
pub(super) fn chips<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let (key, size) = match look.text {
        TextSize::Largest => ("smaller", TextSize::Large),
        TextSize::Usual | TextSize::Large => ("larger", TextSize::Largest),
    };
    // Another language asks again what was answered before, and so it must be clear whose answers.
    let language = other_language(show).filter(|_| show.state.reading().is_some());
    let language = language.map(|(language, name)| {
        Element::from(ui::chip(look, name, Message::LanguageAsked(language)).id("caution-language"))
    });
    let mut line = Row::new().spacing(look.gap(Gap::Medium));
    if !show.hall.saving {
        line = line
            .push(ui::chip(look, show.say(key), Message::TextAsked(size)).id("caution-text-size"))
            .push(language);
    }
    line.wrap().vertical_spacing(look.gap(Gap::Small)).into()
}

/// The language after the one on the page, and its name in its own words.
fn other_language(show: &Show<'_, '_>) -> Option<(String, String)> {
    let offered = &show.ctx.scripts.lot.value.languages;
    let now = show.hall.walk.reader().map(|r| r.value.language.as_str())?;
    let at = offered.iter().position(|l| l == now).map_or(0, |at| at + 1);
    let other = offered.get(at).or_else(|| offered.first()).filter(|l| *l != now)?;
    let reader = Reader::new(other, show.speaker.reader().system);
    Some((other.clone(), show.ctx.scripts.words.say(&reader, "caution-page-language", &Args::new())))
}

/// Why the page cannot be answered yet: its end was not in sight.
pub(super) fn not_yet<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    if show.is_whole() {
        return None;
    }
    let words = ui::strong(look, show.say("more-below")).width(Length::Fill);
    let line = row![ui::symbol(look, Symbol::Down, 32.0), words]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
    Some(container(line).padding([look.gap(Gap::Medium), 0.0]).into())
}

/// Who answers this page, where that does not stand beside the target already; who else has answered it or is still
/// to; and the way on for somebody else.
pub(super) fn who<'a>(
    show: &Show<'_, 'a>,
    step: &Step,
    cautions: &[&Caution],
    named: bool,
) -> Element<'a, Message> {
    let look = &show.look;
    let walk = &show.hall.walk;
    let each = cautions.iter().any(|c| c.who == Answers::EachDriver);
    let may = |id: PersonId| cautions.iter().any(|c| pages::who_may(walk, step, c).contains(&id));
    let others = walk.drivers().map(|p| p.id).filter(|id| each && show.state.person != Some(*id));
    let others = others.map(|id| -> Element<'a, Message> {
        let args = Args::new().text("name", show.name(id));
        let (sign, key) = match (may(id), walk.is_present(id)) {
            (true, _) => (Symbol::Ring, "later"),
            (false, true) => (Symbol::TickDisc, "answered"),
            (false, false) => (Symbol::Ring, "away"),
        };
        let line = row![ui::symbol(look, sign, 22.0), ui::small(look, show.say_with(key, args))];
        line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center).into()
    });
    let others = each.then(|| {
        let others = Row::with_children(others).spacing(look.gap(Gap::Medium));
        others.wrap().vertical_spacing(look.gap(Gap::Tiny))
    });
    let other = (!show.hall.saving && show.state.others_wait(show.hall)).then(|| {
        let label = show.say_with("not-me", show.named());
        Element::from(ui::chip(look, label, Message::OtherAsked).id("caution-other").height(52.0))
    });
    let label = if each { "each-driver" } else { "who" };
    let name = Row::new()
        .push(named.then(|| ui::section(look, show.reader())))
        .push(other)
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center)
        .wrap()
        .vertical_spacing(look.gap(Gap::Tiny));
    column![]
        .push((named || each).then(|| ui::label(look, show.say(label))))
        .push(others)
        .push(name)
        .spacing(look.gap(Gap::Tiny))
        .width(Length::Fill)
        .into()
}

/// The foot: who answers; then question, refusal and, on a shared page, the answer on the side of the hand.
pub(super) fn bar<'a>(
    show: &Show<'_, 'a>,
    who: Element<'a, Message>,
    answer: Option<Element<'a, Message>>,
) -> Element<'a, Message> {
    let look = &show.look;
    let asks = asks(show);
    // The outer end is where the hand is.
    let outer = if look.hand == Hand::Left { Alignment::Start } else { Alignment::End };
    let end = |part: Element<'a, Message>| container(part).width(Length::FillPortion(7)).align_x(outer);
    let content: Element<'a, Message> = match (answer, look.portrait()) {
        (answer, true) => column![who, asks].push(answer).spacing(look.gap(Gap::Large)).into(),
        (Some(answer), false) => ui::hand_row(
            look,
            vec![
                container(who).width(Length::FillPortion(5)).into(),
                end(asks).into(),
                container(answer).width(Length::FillPortion(6)).into(),
            ],
        )
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::Center)
        .into(),
        (None, false) => {
            ui::hand_row(look, vec![container(who).width(Length::FillPortion(5)).into(), end(asks).into()])
                .spacing(look.gap(Gap::Wide))
                .align_y(Alignment::End)
                .into()
        }
    };
    container(content)
        .padding(
            iced::Padding::new(look.gap(Gap::Huge)).top(look.gap(Gap::Medium)).bottom(look.gap(Gap::Wide)),
        )
        .width(Length::Fill)
        .into()
}

/// The question, and quietly the refusal.
fn asks<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let mut asks = Row::new().spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if !show.hall.saving {
        let question = ui::secondary(look, show.say("question"), Message::Ask(AskMessage::QuestionPressed));
        let refuse = ui::quiet(look, show.say("refuse"), Message::Ask(AskMessage::RefusePressed));
        let refuse = Element::from(refuse.id("caution-refuse"));
        let question = Element::from(question.id("caution-question"));
        // The question is the easier one to reach: at the outer end, or in portrait the first.
        asks = if look.portrait() || look.hand == Hand::Left {
            asks.push(question).push(refuse)
        } else {
            asks.push(refuse).push(question)
        };
    }
    asks.wrap().vertical_spacing(look.gap(Gap::Small)).align_x(Alignment::End).into()
}
