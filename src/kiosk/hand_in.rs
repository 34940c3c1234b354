//! Handing records in to the office: what is asked of the world, and what is told of it.

use std::path::PathBuf;

use super::effect::{Effect, YardList};
use super::run::{self, World};
use super::screen::yard::name_of;
use super::screen::{self, Screen};
use super::{App, Done};
use crate::record::keys::PublicKey;
use crate::tablet::outbox::HandedIn;
use crate::words::Args;

/// What is asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ask {
    /// Where records can be handed in.
    Places,
    /// Hand them in there.
    To(PathBuf),
    /// Keep this key as that of the office.
    Know(PublicKey),
}

/// What came of it.
#[derive(Debug, Clone)]
pub enum Answer {
    /// The places there are.
    Places(Vec<PathBuf>),
    /// What was copied and confirmed.
    Handed {
        /// Where.
        place: PathBuf,
        /// What, or why not.
        result: Result<HandedIn, String>,
        /// The Yard afterwards.
        list: Result<YardList, String>,
    },
    /// The key is kept, or not.
    Known(Result<(), String>),
}

/// Does what was asked for.
pub(super) fn perform(world: &World, ask: Ask) -> Done {
    let tablet = world.tablet();
    Done::HandIn(match ask {
        Ask::Places => Answer::Places(tablet.map(|tablet| tablet.places()).unwrap_or_default()),
        Ask::To(place) => {
            let named = world.named();
            let result = named.and_then(|tablet| tablet.hand_in(&place).map_err(|fault| fault.to_string()));
            Answer::Handed { place, result, list: run::list(world) }
        }
        Ask::Know(key) => {
            let named = world.named();
            Answer::Known(
                named.and_then(|tablet| tablet.know_office(&key).map_err(|fault| fault.to_string())),
            )
        }
    })
}

impl App {
    /// Takes in what came of it.
    pub(super) fn handed_in(&mut self, answer: Answer) -> Vec<Effect> {
        match answer {
            Answer::Places(places) => {
                if let Screen::Yard(yard) = &mut self.screen {
                    yard.places_found(places);
                }
                Vec::new()
            }
            Answer::Handed { place, result, list } => {
                let (text, whose) = match result {
                    Ok(done) => (self.tell_handed(&place, &done), done.unknown),
                    Err(why) => (self.say("yard-not-handed-in", Args::new().text("why", why)), None),
                };
                if !text.is_empty() {
                    self.tell(text, false);
                }
                if let (Screen::Yard(_), Ok(list)) = (&self.screen, list) {
                    self.screen = Screen::yard(list);
                }
                if let (Screen::Yard(yard), Some(key)) = (&mut self.screen, whose) {
                    yard.ask_whose(key);
                }
                Vec::new()
            }
            Answer::Known(result) => {
                let text = result.err().unwrap_or_else(|| self.say("yard-office-known", Args::new()));
                self.tell(text, false);
                vec![Effect::ListWalks]
            }
        }
    }

    /// What was copied and what the office has confirmed, in words.
    fn tell_handed(&self, place: &std::path::Path, done: &HandedIn) -> String {
        let ctx = self.any_ctx();
        let mut lines: Vec<String> = Vec::new();
        if done.archived > 0 {
            lines.push(screen::counted(&ctx, "yard-archived", done.archived));
        }
        if done.exported > 0 {
            let count = u64::try_from(done.exported).unwrap_or(0);
            let args = Args::new().number("count", count).text("place", name_of(place));
            lines.push(ctx.say_with("yard-exported", &args));
        }
        lines.extend(done.refused.iter().map(|(path, why)| {
            let args = Args::new().text("file", name_of(path)).text("why", why.clone());
            ctx.say_with("yard-receipt-refused", &args)
        }));
        lines.join(" ")
    }
}
