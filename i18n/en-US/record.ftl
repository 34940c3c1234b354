# The words of a record as plain text, and of the consent to keep one.
# Wording of consent is yours: have it checked locally.

## Consent to an electronic record. The kiosk shows title, seven points and the sentence with its box; a record
## keeps them as shown. The points follow 15 USC 7001(c).

consent-title = Your record on a screen instead of on paper
consent-1 = You can have paper instead. Tell us now and we print it. You get the same unit at the same price.
consent-2 = You can take back your yes at any time. That costs nothing. It does not undo what you signed before.
consent-3 = Your yes is for the record of this handoff and of giving this unit back. It is for nothing else.
consent-4 = To take back your yes, or to give us a new address, call { $phone_day } or tell us at the desk.
consent-5 = You can ask for a paper copy later too. Call { $phone_day }. It costs nothing.
consent-6 = To read and keep the record you need a phone or a computer that opens ZIP files, text and pictures.
consent-7 = If you would one day need something else to read it, we tell you. You can then take back your yes. That costs nothing.
consent-check = I can read this page. I agree to get and to sign this record on a screen.

## Notices that stand at the head of every section.

notice-demo = DEMO: made with the program's invented lot. No real unit went out.
notice-rehearsal = REHEARSAL: made for practice. It is never evidence.

## Title

record-title-handoff = HANDOFF RECORD
record-title-not-handed-over = RECORD: NOT HANDED OVER
record-title-amendment = AMENDMENT
record-id = Record
record-unit = Unit
record-outcome = Outcome
record-handed-over = Handed over
# $who: who decided; $time: when.
record-not-handed-over = Not handed over. Decided by { $who }, { $time }.
record-reason = Reason
record-swapped = Swapped for
record-follows = Follows
# $unit: name of the other unit; $walk: id of its walk; $time: when the unit was swapped.
record-other-walk = { $unit }, walk { $walk }, { $time }
record-sealed = Sealed
record-began = Walk began
record-made = Made
record-previous = Record before it
record-first = None; it is the first of this tablet.
record-scripts = Scripts
record-language = Language
record-measures-us = US measures
record-measures-uk = UK measures
record-measures-metric = metric measures
record-program = Program
record-times = Times are those of the tablet's clock, in the local time of the lot.
# $count: how often.
record-clock = { $count ->
    [one] The tablet's clock stepped back once during the walk.
   *[other] The tablet's clock stepped back { $count } times during the walk.
}
record-clock-jump = The tablet's clock was changed: it would have said { $from } and said { $to }.
record-took = The handoff took { $worked }: { $opening } for the opening, { $closing } for the closing, the rest for the steps. { $count ->
    [0] The renter was not handed the tablet.
    [one] The renter was handed the tablet once and had it for { $renter }.
   *[other] The renter was handed the tablet { $count } times and had it for { $renter } in all.
}
record-paused = Not counted are pauses of { $paused } in all, in each of which nothing was done for a quarter of an hour or more.
record-unknown = Written by a newer program; see record.json.

## People

# $name: as they gave it; $number: their number in the party.
record-person = { $name } ({ $number })
record-person-unnamed = Person { $number }
# $code: staff code.
record-agent-who = Agent { $code }
record-party = WHO
record-party-line = { $name }, age { $age }
record-driver = driver
record-passenger = passenger
record-present = present
record-absent = not present
record-licence = License seen: class { $class }, { $country }, valid to { $expiry }. Seen { $time }.
record-earlier-person = { $name }, age { $age }
record-earlier-driver = { $name }, age { $age }, driver
record-earlier-party = Entered { $time } and corrected later: { $people }.
record-first-time = First time
record-first-time-yes = Yes, first time with a unit like this
record-first-time-no = No, has used a unit like this before
record-translator = Translated by
record-nobody = Nobody
record-booking = Booking
record-nights = Nights
record-due-back = Due back
record-agent = Agent
record-agent-since = { $code }, since { $time }

## Refused

record-refusals = REFUSED
record-refusals-none = Nobody refused to confirm a caution or to sign.
record-refused-caution = { $title } (caution { $id })
record-refused-signature = Signature
record-refused-by = Refused by { $who }, { $time }.
record-refused-reason = Reason: { $reason }
record-decision-hand-over = The agent decided to hand over all the same.
record-decision-keep-unit = The agent decided to keep the unit.
record-decision-unknown = { record-unknown }

## Not shown

record-not-shown = NOT SHOWN
record-not-shown-none = Every step of the route was shown.
# $reason: one of the reasons below; $time: when it was left out.
record-left-out = { $reason } Left out { $time }.
record-why-weather = Wind, rain, ice or darkness.
record-why-declined = The renter did not want to see it.
record-why-known = The renter knows it from before.
record-why-out-of-order = Out of order that day.
record-why-no-time = No time.
record-why-unknown = { record-unknown }
record-not-reached = Not reached before the handoff was stopped.
record-caution-not-due = Its caution was not shown: { $title }.
record-caution-waiting = Not answered: { $title } ({ $step }).

## The unit

