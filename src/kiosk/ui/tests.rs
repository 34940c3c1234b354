//! The components at work, driven without a window.

mod grey;
mod hands;
mod keys;
mod screens;

use super::gallery::{self, Gallery, Message, Page, program};
use super::*;
use crate::kiosk::headless::Driver;
use crate::kiosk::theme::{TextSize, Theme, fonts};

/// Runs `$work` on a driver of a page at 1280 by 800; the type of the program has no name to pass it around by.
macro_rules! on {
    ($page:expr, |$driver:ident| $work:block) => {{
        fonts::prepare();
        let program = program($page, Theme::Paper);
        let mut $driver = Driver::open(&program, (1280, 800)).unwrap();
        $work
    }};
    ($page:expr, $change:expr, |$driver:ident| $work:block) => {{
        fonts::prepare();
        let program = program($page, Theme::Paper);
        let mut state = Gallery::new($page, Theme::Paper);
        #[allow(
            clippy::redundant_closure_call,
            reason = "the change is written as a closure where it is used"
        )]
        $change(&mut state);
        let mut $driver = Driver::with_state(&program, state, (1280, 800)).unwrap();
        $driver.send(&[]).unwrap();
        $work
    }};
}
use on;
