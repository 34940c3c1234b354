# Guide: carbon monoxide alarm
guide-trouble-co-alarm = Carbon monoxide alarm sounds, or people feel sick
    .stop = always
    .find = carbon monoxide, CO, alarm, beep, chirp, sick, dizzy, headache, sleepy, fumes, exhaust
    .note = { $fitted_propane ->
        [yes] Stay out. If nobody has answered yet, keep calling { $phone_emergency }. After that, tell { $phone_road }. Nobody goes in until the fire service or a trained helper says so. Use no engine, generator, heater or burner again until the cause is found.
       *[no] Stay out. If nobody has answered yet, keep calling { $phone_emergency }. After that, tell { $phone_road }. Nobody goes in until the fire service or a trained helper says so. Use no engine, heater or flame again until the cause is found.
    }

caution-trouble-co-alarm-h1 = Carbon monoxide will kill while you look for the cause.
    .title = Carbon monoxide
    .harm = You cannot see it or smell it. It will kill you.
    .avoid = Get everyone outside now, and count heads. Call { $phone_emergency }. Then read on.

row-trouble-co-alarm-chirp = Listen, and look at the people.
    .ask = Is it only a short chirp about once a minute, and does everybody feel well?
row-trouble-co-alarm-out = Get everyone out into fresh air. Leave the door open. Check that no one is missing.
    .ask = Is anyone dizzy, sick or sleepy, or was anyone asleep?
    .yes = Say so when you call.
row-trouble-co-alarm-call = Call { $phone_emergency }. Ask for medical help. Lay a sleepy person on the side and stay with them.
    .ask = Is help on the way?
row-trouble-co-alarm-call-again = Try again from where the phone works. Ask a neighbor to call. Do this until help is on the way, before anything else.
    .ask = Is help on the way now?
    .no = Keep calling { $phone_emergency }. Stay outside with the others.
row-trouble-co-alarm-cause = { $fitted_generator ->
        [yes] Stay outside. You need not find the cause. Stop the engine or the generator only if you need not go in or stand in its exhaust. From a distance, see whether the exhaust of a neighbor blows in.
       *[no] { $fitted_engine ->
                [yes] Stay outside. You need not find the cause. Stop the engine only if you need not go in or stand in its exhaust. From a distance, see whether the exhaust of a neighbor blows in.
               *[no] Stay outside. You need not find the cause. From a distance, see whether the exhaust of a vehicle or a generator nearby blows in.
            }
    }
    .ask = Did you find a cause?
row-trouble-co-alarm-alarm = Read the light of the alarm and its date. The battery is low or the alarm is too old. It is { $place_co_alarm }.
    .ask = Can it be replaced today?
    .no = { $fitted_diesel_heater ->
        [yes] Use no flames and no diesel heater. Nobody sleeps in the unit without an alarm that works.
       *[no] Use no flames and no generator. Nobody sleeps in the unit without an alarm that works.
    }
