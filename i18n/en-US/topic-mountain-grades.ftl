# Long hills
topic-mountain-grades = Long hills
why-mountain-grades = Loaded, this unit may weigh { $weight_gvwr }, and brakes fade on a long way down. The lot lies at { $site_elevation }. An engine without a turbo loses about { $limit_thin_air_loss } of its power with every { $limit_thin_air_step }.
step-mountain-grades = Long hills
show-mountain-grades-gear = Show how to choose a low gear, or the tow/haul button if there is one.
show-mountain-grades-before = Slow down before the top. Then shift down.
show-mountain-grades-press = Brake firmly for about { $limit_brake_press }, then let off. Do it again and again.
show-mountain-grades-smell = If the brakes smell, stop in a safe place. Let them cool for { $limit_brake_cool }.
show-mountain-grades-trailer = Check that the trailer brakes work, and how strong they are set.
know-mountain-grades-gear = Shift to a low gear before the road goes down.
know-mountain-grades-press = Brake firmly and let off, again and again.
know-mountain-grades-smell = If you smell the brakes, stop and wait { $limit_brake_cool }.

caution-mountain-grades-1 = Brakes held on down a long hill get hot and can fail.
    .title = Brakes that fail
    .harm = You cannot stop. People can die.
    .avoid = Use a low gear. Brake in short, firm presses.
caution-mountain-grades-2 = The engine can overheat on a long climb.
    .title = Hot engine
    .harm = It can be ruined, and you pay.
    .avoid = Slow down and turn off the air conditioner of the cab. Stop if the gauge goes high.

question-mountain-grades-1 = Is the loud engine bad?
    .answer = No. In a low gear the engine runs fast downhill. That is normal.
question-mountain-grades-2 = The brakes feel weak. What now?
    .answer = Shift lower and pump the brakes. Use a runaway ramp if there is one. Then stop and call { $phone_road }.
