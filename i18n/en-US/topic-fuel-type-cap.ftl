# Fuel type and caps
topic-fuel-type-cap = Fuel and caps
why-fuel-type-cap = Wrong fuel costs thousands. The colors of pumps differ from country to country.
step-fuel-type-cap = Fuel and caps
show-fuel-type-cap-gasoline = Read the word on the cap aloud: unleaded gasoline (petrol), { $engine_grade } or more.
show-fuel-type-cap-ethanol = It may hold up to { $limit_ethanol_most } ethanol. The tank takes { $engine_tank }.
show-fuel-type-cap-diesel = Read the word on the cap aloud: diesel. It must be { $engine_grade }. The tank takes { $engine_tank }.
show-fuel-type-cap-fluid = Show the blue cap beside the fuel. It is for exhaust fluid (DEF) alone, { $engine_exhaust_fluid } of it: never diesel, never water.
show-fuel-type-cap-off = At the pump all of these are off: generator, heater, propane.
show-fuel-type-cap-off-propane = At the pump both are off: heater and propane.
show-fuel-type-cap-off-generator = At the pump both are off: generator and heater.
show-fuel-type-cap-off-heater = At the pump the heater is off.
show-fuel-type-cap-wrong = Say what to do after wrong fuel: leave the key alone, and call.
show-fuel-type-cap-wrong-heater = Say that the diesel heater stays off too. It burns fuel from the same tank.
know-fuel-type-cap-gasoline = Your fuel is unleaded gasoline, { $engine_grade } or more. The cap is { $place_fuel_cap }.
know-fuel-type-cap-diesel = Your fuel is { $engine_grade }. The cap is { $place_fuel_cap }.
know-fuel-type-cap-word = Read the word on the cap and on the pump. Do not go by color.
know-fuel-type-cap-wrong = If you put in the wrong fuel, call { $phone_road }. Do not turn the key.
know-fuel-type-cap-heater = After wrong fuel, keep the diesel heater off too.

caution-fuel-type-cap-1 = Wrong fuel destroys the engine.
    .title = Wrong fuel
    .harm = You pay for a new one.
    .avoid = Read the word on pump and cap. After a mistake, do not start the engine.
caution-fuel-type-cap-2 = Any flame can make fuel vapor explode.
    .title = Fuel vapor
    .harm = The blast and the fire can kill.
    .avoid = { $fitted_propane ->
        [yes] Turn off the engine, the heater and the propane. Do not smoke.
       *[no] Turn off the engine and the heater. Do not smoke.
    }
caution-fuel-type-cap-3 = Diesel in the tank for exhaust fluid ruins the exhaust system.
    .title = Diesel in the blue cap
    .harm = You pay for the repair.
    .avoid = Put only exhaust fluid (DEF) there.

question-fuel-type-cap-1 = { $engine_fuel ->
        [gasoline] Up in the hills the pump sells a lower octane. Will it do?
       *[other] { "" }
    }
    .answer = No. The fuel for this unit is { $engine_grade }, here and there.
