# Storage bays and shared keys
topic-storage-bays = Storage bays
why-storage-bays = Most bay locks share a few keys, so thousands of units open with the same one. A loose bay door opens on the road.

step-storage-bays = Storage bays
show-storage-bays-open = Open a bay door, hold it open and close it. Push on both corners and try the lock.
show-storage-bays-lock = Say plainly that the bay lock stops no thief.
show-storage-bays-heavy = Put heavy things low and near the axle.
know-storage-bays-shared = Many units share the same bay keys.
know-storage-bays-inside = Take money, papers and cameras inside with you. Do not leave them in a bay.
know-storage-bays-push = Push each door to test it before you drive.
know-storage-bays-kit = The loaned kit weighs { $weight_kit }. Pack heavy things low.

caution-storage-bays-1 = Bay locks open with common keys, so theft is likely.
    .title = Theft from a bay
    .harm = What you leave in a bay can be stolen.
    .avoid = Take valuables inside with you.
caution-storage-bays-2 = A falling bay door can hit your head.
    .title = Falling bay door
    .harm = It can bump or cut you.
    .avoid = Hook the door open before you lean in.
caution-storage-bays-3 = Fuel cans, gas bottles and loose batteries shut in a bay can burn or explode.
    .title = Fire in a bay
    .harm = The fire can burn people badly.
    .avoid = Keep all of these out of the bays.

question-storage-bays-1 = Can I add my own padlock?
    .answer = Yes. Do not drill.
