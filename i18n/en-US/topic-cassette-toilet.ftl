# Cassette toilet
topic-cassette-toilet = Toilet cassette
why-cassette-toilet = The tank is small. It fills in one to three days. It is heavy, and unpleasant when overfull.

step-cassette-toilet = Emptying the toilet cassette
show-cassette-toilet-pull = Let the renter close the blade and walk to the outside door. It is { $place_cassette_door }. Unlatch, pull level, stand it up.
show-cassette-toilet-pour = Carry or roll it to a chemical disposal point, or to a toilet that allows it. Turn the spout. Hold the air button while you pour.
show-cassette-toilet-rinse = Rinse twice with a little water. Then one sachet and { $limit_cassette_water } of water. Cap it and slide it back until it clicks.
know-cassette-toilet-often = It holds { $waste_cassette }. Empty it when the lamp shows, at about { $waste_cassette_lamp }, or each day with four people.
know-cassette-toilet-blade = Close the blade before you pull it out.
know-cassette-toilet-where = Empty it only at a disposal point or a toilet that allows it.

caution-cassette-toilet-1 = A full cassette weighs about { $waste_cassette_full }.
    .title = Heavy cassette
    .harm = It can strain your back.
    .avoid = Roll it. Lift with your legs.
caution-cassette-toilet-2 = Waste and toilet chemical can splash.
    .title = Splashing chemical
    .harm = They can harm your eyes and skin badly.
    .avoid = Wear gloves. Hold the air button and pour slowly.
caution-cassette-toilet-3 = The cassette is pulled out with the blade open.
    .title = Blade left open
    .harm = The seal breaks.
    .avoid = Close the blade first.

question-cassette-toilet-1 = Where does the sink water go?
    .answer = Into a separate grey tank. Its valve is { $place_sewer_valves }.
