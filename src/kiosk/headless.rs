//! Drives and renders any program of the toolkit without a window, in ordinary code: for previews, rehearsals
//! and tests.
//!
//! The driver does what the window loop does: it feeds events, applies the messages, runs the tasks they
//! return, and redraws when a widget asks for it, on a clock of its own. Subscriptions are not run. With
//! [`fonts::only_bundled`] called before, a frame is the same on every machine.

mod finger;
mod fit;
mod survey;
mod tasks;

pub use super::preview::{Manner, TourFault, preview};
pub use super::theme::{TextSize, Theme};
pub use fit::{Measured, SIZES, Sample, measured, overflows};
pub use survey::{Shown, Target, TargetKind};

use std::time::Duration;

use iced::advanced::clipboard;
use iced::advanced::renderer::{Headless as _, Style};
use iced::advanced::widget::Operation;
use iced::time::Instant;
use iced::window::RedrawRequest;
use iced::{Event, Point, Program, Size, mouse, theme as toolkit_theme, touch, window};
use iced_runtime::UserInterface;
use iced_runtime::user_interface::{Cache, State};

use super::theme::fonts;

/// What can go wrong without a window.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum HeadlessFault {
    /// The toolkit has no renderer that works without a window.
    #[error("the toolkit offers no renderer that works without a window; build with its tiny-skia feature")]
    NoRenderer,
    /// A text is not on the screen, or scrolled out of sight.
    #[error("'{text}' is not to be seen; on the screen are: {shown}")]
    NotFound {
        /// What was looked for.
        text: String,
        /// What is there.
        shown: String,
    },
    /// A task has not finished in time.
    #[error("a task has not finished within {0:?}")]
    TaskHangs(Duration),
    /// The frame cannot be written as a PNG.
    #[error("cannot write the frame as a PNG: {0}")]
    Png(String),
}

/// One rendered frame.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frame {
    /// Red, green, blue, alpha, row by row from the top.
    pub rgba: Vec<u8>,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
}

impl Frame {
    /// The frame as a PNG file.
    ///
    /// # Errors
    /// The encoder refuses, as for a frame without pixels.
    pub fn png(&self) -> Result<Vec<u8>, HeadlessFault> {
        use image::ImageEncoder as _;
        let mut out = Vec::new();
        image::codecs::png::PngEncoder::new(&mut out)
            .write_image(&self.rgba, self.width, self.height, image::ExtendedColorType::Rgba8)
            .map_err(|error| HeadlessFault::Png(error.to_string()))?;
        Ok(out)
    }
}

/// How long tasks may take before the driver gives up on them.
const PATIENCE: Duration = Duration::from_secs(20);
/// What 'the next frame' means on the driver's clock.
const FRAME: Duration = Duration::from_millis(16);
/// A message may cause a redraw that causes a message; more rounds than this are a program that never rests.
const ROUNDS: usize = 32;

/// A program, its state, and a screen that nobody sees.
pub struct Driver<'p, P: Program> {
    program: &'p P,
    state: P::State,
    renderer: P::Renderer,
    cache: Cache,
    size: Size,
    cursor: mouse::Cursor,
    window: window::Id,
    now: Instant,
    redraw: RedrawRequest,
    exited: bool,
}

impl<'p, P: Program> Driver<'p, P> {
    /// Boots a program at this size in pixels.
    ///
    /// # Errors
    /// There is no renderer, or a task of the boot hangs.
    pub fn open(program: &'p P, size: (u32, u32)) -> Result<Self, HeadlessFault> {
        let (state, task) = program.boot();
        let mut driver = Self::with_state(program, state, size)?;
        driver.run(task)?;
        driver.settle()?;
        Ok(driver)
    }

    /// Starts from a state that is given.
    ///
    /// # Errors
    /// There is no renderer.
    pub fn with_state(program: &'p P, state: P::State, size: (u32, u32)) -> Result<Self, HeadlessFault> {
        let settings = program.settings();
        fonts::load(settings.fonts);
        let made = P::Renderer::new(settings.default_font, settings.default_text_size, Some("tiny-skia"));
        let renderer = tasks::now_or_never(made).flatten().ok_or(HeadlessFault::NoRenderer)?;
        Ok(Self {
            program,
            state,
            renderer,
            cache: Cache::default(),
            size: logical(size),
            cursor: mouse::Cursor::Unavailable,
            window: window::Id::unique(),
            now: Instant::now(),
            redraw: RedrawRequest::Wait,
            exited: false,
        })
    }

