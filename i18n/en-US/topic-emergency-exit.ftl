# Emergency exits
topic-emergency-exit = Emergency exits
why-emergency-exit = Red handles look like 'do not touch'. Children and guests do not know them.

step-emergency-exit = Emergency exits
show-emergency-exit-open-windows = Let the renter open each exit fully, then close it and latch it.
show-emergency-exit-open-doors = Let the renter open each exit fully from inside, the rear doors too. Then close it and latch it.
show-emergency-exit-bunk = Do the same at the bunk. The bunk exit is { $place_bunk_exit }.
show-emergency-exit-climb = Show how to climb out: push out, sit, legs first, belly to the wall, drop.
show-emergency-exit-below = Say how high the sill of this exit is: { $safety_sill }. Look at what is below it.
know-emergency-exit-list = The exits are: { $exits }.
know-emergency-exit-handle = Lift the red handle and push hard.
know-emergency-exit-feet-first = Go out feet first. Hang down before you let go.
know-emergency-exit-doors = Learn to open each door from inside, even in the dark.

caution-emergency-exit-1 = A blocked exit can trap you in a fire.
    .title = Blocked exit
    .harm = If you cannot get out, the fire can kill you.
    .avoid = Keep bags and bikes away from each exit, inside and outside.
caution-emergency-exit-2 = The sill is { $safety_sill } above the ground, and a jump can hurt you.
    .title = Drop from the window
    .harm = You can hurt an ankle.
    .avoid = Hang by your hands, then drop.
caution-emergency-exit-3 = A window that is not latched can let exhaust in or open on the road.
    .title = Window not latched
    .harm = Exhaust can kill.
    .avoid = Latch it before any engine starts.

question-emergency-exit-1 = May children open it for fun?
    .answer = Let them practice once with you. Then they leave it alone.
