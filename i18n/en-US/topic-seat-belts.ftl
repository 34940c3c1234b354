# Seats, belts, child seats
topic-seat-belts = Seats and belts
why-seat-belts = Some parties bring more people than belts. Children ride in the bunk. Seats that face sideways are not for child seats.

step-seat-belts-seats = Seats and belts
show-seat-belts-seats-count = Count the belts with the party: { $berths_belts }. Let each person sit in theirs and buckle up.
show-seat-belts-seats-child = { $child_seats_n ->
        [0] Say that no seat of this unit is marked for a child seat.
       *[other] Point out where a child seat or a booster may go: { $child_seats }. Show the tether and anchor points.
    }
show-seat-belts-seats-booster = Say that a booster needs a lap-and-shoulder belt.
know-seat-belts-seats-everyone = Everyone wears a belt while the unit moves.
know-seat-belts-seats-number = There are { $berths_belts } belts, for { $berths_belts } people.
know-seat-belts-seats-moving = { $fitted_berths_bunk_limit ->
        [yes] Stay in your seat on the road. No one uses the bed, bunk, toilet or galley.
       *[no] Stay in your seat on the road. No one uses the bed, toilet or galley.
    }

step-seat-belts-front = Front seats and airbags
show-seat-belts-front-swivel = If a front seat turns, let the renter turn it forward until it locks with a click.
show-seat-belts-front-table = Put the table down for the drive.
show-seat-belts-front-airbag = Point at the airbag signs. No child seat that faces the rear goes in front of an airbag.
know-seat-belts-front-forward = Before each drive, lock every seat that turns so that it faces forward.
know-seat-belts-front-child-rear = { $child_seats_n ->
        [0] No seat of this unit is marked for a child seat.
       *[other] Child seats and boosters go only here: { $child_seats }.
    }

caution-seat-belts-1 = A person without a belt is thrown about in a crash.
    .title = No belt
    .harm = It can kill them and the people they hit.
    .avoid = Give each person a seat with a belt. Drive only when all are buckled.
caution-seat-belts-2 = A front airbag can kill a child in a child seat that faces the rear.
    .title = Airbag and child seat
    .harm = It opens hard against the back of the child seat.
    .avoid = Put a child seat only where the agent has shown you.
caution-seat-belts-3 = A seat left loose can turn in a crash.
    .title = Loose swivel seat
    .harm = It can hurt you badly.
    .avoid = Turn it forward until it locks with a click.

question-seat-belts-1 = May a child nap in the bed?
    .answer = Not while the unit moves.
