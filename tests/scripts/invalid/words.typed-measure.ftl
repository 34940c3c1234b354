# expect: words.typed-measure 19:21

topic-kite = Kite
step-kite = Flying the kite
show-kite-string = Show the string.
show-kite-tail = Show the tail.
show-kite-reel = Show the reel.
know-kite-wind = Take it down when the awning comes in, at { $awning_wind_limit }.
know-kite-hold = Two hands hold it.
know-kite-wires = Stay away from wires.
step-kite-stow = Stowing the kite
show-kite-stow-roll = Roll it up.
show-kite-stow-bag = Put it in its bag.
know-kite-stow-dry = Dry it first.
know-kite-stow-place = It is kept { $place_awning }.
caution-kite-1 = A kite can touch a wire.
    .title = Wires
    .harm = The shock can kill.
    .avoid = Fly it 10 ft from any wire.
caution-kite-2 = Wind tears the kite.
    .title = Strong wind
    .harm = The cloth is lost.
    .avoid = Take it down in time.
