//! Walk: one step at a time, beside the plan of the unit. What is said here is kept as events; the state holds
//! only what is not yet said.

mod cautions;
pub(in crate::kiosk) mod figures;
mod fit;
mod foot;
mod kit;
mod leaving;
mod marks;
mod message;
mod overview;
mod page;
pub(in crate::kiosk) mod picture;
mod readings;
mod sheet;
mod side;
mod swap;
mod way;
mod words;

use super::{Action, Screen, caution, closing, opening};
use crate::kiosk::context::Ctx;
use crate::kiosk::gate::Purpose;
use crate::kiosk::hall::Hall;
use crate::kiosk::plan::{Floor, Peg, PegState, PlanMark, Zoom};
use crate::kiosk::ui::{self, Element};
use crate::route::{Step, Zone};
use crate::unit::Station;
use crate::walk::{Event, StepState, Walk};
use crate::words::Args;
pub use message::{Draft, Message, SheetKind};
use page::Page;
use picture::Picture;
use sheet::Sheet;
use way::Onward;

/// State of the screen: only what is not yet said.
#[derive(Debug)]
pub struct State {
    /// Position of the step on the route.
    step: usize,
    /// Which floor the plan shows.
    floor: Floor,
    /// From how near the plan is seen.
    zoom: Zoom,
    /// The mark that is looked for.
    mark: Option<u16>,
    /// What lies over the page.
    sheet: Option<Sheet>,
    /// What was pressed last, while it is being saved.
    pressed: Pressed,
    /// Where to go once all that was proposed is kept.
    after: After,
    /// The step's picture, if it has one.
    picture: Option<Picture>,
    /// Stops and marks as the plan draws them.
    pegs: Vec<Peg>,
    marks: Vec<PlanMark>,
    /// The step's figures, as far as they show.
    figures: Vec<figures::Card>,
    /// How far the words of the step are scrolled, and what stands beside them.
    scrolled: (ui::Scrolled, ui::Scrolled),
}

/// A control that shows that something is being saved.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Pressed {
    /// The primary button of the page.
    Foot,
    /// The primary button of the sheet.
    Sheet,
    /// A line of the page: of the leaving check, or all items.
    Line(String),
}

/// What follows once events are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum After {
    /// Nothing.
    Stay,
    /// The sheet is put away.
    Close,
    /// As the primary button says.
    Onward,
    /// The Closing: the unit is not handed over.
    Closing,
}

impl State {
    /// The screen at the first step that is neither shown nor left out, else at the first of all.
    #[must_use]
    pub fn new(hall: &Hall) -> Self {
        Self::at(hall, hall.walk.next_step().unwrap_or(0))
    }

    /// The screen where a walk was left: where the tablet was with the renter, at the step from which it is handed over.
    #[must_use]
    pub fn resumed(hall: &Hall) -> Self {
        let walk = &hall.walk;
        let before = walk.next_step().unwrap_or(walk.route().steps.len()).checked_sub(1);
        let waits = |step: &usize| matches!(way::onward(walk, *step), Onward::HandOver { .. });
        before.filter(waits).map_or_else(|| Self::new(hall), |step| Self::at(hall, step))
    }

    /// The screen at a step; at the first open one when the route has no such step.
    #[must_use]
    pub fn at_step(hall: &Hall, step: &str) -> Self {
        let found = hall.walk.route().steps.iter().position(|s| s.id == step);
        found.map_or_else(|| Self::new(hall), |index| Self::at(hall, index))
    }

    /// The screen once the cautions of a stop are answered: at the first open step behind it.
    #[must_use]
    pub fn after_stop(hall: &Hall, stop: usize) -> Self {
        let walk = &hall.walk;
        let end = walk.route().stops.get(stop).map_or(0, |s| s.steps.end);
        let last = walk.route().steps.len().saturating_sub(1);
        Self::at(hall, walk.next_step_after(end).unwrap_or(last))
    }

    /// Which step of the route is open.
    #[must_use]
    pub fn position(&self) -> usize {
        self.step
    }

    fn at(hall: &Hall, step: usize) -> Self {
        let mut state = Self {
            step,
            floor: Floor::Outside,
            zoom: Zoom::default(),
            mark: None,
            sheet: None,
            pressed: Pressed::Foot,
            after: After::Stay,
            picture: None,
            pegs: Vec::new(),
            marks: Vec::new(),
            figures: Vec::new(),
            scrolled: <(ui::Scrolled, ui::Scrolled)>::default(),
        };
        state.go(hall, step);
        state
    }

