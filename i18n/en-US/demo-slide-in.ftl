# Bringing the slide-out in
demo-slide-in-order = You leave camp. Bring the slide-out in. One card must not be used.
demo-slide-in-card-look-inside = Look inside: drawers shut, chair and shoes away
demo-slide-in-card-look-outside = Look outside and at the roof of the slide-out
demo-slide-in-card-watcher = A second adult watches, children away
demo-slide-in-card-hold = Hold the switch until it stops
demo-slide-in-card-flush = Check outside that it is flush all round
demo-slide-in-card-let-go = Let go of the switch at each sound
demo-slide-in-say-look-first = Anything in the way can tear the floor. Look first.
demo-slide-in-say-watcher-first = You cannot see both sides at once. Let a second adult watch.
demo-slide-in-say-let-go = Let go only if someone comes near or it jams. Otherwise hold until it stops.
demo-slide-in-say-gap = A gap means that the seal is not closed. Do not drive.
demo-slide-in-say-look-again = Think of what must be done before this.
