# Ferries and tunnels
topic-ferry-tunnel-lp = Ferries and tunnels
why-ferry-tunnel-lp = Many crossings ask for closed valves. Some tunnels ban propane above a certain size of tank.

step-ferry-tunnel-lp = Ferries and tunnels
show-ferry-tunnel-lp-valve = Let the renter close the propane valve. It is { $place_lp_valve }.
show-ferry-tunnel-lp-appliances = Show that everything that burns propane is off.
show-ferry-tunnel-lp-heater = Switch the diesel heater off. Wait until its fan has stopped.
show-ferry-tunnel-lp-size = Name the sizes for the desk: { $size_length } long, { $size_height } high.
show-ferry-tunnel-lp-propane = Name the propane for the desk: { $propane_full } when full.
know-ferry-tunnel-lp-valve = Close the propane valve before a ferry or a tunnel.
know-ferry-tunnel-lp-heater = Turn the diesel heater off before a ferry or a tunnel. This unit has no propane.
know-ferry-tunnel-lp-tell = Tell the staff that you carry { $propane_full } of propane.
know-ferry-tunnel-lp-signs = Follow their signs, even if they say no.

step-ferry-tunnel-lp-rig = Length of the whole rig
show-ferry-tunnel-lp-rig-whole = Add it up with the renter: tow vehicle, ball mount and trailer.
show-ferry-tunnel-lp-rig-write = Write the sum on the card. Ferries charge by it.
know-ferry-tunnel-lp-rig-whole = Give the ferry desk the length of the whole rig.
know-ferry-tunnel-lp-rig-alone = The trailer alone is { $size_length } long.

caution-ferry-tunnel-lp-1 = A flame or a gas leak on a ferry or in a tunnel can start a fire.
    .title = Fire on a ferry
    .harm = People are trapped there. The fire can kill them.
    .avoid = First shut off all gas and all heaters.

question-ferry-tunnel-lp-1 = What if the unit has no propane?
    .answer = Then there is no valve to close. Switch the diesel heater off.
