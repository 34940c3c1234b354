# Cooktop and oven
topic-cooktop-oven = Cooking
why-cooktop-oven = Fires, poison gas from burners used for heat, and broken glass lids.
step-cooktop-oven = Cooking
show-cooktop-oven-air = Lid fully up. Vent and window open. Fan on.
show-cooktop-oven-light = Push the knob in, turn it, press the spark. Let the renter light one burner.
show-cooktop-oven-no-flame = No flame in { $limit_burner_try }: knob off. Wait a minute with the window open, then try again.
show-cooktop-oven-oven = Oven: hold the knob in while you light it. Count to ten. Then set the heat.
show-cooktop-oven-lid = Close the lid over the burners only when they are cold.
show-cooktop-oven-pan = Use a magnetic pan. Put it on the zone, then set the power. Let the renter do it.
show-cooktop-oven-glass = The glass stays hot after use. Show the hot light.
know-cooktop-oven-vent = Open a vent and a window when you cook.
know-cooktop-oven-stay = Stay with the pan.
know-cooktop-oven-no-heat = Never use the burners to warm the room. Use the heater.
know-cooktop-oven-iron = Only pans that hold a magnet work.

caution-cooktop-oven-1 = Burners used to heat the room fill it with carbon monoxide, a gas you cannot see or smell.
    .title = Burners used as a heater
    .harm = It will kill the people inside.
    .avoid = Turn the burners off after cooking. Use the heater for heat.
caution-cooktop-oven-2 = Grease or cloth near the heat can catch fire.
    .title = Cooking fire
    .harm = The fire can burn you badly.
    .avoid = Keep curtains and towels back. Stay while you cook.
caution-cooktop-oven-3 = The top or glass can stay hot for { $limit_cooktop_hot } after use.
    .title = Hot top
    .harm = It burns skin.
    .avoid = Keep children away.
caution-cooktop-oven-4 = A glass lid over a lit burner can shatter.
    .title = Glass lid
    .harm = The glass can cut you.
    .avoid = Lift it fully before you light. Close it only on a cold top.
caution-cooktop-oven-5 = The cooktop's field can make a pacemaker fail.
    .title = Pacemaker
    .harm = It can harm you badly.
    .avoid = With a pacemaker, stay { $limit_pacemaker_away } away and ask your doctor.

question-cooktop-oven-1 = { $cook_kind ->
        [propane] Why is a gas flame weak?
       *[other] { "" }
    }
    .answer = The propane is low, or its valve was opened too fast. Close the valve, wait a minute and open it slowly.
