# Walk: one step at a time.
walk-nothing = This walk has no steps.
walk-crumb = { $station } · stop { $number } of { $count }
walk-position = { $zone } · { $number } of { $count }
walk-time-left = { $time } left
walk-desk = At the desk
walk-outside = Outside
walk-inside = Inside
walk-leaving = Before leaving
walk-person = Person { $number }

# The words of a step.
walk-show = SHOW
walk-know = KNOW
walk-line-number = { $number }.
walk-this-unit = On this unit
walk-where = Where: { $place }
walk-no-picture = No picture

# The foot.
walk-back = Back
walk-not-shown = Not shown...
walk-question = Question
walk-mark = Mark
walk-readings = Readings
walk-saving = Saving
walk-shown-next = Shown. Next: { $title }
walk-next = Next: { $title }
walk-hand-over = { $count ->
    [one] Give the tablet to the renter: one caution
   *[other] Give the tablet to the renter: { $count } cautions
}
walk-hand-over-open = { $count ->
    [one] { $label }. One is still to do.
   *[other] { $label }. { $count } are still to do.
}
walk-to-closing = To the closing

# Cautions of a step.
walk-ask-read = Renter reads
walk-ask-hold = Renter holds
walk-ask-demonstrate = Renter shows it
walk-ask-read-drivers = Each driver reads
walk-ask-hold-drivers = Each driver holds
walk-ask-demonstrate-drivers = Each driver shows it
walk-answer-open = to answer
walk-answer-by = Answered by { $who }
walk-answer-still = Still to answer: { $who }
walk-answer-refused = Not confirmed by { $who }. Handed over all the same.
walk-answer-kept = Not confirmed by { $who }. The unit is to be kept.
walk-answer-not-due = Not asked, since the step was left out

# What is missing.
walk-missing = Still missing at this stop
walk-missing-step = { $step }: not shown yet
walk-missing-answer-kept = { $step }: { $who } did not confirm “{ $caution }”
walk-missing-reading = { $reading }: not read yet
walk-missing-leaving = { $line }: not looked at yet
walk-missing-leaving-not-good = { $line }: not as it must be
walk-missing-items = { $count ->
    [one] One item is not counted yet
   *[other] { $count } items are not counted yet
}

# A step that is left out.
walk-left-out = This step was left out
walk-show-after-all = It was shown after all
walk-not-shown-title = Why is this step not shown?
walk-not-shown-what = The record says that it was not shown, and why. All else stays as it is.
walk-not-shown-lacks = Choose why. Then the button to leave the step out stands here.
walk-not-shown-lacks-words = Add the remark. Then the button to leave the step out stands here.
walk-not-shown-keep = Leave it out
walk-reason-weather = The weather: wind, rain, ice, darkness
walk-reason-declined = The renter does not want to see it
walk-reason-known = The renter knows it from an earlier rental
walk-reason-out-of-order = It is out of order today
walk-reason-no-time = There is no time
walk-note = A remark, if you like
walk-note-needed = Please say why there is no time.
walk-sheet-away = Go back

# A question.
walk-question-title = What does the renter ask?
walk-question-words = In a few words, if you like
walk-question-answered = Answered
walk-question-open = Not answered
walk-question-keep = Note the question
walk-asked = Asked and answered: { $text }
walk-asked-open = Asked, not answered: { $text }
walk-asked-no-words = no words noted

# Readings.
walk-readings-title = Read it together
walk-readings-keep = { $count ->
    [one] Keep the reading
   *[other] Keep { $count } readings
}
walk-readings-lack = { $count ->
    [one] Fill it in, or say why it could not be read. Then the button to keep it stands here.
   *[other] Fill in all { $count }, or say why one could not be read. Then the button to keep them stands here.
}
walk-readings-lack-right = Put right what is marked above. Then the button to keep it stands here.
walk-readings-kept = This is kept as it stands. To change it, fill in something else.
walk-reading-open = not read yet
walk-reading-not = It could not be read...
walk-reading-after-all = It can be read after all
walk-reading-below = { $value } is below the least of { $bound }.
walk-reading-above = { $value } is above the most of { $bound }.
walk-reading-agent = Agent: { $what }
walk-reading-range = From { $min } to { $max }, in steps of { $step }.
walk-gauge-empty = empty
walk-gauge-full = full
walk-unread-broken = The gauge does not work
walk-unread-unreachable = It could not be seen or reached
walk-unread-wrong-moment = It would be wrong now

