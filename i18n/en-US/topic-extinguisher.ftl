# Fire extinguisher
topic-extinguisher = Fire extinguisher
why-extinguisher = There is powder for a few seconds only. Most people should simply leave.

step-extinguisher = Fire extinguisher
show-extinguisher-lift = Let the renter lift it off and put it back.
show-extinguisher-count = { $safety_extinguishers_n ->
    [one] This unit has one, rated { $safety_extinguisher_rating }.
   *[other] This unit has { $safety_extinguishers }, rated { $safety_extinguisher_rating }. Point out each one.
}
show-extinguisher-check = Check it: needle in the green, pin in, date good.
show-extinguisher-say = Say it: pull the pin, aim low, squeeze, sweep. The exit is behind you.
know-extinguisher-where = The extinguisher is { $place_extinguisher }.
know-extinguisher-out-first = Get everyone out first.
know-extinguisher-small = Use it only on a small fire, with the exit behind you.
know-extinguisher-leave = If the fire is not out in { $limit_powder }, leave.

caution-extinguisher-1 = Smoke and flame can trap you.
    .title = Trapped by a fire
    .harm = Smoke can kill before you reach the door.
    .avoid = Keep the exit at your back. Leave if the fire is bigger than a waste basket.
caution-extinguisher-2 = Water thrown on burning oil can explode into flame.
    .title = Burning oil
    .harm = It can burn you badly.
    .avoid = Put a lid on the pan and turn off the heat. Do not move the pan.
caution-extinguisher-3 = A used extinguisher can fail in the next fire.
    .title = Already used
    .harm = A fire that you cannot put out can kill.
    .avoid = Tell the lot, even after one short burst.

question-extinguisher-1 = What if a lithium battery burns?
    .answer = Leave at once and call { $phone_emergency }. Do not fight it.
question-extinguisher-2 = { $fitted_propane ->
        [yes] What if a gas leak burns?
       *[no] { "" }
    }
    .answer = Let it burn. Shut the valve if that is safe. Get away and call { $phone_emergency }.
