# Using the toilet
topic-toilet-use = Using the toilet
why-toilet-use = Wipes and thick paper block it. With too little water, solids pile up under the bowl.
step-toilet-use = Using the toilet
show-toilet-use-pedal = Press the pedal halfway: water. Press it fully: it drops and rinses.
show-toilet-use-button = Press the button for water. Then open the blade.
show-toilet-use-pool = Put water in the bowl before use. Leave a small pool after. It seals off the smell.
show-toilet-use-paper = Show the RV paper. Nothing else goes in.
know-toilet-use-water = Put some water in the bowl before you use it.
know-toilet-use-paper = Use only RV paper. Put wipes, pads and food in the trash, even if the pack says flushable.
know-toilet-use-tank = The toilet tank holds { $waste_black }.
know-toilet-use-cassette = The toilet cassette holds { $waste_cassette }.

caution-toilet-use-1 = Wipes block the valve.
    .title = Wipes in the toilet
    .harm = You pay for clearing it.
    .avoid = Put wipes in the trash.
caution-toilet-use-2 = Bleach mixed with toilet waste or chemical can make a poison gas.
    .title = Poison gas
    .harm = It can hurt your lungs badly.
    .avoid = Pour in only the lot's sachets.
caution-toilet-use-3 = Drain cleaner and oil make the seals swell.
    .title = Drain cleaner and oil
    .harm = The valve leaks.
    .avoid = Keep them out of every drain.

question-toilet-use-1 = What helps against the smell?
    .answer = Add water to the bowl. Close the lid. Run the vent fan only with the lid down.