record-unit-section = THE UNIT
record-fact-size-length = Length
record-fact-size-height = Height
record-fact-size-mirrors = Width over mirrors
record-fact-weight-gvwr = Most it may weigh
record-fact-weight-occc = May be carried
record-fact-weight-ccc = Cargo it may carry

## Readings

record-readings = READINGS
record-not-read = not taken
record-reading-below = Below the least of { $bound }.
record-reading-above = Above the most of { $bound }.
record-why-not-broken = The gauge did not work.
record-why-not-unreachable = It could not be seen or reached.
record-why-not-wrong-moment = It would have read wrong just then.
record-why-not-unknown = { record-unknown }
record-readings-as-read = Readings stand as they were read. They are never rounded.

## Items

record-items = WHAT WAS LENT, AND WHAT EACH COSTS IF IT IS LOST
# $count: how many; $price: of each.
record-count-price = { $count } × { $price }
record-lent = The unit should have { $count }.
record-not-counted = not counted
record-items-total = All of it together

## Fees

record-fees = WHAT IT CAN COST
fee-night = A night
fee-deposit = Deposit
fee-miles_night = Miles a night at no charge
fee-mile = Each mile more
fee-generator_night = Generator time a night at no charge
fee-generator_hour = Each generator hour more
fee-fuel_gallon = Missing fuel, each gallon
fee-fuel_service = Filling in missing fuel
fee-propane_quarter = Each missing quarter of propane
fee-propane_cylinder = Each empty propane cylinder
fee-black = Black tank not emptied
fee-cassette = Toilet cassette not emptied
fee-grey = Each grey tank not emptied
fee-clean = Cleaning, if it comes back dirty
fee-griddle = Cleaning of the outdoor griddle
fee-smoke = Smoking inside
fee-pet = A pet that you told us about
fee-pet_hidden = A pet that you did not tell us about
fee-late_hour = Each hour late that has begun
record-tax = Tax on services
record-tax-on-bill = Reckoned once, on the taxed sum of the bill.
record-tax-on-line = Reckoned on each taxed line.
record-late-grace = Late at no charge, up to
record-rounding-half-up = Sums are rounded to the cent, half a cent up.
record-rounding-half-even = Sums are rounded to the cent, half a cent to the even cent.
record-rounding-unknown = { record-unknown }

## Marks

record-marks = MARKS ON THE UNIT
record-marks-none = No marks were noted.
record-mark-scratch = Scratch
record-mark-dent = Dent
record-mark-chip = Chip
record-mark-crack = Crack
record-mark-stain = Stain
record-mark-tear = Tear
record-mark-missing = Something missing
record-mark-works-badly = Works badly
record-mark-unknown = Mark
record-size-coin = up to a coin
record-size-hand = up to a hand
record-size-arm = up to an arm
record-size-larger = larger than an arm
record-size-unknown = size not known here
# $off: distance from the middle line; $back: distance from the nose.
record-spot-middle = on the middle line, { $back } behind the nose
record-spot-curb = curb side, { $off } off the middle line, { $back } behind the nose
record-spot-street = street side, { $off } off the middle line, { $back } behind the nose
record-mark-by = Noted by { $who }, { $time }.
record-mark-removed = Taken back { $time }. It does not count.

## Cautions

record-cautions = CAUTIONS AND ANSWERS
record-cautions-how = Each text stands as it was shown. Below it: who answered, how, when, and how long the page had been open.
record-caution = { $signal }: { $title } ({ $id }, version { $version })
record-shown-in = Shown in { $language }:
# $language: language tag; $measures: such as 'metric measures'.
record-shown-in-measures = Shown in { $language }, { $measures }:
record-answered = { $who } { $how }, { $time }. Page open { $looked }.
record-how-read = confirmed with a tap
record-how-hold = pressed and held
record-how-two-taps = confirmed with two taps
record-how-demonstrate = showed that it was understood
record-how-unknown = confirmed
record-too-fast = Reading it takes about { $reading }.
record-asked-demonstrate = It asks to be demonstrated; that was not done.
record-demo = Demonstration: { $question }
record-demo-tries = Tries of { $who }: { $tries }.
record-demo-right = { $who } tried it, { $time }. It was right. Page open { $looked }.
record-demo-wrong = { $who } tried it, { $time }. It was not right yet. Page open { $looked }.
record-demo-question = Asked as: { $text }
record-demo-order = Order on the page: { $text }
record-demo-answer = Answer: { $text }
record-demo-reply = Said after it: { $text }
record-demo-helped = The agent showed { $who } the real thing, { $time }.
record-answer-refused = { $who } would not confirm it, { $time }. Reason: { $reason }
record-answer-replaced = A later answer stands.
record-answer-carried = Given in the walk before, to the same words.
record-answer-lapsed = It stands no longer since { $time }: the words read otherwise from then on.
record-answer-not-due = Its step was not shown, so no answer was due.
record-answer-waiting = Not answered.

## Questions, leaving check

