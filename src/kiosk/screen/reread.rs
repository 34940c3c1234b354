//! Reread: the renter alone with the tablet, on the lot or after the handoff. Topics on the plan and in a list, a search,
//! the trouble guides, the numbers of the unit.
//!
//! Nobody attends it. So it knows no walk and no person, keeps nothing, and proposes nothing: all of it is the pages
//! that were opened, one on the other, and what was typed.

mod cover;
mod guide;
mod home;
mod kit;
mod numbers;
mod prepared;
mod topic;

use std::time::Duration;

use crate::kiosk::context::Ctx;
use crate::kiosk::gate::Purpose;
use crate::kiosk::plan::{Floor, Peg};
use crate::kiosk::screen::walk::picture::Picture;
use crate::kiosk::ui::{self, Element};
use crate::measure::System;
use crate::route::Zone;
use crate::route::find::Found;
use crate::script::Speaker;
use crate::words::{Args, Reader};

use super::Action;
pub use guide::{At, Place};
use prepared::Prepared;

/// Most pages that are remembered for the way back: nobody goes further.
const DEEPEST: usize = 400;

/// After how long without a touch the cover comes back: two minutes, common practice, no source.
pub const IDLE: Duration = Duration::from_secs(120);

/// State of the screen.
#[derive(Debug)]
pub struct State {
    unit: String,
    reader: Reader,
    /// The pages that were opened, the open one last; never empty.
    pages: Vec<Page>,
    /// What is typed into the search.
    query: String,
    /// Which part of the way round is listed, and which stop of it alone.
    zone: Zone,
    stop: Option<u16>,
    /// Stops that have a place on the plan, the chosen one marked.
    pegs: Vec<Peg>,
    picture: Option<Picture>,
    prepared: Prepared,
}

/// A page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    /// The cover: what stands there while nobody reads.
    Cover,
    /// Plan, list and search.
    Home,
    /// A step, by its id.
    Topic(String),
    /// All cautions.
    Cautions,
    /// What can be wrong.
    Guides,
    /// A place in a guide.
    Guide(Place),
    /// Numbers of the unit.
    Numbers,
}

/// What happened on the screen.
#[derive(Debug, Clone)]
pub enum Message {
    /// Back to the page before.
    BackPressed,
    /// A page is to be opened.
    PageChosen(Page),
    /// Back to plan and list, whatever was opened since.
    HomePressed,
    /// A guide is to be begun.
    GuideChosen(String),
    /// The hazard of a guide was tapped through.
    HazardRead,
    /// The question of a guide was answered.
    Answered(bool),
    /// Something was typed into the search.
    QueryChanged(String),
    /// The search is to be emptied.
    QueryCleared,
    /// A peg on the plan was pressed.
    PegPressed(u16),
    /// A part of the way round is to be listed.
    ZoneChosen(Zone),
    /// The emergency card is wanted.
    EmergencyPressed,
    /// Another language is wanted.
    LanguageChosen(String),
    /// Other measures are wanted.
    MeasuresChosen(System),
    /// Nobody has touched the tablet for [`IDLE`].
    Idled,
    /// Staff want to leave these pages.
    LeavePressed,
}

impl State {
    /// The cover of a unit, for a reader; none when the lot has no such unit.
    #[must_use]
    pub fn new(scripts: &crate::script::Scripts, unit: &str, reader: Reader) -> Option<Self> {
        let prepared = Prepared::new(scripts, unit)?;
        Some(Self {
            pegs: prepared.pegs(Zone::Outside, None),
            prepared,
            unit: unit.to_owned(),
            reader,
            pages: vec![Page::Cover],
            query: String::new(),
            zone: Zone::Outside,
            stop: None,
            picture: None,
        })
    }

    /// The unit.
    #[must_use]
    pub fn unit(&self) -> &str {
        &self.unit
    }

    /// Who reads.
    #[must_use]
    pub fn reader(&self) -> &Reader {
        &self.reader
    }

    /// The page that is open.
    #[must_use]
    pub fn page(&self) -> &Page {
        self.pages.last().unwrap_or(&Page::Cover)
    }

    /// Takes in scripts that have changed; false when they no longer have the unit.
    pub(in crate::kiosk) fn renew(&mut self, scripts: &crate::script::Scripts) -> bool {
        let Some(prepared) = Prepared::new(scripts, &self.unit) else { return false };
        self.prepared = prepared;
        // What was open may be there no more.
        if *self.page() != Page::Cover {
            self.pages = vec![Page::Cover, Page::Home];
        }
        self.list(self.zone, None);
        true
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message, ctx: &Ctx<'_>) -> Action {
        match message {
            Message::EmergencyPressed => return Action::Emergency,
            Message::LeavePressed => return Action::Gate(Purpose::Leave),
            Message::Idled => self.idled(),
            Message::BackPressed => self.back(ctx),
            Message::PageChosen(page) => self.open(page, ctx),
            Message::HomePressed => {
                self.pages = vec![Page::Cover, Page::Home];
                self.picture = None;
            }
            Message::GuideChosen(id) => {
                let place = Place::first(ctx.scripts, &self.unit, &id);
                self.go(place, ctx);
            }
            Message::HazardRead => {
                let next = self.place().and_then(|p| p.read(ctx.scripts, &self.unit));
                self.go(next, ctx);
            }
            Message::Answered(yes) => {
                let next = self.place().and_then(|p| p.answered(ctx.scripts, &self.unit, yes));
                self.go(next, ctx);
            }
            Message::QueryChanged(query) => self.query = query,
            Message::QueryCleared => self.query.clear(),
            Message::PegPressed(number) => self.list(self.zone, Some(number)),
            Message::ZoneChosen(zone) => self.list(zone, None),
            Message::LanguageChosen(lang) => self.reader.lang = lang,
            Message::MeasuresChosen(system) => self.reader.system = system,
        }
        Action::None
    }

