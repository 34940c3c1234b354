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
