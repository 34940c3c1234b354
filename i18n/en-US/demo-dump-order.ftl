# Emptying the tanks with one grey tank
demo-dump-order-order = Your toilet tank is two-thirds full. Put the steps in order.
demo-dump-order-card-gloves = Put on gloves
demo-dump-order-card-hose = Hose to the unit, then into the sewer hole
demo-dump-order-card-open-black = Open black
demo-dump-order-card-close-black = Close black when the elbow runs clear
demo-dump-order-card-open-grey = Open grey
demo-dump-order-card-close-grey = Close grey
demo-dump-order-card-lift = Drain the hose, unit end first. Unhook, rinse, cap
demo-dump-order-card-wash = Wash your hands
demo-dump-order-card-bowl = Water and one sachet in the bowl
demo-dump-order-say-hose-first = Stop: now it runs over your shoes. Hose first, then valve.
demo-dump-order-say-black-first = Black goes first. The grey water then rinses the hose clean.
demo-dump-order-say-one-at-a-time = One at a time. With both open, black can run back into the grey tank.
demo-dump-order-say-dry-tank = A dry tank makes solids stick. Add { $limit_bowl_water } of water and a sachet.
demo-dump-order-say-look-again = Think of what must be done before this.
