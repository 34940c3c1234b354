//! `sendoff verify`: judges sealed records, or bags alone.

use std::path::Path;

use super::cli::{Format, VerifyArgs};
use super::{COULD_NOT_RUN, Console, FINDINGS, GOOD};
use crate::ports::Ports;
use crate::record::bag;
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
type BagVerdict = Result<Vec<String>, String>;

fn bags(args: &VerifyArgs, ports: &Ports, console: &mut Console) -> u8 {
    let verdicts: Vec<(&Path, BagVerdict)> =
        args.paths.iter().map(|path| (path.as_path(), judge_bag(ports, path))).collect();
    match args.format {
        Format::Text => {
            for (path, verdict) in &verdicts {
                match verdict {
                    Ok(remarks) => {
                        console.say(format!(
                            "valid    {}: a bag of RFC 8493; its seal was not looked at",
                            path.display()
                        ));
                        remarks.iter().for_each(|r| console.say(format!("         note: {r}")));
                    }
                    Err(why) => console.say(format!("INVALID  {}: {why}", path.display())),
                }
            }
        }
        Format::Json => {
            let all: Vec<serde_json::Value> = verdicts
                .iter()
                .map(|(path, verdict)| match verdict {
                    Ok(remarks) => serde_json::json!({"path": path, "valid": true, "notes": remarks}),
                    Err(why) => serde_json::json!({"path": path, "valid": false, "reason": why}),
                })
                .collect();
            console.say(serde_json::Value::Array(all));
        }
    }
    if verdicts.iter().all(|(_, v)| v.is_ok()) { GOOD } else { FINDINGS }
}

fn judge_bag(ports: &Ports, path: &Path) -> BagVerdict {
    bag::judge_path(ports.disk.as_ref(), path).map_err(|e| e.to_string())
}
