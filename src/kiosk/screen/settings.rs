//! Settings: how this tablet looks, speaks and is held. Each choice holds at once and is kept.

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::Action;
use super::opening::{measures_name, own_name};
use crate::kiosk::context::{Ctx, Settings};
use crate::kiosk::hall::system_of;
use crate::kiosk::preferences::{SCALE_STEP, SCALES, percent};
use crate::kiosk::theme::{Gap, Hand, TextSize, Theme};
use crate::kiosk::ui::{self, Choice, Element, Layout};
use crate::words::{Args, Reader, format};

/// What happened on the screen.
#[derive(Debug, Clone, PartialEq)]
pub enum Message {
    /// A palette.
    Theme(Theme),
    /// A text size.
    Text(TextSize),
    /// The factor on every measure, in percent.
    Scale(u32),
    /// The hand that presses.
    Hand(Hand),
    /// Whether nothing moves by itself.
    Still(bool),
    /// Whose letters our keys show.
    Layout(Option<Layout>),
    /// The language staff read.
    Language(String),
    /// The measures staff read.
    Measures(String),
    /// Everything as usual.
    Usual,
    /// Back to the Yard.
    Done,
}

/// State of the screen: everything it shows is kept elsewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct State;

impl State {
    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let now = ctx.settings;
        let staff = &now.staff;
        let settings = match message {
            Message::Theme(theme) => Settings { theme, ..now.clone() },
            Message::Text(text) => Settings { text, ..now.clone() },
            Message::Scale(percent) => {
                Settings { scale: percent.clamp(SCALES.0, SCALES.1) as f32 / 100.0, ..now.clone() }
            }
            Message::Hand(hand) => Settings { hand, ..now.clone() },
            Message::Still(still) => Settings { still, ..now.clone() },
            Message::Layout(layout) => Settings { layout, ..now.clone() },
            Message::Language(tag) => Settings { staff: Reader::new(&tag, staff.system), ..now.clone() },
            Message::Measures(word) => {
                Settings { staff: Reader::new(&staff.lang, system_of(&word)), ..now.clone() }
            }
            Message::Usual => {
                let staff = crate::kiosk::staff_reader(ctx.scripts);
                Settings { keys: now.keys, ..Settings::new(staff) }
            }
            Message::Done => return Action::ToYard,
        };
        Action::Set(Box::new(settings))
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let (seen, held) = (seen(ctx), held(ctx));
        let parts: Element<'a, Message> = if look.portrait() {
            column![seen, held].spacing(look.gap(Gap::Wide)).into()
        } else {
            row![container(seen).width(Length::FillPortion(1)), container(held).width(Length::FillPortion(1))]
                .spacing(look.gap(Gap::Wide))
                .into()
        };
        let page = column![
            ui::title(look, ctx.say("settings-title")),
            ui::body(look, ctx.say("settings-what")),
            parts
        ]
        .spacing(look.gap(Gap::Large));
        let page = container(page).padding(look.gap(Gap::Wide)).width(Length::Fill);
        let done = ui::primary(look, ctx.say("settings-done"), Message::Done);
        let usual = ui::secondary(look, ctx.say("settings-usual"), Message::Usual);
        let foot: Element<'a, Message> = if look.portrait() {
            column![Element::from(done.fill()), Element::from(usual.fill())]
                .spacing(look.gap(Gap::Small))
                .into()
        } else {
            ui::hand_row(look, vec![usual.into(), done.fill().into()]).spacing(look.gap(Gap::Medium)).into()
        };
        let foot = container(foot).padding(look.gap(Gap::Wide));
        column![ui::scroll(look, page).height(Length::Fill), foot].into()
    }
}

/// Theme, sizes.
fn seen<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let (look, now) = (&ctx.look, ctx.settings);
    let themes = [
        ("settings-theme-paper", Theme::Paper),
        ("settings-theme-daylight", Theme::Daylight),
        ("settings-theme-dusk", Theme::Dusk),
    ];
    let texts = [
        ("settings-text-usual", TextSize::Usual),
        ("settings-text-large", TextSize::Large),
        ("settings-text-largest", TextSize::Largest),
    ];
    let percent = percent(now);
    let scale = ui::stepper(
        look,
        ctx.say_with("settings-scale-now", &Args::new().number("percent", percent)),
        (percent > SCALES.0).then(|| Message::Scale(percent.saturating_sub(SCALE_STEP))),
        (percent < SCALES.1).then(|| Message::Scale(percent.saturating_add(SCALE_STEP))),
    );
    let motion = [("settings-motion-on", false), ("settings-motion-off", true)];
    panel(
        ctx,
        vec![
            part(ctx, "settings-theme", None, chips(ctx, themes, now.theme, Message::Theme)),
            part(ctx, "settings-text", None, chips(ctx, texts, now.text, Message::Text)),
            part(ctx, "settings-scale", Some("settings-scale-what"), scale),
            part(
                ctx,
                "settings-motion",
                Some("settings-motion-what"),
                chips(ctx, motion, now.still, Message::Still),
            ),
        ],
    )
}

/// Hand, motion, keys, language and measures.
fn held<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let (look, now) = (&ctx.look, ctx.settings);
    let hands = [("settings-hand-right", Hand::Right), ("settings-hand-left", Hand::Left)];
    let keys = [
        ("settings-keys-reader", None),
        ("settings-keys-en", Some(Layout::EnUs)),
        ("settings-keys-es", Some(Layout::Es)),
        ("settings-keys-fr", Some(Layout::FrCa)),
        ("settings-keys-de", Some(Layout::De)),
    ];
    let lot = &ctx.scripts.lot.value;
    let languages = lot
        .languages
        .iter()
        .map(|tag| Choice::new(own_name(ctx, tag), now.staff.lang == *tag, Message::Language(tag.clone())));
    let measures = lot.measures.iter().map(|word| {
        let chosen = format::system_word(now.staff.system) == word.as_str();
        Choice::new(measures_name(ctx, word), chosen, Message::Measures(word.clone()))
    });
    panel(
        ctx,
        vec![
            part(
                ctx,
                "settings-hand",
                Some("settings-hand-what"),
                chips(ctx, hands, now.hand, Message::Hand),
            ),
            part(ctx, "settings-keys", None, chips(ctx, keys, now.layout, Message::Layout)),
            part(ctx, "settings-language", None, ui::choices(look, languages)),
            part(ctx, "settings-measures", None, ui::choices(look, measures)),
        ],
    )
}

fn chips<'a, T: Copy + PartialEq>(
    ctx: &Ctx<'a>,
    all: impl IntoIterator<Item = (&'static str, T)>,
    now: T,
    message: impl Fn(T) -> Message,
) -> Element<'a, Message> {
    let all = all.into_iter().map(|(key, one)| Choice::new(ctx.say(key), one == now, message(one)));
    ui::choices(&ctx.look, all)
}

fn part<'a>(
    ctx: &Ctx<'a>,
    key: &str,
    what: Option<&str>,
    choice: Element<'a, Message>,
) -> Element<'a, Message> {
    let look = &ctx.look;
    column![ui::section(look, ctx.say(key))]
        .push(what.map(|key| ui::small(look, ctx.say(key))))
        .push(choice)
        .spacing(look.gap(Gap::Small))
        .align_x(Alignment::Start)
        .into()
}

fn panel<'a>(ctx: &Ctx<'a>, parts: Vec<Element<'a, Message>>) -> Element<'a, Message> {
    let look = &ctx.look;
    let parts = Column::with_children(parts).spacing(look.gap(Gap::Wide)).width(Length::Fill);
    ui::panel(look, parts).into()
}
