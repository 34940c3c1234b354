//! `sendoff archive import`: takes records in and says what became of each.

use std::sync::Arc;

use serde_json::json;

use super::{ImportArgs, words};
use crate::archive::import::{Plan, Summary, import};
use crate::archive::{Archive, ArchiveFault};
use crate::commands::cli::Format;
use crate::commands::{COULD_NOT_RUN, Console, FINDINGS, GOOD, archive_at};
use crate::ports::Ports;
use crate::words::Reader;

pub(super) fn run(args: &ImportArgs, ports: &Ports, console: &mut Console) -> u8 {
    let summary = match take(args, ports, console) {
        Ok(summary) => summary,
        Err(fault) => {
            console.progress("");
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    console.progress("");
    for (folder, why) in &summary.no_receipt {
        console.tell(format!("no receipt could be left in {}: {why}", folder.display()));
    }
    for (log, why) in &summary.refused {
        console.tell(format!("{} is not believed, its records are judged now: {why}", log.display()));
    }
    match args.format {
        Format::Text => text(&summary, console),
        Format::Json => console.say(to_json(&summary)),
    }
    if summary.is_good() { GOOD } else { FINDINGS }
}

fn take(args: &ImportArgs, ports: &Ports, console: &mut Console) -> Result<Summary, ArchiveFault> {
    let archive = match &args.signers {
        Some(path) => {
            let mut archive = archive_at(ports, &args.archive, console)?;
            archive.adopt(ports.disk.as_ref(), path)?;
            archive
        }
        // A new archive would trust no tablet, so that nothing could be taken in.
        None => Archive::open(Arc::clone(&ports.disk), &args.archive)?,
    };
    let plan = Plan { paths: &args.paths, rehearsals: args.rehearsals };
    import(&archive, plan, ports, &mut |now| {
        console.progress(format_args!("{} of {}  {}", now.done, now.of, now.path.display()));
    })
}

fn text(summary: &Summary, console: &mut Console) {
    for filed in &summary.new {
        console.say(format!("new        {}", filed.path));
    }
    for path in &summary.rehearsals {
        console.say(format!("rehearsal  {}: left alone; it is never evidence", path.display()));
    }
    for (path, bad) in &summary.bad {
        console.say(format!("bad        {} [{}]: {}", path.display(), bad.code, bad.why));
        if let Some(kept) = &bad.kept {
            console.say(format!("           kept in {kept}"));
        }
    }
    let words = words();
    for finding in &summary.chains {
        let said = finding.say(&words, &Reader::default());
        console.say(format!("remark     [{}] {said}", finding.problem.code()));
    }
    for path in &summary.receipts {
        console.say(format!("receipt    {}", path.display()));
    }
    let (new, known, bad) = (summary.new.len(), summary.known, summary.bad.len());
    console.say(format!("{new} new, {known} known, {bad} bad, {} rehearsals", summary.rehearsals.len()));
}

fn to_json(summary: &Summary) -> serde_json::Value {
    let bad = summary.bad.iter().map(|(path, bad)| {
        json!({"path": path.to_string_lossy(), "code": bad.code, "message": bad.why, "quarantine": bad.kept})
    });
    let words = words();
    let filed = summary.new.iter().map(|f| json!({"id": f.id, "path": f.path}));
    json!({
        "new": summary.new.len(),
        "known": summary.known,
        "bad": summary.bad.len(),
        "filed": filed.collect::<Vec<_>>(),
        "quarantined": bad.collect::<Vec<_>>(),
        "chains": summary.chains.iter().map(|f| json!({"code": f.problem.code(), "place": f.place, "message": f.say(&words, &Reader::default())})).collect::<Vec<_>>(),
        "rehearsals": summary.rehearsals.iter().map(|p| p.to_string_lossy()).collect::<Vec<_>>(),
        "receipts": summary.receipts.iter().map(|p| p.to_string_lossy()).collect::<Vec<_>>(),
        "refused_logs": summary.refused.iter().map(|(p, why)| json!({"path": p.to_string_lossy(), "message": why})).collect::<Vec<_>>(),
        "no_receipt": summary.no_receipt.iter().map(|(p, why)| json!({"path": p.to_string_lossy(), "message": why})).collect::<Vec<_>>(),
    })
}
