# Solar panels
topic-solar = Solar panels
why-solar = Renters think that solar is endless. It covers the fridge and the lights, not the cooking.

step-solar = Solar panels
show-solar-yield = Let the renter read the yield of the day. The display is { $place_solar_panel }.
show-solar-park = Say how to park: the roof in the sun, people in the shade of the awning.
show-solar-sum = Say the plain sum: a sunny day gives { $solar_ah }. A full day uses about twice that.
show-solar-drive = The panels give { $solar_power } at best. The engine charges with { $engine_charger_current } while you drive.
know-solar-sun = Solar charges the battery when sun hits the roof.
know-solar-runs = It runs the fridge and the lights.
know-solar-more = If you cook and heat water, drive or plug in every few days.

caution-solar-1 = People climb up to clean the panels, and fall from the roof.
    .title = Fall from the roof
    .harm = A fall from the roof can kill.
    .avoid = Stay on the ground. Leave the panels to the lot.
caution-solar-2 = Things left on the panels scratch and shade them.
    .title = Things on the roof
    .harm = The panels give less power, and you pay for scratches.
    .avoid = Put nothing on the roof.

question-solar-1 = Why does it show zero when it is cold and sunny?
    .answer = Below { $house_charge_above } the battery takes no charge until it is warm.