# Figures of a step, and how each is known.
walk-figures = FIGURES
walk-figure-people = { $count ->
    [one] for one person
   *[other] for { $count } people
}
walk-figure-planned = { $name }: { $value }, as planned
walk-figure-read = { $name }: { $value }, as read
walk-figure-from-plate = from the plate on the unit
walk-figure-from-sheet = from the data sheet of this unit
walk-figure-from-lot = as the lot says
walk-figure-from-assumed = as the lot assumes
walk-figure-take = Take the reading: { $reading }
walk-figure-plan = Add it to the plan of the trip
walk-figure-back = Back to the step
walk-how = HOW WE KNOW
walk-how-formula = HOW IT IS WORKED OUT
walk-how-inputs = FROM WHAT
walk-how-caveat = WHAT IT DOES NOT KNOW
walk-how-source = Source: { $source }
walk-how-breaks = WHY NOT
walk-how-remedies = WHAT HELPS
walk-how-sets = WHAT RUNS TOGETHER
walk-how-always = WHAT IS ON ALL THE TIME
walk-how-courses = HOW LONG EACH LASTS
walk-how-helps = WHAT HELPS

# Loaned items.
walk-items-counted = { $done } of { $count } counted
walk-items-all = All { $count } as listed
walk-items-rest = { $count ->
    [one] The last one as listed
   *[other] The other { $count } as listed
}
walk-item = { $tag } · { $item }
walk-item-price = { $price }
walk-item-price-each = { $price } each
walk-item-count = { $count }
walk-item-differs = { $count } of { $listed }
walk-item-listed = { $listed ->
    [one] One is listed, { $price }.
   *[other] { $listed } are listed, { $price }.
}
walk-item-open = not counted yet
walk-item-counted = counted
walk-item-other = counted, not as listed
walk-item-note = What differs, if anything does
walk-item-lacks = This count is kept as it stands. To change it, count anew.
walk-item-keep = Keep this count

# Leaving check.
walk-leaving-yes = Yes
walk-leaving-no = No
walk-leaving-not-good = not as it must be

# Condition marks.
walk-marks = Condition marks
walk-marks-how = Tap the plan where the damage is. Tap a mark in the list to see it on the plan. The renter may add marks too.
walk-marks-none = No marks yet.
walk-marks-done = Back to the step
walk-mark-title = What is there?
walk-mark-kind = KIND
walk-mark-size = SIZE
walk-mark-who = WHO SAW IT
walk-mark-lacks = Choose the kind and the size. Then the button to place the mark stands here.
walk-mark-keep = Place the mark
walk-mark-agent = Lot agent
walk-mark-line = { $kind }, { $size }
walk-mark-where = Nearest: { $station }
walk-mark-by = Placed by { $who }
walk-mark-remove = Take it back
walk-mark-scratch = Scratch
walk-mark-dent = Dent
walk-mark-chip = Chip
walk-mark-crack = Crack
walk-mark-stain = Stain
walk-mark-tear = Tear
walk-mark-missing = Something is missing
walk-mark-works-badly = Works badly
walk-mark-coin = up to a coin
walk-mark-hand = up to a hand
walk-mark-arm = up to an arm
walk-mark-larger = larger

# The whole walk.
walk-overview = The whole walk
walk-overview-back = Back to the step
walk-overview-shown = shown
walk-overview-answers = cautions open
walk-overview-missing = something is missing
walk-to-yard = To the Yard
walk-to-yard-what = In the Yard the walk stays open. It goes on from here.

# Not handed over.
walk-stop = Do not hand over this unit...
walk-stop-title = Why is the unit not handed over?
walk-stop-what = The walk ends here. All that was shown, answered and read so far is kept. You sign on the next page, and the record says why.
walk-stop-reason = The reason
walk-stop-lacks = Write the reason. Then the button that ends the walk stands here.
walk-stop-keep = Do not hand over
