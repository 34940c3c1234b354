//! What a tablet on a counter must do beside its pages: dim and lock when nobody is there, say that the clock was
//! set or that the disk fills up, and fill the screen.

use std::time::Duration;

use iced::widget::{column, container, mouse_area};
use iced::{Alignment, Background, Length, Subscription, Task};

use super::context::Ctx;
use super::effect::Proposed;
use super::gate::{self, Purpose};
use super::theme::Gap;
use super::ui::{self, Element, Over, Symbol};
use super::watch::{Idle, Shade};
use super::{App, Effect, Message, Screen, edit};
use crate::script::Scripts;
use crate::tablet::clock::{Jump, News};
use crate::tablet::room::Room;
use crate::words::{Args, format};

/// A timer is never set to less than this.
const SHORTEST: Duration = Duration::from_secs(1);

/// Something that staff must know: what went wrong and what to do next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// What and what next.
    pub text: String,
    /// Whether the walk cannot go on before the kiosk is started again.
    pub stops: bool,
}

impl App {
    /// Somebody touched the tablet.
    pub(super) fn touched(&mut self) -> Vec<Effect> {
        let before = self.watch.shade();
        self.watch.touched(self.world.running());
        // Whoever comes back to the tablet may have set its clock.
        if before > Shade::Awake && self.watch.shade() == Shade::Awake {
            self.rearm();
            return vec![Effect::LookAtClock];
        }
        Vec::new()
    }

    /// The time has come to which the watch has let things be.
    pub(super) fn watch_due(&mut self) -> Vec<Effect> {
        self.watch.tick(self.world.running());
        self.rearm();
        if self.watch.shade() == Shade::Locked {
            // Nothing half typed stays open over the cover.
            self.gate = None;
            self.emergency = false;
        }
        vec![Effect::LookAtClock]
    }

    /// What lies below everything. The toolkit draws anew only what it believes to differ, and where a page changes it
    /// leaves out words and pieces of words: a ground that differs by less than any eye sees makes it draw all. What
    /// moves without a message (a press, the caret, a ring that closes) is still drawn alone.
    #[must_use]
    pub fn ground(&self, theme: &iced::Theme) -> iced::theme::Style {
        let mut style = iced::theme::Base::base(theme);
        // Two messages may come between two frames, so that there are more grounds than two.
        style.background_color.b -= f32::from(self.turn) * 4e-7;
        style
    }

    /// The cover is to be taken off: by staff alone, unless a renter was reading or nothing of anybody lies below.
    pub(super) fn uncovered(&mut self) -> Vec<Effect> {
        let staff_only = match &self.screen {
            Screen::Yard(yard) => yard.names_anybody(),
            Screen::Office(_) => true,
            screen => self.hall.is_some() && !screen.is_renters(),
        };
        if staff_only { self.ask_gate(Purpose::Unlock) } else { self.unlock() }
    }

    /// Takes the cover off.
    pub(super) fn unlock(&mut self) -> Vec<Effect> {
        self.watch.unlocked(self.world.running());
        self.rearm();
        vec![Effect::LookAtClock]
    }

    fn rearm(&mut self) {
        self.timer = self.watch.rests(self.world.running()).map(|rest| rest.max(SHORTEST));
    }

    /// Lets the times of a lot count.
    pub(super) fn idle_of(&mut self) {
        self.watch.set_idle(idle(&self.lot));
        self.rearm();
    }

    /// Tells staff something, at the top of the page.
    pub(super) fn tell(&mut self, text: String, stops: bool) {
        self.notice = Some(Notice { text, stops });
    }

    /// Fills the screen.
    pub(super) fn fill_screen(&mut self) -> Task<Message> {
        self.filling = false;
        fill_screen()
    }

    /// What lies over the page.
    #[must_use]
    pub fn shade(&self) -> Shade {
        self.watch.shade()
    }

    /// Tells what a look at the clock brought.
    pub(super) fn looked(&mut self, said: Proposed) -> Vec<Effect> {
        self.heed(&said);
        if let (Some(hall), Some(walk)) = (&mut self.hall, said.walk) {
            hall.walk = walk;
        }
        Vec::new()
    }

    /// Tells staff what came with events that were kept.
    pub(super) fn heed(&mut self, said: &Proposed) {
        if said.freed {
            self.tell(self.say("room-freed", Args::new()), false);
        }
        self.tell_news(&said.news);
    }

    /// Tells staff that the clock was set, or the tablet moved to another time zone.
    pub(super) fn tell_news(&mut self, news: &News) {
        if self.notice.as_ref().is_some_and(|notice| notice.stops) {
            return;
        }
        if let Some(zone) = &news.zone {
            self.tell(self.say("clock-zone", Args::new().text("zone", zone.as_str())), false);
        }
        if let Some(jump) = news.jump {
            let text = jump_words(&self.any_ctx(), "clock-jumped", jump);
            self.tell(text, false);
        }
    }

    /// Tells why no new walk begins.
    pub(super) fn no_room(&mut self, room: &Room) -> Vec<Effect> {
        if let Some(text) = room_words(&self.any_ctx(), room) {
            self.tell(text, false);
        }
        // The Yard then says it too, and offers no new walk.
        if self.hall.is_none() { vec![Effect::ListWalks] } else { Vec::new() }
    }

    /// The page, or the cover that locks it.
    pub(super) fn covered<'a>(&'a self, ctx: &Ctx<'a>, page: Element<'a, Message>) -> Element<'a, Message> {
        let locked = self.watch.shade() == Shade::Locked;
        ui::layered(page, if locked { Over::Hides(cover(ctx)) } else { Over::Nothing })
    }

    /// All that is on the screen, dimmed when nobody is there.
    pub(super) fn veiled<'a>(&'a self, all: Element<'a, Message>) -> Element<'a, Message> {
        let dim = self.watch.shade() == Shade::Dim;
        ui::layered(all, if dim { Over::Shows(dimmed()) } else { Over::Nothing })
    }
}

