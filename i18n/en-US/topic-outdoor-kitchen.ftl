# Outdoor kitchen
topic-outdoor-kitchen = Outdoor kitchen
why-outdoor-kitchen = The renter makes and breaks a propane joint every day. The heat is next to the wall and the awning.

step-outdoor-kitchen = Outdoor kitchen
show-outdoor-kitchen-open = Roll the awning in. Lift the hatch until both struts lock.
show-outdoor-kitchen-swing = Swing the griddle out, away from the wall.
show-outdoor-kitchen-hose = Push the hose on until it clicks. Open its valve last.
show-outdoor-kitchen-test = Let the renter brush soapy water on the joint and look for bubbles.
show-outdoor-kitchen-extinguisher = Show the second extinguisher. It is on the inside wall of this kitchen.
know-outdoor-kitchen-swing = Swing the griddle out from the wall before you light it.
know-outdoor-kitchen-hose = Use only the hose that hangs here.

step-outdoor-kitchen-close = Closing the outdoor kitchen
show-outdoor-kitchen-close-valve = Gas valve off first. Let the flame go out.
show-outdoor-kitchen-close-knobs = Then the knobs off.
show-outdoor-kitchen-close-cool = Let it cool for { $limit_griddle_cool }.
show-outdoor-kitchen-close-apart = Take the hose off, then cap it. Swing the griddle in.
know-outdoor-kitchen-close-off = Turn the gas valve off first.
know-outdoor-kitchen-close-cool = Let the griddle cool before you fold it in.

caution-outdoor-kitchen-1 = A griddle lit by the wall or under the awning can set them alight.
    .title = Griddle near the wall
    .harm = The fire can burn people badly.
    .avoid = Close the awning and swing the griddle out first.
caution-outdoor-kitchen-2 = A gas joint that leaks can flash.
    .title = Leaking gas joint
    .harm = The flash can burn you badly.
    .avoid = Test it with soapy water each time. If it bubbles, close the valve.
caution-outdoor-kitchen-3 = The steel stays hot long after the flame is out.
    .title = Hot griddle
    .harm = It burns skin.
    .avoid = Wait { $limit_griddle_cool } before you fold it in.
caution-outdoor-kitchen-4 = Gas at the wrong pressure can flare up.
    .title = Wrong hose or stove
    .harm = The flame can burn you badly.
    .avoid = Connect this griddle to this hose, and to nothing else.

question-outdoor-kitchen-1 = Where does the sink drain?
    .answer = Into the second grey tank. It holds { $waste_grey_galley }.
question-outdoor-kitchen-2 = Does the small fridge run on the battery?
    .answer = No, only on shore power. It takes { $outdoor_kitchen_fridge }.
