# Roof and ladder
topic-roof-ladder = Roof and ladder
why-roof-ladder = People fall off roofs. Roofs are soft and crack. Antennas break.

step-roof-ladder = { $roof_ladder ->
        [true] Roof and ladder
       *[other] Roof
    }
show-roof-ladder-ladder = Point at the ladder. Say: 'Only staff climb this.'
show-roof-ladder-roof = From the ground, point at the roof. It is { $size_height } up. Nobody goes there.
show-roof-ladder-tied = { $roof_ladder ->
        [true] Say that nothing is tied to the roof or to the ladder.
       *[other] Say that nothing is tied to the roof.
    }
know-roof-ladder-roof = Stay off the roof.
know-roof-ladder-ladder = The ladder is for staff.
know-roof-ladder-tied = Do not tie bikes or bags to it.
know-roof-ladder-tied-roof = Do not tie bikes or bags to the roof.

caution-roof-ladder-1 = The roof is { $size_height } high, and you can fall off.
    .title = Fall from the roof
    .harm = A fall from there can kill.
    .avoid = { $roof_ladder ->
        [true] Stay on the ground. Never climb the ladder or the roof.
       *[other] Stay on the ground. Never climb on the roof.
    }
caution-roof-ladder-2 = The roof can crack under your foot.
    .title = Cracked roof
    .harm = Rain gets in. You pay for the roof.
    .avoid = Keep off it, even to fetch a branch.

question-roof-ladder-1 = There are leaves on the roof. May I get them down?
    .answer = Ask for help at { $phone_road }. Do not climb.
