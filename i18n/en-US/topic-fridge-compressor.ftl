# Compressor fridge
topic-fridge-compressor = Electric fridge
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

step-fridge-compressor-house = Household fridge
show-fridge-compressor-house-power = It is a fridge as in a house. It runs on { $limit_mains } and on nothing else.
show-fridge-compressor-house-inverter = Off the post, the inverter feeds it from the battery. Its switch is { $place_inverter_panel }.
show-fridge-compressor-house-generator = The generator feeds it too, while it runs.
show-fridge-compressor-house-doors = Lock the doors of the fridge for the road. Let the renter do it.
show-fridge-compressor-house-space = It holds { $fridge_space }.
know-fridge-compressor-house-on = Leave the inverter on while food is in the fridge.
know-fridge-compressor-house-off = With no { $limit_mains } power it does not cool.
know-fridge-compressor-house-shut = Keep its doors shut. Lock them before you drive.
know-fridge-compressor-house-battery = It lives off the battery day and night. Look at the charge morning and evening.

caution-fridge-compressor-house-1 = Food has been above { $limit_food_warm } for over { $limit_food_time }.
    .title = Food too warm
    .harm = It can make you ill.
    .avoid = Throw it out.
caution-fridge-compressor-house-2 = A household fridge on the inverter empties the battery fast.
    .title = Battery runs flat
    .harm = The fridge goes warm. The battery wears out early.
    .avoid = Charge the battery before it is low.

question-fridge-compressor-1 = It cut out. Why?
    .answer = The battery is low. Charge it.
