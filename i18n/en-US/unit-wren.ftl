# Words of the unit Wren alone.
unit-wren = Wren
    .kind = Class C motorhome

# Places: they read after 'is'.
wren-keys-hook = on the hook inside the entry door
wren-lp-valve = on the curb side, behind the second low door after the entry door
wren-furnace-exhaust = on the curb side, below the galley window
wren-hose-tube = in the tube of the rear bumper
wren-sewer-valves = on the street side, at the rear: black tank with the rear handle, grey tank with the front handle
wren-rinse-inlet = on the street side, at the rear, under the black cap marked TANK RINSE
wren-fresh-fill = on the street side, in the middle, under the blue cap marked WATER
wren-city-inlet = on the street side, in the middle: the screw inlet with the check valve
wren-water-heater = on the street side, in the middle, behind the vented door
wren-generator = on the street side, in the middle, behind the low door
wren-generator-exhaust = on the street side, in the middle: the pipe that points down and out
wren-fuel-cap = on the street side, at the front: the black cap with a key lock
wren-disconnect = just inside the entry door, by the step
wren-extinguisher = just inside the entry door, at knee height
wren-control-panel = in the galley, on the control panel
wren-lp-detector = in the galley, low on the cabinet
wren-spare-fuses = in the fuse pack, in the galley drawer
wren-gfci = on the bath wall
wren-breaker-panel = at the foot end of the bed, below the mattress
wren-bed-exit = the bed window, curb side at the rear
wren-bunk-exit = the bunk window, street side at the front
wren-boost-switch = on the dash, on the street side of the wheel

# What is special about it.
wren-one-branch = The galley and dinette outlets share one breaker.
