# Where the propane is shut off
demo-propane-shut-off-place = Where do you shut off the propane? Tap it on the plan.
demo-propane-shut-off-cylinders = What do you close to shut off all the gas? Tap everything.
demo-propane-shut-off-turn = Which way closes a valve?
demo-propane-shut-off-show = Walk to the valve with the agent. Close it by hand, then open it again.
demo-propane-shut-off-card-valve-a = Valve of the first cylinder
demo-propane-shut-off-card-valve-b = Valve of the second cylinder
demo-propane-shut-off-card-arrow = Arrow between the hoses
demo-propane-shut-off-card-right = To the right, clockwise
demo-propane-shut-off-card-left = To the left
demo-propane-shut-off-card-pull = Pull it out
demo-propane-shut-off-say-generator = That is the generator. The propane shut-off is { $place_lp_valve }.
demo-propane-shut-off-say-exhaust = Never touch that grille. It is hot.
demo-propane-shut-off-say-elsewhere = That is something else. The propane shut-off is { $place_lp_valve }.
demo-propane-shut-off-say-both = Close both. If you close one, the other takes over by itself.
demo-propane-shut-off-say-arrow = The arrow only says which cylinder is used first. Close the valves.
demo-propane-shut-off-say-clockwise = Turn to the right to close, as you look at the knob.
