# Tires and pressure
topic-tires-pressure = Tires and pressure
why-tires-pressure = { $tires_twins ->
        [true] Low tires overheat and burst on desert roads. Inner rear tires are forgotten.
       *[other] Low tires overheat and burst on desert roads.
    }
step-tires-pressure = Tires and pressure
show-tires-pressure-gauge = Let the renter check one tire with the gauge. The tires must be cold.
show-tires-pressure-twins = At the rear two wheels sit side by side. Check the inner tire too, at its valve extension.
show-tires-pressure-numbers = Read the sticker together: { $tires_cold }. Write the numbers on the card.
show-tires-pressure-look = Look for cracks, bulges and nails.
know-tires-pressure-when = Check the tires every second day, cold, in the morning.
know-tires-pressure-cold = Cold pressures: { $tires_cold }.
know-tires-pressure-add = Add air before you drive if a tire is below this: { $tire_add_air }.
know-tires-pressure-flat = Do not drive on a tire that is below this: { $tire_flat }. It counts as flat.

caution-tires-pressure-1 = A low tire gets hot and can burst.
    .title = Low tire
    .harm = The unit can be thrown off the road, and people can die.
    .avoid = Check the pressures cold. Add air before you drive.
caution-tires-pressure-2 = A hot tire reads high. Air let out then leaves it too low.
    .title = Air let out hot
    .harm = It can burst as you drive, and people can die.
    .avoid = Check tires cold. Never let air out of a warm tire.
caution-tires-pressure-3 = A tire that is damaged or too full can burst as you fill it.
    .title = Bursting tire
    .harm = The blast can hurt you badly.
    .avoid = Stand in front of the tread to fill it, never beside the side wall.

question-tires-pressure-1 = The pump at the garage stops at { $limit_garage_pump }. Is that enough?
    .answer = No. Use a truck pump. Cold pressures: { $tires_cold }.
question-tires-pressure-2 = Can I see it in another measure?
    .answer = Yes. Choose other measures on this tablet. Then every pressure is shown that way.
