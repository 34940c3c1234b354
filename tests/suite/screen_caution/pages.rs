//! The renter's pages, led as two people with a tablet would.

use std::time::{Duration, Instant};

use iced::mouse::{Event as Mouse, ScrollDelta};
use iced::{Event as Happening, Point};
use sendoff::kiosk::screen::caution::State;
use sendoff::kiosk::screen::{Screen, walk};
use sendoff::measure::System;
use sendoff::walk::{Answer, Event, PersonId, Response, Walk};
use sendoff::words::{Args, Reader};

use super::{route, say, walk_message};
use crate::kiosk_support::{Kiosk, Press, Setup, lot};

/// A kiosk at the pages of a stop, and the time as its widgets see it.
pub struct Pages {
    pub kiosk: Kiosk,
    pub now: Instant,
    pub language: String,
}

impl Pages {
    pub fn at(setup: Setup, events: &[Event], stop: usize) -> Self {
        let mut kiosk = setup.resume("wren", events);
        let last = route().stops[stop].steps.end - 1;
        kiosk.message(walk_message(walk::Message::StepChosen(last)));
        kiosk.message(walk_message(walk::Message::Onward));
        let language = kiosk.walk().reader().unwrap().value.language.clone();
        let mut pages = Self { kiosk, now: Instant::now(), language };
        pages.settle();
        pages
    }

    /// Draws until what comes into sight has told so.
    pub fn settle(&mut self) {
        for _ in 0..3 {
            self.kiosk.tick(self.now);
        }
    }

    pub fn wait(&mut self, milliseconds: u64) {
        self.now += Duration::from_millis(milliseconds);
        self.kiosk.tick(self.now);
        self.settle();
    }

    pub fn click(&mut self, words: &str) {
        self.kiosk.click(words);
        self.settle();
    }

    /// Words of the pages in the language they were opened in.
    pub fn say(&self, key: &str) -> String {
        say(&self.language, &format!("caution-page-{key}"))
    }

    fn state(&self) -> &State {
        match self.kiosk.screen() {
            Screen::Caution(state) => state,
            other => panic!("not the renter's pages: {other:?}"),
        }
    }

    /// Somebody says that they have the tablet.
    pub fn take(&mut self, name: &str) {
        let lot = lot();
        let reader = Reader::new(&self.language, System::Us);
        let words = lot.words.say(&reader, "caution-page-turn-take", &Args::new().text("name", name));
        self.click(&words);
    }

    pub fn is_over(&self) -> bool {
        self.state().is_over()
    }

    pub fn opened(&self) -> u64 {
        self.state().opened()
    }

    pub fn person(&self) -> Option<PersonId> {
        self.state().person()
    }

    /// How many cautions wait for whoever has the tablet.
    pub fn left(&self) -> usize {
        let hall = self.kiosk.app.hall().unwrap();
        self.person().map_or(0, |person| self.state().left_for(hall, person).len())
    }

    pub fn walk(&self) -> &Walk {
        self.kiosk.walk()
    }

    pub fn hold_at(&mut self) -> Point {
        let [hold, longer] = ["hold", "longer"].map(|key| self.say(key));
        let words = if self.kiosk.shows(&hold) { hold } else { longer };
        self.kiosk.reach(&words, 0)
    }

    /// Presses, waits, lets go.
    pub fn hold(&mut self, milliseconds: u64) {
        let at = self.hold_at();
        self.hold_there(at, milliseconds);
    }

    /// Holds what is called so by its id.
    pub fn hold_on(&mut self, id: &str, milliseconds: u64) {
        let at = self.kiosk.place_of(id);
        self.hold_there(at, milliseconds);
    }

    fn hold_there(&mut self, at: Point, milliseconds: u64) {
        self.kiosk.finger_down(at);
        self.settle();
        self.wait(milliseconds);
        self.kiosk.finger_up(at);
        self.settle();
    }

    pub fn scroll_down(&mut self) {
        let (width, height) = self.kiosk.setup.size;
        let position = Point::new(width / 2.0, height / 2.0);
        self.kiosk.send(Happening::Mouse(Mouse::CursorMoved { position }));
        let delta = ScrollDelta::Lines { x: 0.0, y: -300.0 };
        self.kiosk.send(Happening::Mouse(Mouse::WheelScrolled { delta }));
        self.settle();
    }

    /// Answers the page that is open, whatever it asks for; on a card between two people the first one goes on.
    pub fn answer(&mut self) {
        if let Some(next) = self.state().turns().first().copied() {
            let name = self.walk().person(next).unwrap().name.clone();
            return self.take(&name);
        }
        self.scroll_down();
        self.wait(1100);
        for read in ["read", "read-all"].map(|key| self.say(key)) {
            if self.kiosk.shows(&read) {
                return self.click(&read);
            }
        }
        if self.kiosk.presses(false).is_empty() {
            return self.hold(1300);
        }
        self.demonstrate();
    }

    /// Does the demonstrations of the page that is open.
    pub fn demonstrate(&mut self) {
        let asked = self.kiosk.asked();
        while self.kiosk.asked() == asked && !matches!(self.kiosk.screen(), Screen::Walk(_)) {
            for press in self.kiosk.presses(false) {
                match press {
                    Press::Words(words, nth) => self.kiosk.click_nth(&words, nth),
                    Press::Id(id) => self.kiosk.click_id(id),
                    Press::Hold(id) => self.hold_on(id, 1300),
                }
                self.settle();
            }
        }
    }

    /// Answers pages until this caution is the one on the page.
    pub fn go_to(&mut self, hazard: &str) {
        for _ in 0..20 {
            if self.kiosk.shows(hazard) {
                return;
            }
            self.answer();
        }
        panic!("`{hazard}` never came");
    }

    pub fn answered(&self, caution: &str, by: PersonId) -> (Answer, String, String) {
        match self.walk().response(caution, by).map(|r| r.value.clone()) {
            Some(Response::Answered { how, shown, .. }) => (how, shown.text, shown.language),
            other => panic!("{caution} is not answered by {by:?}: {other:?}"),
        }
    }
}
