//! `sendoff rehearse`: plays a handoff without a display, through the same events, and seals it as a rehearsal.

mod action;
mod plausible;
mod player;

use std::path::Path;

use super::cli::RehearseArgs;
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD, bundle};
use crate::ports::{Access, Ports};
use crate::source::{SourceFile, read};
use crate::tablet::{Finished, Tablet, usable};

pub use action::Action;
pub use player::{PlayClock, PlayFault, Player};

/// Name of the tablet that rehearses.
const TABLET: &str = "rehearsal";
/// Name of the signers file beside the key.
const SIGNERS: &str = "allowed_signers";

pub(super) fn run(args: &RehearseArgs, ports: &Ports, console: &mut Console) -> u8 {
    let actions = match &args.script {
        None => vec![Action::Rest, Action::Seal],
        Some(path) => match script(ports, path, console) {
            Some(actions) => actions,
            None => return COULD_NOT_RUN,
        },
    };
    let bundle = match bundle(ports, args.places.lot.as_deref()) {
        Ok(bundle) => bundle,
        Err(fault) => {
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    let scripts = match usable(bundle) {
        Ok(scripts) => scripts,
        Err(fault) => {
            console.complain(fault);
            return FINDINGS;
        }
    };
    let clock = PlayClock::new(args.at.unwrap_or_else(|| ports.clock.now()));
    let ports = Ports { clock: clock.port(), ..ports.clone() };
    let played = Tablet::take_folder(&ports, &args.out).map_err(PlayFault::from).and_then(|_held| {
        let tablet = tablet(&ports, &args.out)?;
        let mut player = Player::begin(&tablet, &scripts, &args.unit, clock)?;
        player.play(&actions)
    });
    match played {
        Ok(Some(finished)) => {
            done(&finished, &args.out, console);
            GOOD
        }
        Ok(None) => {
            console.complain("the actions end before `Seal`; nothing was sealed, the walk is still open");
            FINDINGS
        }
        Err(fault @ PlayFault::Action { .. }) => {
            console.complain(fault);
            FINDINGS
        }
        Err(fault) => {
            console.complain(fault);
            COULD_NOT_RUN
        }
    }
}

fn done(finished: &Finished, out: &Path, console: &mut Console) {
    console.say(format!("sealed {}", finished.id));
    console.say(format!("digest {}", finished.digest));
    console.say(format!(
        "verify with: sendoff verify {} --signers {}",
        finished.path.display(),
        out.join(SIGNERS).display()
    ));
    console.say(finished.path.display());
}

/// Reads a list of actions; complains with the place of each fault.
fn script(ports: &Ports, path: &Path, console: &mut Console) -> Option<Vec<Action>> {
    let bytes = match ports.disk.read(path, crate::source::FILE_CAP) {
        Ok(bytes) => bytes,
        Err(fault) => {
            console.complain(fault);
            return None;
        }
    };
    let Ok(text) = std::str::from_utf8(&bytes) else {
        console.complain(format!("{}: this is no UTF-8 text", path.display()));
        return None;
    };
    let (actions, faults) = read::<Vec<Action>>(&SourceFile::new(&path.display().to_string(), text));
    for fault in &faults {
        console.complain(format!("{}: {}; {}", fault.place, fault.what, fault.hint));
    }
    actions
}

/// The rehearsing tablet of a folder, with a key of its own and the signers file beside it.
fn tablet(ports: &Ports, dir: &Path) -> Result<Tablet, PlayFault> {
    let tablet = match Tablet::open(ports, dir)? {
        Some(tablet) => tablet,
        None => Tablet::first_start(ports, dir, TABLET)?,
    };
    if tablet.name() != TABLET {
        return Err(PlayFault::NotForRehearsal(dir.to_owned()));
    }
    let line = format!("{}\n", tablet.signers_line());
    ports
        .disk
        .replace(&dir.join(SIGNERS), line.as_bytes(), Access::Usual)
        .map_err(crate::tablet::TabletFault::from)?;
    Ok(tablet)
}
