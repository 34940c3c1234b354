# Guide: no power at the outlets
guide-trouble-no-120v = No power at the outlets
    .stop = tingle, plug hot or black or smelly, a breaker or the ground-fault outlet trips twice, the protector shows a fault
    .find = no power, electricity, outlet, plug, socket, dead, microwave, air conditioner, breaker, tripped, GFCI, reset, post, pedestal, shore, hookup, tingle, shock
    .note = { $fitted_inverter ->
        [yes] Outlets need { $limit_mains } from a post or from the inverter. With neither they are dead, and that is normal. Lights and pump run on the { $limit_house_circuit } battery.
       *[no] Outlets need { $limit_mains } from a post or from another supply. With none they are dead, and that is normal. Lights and pump run on the { $limit_house_circuit } battery.
    }

caution-trouble-no-120v-h1 = The unit or a wet plug can be live.
    .title = Live unit
    .harm = The shock will kill you.
    .avoid = If you feel a tingle, let go and stand clear.
caution-trouble-no-120v-h2 = A plug that is hot or black is close to burning.
    .title = Hot plug
    .harm = It can burn you and start a fire.
    .avoid = Do not touch it. Switch off the post.

row-trouble-no-120v-tingle = Look. Touch nothing yet.
    .ask = Did you feel a tingle, or is a plug hot, black, smelly or wet?
    .yes = Switch the post breaker off if you can do it without touching the unit. People inside stay inside until it is off. If there is smoke or fire, they jump clear and touch no metal.
row-trouble-no-120v-outlets = Try outlets in two rooms.
    .ask = Does any outlet work?
row-trouble-no-120v-plugged = Look at the cord.
    .ask = Is the unit plugged into a post or an outlet?
    .no = Without a post, dead outlets can be normal.
row-trouble-no-120v-sites = Look around.
    .ask = Are other sites dark too?
    .yes = The campground has no power. Wait.
row-trouble-no-120v-post-breaker = Go to the post. Push its breaker fully off, then on. Once.
    .ask = Do you have power now?
row-trouble-no-120v-protector = Wait { $limit_surge_delay }. Look at the light of the protector.
    .ask = Does it show its good light?
    .no = Switch the post breaker off. Unplug. Ask the campground for another site. Do not plug in without the protector.
row-trouble-no-120v-cord = Switch the post breaker off. Push the cord all the way in at both ends. If it is a twist plug, twist it. Switch the breaker on. Wait { $limit_surge_delay }.
    .ask = Do you have power now?
row-trouble-no-120v-ground-fault = Press reset on the ground-fault outlet, once. It is { $place_gfci }.
    .ask = Are all outlets back?
row-trouble-no-120v-breakers = Switch big things off. Find the breakers. They are { $place_breaker_panel }. Push each tripped one fully off, then on. Once.
    .ask = Do they hold?
    .no = Leave a breaker off when it trips again. Do not hold it on.
row-trouble-no-120v-loads = Switch things on one at a time. Leave off what was too much.
    .ask = Does the power stay?
row-trouble-no-120v-generator = Run the generator. Look at the breaker on it. Switch it on. Wait { $limit_power_wait }.
    .ask = Do you have power now?
row-trouble-no-120v-inverter = { $house_chemistry ->
        [lithium] Read the battery percent. It must be above { $limit_inverter_percent }. Turn big things off. Turn the inverter off for { $limit_inverter_rest }, then on. Its switch is { $place_inverter_panel }.
       *[other] Read the house volts. They must be above { $house_low }. Turn big things off. Turn the inverter off for { $limit_inverter_rest }, then on. Its switch is { $place_inverter_panel }.
    }
    .ask = Do you have power now?
