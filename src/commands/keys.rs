//! `sendoff keys`: names the tablet, makes its key, prints the line for the office; and whom the office trusts.

mod office;

use super::cli::{KeysAction, KeysArgs};
use super::{COULD_NOT_RUN, Console, Environment, FINDINGS, GOOD, data_folder};
use crate::ports::Ports;
use crate::tablet::{Tablet, TabletFault};

pub(super) fn run(args: &KeysArgs, ports: &Ports, environment: &Environment, console: &mut Console) -> u8 {
    if let Some(code) = office::run(&args.action, ports, console) {
        return code;
    }
    let data = match data_folder(args.places.data.as_deref(), environment) {
        Ok(data) => data,
        Err(why) => {
            console.complain(why);
            return COULD_NOT_RUN;
        }
    };
    let done = match &args.action {
        KeysAction::New { name } => Tablet::first_start(ports, &data, name).map(Some),
        _ => Tablet::open(ports, &data),
    };
    match (done, &args.action) {
        (Ok(Some(tablet)), KeysAction::New { .. }) => {
            console.say(format!("tablet {} in {}", tablet.name(), data.display()));
            console.say(format!("fingerprint {}", tablet.key().fingerprint()));
            console.say("give the office the line of `sendoff keys public`");
            GOOD
        }
        (Ok(Some(tablet)), _) => {
            console.say(tablet.signers_line());
            GOOD
        }
        (Ok(None), _) => {
            console.complain(format!(
                "{} has no key yet; make one with `sendoff keys new --name NAME`",
                data.display()
            ));
            FINDINGS
        }
        (Err(fault @ TabletFault::Key(_)), _) => {
            console.complain(fault);
            FINDINGS
        }
        (Err(fault), _) => {
            console.complain(fault);
            COULD_NOT_RUN
        }
    }
}
