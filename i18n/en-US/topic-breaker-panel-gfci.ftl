# Breakers, fuses, ground-fault outlet
topic-breaker-panel-gfci = Breakers, fuses, ground-fault outlet
why-breaker-panel-gfci = When a unit seems dead, the cause is nearly always at one of four places: post breaker, main breaker, branch breaker, ground-fault outlet.

step-breaker-panel-gfci = Breakers and fuses
show-breaker-panel-gfci-panel = Open the panel. Big breakers are { $limit_mains }. Small colored fuses are { $limit_house_circuit }.
show-breaker-panel-gfci-reset = Reset a breaker: push it fully off, then on. Once.
show-breaker-panel-gfci-fuse = Swap one { $limit_house_circuit } fuse for one of the same color, with loads off.
show-breaker-panel-gfci-spares = Show the spare fuses. They are { $place_spare_fuses }.
know-breaker-panel-gfci-first = If an outlet dies, first turn something off.
know-breaker-panel-gfci-once = Then reset the breaker once. The panel is { $place_breaker_panel }.
know-breaker-panel-gfci-again = If it trips again, leave it off and call { $phone_road }.
know-breaker-panel-gfci-branch = The breaker of the outlets carries { $shore_branch }.

step-breaker-panel-gfci-outlet = Ground-fault outlet
show-breaker-panel-gfci-outlet-test = Let the renter press test, then reset, on the ground-fault outlet.
show-breaker-panel-gfci-outlet-dead = Show which outlets go dead with it.
know-breaker-panel-gfci-outlet-where = The ground-fault outlet is { $place_gfci }.
know-breaker-panel-gfci-outlet-press-once = Press reset once. If it trips again, leave it off and call { $phone_road }.
know-breaker-panel-gfci-outlet-lights = Lights run on the { $limit_house_circuit } battery. Outlets need { $limit_mains }.

caution-breaker-panel-gfci-1 = A breaker that trips again has found a fault.
    .title = Breaker trips again
    .harm = The fault can start a fire and burn people badly.
    .avoid = Leave it off and call { $phone_road }. Do not hold it on.
caution-breaker-panel-gfci-2 = A bigger fuse or a piece of foil can melt the wires.
    .title = Wrong fuse
    .harm = The wires can start a fire and burn people badly.
    .avoid = Put in only a fuse with the same number and color.

question-breaker-panel-gfci-1 = Why do the lights work when the outlets do not?
    .answer = Lights run on the { $limit_house_circuit } battery. Outlets need { $limit_mains }.
