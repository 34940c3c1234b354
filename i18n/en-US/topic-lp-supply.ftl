# Propane tank or cylinders and their shut-off
topic-lp-supply = Propane shut-off
why-lp-supply = This is the one handle that everybody must find in the dark.

step-lp-supply = Propane shut-off
show-lp-supply-close-frame = Have the renter walk to it and open the door. Let them close the valve by hand, clockwise.
show-lp-supply-close-cylinders = Have the renter walk to it and open the cover. Let them close both valves by hand, clockwise.
show-lp-supply-open = Open the valve a quarter turn and wait. Then open it fully. If it opens fast, the safety flow valve trips.
show-lp-supply-dial = Read the dial. F is { $limit_propane_fill } of the tank, and that is full.
show-lp-supply-rule = Lot rule: the valve is closed when the wheels turn. A fridge kept shut stays cold for about { $limit_fridge_shut }.
know-lp-supply-where = The propane shut-off is { $place_lp_valve }.
know-lp-supply-turn-frame = Turn it clockwise to close.
know-lp-supply-turn-cylinders = Turn both valves clockwise to close. With one closed, the other cylinder takes over by itself.
know-lp-supply-before = Close it before every drive, ferry, tunnel and fuel stop.
know-lp-supply-full-frame = A full tank holds { $propane_full } of propane.
know-lp-supply-full-cylinders = The full cylinders hold { $propane_full } of propane together.

step-lp-supply-change = Changing cylinders
show-lp-supply-change-arrow = Show the arrow. It points to the cylinder that is used first.
show-lp-supply-change-flag = Show the flag. It turns red when that one is empty. The other has then taken over.
show-lp-supply-change-swing = Swing the arrow across. Refill the empty one.
show-lp-supply-change-nuts = Turn the cylinder nuts by hand, with no tool.
show-lp-supply-change-soap = Test with soapy water. If there are bubbles, close the valve and call.
know-lp-supply-change-red = When the flag is red, swing the arrow across and refill.
know-lp-supply-change-soap = After each change, test with soapy water.

caution-lp-supply-1 = Gas that leaks will explode from any spark.
    .title = Leaking gas
    .harm = The blast will kill.
    .avoid = Get everyone out. Shut the valve if that is safe. Call from far away.
caution-lp-supply-2 = A tank filled too full can vent gas.
    .title = Tank too full
    .harm = The gas can catch fire and burn people badly.
    .avoid = Let only trained staff fill it. Get everyone out of the unit, and turn off the engine and all flames first.
caution-lp-supply-3 = A flame left on as you drive can start a fire.
    .title = Flame on while driving
    .harm = At a fuel pump or in a crash, the fire can kill.
    .avoid = Close the propane valve first. Then drive.
caution-lp-supply-4 = A valve opened fast can let too little gas through.
    .title = Valve opened fast
    .harm = Flames stay small and the heat is weak.
    .avoid = Open it slowly. If flames stay small, close it, wait a minute and open it slowly.

question-lp-supply-1 = Is { $limit_propane_fill } a faulty fill?
    .answer = No. The gas needs room to expand.
question-lp-supply-2 = Does propane freeze?
    .answer = It flows down to about { $limit_propane_flows }. In deep cold the pressure is weak.
