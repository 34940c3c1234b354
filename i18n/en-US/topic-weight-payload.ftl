# Weight and payload
topic-weight-payload = Weight and payload
why-weight-payload = Too much weight wears out tires and brakes. Small units run out of payload first.

step-weight-payload-load = What you may load
show-weight-payload-load-sum = Go through the figure with this party. The unit carries { $weight_occc } of people, water, kit and bags.
show-weight-payload-load-usual = A person counts { $people_weight }, if the party gives no weight. The loaned kit is { $weight_kit }.
show-weight-payload-load-sum-trailer = Go through the figure with this party. The trailer carries { $weight_ccc } of water, kit and bags. Nobody rides in it.
show-weight-payload-load-most = Say the most that it may weigh, all in: { $weight_gvwr }.
show-weight-payload-load-low = Heavy things go low, with both sides even.
show-weight-payload-load-water = If it is too much, let some water out.
know-weight-payload-load-left = The figure on this screen says what is left for bags and food. All that it lists is taken off already.
know-weight-payload-load-low = Put heavy things low.
know-weight-payload-load-tanks = Do not carry full fresh and full waste tanks at once.

step-weight-payload-tongue = Weight on the tongue
show-weight-payload-tongue-ahead = About { $limit_ahead_of_axles } of the load goes ahead of the axles. Let the renter point at the bay or cabinet for it.
show-weight-payload-tongue-tongue = The tongue then carries { $limit_tongue_least } to { $limit_tongue_most } of the loaded trailer.
show-weight-payload-tongue-most = The hitch may carry { $hitch_tongue_most } on the tongue, and no more.
know-weight-payload-tongue-front = Put the heavy things in front of the axles.
know-weight-payload-tongue-tail = Bikes on the rear count twice: they add weight, and they lift the tongue.

caution-weight-payload-1 = Too much weight can burst a tire or weaken the brakes.
    .title = Too much weight
    .harm = The crash can kill people.
    .avoid = Stay within the figure of what you may still load. Leave things behind if you must.
caution-weight-payload-2 = A trailer that is heavy at the tail can sway and flip.
    .title = Tail-heavy trailer
    .harm = The crash can kill people.
    .avoid = Put the heavy things in front of its axles.

question-weight-payload-1 = What about bikes on the back?
    .answer = They count too. They also hang behind the axle, where weight does most harm.
