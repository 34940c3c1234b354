# Absorption fridge
topic-fridge-absorption = Fridge on propane or shore power
why-fridge-absorption = It works only near level. It is slow, it stays warm if packed tight, and its flame is poor above about { $limit_fridge_flame_height }.
step-fridge-absorption = Fridge on propane or shore power
show-fridge-absorption-auto = Set the panel to AUTO. It takes { $limit_mains } if there is any, else propane.
show-fridge-absorption-level = Park near level: within { $fridge_level_length } nose to tail and { $fridge_level_side } side to side.
show-fridge-absorption-sides = The fridge stands on a side wall. That is why the tighter limit is nose to tail.
show-fridge-absorption-door = Latch the door. Food goes in cold, with space around it.
show-fridge-absorption-drive = On the road the propane valve is shut and the fridge is off. With the door shut it stays cold for { $limit_fridge_shut }.
know-fridge-absorption-auto = Leave it on AUTO.
know-fridge-absorption-level = Park near level.
know-fridge-absorption-shut = Keep the door shut and latched when you drive.
know-fridge-absorption-slow = From warm, it takes up to { $limit_fridge_cool } to get cold.

caution-fridge-absorption-1 = The fridge runs on a slope, even for { $limit_fridge_slope }.
    .title = Running on a slope
    .harm = It can be ruined.
    .avoid = Level the unit within { $fridge_level_length } nose to tail and { $fridge_level_side } side to side.
caution-fridge-absorption-2 = Food has been above { $limit_food_warm } for over { $limit_food_time }.
    .title = Food too warm
    .harm = It can make you ill.
    .avoid = Throw it out.
caution-fridge-absorption-3 = A sharp ammonia smell means that the fridge leaks.
    .title = Ammonia leak
    .harm = It can hurt your lungs badly, or burn.
    .avoid = Get everyone out. Leave the door open. Call { $phone_road } from outside.

question-fridge-absorption-1 = How long does it take to get cold?
    .answer = From warm, up to { $limit_fridge_cool }.
question-fridge-absorption-2 = It clicks, and a red light comes on. Why?
    .answer = The propane valve is shut, or the air is thin. Use the guide for a warm fridge.
