//! Plan and list: the stops of the way round, the topics of one of them, and the search over all.

use iced::widget::{Column, Row, Space, column, container, responsive, row};
use iced::{Alignment, Length, Padding};

use super::{Message, Page, Show};
use crate::kiosk::plan::{self, Orientation};
use crate::kiosk::theme::{Gap, Look, TextSize, Type};
use crate::kiosk::ui::{self, Element, Symbol};
use crate::route::find::{Found, Hit, Where};
use crate::route::{Step, Stop, Zone};
use crate::words::Args;

/// Width of the plan beside the list, as written.
const PLAN: f32 = 330.0;
/// The same, upright and with the largest letters.
const NARROW: f32 = 256.0;

/// Height below which only what is urgent stands there, as written, without its letters.
const LEAST: f32 = 320.0;

/// The parts of the way round, and their words.
const ZONES: [(Zone, &str); 4] = [
    (Zone::Outside, "walk-outside"),
    (Zone::Inside, "walk-inside"),
    (Zone::Leaving, "reread-road-zone"),
    (Zone::Desk, "reread-desk"),
];

impl<'a> Show<'a> {
    /// Plan, list and search.
    pub(super) fn home(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (gap, wide) = (look.gap(Gap::Large), look.gap(Gap::Wide));
        let typed = !self.state.query.trim().is_empty();
        let below = if typed { self.hits() } else { self.around() };
        // The field keeps its place whatever stands below, or it would lose the focus with the first letter.
        let page = column![self.search(typed), below].spacing(gap).height(Length::Fill);
        let padding = Padding { top: gap, left: wide, right: wide, bottom: wide };
        container(page).padding(padding).width(Length::Fill).height(Length::Fill).into()
    }

