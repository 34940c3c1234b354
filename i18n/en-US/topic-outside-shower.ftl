# Outside shower
topic-outside-shower = Outside shower
why-outside-shower = Left with its taps open, it leaks in the box and drains the tank. It also freezes first.

step-outside-shower = Outside shower
show-outside-shower-where = Open the box of the outside shower. It is { $place_outside_shower }.
show-outside-shower-taps = Turn both taps on. Squeeze the trigger.
show-outside-shower-shut = Turn both taps off. Squeeze the trigger again to let the pressure out.
show-outside-shower-ground = The water runs to the ground. Use it only where the rules allow that.
know-outside-shower-taps = Turn off both taps, not only the shower head.
know-outside-shower-drain = Squeeze the trigger to let the last water out.
know-outside-shower-ground = Use it only where water may run on the ground.

caution-outside-shower-1 = The first water may be very hot.
    .title = Hot first water
    .harm = It can scald people.
    .avoid = Aim it away from people first.
caution-outside-shower-2 = Taps left open leak and freeze in the box.
    .title = Taps left open
    .harm = The tank runs dry, and the ice breaks the taps.
    .avoid = Close both taps and drain the hose.

question-outside-shower-1 = May I use soap?
    .answer = Not on the ground.
