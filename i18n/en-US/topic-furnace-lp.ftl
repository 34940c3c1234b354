# Propane furnace
topic-furnace-lp = Propane furnace
why-furnace-lp = It needs propane and the house battery. The battery dies first. The exhaust grille burns.

step-furnace-lp-exhaust = Furnace exhaust
show-furnace-lp-exhaust-where = Show the exhaust of the furnace. It is { $place_furnace_exhaust }.
show-furnace-lp-exhaust-feel = With the furnace on, let the renter feel the warm air near it, not on it.
know-furnace-lp-exhaust-away = Keep people, chairs and the awning curtain away from the exhaust.
know-furnace-lp-exhaust-dust = When it is first lit, it burns off dust. The smell is gone in { $limit_furnace_smell }.
know-furnace-lp-exhaust-sting = If the smell stings your eyes, turn the furnace off, get everyone out and call { $phone_road }.

step-furnace-lp-thermostat = Furnace and thermostat
show-furnace-lp-thermostat-start = Propane on. Let the renter turn the thermostat up.
show-furnace-lp-thermostat-flame = The fan comes first. The flame follows after { $limit_furnace_flame_from } to { $limit_furnace_flame_to }.
show-furnace-lp-thermostat-clear = Check that the floor vents and the return grille are clear.
show-furnace-lp-thermostat-lockout = After three tries it locks out. Thermostat off for { $limit_furnace_reset }, then on.
show-furnace-lp-thermostat-fan = The fan takes { $furnace_fan } from the battery.
know-furnace-lp-thermostat-set = Set the thermostat and wait { $limit_furnace_flame_to }.
know-furnace-lp-thermostat-vents = Keep the floor vents clear.
know-furnace-lp-thermostat-night = Lower it at night. It saves the battery and the gas.

caution-furnace-lp-1 = The outside exhaust gets very hot.
    .title = Hot exhaust
    .harm = It can burn skin badly or start a fire.
    .avoid = Keep people, chairs and the awning curtain away.
caution-furnace-lp-2 = Blocked vents make the furnace overheat.
    .title = Blocked vents
    .harm = It can start a fire and burn people badly.
    .avoid = Keep bags and bedding off the grilles.
caution-furnace-lp-3 = On a cold night the fan can empty the battery.
    .title = Empty battery
    .harm = The heat and the lights stop, and the battery can be ruined.
    .avoid = Check the volts at bedtime. Charge at { $house_low } or less.

question-furnace-lp-1 = What is the smell when it is first lit?
    .answer = Dust. It is gone in { $limit_furnace_smell }. If it stings the eyes, turn the furnace off, get everyone out and call { $phone_road }.
