# The Office screen: finding records in the archive, opening them, taking them in.
yard-office = Office
gate-archive = Open the office's archive?
    .line = Office staff alone see the records in it.
office-title = Office
office-to-yard = To the Yard
office-again = Try again

## Opening the archive.

office-opening = The archive is being opened
office-indexing = Records are read and verified, so that they can be found. This is done once.
office-progress = { $done } of { $of }
office-shut = The archive cannot be opened
office-shut-why = { $why }. Nothing in it was changed.
office-remade = The index for finding was made anew from the records: { $why }.
office-unkept = The index for finding could not be saved, so it is made anew at the next start: { $why }.
office-behind = { $count ->
    [one] One new record cannot be found yet: { $why }.
   *[other] { $count } new records cannot be found yet: { $why }.
}

## The list.

office-words-example = Name, booking, unit, date, any word
office-clear = Clear
office-filters = Filters
office-count = { $count ->
    [one] One record
   *[other] { $count } records
}
office-count-all = { $count } records
office-count-of = { $count } of { $of } records
office-count-more = More than { $count } records
office-page-up = Page up
office-page-down = Page down
office-sort-best = Best match
office-col-verdict = Verdict
office-col-renter = Renter
office-col-unit = Unit
office-col-sealed = Sealed
office-col-received = Received
office-good = Verified
office-bad = Not verified
office-no-name = No name
office-no-receipt = No receipt
office-refused = { $count ->
    [one] 1 refused
   *[other] { $count } refused
}
office-not-shown = { $count ->
    [one] 1 not shown
   *[other] { $count } not shown
}
office-kind-handoff = Handed over
office-kind-not-handed-over = Not handed over
office-kind-check-in = Checked in
office-kind-amendment = Amendment
office-kind-rehearsal = Rehearsal
office-fault = { $code ->
    [file-changed] A file in it was changed
    [file-added] A file was added to it
    [file-missing] A file in it is missing
    [bad-seal] Its seal does not hold
    [unknown-tablet] Its tablet is not known
    [not-valid-at-that-time] Its tablet was not trusted then
    [distrusted] Its tablet is distrusted
    [newer-format] A newer program wrote it
    [not-a-record] It is not a record
    [unreadable] It cannot be read
    [wrong-place] It lies under another name
    [number-used-twice] Another record has its number
    [archive-differs] The archive has another copy of it
   *[other] It does not hold: { $code }
}
office-empty = The archive holds no records yet
office-empty-what = Records come here from the tablets, on a stick or in a shared folder.
office-nothing = Nothing is found
office-nothing-what = Each word must stand in the record, at least by its beginning. Try fewer words or fewer filters.
office-no-search = The archive could not be searched

## Filters.

office-filters-title = Which records?
office-filters-show = { $count ->
    [0] No record fits. Back to the list
    [one] Show one record
   *[other] Show { $count } records
}
office-filters-done = Show the records
office-filters-clear = Remove all filters
office-any = Any
office-filter-verdict = Verdict
office-filter-unit = Unit
office-filter-kind = Kind of record
office-filter-answer = At least one caution was
office-filter-answer-of-it = That caution was
office-filter-caution = A caution, by words of it
office-filter-caution-example = such as awning wind
office-filter-caution-is = Caution { $id }
office-filter-caution-none = No caution has these words. Try fewer.
office-filter-language = Language of the renter
office-filter-agent = Staff code of an agent
office-filter-agent-example = such as K4
office-filter-agent-is = Agent { $code }
office-filter-item = Tag of a loaned item
office-filter-item-example = such as W01
office-filter-item-is = Item { $tag }
office-filter-from = From this day on
office-filter-from-is = From { $day }
office-filter-to = Up to this day
office-filter-to-is = Up to { $day }
office-filter-day-example = such as 2026-07-24
office-filter-no-day = Type year, month and day, as 2026-07-24
office-answer-read = read
office-answer-hold = held
office-answer-two-taps = confirmed by two taps
office-answer-demonstrate = demonstrated
office-answer-refused = refused
office-answer-waiting = left without an answer
office-answer-not-shown = not shown

## A record.

