# Guide: no hot water
guide-trouble-no-hot-water = No hot water
    .stop = { $fitted_water_heater_propane ->
        [yes] gas smell, soot at the vent, water under the heater, a relief valve that streams
       *[no] a burnt smell, water under the heater, a relief valve that streams
    }
    .find = hot water, water heater, boiler, cold shower, lukewarm, tankless, on-demand, reset, tap, faucet
    .note = Is every hot tap lukewarm? A valve may still stand as in winter. The helper can guide you to it. Leave the relief valve and the drain of the heater alone.

caution-trouble-no-hot-water-h1 = A burst of hot water can come out of the tap.
    .title = Burst of hot water
    .harm = It can scald you.
    .avoid = Keep your skin away while you test.
caution-trouble-no-hot-water-h2 = Gas that leaks at the heater will explode.
    .title = Gas at the heater
    .harm = The blast will kill.
    .avoid = If you smell gas, get everyone out. Then use the guide for a smell of gas.

row-trouble-no-hot-water-cold-tap = Open a cold tap.
    .ask = Does cold water run well?
row-trouble-no-hot-water-shower = Look at the two taps of the outside shower. It is { $place_outside_shower }.
    .ask = Are both taps shut?
row-trouble-no-hot-water-shower-shut = Shut both taps. A tap left half open mixes cold water into the hot. Wait { $limit_shower_wait }.
    .ask = Is the water hot now?
row-trouble-no-hot-water-one-tap = Try every hot tap.
    .ask = Is only one tap cold?
    .yes = That tap is worn. It can wait. Use another tap, and call when it suits you.
row-trouble-no-hot-water-burner = Light one burner of the cooktop. Look at the flame. Turn it off.
    .ask = Was the flame strong?
row-trouble-no-hot-water-propane = { $propane_kind ->
        [cylinders] Read the propane gauge. If it is empty, change over to the other cylinder. Close the valve. Wait { $limit_valve_rest }. Open it slowly. Light the burner again, then turn it off. The valve is { $place_lp_valve }.
       *[other] Read the propane gauge. If it is empty, have it filled. Close the valve. Wait { $limit_valve_rest }. Open it slowly. Light the burner again, then turn it off. The valve is { $place_lp_valve }.
    }
    .ask = Is the flame strong now?
row-trouble-no-hot-water-reset = Run a hot tap until the water flows smoothly. Turn the heater off for { $limit_heater_reset }, then on. Once. Now wait. Time to heat up: { $heat_up_minutes }.
    .ask = Is the water hot?
row-trouble-no-hot-water-on-post = Plug into a post. Turn other big things off. Turn the electric side of the heater on. Now wait. Time to heat up: { $heat_up_minutes }.
    .ask = Is the water hot?
row-trouble-no-hot-water-electric = { $house_chemistry ->
        [lithium] Plug into a post. Or turn the inverter on, if the battery is above { $limit_heater_percent }. Run a hot tap until the water flows smoothly. Turn the heater on. Now wait. Time to heat up: { $heat_up_minutes }.
       *[other] Plug into a post. Or turn the inverter on, if the volts are above { $house_low }. Run a hot tap until the water flows smoothly. Turn the heater on. Now wait. Time to heat up: { $heat_up_minutes }.
    }
    .ask = Is the water hot?
row-trouble-no-hot-water-on-demand = Turn the heater off for { $limit_heater_reset }, then on. Once. Open a hot tap fully. Wait { $limit_hot_tap_wait }.
    .ask = Is the water hot?
row-trouble-no-hot-water-shower-head = Unscrew the shower head and try again. A clogged head lets too little through. The heater needs { $water_heater_least_flow }.
    .ask = Is the water hot?
