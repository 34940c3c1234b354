# Wind on the road
topic-wind-driving = Wind on the road
why-wind-driving = A tall side catches the wind, and gusts come suddenly here.
step-wind-driving = Wind on the road
show-wind-driving-numbers = Say the two limits of this unit: steady wind { $driving_wind }, gusts { $driving_gust }.
show-wind-driving-push = Say what to do: slow down, both hands on the wheel.
show-wind-driving-gaps = Expect a push when you pass a truck, and at gaps in hills and trees.
know-wind-driving-limit = Do not drive in steady wind of { $driving_wind } or more, or in gusts of { $driving_gust } or more.
know-wind-driving-hold = Slow down and hold the wheel with both hands.
know-wind-driving-park = Park with the nose into the wind and wait.

caution-wind-driving-1 = A gust from the side can push you off the road or roll the unit.
    .title = Side wind
    .harm = The crash can kill people.
    .avoid = Stop and wait at { $driving_wind } of steady wind, or at gusts of { $driving_gust }.

question-wind-driving-1 = Is the forecast enough?
    .answer = No. Look at dust and flags as well.
