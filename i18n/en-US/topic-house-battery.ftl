# House battery, volts and disconnect switch
topic-house-battery = House battery and its switch
why-house-battery = The furnace fan on cold nights is what empties batteries. Some renters turn the switch off 'to save power' and lose the alarms or the charging.

step-house-battery-box = House battery
show-house-battery-box-where = Show the house battery. It is { $place_battery_box }.
show-house-battery-box-vent = Point at the vent of the box. Say: 'No smoking and no sparks here.'
show-house-battery-box-signs = Say what to do if it swells, smells or smokes: out, away, call.
show-house-battery-box-brake = Say that the breakaway brake needs this battery. It is wired ahead of the switch, so the switch cannot cut it off.
know-house-battery-box-fan = The heater fan uses the most at night.
know-house-battery-box-fridge = The fridge and the heater use the most at night.
know-house-battery-box-closed = Leave the battery closed. The lot looks after it.
know-house-battery-box-cold = Below { $house_charge_above } it takes no charge. Warm the inside first.

step-house-battery-switch = Battery switch and meter
show-house-battery-switch-on = Point at the switch. It is { $place_disconnect }.
show-house-battery-switch-stays = It stays ON for the whole rental. Off is for storage only.
show-house-battery-switch-read = Read the volts with the renter, with all loads off.
show-house-battery-switch-read-charge = Read the volts and the percent with the renter, with all loads off.
show-house-battery-switch-act = Say the number to act on: at { $house_low } or less, charge today.
show-house-battery-switch-end = Say the last number: at { $house_stop }, switch all loads off.
know-house-battery-switch-on = Leave the battery switch on for the whole trip.
know-house-battery-switch-charge = Charge when the meter shows { $house_low } or less at rest.
know-house-battery-switch-full = A full battery shows { $house_full } at rest.

caution-house-battery-1 = The battery is drained below { $house_stop }.
    .title = Drained too far
    .harm = It can be ruined.
    .avoid = Turn the loads off and charge it.
caution-house-battery-2 = The battery gives off gas that can explode.
    .title = Gas at the battery
    .harm = The blast sprays acid. It can burn and blind you.
    .avoid = No smoking and no sparks near the box. Do not open it.
caution-house-battery-3 = A lithium battery that swells, smells or smokes can catch fire.
    .title = Battery fire
    .harm = It burns fiercely and the smoke can harm your lungs.
    .avoid = Get out and move away. Then call { $phone_emergency }.
caution-house-battery-4 = Below { $house_charge_above } the lithium battery takes no charge.
    .title = Too cold to charge
    .harm = You can run out of power.
    .avoid = Warm the van first, then charge.

question-house-battery-1 = The meter shows { $limit_charging_volts }. Is it full?
    .answer = That is the charger, not the battery. Unplug, turn the loads off and wait. Then read it again.
