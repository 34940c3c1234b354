# The gate.
gate-close = Close the kiosk?
    .line = Everything that was shown as done is saved. The walk goes on from there at the next start.
gate-unlock = Go on where the tablet was left?
    .line = The page that was open comes back as it was.
gate-leave = Leave these pages?
    .line = From here on the tablet is for staff.
gate-settings = Change the settings?
    .line = They hold for everybody who uses this tablet.
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
gate-staff = Who works here?
    .line = Staff alone may see and change this.
gate-sign-on = Sign on
    .line = Walks that you lead from now on carry your code.
gate-begin = Who leads this walk?
    .line = Sign on first. The record carries your code.
gate-go-on = Who leads this walk from here?
    .line = Nobody or somebody else is on duty. From here on the record carries your code.
gate-take-over = Who takes this walk over?
    .line = From here on the record carries your code.

# The Yard.
yard-no-pin = No PIN is set on this tablet. Agents type their code, and anyone can close the kiosk.
yard-open-ended = The unit is not handed over. The end of it waits for your signature.
yard-nobody-on = Nobody has signed on.
yard-on-duty = On duty: { $code }
yard-sign-on = Sign on
yard-sign-on-other = Another agent
yard-sign-off = Sign off
yard-staff = Staff and PINs

# Opening and Walk.
opening-agent-on = Who leads this walk
opening-again-title = What changes?
opening-to-walk = Back to the walk
opening-asked-again = { $count ->
    [0] Every answer so far stands: its words stay the same.
    [one] One answer is asked for again, since its words change.
   *[other] { $count } answers are asked for again, since their words change.
}
walk-changes = Something changes
walk-to-opening = Change party, trip or language
walk-take-over = Another agent takes over
walk-swap = Another unit

# Another unit.
swap-title = The party takes another unit
swap-what = A walk for the other unit begins with the same party. An answer stands there if its words are the same, and is asked for again if not. This walk ends as not handed over, and you sign that later from the Yard.
swap-why = Why, if you wish to say
swap-lacks = Choose the unit. Then the button to go on stands here.
swap-keep = Go on with { $unit }
swap-reason = Swapped for { $unit }.
swap-reason-why = Swapped for { $unit }. { $why }
swap-done = { $count ->
    [0] The walk for { $unit } has ended and waits in the Yard for your signature. No answer stands here.
    [one] The walk for { $unit } has ended and waits in the Yard for your signature. One answer stands here, since its words are the same.
   *[other] The walk for { $unit } has ended and waits in the Yard for your signature. { $count } answers stand here, since their words are the same.
}

# First start.
first-person-why = Without a PIN anyone can close the kiosk. You can also add people later, from the Yard.

# Staff.
staff-title = Staff and PINs
staff-what = A PIN says who did what. It does not lock the key or the records.
staff-role-agent = Agent
staff-role-agent-may = Leads walks
staff-role-office = Office
staff-role-office-may = Leads walks, and says who works here
staff-add = Add a person
staff-first-title = Add the first person
staff-first-what = The first person works in the office and can add the others. From then on a PIN is needed to lead a walk and to close the kiosk.
staff-code = Code that stands on records, such as initials
staff-code-example = JM
staff-code-form = A code has 1 to 12 letters, digits and dashes.
staff-code-taken = Somebody has this code.
staff-code-next = Choose a PIN
staff-own-pin = Change my PIN
staff-new-pin = New PIN
staff-remove = Remove
staff-remove-title = Remove { $code }?
staff-remove-what = Records keep the code. The person can no longer sign on.
staff-remove-yes = Remove
staff-pin-title = PIN of { $code }
staff-pin-first = Choose a PIN of 4 to 12 digits.
staff-pin-again = Type the same PIN again.
staff-pin-differs = The two PINs differ. Choose one again.
staff-pin-what = Nobody can read a PIN here. If it is forgotten, the office sets a new one.
staff-pin-next = Go on
staff-pin-keep = Keep the PIN
staff-saving = One moment. It is being saved.
staff-to-yard = To the Yard
