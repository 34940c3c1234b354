# Driving and towing basics
topic-driving-basics = Speed and gap
why-driving-basics = It is two to three times as long as a car, with as much more side for the wind. It needs far more room to stop.
step-driving-basics = Speed and gap
show-driving-basics-gap = Say the gap to keep, { $following_gap }, and the top speed for this unit, { $driving_speed }.
show-driving-basics-lanes = At fuel stations: take an outer lane, look up, and go straight out.
show-driving-basics-range = Plan the fuel stops. The range stands at the step “{ step-fuel-type-cap }”.
show-driving-basics-map = Show on the map which roads are agreed.
know-driving-basics-speed = Your top speed is { $driving_speed }.
know-driving-basics-gap = Leave { $following_gap } to the car ahead.
know-driving-basics-slow = Slow down early. Turn late and wide.

caution-driving-basics-1 = A long, heavy unit needs far more room to stop.
    .title = Too close, too fast
    .harm = You can crash, and people can die.
    .avoid = Leave { $following_gap } to the car ahead. Slow down early.
caution-driving-basics-2 = A tired driver can crash.
    .title = Tired driver
    .harm = People can die.
    .avoid = Stop every { $limit_drive_rest }. Change drivers if you can.
caution-driving-basics-3 = Dirt roads that are not on the agreed map are not allowed.
    .title = Dirt roads
    .harm = You pay for damage there.
    .avoid = Stay on paved roads or signed gravel roads.

question-driving-basics-1 = May I use cruise control?
    .answer = Only on a dry, flat road.
