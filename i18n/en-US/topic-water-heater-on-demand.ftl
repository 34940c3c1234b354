# On-demand water heater
topic-water-heater-on-demand = On-demand water heater
why-water-heater-on-demand = It needs flow to light. The saver button on the shower makes the water go cold, then very hot.

step-water-heater-on-demand-vent = Outside vent of the water heater
show-water-heater-on-demand-vent-where = Show the water heater. It is { $place_water_heater }. It has no tank.
show-water-heater-on-demand-vent-vent = Point at the vent. It blows hot gas. Nothing may stand or hang in front of it.
know-water-heater-on-demand-vent-clear = Stand clear of the outside vent. Keep things away from it.
know-water-heater-on-demand-vent-frost = Call { $phone_day } if { $frost_dry_below } or less is forecast.

step-water-heater-on-demand-flow = Hot water on demand
show-water-heater-on-demand-flow-open = Let the renter switch it on and open a hot tap fully. Wait { $limit_heater_wait_from } to { $limit_heater_wait_to }.
show-water-heater-on-demand-flow-least = It lights only while at least { $water_heater_least_flow } flows.
show-water-heater-on-demand-flow-slow = On cold days, slow the flow a little for hotter water. Open more for cooler water.
show-water-heater-on-demand-flow-mix = Set the temperature on the heater. Do not mix in much cold.
know-water-heater-on-demand-flow-open = Turn it on and open the hot tap. It is set to { $water_heater_set }.
know-water-heater-on-demand-flow-slow = If the water is too cool, slow the flow a little.
know-water-heater-on-demand-flow-pause = If you shut the shower off, the next water may be cold and then hot.

caution-water-heater-on-demand-1 = After a pause, a burst of hot water comes out.
    .title = Burst of hot water
    .harm = It can scald you.
    .avoid = Let it run. Test it with your hand before you step back in.
caution-water-heater-on-demand-2 = The outside vent blows hot gas.
    .title = Hot gas at the vent
    .harm = It can burn skin badly or start a fire.
    .avoid = Stand clear. Keep things away from the vent.
caution-water-heater-on-demand-3 = Water is left in the heater in hard frost.
    .title = Frost in the heater
    .harm = The ice splits the heater.
    .avoid = Call { $phone_day } if { $frost_dry_below } or less is forecast.

question-water-heater-on-demand-1 = Is the hot water endless?
    .answer = Yes. But your fresh tank and your grey tanks are not. The fresh tank holds { $water_fresh }.
