//! `sendoff archive export`: a copy that anyone can verify with stock tools.

use super::ExportArgs;
use crate::archive::Archive;
use crate::archive::export::{README, export};
use crate::commands::{COULD_NOT_RUN, Console, FINDINGS, GOOD};
use crate::ports::Ports;

pub(super) fn run(args: &ExportArgs, ports: &Ports, console: &mut Console) -> u8 {
    let done = Archive::open(ports.disk.clone(), &args.archive).and_then(|archive| {
        export(&archive, ports.disk.clone(), &args.dir, ports.clock.now(), &mut |done| {
            console.progress(format_args!("{done} records"));
        })
    });
    console.progress("");
    match done {
        Ok(done) => {
            for (path, why) in &done.left {
                console.say(format!("left out  {path}: {why}"));
            }
            console.say(format!("{} new, {} known, {} left out", done.new, done.known, done.left.len()));
            console.say(format!("how to verify: {}", args.dir.join(README).display()));
            if done.left.is_empty() { GOOD } else { FINDINGS }
        }
        Err(fault) => {
            console.complain(fault);
            COULD_NOT_RUN
        }
    }
}
