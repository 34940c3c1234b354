//! Yard: open walks first, then the units.

mod hand_in;

pub use hand_in::{Step, name_of};

use iced::widget::{Column, column, container, row};
use iced::{Alignment, Length};

use super::{Action, counted};
use crate::kiosk::context::Ctx;
use crate::kiosk::effect::{OpenSummary, YardList};
use crate::kiosk::gate::Purpose;
use crate::kiosk::theme::{Gap, TextSize};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::kiosk::{manners, plan};
use crate::unit::Sheet;
use crate::words::{Args, format};

/// State of the screen.
#[derive(Debug)]
pub struct State {
    list: YardList,
    hand_in: hand_in::HandIn,
    /// Route of each unit: steps and minutes.
    routes: std::cell::OnceCell<Vec<(String, usize, u32)>>,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// A unit is to be handed over.
    UnitChosen(String),
    /// An open walk is to go on.
    WalkChosen(String),
    /// The settings are to be opened.
    SettingsAsked,
    /// A renter wants to read about a unit again.
    RereadChosen(String),
    /// Somebody signs on, in place of whoever is on duty.
    SignOnAsked,
    /// Nobody is on duty any more.
    SignedOff,
    /// Who works here is asked for.
    StaffAsked,
    /// The office's archive is asked for.
    OfficeAsked,
    /// Something about handing records in.
    HandIn(Step),
}

impl State {
    /// The screen as it opens.
    #[must_use]
    pub fn new(list: YardList) -> Self {
        Self { list, hand_in: hand_in::HandIn::default(), routes: std::cell::OnceCell::new() }
    }

    /// Whether open walks, and with them names, are on the screen.
    #[must_use]
    pub fn names_anybody(&self) -> bool {
        !self.list.walks.is_empty()
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match message {
            Message::RereadChosen(unit) => Action::Reread { unit, reader: ctx.settings.staff.clone() },
            Message::UnitChosen(unit) => Action::Begin(unit),
            Message::WalkChosen(walk) => {
                let agent = self.list.walks.iter().find(|w| w.id == walk).and_then(|w| w.agent.clone());
                Action::GoOn { walk, agent }
            }
            Message::SignOnAsked => Action::Gate(Purpose::SignOn),
            Message::SignedOff => Action::SignOff,
            Message::StaffAsked => Action::Gate(Purpose::Staff),
            Message::OfficeAsked => Action::Gate(Purpose::Archive),
            Message::HandIn(step) => self.hand_in_step(step),
            Message::SettingsAsked => Action::Gate(Purpose::Settings),
        }
    }

    /// Steps and minutes of a unit's walk; computed once.
    fn route(&self, ctx: &Ctx<'_>, unit: &str) -> Option<(usize, u32)> {
        let routes = self.routes.get_or_init(|| {
            let units = ctx.scripts.units.keys();
            units
                .filter_map(|id| {
                    // As long as past walks took here, not as their author thinks.
                    let route = crate::route::build(ctx.scripts, id)?;
                    Some((id.clone(), route.steps.len(), self.list.pace.minutes(&route)))
                })
                .collect()
        });
        routes.iter().find(|(id, ..)| id == unit).map(|(_, steps, minutes)| (*steps, *minutes))
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let title = row![
            ui::title(look, ctx.say("yard-title")).width(Length::Fill),
            ui::small(look, format::date(&ctx.scripts.words, &ctx.settings.staff, ctx.local(ctx.now).date())),
        ]
        .spacing(look.gap(Gap::Large))
        .align_y(Alignment::Center);
        let mut page = column![title, ui::rule(look)].spacing(look.gap(Gap::Large));
        for told in self.told(ctx) {
            page = page.push(ui::note(look, ctx.say("notice"), Some(told)));
        }
        for open in &self.list.walks {
            page = page.push(self.open_walk(ctx, open));
        }
        let units: Vec<Element<'a, Message>> =
            ctx.scripts.units.values().map(|sheet| self.unit(ctx, &sheet.value)).collect();
        page = page.push(grid(ctx, units)).push(crew(ctx)).push(self.hand_in_view(ctx)).push(self.foot(ctx));
        let padded = container(page).padding(look.gap(Gap::Wide)).width(Length::Fill);
        ui::scroll(look, padded).height(Length::Fill).into()
    }

