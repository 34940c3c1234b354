# Guide: the slide-out
guide-trouble-slide = Slide-out will not move or stops half way
    .stop = it is crooked, it grinds loudly, someone was caught, water in the wall
    .find = slide, slide-out, room, stuck, half way, crooked, grinds, jammed, crank
    .note = Never crank it without the helper. After a close by hand the slide-out stays shut, and the lot decides. Do not drive or tow with any edge standing out.

caution-trouble-slide-h1 = A slide-out can start again without warning.
    .title = Moving room
    .harm = It can crush and kill a person.
    .avoid = Keep hands out. Have a second adult watch each try.

row-trouble-slide-caught = Let go of the switch.
    .ask = Is anyone caught?
row-trouble-slide-other-way = Run it the other way at once.
    .ask = Is the person free and unhurt?
    .no = Call { $phone_emergency } now.
row-trouble-slide-crooked = Look along both edges.
    .ask = Is it crooked, or did it grind?
row-trouble-slide-volts = Read the house volts.
    .ask = Are they above { $house_low }?
row-trouble-slide-charge = Charge for { $limit_slide_charge }, from a post or from a running engine outdoors. Then try once.
    .ask = Does it move fully?
row-trouble-slide-block = Look inside, outside and at its roof from the ground. Look for a drawer, a shoe, a chair, a branch, ice or the travel lock.
    .ask = Did you find and clear something?
row-trouble-slide-try = Try once. Hold the switch until it stops.
    .ask = Does it move fully?
row-trouble-slide-fuse = Put in a slide-out fuse with the same number and color, once. The fuses are { $place_spare_fuses }. Then try once.
    .ask = Does it move fully?
row-trouble-slide-crank = Call { $phone_road } and stay on the phone with the helper. Turn the hand crank evenly. Have both sides watched.
    .ask = Is it in and flush all around?
