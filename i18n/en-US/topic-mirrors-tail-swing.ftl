# Mirrors and tail swing
topic-mirrors-tail-swing = Mirrors and tail swing
why-mirrors-tail-swing = When you turn away from a post, the rear corner swings toward it.

step-mirrors-tail-swing-corner = Tail swing
show-mirrors-tail-swing-corner-cone = Stand a cone { $limit_swing_spare } from the rear corner. Leave it there.
show-mirrors-tail-swing-corner-ground = Show on the ground how far the corner swings: { $tail_swing }. The renter sees it move in the loop of the yard.
show-mirrors-tail-swing-corner-why = The unit reaches { $size_rear_overhang } behind its axle. That part swings out.
show-mirrors-tail-swing-corner-wide = Turn late and wide. The rear wheels cut in by up to { $size_cut_in }.
know-mirrors-tail-swing-corner-swing = The rear corner swings out by { $tail_swing } on a sharp turn.
know-mirrors-tail-swing-corner-space = Keep that space and { $limit_swing_spare } more free beside it before you turn.
know-mirrors-tail-swing-corner-wide = Turn wide. The rear wheels cut in.

step-mirrors-tail-swing-mirrors = Mirrors
show-mirrors-tail-swing-mirrors-flat = Set the flat mirrors with the renter. They show the horizon, far back.
show-mirrors-tail-swing-mirrors-curved = Set the curved mirrors. They show the rear wheels and what is close.
show-mirrors-tail-swing-mirrors-width = With the mirrors the unit is { $size_mirrors } wide. In a narrow gap they are what gets hit.
show-mirrors-tail-swing-mirrors-tow = Clip the loaned tow mirrors on, if the vehicle needs them. They must see past the trailer, which is { $size_width } wide.
know-mirrors-tail-swing-mirrors-set = Set each mirror so that you see the horizon and the rear wheels.
know-mirrors-tail-swing-mirrors-both = Check both mirrors before a turn, and again during the turn.

caution-mirrors-tail-swing-1 = The rear corner can hit a pump or a post when you turn from a stop.
    .title = Corner hits a post
    .harm = You pay for the corner and for the post.
    .avoid = Leave room beside you and turn gently.
caution-mirrors-tail-swing-2 = A person or a bike beside the rear can be crushed as you turn.
    .title = Someone beside the rear
    .harm = It can kill them.
    .avoid = Check both mirrors before the turn and during it.

question-mirrors-tail-swing-1 = How do I pull away from the fuel pump?
    .answer = Go straight until your rear has passed the pump. Then turn.
