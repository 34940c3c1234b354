# One air conditioner or two
demo-two-airs-hot-day = It is hot, and the site has only a { $post } post. What do you do?
demo-two-airs-card-one-air = One air conditioner, with the adapter and the fridge on propane
demo-two-airs-card-both-airs = Both air conditioners, with the adapter and nothing else
demo-two-airs-card-two-posts = Two adapters and two posts
demo-two-airs-card-low = Both air conditioners on low
demo-two-airs-say-both = Both with the charger draw { $long } for hours. On { $post } the limit for hours is { $most_long }.
demo-two-airs-say-two-posts = Never join two posts. It can kill someone and burn the wiring.
demo-two-airs-say-low = On low only the fan is slower. The rest draws the same power.
demo-two-airs-say-too-much = That is too much for this post. Look at what each thing draws.
