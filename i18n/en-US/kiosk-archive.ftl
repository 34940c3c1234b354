# Handing records in to the office, from the Yard.
yard-hand-in = Hand in to the office
yard-hand-in-where = Where shall the records go?
yard-hand-in-why = They are copied there. They wait here until a receipt of the office comes back the same way.
yard-hand-in-none = No stick is plugged in. Plug one in, wait a moment, then look again.
yard-hand-in-again = Look again
yard-hand-in-to = Copy to { $place }
yard-hand-in-left = Not now
yard-hand-in-busy = One moment. Do not pull out the stick.
yard-exported = { $count ->
    [one] One record is copied to { $place }. It counts as archived once the office's receipt comes back.
   *[other] { $count } records are copied to { $place }. They count as archived once the office's receipt comes back.
}
yard-archived = { $count ->
    [one] The office has one record in its archive. It no longer waits here.
   *[other] The office has { $count } records in its archive. They no longer wait here.
}
yard-not-handed-in = The records could not be handed in. { $why }
yard-receipt-refused = The receipt { $file } is not believed. { $why }
yard-office-whose = Is this the key of the office?
yard-office-why = A receipt lies there, signed by this key. Call the office and compare all of it:
yard-office-once = From then on this tablet believes this key and no other.
yard-office-yes = It is the key of the office
yard-office-known = The key of the office is kept. Hand in once more, so that its receipt counts.
gate-office = Is this the key of the office?
    .line = Staff say so, after they compared it with the office.
