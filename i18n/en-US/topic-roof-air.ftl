# Roof air conditioner
topic-roof-air = Roof air conditioner
why-roof-air = It is the biggest electric load. Renters try to run too much on a small post.

step-roof-air = Roof air conditioner
show-roof-air-rest = Let the renter switch it on and off. Then wait { $limit_air_rest } before it goes on again.
show-roof-air-fan = In desert heat the fan runs on high. Show the filter. It must be clean.
show-roof-air-early = Pull the shades down. Start it early in the day, before the unit is hot.
show-roof-air-two = Two air conditioners need a { $limit_plug_big } post. On a { $limit_plug_mid } post, only one runs.
know-roof-air-post-generator = Use it only on a { $limit_plug_mid } or { $limit_plug_big } post, or on the generator.
know-roof-air-post = Use it only on a { $limit_plug_mid } or { $limit_plug_big } post.
know-roof-air-rest = After you turn it off, wait { $limit_air_rest } before you turn it on.
know-roof-air-early = Start it early in the day, before the unit is hot.
know-roof-air-one = On a { $limit_plug_mid } post, run only one of the two.

caution-roof-air-1 = Two air conditioners on a { $limit_plug_mid } post can overheat the plug.
    .title = Two on a small post
    .harm = The plug can start a fire and burn people badly.
    .avoid = On a { $limit_plug_mid } post run only one.
caution-roof-air-2 = The air conditioner is switched on again too soon.
    .title = Back on too soon
    .harm = The compressor can stall and wear out.
    .avoid = Wait { $limit_air_rest } before you switch it back on.
caution-roof-air-3 = If the power fails, a closed unit can get deadly hot.
    .title = Heat when the power fails
    .harm = The heat can kill a child or a pet.
    .avoid = Take children and pets with you. Never leave them inside alone.

question-roof-air-1 = The air is only twenty degrees cooler. Is that all it can do?
    .answer = Yes, that is normal. Air that goes in at { $limit_air_in } comes out at { $limit_air_out_cool } to { $limit_air_out_warm }.
