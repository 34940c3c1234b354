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

/// Which page of how many; none when there is but one.
pub(super) fn count(show: &Show<'_, '_>) -> Option<String> {
    let (at, all) = show.state.position();
    let number = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    (all > 1)
        .then(|| show.say_with("of", Args::new().number("page", number(at + 1)).number("pages", number(all))))
}

/// Another size of text, and another language where the lot offers one.
pub(super) fn chips<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let (key, size) = match look.text {
        TextSize::Largest => ("smaller", TextSize::Large),
        TextSize::Usual | TextSize::Large => ("larger", TextSize::Largest),
    };
    let language = other_language(show).map(|(language, name)| {
        Element::from(ui::chip(look, name, Message::LanguageAsked(language)).id("caution-language"))
    });
    let mut line = Row::new().spacing(look.gap(Gap::Medium));
    if !show.hall.saving {
        line = line
            .push(ui::chip(look, show.say(key), Message::TextAsked(size)).id("caution-text-size"))
            .push(language);
    }
    line.into()
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

/// Why the page cannot be answered yet: nobody said who answers, or its end was not in sight.
pub(super) fn not_yet<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let (symbol, key) = match (show.is_whole(), show.state.person) {
        (true, Some(_)) => return None,
        (false, _) => (Symbol::Down, "more-below"),
        (true, None) => (Symbol::Down, "who-first"),
    };
    let line = row![ui::symbol(look, symbol, 32.0), ui::strong(look, show.say(key)).width(Length::Fill)]
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center);
    Some(container(line).padding([look.gap(Gap::Medium), 0.0]).into())
}

/// Who answers this page: one to choose where several may, and who has answered or is not here.
pub(super) fn who<'a>(show: &Show<'_, 'a>, step: &Step, cautions: &[&Caution]) -> Element<'a, Message> {
    let look = &show.look;
    let walk = &show.hall.walk;
    let may = |id: PersonId| cautions.iter().any(|c| pages::who_may(walk, step, c).contains(&id));
    let each = cautions.iter().any(|c| c.who == Answers::EachDriver);
    let people: Vec<PersonId> = if each {
        walk.drivers().map(|p| p.id).collect()
    } else {
        walk.adults().map(|p| p.id).filter(|id| may(*id)).collect()
    };
    let several = people.iter().filter(|id| may(**id)).count() > 1;
    let part = |id: PersonId| -> Element<'a, Message> {
        let name = show.name(id);
        let args = Args::new().text("name", name.clone());
        if may(id) && several && !show.hall.saving {
            let chosen = show.state.person == Some(id);
            return ui::chip(look, name, Message::PersonChosen(id)).chosen(chosen).height(56.0).into();
        }
        if may(id) {
            return ui::section(look, name).into();
        }
        if walk.is_present(id) {
            let line = row![
                ui::symbol(look, Symbol::TickDisc, 26.0),
                ui::body(look, show.say_with("answered", args))
            ];
            return line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center).into();
        }
        ui::small(look, show.say_with("away", args)).into()
    };
    let parts = Row::with_children(people.into_iter().map(part))
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center)
        .wrap()
        .vertical_spacing(look.gap(Gap::Small));
    let label = if each { "each-driver" } else { "who" };
    column![ui::label(look, show.say(label)), parts].spacing(look.gap(Gap::Small)).width(Length::Fill).into()
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

/// The question, and quietly the refusal, once it is clear whose it would be.
fn asks<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let mut asks = Row::new().spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if !show.hall.saving {
        let question = ui::secondary(look, show.say("question"), Message::Ask(AskMessage::QuestionPressed));
        let refuse = show.state.person.is_some().then(|| {
            let refuse = Message::Ask(AskMessage::RefusePressed);
            Element::from(ui::quiet(look, show.say("refuse"), refuse).id("caution-refuse"))
        });
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
