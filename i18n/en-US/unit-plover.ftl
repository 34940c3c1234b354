# Words of the unit Plover alone.
unit-plover = Plover
    .kind = campervan

# Places: they read after 'is'.
plover-keys-hook = on the hook beside the sliding door
plover-heater-exhaust = under the van, on the curb side in the middle
plover-cassette-door = on the curb side, at the rear, behind the small door
plover-bay-curb = on the curb side, at the rear, behind the low locker door
plover-rear-ladder = at the rear: stay on the ground
plover-spare = under the rear
plover-city-inlet = inside the rear door on the street side: the screw inlet
plover-outside-shower = behind the rear door on the street side
plover-hose-tube = in the tray on the street side, at the rear
plover-cord-hatch = on the street side, at the rear: the cord plugs in there
plover-fresh-fill = on the street side, at the rear, under the blue cap marked WATER
plover-sewer-valves = under the van, on the street side at the rear: one grey handle
plover-fuel-cap = on the street side, at the front: the green cap
plover-fluid-cap = on the street side, at the front: the blue cap beside the fuel cap
plover-jump-pack = under the front passenger seat
plover-extinguisher = just inside the sliding door, behind the passenger seat
plover-control-panel = in the galley: the pump switch above the sink, the tank lamps beside it
plover-inverter-panel = in the galley, beside the pump switch
plover-roof-vent = on the ceiling between galley and bed
plover-gfci = on the end panel of the galley
plover-heater-panel = on the wall of the living area, street side
plover-breaker-panel = by the bed, on the street side
plover-disconnect = by the bed, on the breaker panel
plover-solar-panel = on the panel by the bed, street side
plover-battery-box = under the bed, on the street side
plover-inverter = under the bed, on the street side
plover-water-heater = by the bed, on the street side
plover-water-heater-switch = on the panel by the bed, street side
plover-bed-exit = the inside handle of the rear doors, behind the bed
plover-spare-fuses = in the fuse pack, in the glove box

# Ways out.
exit-driver-door = the driver's door
exit-passenger-door = the passenger door
plover-exit-entry-door = the sliding door
plover-exit-bed-exit = the rear doors (handle on the inside)

# Loaned items.
item-key-fob = Key fob and key of the cassette door
item-tap-adapter = Tap adapter and fill nozzle
item-leveling-blocks-six = Leveling blocks, set of six
item-shore-cord = Shore cord, three blades
item-grey-hose = Grey drain hose
item-cassette = Toilet cassette, fixed
item-folding-table-small = Folding table, small
item-kitchen-tote-small = Kitchen tote, fourteen pieces
item-jump-pack = Jump pack
item-window-shades = Window shades, set of six
item-awning-crank = Awning crank rod

# Loads.
load-induction = Induction zone
load-heater-starts = Diesel heater, starting
load-vent-fan = Vent fan

# What is special about it.
plover-hair-dryer = Use a hair dryer on its low setting only.
plover-loose-cord = The cord comes off the van. First push it into the inlet of the van and turn the ring. Then go to the post.