    /// Nobody has touched it for a while: back to the cover, with nothing of what was read or typed.
    fn idled(&mut self) {
        self.pages = vec![Page::Cover];
        self.query.clear();
        self.picture = None;
        self.list(Zone::Outside, None);
    }

    /// Lists a part of the way round, or one stop of it.
    fn list(&mut self, zone: Zone, stop: Option<u16>) {
        (self.zone, self.stop) = (zone, stop);
        self.pegs = self.prepared.pegs(zone, stop);
    }

    /// The place in a guide that is open.
    #[must_use]
    pub fn place(&self) -> Option<&Place> {
        match self.page() {
            Page::Guide(place) => Some(place),
            _ => None,
        }
    }

    fn go(&mut self, place: Option<Place>, ctx: &Ctx<'_>) {
        if let Some(place) = place {
            self.open(Page::Guide(place), ctx);
        }
    }

    fn open(&mut self, page: Page, ctx: &Ctx<'_>) {
        if self.pages.len() >= DEEPEST {
            let _ = self.pages.remove(1);
        }
        self.pages.push(page);
        self.load(ctx);
    }

    fn back(&mut self, ctx: &Ctx<'_>) {
        if self.pages.len() > 1 {
            let _ = self.pages.pop();
        }
        self.load(ctx);
    }

    /// Reads the picture of the page that is open.
    fn load(&mut self, ctx: &Ctx<'_>) {
        let step = match self.page() {
            Page::Topic(id) => self.prepared.route.step(id),
            _ => None,
        };
        let picture = step.and_then(|s| s.picture.as_deref());
        self.picture = picture.map(|id| Picture::load(&ctx.scripts.bundle, id));
    }

    /// The photo that is to be decoded now, told once.
    pub(in crate::kiosk) fn photo_wanted(&mut self) -> Option<String> {
        self.picture.as_mut().and_then(Picture::wanted)
    }

    /// A photo is decoded, or cannot be.
    pub(in crate::kiosk) fn decoded(&mut self, id: &str, photo: super::walk::picture::Decoded) {
        if let Some(picture) = &mut self.picture {
            picture.decoded(id, photo);
        }
    }

    /// The unit, in a line above the page.
    #[must_use]
    pub fn crumb(&self, ctx: &Ctx<'_>) -> String {
        let say = |key: &str| ctx.scripts.words.say(&self.reader, key, &Args::new());
        let args = Args::new()
            .text("first", say(&format!("unit-{}", self.unit)))
            .text("second", say("reread-crumb"));
        ctx.scripts.words.say(&self.reader, "crumb-two", &args)
    }

    /// What is on the screen.
    pub fn view<'a>(&'a self, ctx: &Ctx<'a>) -> Element<'a, Message> {
        let Some(show) = Show::new(self, ctx) else {
            return ui::title(&ctx.look, ctx.say("walk-nothing")).into();
        };
        let page = match self.page() {
            // The cover may stand there for as long as it will.
            Page::Cover => return show.cover(),
            Page::Home => show.home(),
            Page::Topic(id) => show.topic(id),
            Page::Cautions => show.cautions(),
            Page::Guides => show.guides(),
            Page::Guide(place) => show.guide(place),
            Page::Numbers => show.numbers(),
        };
        let page = ui::on_escape(page, Message::BackPressed);
        ui::when_idle(page, IDLE, Message::Idled)
    }
}

/// What every page looks at.
#[derive(Clone)]
struct Show<'a> {
    state: &'a State,
    ctx: Ctx<'a>,
    speaker: std::rc::Rc<Speaker<'a>>,
}

impl<'a> Show<'a> {
    fn new(state: &'a State, ctx: &Ctx<'a>) -> Option<Self> {
        let speaker = Speaker::new(ctx.scripts, &state.unit, state.reader.clone())?;
        Some(Self { state, ctx: *ctx, speaker: std::rc::Rc::new(speaker) })
    }

    fn say(&self, key: &str) -> String {
        self.speaker.say(key)
    }

    fn say_with(&self, key: &str, args: Args) -> String {
        self.speaker.say_with(key, args)
    }

    fn count(&self, key: &str, count: usize) -> String {
        self.say_with(key, Args::new().number("count", u64::try_from(count).unwrap_or(u64::MAX)))
    }

    /// What a hit, a row or a caution leads to.
    fn leads(&self, found: &Found) -> Option<Message> {
        Some(match found {
            Found::Emergency => Message::EmergencyPressed,
            Found::Guide(id) => Message::GuideChosen(id.clone()),
            Found::Step(at) => {
                let step = self.state.prepared.route.steps.get(*at)?;
                Message::PageChosen(Page::Topic(step.id.clone()))
            }
        })
    }

    fn floor(&self) -> Option<Floor> {
        match self.state.zone {
            Zone::Outside => Some(Floor::Outside),
            Zone::Inside => Some(Floor::Inside),
            Zone::Desk | Zone::Leaving => None,
        }
    }
}
