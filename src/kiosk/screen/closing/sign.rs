//! Consent first, then one signature after the other; each page for one person.

use iced::widget::{Column, Row, column, container, row};
use iced::{Alignment, Length};

use super::{AskMessage, Message, Page, Show, State, pad, pass};
use crate::kiosk::hall::Hall;
use crate::kiosk::theme::Gap;
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::record::text::consent_text;
use crate::walk::{Decision, PersonId, Phase, Signature, Who};
use crate::words::{Args, format};

/// The adult who is here, when there is but one.
pub(super) fn only_adult(hall: &Hall) -> Option<PersonId> {
    match adults_here(hall).as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}

pub(super) fn adults_here(hall: &Hall) -> Vec<PersonId> {
    hall.walk.adults().map(|p| p.id).filter(|id| hall.walk.is_present(*id)).collect()
}

/// Who chooses how the record is kept: whoever was named, else whoever has the tablet.
pub(super) fn consenter(state: &State, hall: &Hall) -> Option<PersonId> {
    let holds = if let Who::Person(id) = state.holds { Some(id) } else { None };
    state.consent_by.or(holds).or_else(|| only_adult(hall))
}

/// Who signs: each driver, then the agent. When the unit stays, the agent first; others if they wish.
fn signers(hall: &Hall) -> Vec<Who> {
    let drivers = hall.walk.drivers().map(|p| Who::Person(p.id));
    if hall.walk.phase() == Phase::Stopped {
        [Who::Agent].into_iter().chain(drivers).collect()
    } else {
        drivers.chain([Who::Agent]).collect()
    }
}

/// Who signs now: whoever was chosen, else the first who has neither signed nor refused and is here.
pub(super) fn signer(state: &State, hall: &Hall) -> Option<Who> {
    let signed =
        |who: &Who| matches!(hall.walk.signature(*who).map(|s| &s.value), Some(Signature::Signed { .. }));
    let here = |who: &Who| match who {
        Who::Agent => true,
        Who::Person(id) => hall.walk.is_present(*id),
    };
    let all = signers(hall);
    let open = |who: &&Who| hall.walk.signature(**who).is_none();
    state
        .signer
        .filter(|who| !signed(who))
        .or_else(|| all.iter().filter(open).find(|who| here(who)).copied())
        .or_else(|| all.iter().find(open).copied())
        .or_else(|| all.iter().find(|who| !signed(who)).copied())
}

pub(super) fn view<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    if asks_consent(show) { consent(show) } else { signature(show) }
}

fn asks_consent(show: &Show<'_, '_>) -> bool {
    let answered = show.hall.walk.consents().next().is_some();
    !show.is_stopped() && (!answered || show.state.consent_again)
}

/// Who has the tablet in hand: whoever chooses or signs; the agent where something is to be decided.
pub(super) fn holder(show: &Show<'_, '_>) -> Option<Who> {
    if asks_consent(show) {
        return consenter(show.state, show.hall).map(Who::Person);
    }
    match signer(show.state, show.hall) {
        Some(Who::Person(id)) if undecided(show).is_none() && show.hall.walk.is_present(id) => {
            Some(Who::Person(id))
        }
        _ => Some(Who::Agent),
    }
}

/// Who has neither signed nor refused, but for whoever signs now: names, joined.
fn still_to_sign(show: &Show<'_, '_>, now: Who) -> Option<String> {
    // When the unit stays, the agent's signature is enough.
    if show.is_stopped() {
        return None;
    }
    let open = |who: &Who| *who != now && show.hall.walk.signature(*who).is_none();
    let name = |who: Who| match who {
        Who::Agent => show.say("sign-still-agent"),
        Who::Person(id) => show.name(id),
    };
    let names: Vec<String> = signers(show.hall).into_iter().filter(open).map(name).collect();
    if names.is_empty() {
        return None;
    }
    let names = format::list(&show.ctx.scripts.words, show.speaker.reader(), &names);
    Some(show.say_with("sign-still", Args::new().text("names", names)))
}

