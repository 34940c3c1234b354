# Leveling, jacks and chocks
topic-leveling-chocks = Leveling and chocks
why-leveling-chocks = People sleep badly on a slope, and some fridges need level ground. Trailers without chocks roll.

step-leveling-chocks = { $fitted_wheels_chocks ->
        [yes] Leveling and chocks
       *[no] Leveling
    }
show-leveling-chocks-bubble = Look at the bubble level together. Let the renter say which side is low.
show-leveling-chocks-drive = Say how to drive onto the blocks: slowly, with the helper well to the side.
show-leveling-chocks-park = Say what comes then: gear in P, parking brake on.
show-leveling-chocks-chock = Set the chocks too, in front of and behind a wheel.
show-leveling-chocks-side = Pull the low side onto blocks with the tow vehicle.
show-leveling-chocks-unhitch = Chock in front of and behind the wheels, on both sides. Only then unhitch.
show-leveling-chocks-front = Level the front with the tongue jack. Put the stabilizers down last, with the loaned crank.
show-leveling-chocks-shaking = Stabilizers stop the shaking. They do not lift: all tires stay on the ground or on blocks.
know-leveling-chocks-order = Level side to side first, then front to back.
know-leveling-chocks-brake = Put the gear in P, set the parking brake and switch the engine off before you step out.
know-leveling-chocks-before-unhitch = Set the chocks before you unhitch.
know-leveling-chocks-shaking = Stabilizers stop the shaking. They do not lift.
know-leveling-chocks-fridge = The fridge allows a slope of { $fridge_level_length } nose to tail and { $fridge_level_side } side to side.

caution-leveling-chocks-1 = A trailer without chocks will roll when you unhitch it.
    .title = Trailer rolls away
    .harm = It will kill whoever is in its way.
    .avoid = Chock in front of and behind the wheels on both sides before you unhitch.
caution-leveling-chocks-2 = A unit on a jack will drop.
    .title = Unit on a jack
    .harm = It will crush and kill anyone below it.
    .avoid = Stand clear of it. Never put any part of you under it.
caution-leveling-chocks-3 = A trailer held up by its stabilizers can fall.
    .title = Trailer can fall
    .harm = It can crush you badly.
    .avoid = Use them only to stop the shaking.

question-leveling-chocks-1 = How level is level?
    .answer = The bubble is inside the rings, and the bed feels flat.
