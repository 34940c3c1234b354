//! The signed receipt that is left beside what was taken, for the tablet to read.

use std::collections::BTreeSet;
use std::path::Path;

use super::{Summary, Work};
use crate::record::keys::TabletKey;
use crate::record::receipt::{self, Line, Receipt, ReceiptFault};

/// Writes the receipt of a folder, unless receipts that lie there say it all. A stick that cannot be written to
/// is no fault: the records are in the archive.
pub(super) fn write(
    work: &Work<'_>,
    folder: &Path,
    lines: Vec<Line>,
    office: &TabletKey,
    summary: &mut Summary,
) {
    let lines: BTreeSet<Line> = lines.into_iter().collect();
    if lines.is_empty() || says_it_all(work, folder, &lines, office) {
        return;
    }
    let lines = lines.into_iter().collect();
    let receipt = Receipt { office: *office.public(), written: work.ahead.now, lines };
    match receipt.write(work.ahead.disk, folder, office) {
        Ok(path) => summary.receipts.push(path),
        Err(fault) => summary.no_receipt.push((folder.to_owned(), words(&fault))),
    }
}

fn words(fault: &ReceiptFault) -> String {
    fault.to_string()
}

fn says_it_all(work: &Work<'_>, folder: &Path, lines: &BTreeSet<Line>, office: &TabletKey) -> bool {
    let found = receipt::find(work.ahead.disk, folder, &[*office.public()]).unwrap_or_default();
    let said: Vec<Receipt> = found.into_iter().filter_map(|found| found.receipt.ok()).collect();
    let confirmed = receipt::confirmed(&said);
    lines.iter().all(|line| confirmed.contains(&line.digest))
}
