# Who sits where
demo-who-sits-where-seats = You drive off. Give each of these people a seat.
demo-who-sits-where-belts = For how many people is there a belt?
    .value = { $number }
demo-who-sits-where-card-adult = An adult
demo-who-sits-where-card-other-adult = Another adult
demo-who-sits-where-card-teen = A teenager
demo-who-sits-where-card-child = A child of five on a booster
demo-who-sits-where-card-baby = A baby in a child seat that faces the rear
demo-who-sits-where-say-no-belt = That seat has no seat belt. Neither do the bunk and the bed.
demo-who-sits-where-say-airbag = An airbag hits the back of that child seat. Use a seat that is marked for child seats.
demo-who-sits-where-say-not-marked = Child seats and boosters go on the seats that are marked for them, as their own manual says.
demo-who-sits-where-say-driver = Only an adult who may drive sits at the wheel.
demo-who-sits-where-say-no-room = Then somebody else has no seat left. Keep the marked seats for the children.
demo-who-sits-where-say-belts = There are { $berths_belts } belts. That means { $berths_belts } people.
demo-who-sits-where-say-more-belts = There are more belts than that: { $berths_belts }.
