# Words of the unit Heron alone.
unit-heron = Heron
    .kind = travel trailer

# Places: they read after 'is'.
heron-furnace-exhaust = on the curb side, ahead of the entry door
heron-chocks = at the wheels, on both sides
heron-tires-rear-curb = on the curb side, at the two axles
heron-outdoor-kitchen = on the curb side, at the rear, under the big hatch
heron-outside-shower = on the curb side, at the rear, at the sink of the outdoor kitchen
heron-rear-ladder = at the rear, on the ground: this trailer has no ladder
heron-cord-hatch = on the street side, at the rear: the inlet that the cord twists into
heron-fresh-fill = on the street side, at the rear, under the blue cap marked WATER
heron-city-inlet = on the street side, at the rear: the screw inlet
heron-sewer-valves = on the street side, at the rear. From rear to front: black tank, grey tank two, grey tank one
heron-rinse-inlet = on the street side, at the rear, under the black cap marked TANK RINSE
heron-slide = on the street side, in the middle
heron-water-heater = on the street side, at the front, behind the vented door
heron-bay-curb = on the curb side, at the front
heron-extinguisher = just inside, beside the entry door
heron-slide-switch = just inside the entry door
heron-control-panel = in the galley, on the control panel
heron-lp-detector = in the galley, low on the cabinet
heron-smoke-alarm = on the galley ceiling, with another over the bed
heron-spare-fuses = in the fuse pack, in the galley drawer
heron-roof-air = on the ceiling of the living area, with another over the bed
heron-thermostat = on the wall of the living area
heron-breaker-panel = on the hall wall, by the bath
heron-gfci = on the bath wall
heron-bed-exit = the bed window, curb side at the front
heron-bunk = at the rear, across the trailer
heron-bunk-exit = the bunk window, street side at the rear
heron-battery-box = on the tongue
heron-disconnect = on the tongue, on the battery box
heron-lp-valve = on the tongue, under the gray cover: one valve on each cylinder
heron-breakaway = on the tongue, beside the jack
heron-cab = in the cab of the vehicle that pulls
heron-coupler = at the tip of the tongue

# Ways out.
heron-exit-bed-exit = the bed window, curb side at the front
heron-exit-bunk-exit = the bunk window, street side at the rear

# Loaned items.
item-key-ring-trailer = Key ring: entry, bay, coupler lock
item-shore-cord-big = Shore cord, four blades
item-adapter-mid = Adapter to a three-blade post outlet
item-between-wheel-chock = Chock that goes between the wheels
item-stabilizer-crank = Stabilizer crank
item-slide-crank = Slide-out hand crank
item-griddle = Outdoor griddle
item-breakaway-pin = Spare breakaway pin
item-wheel-wrench = Wheel-nut wrench and extension
item-ball-mount = Ball mount with the head of the equalizing hitch
item-spring-bar = Spring bar
item-lift-bracket = Lift bracket with sway control
item-tow-mirror = Clip-on tow mirror
item-brake-controller = Plug-in brake controller, only where the vehicle has none

# Loads.
load-air-bed = Roof air conditioner, bedroom
load-out-fridge = Refrigerator of the outdoor kitchen
load-slide = Slide-out, out and in

# What is special about it.
heron-second-extinguisher = Show the second one. It is inside the outdoor kitchen, on the curb side at the rear.
heron-two-places = Count each item together, number by number: first what is in the trailer, then what is on the tow vehicle.
heron-one-branch = The galley outlets share one breaker.
heron-loose-cord = The cord is loose. Push it into the inlet of the trailer and twist it until it locks, before you go to the post.
heron-grey-two = Grey tank two takes the galley and the outdoor kitchen. Grey tank one takes the bath.
