# Demonstrations: small tasks in which a renter shows that they understood.

# A load with what it draws, as a card of a demonstration.
demo-load = { $load }, { $power }
# Said when something was not yet shown on the unit.
demo-show-again = Not yet. Look at it together once more, and then show it again.
