# The plot of a trip: what is left, day by day. Days in full are weekday-1 to weekday-7 of figures.ftl.

plot-all = all left
plot-none = none left
plot-lasts = lasts
plot-weekday-1 = Mon
plot-weekday-2 = Tue
plot-weekday-3 = Wed
plot-weekday-4 = Thu
plot-weekday-5 = Fri
plot-weekday-6 = Sat
plot-weekday-7 = Sun

# Waste tanks are drawn by the room that is left in them.
plot-name-fresh = Fresh water
plot-name-grey = Room for grey water
plot-name-toilet = Room in the toilet
plot-name-battery = House battery
plot-name-propane = Propane
plot-name-generator = Generator fuel
plot-ends-fresh = to { $day }
plot-ends-grey = to { $day }
plot-ends-toilet = to { $day }
plot-ends-battery = to { $day }
plot-ends-propane = to { $day }
plot-ends-generator = to { $day }
