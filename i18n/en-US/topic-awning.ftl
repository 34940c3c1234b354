# Awning
topic-awning = Awning
why-awning = An awning torn by wind is the most common large bill, and insurance often leaves it out.

step-awning = Awning
show-awning-look = Check the wind and look for branches.
show-awning-open-switch = Let the renter open it and close it once. The switch is { $place_awning_switch }.
show-awning-open-crank = Let the renter crank it open and closed once.
show-awning-legs = Set both legs before you let go of the crank. Then stake them.
show-awning-tilt = Tilt one end lower for rain.
show-awning-closed = From the ground, show how it looks when it is closed and locked.
know-awning-close = Close it when you leave, when you sleep, and when the wind reaches { $awning_wind_limit }.
know-awning-tilt = Tip one end down in rain.
know-awning-stay = Stay beside it while it moves.
know-awning-gust = If a gust lifts it, let go and stand clear.

caution-awning-1 = A gust can rip off the awning.
    .title = Awning in the wind
    .harm = The awning is torn and the roof edge breaks. You pay for both.
    .avoid = Close it at { $awning_wind_limit }, and each time you leave it.
caution-awning-2 = An awning that opens on the road can cause a crash.
    .title = Awning opens on the road
    .harm = The crash can hurt people badly.
    .avoid = Check that it is shut and locked before every drive.
caution-awning-3 = A flame or grill near the awning can set it alight.
    .title = Flame near the awning
    .harm = The fire can burn people badly.
    .avoid = Keep flames { $limit_flames_away } away.
caution-awning-4 = The awning arms fold and swing as they move.
    .title = Moving awning arms
    .harm = They can pinch fingers or bump a head.
    .avoid = Keep clear while the awning moves.

question-awning-1 = How do I know how strong the wind is?
    .answer = If small flags stand straight out and dust lifts, the wind is too strong.
question-awning-2 = Rain has filled it. Now what?
    .answer = Push up the low corner from below with a soft broom, slowly. Do not cut it or pull it.
