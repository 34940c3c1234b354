# Keys
topic-keys = Keys
why-keys = Lost keys and keys locked inside are what most renters call about.

step-keys = The key ring
show-keys-count = Count the keys on the ring with the renter. Say what each one opens.
show-keys-coupler = Point out the key of the coupler lock.
show-keys-try = At each lock you pass on the walk, let the renter try its key once.
know-keys-spare = The lot keeps one spare set.
know-keys-lost = If you lose a key, call { $phone_road }. You pay the listed price.

step-keys-door = The entry door lock
show-keys-door-lock = Let the renter lock and unlock the entry door, first from outside, then from inside.
show-keys-door-hook = Show where the keys hang at camp: { $place_keys_hook }.
know-keys-door-pocket = Keep the keys on you when you step out.
know-keys-door-locks = The entry door can lock behind you.
know-keys-door-same-hook = Inside, hang the keys on the same hook each time.

caution-keys-1 = Keys left inside can lock you out.
    .title = Locked out
    .harm = A locksmith visit costs you money and time.
    .avoid = Put the keys in your pocket before you close a door.

question-keys-1 = Can I copy the key?
    .answer = No. Call the lot at { $phone_day }.
question-keys-2 = What if I lose it?
    .answer = Call { $phone_road }. You pay the listed price.
