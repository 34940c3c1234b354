# Roof vents and fan
topic-roof-vents = Roof vents and fan
why-roof-vents = Lids left open tear off on the road. Where there is no air conditioner, the fan is all the cooling there is.

step-roof-vents = Roof vents and fan
show-roof-vents-open = Let the renter open a vent, start its fan, stop it and close the vent.
show-roof-vents-outside = Go outside once with a lid open, and look up at it. Then look again with the lid shut.
show-roof-vents-height = The lid is the highest point of this unit: { $size_height } when it is shut, and more when it is open.
show-roof-vents-window = Set the fan to blow out, and open one low window. That moves the most air.
know-roof-vents-window = Open a low window and run the fan to cool the room.
know-roof-vents-shut = Close every vent before you drive, and in strong wind.
know-roof-vents-look = Look up and check the lids from outside.

caution-roof-vents-1 = A lid left open can tear off as you drive.
    .title = Vent lid left open
    .harm = It can hit and bruise someone. Then rain comes in.
    .avoid = Close all lids before you drive.
caution-roof-vents-2 = A closed unit in the sun gets deadly hot within minutes.
    .title = Hot, closed unit
    .harm = The heat can kill a child or a pet.
    .avoid = Take children and pets with you. Never leave them inside alone.

question-roof-vents-1 = May the fan run in the rain?
    .answer = Yes, on low, with the lid nearly shut.
