# Where the breakaway cable goes
demo-breakaway-cable-place = You see the hitch from above. Where do you clip the breakaway cable? Tap it.
demo-breakaway-cable-length = How long should the cable hang?
demo-breakaway-cable-card-frame-ring = The ring on the frame of the vehicle
demo-breakaway-cable-card-chain = A safety chain
demo-breakaway-cable-card-chain-hook = The hook of a safety chain
demo-breakaway-cable-card-ball-mount = The ball mount
demo-breakaway-cable-card-slack = With slack for turns, clear of the road
demo-breakaway-cable-card-short = Looped short and tight
demo-breakaway-cable-card-drag = So long that it touches the road
demo-breakaway-cable-say-chain = If the chain hook lets go, so does the cable. Then there are no brakes.
demo-breakaway-cable-say-ball-mount = If the ball mount comes out, the cable goes with it.
demo-breakaway-cable-say-short = Leave slack for turns, or it pulls on every corner.
demo-breakaway-cable-say-drag = The road wears it through. Leave slack for turns and no more.
