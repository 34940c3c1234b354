# What runs on a household outlet
demo-outlet-loads-loads = You are plugged into a household outlet of { $post }. The charger is on already and draws { $charger_settled }. Choose one or more things that can run with it at the same time.
demo-outlet-loads-say-air = The air conditioner and the charger draw { $long } for hours. The limit for hours is { $most_long }. The plug can melt.
demo-outlet-loads-say-water-heater = { $long } for an hour is too much. The limit for hours is { $most_long }. Heat the water with propane.
demo-outlet-loads-say-microwave = With the charger that makes { $sum }, and the outlet gives { $most }. Use the microwave while the fridge runs on propane.
demo-outlet-loads-say-one-big = With the charger that makes { $sum }, and the outlet gives { $most }. Run one big thing at a time.
demo-outlet-loads-say-too-much = With the charger that makes { $sum }. The outlet gives { $most }, and { $most_long } for hours. Switch something off.
demo-outlet-loads-say-nothing = Something can run. Choose at least one thing.
