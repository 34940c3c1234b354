# After a crash
topic-accident-steps = After a crash
why-accident-steps = In the hour after a crash, people move things, say too much and forget photos.
step-accident-steps = After a crash
show-accident-steps-people = Stop, hazard lights on, safe place. Hurt people come first: call { $phone_emergency }.
show-accident-steps-valve = Close the propane valve if you can. It is { $place_lp_valve }.
show-accident-steps-smell = { $fitted_propane ->
        [yes] Watch for the smell of fuel or gas.
       *[no] Watch for the smell of fuel.
    }
show-accident-steps-photos = Take photos. Note who is who, and exchange papers.
show-accident-steps-fault = Do not debate whose fault it is. Call the lot the same day.
know-accident-steps-help = Stop, and help people first.
know-accident-steps-emergency = Call { $phone_emergency } if anyone is hurt.
know-accident-steps-photos = Take photos and exchange papers.
know-accident-steps-call = Then call { $phone_day } the same day.

caution-accident-steps-1 = { $fitted_propane ->
        [yes] Fuel or gas that leaks after a crash can catch fire.
       *[no] Fuel that leaks after a crash can catch fire.
    }
    .title = Leak after a crash
    .harm = The fire can kill people who are near.
    .avoid = { $fitted_propane ->
        [yes] Get everyone away. Shut off the propane if that is safe. Call { $phone_emergency }.
       *[no] Get everyone away. Call { $phone_emergency }.
    }
caution-accident-steps-2 = A report that comes late can leave you without insurance.
    .title = Late report
    .harm = You may have to pay for everything.
    .avoid = Tell us the same day, even for a small dent.

question-accident-steps-1 = Do I say sorry?
    .answer = Be polite. Do not say whose fault it was.
