# When to call
topic-breakdown-call = Breakdown: stop and call
why-breakdown-call = Early calls save engines. Calls from bad places cost lives.
step-breakdown-call = Breakdown: stop and call
show-breakdown-call-card = Show the card: road help { $phone_road }, the lot by day { $phone_day }, and the code of the unit, { $unit_code }.
show-breakdown-call-pull-off = Pull well off the road. Switch on the hazard lights and set out the triangles.
show-breakdown-call-people = Take everyone behind the barrier, away from the traffic.
show-breakdown-call-tell = Say what to tell: { $unit_code }, the place, what you saw, what you did.
know-breakdown-call-stop = Stop in a safe place, well off the road.
know-breakdown-call-out = Get everyone out on the side away from the traffic.
know-breakdown-call-call = Then call { $phone_road } and say { $unit_code }.

caution-breakdown-call-1 = Traffic can hit you while you stand beside it.
    .title = Standing by traffic
    .harm = It can kill you.
    .avoid = Wait behind a barrier or far from the road.
caution-breakdown-call-2 = A repair that we did not approve may not be paid.
    .title = Repair not approved
    .harm = You may have to pay it.
    .avoid = Call before you buy or fix anything.

question-breakdown-call-1 = What if there is no signal?
    .answer = Note the place and set out the triangles. Ask the next person who passes to call.
