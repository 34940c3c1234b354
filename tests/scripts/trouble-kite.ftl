# Words of the guide `trouble-kite`.
guide-trouble-kite = The kite does not fly
    .stop = a wire is near
    .find = kite, string
caution-trouble-kite-h1 = A kite in a wire is live.
    .title = Live kite
    .harm = The shock can kill.
    .avoid = Let go and stand clear.
row-trouble-kite-wire = Look up.
    .ask = Is it in a wire?
row-trouble-kite-string = Pull the string.
    .ask = Does it pull back?
row-trouble-kite-tail =
    .ask = Is the tail on?
