# Generator stops at a quarter tank
topic-generator-fuel-pickup = Why the generator stops early
why-generator-fuel-pickup = By design it cannot drain the fuel you drive on. Renters think that it broke.
step-generator-fuel-pickup = Why the generator stops early
show-generator-fuel-pickup-mark = Point at { $generator_pickup } on the fuel gauge. Say: 'At this mark and below, no generator.'
show-generator-fuel-pickup-slope = Say that it may stop sooner on a slope.
show-generator-fuel-pickup-read = Read the gauge together: engine on, level ground, after a minute.
know-generator-fuel-pickup-shares = The generator shares the fuel tank with the engine.
know-generator-fuel-pickup-stops = It stops when the tank is down to { $generator_pickup }. It is built that way, so that you can always drive out.
know-generator-fuel-pickup-refill = Fill up and prime it. Then it will run again.

caution-generator-fuel-pickup-1 = Long cranking without fuel overheats the starter of the generator.
    .title = Cranking with no fuel
    .harm = The starter can be ruined.
    .avoid = Look at the fuel gauge first. Stop after { $generator_crank } of cranking.

question-generator-fuel-pickup-1 = How long can it run on what is in the tank?
    .answer = It burns { $generator_burn_half } at half load and { $generator_burn_full } at full load. Only the fuel above { $generator_pickup } of the tank counts. The agent can work it out with you.
