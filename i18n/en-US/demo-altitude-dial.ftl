# The altitude dial of the generator
demo-altitude-dial-marrow = You run the generator at Marrow Wells, { $highest } up. Set the dial.
    .value = { $number }
demo-altitude-dial-cinder = You drive up to Cinder Saddle, { $highest } up. Set the dial.
    .value = { $number }
demo-altitude-dial-sallow = You drive down to Sallow Flats, { $highest } up. Set the dial.
    .value = { $number }
demo-altitude-dial-say-thousands = Each number stands for a thousand feet of height. Here the dial stands at { $number }.
demo-altitude-dial-say-too-low = The generator smokes and runs unevenly. Turn the dial up to { $number }.
demo-altitude-dial-say-too-high = With so high a number the generator gets too little fuel. It runs hot and can be ruined. Turn the dial down before you start it.
