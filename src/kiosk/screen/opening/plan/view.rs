//! How the page of the plan looks: what is asked on one side, what comes of it on the other, each scrolling by
//! itself so that the answer stays in sight.

use iced::widget::{Column, Space, column, container, row};
use iced::{Alignment, Length, Padding};

use super::super::offer::{Faults, Spot};
use super::super::parts;
use super::ask::Ask;
use super::tow::Field;
use super::{Draft, Message, nights};
use crate::figures::Use;
use crate::kiosk::context::Ctx;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Choice, Element, Symbol};
use crate::walk::{Missing, Walk};
use crate::words::Args;

/// The page, with its own scrolls.
pub(super) fn page<'a>(
    draft: &'a Draft,
    ctx: &Ctx<'a>,
    walk: &Walk,
    faults: &Faults,
) -> Element<'a, super::super::Message> {
    let look = &ctx.look;
    let (pad, half, edge) = (look.gap(Gap::Wide), look.gap(Gap::Medium), look.gap(Gap::Large));
    let scroll = |content: Element<'a, super::super::Message>, left, right| {
        let padding = Padding { top: 0.0, bottom: edge, left, right };
        ui::scroll(look, container(content).padding(padding)).height(Length::Fill)
    };
    let Some(answer) = &draft.answer else {
        return scroll(unknown(ctx, walk), pad, pad).into();
    };
    let asked = asked(draft, ctx, faults).map(super::super::Message::Plan);
    let answer = answer.view(ctx, &draft.reader(ctx), draft.open).map(super::super::Message::Plan);
    if look.portrait() {
        return column![scroll(asked, pad, pad), ui::rule(look), scroll(answer, pad, pad)]
            .spacing(half)
            .height(Length::Fill)
            .into();
    }
    row![
        scroll(asked, pad, half).width(Length::FillPortion(23)),
        scroll(answer, half, pad).width(Length::FillPortion(27)),
    ]
    .height(Length::Fill)
    .into()
}

/// Without party and nights there is no trip to plan.
fn unknown<'a>(ctx: &Ctx<'a>, walk: &Walk) -> Element<'a, super::super::Message> {
    let look = &ctx.look;
    let mut missing = walk.missing_to_open();
    missing.retain(|m| matches!(m, Missing::Booking | Missing::Party));
    let lines =
        Column::with_children(parts::missing_lines(ctx, walk, &missing)).spacing(look.gap(Gap::Medium));
    column![
        ui::lead(look, ctx.say("opening-plan-why")),
        parts::labeled(look, ctx.say("opening-stop-first"), lines)
    ]
    .spacing(look.gap(Gap::Wide))
    .into()
}

fn asked<'a>(draft: &'a Draft, ctx: &Ctx<'a>, faults: &Faults) -> Element<'a, Message> {
    let look = &ctx.look;
    let water = [(Use::Normal, "opening-plan-water-home"), (Use::Careful, "opening-plan-water-care")].map(
        |(water, key)| Choice::new(ctx.say(key), draft.plan.water == water, Message::WaterChosen(water)),
    );
    let water = parts::labeled(look, ctx.say("opening-plan-water"), ui::choices(look, water));
    let steps = |all: &[Ask]| -> Vec<Element<'a, Message>> {
        let suits = all.iter().filter(|ask| ask.suits(&draft.facts));
        suits.map(|ask| stepped(draft, ctx, *ask)).collect()
    };
    let lines = |all: Vec<Element<'a, Message>>| Column::with_children(all).spacing(look.gap(Gap::Medium));
    let tow = Ask::TowBags.suits(&draft.facts).then(|| {
        let fields = lines(tow_fields(draft, ctx, faults)).push(stepped(draft, ctx, Ask::TowBags));
        parts::labeled(look, ctx.say("opening-plan-tow"), fields)
    });
    let levels = parts::labeled(look, ctx.say("opening-plan-levels"), lines(steps(&Ask::LEVELS)));
    column![
        ui::body(look, ctx.say("opening-plan-why")),
        nights::view(draft, ctx, draft.plan.nights),
        water,
        lines(steps(&Ask::TRIP)),
    ]
    .push(tow)
    .push(levels)
    .push(parts::wrong(look, faults.at(ctx, Spot::Plan)))
    .spacing(look.gap(Gap::Wide))
    .into()
}

/// One question with less and more, and where something was told, a way back to nothing told.
fn stepped<'a>(draft: &Draft, ctx: &Ctx<'a>, ask: Ask) -> Element<'a, Message> {
    let look = &ctx.look;
    let (words, reader) = (&ctx.scripts.words, draft.reader(ctx));
    let told = ask.told(&draft.plan);
    let assumed = if told.is_none() { ask.assumed(&draft.facts) } else { None };
    let value = match (told, assumed) {
        (Some(told), _) => ask.says(words, &reader, &told),
        (None, Some(assumed)) => ask.says(words, &reader, &assumed),
        (None, None) if ask.starts_at_zero() => ctx.say("opening-plan-zero"),
        (None, None) => ctx.say("opening-plan-untold"),
    };
    let remark = match (told, assumed, ask) {
        (None, Some(_), _) => Some("opening-plan-assumed"),
        (None, None, Ask::Coldest) => Some("opening-plan-no-frost"),
        _ => None,
    };
    let way = |more: bool| {
        ask.pressed(&draft.plan, &draft.facts, draft.system, more).map(|_| Message::Stepped(ask, more))
    };
    let stepper = parts::stepper(look, value, way(false), way(true));
    let clear: Element<'a, Message> = match told {
        Some(_) if !ask.starts_at_zero() => parts::sign(look, Symbol::Cross, Message::Cleared(ask)),
        _ => Space::new().width(look.target()).height(look.target()).into(),
    };
    let label = column![ui::strong(look, ctx.say(ask.key()))]
        .push(remark.map(|key| ui::small(look, ctx.say(key))))
        .width(Length::Fill);
    let gap = look.gap(Gap::Small);
    // Large letters need the width of the part.
    if look.text != TextSize::Usual {
        return column![label, row![stepper, clear].spacing(gap)].spacing(look.gap(Gap::Tiny)).into();
    }
    let stepper = container(stepper).width(look.px(284.0));
    row![label, stepper, clear].spacing(gap).align_y(Alignment::Center).into()
}

fn tow_fields<'a>(draft: &'a Draft, ctx: &Ctx<'a>, faults: &Faults) -> Vec<Element<'a, Message>> {
    let field = |(field, text): (Field, &'a String)| {
        let measure = field.measure(draft.system).symbol();
        let label = ctx.say_with(field.key(), &Args::new().text("measure", measure));
        ui::field(&ctx.look, field.id(), text, move |text| Message::TowTyped(field, text))
            .decimal()
            .label(label)
            .error(faults.at(ctx, Spot::Tow(field)))
            .into()
    };
    Field::ALL.into_iter().zip(&draft.tow).map(field).collect()
}
