//! Damage by damage: what an audit says, and what an import of the damaged files says.

use super::hand::{Hand, Planted};
use super::{inside, outside};

/// What an import says.
#[derive(Debug, Clone, Copy)]
pub enum Import {
    /// It does not take the file, with this code.
    Refused(&'static str),
    /// It takes every file that is there: nothing is wrong with them, or only the archive could know.
    Comes,
    /// It takes every file and remarks this about their chain.
    Remarked(&'static str),
}

/// One kind of damage.
#[derive(Debug)]
pub struct Row {
    pub damage: &'static str,
    pub plant: fn(&mut Hand<'_>) -> Planted,
    /// The codes of the findings of an audit, in the order of the places that are planted.
    pub audit: &'static [&'static str],
    pub import: Import,
}

const fn row(
    damage: &'static str,
    plant: fn(&mut Hand<'_>) -> Planted,
    audit: &'static [&'static str],
    import: Import,
) -> Row {
    Row { damage, plant, audit, import }
}

use Import::{Comes, Refused, Remarked};

pub const TABLE: [Row; 59] = [
    // A byte of each file, the ZIP packed again around it.
    row("bagit.txt", |h| inside::flip(h, "bagit.txt"), &["file-changed"], Refused("file-changed")),
    row("bag-info.txt", |h| inside::flip(h, "bag-info.txt"), &["file-changed"], Refused("file-changed")),
    row("manifest", |h| inside::flip(h, "manifest-sha256.txt"), &["file-changed"], Refused("file-changed")),
    row("tag manifest", |h| inside::flip(h, "tagmanifest-sha256.txt"), &["bad-seal"], Refused("bad-seal")),
    row("seal", |h| inside::flip(h, "seal.sshsig"), &["bad-seal"], Refused("bad-seal")),
    row("record.json", |h| inside::flip(h, "data/record.json"), &["file-changed"], Refused("file-changed")),
    row("record.txt", |h| inside::flip(h, "data/record.txt"), &["file-changed"], Refused("file-changed")),
    row("ink", |h| inside::flip(h, "data/ink-1.svg"), &["file-changed"], Refused("file-changed")),
    // A byte on the disk.
    row("raw tag file", |h| inside::flip_raw(h, "/bag-info.txt"), &["not-a-record"], Refused("not-a-record")),
    row(
        "raw record",
        |h| inside::flip_raw(h, "/data/record.json"),
        &["not-a-record"],
        Refused("not-a-record"),
    ),
    row("raw ink", |h| inside::flip_raw(h, "/data/ink-3.svg"), &["not-a-record"], Refused("not-a-record")),
    // Files of a record.
    row("file removed", inside::file_removed, &["file-missing"], Refused("file-missing")),
    row("file added", inside::file_added, &["file-added"], Refused("file-added")),
    row("file renamed", inside::file_renamed, &["file-missing"], Refused("file-missing")),
    row("files swapped", inside::files_swapped, &["file-changed"], Refused("file-changed")),
    // Forgeries.
    row("forged, not sealed", inside::forged, &["bad-seal"], Refused("bad-seal")),
    row("forged by another", inside::forged_by_another, &["not-a-record"], Refused("not-a-record")),
    row("another's seal", inside::foreign_seal, &["bad-seal"], Refused("bad-seal")),
    row("newer schema", inside::newer_schema, &["newer-format"], Refused("newer-format")),
    row("newer format", inside::newer_format, &["newer-format"], Refused("newer-format")),
    // The ZIP file.
    row("cut off", inside::cut_off, &["not-a-record"], Refused("not-a-record")),
    row("empty", inside::empty, &["not-a-record"], Refused("not-a-record")),
    row("more behind it", inside::more_behind, &["not-a-record"], Refused("not-a-record")),
    row("foreign ZIP", inside::foreign_zip, &["not-a-record"], Refused("not-a-record")),
    row("other order", inside::other_order, &["not-a-record"], Refused("not-a-record")),
    row("deflated", inside::deflated, &["not-a-record"], Refused("not-a-record")),
    // Names and folders.
    row("wrong folder", outside::wrong_folder, &["wrong-place"], Comes),
    row("second copy", outside::second_copy, &["duplicate"], Comes),
    row("records swapped", outside::records_swapped, &["wrong-place", "wrong-place"], Comes),
    row("stray text", outside::stray_text, &["stray-file"], Comes),
    row("stray ZIP", outside::stray_zip, &["stray-file"], Refused("not-a-record")),
    // Whom the office trusts.
    row("expired", outside::expired, &["not-valid-at-that-time"], Refused("not-valid-at-that-time")),
    row("too early", outside::too_early, &["not-valid-at-that-time"], Refused("not-valid-at-that-time")),
    row("retired", outside::retired, &["not-valid-at-that-time"], Refused("not-valid-at-that-time")),
    row("distrusted", outside::distrusted, &["distrusted"], Refused("distrusted")),
    row("not listed", outside::unlisted, &["unknown-tablet"], Refused("unknown-tablet")),
    row("stranger", outside::stranger, &["unknown-tablet"], Refused("unknown-tablet")),
    // What is gone, and chains.
    row("file gone", outside::file_gone, &["record-missing"], Comes),
    row("gap", outside::gap, &["chain-gap"], Comes),
    row("tail cut", outside::tail_cut, &["chain-cut"], Comes),
    row("chain gone", outside::chain_gone, &["chain-cut"], Comes),
    row("fork", outside::fork, &["not-received", "chain-fork"], Refused("number-used-twice")),
    row(
        "number again",
        outside::number_again,
        &["not-received", "chain-number-reused", "chain-order"],
        Refused("number-used-twice"),
    ),
    row("fork kept apart", outside::fork_in_quarantine, &["quarantined", "chain-fork"], Comes),
    row("order", outside::other_order, &["chain-order"], Remarked("chain-order")),
    row("other before", outside::other_before, &["chain-twin"], Remarked("chain-twin")),
    row("last replaced", outside::last_replaced, &["chain-swapped"], Comes),
    row("middle replaced", outside::middle_replaced, &["not-received", "chain-twin"], Remarked("chain-twin")),
    // Receipts and marks. That a line of a log is not as it was is found for each log, beside what is found here.
    row("receipt removed", outside::receipt_removed, &["no-receipt"], Comes),
    row("receipt changed", outside::receipt_changed, &["not-received"], Comes),
    row("receipt time", outside::receipt_time_changed, &[], Comes),
    row("receipt source", outside::receipt_source_changed, &[], Comes),
    row("receipt garbled", outside::receipt_garbled, &[], Comes),
    row("receipt twice", outside::receipt_twice, &[], Comes),
    row("receipt torn", outside::receipt_torn, &["receipt-torn"], Comes),
    row("log removed", outside::log_removed, &["receipt-log"], Comes),
    row("log's mark forged", outside::log_mark_forged, &["mark-bad"], Comes),
    row("mark lowered", outside::mark_lowered, &["mark-bad"], Comes),
    row("mark removed", outside::mark_removed, &["mark-missing"], Comes),
];
