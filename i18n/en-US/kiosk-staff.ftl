# The gate.
gate-close = Close the kiosk?
    .line = Everything that was shown as done is saved. The walk goes on from there at the next start.
gate-leave = Leave these pages?
    .line = From here on the tablet is for staff.
gate-back = Go back
gate-who = Who are you?
gate-choose = Choose your code first.
gate-type = Type your PIN.
gate-end = Go on
gate-checking = One moment. The PIN is being checked.
gate-wrong = That PIN is not right.
gate-wait = { $count ->
    [one] Try again in one second.
   *[other] Try again in { $count } seconds.
}
gate-wait-minutes = { $count ->
    [one] Try again in one minute.
   *[other] Try again in { $count } minutes.
}
gate-hold = Press here and hold for three seconds
gate-hold-longer = A little longer: hold for three seconds
gate-no-pin = No PIN is set on this tablet, so anyone can do this.
gate-shut = This stays shut
gate-unreadable = The file with the PINs cannot be used. { $why }