/// How the renter wants the record. Nothing is ticked beforehand, and paper is as large as the rest.
fn consent<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let (lines, _) = consent_text(show.speaker);
    // Title, points, the sentence that is agreed to: all that the answer is bound to stands on the page.
    let mut lines = lines.into_iter();
    let title = lines.next().unwrap_or_default();
    let sentence = lines.next_back().unwrap_or_default();
    let points = lines.enumerate().map(|(at, point)| numbered(show, at + 1, point));
    let text = Column::with_children(points).spacing(look.gap(Gap::Medium));
    let option = |given: bool, key: &str, line: String| -> Element<'a, Message> {
        let (chosen, message) = (show.state.consent == Some(given), Message::ConsentChosen(given));
        ui::radio_row(look, Choice { label: show.say(key), line: Some(line), chosen, message })
    };
    let given = option(true, "consent-given", sentence);
    let paper = option(false, "consent-paper", show.say("consent-paper-line"));
    let both: Element<'a, Message> = if look.portrait() {
        column![given, paper].spacing(look.gap(Gap::Medium)).into()
    } else {
        row![given, paper].spacing(look.gap(Gap::Large)).into()
    };
    // The choice comes after the terms, and scrolls with them: who chooses has had them before their eyes.
    let terms = column![Element::from(ui::panel(look, text)), both].spacing(look.gap(Gap::Large));
    let page = column![ui::title(look, title), ui::scroll(look, terms).height(Length::Fill),]
        .spacing(look.gap(Gap::Large));
    show.page(page, consent_foot(show))
}

/// A point with its number.
fn numbered<'a>(show: &Show<'_, 'a>, number: usize, point: String) -> Element<'a, Message> {
    let look = &show.look;
    let number = ui::circle_number(look, u16::try_from(number).unwrap_or(0), false, 34.0);
    row![number, ui::body(look, point).width(Length::Fill)].spacing(look.gap(Gap::Medium)).into()
}

fn consent_foot<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let here = adults_here(show.hall);
    let by = consenter(show.state, show.hall);
    let who = (here.len() > 1).then(|| {
        let people =
            here.into_iter().map(|id| Choice::new(show.name(id), by == Some(id), Message::ConsentBy(id)));
        column![ui::label(look, show.say("consent-who")), ui::choices(look, people)]
            .spacing(look.gap(Gap::Small))
    });
    let back = ui::secondary(look, show.say("sign-read-again"), Message::PageAsked(Page::Take));
    let done: Element<'a, Message> = match show.state.consent {
        Some(_) if show.hall.saving => ui::saving(look, show.say("saving")).fill().into(),
        Some(_) => ui::primary(look, show.say("consent-done"), Message::ConsentDone).fill().into(),
        None => show.lacks(show.say("consent-lacks")),
    };
    if look.portrait() {
        return column![].push(who).push(done).push(back).spacing(look.gap(Gap::Large)).into();
    }
    row![]
        .push(back)
        .push(who.map(|w| w.width(Length::Fill)))
        .push(container(done).width(Length::Fill))
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::End)
        .into()
}

/// One person's page to sign on.
fn signature<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    let Some(who) = signer(show.state, show.hall) else {
        return show.page(ui::title(look, show.say("copy-title")), to_copy(show));
    };
    let mut top = column![].spacing(look.gap(Gap::Small)).width(Length::Fill);
    if let Some(stopped) = show.hall.walk.stopped() {
        top = top.push(stopped_words(show, stopped.value.reason.clone(), stopped.value.by));
    }
    if undecided(show).is_some() {
        top = top.push(ui::title(look, show.staff("sign-undecided")));
    } else {
        let (title, line) = asked_to_sign(show, who);
        let still = still_to_sign(show, who).map(|words| ui::small(look, words).color(look.ink()));
        top = top.push(ui::title(look, title)).push(ui::body(look, line)).push(still);
    }
    let chips = chips(show, who);
    let head: Element<'a, Message> = if look.portrait() {
        column![top, chips].spacing(look.gap(Gap::Medium)).into()
    } else {
        row![top, chips].spacing(look.gap(Gap::Wide)).into()
    };
    let field = match in_place_of_pad(show, who) {
        Some(other) => container(ui::scroll(look, other)).height(Length::Fill).into(),
        None => pad::view(show),
    };
    let page = column![head].push(consent_line(show)).push(field).spacing(look.gap(Gap::Medium));
    show.page(page, foot(show, who))
}

