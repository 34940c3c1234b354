# Demonstrations: small tasks in which a renter shows that they understood.

# A load with what it draws, as a card of a demonstration.
demo-load = { $load }, { $power }
# A card and where it was put, as the record tells an answer.
demo-placed = { $card }: { $place }
# Whether something was shown on the unit, as the record tells it.
demo-shown = shown on the unit
demo-not-shown = not shown yet
# Said when something was not yet shown on the unit.
demo-show-again = Not yet. Look at it together once more, and then show it again.

# The page of a demonstration. The renter reads these.
demo-page-begin = Show that you know it
demo-page-turn = This page is for { $name }. Show it once.
demo-page-words = Read it again
demo-page-clear = Start over
demo-page-done = Done
demo-page-not-yet = Not yet
demo-page-right = Right
demo-page-go-on = Go on
demo-page-stay =
    { $count ->
        [one] Step 1 stays.
       *[other] Steps 1 to { $count } stay.
    }
demo-page-wrong-pair = “{ $card }” does not go with “{ $place }”.
demo-page-part = Question { $part } of { $parts }
demo-page-try = Try { $try }
demo-page-placed = { $placed } of { $all } placed
demo-page-choose-one = Tap one.
demo-page-choose-all = Tap all that fit, then Done.
demo-page-choose-together = Tap what you would switch on, then Done.
demo-page-point-one = Tap it in the picture, or by its name.
demo-page-point-all = Tap all of them, then Done.
demo-page-set = Set it, then Done.
demo-page-less = Less
demo-page-more = More
demo-page-who = WHO
demo-page-seat = WHERE
demo-page-child-seat = Marked for child seats
demo-page-what = WHAT
demo-page-goes-to = WITH WHAT
demo-page-put = Now tap what it goes with.
demo-page-put-seat = Now tap the seat.
demo-page-lies = Put to: { $place }
demo-page-show = Take the tablet along. When it is done, give it to the agent.

# What the agent reads.
demo-page-agent-says = Was it shown on the unit?
demo-page-shown = Yes, it was shown
demo-page-not-shown = Not yet
demo-page-help-give = Give the tablet to the agent for a moment.
demo-page-for-agent = FOR THE AGENT
demo-page-help-show = Show { $name } the real thing on the unit. Then { $name } does this once more.
demo-page-help-evidence = A wrong try is no mark against anyone. It shows that the step was taught.
demo-page-helped = I have shown it. { $name } goes on
demo-page-agent-hold = Agent: press and hold.
