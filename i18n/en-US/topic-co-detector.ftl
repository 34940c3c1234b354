# Carbon monoxide alarm
topic-co-detector = Carbon monoxide alarm
why-co-detector = Carbon monoxide has no smell. Engines, generators, heaters, burners and grills can make it, your neighbor's too.

step-co-detector = Carbon monoxide alarm
show-co-detector-test = Press the test button and let the renter hear it. The alarm is { $place_co_alarm }.
show-co-detector-sound = Four beeps and a pause is the usual alarm. One chirp is a fault or a low battery.
show-co-detector-exits = Show the exit nearest each bed.
show-co-detector-signs = Say the signs: headache, dizzy, sick, sleepy. Watch for them in several people or a pet at once.
show-co-detector-date = Point out the date on the alarm. It is good until { $safety_co_replace_by }.
know-co-detector-out = If this alarm sounds, get everyone outside into fresh air right away.
know-co-detector-call = Check that no one is missing. Then call { $phone_emergency }.
know-co-detector-stay-out = Stay outside. Do not go back in to look for the cause.
know-co-detector-no-propane = This unit carries no propane, so it has no propane alarm.

caution-co-detector-1 = Carbon monoxide will kill people in their sleep.
    .title = Carbon monoxide
    .harm = You cannot see it or smell it. It will kill you.
    .avoid = When the alarm sounds, get everyone outside first. Then call for help.
caution-co-detector-2 = Exhaust that drifts in will kill.
    .title = Exhaust while you sleep
    .harm = People who are asleep do not wake up. It will kill them.
    .avoid = { $fitted_generator ->
        [yes] Turn the engine and the generator off before anyone sleeps.
       *[no] Turn the engine off before anyone sleeps.
    }
caution-co-detector-3 = A headache or sick feeling in two people can be carbon monoxide.
    .title = Two people feel sick
    .harm = It can kill even when no alarm sounds.
    .avoid = Go outside, all of you. Get medical help.

question-co-detector-1 = May I open the windows and stay?
    .answer = No. Go out.
question-co-detector-2 = May I bring a charcoal grill in when it rains?
    .answer = Never. Not even when it looks dead.
