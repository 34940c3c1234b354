# The office's archive: what an audit finds, for a clerk. Times are in UTC.

## About one file. { $place } is its name in the archive.

archive-record-bad = { $place } does not hold: { $why }.
archive-unreadable = { $place } cannot be read: { $why }. Copy the archive to other storage before you do anything else.
archive-stray-file = { $place } is no record and does not belong here. Move it out of the archive.
archive-wrong-place = { $place } holds a good record that belongs at { $right }. It was moved or renamed. Move it back.
archive-duplicate = { $place } is a second copy of { $of }. Nothing is lost. Move the copy out of the archive.
archive-no-receipt = { $place } is a good record, but no receipt says when it came. Someone put it here by hand. Move it out and import it.
archive-not-received =
    { $here ->
        [yes] { $place } is a good record, but the office received another record under this number. Find out who put this one here.
       *[no] { $place } is a good record, but the office received another record under this number, and that one is not here. The record was replaced by this one, or its receipt was changed. Compare both with a copy.
    }
archive-record-missing = Record { $place } was received on { $when } UTC and is no longer here. Import it again from the tablet or from a copy.
archive-receipt-log = The receipts are damaged: { $why }. Restore this file from a copy.
archive-receipt-changed = The receipts in { $place } are not those that the office signed: a line was changed, added or taken out. Restore this file from a copy.
archive-receipt-unsigned = The office has not signed the last lines of { $place } yet: an import was interrupted, or someone wrote there by hand. The next import signs them.
archive-receipt-torn = { $why }. The next import puts this right.
archive-mark-bad = The mark { $place } does not hold: { $why }. Restore it from a copy.
archive-mark-missing = For { $place } there is no mark of the last record seen. Restore it from a copy, or import the last record of this tablet again.
archive-quarantined = { $place } waits in quarantine. The text beside it says why.

## About the records of one tablet. A tablet numbers its records from 1 and skips none.

archive-chain-gap =
    { $count ->
        [one] Tablet { $tablet }, key { $key }: record number { $from } never came in. Look for it on the tablet and on sticks.
       *[other] Tablet { $tablet }, key { $key }: records number { $from } to { $to } never came in. Look for them on the tablet and on sticks.
    }
archive-chain-fork = Tablet { $tablet }, key { $key }: two different records have the number { $number } and go on from the same record. The tablet was copied, or set back to an earlier state. Both records are kept. Find out which tablet sealed which.
archive-chain-number-reused = Tablet { $tablet }, key { $key }: two different records have the number { $number } and go on from different ones. The number was used a second time. Both records are kept. Find out how.
archive-chain-order = Tablet { $tablet }, key { $key }: record number { $number } goes on from number { $follows } instead of { $before }. The records were put in another order.
archive-chain-twin = Tablet { $tablet }, key { $key }: record number { $number } goes on from another record number { $before } than the one that is here. There is, or was, a second record { $before }. Look for it on the tablet and on sticks.
archive-chain-cut =
    { $last ->
        [0] Tablet { $tablet }, key { $key }: the office has seen records up to number { $seen }, and none is here. They were removed. Restore them from a copy.
       *[other] Tablet { $tablet }, key { $key }: the office has seen records up to number { $seen }, and the last one here is { $last }. The end was removed. Restore it from a copy.
    }
archive-chain-swapped = Tablet { $tablet }, key { $key }: record number { $number } is not the one that the office has seen. It was put in place of another.
archive-chain-new-key = Tablet { $tablet } began anew with the key { $key }; before it had the key { $before }. That is right if the tablet was set up again.
archive-chain-clock = Tablet { $tablet }, key { $key }: record number { $number } says that it was sealed on { $sealed } UTC, before the record in front of it ({ $before } UTC). The tablet's clock was set back. Go by the times of receipt.