office-back = Back
office-reading = { $id } is being opened
office-reading-what = Its file is read and verified once more.
office-gone = { $id } cannot be opened
office-gone-why = { $why }. It was in the archive when the list was made. Check the archive, and restore the file from a copy if it is lost.
office-overview = Overview
office-file = The file
office-brief = In short
office-brief-who = Party
office-brief-unit = Unit
office-brief-booking = Booking
office-brief-agents = Agents
office-brief-shown = { $done } of { $all } steps were shown
office-brief-cautions = { $done } of { $all } cautions were confirmed
office-brief-refused = { $all ->
    [one] One refusal stands
   *[other] { $all } refusals stand
}
office-brief-readings = { $all ->
    [0] No reading was asked for
    [one] One reading
   *[other] { $all } readings
}
office-brief-lent = { $all ->
    [0] No item was lent
    [one] One kind of item was lent
   *[other] { $all } kinds of items were lent
}
office-brief-signed = { $all ->
    [0] Nobody signed
    [one] One person signed
   *[other] { $all } people signed
}
office-ink = Handwriting
office-sealed = Sealed, by the tablet's clock
office-digest = Fingerprint of the record
office-key = Key of the tablet
office-path = File in the archive
office-received = Received
office-no-receipt-what = No receipt says when it came. It was put here by hand, or the receipts are damaged.
office-judged = Judged
office-judged-received = As of { $when }, when the office received it
office-judged-now = As of { $when }, since no receipt counts for it
office-chain = Place in the chain
office-chain-number = This is record number { NUMBER($number, useGrouping: 0) } of tablet { $tablet }. A tablet numbers its records from 1 and skips none.
office-chain-first = It is the first record of this key.
office-chain-follows = It goes on from { $id }, as it should.
office-chain-gap-before = Record number { NUMBER($number, useGrouping: 0) }, from which it goes on, never came in. Look for it on the tablet and on sticks.
office-chain-fork-before = It does not go on from { $id }, which has the number before it. Run an audit.
office-chain-last = No later record of this tablet has come in.
office-chain-next = { $id } goes on from it, as it should.
office-chain-fork-after = { $id } has the next number but does not go on from it, or does not hold. Open that one.
office-chain-gap-after = The next number never came in, but { $id } did. Look for what is missing on the tablet and on sticks.
office-chain-open-before = Open the one before
office-chain-open-after = Open the one after
office-seal-means = The seal proves which tablet sealed this record and that nothing was changed since. It does not prove who held the pen.
office-broken-why = { $why }. Nothing of what the file says is shown.
office-broken-what = The file stays where it is, as evidence. Compare it with the copy that the renter has, and with the tablet. Do not delete it.
office-part = Part { $part } of { $parts }
office-part-before = Part before
office-part-after = Next part

## Copying out.

office-export = Copy out
office-export-sealed = The sealed record
office-export-sealed-what = One ZIP file, byte for byte. Anyone can verify it.
office-export-text = The text for people
office-export-text-what = All of it as plain text. It carries no seal.
office-export-to = Copy to { $place }
office-export-folder = Copy to this folder
office-export-busy = One moment. Do not pull out the stick.
office-export-done = The copy was written and read back
office-export-where = { $path }
office-export-not = The copy was not written
office-export-why = { $why }. Try another folder or stick.
office-places-looking = Looking for sticks and folders.
office-places-none = No stick is plugged in. Plug one in, wait a moment, then look again.
office-places-again = Look again
office-folder = Another folder, such as a shared drive
office-folder-example = /media/stick

## Taking in.

office-take = Take records in
office-take-what = Records come from tablets on a stick or in a shared folder. Each is verified before it is filed, and filed once. What lies there is only read.
office-take-from = Take in from { $place }
office-take-folder = Take in from this folder
office-take-busy = One moment. Do not pull out the stick.
office-take-goes-on = It goes on by itself if you leave this page.
office-take-stopped = Taking in has stopped
office-take-stopped-why = { $why }. What was filed stays filed. The same can be taken in once more.
office-take-came-from = From { $place }
office-take-new = { $count ->
    [0] No record is new.
    [one] One new record is filed.
   *[other] { $count } new records are filed.
}
office-take-known = { $count ->
    [0] None was here already.
    [one] One was here already.
   *[other] { $count } were here already.
}
office-take-bad = { $count ->
    [0] None was refused.
    [one] One was refused.
   *[other] { $count } were refused.
}
office-take-rehearsals = { $count ->
    [one] One rehearsal was left alone. It is never evidence.
   *[other] { $count } rehearsals were left alone. They are never evidence.
}
office-take-bad-title = Refused, and why
office-take-bad-more = { $count ->
    [one] One more is not listed here. It is in quarantine with its reason.
   *[other] { $count } more are not listed here. They are in quarantine with their reasons.
}
office-take-kept = It is kept in the archive as { $place }, with its reason beside it.
office-take-remarks = What you should look at
office-take-no-receipt = No receipt could be left in { $place }: { $why }.
office-take-log-refused = { $place } is not believed: { $why }.
office-take-receipt = A receipt lies beside the records. Plug the stick into the tablet again, so that its records no longer wait there.
office-take-more = Take in more

## Quarantine.

office-apart = In quarantine
office-apart-count = { $count ->
    [one] One file was not taken in. It is kept with its reason.
   *[other] { $count } files were not taken in. They are kept with their reasons.
}
office-apart-look = Look at what is kept
office-apart-reading = One moment. The files are verified once more.
office-apart-shut = What is in quarantine cannot be read
office-apart-none = Nothing is in quarantine.
office-apart-what = These files were refused when they were taken in. They are kept as they came, and nothing here is ever deleted.
office-apart-open = Open
office-apart-looked-at = Refused { $when }
office-apart-more = { $count ->
    [one] One older file is not listed here. It lies in the folder of the archive.
   *[other] { $count } older files are not listed here. They lie in the folder of the archive.
}
office-apart-filed = Filed since
office-apart-filed-what = The same record is in the archive now. There is nothing left to do.
office-apart-why = { $why }.
office-apart-no-reason = The text that gives the reason is no longer beside the file. Take the file in again to see the reason.
office-apart-from = Came from
office-apart-at = Refused
office-apart-digest = Fingerprint of the file
office-apart-not-known = Not known
office-apart-next = Once the reason is gone, take the file in again. That may be when its tablet is on the list of tablets.
office-apart-again = Take it in again
