# Leaving check
topic-leaving-check = Leaving check
step-leaving-check = Leaving check
why-leaving-check = Most damage on the first mile was visible before the gate.
show-leaving-check-round = Walk once around the unit together and look at each line.
show-leaving-check-read = Read the dials together.
show-leaving-check-loop = Let the driver do one loop of the yard, one stop and one backing move.
know-leaving-check-each-time = Do the same look before every drive.
know-leaving-check-swing = The rear corner swings out when you turn. Turn late and wide.
