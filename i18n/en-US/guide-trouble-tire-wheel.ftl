# Guide: tires and wheels
guide-trouble-tire-wheel = Flat tire, wobble or loose wheel
    .stop = any doubt, the side of a highway, a missing nut, smoke or smell from a hub
    .find = tire, flat, puncture, nail, wheel, wobble, shake, loose, nut, lug, pressure, low, blowout, hub, spare
    .note = A tire that was just driven reads high. One that only just meets its cold figure is low. Add air, and never let any out. Do not tighten nuts yourself. After road help has changed a wheel, its nuts are set to { $wheels_torque } and checked again after { $wheels_recheck }. Write down the time and the distance.

caution-trouble-tire-wheel-h1 = Passing traffic can hit you.
    .title = Passing traffic
    .harm = It can kill you.
    .avoid = Get out on the side away from it. Wait behind a barrier.
caution-trouble-tire-wheel-h2 = A unit on a jack will drop.
    .title = Unit on a jack
    .harm = It will kill you.
    .avoid = Never put any part of you under it.

row-trouble-tire-wheel-stop = Ease off. Do not brake hard. Pull well off the road, onto flat hard ground. Turn the hazard lights on. Get people out. Put the triangles back along the road.
    .ask = Are you well clear of traffic?
    .no = Get everyone out on the safe side and behind a barrier. Then call.
row-trouble-tire-wheel-hub = Look and smell from a step away.
    .ask = Is there smoke, or a hub that gives off heat?
row-trouble-tire-wheel-nuts = Look at the pointers and the nuts of each wheel.
    .ask = Is a pointer turned, a nut missing or a ring bright, or did you feel a wobble?
row-trouble-tire-wheel-gauge = { $tires_twins ->
        [true] Gauge every tire. Where two sit side by side, gauge both. A flat inner tire can look fine from outside. Below this a tire counts as flat: { $tire_flat }.
       *[other] Gauge every tire. Below this a tire counts as flat: { $tire_flat }.
    }
    .ask = Does any tire count as flat?
row-trouble-tire-wheel-low = Below this a tire needs air: { $tire_add_air }. The cold pressures are { $tires_cold }.
    .ask = Does any tire need air?
row-trouble-tire-wheel-add-air = Add air. Stand in front of the tread, not beside the side wall. Look for a nail or a bulge. Wait { $limit_tire_hold } and gauge again.
    .ask = Is the tire clean, and does it hold?
row-trouble-tire-wheel-drive = Drive { $limit_tire_drive } at low speed. Gauge again.
    .ask = Does it show the same as before, or more?
