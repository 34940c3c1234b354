# Filling the fresh-water tank
topic-fresh-tank-fill = Filling the fresh-water tank
why-fresh-tank-fill = Fuel in the water tank and water in the fuel tank both happen every year, on every lot.
step-fresh-tank-fill = Filling the fresh-water tank
show-fresh-tank-fill-cap = Some caps look alike. Let the renter point to the right one. It is { $place_fresh_fill }.
show-fresh-tank-fill-hose = White hose only. Run the tap for a few seconds first. Smell the water.
show-fresh-tank-fill-full = Fill until it runs back. Then turn the cap hand tight.
know-fresh-tank-fill-cap = Fill only at the blue cap marked WATER.
know-fresh-tank-fill-hose = Use the white hose and a drinking-water tap.
know-fresh-tank-fill-weight = The tank holds { $water_fresh }. Full, it weighs a lot, so fill near camp if you can.

caution-fresh-tank-fill-1 = The tap at a dump station can carry germs.
    .title = Germs in the tap
    .harm = They can make you very ill.
    .avoid = Fill the fresh tank at a drinking-water tap, never at the dump station.
caution-fresh-tank-fill-2 = Fuel can be put in the water tank by mistake.
    .title = Fuel in the water
    .harm = It can poison you or catch fire.
    .avoid = Read the word on the cap aloud before you fill.

question-fresh-tank-fill-1 = Is it safe to drink?
    .answer = The lot cleaned the tank and pipes against germs. Many people still drink bottled water.
