# Emptying waste tanks
topic-grey-black-dump = Emptying the waste tanks
why-grey-black-dump = This is the job everyone fears. Done in the right order, it cleans the hose by itself.
step-grey-black-dump = Waste tanks: first the hose
show-grey-black-dump-names = Let the renter name the tanks: black is the toilet, grey is sink and shower.
show-grey-black-dump-where = The valves are { $place_sewer_valves }. All of them stay shut at camp.
show-grey-black-dump-hose = Gloves on. Connect the hose to the unit.
show-grey-black-dump-elbow = Put the elbow into the sewer hole, with a weight on it.
know-grey-black-dump-shut = Keep all waste valves shut while you camp.
know-grey-black-dump-gloves = Wear gloves.

step-grey-black-dump-open = Emptying the waste tanks
show-grey-black-dump-open-black = Open black. When the clear elbow runs clear, close black.
show-grey-black-dump-open-grey-one = Then open grey. When it has run out, close it.
show-grey-black-dump-open-grey-two = Then grey two (kitchen): open, wait, close. Then grey one (shower): open, wait, close.
show-grey-black-dump-open-lift = Lift the hose, starting at the unit, so that it drains.
show-grey-black-dump-open-unhook = Unhook the unit end first. Rinse the hose and cap it.
show-grey-black-dump-open-bowl = Wash hands. Back in the bath: { $limit_bowl_water } of water and one sachet into the bowl.
know-grey-black-dump-open-black-first = Dump black first, then grey. The grey water rinses the hose.
know-grey-black-dump-open-hand-wash = Wash your hands with soap when you are done.

caution-grey-black-dump-1 = Sewage carries germs.
    .title = Germs in sewage
    .harm = They can make you very ill.
    .avoid = Wear gloves. Keep it off your face. Wash with soap.
caution-grey-black-dump-2 = A black valve left open lets the water run off, and the solids pile up.
    .title = Black valve left open
    .harm = The tank blocks, and clearing it costs money.
    .avoid = Keep it shut until the tank is two-thirds full.
caution-grey-black-dump-3 = Dumping on the ground is against the law.
    .title = Dumping on the ground
    .harm = It brings a fine.
    .avoid = Empty only at a dump station or into a sewer hole.
caution-grey-black-dump-4 = Sewage can stand behind the cap.
    .title = Spray at the cap
    .harm = It can spray in your face and make you very ill.
    .avoid = Check that all valves are shut. Stand to one side when you take the cap off.

question-grey-black-dump-1 = Why does the panel still show two-thirds?
    .answer = Paper sticks to the sensor. Look through the clear elbow.
question-grey-black-dump-2 = How often?
    .answer = Empty black at two-thirds, and before you bring the unit back.
