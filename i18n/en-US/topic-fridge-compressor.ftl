# Compressor fridge
topic-fridge-compressor = Fridge on the battery
why-fridge-compressor = It works on any slope and cools in an hour or two. But it lives off the battery, day and night.

step-fridge-compressor = Fridge on the battery
show-fridge-compressor-dial = Dial at the middle. Listen for the soft hum. Check that the vents are clear.
show-fridge-compressor-drive = It stays on while you drive.
show-fridge-compressor-space = It holds { $fridge_space }. At the middle setting it takes { $fridge_average } from the battery.
know-fridge-compressor-on = Leave it on all the time, driving too.
know-fridge-compressor-grille = Keep the grille clear.
know-fridge-compressor-middle = The middle setting is enough.

caution-fridge-compressor-1 = Colder settings use far more of the battery.
    .title = Set too cold
    .harm = The battery runs flat.
    .avoid = Keep the dial at the middle.
caution-fridge-compressor-2 = Food has been above { $limit_food_warm } for over { $limit_food_time }.
    .title = Food too warm
    .harm = It can make you ill.
    .avoid = Throw it out.

question-fridge-compressor-1 = It cut out. Why?
    .answer = The battery is low. Charge it.
