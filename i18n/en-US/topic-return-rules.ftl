# Giving it back
topic-return-rules = Giving it back
why-return-rules = The bill at the return is the biggest source of bad feeling.

step-return-rules = Giving it back
show-return-rules-time = Say the time it is due, and write it on the card.
show-return-rules-fuel = Show the fuel mark to come back to.
show-return-rules-propane = Show the propane mark to come back to.
show-return-rules-tanks = { $fitted_waste_cassette ->
        [yes] Say that the grey tank and the toilet cassette come back empty.
       *[no] Say that the waste tanks come back empty.
    }
show-return-rules-rest = Say the rest: the unit comes back swept, with every loaned item, and the renter tells of every bump.
know-return-rules-time = { $fitted_waste_cassette ->
        [yes] Come back by the agreed time, with an empty grey tank and an empty toilet cassette.
       *[no] Come back by the agreed time, with empty waste tanks.
    }
know-return-rules-fuel = Bring back the fuel you left with.
know-return-rules-propane = Bring back the propane you left with.
know-return-rules-bumps = Tell us about any bump as soon as it happens.

step-return-rules-fees = What the return can cost
show-return-rules-fees-miles = Free miles a night: { $fees_miles_night }. Each mile more costs { $fees_mile }.
show-return-rules-fees-generator = Free generator time a night: { $fees_generator_night }. Each hour more costs { $fees_generator_hour }.
show-return-rules-fees-fuel = Fuel that is missing costs { $fees_fuel_gallon } a gallon, and { $fees_fuel_service } once for the service.
show-return-rules-fees-propane-quarter = Each missing quarter of propane costs { $fees_propane_quarter }.
show-return-rules-fees-propane-cylinder = Each empty propane cylinder costs { $fees_propane_cylinder }.
show-return-rules-fees-tanks-black = A full black tank costs { $fees_black }. Each full grey tank costs { $fees_grey }.
show-return-rules-fees-tanks-cassette = A full cassette costs { $fees_cassette }. A full grey tank costs { $fees_grey }.
know-return-rules-fees-late = { $charges_late_grace } late costs nothing. After that, each hour begun costs { $fees_late_hour }.
know-return-rules-fees-work = Each charge is worked out from readings that we take together, now and at the return.

caution-return-rules-1 = { $fitted_engine ->
        [yes] A late return, missing fuel or waste that is not emptied costs extra.
       *[no] A late return or waste that is not emptied costs extra.
    }
    .title = Extra charges
    .harm = You pay more, or get less of the deposit back.
    .avoid = Go through the list on the card the day before.

question-return-rules-1 = What if traffic holds me up?
    .answer = Call { $phone_day } before you are late.
