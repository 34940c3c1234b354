# Cassette toilet
topic-cassette-toilet = Toilet cassette
why-cassette-toilet = The tank is small. It fills in one to three days. It is heavy, and unpleasant when overfull.

step-cassette-toilet = Emptying the toilet cassette
show-cassette-toilet-blade = The blade inside the toilet must be closed first. Show the outside door: it is { $place_cassette_door }.
show-cassette-toilet-pull = Unlatch it, pull it out level, and stand it up.
show-cassette-toilet-pour = Take it to a chemical disposal point. Hold the air button while you pour.
show-cassette-toilet-rinse = Rinse it twice with a little water.
show-cassette-toilet-back = Add one sachet and { $limit_cassette_water } of water. Cap it and slide it in until it clicks.
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
caution-cassette-toilet-3 = A cassette that is pulled out with its blade open tears the seal.
    .title = Blade left open
    .harm = The cassette leaks, and you pay for it.
    .avoid = Close the blade first.

question-cassette-toilet-1 = Where does the sink water go?
    .answer = Into a separate grey tank. Its valve is { $place_sewer_valves }.
