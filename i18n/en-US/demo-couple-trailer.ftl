# Coupling the trailer
demo-couple-trailer-order = Couple the trailer. Put the steps in order.
demo-couple-trailer-card-chock = Chock the wheels
demo-couple-trailer-card-back-up = Back up with a helper
demo-couple-trailer-card-lower = Lower the coupler onto the ball
demo-couple-trailer-card-latch = Close the latch and put the pin in
demo-couple-trailer-card-lift-test = Lift with the jack to test the latch
demo-couple-trailer-card-bars = Spring bars up and pinned
demo-couple-trailer-card-chains = Cross the chains and hook them
demo-couple-trailer-card-cable = Breakaway cable to the vehicle frame
demo-couple-trailer-card-plug = Plug in and test the lights
demo-couple-trailer-card-jack-up = Jack fully up
demo-couple-trailer-card-chocks-out = Take the chocks out
demo-couple-trailer-say-chocks-last = The trailer can roll onto someone. Chocks come out last.
demo-couple-trailer-say-lift-test = A closed latch can still sit on top of the ball. Lift to be sure.
demo-couple-trailer-say-latch-first = Latch first. The bars carry great force.
demo-couple-trailer-say-look-again = Think of what must be done before this.
