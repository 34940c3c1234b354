//! A page for one caution: what can kill or badly hurt, and what asks for more than a tap.

use std::time::Duration;

use iced::widget::{Column, Space, column, container, responsive, row, sensor};
use iced::{Alignment, Length};

use super::foot::{self, chips, who};
use super::{Message, Show, Side, TRIES};
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element};
use crate::route::{self, Caution, Step};

/// How long a page of a DANGER must have been whole before its target is live.
const DANGER_WAIT: Duration = Duration::from_secs(1);

/// Side of the sign below which it tells nothing, in pixels as written.
const SMALLEST_SIGN: f32 = 48.0;

/// Height of a hold with its margin, in pixels as written.
const HOLD_HEIGHT: f32 = 160.0;

/// The signal of a caution as it is drawn.
pub(in crate::kiosk) const fn signal(signal: route::Signal) -> ui::Signal {
    match signal {
        route::Signal::Danger => ui::Signal::Danger,
        route::Signal::Warning => ui::Signal::Warning,
        route::Signal::Caution => ui::Signal::Caution,
        route::Signal::Notice => ui::Signal::Notice,
    }
}

/// The sign of a hazard.
pub(in crate::kiosk) const fn sign(hazard: route::Hazard) -> ui::Hazard {
    match hazard {
        route::Hazard::CarbonMonoxide => ui::Hazard::Gas,
        route::Hazard::Fire => ui::Hazard::Fire,
        route::Hazard::Explosion => ui::Hazard::Explosion,
        route::Hazard::Shock => ui::Hazard::Electricity,
        route::Hazard::Heat => ui::Hazard::HotSurface,
        route::Hazard::Cold => ui::Hazard::Cold,
        route::Hazard::Crush => ui::Hazard::Crush,
        route::Hazard::Cut => ui::Hazard::Cut,
        route::Hazard::Fall => ui::Hazard::Fall,
        route::Hazard::Overhead => ui::Hazard::Overhead,
        route::Hazard::Strike | route::Hazard::Crash => ui::Hazard::Vehicle,
        route::Hazard::Germs => ui::Hazard::Germs,
        route::Hazard::Poison
        | route::Hazard::Trapped
        | route::Hazard::Strain
        | route::Hazard::Water
        | route::Hazard::Wind
        | route::Hazard::Theft
        | route::Hazard::Wear => ui::Hazard::General,
    }
}

pub(super) fn view<'a>(show: &Show<'_, 'a>, step: &Step, caution: &Caution) -> Element<'a, Message> {
    let look = &show.look;
    let text = show.speaker.caution(caution);
    let signal = signal(caution.signal);
    let mut end = row![].spacing(look.gap(Gap::Large)).align_y(Alignment::Center);
    if let Some(count) = foot::count(show) {
        end = end.push(ui::on_signal(look, signal, count));
    }
    if !look.portrait() {
        end = end.push(chips(show));
    }
    let header = ui::signal_header(look, signal, text.signal.clone(), end);
    let what = if caution.signal == route::Signal::Notice { "mind" } else { "what" };
    let words = [(what, text.hazard, true), ("harm", text.harm, false), ("avoid", text.avoid, false)];
    let body = if look.portrait() { tall(show, caution, words) } else { wide(show, caution, words) };
    let by_taps = (show.state.short >= TRIES).then(|| two_taps(show));
    let bar = foot::bar(show, who(show, step, &[caution], false), None);
    column![header, body].push(by_taps).push(bar).height(Length::Fill).into()
}

