# Cleaning
topic-cleaning = Cleaning
why-cleaning = Wrong cleaners spoil plastic windows and the seals of the tanks.
step-cleaning = Cleaning
show-cleaning-windows = Wipe a window with a soft cloth and water. The plastic scratches.
show-cleaning-bleach = Say that no bleach goes down a drain.
show-cleaning-broom-clean = Say what 'broom clean' means: swept, wiped, trash out, dishes done.
show-cleaning-griddle = The griddle outside comes back clean too. A dirty one costs { $fees_griddle }.
know-cleaning-windows = Wipe plastic windows only with water and a soft cloth.
know-cleaning-sweep = Sweep, wipe and take out the trash before you return.
know-cleaning-bleach = Put no bleach in drains or toilet.

caution-cleaning-1 = Glass cleaner cracks plastic windows.
    .title = Glass cleaner
    .harm = You pay for new windows.
    .avoid = Use only water and a soft cloth.
caution-cleaning-2 = A unit that comes back dirty must be cleaned by us.
    .title = Dirty unit
    .harm = It costs { $fees_clean }.
    .avoid = Sweep it, wipe it and take the trash out.

question-cleaning-1 = There is sand inside. What do I do?
    .answer = Sweep it out. You need not wash the outside.