    /// Opens the page of a step.
    fn go(&mut self, hall: &Hall, step: usize) {
        self.step = step;
        self.sheet = None;
        self.scrolled = <(ui::Scrolled, ui::Scrolled)>::default();
        match way::zone(&hall.walk, step) {
            Zone::Inside => self.show(Floor::Inside),
            Zone::Outside => self.show(Floor::Outside),
            Zone::Desk | Zone::Leaving => {}
        }
        let id = hall.walk.route().steps.get(step).and_then(|s| s.picture.as_deref());
        self.picture = id.map(|id| Picture::load(&hall.scripts.bundle, id));
        self.refresh(hall);
        // From nearer by, where the walk is comes into view.
        if let Some(here) = self.pegs.iter().find(|peg| peg.state == PegState::Here) {
            self.zoom = Zoom::new(self.zoom.times(), here.at);
        }
    }

    fn show(&mut self, floor: Floor) {
        if self.floor != floor {
            self.zoom = Zoom::default();
        }
        self.floor = floor;
    }

    /// Draws stops and marks, and computes figures, as the walk has them now.
    fn refresh(&mut self, hall: &Hall) {
        self.pegs = side::pegs(hall, self.step);
        self.marks = side::marks(&hall.walk);
        self.figures = self.here(hall).map_or_else(Vec::new, |step| figures::of_step(hall, step));
    }

