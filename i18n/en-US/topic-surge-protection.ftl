# Surge and wiring protector
topic-surge-protection = Surge and wiring protector
why-surge-protection = Old campground posts have low voltage, swapped wires and loose neutrals. On a { $limit_plug_big } post, a lost neutral can put up to { $limit_mains_two_legs } on { $limit_mains } things.

step-surge-protection = Surge and wiring protector
show-surge-protection-in = Post breaker off. Let the renter put the protector in. If the post needs an adapter, that goes in first.
show-surge-protection-light = Breaker on. Let the renter read the wiring light before the cord goes in.
show-surge-protection-wait = It waits about { $limit_surge_delay } before it gives power. That is normal.
show-surge-protection-limits = It cuts the power off below { $limit_surge_low } and above { $limit_surge_high }.
show-surge-protection-lock = Lock it to the post.
know-surge-protection-use = Always use the protector.
know-surge-protection-wait = Wait for its good light. That takes about { $limit_surge_delay }.
know-surge-protection-fault = If it shows a fault, ask for another site. Do not bypass it.

caution-surge-protection-1 = The wiring in a post can be bad.
    .title = Bad wiring in the post
    .harm = It can shock you, and the shock can kill. It can start a fire.
    .avoid = Use the protector each time. Stop if it shows a fault.
caution-surge-protection-2 = The protector keeps cutting out because the voltage is low.
    .title = Low voltage
    .harm = Low voltage can ruin motors.
    .avoid = Turn big loads off. Tell the campground.

question-surge-protection-1 = Nothing happens for { $limit_surge_delay }. Is it broken?
    .answer = No. That delay is normal.
question-surge-protection-2 = What if it is stolen?
    .answer = You pay its listed price. Please lock it to the post.
