# Slide-out room
topic-slide-out = Slide-out room
why-slide-out = It crushes people, feet, cabinets and drawers. It can topple a unit that is not level. It needs a charged battery.

step-slide-out-clear = Space for the slide-out
show-slide-out-clear-space = Walk around the slide-out. It is { $place_slide }.
show-slide-out-clear-reach = It reaches out this far: { $slide_out_reach }. Leave { $limit_slide_clear } more beyond that.
show-slide-out-clear-stand = Before it moves, the unit is chocked and level, with the stabilizers down.
show-slide-out-clear-battery = The battery must be above { $house_low } at rest.
show-slide-out-clear-roof = Look at its roof from the ground. If you can reach, sweep leaves off with a soft broom.
know-slide-out-clear-outside = Walk around outside before you move it.
know-slide-out-clear-roof = Clear leaves and ice from its roof, from the ground, before you bring it in.
know-slide-out-clear-shut = Before you drive, look from outside. It must be fully in.

step-slide-out-switch = Moving the slide-out
show-slide-out-switch-inside = Look inside: drawers shut, chair and shoes away, no one near.
show-slide-out-switch-out = Let the renter hold the switch without a stop until the room is fully out. Then let go.
show-slide-out-switch-in = To bring it in, check inside again and hold the switch for IN.
show-slide-out-switch-seal = Go outside and check that the seal is shut all around.
know-slide-out-switch-look = Look outside and inside before you move it.
know-slide-out-switch-children = Keep children and hands away.
know-slide-out-switch-hold = Hold the switch until the room stops by itself.

caution-slide-out-1 = A moving slide-out can crush a person.
    .title = Moving room
    .harm = It does not stop by itself for a body. It can kill.
    .avoid = Have a second adult watch. Let go of the switch if someone comes near.
caution-slide-out-2 = A chair, a shoe or an open drawer is in the way.
    .title = Something in the way
    .harm = It tears the floor or breaks the drawer.
    .avoid = Clear the space before every move.
caution-slide-out-3 = Leaves or ice lie on the roof of the slide-out.
    .title = Leaves on its roof
    .harm = They tear the seal, and rain gets in.
    .avoid = Clear them off before you bring it in.
caution-slide-out-4 = A slide-out that is still out on the road can hit people and vehicles.
    .title = Driving with it out
    .harm = It can hurt them badly.
    .avoid = Check from outside that it is fully in.

question-slide-out-1 = It stopped half way. What now?
    .answer = Let go of the switch. Then follow the guide for a slide-out that will not move.