record-questions = QUESTIONS
record-questions-none = No questions were noted.
record-question-no-words = A question without a note
record-question-answered = { $about }, { $time }. Answered on the spot.
record-question-open = { $about }, { $time }. Not answered on the spot.
record-leaving = LEAVING CHECK
record-leaving-good = as it must be
record-leaving-bad = not as it must be
record-leaving-open = not looked at

## Consent, signatures, copy

record-consent = CONSENT TO AN ELECTRONIC RECORD
record-consent-none = Nobody was asked.
record-consent-given = { $who } agreed, { $time }.
record-consent-paper = { $who } asked for paper, { $time }.
record-signatures = SIGNATURES
record-signed = { $who } signed, { $time }. Handwriting: { $file }
record-not-signed = { $who } would not sign, { $time }. Reason: { $reason }
# $who: who had signed; $time: when; $withdrawn: since when it is void; $reason: why.
record-withdrawn = { $who } had signed, { $time }. Void since { $withdrawn }. Reason: { $reason }
record-withdrawn-refusal = { $who } had refused to sign, { $time }. Void since { $withdrawn }. Reason: { $reason }
# $time: when; $reason: why.
record-reopened = The closing was opened again, { $time }. Reason: { $reason }
# $who: who had decided; $time: when; $reason: why.
record-stop-undone = Taken back with it: the unit was not to go out, decided by { $who }, { $time }. Reason: { $reason }
record-signatures-mean = Only the shape of the handwriting is kept, not its speed or pressure.
record-copy = COPY FOR THE RENTER
record-copy-offered = A copy was offered, { $time }.
record-copy-not-offered = No copy was offered.
record-copy-slip = The renter took the slip with the fingerprint, { $time }.
record-copy-stick = The renter took a file on a stick, { $time }.
record-copy-declined = The renter wanted none then, { $time }.
record-copy-unknown = { record-unknown }

## What was shown

record-shown = WHAT WAS SHOWN
record-shown-figures = Where a text holds a figure of the trip, it is the one as of the closing.
record-step-shown = { $title }, shown { $time }, took { $took }
# $who: the agent who led then.
record-step-shown-by = { $title }, shown { $time }, took { $took }, led by { $who }
record-step-show = What staff showed:
record-step-know = What the renter should know:
record-step-notes = About this unit:

## The trip

record-trip = THE TRIP
# $time: when.
record-trip-planned = Planned { $time }.
record-trip-not-planned = Nobody planned this trip. The figures count on no hook-up and on usual use.
record-trip-not-counted = Party or booking was not known, so no figure of the trip could be computed.
record-trip-counted = The figures were computed from this: the plan, the party, the booking, and the gauges as read.
record-trip-people = People
record-trip-nights = Nights
record-trip-leaves = Leaves
record-trip-hook-up = Hook-ups, night by night
record-trip-hook-up-full = power, water and sewer
record-trip-hook-up-water = power and water
record-trip-hook-up-power = power
record-trip-hook-up-none = none
record-trip-hook-up-rest = then none
record-trip-use = Water use
record-trip-use-normal = as at home
record-trip-use-careful = with care
# $value: what it says.
record-trip-sign-says = { $value }
record-trip-sign-nosign = none
record-trip-supply = Power comes from
# $value: current of its breaker.
record-trip-supply-post = a post of { $value }
record-trip-supply-generator = the generator
record-trip-supply-inverter = the inverter
record-trip-supply-nothing = nothing
record-trip-on = Switched on
# $load: the load.
record-trip-settled = { $load } (settled)
record-trip-wind-watched = Somebody watches the awning
record-trip-wind-rain = Hard rain
record-trip-wind-night = Night
record-trip-inverter-on = Inverter on at night
record-trip-fill = Fresh tank filled on day
record-trip-empty = Waste tanks emptied on day
record-trip-refill = Propane refilled on day
record-trip-refuel = Fuel tank filled on day
record-trip-yes = yes
record-trip-no = no

## Figures, facts

record-figures = FIGURES AS OF THE CLOSING
record-figures-when = They are for the data sheet, the plan of the trip and the readings as they stood then. What each was computed from is in record.json.
# $title: what it is; $value: its value, or why there is none.
record-figure = { $title }: { $value }
# $rounding: in which direction; $source: who says so.
record-figure-source = { $rounding }; { $source }
# $figures: their titles.
record-figures-not-fitted = Not computed, since this unit does not have it: { $figures }.
record-facts = FACTS AS THEY WERE
record-facts-how = Every value of the unit's data sheet and of the lot, by the name it has in record.json.

## Amendments

record-amends = Amends record
record-amends-digest = With fingerprint
record-amendment-means = The record it amends stays as it is. Both are read together.
record-amended-text = WHAT IS CORRECTED OR ADDED
record-amended-topics = GONE THROUGH AGAIN

## How to verify

record-verify = HOW TO VERIFY THIS RECORD
# $tablet: name of the tablet.
record-verify-how = Put the ZIP file and the office's file allowed_signers into one folder and run these commands there. Tablet { $tablet } is one of the signers in that file.
record-verify-good = Each line must end in OK, and the last command must say: Good signature.
record-verify-means = The seal shows which tablet sealed the record, and that nothing in it was changed since. It does not show who held the pen.
