# Guide: the engine
guide-trouble-engine-crank = Engine will not start
    .stop = fuel smell, smoke, wrong fuel, three failed tries
    .find = engine, motor, start, crank, click, dead battery, jump, boost, key, wrong fuel, diesel, exhaust fluid, out of fuel
    .note = After a boost, drive for { $limit_boost_drive }. If it is dead again next morning, call { $phone_road }.

caution-trouble-engine-crank-h1 = A unit on a slope can roll.
    .title = Unit that rolls
    .harm = It can roll over someone and kill.
    .avoid = Set the brake and put the gear in P before anyone goes near the front.
caution-trouble-engine-crank-h2 = A spark can make a battery burst.
    .title = Bursting battery
    .harm = It sprays acid. The acid can burn and blind you.
    .avoid = Clip red on first. Clip black to the ground stud last. Turn your face away.

row-trouble-engine-crank-wrong-fuel = Think before you turn the key.
    .ask = Could wrong fuel or wrong fluid be in a tank?
    .yes = Leave the key off. Do not start the engine.
row-trouble-engine-crank-fuel-smell = Smell and look.
    .ask = Do you smell fuel, or see smoke?
row-trouble-engine-crank-key = Put the gear in P. Put your foot on the brake. Hold the key close to the dash. Try once.
    .ask = Does it start?
row-trouble-engine-crank-turns = Think of the sound it made.
    .ask = Did the starter turn the engine fast?
row-trouble-engine-crank-boost = Hold the boost switch and turn the key, { $limit_boost_crank } at most. Rest { $limit_boost_rest }. Three tries. The boost switch is { $place_boost_switch }.
    .ask = Does it start?
row-trouble-engine-crank-jump-pack = The jump pack is { $place_jump_pack }. It goes on the marked posts. They are { $place_jump_posts }. Try three times. Rest { $limit_boost_rest } after each try.
    .ask = Does it start?
row-trouble-engine-crank-gauge = Read the fuel gauge.
    .ask = Does it show more than empty?
row-trouble-engine-crank-add-fuel = Add { $limit_fuel_add } of the right fuel: { $engine_grade }. Turn the key on for { $limit_fuel_key }, then off. Do that three times. Then start.
    .ask = Does it start?
row-trouble-engine-crank-dash = Read the dash.
    .ask = Does it say that the exhaust fluid is empty, or that it will not restart?
row-trouble-engine-crank-fluid = Pour { $limit_fluid_add } of exhaust fluid in at the blue cap. It is { $place_fluid_cap }. Turn the key on for { $limit_fluid_key }. Start.
    .ask = Does it start?
row-trouble-engine-crank-charge-first = The house battery is low. Charge it for about { $limit_aux_charge }: plug into a post, or run the generator outdoors. Then hold the boost switch and try once more.
    .ask = Does it start?
