# Water pump
topic-water-pump = Water pump
why-water-pump = A pump left on with a loose tap empties the tank onto the floor while you hike.
step-water-pump = Water pump and tank levels
show-water-pump-listen = Let the renter switch it on, open a tap and hear it run.
show-water-pump-stop = Close the tap and hear it stop.
show-water-pump-off = Switch it off again. Off is right for leaving, driving and city water.
show-water-pump-levels = Press for the tank levels. Read them together.
know-water-pump-tank = The pump gives water from the tank.
know-water-pump-stops = It should stop a few seconds after you close the tap.
know-water-pump-off = Turn it off when you drive or go out.

caution-water-pump-1 = A pump that keeps running means an empty tank or a leak.
    .title = Pump runs on
    .harm = A leak can flood the floor.
    .avoid = Switch the pump off. Then look for the leak.

question-water-pump-1 = Why does it click once at night?
    .answer = Something drips a little. Check the taps and the toilet valve.
