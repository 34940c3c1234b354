# The carbon monoxide alarm at night
demo-co-alarm-first = The carbon monoxide alarm sounds at night. What do you do first?
demo-co-alarm-headache = Two of you have a headache, and the alarm is quiet. What now?
demo-co-alarm-card-outside = Wake everyone and go outside
demo-co-alarm-card-windows = Open the windows and wait
demo-co-alarm-card-silence = Silence it and look at what is running
demo-co-alarm-card-call = Call the lot
demo-co-alarm-card-outside-help = Everyone goes outside, and we call for medical help
demo-co-alarm-card-sleep = We go on sleeping. The alarm is quiet
demo-co-alarm-card-pills = They take something for the headache and rest
demo-co-alarm-say-windows = The air can stay poisonous for a long time. Get out and leave the door open behind you.
demo-co-alarm-say-silence = You can pass out while you look. Get everyone out first.
demo-co-alarm-say-call = Get everyone out first. Then call from outside.
demo-co-alarm-say-quiet = It may be carbon monoxide all the same. An alarm can fail. Go outside and get medical help.
