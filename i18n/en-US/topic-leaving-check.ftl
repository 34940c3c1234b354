# Leaving check
topic-leaving-check = Leaving check
why-leaving-check = Most damage on the first mile could be seen before the gate.

step-leaving-check = Leaving check
show-leaving-check-round = Walk once around the unit together. Nothing moves yet.
show-leaving-check-look = Let the renter check each thing on the list.
show-leaving-check-read = Last, read the dials together.
know-leaving-check-first = Drive off only when every line is right.
know-leaving-check-each-time = Do the same check before every drive.

step-leaving-check-loop = Loop of the yard
show-leaving-check-loop-clear = Everyone outside stands well clear, in sight of the driver.
show-leaving-check-loop-turn = Each driver turns away from the cone. The others watch the rear corner swing.
show-leaving-check-loop-stop = Each driver stops once from { $limit_yard_stop }.
show-leaving-check-loop-back = Each driver backs up once, with a helper.
know-leaving-check-loop-room = Feel how much room it takes to stop.
know-leaving-check-loop-swing = The rear corner swings out when you turn. Turn late and wide.
