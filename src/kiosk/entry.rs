//! The window before the kiosk stands in it. It opens at once, on plain ground with our name, while letters, lot, key
//! and walks are read beside it; the kiosk takes over in the same window.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use iced::futures::channel::oneshot::Receiver;
use iced::widget::{column, container};
use iced::{Alignment, Subscription, Task};

use super::context::Settings;
use super::edit::Edit;
use super::effect::{Done, Effect};
use super::run::World;
use super::screen::Screen;
use super::start::StartFault;
use super::theme::{Gap, Wishes, style};
use super::ui::{self, Element};
use super::{App, manners, shape, watch};
use crate::script::{Bundle, Scripts};
use crate::source::SourceFile;
use crate::words::{Args, Reader, SOURCE_LANGUAGE, Words};

/// Our name, the same in every language.
const NAME: &str = "Sendoff";
/// Whoever waits longer than this is told what for.
const MOMENT: Duration = Duration::from_secs(1);
/// Where the words for that stand.
const WORDS: &str = "i18n/en-US/kiosk.ftl";

/// What a kiosk starts with, once all is read.
#[derive(Debug)]
pub(super) struct Found {
    pub world: Arc<World>,
    pub lot: Arc<Scripts>,
    pub settings: Settings,
    pub edit: Edit,
    /// The walks that wait, where the tablet has its name.
    pub listed: Option<Done>,
}

/// Something that is handed over once.
pub(super) type Once<T> = Arc<Mutex<Option<T>>>;

/// Something to hand over, or nothing yet.
pub(super) fn once<T>(thing: Option<T>) -> Once<T> {
    Arc::new(Mutex::new(thing))
}

/// Takes it.
pub(super) fn take<T>(once: &Once<T>) -> Option<T> {
    once.lock().unwrap_or_else(PoisonError::into_inner).take()
}

/// What the window knows before anything is read.
#[derive(Debug, Clone)]
pub(super) struct Reading {
    /// The look that was kept.
    pub wishes: Wishes,
    pub full_screen: bool,
    /// Whether letters can be drawn without waiting for them.
    pub letters: Arc<AtomicBool>,
    /// Why the kiosk did not come to stand, for whoever opened the window.
    pub fault: Once<StartFault>,
    /// What is told to whoever waits long.
    pub told: Option<String>,
}

/// What stands in the window.
#[derive(Debug)]
pub(super) enum Entry {
    Reading(Reading),
    Open(Box<App>),
}

/// What happened in the window.
#[derive(Debug, Clone)]
pub(super) enum Message {
    /// All is read, or cannot be.
    Read(Once<Result<Found, StartFault>>),
    /// Reading takes longer than a moment.
    Lasts,
    /// The window asked to close before anything stood in it.
    CloseAsked,
    Kiosk(super::Message),
}

impl Entry {
    fn update(&mut self, message: Message) -> Task<Message> {
        match (&mut *self, message) {
            (Self::Open(app), Message::Kiosk(message)) => app.update(message).map(Message::Kiosk),
            (Self::Reading(reading), Message::Read(read)) => match take(&read) {
                Some(Ok(found)) => {
                    let (app, task) = App::found(found);
                    *self = Self::Open(Box::new(app));
                    task.map(Message::Kiosk)
                }
                other => {
                    let why = other.and_then(Result::err).unwrap_or(StartFault::Reading);
                    *reading.fault.lock().unwrap_or_else(PoisonError::into_inner) = Some(why);
                    iced::exit()
                }
            },
            (Self::Reading(reading), Message::Lasts) => {
                reading.told.get_or_insert_with(told);
                Task::none()
            }
            (Self::Reading(_), Message::CloseAsked) => iced::exit(),
            (Self::Reading(_), Message::Kiosk(_)) | (Self::Open(_), _) => Task::none(),
        }
    }

    fn view(&self) -> Element<'_, Message> {
        match self {
            Self::Open(app) => app.view().map(Message::Kiosk),
            Self::Reading(reading) => reading.view(),
        }
    }

    fn subscription(&self) -> Subscription<Message> {
        match self {
            Self::Open(app) => manners::subscription(app).map(Message::Kiosk),
            Self::Reading(reading) => {
                let close = iced::window::close_requests().map(|_| Message::CloseAsked);
                let lasts = reading.told.is_none().then(|| iced::time::every(MOMENT).map(|_| Message::Lasts));
                Subscription::batch([Some(close), lasts].into_iter().flatten())
            }
        }
    }

    fn toolkit_theme(&self) -> iced::Theme {
        match self {
            Self::Open(app) => app.toolkit_theme(),
            Self::Reading(reading) => style::toolkit(reading.wishes.theme),
        }
    }

    fn ground(&self, theme: &iced::Theme) -> iced::theme::Style {
        match self {
            Self::Open(app) => app.ground(theme),
            Self::Reading(_) => iced::theme::Base::base(theme),
        }
    }
}

