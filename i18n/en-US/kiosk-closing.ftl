# Who has the tablet in hand.
closing-holds-agent = THE TABLET IS WITH THE AGENT
closing-holds-person = THE TABLET IS WITH { $name }

# The card on which it changes hands.
closing-pass-to = Please give the tablet to { $name }.
closing-pass-renter = Please give the tablet to the renter.
closing-pass-list = The next page says what goes with you, and what it can cost.

# What you take and what it can cost.
closing-take-title = What you take, and what it can cost
closing-take-refused = What you did not confirm
closing-take-refused-line = { $name }: { $what }. Reason: { $reason }
closing-take-handed-over = The agent hands over all the same.
closing-take-kept = The agent keeps the unit.
closing-take-happened = What was done today
closing-take-shown = Shown
closing-take-of = { $done } of { $all }
closing-take-not-shown = Not shown
closing-take-not-shown-line = { $step }: { $reason }
closing-take-cautions = Cautions answered
closing-take-questions = Your questions
closing-take-question-none = None
closing-take-question-at = At: { $step }
closing-take-question-answered = answered
closing-take-question-open = not answered yet
closing-take-readings = Readings
closing-take-off = Not as it should be
closing-take-off-below = { $reading }: { $value } is below the least of { $bound }.
closing-take-off-above = { $reading }: { $value } is above the most of { $bound }.
closing-take-off-agent = Agent: { $what }
closing-take-marks = Marks both of us saw
closing-take-marks-none = None
closing-take-mark = { $number }. { $kind }
closing-take-items = What goes with you, and its price if it is lost
closing-take-item = { $count ->
    [one] { $item }
   *[other] { $item }: { $count }
}
closing-take-each = { $price } each
closing-take-fees = What can be charged
closing-take-fees-more = What can be charged as well
closing-take-note = { $line } ({ $note })
closing-take-go-on = Go on to sign
closing-take-lacks = Make good what is missing above. Then the way on to sign stands here.
closing-take-lacks-elsewhere = Something is missing above. The way on to sign stands here once it is made good.
closing-take-back = Back to the walk

closing-reason = { $reason ->
    [weather] weather
    [declined] you did not want to see it
    [known] you know it already
    [out-of-order] out of order today
   *[no-time] no time
}
closing-not-read = { $reason ->
    [broken] does not work
    [unreachable] could not be reached
   *[wrong-moment] wrong moment to read it
}
closing-mark-kind = { $kind ->
    [scratch] Scratch
    [dent] Dent
    [chip] Chip
    [crack] Crack
    [stain] Stain
    [tear] Tear
    [missing] Something is missing
   *[works-badly] Works badly
}
closing-mark-size = { $size ->
    [coin] up to a coin
    [hand] up to a hand
    [arm] up to an arm
   *[larger] larger than an arm
}

# Fees: what for, and how much.
closing-fee-deposit = Deposit, held until the unit is back
    .sum = { $fees_deposit }
closing-fee-miles = In the price each night: miles
    .sum = { $fees_miles_night }
closing-fee-mile = Each mile beyond that
    .sum = { $fees_mile }
closing-fee-generator = In the price each night: generator
    .sum = { $fees_generator_night }
closing-fee-generator-hour = Each generator hour beyond that
    .sum = { $fees_generator_hour }
closing-fee-fuel = Fuel below today's level, each gallon
    .sum = { $fees_fuel_gallon }
closing-fee-fuel-service = Filling it up for you
    .sum = { $fees_fuel_service }
closing-fee-propane = Propane below today's level, each quarter
    .sum = { $fees_propane_quarter }
closing-fee-cylinder = Each propane cylinder that is not full
    .sum = { $fees_propane_cylinder }
closing-fee-black = Black tank not emptied
    .sum = { $fees_black }
closing-fee-cassette = Cassette not emptied
    .sum = { $fees_cassette }
closing-fee-grey = Grey tank not emptied
    .sum = { $fees_grey }
closing-fee-clean = Inside not clean
    .sum = { $fees_clean }
closing-fee-griddle = Outdoor griddle not clean
    .sum = { $fees_griddle }
closing-fee-smoke = Smoking inside
    .sum = { $fees_smoke }
closing-fee-pet = A pet on board, as agreed
    .sum = { $fees_pet }
closing-fee-pet-hidden = A pet nobody told us of
    .sum = { $fees_pet_hidden }
closing-fee-late = Each hour late, after { $charges_late_grace }
    .sum = { $fees_late_hour }
closing-fee-tax = Tax on services
    .sum = { $charges_tax }

