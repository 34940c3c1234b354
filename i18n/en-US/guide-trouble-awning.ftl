# Guide: the awning
guide-trouble-awning = Awning will not roll in
    .stop = wind above { $awning_wind_limit }, a bent arm, torn fabric, a motor that smells
    .find = awning, stuck, roll in, retract, wind, storm, rain, water on the fabric, crank, switch
    .note = Turn it in by hand only with the helper on the phone. That takes two people at the arm end, slowly.

caution-trouble-awning-h1 = An awning in gusts can swing.
    .title = Swinging awning
    .harm = It can strike you and hurt you badly.
    .avoid = Keep people away. Do not hold the arms.
caution-trouble-awning-h2 = An awning that is out can cause a crash on the road.
    .title = Driving with it out
    .harm = People can die.
    .avoid = Do not drive until it is in and locked.

row-trouble-awning-gusts = Look from a distance.
    .ask = Are there gusts, a bent arm or torn fabric?
row-trouble-awning-water = Look at the fabric.
    .ask = Is water pooled in it?
row-trouble-awning-drain = Push up from below with a soft broom, slowly. Let one corner hang low.
    .ask = Has it drained?
row-trouble-awning-volts = See that no engine runs and its key is off. Read the house volts.
    .ask = Are they above { $house_low }?
row-trouble-awning-charge = Charge for { $limit_awning_charge }, from a post or from a running engine outdoors. Turn the engine off. Then press the switch for in.
    .ask = Is it in and locked?
row-trouble-awning-fuse = Put in an awning fuse with the same number and color, once. The fuses are { $place_spare_fuses }. Then press the switch for in.
    .ask = Is it in and locked?
row-trouble-awning-crank = One person holds the front rail up. The other folds both legs. Keep the fabric flat. Crank half a turn out, then crank in.
    .ask = Is it in and locked?
