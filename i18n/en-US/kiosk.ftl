# What lies around every page.
emergency = Emergency
emergency-title = Emergency
emergency-first = First get everyone out and away. Then call.
emergency-call = Fire, injury, gas, carbon monoxide
emergency-road = Road help, at any hour
emergency-day = The lot, by day
emergency-fire = Fire, smoke or a smell of burning
emergency-fire-do = Everyone out, now. Shut the door behind you. Stay away and count heads. Do not go back for anything.
emergency-gas = Smell of gas or fuel
emergency-gas-do = Touch no switch, light no flame, use no phone inside. Everyone out. Leave the door open.
emergency-gas-away = Go { $limit_gas_away } away, against the wind. Call from there.
emergency-co = Carbon monoxide alarm, or people feel sick
emergency-co-do = Everyone out into fresh air, at once. Leave the door open. Ask for medical help. Nobody goes back in.
emergency-where = Say where you are: road and nearest town, or campground and site. Say what happened and who is hurt. Do what they tell you.
emergency-this = This is { $unit }, a { $kind }. Its code is { $unit_code }.
emergency-no-propane = { $fitted_propane ->
        [yes] { "" }
       *[no] { $fitted_engine ->
            [yes] { $engine_fuel ->
                [diesel] This unit has no propane. It carries diesel: { $engine_tank } when full.
               *[other] This unit has no propane. It carries gasoline: { $engine_tank } when full.
            }
           *[no] This unit has no propane.
        }
    }
emergency-shut-off = Gas shut-off: { $place_lp_valve }.
emergency-exits = Exits: { $exits }.
emergency-extinguisher = Extinguisher: { $place_extinguisher }. Only for a small fire, with the exit behind you.
emergency-close = Close the card
text-size = Text size
theme-daylight = For the sun
theme-dusk = For the evening
theme-paper = Paper
notice = Please read
notice-stops = Stop: nothing more can be saved
notice-close = Put away
faults-title = { $count ->
    [one] One fault in the scripts
   *[other] { $count } faults in the scripts
}
faults-kept = The last good scripts stay in use.
faults-held = A unit with a fault begins no new walk.
faults-more = { $count ->
    [one] One more is not shown. Mend these first.
   *[other] { $count } more are not shown. Mend these first.
}
crumb-two = { $first } · { $second }
crumb-opening = opening
crumb-closing = closing
key-done = Done
copy-saved = The copy was written and read back.
copy-not-saved = The copy was not written: { $why }. Try another folder or stick.
seal-stopped = The record is not sealed yet: { $why }. Nothing is lost.

# First start.
first-title = Name this tablet
first-why = The name stands on every record that this tablet seals. Small letters, digits and dashes.
first-name = Name of the tablet
first-name-example = t2
first-make-key = Make the key
first-demo-why = Or look around first with the demo lot. Its records say that they are a demo.
first-demo = Go on with the demo lot
first-named = The tablet has its key
first-fingerprint = Write down this fingerprint. The office compares it before it trusts the tablet.
first-office = The office also needs the line that the command for public keys prints.
first-go-on = Go to the Yard

# Yard.
yard-title = Yard
yard-open = { $unit }: a walk is open
yard-open-renter = { $unit }: the walk with { $renter } is open
yard-open-safe = Nothing was lost. Last saved { $when }.
yard-open-nothing = Its journal cannot be read.
yard-go-on = Go on
yard-unit-line = { $size_length } long, { $size_height } high
yard-unit-walk = { $steps ->
    [one] One step, about { $time }
   *[other] { $steps } steps, about { $time }
}
yard-start = Start the walk
yard-start-another = Start another walk
yard-waiting = { $count ->
    [0] No sealed record waits for the office.
    [one] One sealed record waits for the office.
   *[other] { $count } sealed records wait for the office.
}
yard-older-scripts = It is led from older scripts. New walks use the new ones.
yard-unit-faulty = { $count ->
    [one] No new walk: its scripts have a fault.
   *[other] No new walk: its scripts have { $count } faults.
}
yard-tablet = This tablet is { $tablet }.
yard-key-open = Its key has no passphrase. Keep the tablet locked away at night.

# Your copy.
sealed-title = Your copy
sealed-what = The record is sealed. Any change from now on would show.
sealed-id = Record
sealed-digest = Fingerprint of the record
sealed-compare = Take a picture of this page. Whoever shows you the record later must show this same fingerprint.
sealed-folder = Save a copy to this folder or stick
sealed-folder-example = /media/stick
sealed-save = Save the copy
sealed-done = Back to the Yard

# Signal words of ANSI Z535.
signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE

# While all is read, before the first page.
start-reading = The kiosk reads its lot and its open walks. This can take a moment.

# A tablet on a counter.
cover-safe = Everything that was shown as done is saved.
cover-go-on = Go on
clock-jumped = The clock of this tablet was changed from { $from } to { $to }. Check that it is correct now. The record of an open walk tells of the change.
clock-behind = The clock of this tablet says { $to }, but something was kept on it at { $from }. Set the clock right before a walk begins. A record that is sealed now tells of it.
clock-zone = This tablet was moved to the time zone { $zone }. Walks and records keep the local time of the lot.
room-low = The disk of this tablet is nearly full. There is room to finish the walks that are open. Take the sealed records to the office, then make room.
room-full = The disk of this tablet is full, so no new walk can begin. Take the sealed records to the office, then make room. Walks that are open can still go on.
room-no-writes = The disk of this tablet takes nothing more: { $why }. No new walk can begin. Start the tablet again. If this stays so, take another tablet and tell the office.
room-freed = The disk of this tablet is full. The room that is kept for this was given back, and the walk goes on. Finish it, then make room before the next one.
yard-no-room = No new walk: see the notice at the top.
