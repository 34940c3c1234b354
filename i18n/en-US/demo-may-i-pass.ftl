# Signs over the road
demo-may-i-pass-signs = Your limit is { $clearance_min_sign }. Where may you drive through?
demo-may-i-pass-roof = A friend wants to strap a bike box on the roof. What do you say?
demo-may-i-pass-into-yes = Drive through
demo-may-i-pass-into-no = Do not drive through
demo-may-i-pass-into-unknown = Stop, get out, look
demo-may-i-pass-card-low = A sign says { $sign }
demo-may-i-pass-card-meters = A sign says { $sign }
demo-may-i-pass-card-high = A sign says { $sign }
demo-may-i-pass-card-tree = No sign. A tree hangs over the road
demo-may-i-pass-card-nothing-up = Nothing goes on the roof
demo-may-i-pass-card-same-limit = Yes. The limit stays the same
demo-may-i-pass-card-slowly = Yes, if we drive slowly
demo-may-i-pass-say-bumps = The unit is { $size_height } high. So little room is left that a bump can lift the roof into it.
demo-may-i-pass-say-meters = Read the measure on the sign. { $sign } is less than your { $limit }.
demo-may-i-pass-say-compare = Compare the sign with your limit: { $clearance_min_sign }.
demo-may-i-pass-say-tree = Nobody has measured it. Stop, get out and look.
demo-may-i-pass-say-roof = Nothing goes on the roof.
