# Black-tank rinse inlet
topic-tank-rinse = Rinsing the black tank
why-tank-rinse = With the valve shut it fills the tank in minutes. Then sewage comes up through the toilet and the roof vent.
step-tank-rinse = Rinsing the black tank
show-tank-rinse-where = The rinse inlet is { $place_rinse_inlet }.
show-tank-rinse-ready = Black valve open and sewer hose on. Only then screw the orange hose to the inlet.
show-tank-rinse-watch = One person stays at the clear elbow and watches.
show-tank-rinse-stop = Rinse for { $waste_rinse } at most. Tap off first. Then close the valve.
know-tank-rinse-valve = Open the black valve first.
know-tank-rinse-time = Rinse for { $waste_rinse } at most. Stay beside it.
know-tank-rinse-hose = Use the orange hose, never the white one.

caution-tank-rinse-1 = The rinse runs while the black valve is shut.
    .title = Valve left shut
    .harm = Sewage can flood the unit and make you very ill.
    .avoid = Open the black valve first. Watch the elbow the whole time.
caution-tank-rinse-2 = The white drinking hose picks up germs at the rinse inlet.
    .title = Wrong hose
    .harm = The germs get into your drinking water and can make you very ill.
    .avoid = Use only the orange hose here.

question-tank-rinse-1 = Must I do it?
    .answer = No. The lot will do it when you bring the unit back.
