# Starting the engine with a weak battery
topic-aux-start = Starting with a weak battery
why-aux-start = A flat starter battery is common after a night of charging phones at the dash. The house battery or a jump pack can help.

step-aux-start-boost = Battery boost switch
show-aux-start-boost-where = Show the boost switch. It is { $place_boost_switch }.
show-aux-start-boost-hold = Let the renter do it: hold the boost switch, turn the key, release both.
show-aux-start-boost-other-way = It also works the other way. With the engine running, hold it to help the generator start.
know-aux-start-boost-hold = If the engine will not crank, hold the boost switch while you turn the key.
know-aux-start-boost-release = Release both after { $limit_boost_crank } at most.

step-aux-start-pack = Jump pack
show-aux-start-pack-pack = Show the jump pack. It is { $place_jump_pack }.
show-aux-start-pack-where = Show the marked posts. They are { $place_jump_posts }.
show-aux-start-pack-red = Pack off. Clip red to the marked post.
show-aux-start-pack-black = Clip black to the marked ground stud. Pack on.
show-aux-start-pack-off = When the engine runs: pack off, then take black off first.
know-aux-start-pack-use = If the engine will not crank, use the jump pack on the marked front posts.
know-aux-start-pack-order = Clip red on first. Take black off first.
know-aux-start-pack-never = Never clip it to the lithium house battery.

step-aux-start-crank = Three tries, then call
show-aux-start-crank-limit = Crank for { $limit_boost_crank } at most. Then rest for { $limit_boost_rest }.
show-aux-start-crank-three = After three tries, stop and call.
show-aux-start-crank-full = A full starter battery shows { $engine_battery_full } at rest.
know-aux-start-crank-stop = Stop after { $limit_boost_crank } and rest for { $limit_boost_rest }.
know-aux-start-crank-call = Try three times. Then call { $phone_road }.

caution-aux-start-1 = A spark can make a battery burst.
    .title = Bursting battery
    .harm = It sprays acid. The acid can burn and blind you.
    .avoid = Clip red on first. Clip black to the ground stud last. Turn your face away.
caution-aux-start-2 = The starter is cranked for too long.
    .title = Long cranking
    .harm = It can ruin the starter.
    .avoid = Stop after { $limit_boost_crank } and rest.
caution-aux-start-3 = A jump lead on the house battery harms it.
    .title = Lead on wrong battery
    .harm = It can wreck the control unit of the battery.
    .avoid = Use only the marked posts at the front.

question-aux-start-1 = { $engine_boost_switch ->
        [true] Will the boost switch drain my house battery?
       *[other] { "" }
    }
    .answer = A little. Drive for { $limit_boost_drive } and it is charged again.
question-aux-start-2 = { $engine_boost_switch ->
        [true] { "" }
       *[other] How do I charge the jump pack?
    }
    .answer = From its own cord, for an evening each week.
