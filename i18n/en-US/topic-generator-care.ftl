# Prime, breaker, oil, altitude dial
topic-generator-care = Generator care: oil, dial, breaker
why-generator-care = The air is thin up here. With the dial too low, it gets too much fuel and smokes. With a high setting kept on the way down, it gets too little fuel and runs hot.
step-generator-care = Generator care: dial and breaker
show-generator-care-breaker = Show the breaker on the generator: { $generator_breaker }. Up is on.
show-generator-care-dial = Each number on the dial stands for a thousand feet of height. Here it is set to { $generator_dial }.
show-generator-care-dial-change = Turn it at each thousand feet of climb. On the way down, turn it lower before the generator runs.
show-generator-care-prime = After the fuel ran low: hold prime for { $generator_prime }, then rest. Three times at most.
know-generator-care-breaker = If it runs but gives no power, look at its breaker.
know-generator-care-prime = After the fuel ran low, prime it before you start it.
know-generator-care-dial = Set the dial to your height in thousands of feet.
know-generator-care-down = Set it back when you go down.

step-generator-care-oil = Oil of the generator
show-generator-care-oil-off = The generator is off, cool and level. Wait { $limit_oil_settle }.
show-generator-care-oil-wipe = Let the renter pull the stick and wipe it.
show-generator-care-oil-read = Dip it again and read it.
know-generator-care-oil-often = Check the oil each time it has run { $generator_oil_check }.
know-generator-care-oil-low = If it is low, add { $generator_oil }, a little at a time, up to the upper mark.

caution-generator-care-1 = With low oil, the generator may not stop by itself.
    .title = Low oil
    .harm = It can be ruined.
    .avoid = Check the oil each time it has run { $generator_oil_check }.
caution-generator-care-2 = A dial set for a higher place gives the generator too little fuel.
    .title = Dial set too high
    .harm = It runs hot and can be ruined.
    .avoid = Turn the dial lower before you start it.
caution-generator-care-3 = The oil is hot, and parts spin behind the door.
    .title = Hot oil, spinning parts
    .harm = They can burn or cut your hand.
    .avoid = Stop it and wait before you pull the dipstick.

question-generator-care-1 = Why does it smoke black and run up and down?
    .answer = The dial is too low for this height. Turn it up.
question-generator-care-2 = Who adds oil?
    .answer = You may, with the generator stopped and cool. Use { $generator_oil }. Add a little at a time, up to the upper mark. Keep the receipt.
