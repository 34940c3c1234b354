# expect: message.trip-figure-in-caution @^caution-kite-1
# expect: message.hole @^caution-kite-2

topic-kite = Kite
step-kite = Flying the kite
show-kite-string = Show the string.
show-kite-tail = Show the tail.
show-kite-reel = Show the reel.
# A line may say a figure of the trip.
know-kite-wind = Fresh water lasts { $fresh_days }.
know-kite-hold = Two hands hold it.
know-kite-wires = Stay away from wires.
step-kite-stow = Stowing the kite
show-kite-stow-roll = Roll it up.
show-kite-stow-bag = Put it in its bag.
know-kite-stow-dry = Dry it first.
know-kite-stow-place = It is kept { $place_awning }.
caution-kite-1 = Fresh water lasts { $fresh_days }. A kite can touch a wire.
    .title = Wires
    .harm = The shock can kill.
    .avoid = Fly it far from any wire.
caution-kite-2 = Wind tears the kite. A return costs { $return_total }.
    .title = Strong wind
    .harm = The cloth is lost.
    .avoid = Take it down in time.