    /// What staff must know before a walk begins: of the disk, and of the clock.
    fn told(&self, ctx: &Ctx<'_>) -> impl Iterator<Item = String> {
        let behind = self.list.behind.map(|jump| manners::jump_words(ctx, "clock-behind", jump));
        [manners::room_words(ctx, &self.list.room), behind].into_iter().flatten()
    }

    fn open_walk<'a>(&'a self, ctx: &Ctx<'a>, open: &'a OpenSummary) -> Element<'a, Message> {
        let look = &ctx.look;
        let unit = open.unit.as_ref().map_or_else(|| open.id.clone(), |u| ctx.say(&format!("unit-{u}")));
        let args = Args::new()
            .text("unit", unit)
            .text("renter", open.renter.clone().unwrap_or_default())
            .number("events", u64::try_from(open.events).unwrap_or(0));
        let title = ctx.say_with(if open.renter.is_some() { "yard-open-renter" } else { "yard-open" }, &args);
        let line = match (&open.trouble, open.last) {
            (Some(trouble), _) => trouble.clone(),
            (None, Some(_)) if open.ended => ctx.say("yard-open-ended"),
            (None, Some(at)) => {
                let when = format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at));
                ctx.say_with("yard-open-safe", &args.text("when", when))
            }
            (None, None) => ctx.say_with("yard-open-nothing", &args),
        };
        let older = open.scripts.as_ref().is_some_and(|digest| digest != ctx.scripts.bundle.digest());
        let words = column![ui::section(look, title), ui::body(look, line)]
            .push(older.then(|| ui::small(look, ctx.say("yard-older-scripts"))))
            .spacing(look.gap(Gap::Tiny))
            .width(Length::Fill);
        let mut content = row![ui::symbol(look, Symbol::Open, 44.0), words]
            .spacing(look.gap(Gap::Large))
            .align_y(Alignment::Center);
        if open.events > 0 {
            content =
                content.push(ui::primary(look, ctx.say("yard-go-on"), Message::WalkChosen(open.id.clone())));
        }
        ui::chosen_panel(look, content).into()
    }

    fn unit<'a>(&'a self, ctx: &Ctx<'a>, sheet: &'a Sheet) -> Element<'a, Message> {
        let look = &ctx.look;
        let id = &sheet.id.value;
        let speaker = ctx.staff(id);
        let line = speaker.as_ref().map_or_else(String::new, |s| s.say("yard-unit-line"));
        let mut words = column![
            ui::title(look, ctx.say(&format!("unit-{id}"))),
            ui::body(look, ctx.say(&format!("unit-{id}.kind"))),
            ui::small(look, line),
        ]
        .spacing(look.gap(Gap::Small))
        .width(Length::Fill);
        if let Some((steps, minutes)) = self.route(ctx, id) {
            let args = Args::new()
                .number("steps", u64::try_from(steps).unwrap_or(0))
                .text("time", format::duration_minutes(&ctx.scripts.words, &ctx.settings.staff, minutes));
            words = words.push(ui::small(look, ctx.say_with("yard-unit-walk", &args)));
        }
        let drawing = ctx.shapes.get(id).map(|shape| {
            container(plan::thumbnail(look, shape)).width(look.px(150.0)).height(look.px(300.0))
        });
        let top = row![].push(drawing).push(words).spacing(look.gap(Gap::Large));
        // Going on with an open walk comes first; beginning another is the rarer wish.
        let chosen = Message::UnitChosen(id.clone());
        let faults = ctx.faults.of(id);
        let start: Element<'a, Message> = if faults > 0 {
            ui::note(look, counted(ctx, "yard-unit-faulty", faults), None)
        } else if !self.list.room.for_a_walk() {
            ui::small(look, ctx.say("yard-no-room")).into()
        } else if self.list.walks.iter().any(|w| w.unit.as_ref() == Some(id)) {
            ui::secondary(look, ctx.say("yard-start-another"), chosen).fill().into()
        } else {
            ui::primary(look, ctx.say("yard-start"), chosen).fill().into()
        };
        let reread = ui::secondary(look, ctx.say("reread-open"), Message::RereadChosen(id.clone())).fill();
        ui::panel(look, column![top, start, Element::from(reread)].spacing(look.gap(Gap::Large))).into()
    }

    /// What waits for the office, and what the key says.
    fn foot<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let look = &ctx.look;
        let tablet = ctx.say_with("yard-tablet", &Args::new().text("tablet", self.list.tablet.clone()));
        column![
            ui::small(look, counted(ctx, "yard-waiting", self.list.waiting)),
            ui::small(look, tablet),
            ui::small(look, ctx.say("yard-key-open")),
        ]
        .spacing(look.gap(Gap::Tiny))
        .into()
    }
}

