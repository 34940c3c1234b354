# Guide: smell of gas
guide-trouble-lp-smell = Smell of gas, or the propane alarm sounds
    .stop = always
    .find = gas, propane, LP, smell, rotten egg, leak, alarm, detector, beep, chirp, hiss
    .note = Stay away and keep { $phone_road } informed. Nobody goes in until the fire service or a trained person has tested the air, even if the smell is gone. The valve stays closed until a leak test is done and written down.

caution-trouble-lp-smell-h1 = Gas will explode from one spark.
    .title = Gas leak
    .harm = The blast will kill.
    .avoid = Touch no switch. Get everyone out before you read on.

row-trouble-lp-smell-chirp = Touch no switch. Light no flame. Use no phone inside.
    .ask = Is it only the alarm: one chirp a minute, no smell, and nobody feels bad?
row-trouble-lp-smell-out = Get everyone out. Leave the door open.
    .ask = Is everyone out?
    .no = Do not go back in. Say who is missing when you call.
row-trouble-lp-smell-reach = The propane valve is { $place_lp_valve }.
    .ask = Can you reach it with no smell around you? If you are not sure, tap No.
row-trouble-lp-smell-valve = { $propane_kind ->
        [cylinders] Close the valve on both cylinders. Turn it clockwise.
       *[other] Close the valve. Turn it clockwise.
    }
    .ask = Is it closed?
row-trouble-lp-smell-away = Go { $limit_gas_away } away, against the wind and uphill. Warn the neighbors.
    .ask = Is everyone with you and unhurt?
    .no = Do not go back in. Say who is missing or hurt when you call.
row-trouble-lp-smell-call = Call { $phone_emergency }. Then call { $phone_road }. Say who is missing or hurt.
    .ask = Is help on the way?
    .no = Try again from where the phone works. Ask a neighbor to call.
row-trouble-lp-smell-detector = The alarm is { $place_lp_detector }. Read its light and its date. Then read the house volts.
    .ask = Do they show { $house_low } or less?
row-trouble-lp-smell-charge = Charge the battery for { $limit_detector_charge }. Keep the alarm connected.
    .ask = Is the chirp gone?
