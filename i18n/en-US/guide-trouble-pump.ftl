# Guide: the water pump
guide-trouble-pump = Pump runs on, or no water
    .stop = water on the floor, a pump that is hot or smells
    .find = pump, water, no water, tap, faucet, runs, noise, clicks, leak, drip, empty tank, spits air
    .note = Does the pump click every few minutes? That is a slow drip. Turn the pump on only when you need water, and call the same day.

caution-trouble-pump-h1 = A leak can flood the floor in minutes.
    .title = Flooded floor
    .harm = The floor and the walls can rot.
    .avoid = Turn the pump and the city tap off when nobody is there.

row-trouble-pump-leak = Look at the floor and in the cabinet below the sink.
    .ask = Is there water where it should not be?
    .yes = Turn the pump and the city tap off first. Is water near an outlet or the breaker panel? Then keep out of the water, and switch off at the post.
row-trouble-pump-city = Look at the city water inlet. It is { $place_city_inlet }.
    .ask = Is a hose connected, with its tap open?
row-trouble-pump-city-tap = Turn the pump off. You do not need it now. Open a tap.
    .ask = Does water run?
row-trouble-pump-listen = Turn the pump on. Open a tap.
    .ask = Do you hear the pump?
row-trouble-pump-fuse = Turn the pump off and on. If it stays quiet, put in a fuse with the same number and color, once. The fuses are { $place_spare_fuses }.
    .ask = Do you hear it now?
row-trouble-pump-air = Look at the water as it runs.
    .ask = Does the tap spit air?
row-trouble-pump-fill = Turn the pump off. Fill the fresh tank. The level lights can be wrong. Turn the pump on. Open each tap until it runs smoothly, then close it.
    .ask = Does the pump stop by itself?
row-trouble-pump-look-around = Check every tap, the toilet valve, any outside shower, and the drains under the unit. Look from beside it.
    .ask = Did you find one open or dripping?
    .no = Turn the pump and the city tap off. Is water near an outlet or the breaker panel? Then keep out of the water, and switch off at the post.
row-trouble-pump-close = Close it.
    .ask = Does the pump stop?
