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
    [one] one refused
   *[other] { $count } refused
}
office-not-shown = { $count ->
    [one] one not shown
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
office-filter-language = Language of the renter
office-filter-agent = Staff code of an agent
office-filter-agent-example = K4
office-filter-agent-is = Agent { $code }
office-filter-item = Tag of a loaned item
office-filter-item-example = W01
office-filter-item-is = Item { $tag }
office-filter-from = From this day on
office-filter-from-is = From { $day }
office-filter-to = Up to this day
office-filter-to-is = Up to { $day }
office-filter-day-example = 2026-07-24
office-filter-no-day = Type year, month and day, as 2026-07-24
office-answer-read = read
office-answer-hold = held
office-answer-two-taps = confirmed by two taps
office-answer-demonstrate = demonstrated
office-answer-refused = refused
office-answer-waiting = left without an answer
office-answer-not-shown = not shown