type Words = [(&'static str, String, bool); 3];

/// What is dangerous, what it does, what to do; the end of that, by which the page is whole; and the small print.
fn text<'a>(show: &Show<'_, 'a>, words: Words) -> Element<'a, Message> {
    let look = &show.look;
    let mut all = column![].spacing(look.gap(Gap::Wide)).width(Length::Fill);
    for (label, words, strong) in words {
        let words = if strong { ui::hazard_line(look, words) } else { ui::lead(look, words) };
        all = all.push(column![ui::label(look, show.say(label)), words].spacing(look.gap(Gap::Tiny)));
    }
    all = all.push(end_of_page(show)).push(ui::small(look, show.say("small-print")));
    ui::scroll(look, all).height(Length::Fill).into()
}

/// Tells when the end of the page is in sight.
pub(super) fn end_of_page<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let turn = show.state.turn;
    let line = Space::new().width(Length::Fill).height(1.0);
    sensor(line).key(turn).on_show(move |_| Message::SeenWhole(turn)).into()
}

/// Landscape: the sign with the target below it, beside the words. The target is never in the foot, where the
/// agent's button was, and changes sides after the last tap.
fn wide<'a>(show: &Show<'_, 'a>, caution: &Caution, words: Words) -> Element<'a, Message> {
    let look = &show.look;
    let side = column![]
        .push(fitted(show, caution))
        .push(foot::whose(show))
        .push(target(show, caution))
        .spacing(look.gap(Gap::Medium))
        .width(look.px(if look.text == TextSize::Usual { 380.0 } else { 440.0 }))
        .height(Length::Fill);
    let words = text(show, words);
    let parts = match show.state.side {
        Side::Left => row![Element::from(side), words],
        Side::Right => row![words, Element::from(side)],
    };
    container(parts.spacing(look.gap(Gap::Huge)))
        .padding([look.gap(Gap::Wide), look.gap(Gap::Huge)])
        .height(Length::Fill)
        .into()
}

/// Portrait: sign and chips, then the words as wide as the page, then the target in one half.
fn tall<'a>(show: &Show<'_, 'a>, caution: &Caution, words: Words) -> Element<'a, Message> {
    let look = &show.look;
    let beside = column![chips(show)].spacing(look.gap(Gap::Large)).width(Length::Fill);
    let top = row![]
        .push(picture(show, caution, 180.0))
        .push(beside)
        .spacing(look.gap(Gap::Wide))
        .align_y(Alignment::Center);
    let empty = || Element::from(Space::new().width(Length::FillPortion(2)));
    let target = column![foot::whose(show), target(show, caution)];
    let target: Element<'a, Message> =
        target.spacing(look.gap(Gap::Small)).width(Length::FillPortion(3)).into();
    let band = match show.state.side {
        Side::Left => row![target, empty()],
        Side::Right => row![empty(), target],
    };
    column![top, text(show, words), band]
        .spacing(look.gap(Gap::Wide))
        .padding([look.gap(Gap::Wide), look.gap(Gap::Huge)])
        .height(Length::Fill)
        .into()
}

/// The sign at the top of what the words below it leave: it gives way, they are never cut.
fn fitted<'a>(show: &Show<'_, 'a>, caution: &Caution) -> Element<'a, Message> {
    if caution.signal == route::Signal::Notice {
        return Space::new().height(Length::Fill).into();
    }
    let (look, hazard, wanted) = (show.look, sign(caution.hazard), sign_side(show));
    responsive(move |size| {
        let room = (size.height.min(size.width) / look.px(1.0)).max(SMALLEST_SIGN);
        container(ui::hazard_symbol(&look, hazard, wanted.min(room))).center_x(Length::Fill).into()
    })
    .into()
}

/// How large the sign is where there is room for it.
fn sign_side(show: &Show<'_, '_>) -> f32 {
    if show.look.text == TextSize::Largest { 168.0 } else { 264.0 }
}

/// The sign of the hazard. A notice is not about injury and has none.
fn picture<'a>(show: &Show<'_, 'a>, caution: &Caution, side: f32) -> Option<Element<'a, Message>> {
    let injury = caution.signal != route::Signal::Notice;
    injury.then(|| ui::hazard_symbol(&show.look, sign(caution.hazard), side))
}

/// What answers the page, or what is needed before it can be answered.
fn target<'a>(show: &Show<'_, 'a>, caution: &Caution) -> Element<'a, Message> {
    let look = &show.look;
    // As high as a hold whatever stands here, so that the words beside it keep their room.
    let height = look.px(HOLD_HEIGHT);
    if show.hall.saving {
        return ui::at_least(height, ui::saving(look, show.say("saving")).fill().into());
    }
    if let Some(hint) = foot::not_yet(show) {
        return ui::at_least(height, hint);
    }
    if show.state.is_demonstrated(show.hall, caution) {
        let begin = Message::Demo(super::demo::Message::Begun);
        let begin = ui::primary(look, show.speaker.say("demo-page-begin"), begin).fill().height(96.0);
        return ui::at_least(height, Element::from(begin.id("caution-show")));
    }
    if show.state.short >= TRIES {
        return Space::new().into();
    }
    let (title, line) = if show.state.short == 0 { ("hold", "hold-line") } else { ("longer", "longer-line") };
    let wait = if caution.signal == route::Signal::Danger { DANGER_WAIT } else { Duration::ZERO };
    ui::hold(look, show.say(title), show.say(line), Message::Held)
        .id("caution-hold")
        .page(show.state.turn)
        .live_after(wait)
        .into()
}

/// After two holds that were too short: two circles at two ends of the page, one after the other. The first
/// lies away from where the hold was.
fn two_taps<'a>(show: &Show<'_, 'a>) -> Element<'a, Message> {
    let look = &show.look;
    if show.hall.saving || foot::not_yet(show).is_some() {
        return Space::new().into();
    }
    let first = show.state.first_tap;
    let spot = |number: u16, on: bool, message: Option<(&'static str, Message)>| -> Element<'a, Message> {
        let circle = ui::circle_number(look, number, on, 112.0);
        match message {
            Some((id, message)) => ui::tap(look, circle, message).id(id).radius(look.px(56.0)).into(),
            None => circle,
        }
    };
    let one = spot(1, first, (!first).then_some(("caution-tap-one", Message::FirstTapped)));
    let two = spot(2, false, first.then_some(("caution-tap-two", Message::SecondTapped)));
    let line = show.say(if first { "tap-second" } else { "tap-first" });
    let words: Column<'a, Message, _, _> = column![ui::section(look, show.say("taps")), ui::lead(look, line)]
        .align_x(Alignment::Center)
        .width(Length::Fill);
    let band = match show.state.side {
        Side::Left => row![two, words, one],
        Side::Right => row![one, words, two],
    };
    container(band.spacing(look.gap(Gap::Wide)).align_y(Alignment::Center))
        .padding(iced::Padding::new(look.gap(Gap::Huge)).top(0.0).bottom(look.gap(Gap::Medium)))
        .into()
}

/// The title of a caution, for the agent.
pub(super) fn title(show: &Show<'_, '_>, caution: &Caution) -> String {
    show.speaker.caution(caution).title
}
