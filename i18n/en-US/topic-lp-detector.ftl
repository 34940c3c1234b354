# Propane leak detector
topic-lp-detector = Propane alarm
why-lp-detector = Propane is heavier than air, so the alarm sits low. People block it, unplug it, or take it for the carbon monoxide alarm.

step-lp-detector = Propane alarm
show-lp-detector-test = Press the test button. Let the renter hear the sound. The alarm is { $place_lp_detector }.
show-lp-detector-lights = Point out the light colors of this alarm and its date. It is good until { $safety_propane_replace_by }.
show-lp-detector-smell = Say what propane smells like: rotten eggs.
show-lp-detector-act-out = Act it out together: no switches, everyone out, go away, then call.
know-lp-detector-out = If this alarm sounds, get everyone out and leave the door open.
know-lp-detector-spark = On the way, touch no switch, no flame and no phone.
know-lp-detector-call = When you are well away, call { $phone_emergency }. Then call { $phone_road }.
know-lp-detector-smell = Propane smells like rotten eggs. If you smell it, do the same.

caution-lp-detector-1 = Gas on the floor will explode from one spark.
    .title = Gas on the floor
    .harm = The blast will kill.
    .avoid = Get out and touch no switch. Call from { $limit_gas_away } away, on the side the wind comes from.
caution-lp-detector-2 = A covered or unplugged alarm can let gas build up.
    .title = Alarm blocked or off
    .harm = The gas can explode and kill.
    .avoid = Keep the alarm clear. Never pull its fuse.
caution-lp-detector-3 = An alarm that you take as false can be real gas.
    .title = Alarm taken as false
    .harm = The gas can explode and kill.
    .avoid = Get out each time. Let a trained person test the air.

question-lp-detector-1 = Why does it chirp every minute?
    .answer = The house battery is low, or the alarm is too old. Read its light and call the lot at { $phone_day }.
question-lp-detector-2 = Can I turn it off at night?
    .answer = No.
question-lp-detector-3 = Can hair spray or a cleaner set it off?
    .answer = Yes, but treat each alarm as real.
