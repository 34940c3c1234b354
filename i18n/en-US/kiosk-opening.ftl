# Opening: who, which trip.

opening-step-trip = Trip
opening-step-party = Party
opening-step-licenses = Licenses
opening-step-plan = Plan
opening-step-ready = Ready
opening-next = Next
opening-back = Back
opening-saving = Saving
opening-yard = Go to the Yard
opening-stop = Do not hand over
opening-start = Start the walk

## The trip.

opening-trip-title = Which trip?
opening-agent = Your staff code
opening-agent-example = As on your badge
opening-language = Ask: which language do you read?
# The name of this language in this language.
opening-language-own = English
opening-measures = Ask: which measures do you use?
# $system: us, uk or metric.
opening-measures-name = { $system ->
    [us] Miles and gallons
    [uk] Miles and liters (UK)
   *[metric] Kilometers and liters
}
opening-booking = Booking
opening-booking-example = If there is one
opening-nights = Nights
opening-nights-none = How many?
opening-nights-count = { $count ->
    [one] One night
   *[other] { $count } nights
}
opening-due = Due back
opening-due-days = { $count ->
    [0] That is today.
    [one] That is one day from today.
   *[other] That is { $count } days from today.
}
# $weekday: from 1 for Monday to 7 for Sunday.
opening-weekday = { $weekday ->
    [1] Mon
    [2] Tue
    [3] Wed
    [4] Thu
    [5] Fri
    [6] Sat
   *[7] Sun
}
opening-day = { opening-weekday }, { $date }

## The party.

opening-party-title = Who travels?
opening-party-why = Everybody, children too.
opening-party-belts = { $count ->
    [one] Everybody, children too. The unit has one seat with a belt.
   *[other] Everybody, children too. The unit has { $count } seats with a belt.
}
opening-party-too-many = { $count ->
    [one] More people than the one seat with a belt. Somebody must travel another way.
   *[other] More people than the { $count } seats with a belt. Somebody must travel another way.
}
opening-name = Name
opening-age = Age
opening-drives = Drives
opening-too-young = Drivers here are { $age } or older
opening-age-first = Enter the age first
opening-party-add = One more person
opening-person = Person { $number }

## Licenses and who is here.

opening-licenses-title = Licenses, and who is here
opening-license-why = Look at each license and compare the face. Never write down the number.
opening-class = Class
opening-country = Country
opening-last-day-us = License valid until: month, day, year
opening-last-day = License valid until: day, month, year
opening-month = Month
opening-day-field = Day
opening-year = Year
opening-here = Who is here?
opening-all-here = Everybody is here
opening-no-party = Nobody is entered yet. Enter the party first.
opening-to-party = Enter the party

## The plan of the trip.

opening-plan-title = How will the trip go?
opening-plan-why = Ask what is known. Leave out the rest: nobody must plan a trip.
opening-plan-hook = What does the place of each night offer?
opening-plan-hook-explained = Full means power, water and sewer.
opening-plan-hook-full = Full
opening-plan-hook-water = Power, water
opening-plan-hook-power = Power
opening-plan-hook-none = Nothing
opening-plan-all-nights = All nights
# A night by the day it begins on. $date: the day of the month.
opening-plan-night = { opening-weekday } { $date }
opening-plan-nights = { $from } to { $to }
opening-plan-week-open = Each night
opening-plan-week-close = The week as one
opening-plan-water = How will they use water?
opening-plan-water-home = As at home
opening-plan-water-care = With care
opening-plan-bags = Bags and food
opening-plan-coldest = Coldest night
opening-plan-highest = Highest place
opening-plan-hottest = Hottest day
opening-plan-sun = Sun a day
opening-plan-generator = Generator a day
opening-plan-driving = Driving a day
opening-plan-tow = The vehicle that pulls
# $measure: the sign of the measure: lb, kg, in or cm.
opening-plan-measure = { $measure ->
    [lb] pounds
    [kg] kilograms
    [in] inches
   *[cm] centimeters
}
opening-plan-tow-payload = Payload on its door sticker, in { opening-plan-measure }
opening-plan-tow-rating = Most it may pull, in { opening-plan-measure }
opening-plan-tow-length = Its length, in { opening-plan-measure }
opening-plan-tow-mount = From bumper to ball, in { opening-plan-measure }
opening-plan-tow-bags = Bags in the vehicle
opening-plan-levels = Tanks at the start
opening-plan-fresh = Fresh water
opening-plan-grey = Grey water
opening-plan-toilet = Toilet
opening-plan-propane = Propane
opening-plan-fuel = Fuel
opening-plan-full = Full
opening-plan-empty = Empty
opening-plan-zero = None
opening-plan-untold = Not said
opening-plan-assumed = As the lot says
opening-plan-no-frost = Counted without frost
opening-plan-helps = What helps
opening-plan-unknown = What nobody knows yet
opening-plan-source = Source: { $source }
opening-sum-plan = { opening-sum-plan-with }, { opening-sum-plan-without }. { $first }
opening-sum-plan-with = { $with ->
    [0] No night with a hook-up
    [one] One night with a hook-up
   *[other] { $with } nights with hook-ups
}
opening-sum-plan-without = { $without ->
    [0] none without
    [one] one without
   *[other] { $without } without
}

