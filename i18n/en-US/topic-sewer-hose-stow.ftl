# Stowing the sewer hose
topic-sewer-hose-stow = Stowing the sewer hose
why-sewer-hose-stow = Hoses get dragged along the highway, caps get lost, and the drinking hose gets stored with the sewer hose.
step-sewer-hose-stow = { $fitted_waste_black ->
        [yes] Stowing the sewer hose
       *[no] Stowing the drain hose
    }
show-sewer-hose-stow-rinse = Rinse the hose with the dump station's own tap. Let it drain. Cap both ends.
show-sewer-hose-stow-stow = Put it in its own place. It is { $place_hose_tube }. Lock the lid.
show-sewer-hose-stow-white = Show where the white hose goes: a different place.
know-sewer-hose-stow-drain-hose = Your grey drain hose has touched waste water. It is never clean.
know-sewer-hose-stow-rinse = Rinse the hose and cap both ends.
know-sewer-hose-stow-place = Put it back in its place. That is { $place_hose_tube }.
know-sewer-hose-stow-apart = Never keep it with the white hose.

caution-sewer-hose-stow-1 = { $fitted_waste_black ->
        [yes] Sewage can get on the drinking hose.
       *[no] Waste water can get on the drinking hose.
    }
    .title = Germs on the hose
    .harm = It can make you very ill.
    .avoid = Store the two hoses apart. Wash your hands between them.
caution-sewer-hose-stow-2 = With a loose cap or lid, the hose can slide out on the road.
    .title = Hose on the road
    .harm = It can hit someone.
    .avoid = Turn the cap until it locks.

question-sewer-hose-stow-1 = Why does the hose end leak?
    .answer = Turn it until both lugs lock. Check the rubber ring.