/// Who is on duty, and the way to who works here.
fn crew<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let look = &ctx.look;
    let staff = ui::secondary(look, ctx.say("yard-staff"), Message::StaffAsked).id("yard-staff");
    let settings = ui::secondary(look, ctx.say("yard-settings"), Message::SettingsAsked).id("yard-settings");
    let (words, ways) = match (ctx.crew.signs_on(), ctx.crew.duty) {
        (false, _) => (ctx.say("yard-no-pin"), row![staff, settings]),
        (true, None) => {
            let on = ui::secondary(look, ctx.say("yard-sign-on"), Message::SignOnAsked).id("yard-sign-on");
            (ctx.say("yard-nobody-on"), row![on, staff, settings])
        }
        (true, Some(code)) => {
            let other = ui::secondary(look, ctx.say("yard-sign-on-other"), Message::SignOnAsked);
            let off = ui::secondary(look, ctx.say("yard-sign-off"), Message::SignedOff);
            let words = ctx.say_with("yard-on-duty", &Args::new().text("code", code.to_owned()));
            (words, row![other.id("yard-sign-on"), off.id("yard-sign-off"), staff, settings])
        }
    };
    let office = ctx
        .crew
        .archive
        .then(|| ui::secondary(look, ctx.say("yard-office"), Message::OfficeAsked).id("yard-office"));
    let gap = look.gap(Gap::Medium);
    let ways = ways.push(office).spacing(gap).wrap().vertical_spacing(gap);
    let words = ui::strong(look, words).width(Length::Fill);
    if look.portrait() || look.text != TextSize::Usual {
        return ui::panel(look, column![words, ways].spacing(gap)).into();
    }
    ui::panel(look, row![words, ways].spacing(look.gap(Gap::Large)).align_y(Alignment::Center)).into()
}

/// Cards beside each other where there is room, else below each other.
fn grid<'a>(ctx: &Ctx<'a>, cards: Vec<Element<'a, Message>>) -> Element<'a, Message> {
    let look = &ctx.look;
    // The largest letters need the room of two cards for one.
    let most = if look.text == TextSize::Largest { 2 } else { 3 };
    let columns = if look.portrait() { 1 } else { cards.len().clamp(1, most) };
    let mut rows: Vec<Element<'a, Message>> = Vec::new();
    let mut cards = cards.into_iter().peekable();
    while cards.peek().is_some() {
        let line: Vec<Element<'a, Message>> = cards.by_ref().take(columns).collect();
        rows.push(iced::widget::Row::with_children(line).spacing(look.gap(Gap::Wide)).into());
    }
    Column::with_children(rows).spacing(look.gap(Gap::Wide)).into()
}
