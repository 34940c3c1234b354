# Where and how the diesel heater is turned off
demo-heater-off-where = Where do you turn the diesel heater off? Tap it on the plan.
demo-heater-off-fan = You turned the diesel heater off, and its fan still runs. What do you do?
demo-heater-off-show = Go to the control of the diesel heater with the agent. Show how you turn it off there, and say what you wait for.
demo-heater-off-card-wait = Let the fan run until it stops by itself
demo-heater-off-card-battery = Switch the battery off, so that the fan stops
demo-heater-off-card-pump = Drive to the fuel pump right away
demo-heater-off-say-battery = That is the battery switch. Never turn the heater off with it: the heater must cool down first.
demo-heater-off-say-pipe = That is the exhaust. It is hot. The control of the heater is { $place_heater_panel }.
demo-heater-off-say-water = That heats the water. The control of the diesel heater is { $place_heater_panel }.
demo-heater-off-say-elsewhere = That is something else. The control of the diesel heater is { $place_heater_panel }.
demo-heater-off-say-cool = The fan cools the heater for about { $diesel_heater_rest }. If its power is cut while it is hot, it can be ruined.
demo-heater-off-say-pump = Turn the heater off { $limit_heater_pump } before you reach the pump. It has a flame.
