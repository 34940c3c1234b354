//! The kiosk: screens, and the loop that holds them together.
//!
//! Only this module names the toolkit. [`program`] serves the window, headless frames and tests alike. Screens
//! turn messages into [`Action`]s; this module turns actions into [`effect::Effect`]s, which are data, and
//! `run` is the one place where they meet the world.

mod alone;
mod context;
mod duty;
pub mod edit;
pub mod effect;
mod entry;
pub mod gate;
pub mod guard;
mod hall;
pub mod hand_in;
pub mod headless;
mod kept;
mod lapse;
mod manners;
pub mod office;
pub mod plan;
pub mod preferences;
mod preview;
mod run;
pub mod screen;
pub mod shape;
mod start;
pub mod theme;
pub mod ui;
pub mod watch;

use std::sync::Arc;

use iced::Task;

use crate::script::{Bundle, Scripts};
use crate::tablet::staff::Staff;
use crate::words::{Args, Reader};

pub use context::{Crew, Ctx, Settings};
pub use effect::{Done, Effect};
pub use hall::Hall;
pub use manners::Notice;
pub use run::World;
pub use screen::{Action, Screen};
pub use start::{Folders, Gather, StartFault, start};

/// What happened in the window.
#[derive(Debug, Clone)]
pub enum Message {
    /// Something on the screen that is open.
    Screen(screen::Message),
    /// An effect is done.
    Done(Done),
    /// The theme was changed.
    ThemeChosen(theme::Theme),
    /// The next text size was asked for.
    TextSizeAsked,
    /// The notice at the top was put away.
    NoticeClosed,
    /// The emergency card was opened or closed.
    EmergencyToggled,
    /// A second has passed in which the lot folder may have changed.
    LotAsked,
    /// Somebody touched the tablet.
    Touched,
    /// The time has come to which the watch has let things be.
    WatchDue,
    /// The cover is to be taken off.
    Uncovered,
    /// A window manager has had its time to let the window fill the screen.
    FillAsked,
    /// The window asked to close.
    CloseAsked,
    /// Something at the gate.
    Gate(gate::Message),
}

/// The state of the kiosk.
#[derive(Debug)]
pub struct App {
    world: Arc<World>,
    lot: Arc<Scripts>,
    settings: Settings,
    /// Units of the lot as the plan draws them.
    shapes: std::collections::BTreeMap<String, plan::PlanShape>,
    /// The lot folder as it is watched, and what is wrong in it.
    edit: edit::Edit,
    screen: Screen,
    hall: Option<Hall>,
    notice: Option<Notice>,
    emergency: bool,
    watch: watch::Watch,
    /// How long the one timer runs; none once nothing changes by itself.
    timer: Option<std::time::Duration>,
    /// Whether the window has yet to fill the screen.
    filling: bool,
    /// How often settings were changed.
    changed: u64,
    /// Who works here, or why that cannot be told.
    staff: Result<Staff, String>,
    /// Who signed on at this tablet.
    duty: Option<String>,
    gate: Option<gate::Gate>,
    exits: bool,
    /// Changes whenever all is to be drawn anew.
    turn: u8,
}

impl App {
    /// The kiosk as it starts: the first start, or the Yard.
    pub fn new(world: Arc<World>, lot: Arc<Scripts>, settings: Settings) -> (Self, Task<Message>) {
        Self::with(world, lot, settings, edit::Edit::default())
    }

    /// What the open walk is led from, else the lot.
    fn scripts(&self) -> &Arc<Scripts> {
        self.hall.as_ref().map_or(&self.lot, |h| &h.scripts)
    }

    /// The open walk.
    #[must_use]
    pub fn hall(&self) -> Option<&Hall> {
        self.hall.as_ref()
    }

    /// The screen that is open.
    #[must_use]
    pub fn screen(&self) -> &Screen {
        &self.screen
    }

    /// What staff must know.
    #[must_use]
    pub fn notice(&self) -> Option<&Notice> {
        self.notice.as_ref()
    }

