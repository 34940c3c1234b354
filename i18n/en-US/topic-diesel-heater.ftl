# Diesel air heater
topic-diesel-heater = Diesel heater
why-diesel-heater = It burns fuel from the van's own tank. It must cool down by itself. In thin air it makes soot.

step-diesel-heater-exhaust = Exhaust of the diesel heater
show-diesel-heater-exhaust-look = Kneel beside the van and look under. The exhaust is { $place_heater_exhaust }. Let the renter find it.
show-diesel-heater-exhaust-clear = The ground below it stays clear: no tall grass, no snow, no bags.
show-diesel-heater-exhaust-indoors = Say that it never runs in a garage or a closed shed.
know-diesel-heater-exhaust-clear = Keep the exhaust under the van clear.
know-diesel-heater-exhaust-snow = Look at it again after snow, and each time you park.

step-diesel-heater-panel = Diesel heater on and off
show-diesel-heater-panel-on = Let the renter switch it on and feel the air turn warm.
show-diesel-heater-panel-glow = Say that it warms up for up to { $limit_heater_glow } and then draws a lot of power.
show-diesel-heater-panel-off = Let the renter switch it off at its own control. The fan runs on for about { $diesel_heater_rest } to cool it.
show-diesel-heater-panel-why = Point at the battery switch, and say: 'Never turn the heater off with this one.'
show-diesel-heater-panel-high = Say that the renter runs it on high for { $limit_heater_high } once a day. That burns the soot away.
know-diesel-heater-panel-off = Turn it off at its own control.
know-diesel-heater-panel-fan = Let the fan stop by itself. That takes about { $diesel_heater_rest }.
know-diesel-heater-panel-high = Run it on high for { $limit_heater_high } once a day.
know-diesel-heater-panel-fuel = Turn it off before you buy fuel.

caution-diesel-heater-1 = Heater exhaust trapped under the van will bring carbon monoxide inside.
    .title = Trapped exhaust
    .harm = You cannot smell this gas. It will kill you in your sleep.
    .avoid = Keep snow and bags off the pipe. Never run the heater in a garage.
caution-diesel-heater-2 = The heater has a flame, and fuel fumes catch fire at the pump.
    .title = Heater on at the pump
    .harm = The fire can burn you badly.
    .avoid = Switch the heater off { $limit_heater_pump } before you reach the pump.
caution-diesel-heater-3 = The exhaust pipe under the van gets hot.
    .title = Hot pipe
    .harm = It can burn your hand.
    .avoid = Do not reach under the van.
caution-diesel-heater-4 = A heater that is still hot needs battery power for its fan.
    .title = Power cut while hot
    .harm = Without it the heater cannot cool down. It can be ruined.
    .avoid = Never cut the power while it runs. Use its own switch, and let the fan stop by itself.

question-diesel-heater-1 = It stopped when the tank was down to { $diesel_heater_pickup }. Is that right?
    .answer = Yes, so that you can still drive out. Buy fuel, then start it again.
question-diesel-heater-2 = White smoke comes out. Is it broken?
    .answer = At the start it is normal. If it lasts longer than { $limit_heater_smoke }, turn the heater off and call { $phone_road }.
