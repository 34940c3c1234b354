# Guide: toilet and waste tanks
guide-trouble-toilet-tank = Toilet or waste tank is full, smells or will not drain
    .stop = { $fitted_waste_cassette ->
        [yes] it rises in the bowl and does not stop, it leaks below, the cassette will not move
       *[no] it rises in the bowl and does not stop, it leaks below, a valve will not move
    }
    .find = toilet, full, smell, stink, sewage, waste, tank, drain, clogged, blocked, dump, cassette, flush, sensor, lights, rotten egg

caution-trouble-toilet-tank-h1 = Sewage is full of germs.
    .title = Sewage
    .harm = It can make you badly ill.
    .avoid = Wear gloves. Keep it off your face. Wash with soap.

row-trouble-toilet-tank-smell = { $fitted_propane ->
        [yes] Look and smell. A smell of rotten eggs can be a gas leak, not the tank.
       *[no] Look and smell.
    }
    .ask = Is it only a smell, with nothing full?
    .no = { $fitted_propane ->
        [yes] If it also smells of rotten eggs, get everyone out first. Then call { $phone_road } from outside.
       *[no] Then look at the cassette.
    }
row-trouble-toilet-tank-drains = Put water in the bowl. Pour a cup of water into each drain. Put the lid down. Turn the fan on. Wait { $limit_smell_wait }.
    .ask = Is it better?
row-trouble-toilet-tank-bowl = Look in the bowl.
    .ask = Is the level rising?
row-trouble-toilet-tank-water-off = Shut the tank-rinse tap now. Shut the city tap. Turn the pump off.
    .ask = Has it stopped?
row-trouble-toilet-tank-dump-station = Look where you are.
    .ask = Are you at a dump station, with the hose on the unit and in the sewer hole?
    .no = Do not use the toilet. Drive to a dump station. Then start this guide again.
row-trouble-toilet-tank-open-black = Put gloves on. Open the black valve. The valves are { $place_sewer_valves }.
    .ask = Does it flow?
    .no = If the valve will not move, do not force it. Stop and call { $phone_road }.
row-trouble-toilet-tank-clear = Wait until the clear elbow shows clear water. Close black. Open grey next. The tank lights can be dirty and wrong. Trust the elbow.
    .ask = Did the elbow run clear?
row-trouble-toilet-tank-soak = Close black. Pour water down the toilet slowly, { $limit_tank_add } at most. Stop if it rises. Drive a few miles or wait one night. Then dump again. Use no rods and no chemicals.
    .ask = Does it flow and run clear?
row-trouble-toilet-tank-cassette = Close the blade of the toilet. Pull the cassette out level. It is { $place_cassette_door }.
    .ask = Does it slide?
    .no = Do not force it. It may be too full.
row-trouble-toilet-tank-empty = Empty it at a disposal point. Rinse it. Add a sachet and water. Slide it in.
    .ask = Is the lamp off, and does the flush work?
row-trouble-toilet-tank-rotten-eggs = Smell again. Touch no switch.
    .ask = Does it smell of rotten eggs?
