//! The office's side of `sendoff keys`: its own key, and the tablets that it trusts.

use serde_json::json;

use crate::archive::{Archive, ArchiveFault, Known};
use crate::commands::cli::{Format, KeysAction, OfArchive};
use crate::commands::{COULD_NOT_RUN, Console, FINDINGS, GOOD, archive_at};
use crate::ports::Ports;
use crate::record::keys::PublicKey;

/// Does what is asked of the office; `None` when it is asked of a tablet.
pub(super) fn run(action: &KeysAction, ports: &Ports, console: &mut Console) -> Option<u8> {
    let open = |of: &OfArchive| Archive::open(ports.disk.clone(), &of.dir);
    let done = match action {
        KeysAction::New { .. } | KeysAction::Public => return None,
        KeysAction::Office(of) => office(ports, of, console),
        KeysAction::Trust { line, archive } => {
            archive_at(ports, &archive.dir, console).and_then(|mut archive| {
                let trusted = archive.trust(line)?;
                console.say(format!("trusted     {} {}", trusted.tablet, trusted.key.fingerprint()));
                Ok(())
            })
        }
        KeysAction::Retire { tablet, at, archive } => open(archive).and_then(|mut archive| {
            let keys = archive.retire(tablet, *at)?;
            tell_keys("retired", tablet, &keys, console);
            late(&archive, tablet, &keys, *at, console)
        }),
        KeysAction::Distrust { tablet, archive } => open(archive).and_then(|mut archive| {
            let keys = archive.distrust(tablet)?;
            tell_keys("distrusted", tablet, &keys, console);
            Ok(())
        }),
        KeysAction::List { archive, format } => open(archive).map(|archive| {
            list(&archive.known_keys(), *format, console);
        }),
    };
    Some(match done {
        Ok(()) => GOOD,
        Err(fault) => {
            console.complain(&fault);
            let refused = matches!(fault, ArchiveFault::Trust(_) | ArchiveFault::Signers(_));
            if refused { FINDINGS } else { COULD_NOT_RUN }
        }
    })
}

fn office(ports: &Ports, of: &OfArchive, console: &mut Console) -> Result<(), ArchiveFault> {
    let archive = archive_at(ports, &of.dir, console)?;
    let key = archive.office_key()?;
    console.tell(format!("fingerprint {}", key.fingerprint()));
    console.tell("give each tablet this line as `keys/office.pub` in its data folder");
    console.say(key.public().to_openssh(crate::archive::OFFICE_NAME));
    Ok(())
}

fn tell_keys(what: &str, tablet: &str, keys: &[PublicKey], console: &mut Console) {
    if keys.is_empty() {
        console.say(format!("{tablet} is {what} already"));
    }
    for key in keys {
        console.say(format!("{what:<11} {tablet} {}", key.fingerprint()));
    }
}

/// Says how many records no longer hold, since they came in after the last good time.
fn late(
    archive: &Archive,
    tablet: &str,
    keys: &[PublicKey],
    at: jiff::Timestamp,
    console: &mut Console,
) -> Result<(), ArchiveFault> {
    let shorts: Vec<String> = keys.iter().map(PublicKey::short).collect();
    let receipts = archive.receipts()?;
    let of_it = receipts.all().filter(|(id, receipt)| {
        id.tablet() == tablet
            && shorts.iter().any(|short| short == id.key())
            && receipt.at.as_second() > at.as_second()
    });
    let count = of_it.count();
    if count > 0 {
        console.say(format!("records received after that, which no longer hold: {count}"));
    }
    Ok(())
}

fn list(keys: &[Known], format: Format, console: &mut Console) {
    let time = |at: Option<jiff::Timestamp>| at.map(|at| at.to_string());
    match format {
        Format::Text => {
            for key in keys {
                let window = match (time(key.from), time(key.until)) {
                    (None, None) => String::new(),
                    (from, until) => {
                        format!("  {} to {}", from.as_deref().unwrap_or("-"), until.as_deref().unwrap_or("-"))
                    }
                };
                let tablet = key.tablet.as_deref().unwrap_or("-");
                let (standing, print) = (key.standing.as_str(), key.key.fingerprint());
                console.say(format!("{standing:<11} {tablet:<12} {print}{window}"));
            }
        }
        Format::Json => {
            let all = keys.iter().map(|key| {
                json!({
                    "tablet": key.tablet,
                    "standing": key.standing.as_str(),
                    "fingerprint": key.key.fingerprint(),
                    "valid_after": time(key.from),
                    "valid_before": time(key.until),
                })
            });
            console.say(serde_json::Value::Array(all.collect()));
        }
    }
}
