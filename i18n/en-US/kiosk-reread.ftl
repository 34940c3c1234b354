# Reread: the renter alone with the tablet. Nobody is near who could explain a word.
reread-open = Read again
reread-open-renter = Let the renter read again
reread-crumb = reading again
reread-back = Back
reread-road = Road help
reread-emergency-number = Emergency number

# The cover.
reread-cover-what = Everything about this unit, to read again
reread-cover-tap = Tap to read
reread-cover-danger = IF YOU ARE IN DANGER
reread-cover-smell = Smell of fuel
reread-cover-fire = Fire, smell of burning, or an injury
reread-staff = For staff: leave

# Plan and list.
reread-search = gas, hot water, smell, dump ...
reread-clear = Clear
reread-wrong = Something is wrong
reread-all-cautions = All cautions
reread-numbers = Numbers of this unit
reread-tap-plan = Tap a number on the plan, or a line.
reread-stop = Stop { $number }: { $station }
reread-all-here = Show all of them
reread-desk = Papers
reread-road-zone = On the road
reread-cautions = { $count ->
    [0] No caution
    [one] One caution
   *[other] { $count } cautions
}

# What was found.
reread-found = { $count ->
    [0] Nothing found
    [one] One place
   *[other] { $count } places
}
reread-found-none = Try another word, or look on the plan. If you are in danger, press Emergency. If not, call road help: { $phone_road }.
reread-found-word = Found by: { $line }
reread-found-text = In the text: { $line }
reread-kind-guide = Step by step
reread-kind-emergency = Numbers to call, and what to do first
find-idle = a, an, and, are, at, can, do, does, for, how, i, in, is, it, my, of, on, our, the, there, this, to, we, what, when, where, which, with
find-emergency = fire, smell of gas, smell of fuel, smell of burning, gas leak, flames, burning, burns, smoke, on fire, injury, hurt, blood, accident, crash, ambulance, police, help, emergency, SOS, phone number
    .title = Emergency card

# A topic.
reread-know = KNOW
reread-done = WHAT STAFF SHOW HERE
reread-leaving = BEFORE EACH DRIVE
reread-numbers-here = NUMBERS
reread-caution-labels = CAUTIONS
reread-small-print = Also read the maker's manual and follow local codes.

# What is wrong.
reread-guides-first = First, if people are in danger
reread-guides-rest = What does not work?
reread-guide-hazard = First
reread-guide-go-on = I have read this
reread-guide-stop = Stop, get clear and call { $phone_road } at any of these
reread-guide-call = Call { $phone_emergency } as soon as you are outside and away.
reread-guide-row = Question { $number }
reread-guide-answer = You said { $answer ->
    [yes] yes
   *[no] no
}.
reread-yes = Yes
reread-no = No
reread-guide-again = From the start
reread-guide-home = To the plan
guide-end-fixed = It works again
    .what = Look once more that nothing smells, leaks or gets hot. Then go on.
guide-end-call = Call road help
    .what = Try nothing more. Say which unit you have and the number of the last question.
guide-end-leave = Stay out
    .what = Everyone is out of the unit and stays away. Call from outside.
guide-end-wait = Nothing is broken
    .what = Wait, or move to another place. If it does not get better, call road help.

# Numbers of the unit.
reread-number-of = { $of }: { $value }
reread-part-size = Size
reread-part-weight = Weight
reread-part-tanks = Tanks
reread-part-wheels = Wheels and tires
reread-part-limits = Limits
reread-part-power = Power
reread-number-height = { $size_height }
    .label = Height
reread-number-length = { $size_length }
    .label = Length
reread-number-width = { $size_width }
    .label = Width of the body
reread-number-mirrors = { $size_mirrors }
    .label = Width with mirrors
reread-number-occc = { $weight_occc }
    .label = People and cargo together, at most
reread-number-ccc = { $weight_ccc }
    .label = Cargo, at most
reread-number-gvwr = { $weight_gvwr }
    .label = Whole weight, at most
reread-number-gcwr = { $weight_gcwr }
    .label = Weight with what is towed, at most
reread-number-tongue = { $hitch_tongue_most }
    .label = Weight on the hitch's tongue, at most
reread-number-fresh = { $water_fresh }
    .label = Fresh water
reread-number-grey = { $waste_grey }
    .label = Grey tank
reread-number-grey-galley = { $waste_grey_galley }
    .label = Grey tank of the galley
reread-number-black = { $waste_black }
    .label = Black tank
reread-number-cassette = { $waste_cassette }
    .label = Toilet cassette
reread-number-propane = { $propane_full }
    .label = Propane when full
reread-number-fuel-tank = { $engine_tank }
    .label = Fuel tank
reread-number-fuel = { $engine_fuel ->
    [diesel] Diesel only
   *[other] Gasoline only
}
    .label = Fuel
reread-number-tires = { $tires_cold }
    .label = Tires, cold
reread-number-spare = { $wheels_spare }
    .label = Spare tire
reread-number-torque = { $wheels_torque }
    .label = Wheel nuts
reread-number-awning = { $awning_wind_limit }
    .label = Awning in, at this wind
reread-number-speed = { $driving_speed }
    .label = Speed, at most
reread-number-wind = { $driving_wind }
    .label = Do not drive in wind above
reread-number-step = { $step_limit }
    .label = On the entry step, at most
reread-number-bunk = { $berths_bunk_limit }
    .label = On the bunk, at most
reread-number-regulator = { $water_regulator }
    .label = Water pressure after the regulator
reread-number-belts = { $berths_belts }
    .label = Seats with a belt
reread-number-beds = { $berths_beds }
    .label = People who can sleep here
reread-number-cord = { $shore_cord }
    .label = Shore cord
reread-number-house-low = { $house_low }
    .label = Charge the house battery at
reread-number-generator = { $generator_rated }
    .label = Generator, low down
reread-number-inverter = { $inverter_power }
    .label = Inverter
