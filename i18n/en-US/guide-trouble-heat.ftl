# Guide: the heater
guide-trouble-heat = Heater will not run
    .stop = { $fitted_diesel_heater ->
        [yes] diesel smell, soot, stinging eyes, carbon monoxide alarm. Get everyone out before you call. If the alarm sounds, call { $phone_emergency }
       *[no] gas smell, soot, stinging eyes, carbon monoxide alarm. Get everyone out before you call. If the alarm sounds, call { $phone_emergency }
    }
    .find = heat, heater, furnace, cold, no heat, freezing, thermostat, fan, blows cold, smoke, soot
    .note = { $fitted_diesel_heater ->
        [yes] Turn the heater off at its own control and let its fan stop. Read the code on the control to the helper, if it shows one. Nobody sleeps while an engine charges the battery. The heater may smoke white when it starts. More than { $limit_heater_smoke } of smoke is not normal.
       *[no] Nobody sleeps while an engine or a generator charges the battery.
    }

caution-trouble-heat-h1 = { $fitted_propane ->
        [yes] A burner or a grill used for heat makes carbon monoxide, a gas you cannot see or smell.
       *[no] A grill or a camp stove used for heat makes carbon monoxide, a gas you cannot see or smell.
    }
    .title = { $fitted_propane ->
        [yes] Burner used for heat
       *[no] Flame used for heat
    }
    .harm = It will kill you.
    .avoid = { $fitted_propane ->
        [yes] Use blankets, or leave. Never heat with a burner or a grill.
       *[no] Use blankets, or leave. Never heat with a grill or a camp stove.
    }
caution-trouble-heat-h2 = The outside exhaust gets very hot.
    .title = Hot exhaust
    .harm = It can burn skin badly.
    .avoid = Look at it. Do not touch it.

row-trouble-heat-alarm = Smell and listen.
    .ask = { $fitted_propane ->
        [yes] Does the carbon monoxide alarm sound, or is there a gas smell, soot or stinging eyes?
       *[no] Does the carbon monoxide alarm sound, or is there a smell of fuel, soot or stinging eyes?
    }
    .yes = { $fitted_propane ->
        [yes] Get everyone out now. Once you are outside, go on with the guide for what you noticed: the alarm or the smell.
       *[no] Get everyone out now. Once you are outside, go on with the guide for the carbon monoxide alarm.
    }
row-trouble-heat-burner = Light one burner of the cooktop. Look at the flame. Turn it off.
    .ask = Was the flame strong?
row-trouble-heat-propane = { $propane_kind ->
        [cylinders] Read the propane gauge. If it is empty, change over to the other cylinder. Close the valve. Wait { $limit_valve_rest }. Open it slowly. Light the burner again, then turn it off. The valve is { $place_lp_valve }.
       *[other] Read the propane gauge. If it is empty, have it filled. Close the valve. Wait { $limit_valve_rest }. Open it slowly. Light the burner again, then turn it off. The valve is { $place_lp_valve }.
    }
    .ask = Is the flame strong now?
row-trouble-heat-volts = Read the house volts.
    .ask = Are they above { $house_low }?
row-trouble-heat-charge = Charge for { $limit_charge_try }, from a post or from a running engine outdoors. Turn the thermostat up.
    .ask = Does warm air come?
row-trouble-heat-thermostat = Set the thermostat to heat, well above the room. Wait { $limit_furnace_wait }.
    .ask = Does the fan run?
row-trouble-heat-furnace-reset = Take bags off the grilles. Look at the outside exhaust from a step away. It is { $place_furnace_exhaust }. Turn the thermostat off for { $limit_furnace_reset }, then on. Once.
    .ask = Does warm air come?
row-trouble-heat-fuel = { $house_chemistry ->
        [lithium] Read the fuel gauge and the battery percent.
       *[other] Read the fuel gauge and the house volts.
    }
    .ask = { $house_chemistry ->
        [lithium] Is the fuel above { $diesel_heater_pickup } of a tank, and the battery above { $limit_heater_percent }?
       *[other] Is the fuel above { $diesel_heater_pickup } of a tank, and are the volts above { $house_low }?
    }
row-trouble-heat-refuel = Turn the heater off and buy fuel, or charge the battery. Then turn the heater on. Wait { $limit_heater_warm }.
    .ask = Does warm air come?
row-trouble-heat-pipe = Turn the heater off. Wait { $diesel_heater_rest }. Look at the pipe from the side. It is { $place_heater_exhaust }. Push snow, mud and bags away with a stick. Turn the heater on, once. Wait { $limit_heater_warm }.
    .ask = Does warm air come?