/// Why the unit stays, in large words.
pub(super) fn stopped_words<'a>(show: &Show<'_, 'a>, reason: String, by: Who) -> Element<'a, Message> {
    let look = &show.look;
    let name = match by {
        Who::Agent => show.say("stopped-agent"),
        Who::Person(id) => show.name(id),
    };
    column![
        ui::label(look, show.say("stopped")),
        ui::hazard_line(look, reason),
        ui::small(look, show.say_with("stopped-by", Args::new().text("name", name))),
    ]
    .spacing(look.gap(Gap::Tiny))
    .into()
}

fn asked_to_sign(show: &Show<'_, '_>, who: Who) -> (String, String) {
    match who {
        Who::Person(id) => {
            let line = if show.is_stopped() { "stopped-line" } else { "sign-line" };
            (show.say_with("sign-title", Args::new().text("name", show.name(id))), show.say(line))
        }
        Who::Agent => {
            let code = show.hall.walk.agent().unwrap_or_default().to_owned();
            let line = if show.is_stopped() { "stopped-line" } else { "sign-agent-line" };
            (show.staff_with("sign-agent", &Args::new().text("code", code)), show.staff(line))
        }
    }
}

/// Everybody who signs: those who have, with a tick; the others to choose.
fn chips<'a>(show: &Show<'_, 'a>, now: Who) -> Element<'a, Message> {
    let look = &show.look;
    let chip = |who: Who| -> Element<'a, Message> {
        let name = match who {
            Who::Agent => show.staff("sign-chip-agent"),
            Who::Person(id) => show.name(id),
        };
        let signed =
            matches!(show.hall.walk.signature(who).map(|s| &s.value), Some(Signature::Signed { .. }));
        if signed {
            let line = row![ui::symbol(look, Symbol::TickDisc, 26.0), ui::body(look, name)];
            return line.spacing(look.gap(Gap::Small)).align_y(Alignment::Center).into();
        }
        ui::chip(look, name, Message::SignerChosen(who))
            .chosen(who == now && undecided(show).is_none())
            .height(52.0)
            .into()
    };
    Row::with_children(signers(show.hall).into_iter().map(chip))
        .spacing(look.gap(Gap::Medium))
        .align_y(Alignment::Center)
        .wrap()
        .vertical_spacing(look.gap(Gap::Small))
        .into()
}

/// Everybody who signs, for the agent to choose from.
pub(super) fn chips_of_all<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    chips(show, signer(show.state, show.hall).unwrap_or(Who::Agent))
}

/// What was said about an electronic record; it can be changed until somebody has signed.
fn consent_line<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    if show.hall.walk.phase() != Phase::Walking {
        return None;
    }
    let (by, consent) = show.hall.walk.consents().last()?;
    let key = if consent.value.given { "consent-was-given" } else { "consent-was-paper" };
    let line = show.say_with(key, Args::new().text("name", show.name(by)));
    let again = ui::quiet(look, show.say("consent-again"), Message::ConsentAgain);
    let line = row![ui::small(look, line), Element::from(again)].spacing(look.gap(Gap::Large));
    Some(line.align_y(Alignment::Center).wrap().vertical_spacing(look.gap(Gap::Tiny)).into())
}