    fn ctx(&self, look: theme::Look) -> Ctx<'_> {
        Ctx {
            scripts: self.scripts(),
            settings: &self.settings,
            look,
            now: self.world.now(),
            shapes: &self.shapes,
            faults: &self.edit.faults,
            hall: self.hall.as_ref(),
            crew: Crew {
                staff: self.staff.as_ref().ok(),
                duty: self.duty.as_deref(),
                archive: self.world.office().is_some(),
            },
        }
    }

    /// Takes a message in.
    pub fn update(&mut self, message: Message) -> Task<Message> {
        // Hands and timers change the page by the shade alone.
        let still = matches!(message, Message::Touched | Message::WatchDue | Message::LotAsked);
        let shade = self.watch.shade();
        let effects = match message {
            Message::Screen(message) => self.screen_message(message),
            Message::Done(done) => self.done(done),
            Message::ThemeChosen(theme) => self.set(Settings { theme, ..self.settings.clone() }),
            Message::TextSizeAsked => {
                self.set(Settings { text: self.settings.text.next(), ..self.settings.clone() })
            }
            Message::NoticeClosed => {
                self.notice = None;
                Vec::new()
            }
            Message::EmergencyToggled => {
                self.emergency = !self.emergency;
                Vec::new()
            }
            Message::LotAsked => self.edit.ask().into_iter().collect(),
            Message::Touched => self.touched(),
            Message::WatchDue => self.watch_due(),
            Message::Uncovered => self.uncovered(),
            Message::FillAsked => return self.fill_screen(),
            Message::CloseAsked => self.ask_gate(gate::Purpose::Close),
            Message::Gate(message) => self.gate_message(message),
        };
        let task = self.run(effects);
        if !still || self.watch.shade() != shade {
            self.turn = self.turn.wrapping_add(1);
        }
        if self.exits { iced::exit() } else { task }
    }

    fn screen_message(&mut self, message: screen::Message) -> Vec<Effect> {
        let action = self.with_screen(|screen, ctx| screen.update(message, ctx));
        self.act(action)
    }

    /// What views look at, for words alone: any look will do.
    fn any_ctx(&self) -> Ctx<'_> {
        self.ctx(theme::Look::new(
            self.settings.theme,
            self.settings.text,
            iced::Size::new(1280.0, 800.0),
            1.0,
        ))
    }

    /// Lends the open screen what it may look at. No view is drawn here, so any look will do.
    fn with_screen(&mut self, change: impl FnOnce(&mut Screen, &Ctx<'_>) -> Action) -> Action {
        let Self { screen, settings, shapes, hall, lot, world, edit, staff, duty, .. } = self;
        let look = theme::Look::new(settings.theme, settings.text, iced::Size::new(1280.0, 800.0), 1.0);
        let scripts = hall.as_ref().map_or(&*lot, |h| &h.scripts);
        let (now, faults) = (world.now(), &edit.faults);
        let archive = world.office().is_some();
        let (hall, crew) =
            (hall.as_ref(), Crew { staff: staff.as_ref().ok(), duty: duty.as_deref(), archive });
        change(screen, &Ctx { scripts, settings, look, now, shapes, faults, hall, crew })
    }

    /// Does what a screen asked for.
    fn act(&mut self, action: Action) -> Vec<Effect> {
        match action {
            Action::None => Vec::new(),
            Action::Name(name) => vec![Effect::FirstStart(name)],
            Action::Begin(unit) => {
                let faults = self.edit.faults.of(&unit);
                if faults == 0 {
                    return self.begin_on_duty(unit);
                }
                self.tell(screen::counted(&self.any_ctx(), "yard-unit-faulty", faults), false);
                Vec::new()
            }
            Action::GoOn { walk, agent } => self.resume_on_duty(walk, agent.as_deref()),
            Action::SignOff => {
                self.duty = None;
                Vec::new()
            }
            Action::Staff(change) => vec![Effect::Staff(change)],
            Action::Propose(events) => {
                if let Some(hall) = &mut self.hall {
                    hall.saving = true;
                }
                vec![Effect::Propose(events)]
            }
            Action::Swap { unit, reason } => self.swap(unit, reason),
            Action::Seal => {
                if let Some(hall) = &mut self.hall {
                    hall.saving = true;
                }
                vec![Effect::Seal]
            }
            Action::HandIn(ask) => vec![Effect::HandIn(ask)],
            Action::Office(asks) => asks.into_iter().map(Effect::Office).collect(),
            Action::SaveCopy { record, to } => vec![Effect::SaveCopy { record, to }],
            Action::Set(settings) => self.set(*settings),
            Action::Open(screen) => {
                self.screen = *screen;
                Vec::new()
            }
            Action::Emergency => {
                self.emergency = true;
                Vec::new()
            }
            Action::Reread { unit, reader } => self.reread(&unit, reader),
            Action::ToYard => {
                self.hall = None;
                self.screen = Screen::waiting();
                vec![Effect::ListWalks]
            }
            Action::Gate(purpose) => self.ask_gate(purpose),
        }
    }

    /// Takes in what an effect brought.
    fn done(&mut self, done: Done) -> Vec<Effect> {
        match done {
            Done::Started(Ok(fingerprint)) => {
                self.screen = Screen::named(fingerprint, self.lot.bundle.is_demo());
                if self.lot.bundle.is_demo() { vec![Effect::ListWalks] } else { Vec::new() }
            }
            Done::Listed(Ok(yard)) => {
                self.tell_news(&yard.news);
                self.screen = Screen::yard(yard);
                Vec::new()
            }
            Done::NoRoom(room) => self.no_room(&room),
            Done::Looked(said) => self.looked(said),
            Done::Taken(Ok(taken)) => {
                self.notice = taken.notice.map(|text| Notice { text, stops: false });
                if let Some(hall) = Hall::new(taken.walk, taken.scripts) {
                    let hall = Hall { pace: taken.pace, ..hall };
                    self.screen = Screen::at(&hall);
                    self.hall = Some(hall);
                }
                self.agent_on_duty()
            }
            Done::Swapped(result) => self.swapped(result),
            Done::Decoded { photo, picture } => {
                match &mut self.screen {
                    Screen::Walk(state) => state.decoded(&photo, picture),
                    Screen::Caution(state) => state.decoded(&photo, picture),
                    Screen::Reread(state) => state.decoded(&photo, picture),
                    _ => {}
                }
                Vec::new()
            }
            Done::LotRead(found) => self.lot_read(found),
            Done::Proposed(result) => self.proposed(result),
            Done::Sealed(Ok(finished)) => {
                if let Some(hall) = &mut self.hall {
                    hall.saving = false;
                }
                self.screen = Screen::sealed(finished);
                Vec::new()
            }
            Done::SettingsKept(Ok(())) => Vec::new(),
            Done::SettingsKept(Err(why)) => {
                self.tell(self.say("settings-not-kept", Args::new().text("why", why)), false);
                Vec::new()
            }
            Done::Copied(result) => {
                let key = if result.is_ok() { "copy-saved" } else { "copy-not-saved" };
                let why = result.err().unwrap_or_default();
                self.tell(self.say(key, Args::new().text("why", why)), false);
                Vec::new()
            }
            Done::HandIn(answer) => self.handed_in(answer),
            Done::Office(answer) => self.office_answered(*answer),
            Done::PinTried { code, tried, staff } => {
                self.staff = staff;
                self.pin_tried(&code, tried)
            }
            Done::StaffChanged { result, staff } => self.staff_changed(result, staff),
            Done::Started(Err(why)) | Done::Listed(Err(why)) | Done::Taken(Err(why)) => {
                self.tell(why, false);
                Vec::new()
            }
            Done::Sealed(Err(why)) => {
                if let Some(hall) = &mut self.hall {
                    hall.saving = false;
                }
                self.tell(self.say("seal-stopped", Args::new().text("why", why)), false);
                Vec::new()
            }
        }
    }

    fn proposed(&mut self, result: effect::Proposed) -> Vec<Effect> {
        self.heed(&result);
        let Some(hall) = &mut self.hall else { return Vec::new() };
        hall.saving = false;
        if let Some(walk) = result.walk {
            hall.walk = walk;
        }
        match result.fault {
            None => {
                let action = self.with_screen(Screen::saved);
                self.act(action)
            }
            Some(fault) => {
                self.tell(fault.text, fault.stops);
                Vec::new()
            }
        }
    }

    fn say(&self, key: &str, args: Args) -> String {
        self.scripts().words.say(&self.settings.staff, key, &args)
    }

    /// Photos are decoded beside the screens; the page that was opened last may want one.
    fn photo_wanted(&mut self) -> Option<Effect> {
        let photo = match &mut self.screen {
            Screen::Walk(state) => state.photo_wanted()?,
            Screen::Caution(state) => state.photo_wanted()?,
            Screen::Reread(state) => state.photo_wanted()?,
            _ => return None,
        };
        Some(Effect::Decode { bundle: Arc::clone(&self.scripts().bundle), photo })
    }

    /// Turns effects into tasks; in a world without threads, does them at once.
    fn run(&mut self, mut effects: Vec<Effect>) -> Task<Message> {
        effects.extend(self.photo_wanted());
        if !self.world.inline {
            return run::tasks(&self.world, &self.lot, effects);
        }
        for effect in effects {
            for done in run::perform_all(&self.world, &self.lot, effect) {
                let _ = self.update(Message::Done(done));
            }
        }
        Task::none()
    }

    /// What is on the screen.
    pub fn view(&self) -> ui::Element<'_, Message> {
        ui::root(self.settings.wishes(), self.typed(), |look| {
            let ctx = self.ctx(look);
            self.veiled(screen::frame(self, &ctx))
        })
    }

    /// The toolkit's theme.
    #[must_use]
    pub fn toolkit_theme(&self) -> iced::Theme {
        theme::style::toolkit(self.settings.theme)
    }
}

