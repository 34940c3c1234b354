# What runs together on the inverter
demo-one-big-load-pairs = You are not plugged in. Which pairs can run on the inverter at once? Choose all that can.
demo-one-big-load-card-cook-laptop = Induction cooktop and laptop, { $sum }
demo-one-big-load-card-cook-heater = Induction cooktop and water heater, { $sum }
demo-one-big-load-card-coffee-dryer = Coffee maker and hair dryer, { $sum }
demo-one-big-load-card-microwave-tv = Microwave and TV, { $sum }
demo-one-big-load-say-shuts-off = { $sum } is too much for an inverter of { $inverter_power }. The inverter shuts off.
demo-one-big-load-say-at-limit = { $sum } is all that the inverter has, with nothing to spare. We plan with { $most }, so run one after the other.
demo-one-big-load-say-more = More pairs can run. Look at each pair again. We plan with { $assumed_inverter_part } of the { $inverter_power } that the inverter gives.
