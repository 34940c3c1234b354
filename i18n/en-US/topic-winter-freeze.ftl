# Frost and winter use
topic-winter-freeze = Frost and winter use
why-winter-freeze = One hard night can split the pump, the heater and the pipes.

step-winter-freeze = Frost and winter use
show-winter-freeze-furnace = The furnace warms the tanks, but only while it runs. Electric heaters in the room do not.
show-winter-freeze-bare = These tanks have no heat. Below { $frost_dry_below }, switch the water heater off.
show-winter-freeze-drain = Then drain all the water. Use bottled water.
show-winter-freeze-hose = At night the water hose comes off the tap and is drained.
show-winter-freeze-doors = Open the cabinet doors, so that warm air gets to the pipes.
show-winter-freeze-dry = To use it dry: pump off, taps open. Only RV antifreeze (propylene glycol) goes into the drains.
know-winter-freeze-heat = { $fitted_diesel_heater ->
        [yes] When it freezes, run the diesel heater all night and take the water hose in.
       *[no] When it freezes, run the furnace all night and take the water hose in.
    }
know-winter-freeze-call = If { $frost_dry_below } or less is forecast, call { $phone_day } about draining the water.
know-winter-freeze-doors = Leave cabinet doors open on cold nights.

caution-winter-freeze-1 = Water that freezes can split the pipes.
    .title = Split pipes
    .harm = The bill is large.
    .avoid = Keep the heat on all night. Call { $phone_day } if { $frost_dry_below } or less is forecast.
caution-winter-freeze-2 = Antifreeze for cars is poison.
    .title = Poison
    .harm = It can kill a person or a pet.
    .avoid = Use only the RV kind that the lot gives you.

question-winter-freeze-1 = Is ice in the tank bad?
    .answer = Slush is fine. Solid ice in the pipes is not.
