# Wheel nuts
topic-wheel-nut-check = Wheel nuts
why-wheel-nut-check = A wheel that was just fitted settles, and its nuts can loosen. Trailer wheels come off most.

step-wheel-nut-check = Wheel nuts
show-wheel-nut-check-pairs = Show the pointers on the nuts. They stand in pairs, tip to tip.
show-wheel-nut-check-walk = Let the renter look at every wheel.
show-wheel-nut-check-stop = Say what means stop: streaks of rust, a bright ring, a missing nut.
show-wheel-nut-check-was-off = If a wheel was off before this rental, say so. Its nuts are checked again after { $wheels_recheck }.
know-wheel-nut-check-morning = Look at the pointers each morning.
know-wheel-nut-check-morning-nuts = Look at every wheel nut each morning.
know-wheel-nut-check-turned = If one has turned, do not drive.
know-wheel-nut-check-recheck = After any wheel change, have the nuts checked after { $wheels_recheck }.

caution-wheel-nut-check-1 = A loose wheel can come off as you drive.
    .title = Wheel comes off
    .harm = It can kill other people.
    .avoid = Stop at once if you feel a wobble or see that a nut has turned. Call { $phone_road }.
caution-wheel-nut-check-2 = A nut that is too tight or too loose can break its bolt.
    .title = Wrong tightness
    .harm = The wheel can come off and kill.
    .avoid = Let a shop do it with a torque wrench, at { $wheels_torque }.

question-wheel-nut-check-1 = May I tighten them?
    .answer = No. Call { $phone_road }. A wrench in the loaned kit is for road help. A shop then sets the torque.