/// The program of window, frames and tests.
pub fn program(
    world: Arc<World>,
    lot: Arc<Scripts>,
    settings: Settings,
) -> iced::Application<impl iced::Program<State = App, Message = Message, Theme = iced::Theme>> {
    program_with(world, lot, settings, edit::Edit::default())
}

/// As [`program`], with what is known of the lot's faults, and the folder to watch.
pub fn program_with(
    world: Arc<World>,
    lot: Arc<Scripts>,
    settings: Settings,
    edit: edit::Edit,
) -> iced::Application<impl iced::Program<State = App, Message = Message, Theme = iced::Theme>> {
    let full = settings.full_screen;
    let boot = move || App::with(Arc::clone(&world), Arc::clone(&lot), settings.clone(), edit.clone());
    let mut application = iced::application(boot, App::update, App::view)
        .title("Sendoff")
        .window(manners::window(full))
        .theme(App::toolkit_theme)
        .style(App::ground)
        .subscription(manners::subscription)
        .default_font(theme::fonts::REGULAR);
    for font in theme::fonts::files() {
        application = application.font(font);
    }
    application
}

/// The demo lot, or the lot of a folder, as the kiosk uses it.
///
/// # Errors
/// The scripts have faults; the first is named.
pub fn scripts(bundle: Bundle) -> Result<Arc<Scripts>, crate::tablet::TabletFault> {
    crate::tablet::usable(bundle).map(Arc::new)
}

/// The staff's reader: the lot's usual language and measures.
#[must_use]
pub fn staff_reader(lot: &Scripts) -> Reader {
    let measures = lot.lot.value.measures.first().map_or("us", String::as_str);
    let language = lot.lot.value.languages.first().map_or(crate::words::SOURCE_LANGUAGE, String::as_str);
    Reader::new(language, hall::system_of(measures))
}
