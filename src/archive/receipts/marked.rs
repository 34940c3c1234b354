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
use super::{RECEIPTS, Store, month_of};
use crate::archive::audit::Problem;
use crate::ports::DiskFault;
use crate::record::keys::{PublicKey, TabletKey};
use crate::record::receipt::ReceiptFault;
use crate::record::seal::{Digest, Running};

/// What the name of a mark ends in.
pub(super) const END: &str = ".log.mark";
const HEAD: &str = "Sendoff receipts, format 1\n";

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct LogMark {
    bytes: u64,
    digest: Digest,
}

impl LogMark {
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
}

/// A log as it is read, piece by piece.
struct Looked {
    bytes: u64,
    all: Running,
    /// Its mark as it is, without what a crash left of a line.
    lines: LogMark,
    /// How long its beginning is, and the digest of that once it has come.
    begin: u64,
    begun: Option<Digest>,
}

impl Looked {
    fn new(begin: u64) -> Self {
        let all = Digest::begin();
        let (lines, begun) = (LogMark { bytes: 0, digest: all.end() }, (begin == 0).then(|| all.end()));
        Self { bytes: 0, all, lines, begin, begun }
    }

    fn add(&mut self, piece: &[u8]) {
        let whole = piece.iter().rposition(|b| *b == b'\n').map(|at| at + 1);
        let until = usize::try_from(self.begin.saturating_sub(self.bytes)).ok();
        let until = until.filter(|at| *at > 0 && *at <= piece.len());
        let mut stops: Vec<usize> = whole.into_iter().chain(until).collect();
        stops.sort_unstable();
        let mut from = 0;
        for stop in stops {
            self.all.add(piece.get(from..stop).unwrap_or_default());
            from = stop;
            if Some(stop) == until {
                self.begun = Some(self.all.end());
            }
            if Some(stop) == whole {
                let more = u64::try_from(stop).unwrap_or(u64::MAX);
                self.lines = LogMark { bytes: self.bytes.saturating_add(more), digest: self.all.end() };
            }
        }
        self.all.add(piece.get(from..).unwrap_or_default());
        self.bytes = self.bytes.saturating_add(u64::try_from(piece.len()).unwrap_or(u64::MAX));
    }
}

/// Reads a log once: its mark as it is, and the digest of its beginning of a given length.
fn look(store: &dyn Store, log: &str, begin: u64) -> Result<(LogMark, Option<Digest>), DiskFault> {
    let mut looked = Looked::new(begin);
    match store.stream(log, 0..u64::MAX, &mut |piece| looked.add(piece)) {
        Err(fault) if !fault.is_missing() => Err(fault),
        _ => Ok((looked.lines, looked.begun)),
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

fn judge(store: &dyn Store, month: &str, offices: &[PublicKey]) -> Result<(Said, LogMark), DiskFault> {
    let signed = marks::signed(store, &format!("{RECEIPTS}/{month}{END}"), offices)?;
    let mark = match &signed {
        Signed::Text(text) => LogMark::parse(text, month),
        Signed::None | Signed::Bad(_) => None,
    };
    let (is, begun) = look(store, &format!("{RECEIPTS}/{month}.log"), mark.map_or(0, |mark| mark.bytes))?;
    let said = match (signed, mark) {
        (Signed::None, _) if is.bytes == 0 => Said::All,
        (Signed::None, _) => Said::Part,
        (Signed::Bad(why), _) => Said::Bad(why),
        (Signed::Text(_), None) => Said::Bad("its text is not that of the mark of this log".to_owned()),
        (Signed::Text(_), Some(mark)) if begun != Some(mark.digest) => Said::Otherwise,
        (Signed::Text(_), Some(mark)) if mark == is => Said::All,
        (Signed::Text(_), Some(_)) => Said::Part,
    };
    Ok((said, is))
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
        if let (Said::Part, is) = judge(store, &month, offices)? {
            let text = is.text(&month);
            marks::sign(store, &format!("{RECEIPTS}/{month}{END}"), &text, office)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_log_looks_the_same_in_pieces_of_any_size() {
        let log = b"one line\nanother\n\nthe fourth\nbegun";
        for begin in 0..=log.len() + 1 {
            for size in 1..=log.len() {
                let mut looked = Looked::new(u64::try_from(begin).unwrap());
                log.chunks(size).for_each(|piece| looked.add(piece));
                assert_eq!(looked.begun, log.get(..begin).map(Digest::of), "{begin} {size}");
                let mark = LogMark { bytes: 29, digest: Digest::of(&log[..29]) };
                assert_eq!(looked.lines, mark, "{begin} {size}");
            }
        }
    }
}