impl Reading {
    fn view<'a>(&self) -> Element<'a, Message> {
        if !self.letters.load(Ordering::Acquire) {
            return iced::widget::Space::new().into();
        }
        let told = self.told.clone();
        ui::root(self.wishes, None, move |look| {
            let told = told.clone().map(|told| ui::lead(&look, told).align_x(Alignment::Center));
            let words = column![ui::title(&look, NAME)].push(told);
            let words = words.spacing(look.gap(Gap::Wide)).align_x(Alignment::Center);
            container(words).center(iced::Fill).into()
        })
    }
}

impl App {
    /// As [`App::new`], with what is known of the lot's faults, and the folder to watch.
    pub fn with(
        world: Arc<World>,
        lot: Arc<Scripts>,
        settings: Settings,
        edit: Edit,
    ) -> (Self, Task<super::Message>) {
        Self::found(Found { world, lot, settings, edit, listed: None })
    }

    /// The kiosk as it starts.
    fn found(found: Found) -> (Self, Task<super::Message>) {
        let Found { world, lot, settings, edit, listed } = found;
        let idle = manners::idle(&lot);
        let staff = world.staff();
        let mut app = Self {
            watch: watch::Watch::new(idle, world.running()),
            timer: Some(idle.dim),
            filling: settings.full_screen,
            screen: Screen::waiting(),
            shapes: shape::all(&lot),
            edit,
            world,
            lot,
            settings,
            hall: None,
            notice: None,
            emergency: false,
            staff,
            duty: None,
            gate: None,
            exits: false,
            changed: 0,
            turn: 0,
        };
        app.take_settings();
        if let Err(why) = &app.staff {
            app.tell(why.clone(), false);
        }
        if app.world.tablet().is_none() {
            app.screen = Screen::first(app.lot.bundle.is_demo());
            return (app, Task::none());
        }
        let effects = listed.map_or_else(|| vec![Effect::ListWalks], |listed| app.done(listed));
        let task = app.run(effects);
        (app, task)
    }
}

/// What is told to whoever waits long. The lot is not read yet, so it is our own words.
fn told() -> String {
    let own = Bundle::demo();
    let text = own.get(WORDS).map(|bytes| String::from_utf8_lossy(bytes).into_owned()).unwrap_or_default();
    let (words, _) = Words::load(&[SourceFile::new(WORDS, &text)]);
    let reader = Reader::new(SOURCE_LANGUAGE, crate::measure::System::Us);
    words.say(&reader, "start-reading", &Args::new())
}

/// The program of the window: what is read arrives through `found`.
pub(super) fn program(
    reading: Reading,
    found: Receiver<Result<Found, StartFault>>,
) -> iced::Application<impl iced::Program<State = Entry, Message = Message, Theme = iced::Theme>> {
    let full = reading.full_screen;
    let found = once(Some(found));
    let boot = move || {
        let task = take(&found).map_or_else(Task::none, |found| {
            Task::future(async move { Message::Read(once(found.await.ok())) })
        });
        (Entry::Reading(reading.clone()), task)
    };
    iced::application(boot, Entry::update, Entry::view)
        .title(NAME)
        .window(manners::window(full))
        .theme(Entry::toolkit_theme)
        .style(Entry::ground)
        .subscription(Entry::subscription)
        .default_font(super::theme::fonts::REGULAR)
}

#[cfg(test)]
mod tests {
    use super::super::headless::Driver;
    use super::*;
    use crate::tablet::TabletFault;

    fn reading(letters: bool) -> Reading {
        Reading {
            wishes: Wishes::default(),
            full_screen: false,
            letters: Arc::new(AtomicBool::new(letters)),
            fault: once(None),
            told: None,
        }
    }

    fn words(of: &Reading, message: Option<Message>) -> Vec<String> {
        let (_sender, found) = iced::futures::channel::oneshot::channel();
        let program = program(of.clone(), found);
        let entry = Entry::Reading(of.clone());
        let mut driver = Driver::with_state(&program, entry, (1280, 800)).unwrap();
        if let Some(message) = message {
            driver.message(message).unwrap();
        }
        driver.texts().into_iter().map(|shown| shown.text).collect()
    }

    #[test]
    fn the_first_frame_waits_for_no_letters() {
        assert_eq!(words(&reading(false), None), Vec::<String>::new());
        assert_eq!(words(&reading(true), None), [NAME]);
    }

    #[test]
    fn whoever_waits_long_is_told_what_for() {
        let told = words(&reading(true), Some(Message::Lasts));
        assert_eq!(told.len(), 2, "{told:?}");
        assert!(told.last().unwrap().starts_with("The kiosk reads"), "{told:?}");
    }

    #[test]
    fn what_cannot_be_read_ends_the_window_and_is_kept_for_whoever_opened_it() {
        for (read, wanted) in [
            (Some(Err(StartFault::from(TabletFault::Faulty { count: 1, first: "a".into() }))), "a"),
            (None, "start it again"),
        ] {
            let reading = reading(true);
            let mut entry = Entry::Reading(reading.clone());
            let _ = entry.update(Message::Read(once(read)));
            let fault = take(&reading.fault).unwrap();
            assert!(fault.to_string().contains(wanted), "{fault}");
        }
    }
}
