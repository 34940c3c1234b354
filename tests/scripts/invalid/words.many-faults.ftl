# expect: words.syntax x100
# expect: words.many-faults 124:6

topic-kite = Kite
step-kite = Flying the kite
show-kite-string = Show the string.
show-kite-tail = Show the tail.
show-kite-reel = Show the reel.
know-kite-wind = Take it down when the awning comes in, at { $awning_wind_limit }.
know-kite-hold = Two hands hold it.
know-kite-wires = Stay away from wires.
step-kite-stow = Stowing the kite
show-kite-stow-roll = Roll it up.
show-kite-stow-bag = Put it in its bag.
know-kite-stow-dry = Dry it first.
know-kite-stow-place = It is kept { $place_awning }.
caution-kite-1 = A kite can touch a wire.
    .title = Wires
    .harm = The shock can kill.
    .avoid = Fly it far from any wire.
caution-kite-2 = Wind tears the kite.
    .title = Strong wind
    .harm = The cloth is lost.
    .avoid = Take it down in time.
bad0
bad1
bad2
bad3
bad4
bad5
bad6
bad7
bad8
bad9
bad10
bad11
bad12
bad13
bad14
bad15
bad16
bad17
bad18
bad19
bad20
bad21
bad22
bad23
bad24
bad25
bad26
bad27
bad28
bad29
bad30
bad31
bad32
bad33
bad34
bad35
bad36
bad37
bad38
bad39
bad40
bad41
bad42
bad43
bad44
bad45
bad46
bad47
bad48
bad49
bad50
bad51
bad52
bad53
bad54
bad55
bad56
bad57
bad58
bad59
bad60
bad61
bad62
bad63
bad64
bad65
bad66
bad67
bad68
bad69
bad70
bad71
bad72
bad73
bad74
bad75
bad76
bad77
bad78
bad79
bad80
bad81
bad82
bad83
bad84
bad85
bad86
bad87
bad88
bad89
bad90
bad91
bad92
bad93
bad94
bad95
bad96
bad97
bad98
bad99
bad100
