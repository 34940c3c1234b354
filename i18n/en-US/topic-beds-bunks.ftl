# Beds and bunks
topic-beds-bunks = Beds and bunks
why-beds-bunks = Children fall from high beds. Adults put too much weight on bunks. Bed ladders slip.

step-beds-bunks = Beds and bunks
show-beds-bunks-net = Let the renter clip the safety net at both ends and pull on it.
show-beds-bunks-ladder = Hook the ladder in, and test it with a pull.
show-beds-bunks-climb = Climb up and down facing the ladder.
show-beds-bunks-limit = Say what the bunk carries: { $berths_bunk_limit } in all.
show-beds-bunks-exit = Go to each bed and point at its nearest exit. The exits are: { $exits }.
know-beds-bunks-net = Clip the net each night.
know-beds-bunks-limit = The bunk holds { $berths_bunk_limit } in all.
know-beds-bunks-exit = Learn the exit that is nearest your bed.

caution-beds-bunks-1 = A sleeper can fall out of the bunk.
    .title = Fall from the bunk
    .harm = The fall can break bones or kill.
    .avoid = Clip the net. Let no child under six sleep there.
caution-beds-bunks-2 = A ladder that is not hooked in can slip.
    .title = Ladder slips
    .harm = You can get bruised.
    .avoid = Test it before you climb.

question-beds-bunks-1 = Can we sleep { $berths_beds } adults?
    .answer = There are beds for { $berths_beds }. The bunk holds { $berths_bunk_limit }, so add up the weights of those who sleep in it.