## Ready.

opening-ready-title = Ready for the walk?
opening-first = Ask: is a unit like this new to you?
opening-first-yes = First time
opening-first-no = Has used one before
opening-translator = Who translates?
opening-translator-nobody = Nobody
opening-translator-companion = Travel companion
opening-translator-staff = Staff
opening-translator-phone = Interpreter by phone
opening-missing = Still missing
opening-nothing-missing = Nothing is missing.
opening-sum-trip = { $nights }, due back { $day }, { $time }
opening-sum-trip-booking = { $nights }, due back { $day }, { $time }. Booking { $booking }
opening-sum-drivers = Drive
opening-sum-others = With them
opening-sum-licenses = Licenses
opening-sum-license = { $name }: class { $class }, { $country }, until { $expiry }
opening-sum-here = Here now
opening-sum-reads = Reads
opening-sum-reader = { $language }. { $measures }
opening-sum-agent = Agent
opening-missing-agent = Your staff code
opening-missing-reader = Language and measures of the renter
opening-missing-party = The party
opening-missing-license = The license of { $name }
opening-missing-license-short = A license that lasts: the one of { $name } ends on { $expiry }, the unit is due back on { $until }
opening-missing-present = Which adult is here
opening-missing-experience = Whether a unit like this is new to them
opening-missing-booking = Nights and when the unit is due back

## Not handed over.

opening-stop-title = Do not hand over?
opening-stop-why = Refusing is sometimes the right answer. What was entered so far is kept. The reason is kept and sealed with it, and who decided. Until it is sealed it can be taken back.
opening-stop-first = First enter
opening-stop-now = Stop the handoff
opening-reason = Why, in a few words
opening-reason-example = What stands in the way
opening-reason-license = No valid license
opening-reason-young = Driver too young
opening-reason-belts = More people than belts
opening-reason-tow = Tow vehicle does not fit
opening-reason-fit = Driver not fit to drive
opening-reason-renter = Renter does not want the unit
opening-by = Who decided?
opening-by-agent = The agent
opening-was-to-drive = Who was to drive?

## What is wrong.

opening-leave-title = Something here is not saved
opening-leave-what = What is marked on this page is lost if you leave now. Everything else is saved, and the walk stays open.
opening-leave-stay = Stay and correct it
opening-leave-go = Leave without it
opening-fault-language = Choose a language too.
opening-fault-nights = Say how many nights.
opening-fault-due-past = { $due } is over. Choose a later day.
opening-fault-age-missing = Enter the age.
opening-fault-age = The age is a number of years. Correct it.
opening-fault-name = An adult needs a name.
opening-fault-no-driver = Tick who drives. Drivers here are { $age } or older. If nobody is, do not hand over.
opening-fault-no-adult = At least one adult must travel.
opening-fault-exchanged = { $name } has shown a license or answered already. Take them out, and enter the other person as a new one.
opening-fault-class = Enter the class.
opening-fault-country = Enter the country.
opening-fault-expiry-missing = Enter month, day and year of the last day it is valid.
opening-fault-expiry = There is no such day. Look at the license again.
opening-fault-expired = It ended on { $expiry }. Another driver, another license, or do not hand over.
opening-fault-too-short = It ends on { $expiry }, before the unit is due back on { $until }. Another driver, a shorter trip, or do not hand over.
opening-fault-empty = At least one of the party must be here.
opening-fault-long = That is too long: at most { $max } letters.
opening-fault-number = That is no number. Use digits alone.
opening-fault-beyond = That cannot be. It is from { $low } to { $high } { opening-plan-measure }.
opening-fault-reason = Say why.
opening-fault-who-drove = Say who was to drive.
opening-fault-other = That cannot be: { $why }
