# Guide: no battery power
guide-trouble-no-12v = Lights, pump and fans are dead
    .stop = the battery is hot, swollen or smells, a fuse blows twice
    .find = lights, dark, dead, battery, no power, fuse, pump, fan, disconnect, switch, low voltage, cold battery
    .note = { $fitted_propane ->
        [yes] Alarms may chirp when the battery is low. Never pull their fuse. While this power is out, the gas and carbon monoxide alarms may be dead. Use no flames. Nobody sleeps inside. Everyone stays outside while an engine or a generator charges the battery.
       *[no] Alarms may chirp when the battery is low. Never pull their fuse. While this power is out, the carbon monoxide alarm may be dead. Use no flames. Nobody sleeps inside. Everyone stays outside while an engine charges the battery.
    }

caution-trouble-no-12v-h1 = A battery that is hot, swollen or smoking can burst or burn.
    .title = Hot battery
    .harm = It can burn you badly, and its smoke can harm your lungs.
    .avoid = Get out. Stay away. Call { $phone_road }.
caution-trouble-no-12v-h2 = The battery gives off gas that can explode.
    .title = Gas at the battery
    .harm = The blast sprays acid. It can burn and blind you.
    .avoid = Bring no flame or spark near the battery.

row-trouble-no-12v-battery = Look and smell from a step away. The battery is { $place_battery_box }.
    .ask = Is the battery hot, swollen or smoking, or does it smell rotten?
row-trouble-no-12v-switch = Look at the battery switch. It is { $place_disconnect }.
    .ask = Is it on?
row-trouble-no-12v-switch-on = Turn it on.
    .ask = Are the lights back?
row-trouble-no-12v-one-thing = Try a light, the pump and a fan.
    .ask = Is only one thing dead?
row-trouble-no-12v-fuse = Turn that thing off. Put in a new fuse with the same number and color, once. The fuses are { $place_spare_fuses }.
    .ask = Does it work now?
    .no = If the new fuse blows, leave it. Never put in a bigger one.
row-trouble-no-12v-volts = Turn everything off. Read the house volts.
    .ask = Do they show { $house_stop } or less, or is the display dark?
row-trouble-no-12v-charge = Leave everything off. Charge for { $limit_charge_try }, from a post or from a running engine outdoors. With an engine, everyone stays outside.
    .ask = Are the lights back and the volts rising?
row-trouble-no-12v-wake = Turn the battery switch off for { $limit_switch_rest }. Plug into a post. Turn the switch on. If the panel says it is too cold, warm the inside first.
    .ask = Are the lights back?
