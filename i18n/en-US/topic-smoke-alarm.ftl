# Smoke alarm
topic-smoke-alarm = Smoke alarm
why-smoke-alarm = Cooking sets it off. Then renters take the battery out and sleep without it.

step-smoke-alarm = Smoke alarm
show-smoke-alarm-test = { $safety_smoke_alarms_n ->
    [one] Press the test button. Let the renter hear it.
   *[other] There are { $safety_smoke_alarms } smoke alarms. Press the test button of each. Let the renter hear it.
}
show-smoke-alarm-compare = Let the renter compare it with the sound of the carbon monoxide alarm.
show-smoke-alarm-hush = Show the hush button and the vent fan.
show-smoke-alarm-date = Point out the date on the alarm. It is good until { $safety_smoke_replace_by }.
know-smoke-alarm-fan = Turn the fan on and open a vent when you cook.
know-smoke-alarm-cooking = If you are sure that it is only cooking smoke, press the button and air the room.
know-smoke-alarm-out = If you are not sure, get everyone out.
know-smoke-alarm-battery = Leave the battery in.

caution-smoke-alarm-1 = A unit can burn down within { $limit_burn_down }.
    .title = Fire in the unit
    .harm = Fire and smoke can kill.
    .avoid = Get out by the nearest exit and stay out.
caution-smoke-alarm-2 = An alarm with no battery cannot wake you in a fire.
    .title = Alarm with no battery
    .harm = The fire can kill you in your sleep.
    .avoid = Use the button. Never take the battery out.

question-smoke-alarm-1 = How often do I test it?
    .answer = Each week, and after the unit has been stored.
