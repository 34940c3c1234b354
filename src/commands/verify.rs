//! `sendoff verify`: judges sealed records, or bags alone.

use std::path::Path;

use super::cli::{Format, VerifyArgs};
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD};
use crate::ports::Ports;
use crate::record::bag::{self, BagFault};
use crate::record::signers::Signers;
use crate::record::verify::{JudgedAt, Verdict, verify_paths};

pub(super) fn run(args: &VerifyArgs, ports: &Ports, console: &mut Console) -> u8 {
    if args.bag_only {
        return bags(args, ports, console);
    }
    let Some(path) = &args.signers else {
        console.complain(
            "name the office's list of tablets with --signers FILE, or judge the bag alone with --bag-only",
        );
        return COULD_NOT_RUN;
    };
    let signers = match Signers::load(ports.disk.as_ref(), path) {
        Ok(signers) => signers,
        Err(fault) => {
            console.complain(format!("{}: {fault}", path.display()));
            return COULD_NOT_RUN;
        }
    };
    let verdicts = verify_paths(ports.disk.as_ref(), &args.paths, &signers, args.received, ports.clock.now());
    if verdicts.is_empty() {
        console.complain("no record was found there");
        return COULD_NOT_RUN;
    }
    match args.format {
        Format::Text => verdicts.iter().for_each(|v| text(v, console)),
        Format::Json => {
            let all: Vec<serde_json::Value> = verdicts.iter().map(Verdict::to_json).collect();
            console.say(serde_json::Value::Array(all));
        }
    }
    if verdicts.iter().all(|v| v.outcome.is_ok()) { GOOD } else { FINDINGS }
}

fn text(verdict: &Verdict, console: &mut Console) {
    let at = match verdict.judged_at {
        JudgedAt::Received(at) => format!("as received {at}"),
        JudgedAt::Now(at) => format!("as of now, {at}"),
    };
    match &verdict.outcome {
        Ok(seen) => console.say(format!(
            "good     {}: {} {} sealed by {} at {}; judged {at}\n         digest {}",
            verdict.path.display(),
            seen.kind,
            seen.id,
            seen.tablet,
            seen.sealed,
            seen.digest,
        )),
        Err(failure) => {
            console.say(format!(
                "FAILED   {}: {failure} [{}]; judged {at}",
                verdict.path.display(),
                failure.code()
            ));
        }
    }
}

/// What is said of a bag when only its BagIt layer is judged.
type BagVerdict = Result<Vec<String>, BagFault>;

fn bags(args: &VerifyArgs, ports: &Ports, console: &mut Console) -> u8 {
    let judge = |path| bag::judge_path(ports.disk.as_ref(), path);
    let verdicts: Vec<(&Path, BagVerdict)> =
        args.paths.iter().map(|path| (path.as_path(), judge(path))).collect();
    match args.format {
        Format::Text => verdicts.iter().for_each(|(path, verdict)| bag_text(path, verdict, console)),
        Format::Json => {
            let all: Vec<serde_json::Value> = verdicts.iter().map(|(path, v)| bag_json(path, v)).collect();
            console.say(serde_json::Value::Array(all));
        }
    }
    let mut faults = verdicts.iter().filter_map(|(_, verdict)| verdict.as_ref().err()).peekable();
    if faults.peek().is_none() {
        GOOD
    } else if faults.all(BagFault::cannot_judge) {
        COULD_NOT_RUN
    } else {
        FINDINGS
    }
}

fn bag_text(path: &Path, verdict: &BagVerdict, console: &mut Console) {
    let path = path.display();
    match verdict {
        Ok(remarks) => {
            console.say(format!("valid    {path}: a bag of RFC 8493; its seal was not looked at"));
            remarks.iter().for_each(|r| console.say(format!("         note: {r}")));
        }
        Err(fault) if fault.cannot_judge() => console.say(format!("UNKNOWN  {path}: {fault}")),
        Err(fault) => console.say(format!("INVALID  {path}: {fault}")),
    }
}

/// `valid` is null where the bag cannot be judged.
fn bag_json(path: &Path, verdict: &BagVerdict) -> serde_json::Value {
    let path = path.to_string_lossy();
    match verdict {
        Ok(remarks) => serde_json::json!({"path": path, "valid": true, "notes": remarks}),
        Err(fault) => {
            let valid = if fault.cannot_judge() { serde_json::Value::Null } else { false.into() };
            serde_json::json!({"path": path, "valid": valid, "reason": fault.to_string()})
        }
    }
}
