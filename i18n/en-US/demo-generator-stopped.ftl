# Why the generator stopped
demo-generator-stopped-why = The fuel gauge shows { $generator_pickup }. The generator stopped, and the engine still runs. Why, and what next?
demo-generator-stopped-hours = The fuel gauge shows { $fuel }. At half load, for about how many hours can the generator run?
    .value = { $number_n ->
        [one] { $number } hour
       *[other] { $number } hours
    }
demo-generator-stopped-card-fill-up = It takes fuel only above { $generator_pickup } of a tank. Fill up, prime it for { $generator_prime }, and start it
demo-generator-stopped-card-broken = It is broken. Call the lot
demo-generator-stopped-card-crank = Keep cranking until it starts
demo-generator-stopped-card-oil = It needs oil. Add some
demo-generator-stopped-say-broken = It stops early so that you can always drive out.
demo-generator-stopped-say-crank = That ruins the starter. Stop after { $generator_crank }.
demo-generator-stopped-say-oil = Check the oil, but that is not why it stopped with { $generator_pickup } in the tank.
demo-generator-stopped-say-above-mark = Only the fuel above { $generator_pickup } of the tank counts. It burns { $generator_burn_half } at half load. That is about { $number } hours.
