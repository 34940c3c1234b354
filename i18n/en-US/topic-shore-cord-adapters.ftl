# Shore cord and adapters
topic-shore-cord-adapters = Shore cord and adapters
why-shore-cord-adapters = A wrong plug, the wrong order or a thin cord means burned plugs, dead appliances and shocks.

step-shore-cord-adapters = Shore cord and adapters
show-shore-cord-adapters-plug-small = Show the household plug: { $limit_outlet_small }.
show-shore-cord-adapters-plug-mid = Show the plug with three big blades: { $limit_plug_mid }, { $limit_mains }.
show-shore-cord-adapters-plug-big = Show the plug with four blades: { $limit_plug_big }, { $limit_mains } and { $limit_mains_two_legs }.
show-shore-cord-adapters-lay = Lay the cord out straight: no coil, no puddle, no door on it.
know-shore-cord-adapters-breaker = Choose the post and the adapter by the plug.
know-shore-cord-adapters-cord = Your cord carries { $shore_cord }, which is { $shore_power } in all. It is { $shore_length } long.
know-shore-cord-adapters-smaller = A smaller post gives less power, never more.

step-shore-cord-adapters-plug-in = Plugging in
show-shore-cord-adapters-plug-in-cord = Post breaker off. Let the renter plug in the cord.
show-shore-cord-adapters-plug-in-on = Breaker on. Wait { $limit_surge_delay } for the power.
show-shore-cord-adapters-plug-in-off = To leave: breaker off, then unplug.
show-shore-cord-adapters-plug-in-stow = Cap the inlet. Stow the cord.
show-shore-cord-adapters-plug-in-before-driving = Have the renter say it before driving: cord, step, awning, vents.
show-shore-cord-adapters-plug-in-before-driving-fixed = Have the renter say it before driving: cord, awning, vents.
know-shore-cord-adapters-plug-in-order = Turn the post breaker off before you plug in or pull out.
know-shore-cord-adapters-plug-in-leave = Before you drive, ask aloud: is the cord unplugged and put away?

caution-shore-cord-adapters-1 = A wrong outlet will kill with { $limit_mains_two_legs }.
    .title = Wrong outlet
    .harm = The shock will kill you or someone who touches the unit.
    .avoid = Use a campground post, or a house outlet with the lot's adapter. Never use the outlet of a dryer or a stove.
caution-shore-cord-adapters-2 = A tingle means that the metal of the unit is live.
    .title = Tingle from the metal
    .harm = It will kill the next person who touches it.
    .avoid = Let go and keep others off. Switch off the post.
caution-shore-cord-adapters-3 = A thin or coiled extension cord can overheat.
    .title = Hot cord
    .harm = It can start a fire and burn people badly.
    .avoid = Use only the loaned cord, laid out flat.
caution-shore-cord-adapters-4 = Driving off plugged in can tear out the post.
    .title = Still plugged in
    .harm = The live wires can kill.
    .avoid = Look at the post side last, just before you drive.

question-shore-cord-adapters-1 = May I use an outlet at my house?
    .answer = { $fitted_roof_air ->
        [yes] Yes, with the { $limit_outlet_small } adapter. It is fine for the fridge and the charger. Do not run an air conditioner.
       *[no] Yes, with the { $limit_outlet_small } adapter. It is fine for the charger and one big thing at a time.
    }
question-shore-cord-adapters-2 = Does a bigger post give this unit more power?
    .answer = No. The cord still carries { $shore_cord }.
