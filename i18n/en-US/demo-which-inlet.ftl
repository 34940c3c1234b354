# Three inlets that look alike
demo-which-inlet-inlet = You hook up to the campground tap. Where does the hose go? Tap it on the plan.
demo-which-inlet-hose = Which hose do you take?
demo-which-inlet-tap = What goes on the tap first?
demo-which-inlet-card-white = The white water hose
demo-which-inlet-card-rinse-hose = The rinse hose
demo-which-inlet-card-sewer-hose = The sewer hose
demo-which-inlet-card-regulator = The pressure regulator
demo-which-inlet-card-straight = The hose, straight onto the tap
demo-which-inlet-card-half-open = The hose, with the tap half open
demo-which-inlet-say-rinse = That fills the toilet tank, and sewage comes up through the toilet. Look for the drop, not the brush.
demo-which-inlet-say-fuel = That is fuel. Read the word on the cap.
demo-which-inlet-say-fresh = That fills the fresh tank and runs over. The tap goes to the water inlet, { $place_city_inlet }.
demo-which-inlet-say-hose = That hose has touched sewage or cleaned the tank. Drinking water needs the white hose.
demo-which-inlet-say-pressure = The tap can be { $limit_tap_pressure }. Your pipes can take { $water_most }.