    /// The state of the program.
    pub const fn state(&self) -> &P::State {
        &self.state
    }

    /// The state of the program, to be changed without a message.
    pub(in crate::kiosk) const fn state_mut(&mut self) -> &mut P::State {
        &mut self.state
    }

    /// Applies a message and draws nothing.
    ///
    /// # Errors
    /// A task hangs.
    pub(in crate::kiosk) fn tell(&mut self, message: P::Message) -> Result<(), HeadlessFault> {
        self.apply(vec![message])
    }

    /// Redraws until nothing more follows at this moment.
    ///
    /// # Errors
    /// A task hangs.
    pub(in crate::kiosk) fn settle_now(&mut self) -> Result<(), HeadlessFault> {
        self.settle()
    }

    /// Forgets what widgets remember: where they are scrolled to, what has the focus.
    pub(in crate::kiosk) fn forget(&mut self) {
        self.cache = Cache::default();
    }

    /// Whether the program has asked to end.
    pub const fn exited(&self) -> bool {
        self.exited
    }

    /// The size of the screen.
    pub const fn size(&self) -> Size {
        self.size
    }

    /// Changes the size of the screen.
    ///
    /// # Errors
    /// A task hangs.
    pub fn resize(&mut self, size: (u32, u32)) -> Result<(), HeadlessFault> {
        self.size = logical(size);
        self.send(&[Event::Window(window::Event::Resized(self.size))])
    }

    /// Applies a message and what follows from it.
    ///
    /// # Errors
    /// A task hangs.
    pub fn message(&mut self, message: P::Message) -> Result<(), HeadlessFault> {
        self.apply(vec![message])?;
        self.settle()
    }

    /// Feeds events as one batch, then redraws.
    ///
    /// # Errors
    /// A task hangs.
    pub fn send(&mut self, events: &[Event]) -> Result<(), HeadlessFault> {
        for event in events {
            match event {
                Event::Mouse(mouse::Event::CursorMoved { position })
                | Event::Touch(
                    touch::Event::FingerPressed { position, .. }
                    | touch::Event::FingerMoved { position, .. }
                    | touch::Event::FingerLifted { position, .. },
                ) => self.cursor = mouse::Cursor::Available(*position),
                Event::Mouse(mouse::Event::CursorLeft) => self.cursor = mouse::Cursor::Unavailable,
                _ => {}
            }
        }
        self.feed(events)?;
        self.settle()
    }

    /// Lets time pass on the driver's own clock; redraws come when widgets have asked for them.
    ///
    /// # Errors
    /// A task hangs.
    pub fn wait(&mut self, time: Duration) -> Result<(), HeadlessFault> {
        let end = self.now + time;
        loop {
            let next = match self.redraw {
                RedrawRequest::NextFrame => self.now + FRAME,
                RedrawRequest::At(at) => at.max(self.now),
                RedrawRequest::Wait => break,
            };
            if next > end {
                break;
            }
            // A widget that asks for the same moment again must not stop the clock.
            self.now = next.max(self.now + Duration::from_millis(1));
            self.settle()?;
        }
        self.now = self.now.max(end);
        Ok(())
    }

    /// Runs a widget operation, such as the toolkit's own for focus.
    pub fn operate(&mut self, operation: &mut dyn Operation) {
        self.with_ui(|ui, renderer, _| ui.operate(renderer, operation));
    }

    /// Draws the screen.
    pub fn render(&mut self) -> Frame {
        let theme = self
            .program
            .theme(&self.state, self.window)
            .unwrap_or_else(|| toolkit_theme::Base::default(toolkit_theme::Mode::Light));
        let style = self.program.style(&self.state, &theme);
        let text = Style { text_color: style.text_color };
        // Widgets find out what they look like on a redraw; nothing new happens at a moment already settled.
        let redraw = [Event::Window(window::Event::RedrawRequested(self.now))];
        self.with_ui(|ui, renderer, cursor| {
            let _ = ui.update(&redraw, cursor, renderer, &mut clipboard::Null, &mut Vec::new());
            ui.draw(renderer, &theme, &text, cursor);
        });
        let size = Size::new(self.size.width as u32, self.size.height as u32);
        let rgba = self.renderer.screenshot(size, 1.0, style.background_color);
        Frame { rgba, width: size.width, height: size.height }
    }

