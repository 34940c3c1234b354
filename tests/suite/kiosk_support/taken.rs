//! From a touch to its frame, step by step as a window goes about it.

use std::time::Instant;

use iced::advanced::clipboard;
use iced::advanced::renderer::Headless as _;
use iced::{Event, Size, window};
use iced_runtime::UserInterface;
use iced_runtime::user_interface::State;

use super::{Kiosk, one_at_a_time};

/// How often a window answers a frame that changes its page before it draws.
const ROUNDS: usize = 3;

/// What a touch takes, in milliseconds.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Taken {
    /// Answering it: what controls do, what the kiosk keeps and looks up.
    pub answer: f64,
    /// The page made anew and laid out.
    pub page: f64,
    /// The page told to the renderer.
    pub draw: f64,
    /// Its pixels.
    pub pixels: f64,
}

impl Taken {
    pub fn all(&self) -> f64 {
        self.answer + self.page + self.draw + self.pixels
    }
}

/// Adds the time since a moment, and takes the next.
fn lap(since: &mut Instant, to: &mut f64) {
    let now = Instant::now();
    *to += now.duration_since(*since).as_secs_f64() * 1000.0;
    *since = now;
}

impl Kiosk {
    /// A touch of the page that stands, and the frame that follows.
    pub fn touch_to_frame(&mut self, event: &Event, now: Instant) -> Taken {
        let _one = one_at_a_time();
        let size = Size::new(self.setup.size.0, self.setup.size.1);
        let theme = self.app.toolkit_theme();
        let base = iced::theme::Base::base(&theme);
        let redraw = Event::Window(window::Event::RedrawRequested(now));
        if let Event::Touch(
            iced::touch::Event::FingerPressed { position, .. }
            | iced::touch::Event::FingerMoved { position, .. }
            | iced::touch::Event::FingerLifted { position, .. },
        ) = event
        {
            self.cursor = iced::mouse::Cursor::Available(*position);
        }
        let mut taken = Taken::default();
        let mut event = event;
        let cache = self.cache.take().unwrap_or_default();
        let mut interface = UserInterface::build(self.app.view(), size, cache, &mut self.renderer);
        let mut at = Instant::now();
        for _ in 0..=ROUNDS {
            let mut messages = Vec::new();
            let (state, _) = interface.update(
                std::slice::from_ref(event),
                self.cursor,
                &mut self.renderer,
                &mut clipboard::Null,
                &mut messages,
            );
            lap(&mut at, &mut taken.answer);
            if !messages.is_empty() || matches!(state, State::Outdated) {
                let cache = interface.into_cache();
                for message in messages {
                    let _ = self.app.update(message);
                }
                lap(&mut at, &mut taken.answer);
                interface = UserInterface::build(self.app.view(), size, cache, &mut self.renderer);
                lap(&mut at, &mut taken.page);
            } else if std::ptr::eq(event, &redraw) {
                break;
            }
            event = &redraw;
        }
        let style = iced::advanced::renderer::Style { text_color: base.text_color };
        interface.draw(&mut self.renderer, &theme, &style, self.cursor);
        self.cache = Some(interface.into_cache());
        lap(&mut at, &mut taken.draw);
        let size = Size::new(size.width as u32, size.height as u32);
        let frame = self.renderer.screenshot(size, 1.0, base.background_color);
        lap(&mut at, &mut taken.pixels);
        assert_eq!(frame.len(), (size.width * size.height * 4) as usize);
        taken
    }
}
