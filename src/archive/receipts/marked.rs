//! Marks of the logs of receipts: how long each was when an import ended and what stood in it, signed by the office.
//! A line that was changed or taken out since shows, be it only its time.
//!
//! ```text
//! Sendoff receipts, format 1
//! Log: 2026-06
//! Bytes: 14820
//! SHA-256: 9f86d081...0f00a08
//! -----BEGIN SSH SIGNATURE-----
//! ```

use super::super::marks::{self, Signed};
use super::{LOG_CAP, RECEIPTS, Store, month_of};
use crate::archive::audit::Problem;
use crate::ports::DiskFault;
use crate::record::keys::{PublicKey, TabletKey};
use crate::record::receipt::ReceiptFault;
use crate::record::seal::Digest;

/// What the name of a mark ends in.
pub(super) const END: &str = ".log.mark";
const HEAD: &str = "Sendoff receipts, format 1\n";

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct LogMark {
    bytes: usize,
    digest: Digest,
}

impl LogMark {
    /// The mark of a log as it is, without what a crash left of a line.
    fn of(log: &[u8]) -> Self {
        let bytes = log.iter().rposition(|b| *b == b'\n').map_or(0, |at| at + 1);
        Self { bytes, digest: Digest::of(log.get(..bytes).unwrap_or_default()) }
    }

    fn text(&self, month: &str) -> String {
        format!("{HEAD}Log: {month}\nBytes: {}\nSHA-256: {}\n", self.bytes, self.digest)
    }

    fn parse(text: &str, month: &str) -> Option<Self> {
        let mut lines = text.strip_prefix(HEAD)?.lines().skip(1);
        let bytes = lines.next()?.strip_prefix("Bytes: ")?.parse().ok()?;
        let digest = lines.next()?.strip_prefix("SHA-256: ")?.parse().ok()?;
        let mark = Self { bytes, digest };
        (mark.text(month) == text).then_some(mark)
    }

    /// Whether a log still begins with what was signed.
    fn fits(&self, log: &[u8]) -> bool {
        log.get(..self.bytes).is_some_and(|signed| Digest::of(signed) == self.digest)
    }
}

/// What a mark says of its log.
enum Said {
    /// The log ends where the mark does.
    All,
    /// Lines came behind it, or there is no mark.
    Part,
    /// The log is not what was signed.
    Otherwise,
    /// The mark does not hold.
    Bad(String),
}

fn judge(store: &dyn Store, month: &str, offices: &[PublicKey]) -> Result<(Said, Vec<u8>), DiskFault> {
    let log = match store.read(&format!("{RECEIPTS}/{month}.log"), LOG_CAP) {
        Err(fault) if fault.is_missing() => Vec::new(),
        other => other?,
    };
    let said = match marks::signed(store, &format!("{RECEIPTS}/{month}{END}"), offices)? {
        Signed::None if log.is_empty() => Said::All,
        Signed::None => Said::Part,
        Signed::Bad(why) => Said::Bad(why),
        Signed::Text(text) => match LogMark::parse(&text, month) {
            None => Said::Bad("its text is not that of the mark of this log".to_owned()),
            Some(mark) if !mark.fits(&log) => Said::Otherwise,
            Some(mark) if mark == LogMark::of(&log) => Said::All,
            Some(_) => Said::Part,
        },
    };
    Ok((said, log))
}

/// Months of which there is a log or its mark.
fn months(store: &dyn Store) -> Result<Vec<String>, DiskFault> {
    let month = |name: &String| {
        let log = name.strip_suffix(".mark").unwrap_or(name);
        month_of(log).map(str::to_owned)
    };
    let mut months: Vec<String> = store.list(RECEIPTS)?.iter().filter_map(month).collect();
    months.dedup();
    Ok(months)
}

/// What is wrong, by the name of the log or mark.
pub(in crate::archive) fn check(
    store: &dyn Store,
    offices: &[PublicKey],
) -> Result<Vec<(String, Problem)>, DiskFault> {
    let mut found = Vec::new();
    for month in months(store)? {
        let log = format!("{RECEIPTS}/{month}.log");
        match judge(store, &month, offices)?.0 {
            Said::All => {}
            Said::Part => found.push((log, Problem::LogUnsigned)),
            Said::Otherwise => found.push((log, Problem::LogChanged)),
            Said::Bad(why) => found.push((format!("{RECEIPTS}/{month}{END}"), Problem::Mark(why))),
        }
    }
    Ok(found)
}

/// Signs all logs that grew. One that is not what was signed before is left for an audit to find.
pub(in crate::archive) fn set(
    store: &dyn Store,
    office: &TabletKey,
    offices: &[PublicKey],
) -> Result<(), ReceiptFault> {
    for month in months(store)? {
        if let (Said::Part, log) = judge(store, &month, offices)? {
            let text = LogMark::of(&log).text(&month);
            marks::sign(store, &format!("{RECEIPTS}/{month}{END}"), &text, office)?;
        }
    }
    Ok(())
}
