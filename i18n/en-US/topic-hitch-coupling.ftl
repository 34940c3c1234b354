# Coupling up
topic-hitch-coupling = Coupling up
why-hitch-coupling = If one part is missed, the trailer leaves the tow vehicle on the road.

step-hitch-coupling-latch = Ball and latch
show-hitch-coupling-latch-back = Chock the wheels. Back the tow vehicle up with a helper.
show-hitch-coupling-latch-lower = Lower the coupler onto the { $hitch_ball } ball.
show-hitch-coupling-latch-pin = Close the latch and put the pin in.
show-hitch-coupling-latch-lift = Jack up a little. The tow vehicle must rise too: then the latch holds.
know-hitch-coupling-latch-chocks = Chocks go in first and come out last.
know-hitch-coupling-latch-pin = Close the latch and pin it.
know-hitch-coupling-latch-lift = Lift the tongue with the jack to test the latch.

step-hitch-coupling-bars = Spring bars
show-hitch-coupling-bars-raise = Raise tongue and vehicle together with the jack. That takes the load off the bars.
show-hitch-coupling-bars-swing = Swing each bar up with the lever.
show-hitch-coupling-bars-bracket = Pin each bracket before you let go.
show-hitch-coupling-bars-clear = Stand to the side of the bar.
know-hitch-coupling-bars-bars = Stand to the side when you lift a spring bar.
know-hitch-coupling-bars-bracket = Keep hold of the lever until the bracket is pinned.

step-hitch-coupling-chains = Chains, cable and plug
show-hitch-coupling-chains-chains = Cross the chains under the tongue. Hook them to the tow vehicle.
show-hitch-coupling-chains-cable = Fix the breakaway cable to the frame of the vehicle, not to a chain or the ball mount.
show-hitch-coupling-chains-plug = Plug in. Check lights and signals.
show-hitch-coupling-chains-round = Jack fully up, then chocks out. Walk around once more.
show-hitch-coupling-chains-backward = To uncouple, go backward: chocks in first, and bars off before the latch opens.
know-hitch-coupling-chains-chains = Cross the chains under the tongue.
know-hitch-coupling-chains-cable = Fix the breakaway cable to the frame of the tow vehicle.
know-hitch-coupling-chains-again = Check everything again after { $limit_hitch_recheck }, and after every break.
know-hitch-coupling-chains-rating = Pull it only with a vehicle that is rated for { $hitch_rating } or more.

caution-hitch-coupling-1 = A latch that is not closed will let the trailer break loose.
    .title = Trailer breaks loose
    .harm = It will kill people on the road.
    .avoid = Close the latch and pin it. Test it by lifting with the jack.
caution-hitch-coupling-2 = A loaded spring bar can fly loose.
    .title = Spring bar
    .harm = It can break bones.
    .avoid = Stand to the side and use the lever.
caution-hitch-coupling-3 = On a ball of the wrong size the coupler can jump off.
    .title = Wrong ball
    .harm = The loose trailer can hurt people badly.
    .avoid = Use only the { $hitch_ball } ball from the lot.

question-hitch-coupling-1 = Why are there spring bars?
    .answer = They put weight back onto the front wheels of the tow vehicle. They also calm the sway.
question-hitch-coupling-2 = How much may this hitch carry?
    .answer = It carries { $hitch_tongue_most } on the tongue and pulls { $hitch_trailer_most }.
