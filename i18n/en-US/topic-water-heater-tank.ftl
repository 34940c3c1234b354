# Tank water heater
topic-water-heater-tank = Water heater
why-water-heater-tank = An empty heater switched to electric burns out in about a minute. Hot water scalds children.

step-water-heater-tank-place = Water heater
show-water-heater-tank-place-where = Show the water heater. It is { $place_water_heater }.
show-water-heater-tank-place-vent = Point at the outside door and the vent. They get hot. Nothing may lean on them.
show-water-heater-tank-place-valves = Point out the drain and the relief valve. Only the lot opens them.
know-water-heater-tank-place-clear = Keep hands, chairs and bags away from the outside vent.
know-water-heater-tank-place-valves = Leave the drain and the relief valve to the lot.
know-water-heater-tank-place-drip = A few drips from the relief valve are normal while it heats.

step-water-heater-tank-switch = Switching the water heater on
show-water-heater-tank-switch-tap = Let the renter open a hot tap until it runs without spitting. Then the tank is full.
show-water-heater-tank-switch-then = Only then switch the heater on.
show-water-heater-tank-switch-switches = Show the two switches: propane and electric. Both together heat faster.
show-water-heater-tank-switch-lockout = Point at the lockout light. It means that three tries to light the flame failed.
show-water-heater-tank-switch-electric-only = This heater is electric only. It runs from shore power or from the inverter.
know-water-heater-tank-switch-tap = Run a hot tap until the water flows smoothly.
know-water-heater-tank-switch-wait = Then switch the heater on and wait.
know-water-heater-tank-switch-mix = Mix in cold water before you wash a child.
know-water-heater-tank-switch-showers = The tank holds { $water_heater_tank }. Use a little at a time, then wait.

caution-water-heater-tank-1 = The water gets as hot as { $water_heater_set }.
    .title = Scalding water
    .harm = It can scald. A child's skin burns fastest.
    .avoid = Mix in cold water first. Test it with your hand.
caution-water-heater-tank-2 = The heater is switched to electric while its tank is empty.
    .title = Empty heater
    .harm = The heating part burns out in about a minute.
    .avoid = Run a hot tap first, until it flows smoothly.
caution-water-heater-tank-3 = The outside vent of the heater gets very hot.
    .title = Hot outside vent
    .harm = It can burn skin or start a fire.
    .avoid = Keep hands, chairs and bags away from it.
caution-water-heater-tank-4 = The drain and the relief valve let out scalding water.
    .title = Scalding spray
    .harm = The spray can burn you badly.
    .avoid = Leave both to the lot.

question-water-heater-tank-1 = How many showers does it give?
    .answer = It depends on the tank: { $water_heater_tank }. Take a short shower, then wait until it is hot again.
question-water-heater-tank-2 = Why does the relief valve drip?
    .answer = A little while it heats is normal. If it streams, turn the heater off and call { $phone_road }.
