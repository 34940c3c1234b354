# City water and pressure regulator
topic-city-water-regulator = City water and pressure regulator
why-city-water-regulator = Campground taps can give { $limit_tap_pressure } and burst pipes. A tank-rinse inlet looks the same as the water inlet.
step-city-water-regulator = City water and pressure regulator
show-city-water-regulator-where = Show the inlet. It is { $place_city_inlet }.
show-city-water-regulator-order = Let the renter connect it: regulator on the tap, then the hose, then the unit.
show-city-water-regulator-pump-off = Turn the pump off when city water is on.
show-city-water-regulator-other-inlet = Show the other inlet, the tank rinse. It is { $place_rinse_inlet }. A hose there fills the toilet tank.
show-city-water-regulator-tap-off = Shut the tap when you leave camp for the day.
know-city-water-regulator-order = Screw the regulator to the tap first, then the white hose.
know-city-water-regulator-pressure = It brings the water down to { $water_regulator }. The pipes can take { $water_most }. A tap can give { $limit_tap_pressure }.
know-city-water-regulator-pump-off = Turn the pump off.
know-city-water-regulator-tap-off = Shut the tap when you go out.

caution-city-water-regulator-1 = Campground water can come at a very high pressure.
    .title = High water pressure
    .harm = It can burst the pipes and flood the unit.
    .avoid = Always fit the regulator at the tap.
caution-city-water-regulator-2 = A hose on the tank-rinse inlet fills the toilet tank.
    .title = Wrong inlet
    .harm = Sewage comes up through the toilet. It can make you very ill.
    .avoid = Read the label before you screw a hose on. The water inlet is { $place_city_inlet }.
caution-city-water-regulator-3 = A hose full of water freezes in frost.
    .title = Hose left out in frost
    .harm = It can split.
    .avoid = Take it off and drain it when the night will freeze.

question-city-water-regulator-1 = Why is the shower weak?
    .answer = Shut the tap and take the hose off. Clean the small screen in the inlet. Then open the tap fully.
