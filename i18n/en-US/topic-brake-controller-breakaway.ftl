# Brake controller and breakaway switch
topic-brake-controller-breakaway = Trailer brakes and breakaway switch
why-brake-controller-breakaway = Trailer brakes set wrong push the vehicle or lock the wheels. The breakaway brake stops the trailer if it comes loose.

step-brake-controller-breakaway-pin = Breakaway pin and cable
show-brake-controller-breakaway-pin-unplug = Stand still. Let the renter unplug the trailer cord from the vehicle and pull the breakaway pin.
show-brake-controller-breakaway-pin-creep = Look around: nobody is near. Then creep forward. The trailer brakes must hold.
show-brake-controller-breakaway-pin-back = Put the pin back within { $limit_pin_out }. Then plug the cord back in.
show-brake-controller-breakaway-pin-battery = Read the trailer battery. It must show more than { $house_low }, since the switch needs it.
show-brake-controller-breakaway-pin-spare = Show the spare pin in the kit.
know-brake-controller-breakaway-pin-cable = Hook the cable to the frame of the vehicle, with some slack.
know-brake-controller-breakaway-pin-pin = Tow only with the pin in. Never tow with it out.
know-brake-controller-breakaway-pin-battery = Tow only with a charged trailer battery. Never tow with it flat.

step-brake-controller-breakaway-gain = Brake controller in the cab
show-brake-controller-breakaway-gain-controller = Show the brake controller on the dash. If the vehicle has none, plug in the loaned one.
show-brake-controller-breakaway-gain-lever = Take a level, dry, paved stretch at { $limit_brake_test }. Let the driver brake with the hand lever alone.
show-brake-controller-breakaway-gain-raise = Start with the gain at five. Raise it until the pull is strong and no wheel locks.
show-brake-controller-breakaway-gain-again = Set it again for gravel, for rain and for a lighter load.
know-brake-controller-breakaway-gain-lot = The lot sets the trailer brakes with you.
know-brake-controller-breakaway-gain-feel = Feel for a firm pull with no skid.
know-brake-controller-breakaway-gain-again = Set them again when the road or the load changes.

caution-brake-controller-breakaway-1 = Weak trailer brakes let the trailer push you.
    .title = Weak trailer brakes
    .harm = It can push you into a crash and kill people.
    .avoid = Set the brakes in the yard before you go out.
caution-brake-controller-breakaway-2 = A breakaway cable that hangs on a chain will fail with the chain.
    .title = Cable on a chain
    .harm = The loose trailer has no brakes. It will kill.
    .avoid = Hook the cable to the frame of the vehicle. Leave it some slack.
caution-brake-controller-breakaway-3 = A pin left out drains the trailer battery.
    .title = Pin left out
    .harm = A loose trailer then has no brakes. It can kill.
    .avoid = Put the pin back right after the test.

question-brake-controller-breakaway-1 = The trailer starts to sway. What do I do?
    .answer = Take your foot off the gas slowly. Hold the wheel straight. Squeeze the hand lever gently. Do not brake hard.
