# Ferries and tunnels
topic-ferry-tunnel-lp = Ferries and tunnels
why-ferry-tunnel-lp = Many crossings ask for closed valves. Some tunnels ban propane above a certain size of tank.

step-ferry-tunnel-lp = Ferries and tunnels
show-ferry-tunnel-lp-valve = Let the renter close the propane valve. It is { $place_lp_valve }.
show-ferry-tunnel-lp-appliances = Show that everything that burns propane is off.
show-ferry-tunnel-lp-heater = Switch the diesel heater off. Wait until its fan has stopped.
show-ferry-tunnel-lp-size = Say the sizes that a ferry desk asks for: { $size_length } long, { $size_height } high.
show-ferry-tunnel-lp-propane = Say how much propane it carries: { $propane_full } when full.
know-ferry-tunnel-lp-valve = Close the propane valve before a ferry or a tunnel.
know-ferry-tunnel-lp-heater = Turn the diesel heater off before a ferry or a tunnel. This unit has no propane.
know-ferry-tunnel-lp-tell = Tell the staff there that you carry { $propane_full } of propane.
know-ferry-tunnel-lp-signs = Follow the signs of the ferry or tunnel, even if they say no.

step-ferry-tunnel-lp-rig = Length of the whole rig
show-ferry-tunnel-lp-rig-whole = Add it up with the renter: tow vehicle, ball mount and trailer.
show-ferry-tunnel-lp-rig-write = Write the sum on the card. Ferries charge by it.
know-ferry-tunnel-lp-rig-whole = Give the ferry desk the length of the whole rig.
know-ferry-tunnel-lp-rig-alone = The trailer alone is { $size_length } long.

caution-ferry-tunnel-lp-1 = A flame or a gas leak on a ferry or in a tunnel can start a fire.
    .title = Fire on a ferry
    .harm = People are trapped there. The fire can kill them.
    .avoid = First shut off all gas and all heaters.

caution-ferry-tunnel-lp-2 = { $fitted_diesel_heater ->
        [yes] The diesel heater burns with a flame. On a ferry or in a tunnel it can start a fire.
       *[no] A flame on a ferry or in a tunnel can start a fire.
    }
    .title = Fire on a ferry
    .harm = People are trapped there. The fire can kill them.
    .avoid = { $fitted_diesel_heater ->
        [yes] Turn the diesel heater off before you drive on or in. Wait until its fan has stopped.
       *[no] Put out every flame before you drive on or in.
    }

question-ferry-tunnel-lp-1 = { $fitted_propane ->
        [yes] { "" }
       *[no] What do I say when they ask about gas?
    }
    .answer = Say that this unit has no propane. There is no valve to close.
