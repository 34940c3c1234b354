# Height and clearance
topic-height-clearance = Height and clearance
why-height-clearance = Roofs get struck at fuel stations, drive-through lanes, branches and bridges. Often it is not insured.
step-height-clearance = Height and clearance
show-height-clearance-sticker = Read the height on the sticker in the cab aloud: { $size_height }. Let the renter say it back.
show-height-clearance-highest-air = Say what stands highest: the cover of the roof air conditioner.
show-height-clearance-highest-vent = Say what stands highest: the lid of the roof vent, even when it is shut.
show-height-clearance-lowest = Say the lowest sign to pass: { $clearance_min_sign }. It is the height and spare room for bumps.
show-height-clearance-roof = Say that nothing goes on the roof. What lies up there adds height.
know-height-clearance-height = Your height is { $size_height }.
know-height-clearance-sign = Pass only under signs of { $clearance_min_sign } or more.
know-height-clearance-no-sign = If there is no sign, stop, get out and look.
know-height-clearance-roof = Put nothing on the roof.

caution-height-clearance-1 = The roof can hit a bridge or a canopy.
    .title = Low bridge or roof
    .harm = The crash can kill people.
    .avoid = Never pass under a sign lower than { $clearance_min_sign }.
caution-height-clearance-2 = On this lot, insurance does not cover roof damage.
    .title = Roof not insured
    .harm = You pay for it.
    .avoid = When in doubt, stop and look.

question-height-clearance-1 = Why is the lowest sign higher than the unit?
    .answer = It leaves { $size_margin } of spare room. New asphalt raises the road, bumps lift the unit, and signs are rounded.
