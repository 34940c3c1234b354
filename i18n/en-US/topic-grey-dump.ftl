# Emptying the grey tank
topic-grey-dump = Emptying the grey tank
why-grey-dump = It is a small tank. It fills before the fresh tank is empty. An open handle leaves a trail on the road, and a fine.

step-grey-dump = Emptying the grey tank
show-grey-dump-find = The valve is { $place_sewer_valves }. Let the renter kneel beside the van, find it and close it.
show-grey-dump-hose = Fetch the grey hose. It is { $place_hose_tube }.
show-grey-dump-end = Gloves on. Hose on. Put its end in the drain.
show-grey-dump-dump = Open the valve. When it has run out, close it. Drain the hose and cap it.
show-grey-dump-cassette = The toilet cassette is separate. It is emptied somewhere else.
know-grey-dump-tank = Sink and shower water goes into the grey tank.
know-grey-dump-often = Empty it at a dump station: every second day with two people, each day with four.
know-grey-dump-shut = Keep the handle shut while you drive.

caution-grey-dump-1 = An open grey valve spills on the road or the ground.
    .title = Open grey valve
    .harm = It brings a fine.
    .avoid = Check the handle before each drive.
caution-grey-dump-2 = The van can roll while you kneel.
    .title = Rolling van
    .harm = It can crush you.
    .avoid = Set the brake and switch off. Stay beside the van, never under it.

question-grey-dump-1 = Why is it full before the fresh tank is empty?
    .answer = The grey tank holds { $waste_grey } and the fresh tank { $water_fresh }. See the days on this screen.
