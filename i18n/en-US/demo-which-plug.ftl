# Which adapter for which post
demo-which-plug-posts = The plug of your cord is for { $shore_cord }. What do you plug in where?
demo-which-plug-card-post-mid = Campground post, { $limit_plug_mid }, three big holes
demo-which-plug-card-post-both = Campground post with { $limit_plug_mid } and { $limit_plug_big } side by side
demo-which-plug-card-post-big = Campground post, { $limit_plug_big } only, four holes
demo-which-plug-card-outlet = Household outlet, { $limit_outlet_small }
demo-which-plug-card-dryer = Outlet for a clothes dryer in a house, four holes
demo-which-plug-into-cord = The cord alone
demo-which-plug-into-adapter-big = The adapter from { $limit_plug_big } to { $limit_plug_mid }
demo-which-plug-into-adapter-small = The adapter from { $limit_outlet_small } to { $limit_plug_mid }
demo-which-plug-into-adapter-mid = The adapter from { $limit_plug_mid } to { $limit_plug_big }
demo-which-plug-into-adapters-two = Both adapters, and no air conditioner
demo-which-plug-into-nothing = Nothing
demo-which-plug-say-dryer = Stop. Home outlets that look big may carry { $limit_mains_two_legs }, wired the wrong way. Use a campground post.
demo-which-plug-say-more-power = It gives no more power: your unit still takes only { $shore_cord }.
demo-which-plug-say-no-force = It does not fit. Do not force or cut a plug.
demo-which-plug-say-look-again = Look at the blades of your plug and at the holes.
