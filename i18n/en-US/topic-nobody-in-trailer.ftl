# No one in the trailer while it moves
topic-nobody-in-trailer = No one in the moving trailer
why-nobody-in-trailer = The trailer has no belts, and its walls do not hold in a crash. Riding in it is illegal in most places.
step-nobody-in-trailer = No one in the moving trailer
show-nobody-in-trailer-say = Open the door, look in together and say: 'Nobody inside when it moves. Not for a nap, not for one mile.'
show-nobody-in-trailer-pets = Say that this goes for pets too.
know-nobody-in-trailer-nobody = Nobody rides in the trailer, not even for a short way.
know-nobody-in-trailer-lock = Lock the door before you drive.
know-nobody-in-trailer-pets = Pets ride with you in the tow vehicle.

caution-nobody-in-trailer-1 = A person in a moving trailer has no belt.
    .title = Riding in the trailer
    .harm = A crash will kill them.
    .avoid = Check that the trailer is empty before you drive.

question-nobody-in-trailer-1 = May someone ride inside on the campsite?
    .answer = No, not there either.
