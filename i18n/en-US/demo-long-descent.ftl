# A long way down
demo-long-descent-top = From Cinder Saddle the road goes down { $grade } for { $way }. What do you do at the top?
demo-long-descent-order = Put the way down in order, from the top to the last resort.
demo-long-descent-card-low-gear = Slow down and choose a low gear
demo-long-descent-card-light-brake = Press the brake lightly all the way
demo-long-descent-card-neutral = Neutral, to save fuel
demo-long-descent-card-shift-late = Shift down once it gets fast
demo-long-descent-card-slow = Slow down before the top
demo-long-descent-card-gear = Choose a low gear or tow/haul
demo-long-descent-card-brake = Brake firmly for a moment, then release, and repeat
demo-long-descent-card-smell = If the brakes smell all the same: stop and let them cool
demo-long-descent-say-light-brake = That keeps the brakes hot until they stop working. Press firmly for a moment, then let them cool.
demo-long-descent-say-neutral = In neutral the engine cannot slow you down. Never do that.
demo-long-descent-say-shift-late = Too late. Shift before you start down.
demo-long-descent-say-gear-first = Let the engine slow you first. Then the brakes have less to do.
demo-long-descent-say-slow-first = Slow down first. A low gear is for low speed.
demo-long-descent-say-look-again = Think of what must be done before this.
