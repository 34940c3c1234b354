# Camera and backing
topic-backup-camera = Camera and backing up
why-backup-camera = Most small damage is done while backing up, at less than { $limit_backing_speed }.

step-backup-camera = Camera and backing up
show-backup-camera-camera = Point at the camera. It shows what is low and near. It does not show the roof, which is { $size_height } up.
show-backup-camera-lens = Let the renter wipe the lens. A dirty lens hides people.
show-backup-camera-helper = Stand as the helper where the driver sees you in the mirror. If the helper is gone, the driver stops.
show-backup-camera-signs = Agree on hand signs: stop, back, and one for each side.
show-backup-camera-look = Get out and look before you back up. The unit is { $size_length } long.
know-backup-camera-look = Get out and look before you back up.
know-backup-camera-helper = Have a helper stand where you can see them.
know-backup-camera-stop = Stop when you cannot see them.

caution-backup-camera-1 = A person behind the unit can be crushed as you back up.
    .title = Person behind you
    .harm = It can kill them.
    .avoid = Keep the path clear. Stop if you lose sight of your helper.
caution-backup-camera-2 = The camera cannot see branches or the edge of a roof.
    .title = Branches and roof edges
    .harm = They tear the roof of the unit. You pay for it.
    .avoid = Get out and look up first.

question-backup-camera-1 = { $fitted_hitch ->
        [yes] The trailer goes the wrong way when I back up. Why?
       *[no] { "" }
    }
    .answer = A trailer turns against the wheel. Put your hand on the bottom of the wheel. Move it the way you want the trailer to go.