    fn search(&self, typed: bool) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let field = ui::field(look, "reread-search", &self.state.query, Message::QueryChanged)
            .placeholder(self.say("reread-search"))
            .find();
        let field = container(Element::from(field)).width(Length::Fill);
        let clear = typed
            .then(|| ui::secondary(look, self.say("reread-clear"), Message::QueryCleared).id("reread-clear"));
        row![field].push(clear).spacing(look.gap(Gap::Medium)).align_y(Alignment::Center).into()
    }

    /// What is there without a search. While our own keys are up there is no room for the plan, and whoever types
    /// does not want it.
    fn around(&self) -> Element<'a, Message> {
        let show = self.clone();
        let least = self.ctx.look.px(LEAST) + 6.0 * self.ctx.look.size(Type::Strong);
        responsive(move |size| if size.height < least { show.urgent() } else { show.whole() }).into()
    }

    /// The two ways out of trouble.
    fn urgent(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        row![
            ui::secondary(look, self.say("emergency"), Message::EmergencyPressed)
                .bold()
                .fill()
                .height(76.0)
                .before(Symbol::Alert)
                .id("reread-emergency"),
            ui::primary(look, self.say("reread-wrong"), Self::to_guides())
                .fill()
                .height(76.0)
                .id("reread-wrong"),
        ]
        .spacing(look.gap(Gap::Wide))
        .into()
    }

    fn whole(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let (gap, wide) = (look.gap(Gap::Medium), look.gap(Gap::Wide));
        let more = row![
            ui::secondary(look, self.say("reread-all-cautions"), Message::PageChosen(Page::Cautions)).fill(),
            ui::secondary(look, self.say("reread-numbers"), Message::PageChosen(Page::Numbers)).fill(),
        ]
        .spacing(wide);
        let list = column![self.zones(), self.list()].spacing(gap).width(Length::Fill).height(Length::Fill);
        let mut both = Row::new().spacing(wide).height(Length::Fill);
        if let Some(plan) = self.plan() {
            both = both.push(plan);
        }
        both = both.push(list);
        column![self.urgent(), both, more, self.end()].spacing(gap).height(Length::Fill).into()
    }

    /// The foot: language and measures at one end, the way out for staff at the other.
    pub(super) fn end(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let leave = ui::quiet(look, self.say("reread-staff"), Message::LeavePressed);
        let apart = Space::new().width(Length::Fill);
        self.readers().push(apart).push(leave).into()
    }

    fn plan(&self) -> Option<Element<'a, Message>> {
        let look = &self.ctx.look;
        let shape = self.ctx.shapes.get(&self.state.unit)?;
        let floor = self.floor()?;
        let view = plan::view(look, shape, &self.state.pegs, Orientation::NoseUp, floor);
        let view: Element<'a, Message> = view.on_peg(Message::PegPressed).into();
        // Upright, the largest letters need some of its room for whole words.
        let narrow = look.portrait() && look.text == TextSize::Largest;
        let width = look.px(if narrow { NARROW } else { PLAN });
        let panel = ui::panel(look, container(view).height(Length::Fill)).padding(look.gap(Gap::Small));
        Some(container(panel.height(Length::Fill)).width(width).height(Length::Fill).into())
    }

    /// Outside, inside, on the road, papers: one tap between them.
    fn zones(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let here = |zone| self.state.prepared.route.stops.iter().any(|s| s.zone == zone);
        let zones = ZONES.iter().filter(|(zone, _)| here(*zone)).map(|(zone, key)| {
            ui::Choice::new(self.say(key), self.state.zone == *zone, Message::ZoneChosen(*zone))
        });
        ui::choices(look, zones)
    }

    /// Topics of the chosen stop, else of the whole part.
    fn list(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let route = &self.state.prepared.route;
        let stops = route.stops.iter().filter(|s| s.zone == self.state.zone);
        let chosen = |s: &&Stop| self.state.stop.is_none_or(|number| s.number == number);
        let mut rows = Column::new().spacing(look.gap(Gap::Medium)).width(Length::Fill);
        if self.state.stop.is_none() && self.floor().is_some() {
            rows = rows.push(ui::small(look, self.say("reread-tap-plan")).width(Length::Fill));
        }
        for stop in stops.filter(chosen) {
            let steps = route.steps.get(stop.steps.clone()).unwrap_or_default();
            if self.state.stop.is_some() {
                let station = steps.first().map(|s| {
                    let station = self.say(&format!("station-{}", s.station.word()));
                    let args = Args::new().number("number", stop.number).text("station", station);
                    self.say_with("reread-stop", args)
                });
                rows = rows.push(station.map(|s| ui::section(look, s)));
            }
            for step in steps {
                rows = rows.push(self.topic_row(look, stop, step));
            }
        }
        let all = self.state.stop.is_some().then(|| {
            let message = Message::ZoneChosen(self.state.zone);
            Element::from(ui::secondary(look, self.say("reread-all-here"), message))
        });
        let rows = container(rows.push(all)).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::scroll(look, rows).height(Length::Fill).into()
    }

    fn topic_row(&self, look: &Look, stop: &Stop, step: &Step) -> Element<'a, Message> {
        let words = column![ui::strong(look, self.say(&format!("step-{}", step.id)))]
            .push(
                (!step.cautions.is_empty())
                    .then(|| ui::small(look, self.count("reread-cautions", step.cautions.len()))),
            )
            .width(Length::Fill);
        let number = self.floor().map(|_| ui::circle_number(look, stop.number, false, 40.0));
        let line = Row::new()
            .push(number)
            .push(words)
            .push(ui::symbol(look, Symbol::Right, 22.0))
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        let message = Message::PageChosen(Page::Topic(step.id.clone()));
        ui::press_panel(look, ui::panel::Edge::Press, line, message)
    }

    /// What the search has found.
    fn hits(&self) -> Element<'a, Message> {
        let look = &self.ctx.look;
        let hits = self.state.prepared.hits(self.ctx.scripts, &self.state.reader, &self.state.query);
        let mut rows = Column::new().spacing(look.gap(Gap::Medium)).width(Length::Fill);
        rows = rows.push(ui::label(look, self.count("reread-found", hits.len())));
        if hits.is_empty() {
            rows = rows.push(ui::body(look, self.say("reread-found-none")));
            rows = rows.push(ui::primary(look, self.say("emergency"), Message::EmergencyPressed));
        }
        for hit in hits.iter() {
            rows = rows.push(self.hit(look, hit));
        }
        let rows = container(rows).padding(Padding::ZERO.right(look.gap(Gap::Small)));
        ui::scroll(look, rows).height(Length::Fill).into()
    }

    fn hit(&self, look: &Look, hit: &Hit) -> Option<Element<'a, Message>> {
        let message = self.leads(&hit.what)?;
        let line = Args::new().text("line", hit.line.clone());
        let place = match hit.place {
            Where::Title => None,
            Where::Word => Some(self.say_with("reread-found-word", line)),
            Where::Text => Some(self.say_with("reread-found-text", line)),
        };
        let kind = match &hit.what {
            Found::Emergency => Some("reread-kind-emergency"),
            Found::Guide(_) => Some("reread-kind-guide"),
            Found::Step(_) => None,
        };
        let words = column![ui::strong(look, hit.title.clone())]
            .push(kind.map(|key| ui::small(look, self.say(key)).color(look.ink())))
            .push(place.map(|line| ui::small(look, line)))
            .width(Length::Fill);
        let sign = if hit.grave { Symbol::Alert } else { Symbol::Right };
        let line = row![words, ui::symbol(look, sign, 28.0)]
            .spacing(look.gap(Gap::Medium))
            .align_y(Alignment::Center);
        let edge = if hit.grave { ui::panel::Edge::Chosen } else { ui::panel::Edge::Press };
        Some(ui::press_panel(look, edge, line, message))
    }
}
