# Guide: the fridge
guide-trouble-fridge-warm = Fridge is warm
    .stop = { $fridge_kind ->
        [absorption] ammonia or gas smell, yellow stain at the vent, no cold after { $limit_fridge_cool }
       *[other] a sharp or burnt smell, smoke, no cold after { $limit_fridge_cool }
    }
    .find = fridge, refrigerator, warm, not cold, food, spoiled, ammonia, clicks, red light, freezer

caution-trouble-fridge-warm-h1 = A sharp ammonia smell means that the fridge leaks. Gas can leak too.
    .title = Ammonia or gas
    .harm = Ammonia can harm your lungs. Gas can explode.
    .avoid = Get everyone out. Call { $phone_road } from outside.
caution-trouble-fridge-warm-h2 = Food has been above { $limit_food_warm } for { $limit_food_time }.
    .title = Food too warm
    .harm = It can make you ill.
    .avoid = Throw it out.

row-trouble-fridge-warm-smell = Smell the air at the fridge.
    .ask = { $fridge_kind ->
        [absorption] Do you smell ammonia or gas?
       *[other] Do you smell something sharp or burnt, or see smoke?
    }
row-trouble-fridge-warm-panel = Look at the propane valve and at the fridge panel. The valve is { $place_lp_valve }.
    .ask = Is the panel on AUTO, and is the valve open or { $limit_mains } power on?
row-trouble-fridge-warm-auto = Open the valve slowly. Set the panel to AUTO. Keep the door shut. Wait { $limit_fridge_wait }.
    .ask = Is it colder?
row-trouble-fridge-warm-level = Look at the bubble level.
    .ask = Is it within { $fridge_level_length } nose to tail and { $fridge_level_side } side to side?
row-trouble-fridge-warm-level-up = Level the unit. Keep the door shut. Wait { $limit_fridge_wait }.
    .ask = Is it colder?
row-trouble-fridge-warm-power = Try an outlet with a phone charger.
    .ask = Do the outlets have { $limit_mains } power?
row-trouble-fridge-warm-on-power = Let the fridge run on this power, with the door shut. It can take { $limit_fridge_cool }.
    .ask = Is it cold?
row-trouble-fridge-warm-burner = Light one burner of the cooktop. Look at the flame. Turn it off.
    .ask = Was the flame strong?
row-trouble-fridge-warm-relight = Turn the fridge off for { $limit_fridge_rest }, then on. Once. Keep the door shut. It can take { $limit_fridge_cool }. Above { $limit_fridge_flame_height } the flame may go out. Then find { $limit_mains } power or go lower.
    .ask = Is it cold?
row-trouble-fridge-warm-percent = { $house_chemistry ->
        [lithium] Read the battery percent.
       *[other] Read the house volts, with everything off.
    }
    .ask = { $house_chemistry ->
        [lithium] Is it above { $limit_fridge_percent }?
       *[other] Are they above { $house_low }?
    }
row-trouble-fridge-warm-charge = Charge the battery: drive or plug in for { $limit_fridge_charge }.
    .ask = Does the fridge hum?
row-trouble-fridge-warm-air = Set the dial to the middle. Clear the grille. Wipe the door seal. Make space between the food. Wait { $limit_fridge_check }.
    .ask = Is it colder?
