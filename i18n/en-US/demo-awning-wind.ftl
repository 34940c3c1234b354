# The awning and the wind
demo-awning-wind-wind = Should the awning be out or in?
demo-awning-wind-into-out = Out
demo-awning-wind-into-in = In
demo-awning-wind-card-sit = Wind { $wind }, and you sit under it
demo-awning-wind-card-hike = Wind { $wind }, and you go hiking
demo-awning-wind-card-gusts = Gusts of { $gust }, dry
demo-awning-wind-say-hike = Wind can double in minutes here. If you cannot watch the awning, close it.
demo-awning-wind-say-limit = The limit is { $awning_wind_limit }.
demo-awning-wind-say-safe = That is right: in is always safe. In low wind, while you watch it, the awning may be out.
