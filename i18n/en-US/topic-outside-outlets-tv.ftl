# Outlet and TV point outside
topic-outside-outlets-tv = Outside outlet and TV point
why-outside-outlets-tv = A wet outlet trips the ground-fault outlet, and people think that the whole unit is dead.

step-outside-outlets-tv = Outside outlet
show-outside-outlets-tv-flap = Let the renter lift the flap. Show the { $limit_mains } outlet.
show-outside-outlets-tv-tv = Show the TV socket and the TV bracket.
show-outside-outlets-tv-power-generator = Say when it has power: from the shore cord or from the generator.
show-outside-outlets-tv-power-shore = Say when it has power: only from the shore cord.
show-outside-outlets-tv-close = Close the flap until it clicks.
know-outside-outlets-tv-power-generator = This outlet works only with shore power or the generator. Its breaker carries { $shore_branch }.
know-outside-outlets-tv-power-shore = This outlet works only with shore power. Its breaker carries { $shore_branch }.
know-outside-outlets-tv-cords = Use only cords that are made for outdoors.
know-outside-outlets-tv-flap = Shut the flap when you are done.

caution-outside-outlets-tv-1 = Water in a live outlet can shock you.
    .title = Water in the outlet
    .harm = The shock can kill.
    .avoid = Keep plugs off the ground. Do not use the outlet in rain.
caution-outside-outlets-tv-2 = A TV left on its bracket can fall on the road.
    .title = TV left outside
    .harm = It can hit someone and hurt them badly.
    .avoid = Bring the TV in before you drive.

question-outside-outlets-tv-1 = Why is there no power here when the lights work?
    .answer = Press reset on the ground-fault outlet, once. It is { $place_gfci }. If it trips again, leave it and call { $phone_road }.