/// Who would not sign so that the unit was to stay, and why, while nobody has been chosen to sign after all.
fn undecided<'a>(show: &Show<'_, 'a>) -> Option<(PersonId, &'a str)> {
    if show.is_stopped() || show.state.signer.is_some() {
        return None;
    }
    show.hall.walk.signatures().iter().find_map(|(who, s)| match (who, &s.value) {
        (Who::Person(id), Signature::Refused { reason, decision: Decision::KeepUnit }) => {
            Some((*id, reason.as_str()))
        }
        _ => None,
    })
}

/// What can be done then, for the agent.
fn kept<'a>(show: &Show<'_, 'a>) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let (by, reason) = undecided(show)?;
    let args = Args::new().text("name", show.name(by)).text("reason", reason);
    let words = column![
        ui::strong(look, show.staff_with("sign-refused", &args)),
        ui::body(look, show.staff_with("sign-kept", &args)),
        Element::from(ui::secondary(look, show.staff("stop"), Message::Ask(AskMessage::StopPressed))),
    ];
    Some(ui::chosen_panel(look, words.spacing(look.gap(Gap::Large))).into())
}

/// What stands there instead when nobody can or should sign now.
fn in_place_of_pad<'a>(show: &Show<'_, 'a>, who: Who) -> Option<Element<'a, Message>> {
    kept(show).or_else(|| away(show, who))
}

/// In place of the pad, when whoever is to sign is not here.
fn away<'a>(show: &Show<'_, 'a>, who: Who) -> Option<Element<'a, Message>> {
    let look = &show.look;
    let Who::Person(id) = who else { return None };
    if show.hall.walk.is_present(id) {
        return None;
    }
    let args = Args::new().text("name", show.name(id));
    let words = column![
        ui::section(look, show.staff_with("sign-away", &args)),
        Element::from(ui::secondary(look, show.staff_with("sign-here-now", &args), Message::HereNow(id))),
    ]
    .spacing(look.gap(Gap::Large));
    Some(ui::panel(look, words).into())
}

fn foot<'a>(show: &Show<'_, 'a>, who: Who) -> Element<'a, Message> {
    let look = &show.look;
    if show.hall.saving {
        return ui::saving(look, show.say("saving")).fill().into();
    }
    let mut small = row![].spacing(look.gap(Gap::Wide)).align_y(Alignment::Center);
    if in_place_of_pad(show, who).is_none() {
        small = small.push(pad::tools(show));
    }
    if show.state.strokes.is_empty() {
        if let Who::Person(id) = who
            && !show.is_stopped()
        {
            small = small.push(ui::quiet(
                look,
                show.say("sign-refuse"),
                Message::Ask(AskMessage::RefusePressed(id)),
            ));
        }
        let phase = show.hall.walk.phase();
        if phase == Phase::Walking {
            small = small.push(ui::quiet(look, show.say("sign-read-again"), Message::PageAsked(Page::Take)));
        } else if show.state.is_with_agent() {
            small =
                small.push(ui::quiet(look, show.staff("reopen"), Message::Ask(AskMessage::ReopenPressed)));
        }
        if !show.state.is_with_agent() {
            small = small.push(pass::to_agent(show));
        }
    }
    let small = container(small.wrap().vertical_spacing(look.gap(Gap::Small))).width(Length::Fill);
    let done = (!show.state.strokes.is_empty())
        .then(|| Element::from(ui::primary(look, show.say("sign-done"), Message::SignPressed).fill()));
    if look.portrait() {
        return column![small].push(done).spacing(look.gap(Gap::Medium)).into();
    }
    ui::at_least(look.target(), {
        let done = done.map(|d| container(d).width(look.px(360.0)).into());
        let parts = std::iter::once(small.into()).chain(done).collect();
        ui::hand_row(look, parts).align_y(Alignment::Center).into()
    })
}

fn to_copy<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    ui::primary(&show.look, show.say("stopped-to-copy"), Message::PageAsked(Page::Copy)).fill().into()
}