    fn with_ui<R>(
        &mut self,
        work: impl FnOnce(&mut Interface<'_, P>, &mut P::Renderer, mouse::Cursor) -> R,
    ) -> R {
        let view = self.program.view(&self.state, self.window);
        let cache = std::mem::take(&mut self.cache);
        let mut ui = UserInterface::build(view, self.size, cache, &mut self.renderer);
        let result = work(&mut ui, &mut self.renderer, self.cursor);
        self.cache = ui.into_cache();
        result
    }

    fn feed(&mut self, events: &[Event]) -> Result<bool, HeadlessFault> {
        let mut messages = Vec::new();
        let state = self.with_ui(|ui, renderer, cursor| {
            ui.update(events, cursor, renderer, &mut clipboard::Null, &mut messages).0
        });
        let any = !messages.is_empty();
        self.redraw = match state {
            State::Outdated => RedrawRequest::NextFrame,
            State::Updated { redraw_request, .. } => redraw_request,
        };
        self.apply(messages)?;
        Ok(any)
    }

    /// Redraws until nothing more follows at this moment.
    fn settle(&mut self) -> Result<(), HeadlessFault> {
        for _ in 0..ROUNDS {
            let redraw = Event::Window(window::Event::RedrawRequested(self.now));
            if !self.feed(&[redraw])? {
                break;
            }
        }
        Ok(())
    }

    fn apply(&mut self, messages: Vec<P::Message>) -> Result<(), HeadlessFault> {
        for message in messages {
            let task = self.program.update(&mut self.state, message);
            self.run(task)?;
        }
        Ok(())
    }

    fn run(&mut self, task: iced::Task<P::Message>) -> Result<(), HeadlessFault> {
        use iced_runtime::Action;
        let Some(mut stream) = iced_runtime::task::into_stream(task) else { return Ok(()) };
        while let Some(action) = tasks::next(&mut stream, PATIENCE).map_err(HeadlessFault::TaskHangs)? {
            match action {
                Action::Output(message) => self.apply(vec![message])?,
                Action::Widget(operation) => self.operate_chain(operation),
                Action::Exit => self.exited = true,
                // Windows, clipboard and the machine itself are not here; who waits for them is told so.
                _ => {}
            }
        }
        Ok(())
    }

    fn operate_chain(&mut self, first: Box<dyn Operation>) {
        let mut next = Some(first);
        while let Some(mut operation) = next.take() {
            self.operate(operation.as_mut());
            if let iced::advanced::widget::operation::Outcome::Chain(more) = operation.finish() {
                next = Some(more);
            }
        }
    }
}

type Interface<'u, P> =
    UserInterface<'u, <P as Program>::Message, <P as Program>::Theme, <P as Program>::Renderer>;

fn logical((width, height): (u32, u32)) -> Size {
    Size::new(width.max(1) as f32, height.max(1) as f32)
}

/// Where something is that was looked for by its text.
impl<P: Program> Driver<'_, P> {
    /// Every text on the screen, also those scrolled out of sight.
    pub fn texts(&mut self) -> Vec<Shown> {
        let mut survey = survey::Survey::default();
        self.operate(&mut survey);
        survey.texts
    }

    /// Everything that can be pressed or written in.
    pub fn targets(&mut self) -> Vec<Target> {
        let mut survey = survey::Survey::default();
        self.operate(&mut survey);
        survey.targets
    }

    /// The middle of the text that is exactly this, if it can be seen.
    pub fn find(&mut self, text: &str) -> Option<Point> {
        self.seen(|shown| shown == text)
    }

    /// The middle of the first text that holds this, if it can be seen.
    pub fn find_containing(&mut self, part: &str) -> Option<Point> {
        self.seen(|shown| shown.contains(part))
    }

    fn seen(&mut self, matches: impl Fn(&str) -> bool) -> Option<Point> {
        self.texts()
            .into_iter()
            .filter(|shown| matches(&shown.text))
            .find_map(|shown| shown.visible)
            .map(|bounds| bounds.center())
    }

    /// As [`Driver::find`], with a fault that says what is there instead.
    ///
    /// # Errors
    /// The text cannot be seen.
    pub fn must_find(&mut self, text: &str) -> Result<Point, HeadlessFault> {
        if let Some(at) = self.find(text) {
            return Ok(at);
        }
        let shown: Vec<_> = self.texts().into_iter().map(|shown| format!("'{}'", shown.text)).collect();
        Err(HeadlessFault::NotFound { text: text.to_owned(), shown: shown.join(", ") })
    }
}
