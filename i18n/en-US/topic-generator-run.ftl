# Starting and stopping the generator
topic-generator-run = Starting and stopping the generator
why-generator-run = Its exhaust can kill, and it can set dry grass alight. Noise makes angry neighbors. Stopping it under load wears it out.

step-generator-run-outside = Before you start the generator
show-generator-run-outside-where = The generator is { $place_generator }. Its exhaust pipe is { $place_generator_exhaust }.
show-generator-run-outside-walk-round = Walk round it with the renter. It runs outdoors only.
show-generator-run-outside-clear = Look for grass, a wall, a tent or people. Nothing may be within { $generator_clear } of the exhaust.
show-generator-run-outside-windows = Let the renter shut the windows and the exit window on that side.
know-generator-run-outside-look = Walk round and look before you start it.
know-generator-run-outside-outdoors = Run it only outdoors.
know-generator-run-outside-awake = Run it only when everyone is awake.

step-generator-run-switch = Starting and stopping the generator
show-generator-run-switch-before = Turn the big loads off: air conditioner, microwave, electric water heater. Check that the fuel is above { $generator_pickup } of a tank.
show-generator-run-switch-start = Hold prime for { $generator_prime }. Then hold start for { $generator_crank } at most.
show-generator-run-switch-warm = Let it run for { $generator_warm_up } with no load. Power comes up to { $limit_generator_delay } after it starts.
show-generator-run-switch-loads = Turn loads on one at a time. The air conditioner goes first.
show-generator-run-switch-stop = To stop: turn the loads off, let it cool for { $generator_cool_down }, then hold stop until it is quiet.
know-generator-run-switch-cool = Turn the loads off. Let it cool for { $generator_cool_down } before you stop it.
know-generator-run-switch-one-by-one = Turn big things on one at a time.
know-generator-run-switch-fuel-station = Stop it before you drive into a fuel station.
know-generator-run-switch-quiet = Keep it off in quiet hours, from { $quiet_from } to { $quiet_to }.

caution-generator-run-1 = The exhaust of the generator holds carbon monoxide, a gas you cannot see or smell.
    .title = Deadly exhaust gas
    .harm = It will kill people who breathe it, most of all in their sleep.
    .avoid = Keep { $generator_clear } clear round the exhaust. Shut the windows on that side. Stop it before anyone sleeps.
caution-generator-run-2 = The hot exhaust can set dry grass alight.
    .title = Fire in dry grass
    .harm = The fire can burn people and spread fast.
    .avoid = Park on bare ground or gravel before you start it.
caution-generator-run-3 = A generator that runs near a fuel pump can light the fumes.
    .title = Fire at the pump
    .harm = The fire can burn you badly.
    .avoid = Stop it before you drive into a fuel station.
caution-generator-run-4 = The door, the pipe and the engine stay hot.
    .title = Hot parts
    .harm = They burn your skin.
    .avoid = Let it cool before you touch them.
caution-generator-run-5 = The air conditioner is on when you start or stop the generator.
    .title = Loads left on
    .harm = Both can be damaged.
    .avoid = Turn the loads off first.

question-generator-run-1 = May it run while we drive?
    .answer = Yes, on the open road. Stop it for fuel stations, tunnels and ferries.
question-generator-run-2 = May it run all night for the heat?
    .answer = No. Stop it before anyone sleeps.
