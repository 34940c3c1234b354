# Campsite manners
topic-campsite-manners = Campsite manners
why-campsite-manners = Complaints and fines come back to the lot.
step-campsite-manners = Campsite manners
show-campsite-manners-quiet = Say the quiet hours: { $quiet_from } to { $quiet_to }.
show-campsite-manners-generator = Run the generator only in the hours that are posted.
show-campsite-manners-tidy = Dump no waste. Lay no hose across a road. Keep lights low.
show-campsite-manners-fire = Ask about the fire rules of the site first.
know-campsite-manners-quiet = Be quiet from { $quiet_from } to { $quiet_to }.
know-campsite-manners-space = Keep your lights and your things off the neighbor's space.
know-campsite-manners-trash = Take trash and ash with you if there is no bin.

caution-campsite-manners-1 = A camp fire left hot can start a wildfire.
    .title = Hot camp fire
    .harm = A wildfire kills people.
    .avoid = Drown it, stir it and feel that it is cold. Do so before you sleep or leave.

question-campsite-manners-1 = What if there is a fire ban?
    .answer = { $fitted_outdoor_kitchen ->
        [yes] Then light no fire and no charcoal. Use the gas griddle only if the site allows it.
       *[no] Then light no fire and no charcoal.
    }
