//! Judging a record at the time at which the office received it.

use jiff::Timestamp;

use super::receipts::Receipt;
use crate::record::seal::RecordId;
use crate::record::signers::Signers;
use crate::record::verify::{self, Failure, Input, JudgedAt, Seen};

/// Judges bytes at their receipt if `receipt_of` knows it, for the id that the name suggests or else the one that
/// stands in the record; otherwise at `now`. A receipt counts only for the digest that stands in it.
pub(super) fn judge(
    bytes: &[u8],
    named: Option<&RecordId>,
    signers: &Signers,
    receipt_of: &dyn Fn(&RecordId) -> Option<Receipt>,
    now: Timestamp,
) -> (JudgedAt, Result<Seen, Failure>) {
    let judge_at = |receipt: Option<Receipt>| {
        let at = receipt.map_or(JudgedAt::Now(now), |receipt| JudgedAt::Received(receipt.at));
        (at, verify::verify(Input::Zip(bytes), signers, at))
    };
    let first = named.and_then(receipt_of).or_else(|| receipt_of(&verify::said_id(bytes)?));
    let judged = judge_at(first);
    match (&judged.1, first) {
        (Ok(seen), Some(receipt)) if receipt.digest != seen.digest => {
            judge_at(receipt_of(&seen.id).filter(|right| right.digest == seen.digest))
        }
        _ => judged,
    }
}
