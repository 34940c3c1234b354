# Inverter
topic-inverter = Inverter: power from the battery
why-inverter = A cooktop or a heater empties a battery fast. Two of them together trip the inverter.

step-inverter = Inverter: power from the battery
show-inverter-where = Show the switch of the inverter. It is { $place_inverter_panel }.
show-inverter-try = Let the renter switch it on and wait for the light.
show-inverter-run = Run the cooktop for { $limit_inverter_try }. Then look at the percent.
show-inverter-night = Switch it off at night. It draws { $inverter_idle } while it does nothing.
show-inverter-fridge = Leave it on: the fridge runs on it, day and night. By itself it draws { $inverter_idle }.
show-inverter-overload = Too much load shuts it down. Turn the loads off. Switch it off for { $limit_inverter_rest }, then on.
know-inverter-most = The inverter gives { $inverter_power } at most.
know-inverter-one = Run one big thing at a time.
know-inverter-off = Turn it off before you sleep.
know-inverter-on = Leave it on for the fridge.

caution-inverter-1 = The outlets of the inverter give { $limit_mains }, like outlets in a house.
    .title = Live outlets
    .harm = The shock can kill.
    .avoid = Keep them dry. Leave the box closed.
caution-inverter-2 = Two big loads run at once.
    .title = Two big loads
    .harm = The inverter trips, and it can wear out early.
    .avoid = Run only one: cooktop, water heater or hair dryer.

question-inverter-1 = Can I run an air conditioner?
    .answer = No. One that fits in here would empty the battery in { $limit_portable_air_from } to { $limit_portable_air_to }.