    fn here<'h>(&self, hall: &'h Hall) -> Option<&'h Step> {
        hall.walk.route().steps.get(self.step)
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        // What is typed meanwhile is kept; what would say something waits for its own press.
        if hall.saving && !matches!(message, Message::Draft(_)) {
            return Action::None;
        }
        // Of several events some may have been kept before one was refused.
        self.refresh(hall);
        match message {
            Message::Onward => self.shown_or_onward(ctx, hall),
            Message::ShownAfterAll => {
                let event = self.here(hall).map(|step| shown(ctx, &hall.walk, step));
                self.propose(event.into_iter().collect(), Pressed::Foot, After::Stay)
            }
            Message::LeavingTicked { item, good } => {
                let pressed = Pressed::Line(item.clone());
                self.propose(vec![Event::LeavingChecked { item, good }], pressed, After::Stay)
            }
            Message::AllAsListed => {
                self.propose(kit::as_listed(&hall.walk), Pressed::Line(kit::ALL.to_owned()), After::Stay)
            }
            Message::MarkRemoved(number) => {
                let pressed = Pressed::Line(number.to_string());
                self.propose(vec![Event::MarkRemoved { number }], pressed, After::Stay)
            }
            Message::SheetKept => self.keep_sheet(ctx, hall),
            Message::ClosingAsked => Action::open(Screen::Closing(closing::State::new(hall))),
            Message::OpeningAsked => Action::open(Screen::Opening(opening::State::again(hall))),
            Message::TakeOverAsked => Action::Gate(Purpose::TakeOver),
            Message::YardAsked => Action::ToYard,
            other => {
                self.turn(other, hall);
                Action::None
            }
        }
    }

    /// What changes nothing but the page.
    fn turn(&mut self, message: Message, hall: &Hall) {
        match message {
            Message::BackAsked => self.go(hall, self.step.saturating_sub(1)),
            Message::PegPressed(number) => {
                if let Some(step) = side::step_of_peg(&hall.walk, self.floor, number) {
                    self.go(hall, step);
                }
            }
            Message::FloorChosen(floor) => self.show(floor),
            Message::Zoomed(zoom) => self.zoom = zoom,
            Message::MarkChosen(number) => self.mark = Some(number).filter(|n| self.mark != Some(*n)),
            Message::PointHeld(at) => {
                self.turn(Message::SheetAsked(SheetKind::Marks), hall);
                self.turn(Message::Draft(Draft::Point(at)), hall);
            }
            Message::StepChosen(step) => self.go(hall, step),
            Message::SheetAsked(kind) => {
                self.sheet = self.here(hall).map(|s| Sheet::open(kind, &hall.walk, s));
            }
            Message::SheetClosed => self.sheet = None,
            Message::Draft(draft) => {
                if let Some(sheet) = &mut self.sheet {
                    sheet.change(draft, hall);
                }
            }
            _ => {}
        }
    }

    fn propose(&mut self, events: Vec<Event>, pressed: Pressed, after: After) -> Action {
        if events.is_empty() {
            return Action::None;
        }
        self.pressed = pressed;
        self.after = after;
        Action::Propose(events)
    }

    /// Says that the step was shown, if that is not said yet, and goes on.
    fn shown_or_onward(&mut self, ctx: &Ctx<'_>, hall: &Hall) -> Action {
        match self.here(hall) {
            Some(step) if *hall.walk.step_state(&step.id) == StepState::Open => {
                self.propose(vec![shown(ctx, &hall.walk, step)], Pressed::Foot, After::Onward)
            }
            _ => self.onward(hall),
        }
    }

    fn keep_sheet(&mut self, ctx: &Ctx<'_>, hall: &Hall) -> Action {
        let Some((sheet, step)) = self.sheet.as_ref().zip(self.here(hall)) else { return Action::None };
        if let Sheet::Swap(swapping) = sheet {
            let action = swapping.action(ctx);
            self.pressed = Pressed::Sheet;
            return action;
        }
        let after = match sheet {
            Sheet::NotShown { .. } => After::Onward,
            Sheet::Stop { .. } => After::Closing,
            _ => After::Close,
        };
        self.propose(sheet.events(&hall.walk, step), Pressed::Sheet, after)
    }

    /// Goes where the walk goes from here.
    fn onward(&mut self, hall: &Hall) -> Action {
        match way::onward(&hall.walk, self.step) {
            Onward::Step(step) => {
                self.go(hall, step);
                Action::None
            }
            Onward::HandOver { stop, .. } => {
                Action::open(Screen::Caution(caution::State::new_at(hall, stop)))
            }
            Onward::Closing => Action::open(Screen::Closing(closing::State::new(hall))),
        }
    }

    /// What was proposed is kept.
    pub fn saved(&mut self, ctx: &Ctx<'_>) -> Action {
        let Some(hall) = ctx.hall else { return Action::None };
        self.refresh(hall);
        match std::mem::replace(&mut self.after, After::Stay) {
            After::Stay => Action::None,
            After::Close => {
                self.sheet = self.sheet.take().and_then(Sheet::kept);
                Action::None
            }
            After::Onward => {
                self.sheet = None;
                self.onward(hall)
            }
            After::Closing => Action::open(Screen::Closing(closing::State::new(hall))),
        }
    }

    /// Where in the walk: the station, and which stop of how many.
    #[must_use]
    pub fn crumb(&self, ctx: &Ctx<'_>) -> String {
        let Some((hall, step)) = ctx.hall.and_then(|hall| Some((hall, self.here(hall)?))) else {
            return String::new();
        };
        // The leaving check goes once around, wherever its step is placed.
        let around = !step.leaving.is_empty();
        let station = if around { Station::Any } else { step.station };
        let station = ctx.say(&format!("station-{}", station.word()));
        match way::zone(&hall.walk, self.step) {
            Zone::Outside | Zone::Inside if !ctx.look.portrait() => {
                let (number, of) = way::numbered(&hall.walk, self.step);
                let args = Args::new()
                    .text("station", station)
                    .number("number", number)
                    .number("count", u64::try_from(of).unwrap_or(0));
                ctx.say_with("walk-crumb", &args)
            }
            // Upright, the stop stands right below.
            _ => station,
        }
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some((hall, step)) = ctx.hall.and_then(|hall| Some((hall, self.here(hall)?))) else {
            return ui::title(&ctx.look, ctx.say("walk-nothing")).into();
        };
        let page = Page::new(self, *ctx, hall, step);
        match &self.sheet {
            // The plan is too small a place to put a finger on; marks have a page of their own.
            Some(sheet @ Sheet::Marks(marking)) => page.marks(sheet, marking),
            Some(sheet) => ui::dialog(&ctx.look, page.whole(), page.sheet(sheet), Some(Message::SheetClosed)),
            None => ui::alone(page.whole()),
        }
    }
}

/// The event of a step that is shown, in the language of the page.
fn shown(ctx: &Ctx<'_>, walk: &Walk, step: &Step) -> Event {
    let language =
        walk.reader().map_or_else(|| ctx.settings.staff.lang.clone(), |r| r.value.language.clone());
    Event::StepShown { step: step.id.clone(), language }
}