# What is missing; a tap leads there.
closing-missing-title = { $count ->
    [one] One thing is missing
   *[other] { $count } things are missing
}
closing-missing-more = { $count ->
    [one] And one more.
   *[other] And { $count } more.
}
closing-missing-agent = No agent has taken the walk on
closing-missing-reader = Language and measures are not set
closing-missing-party = The party is not entered
closing-missing-licence = { $person }: licence not seen
closing-missing-licence-too-short = { $person }: licence ends { $expiry }, the unit is due back { $until }
closing-missing-present = Nobody is marked as present
closing-missing-experience = First time or not: not said
closing-missing-booking = Booking and trip are not entered
closing-missing-opened = The walk round the unit has not begun
closing-missing-step = { $step }: neither shown nor left out
closing-missing-answer = { $caution }: not answered
closing-missing-answer-driver = { $caution }: { $person } has not answered
closing-missing-answer-kept = { $caution }: { $person } would not confirm, and the unit is to stay
closing-missing-reading = { $reading }: not read
closing-missing-item = { $item }: not counted
closing-missing-leaving = { $item }: not looked at
closing-missing-leaving-not-good = { $item }: not as it must be
closing-missing-consent = Nobody has said how they want the record
closing-missing-signature-agent = The agent has not signed
closing-missing-signature-person = { $person } has not signed
closing-missing-signature-kept = { $person } would not sign, and the unit is to stay
closing-missing-copy-offered = No copy was offered
closing-missing-copy-choice = Nobody has said how they take the copy

# Sign.
closing-consent-who = WHO CHOOSES
closing-consent-given = On a screen
closing-consent-paper = On paper
closing-consent-paper-line = I want paper. Print it for me.
closing-consent-lacks = Choose a screen or paper. Then you can go on to sign.
closing-consent-done = Go on to sign
closing-consent-was-given = { $name } agreed to an electronic record.
closing-consent-was-paper = { $name } wants paper.
closing-consent-again = Change
closing-sign-title = { $name }, please sign
closing-sign-line = You sign what was shown, answered and counted today.
closing-sign-agent = Agent { $code }, please sign
closing-sign-agent-line = You sign as the one who showed it.
closing-sign-chip-agent = Agent
closing-sign-still = Still to sign after that: { $names }.
closing-sign-still-agent = the agent
closing-sign-done = Done
closing-sign-hint = Write with a finger or a pen. The button Done comes once you have written.
closing-sign-undo = Undo
closing-sign-clear = Clear
closing-sign-refuse = I will not sign
closing-sign-read-again = Back to the list
closing-sign-away = { $name } is not marked as present.
closing-sign-here-now = { $name } is here now
closing-sign-refused = { $name } would not sign: { $reason }
closing-sign-undecided = This is not decided yet
closing-sign-kept = The unit is to stay. Let { $name } sign after all, or do not hand over.
closing-reason-lacks = Give the reason. Then the button to go on stands here.
closing-saving = Saving

# Your copy.
closing-copy-title = Your copy
closing-copy-line = The record is yours as much as ours. How do you want to take it with you?
closing-copy-slip = A picture of the screen
closing-copy-slip-line = The next page shows its number, its fingerprint and a code to photograph.
closing-copy-stick = A file on a stick
closing-copy-stick-line = It opens on any computer, without this kiosk.
closing-copy-lacks = Choose one of these three. Then the agent seals the record.
closing-copy-declined = None now
closing-copy-declined-line = You can ask for it at any time.
closing-seal = Seal the record
closing-seal-line = After that nothing in it can change. A correction becomes an amendment.
closing-sealing = Sealing

# Not handed over.
closing-stopped = Not handed over
closing-stopped-by = Decided by { $name }
closing-stopped-agent = the agent
closing-stopped-line = This is sealed as well, with the reason.
closing-stopped-to-copy = Go on

# Decisions.
closing-back = Back
closing-refuse-title = You need not sign
closing-refuse-why = Please say why in a few words. Your words stand in the record. Then the agent decides.
closing-refuse-field = Why, { $name }?
closing-refuse-give = Give the tablet to the agent
closing-decide-title = You decide, as the agent
closing-decide-what = { $name } will not sign. Reason: { $reason }
closing-decide-hand-over = Hand over all the same
closing-decide-hand-over-line = The refusal and your decision stand first in the record.
closing-decide-keep = Keep the unit here
closing-decide-keep-line = Then do not hand over, or let them sign after all.
closing-reopen = Correct something
closing-reopen-title = Correct something?
closing-reopen-line = Signatures given so far no longer count. They stay in the record as withdrawn.
closing-reopen-line-stopped = Then the unit can go out after all.
closing-reopen-field = What is to be corrected
closing-reopen-done = Reopen the closing
closing-stop = Do not hand over
closing-stop-title = Do not hand over?
closing-stop-line = The unit stays here. All that was said so far is kept. It is signed and sealed with the reason.
closing-stop-field = Why the unit stays
closing-stop-who = Who decided
closing-stop-done = The unit stays here