/// How long the lot lets a tablet lie.
pub(super) fn idle(lot: &Scripts) -> Idle {
    let usual = Idle::default();
    let seconds = |time: &crate::measure::Time| {
        let seconds = time.quantity().to(crate::measure::Measure::Second).unwrap_or(0.0);
        Duration::try_from_secs_f64(seconds).ok().filter(|d| !d.is_zero())
    };
    lot.lot.value.idle.as_ref().map_or(usual, |idle| Idle {
        dim: seconds(&idle.value.dim).unwrap_or(usual.dim),
        lock: seconds(&idle.value.lock).unwrap_or(usual.lock),
    })
}

/// Why there is no room for a new walk, or hardly any; none where there is.
pub(super) fn room_words(ctx: &Ctx<'_>, room: &Room) -> Option<String> {
    let why = if let Room::NoWrites { why } = room { why.as_str() } else { "" };
    Some(ctx.say_with(room.key()?, &Args::new().text("why", why)))
}

/// Both times of a jump of the clock.
pub(super) fn jump_words(ctx: &Ctx<'_>, key: &str, jump: Jump) -> String {
    let time = |at| format::date_time(&ctx.scripts.words, &ctx.settings.staff, ctx.local(at));
    ctx.say_with(key, &Args::new().text("from", time(jump.from)).text("to", time(jump.to)))
}

/// A dark veil. Any touch wakes the page, and does nothing else.
fn dimmed<'a>() -> Element<'a, Message> {
    let veil = container(iced::widget::Space::new()).width(Length::Fill).height(Length::Fill).style(|_| {
        let dark = iced::Color { a: 0.72, ..iced::Color::BLACK };
        container::Style { background: Some(Background::Color(dark)), ..container::Style::default() }
    });
    mouse_area(veil).on_press(Message::Touched).into()
}

/// The cover: whose tablet it is, and nothing of anybody's walk.
fn cover<'a>(ctx: &Ctx<'a>) -> Element<'a, Message> {
    let look = &ctx.look;
    let lot = &ctx.scripts.lot.value;
    let words = column![
        ui::symbol(look, Symbol::Shield, 112.0),
        ui::title(look, ctx.say(&lot.name.value)).align_x(Alignment::Center),
        ui::lead(look, ctx.say("cover-safe")).align_x(Alignment::Center),
        ui::primary(look, ctx.say("cover-go-on"), Message::Uncovered),
        ui::strong_chip(look, ctx.say("emergency"), Message::EmergencyToggled),
    ]
    .spacing(look.gap(Gap::Wide))
    .align_x(Alignment::Center)
    .max_width(look.px(760.0));
    let colors = look.colors();
    container(words)
        .center(Length::Fill)
        .padding(look.gap(Gap::Huge))
        .style(move |_| super::theme::style::flat(colors.paper, colors.ink))
        .into()
}

/// What happens without a control: the window asks to close, a hand is on the tablet, the one timer has run out, a
/// watched lot folder is looked at, a gate counts seconds.
pub(super) fn subscription(app: &App) -> Subscription<Message> {
    let close = iced::window::close_requests().map(|_| Message::CloseAsked);
    let full = app.filling.then(|| iced::time::every(SHORTEST).map(|_| Message::FillAsked));
    let hands = iced::event::listen_with(|event, _, _| is_hand(&event).then_some(Message::Touched));
    let rest = app.timer.map(|rest| iced::time::every(rest).map(|_| Message::WatchDue));
    let lot = app.edit.is_watching().then(|| iced::time::every(edit::PAUSE).map(|_| Message::LotAsked));
    let wait = app
        .gate_waits()
        .then(|| iced::time::every(gate::SECOND).map(|_| Message::Gate(gate::Message::Ticked)));
    Subscription::batch([Some(close), Some(hands), full, rest, lot, wait].into_iter().flatten())
}

/// The window: all of the screen, or large enough for a page; closed only by staff.
pub(super) fn window(full: bool) -> iced::window::Settings {
    iced::window::Settings {
        fullscreen: full,
        decorations: !full,
        size: iced::Size::new(1280.0, 800.0),
        min_size: Some(iced::Size::new(320.0, 240.0)),
        exit_on_close_request: false,
        ..iced::window::Settings::default()
    }
}

/// Whether an event is somebody's doing. A pointer that is nudged by the wind is not.
fn is_hand(event: &iced::Event) -> bool {
    use iced::{Event, keyboard, mouse, touch};
    matches!(
        event,
        Event::Mouse(mouse::Event::ButtonPressed(_) | mouse::Event::WheelScrolled { .. })
            | Event::Touch(touch::Event::FingerPressed { .. })
            | Event::Keyboard(keyboard::Event::KeyPressed { .. })
    )
}

/// Lets the window fill the screen where no window manager has done it. It takes no size while it counts as filling
/// the screen, so it is told first that it does not.
fn fill_screen() -> Task<Message> {
    use iced::window;
    let fill = |id| {
        window::monitor_size(id).then(move |monitor| {
            let Some(monitor) = monitor else { return Task::none() };
            window::size(id).then(move |size| {
                if size == monitor {
                    return Task::none();
                }
                Task::batch([
                    window::set_mode(id, window::Mode::Windowed),
                    window::move_to(id, iced::Point::ORIGIN),
                    window::resize(id, monitor),
                ])
            })
        })
    };
    window::oldest().and_then(fill)
}
