"""The rest of the figures: propane, generator, loads, road, tires, tow, awning, level, trip, bill."""

import math
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from fractions import Fraction as F

import handbook as h
from handbook import Absent, Missing
from ron import si, to

# Propane


def gas_there(g):
    g.need("propane")
    full = g.fact("propane.full", "lb")
    if g.has("propane.water_capacity"):
        # 29 CFR 1910.110 Table H-27: 42 % of the water for a specific gravity of 0.504.
        if full > math.ceil(round(g.fact("propane.water_capacity", "lb") * F(42, 100), 9)):
            raise Missing("propane.full")
    return full * g.level("propane", "assumed.start_propane")


def duty(g):
    return g.fact("assumed.heat_duty_cold" if h.is_cold(g) else "assumed.heat_duty", "")


def propane_hours(g):
    g.need("propane", "furnace")
    heat = gas_there(g) * g.fact("assumed.propane_heat", "BTU/lb")
    burn = g.fact("furnace.input", "BTU/h")
    if burn <= 0:
        raise Missing("furnace.input")
    out = [("flame-on", heat / burn, "h", 1, "down"), ("as-usual", heat / burn / duty(g), "h", 1, "down")]
    if g.has("propane.cylinders"):
        out.append(("each-cylinder", heat / burn / g.fact("propane.cylinders", ""), "h", 1, "down"))
    return out, None


def daily_gas(g):
    furnace = fridge = water = cooking = F(0)
    if g.has("furnace"):
        furnace = g.fact("furnace.input", "BTU/h") * g.fact("assumed.heat_time", "h") * duty(g)
    if g.has("fridge.propane"):
        fridge = g.fact("fridge.propane", "BTU/h") * 24
    if g.has("water_heater.propane"):
        time = "heater_tank_time" if g.word("water_heater.kind") == "Tank" else "heater_flow_time"
        water = g.fact("water_heater.propane", "BTU/h") * g.fact("assumed." + time, "h")
    if g.has("cook") and g.word("cook.kind") == "Propane":
        cooking = g.fact("assumed.cooking", "BTU")
    return furnace + water + cooking, fridge


def propane_days(g):
    heat = gas_there(g) * g.fact("assumed.propane_heat", "BTU/lb")
    day = sum(daily_gas(g))
    if day <= 0:
        raise Absent("propane")
    return [("", heat / day, "d", 1, "down")], None


# Generator and fuel


def fuel(g):
    level = g.told("", "start", "fuel")
    if level > 1:
        raise Missing("trip.start.fuel")
    return level


def generator_hours(g):
    g.need("generator")
    pickup, tank = g.fact("generator.pickup", ""), g.fact("engine.tank", "gal")
    there = tank * max(fuel(g) - pickup, F(0))
    half, full = g.fact("generator.burn_half", "gal/h"), g.fact("generator.burn_full", "gal/h")
    return [("half-load", there / half, "h", 1, "down"), ("full-load", there / full, "h", 1, "down")], None


def height(g, unit):
    return g.told_or(unit, ("highest",), "site.elevation")


def watts(g):
    g.need("generator")
    rule = g.raw("generator.derate")
    kind, metres = rule[""], height(g, "m")
    if kind in ("Linear", "Step"):
        steps = max(metres - to(si(rule["above"]), "m"), F(0)) / to(si(rule["per"]), "m")
        if kind == "Step":
            steps = math.floor(round(steps, 9))
        part = max(1 - to(si(rule["loss"]), "") * steps, F(0))
    else:
        rows = [(to(si(row["at"]), "m"), to(si(row["part"]), "")) for row in rule["rows"]]
        if metres > rows[-1][0]:
            raise Missing("generator.derate")
        part = F(1)
        for at, row in rows:
            if metres >= at:
                part = row
    return g.fact("generator.rated", "W") * part


def generator_watts(g):
    return [("", watts(g), "W", 0, "down")], None


def generator_dial(g):
    g.need("generator")
    top = g.fact("generator.dial_top", "")
    return [("", min(max(height(g, "ft") / 1000, F(0)), top), "", 0, "nearest")], None


def fuel_range(g):
    g.need("engine")
    left = max(fuel(g) - g.fact("engine.reserve", ""), F(0))
    return [("", g.fact("engine.tank", "gal") * left * g.fact("engine.economy", "mpg"), "mi", 0, "down")], None


def heater_hours(g):
    g.need("diesel_heater")
    there = g.fact("engine.tank", "gal") * max(fuel(g) - g.fact("diesel_heater.pickup", ""), F(0))
    return [("", there / g.fact("diesel_heater.burn", "gal/h"), "h", 0, "down")], None


# Loads


def loads_fit(g):
    if not g.sheet["loads"]:
        raise Absent("loads")
    mains, long_part = g.fact("limit.mains", "V"), g.fact("assumed.long_part", "")
    at = g.asked("supply")
    kind = at[""] if at else next(
        (k for s, k in (("shore", "Post"), ("generator", "Generator"), ("inverter", "Inverter")) if g.has(s)), "Nothing"
    )  # fmt: skip
    branch = g.fact("shore.branch", "A") * mains if g.has("shore") else None
    legs, surge = 1, None
    if kind == "Nothing":
        each, each_long = F(0), F(0)
    elif kind == "Post":
        g.need("shore")
        cord = g.fact("shore.cord", "A")
        post = to(si(at["0"]), "A") if at else cord
        legs = 2 if g.fact("shore.legs", "") == 2 and post >= cord else 1
        each = min(post, cord) * mains
        each_long = each * long_part
    elif kind == "Generator":
        breaker = g.fact("generator.breaker", "A") * mains if g.has("generator") else None
        each = min(watts(g), breaker)
        each_long = min(breaker * long_part, each)
        surge = watts(g)
    else:
        g.need("inverter")
        each, each_long = g.fact("inverter.power", "W") * g.fact("assumed.inverter_part", ""), None
        surge = g.fact("inverter.peak" if g.has("inverter.peak") else "inverter.power", "W")
    own = {"Post": "Shore"}.get(kind, kind)
    total = long = branch_sum = branch_long = more = F(0)
    leg_sum, leg_long, bad = [F(0), F(0)], [F(0), F(0)], False
    for on in g.asked("on") or []:
        load = next((load for load in g.sheet["loads"] if load["id"] == on["load"]), None)
        if load is None:
            raise Missing("loads." + on["load"])
        draw = load["settled"] if on.get("settled") and load.get("settled") else load["draw"]
        w = to(si(draw), "W")
        is_long = bool(load.get("long"))
        total += w
        long += w if is_long else 0
        for leg in (0, 1):
            if legs == 1 and leg == 0 or legs == 2 and load.get("leg") in (None, {"": ["One", "Two"][leg]}):
                leg_sum[leg] += w
                leg_long[leg] += w if is_long else 0
        if load.get("branch"):
            branch_sum += w
            branch_long += w if is_long else 0
        if load.get("start"):
            more = max(more, to(si(load["start"]), "W") - w)
        allowed = load.get("from") is None or {"": own} in load["from"]
        small = kind == "Post" and legs == 1 and each <= 1800 and load["id"].startswith("air-")
        bad |= not allowed or small or kind == "Nothing"
    fits = not bad and max(leg_sum) <= each and (each_long is None or max(leg_long) <= each_long)
    if branch is not None:
        fits = fits and (kind == "Nothing" or branch_sum <= branch and branch_long <= branch * long_part)
    if surge is not None and more > 0:
        fits = fits and total + more <= surge
    out = [("sum", total, "W", 0, "exact"), ("long", long, "W", 0, "exact"), ("most", each * legs, "W", 0, "exact")]
    if each_long is not None:
        out.append(("most-long", each_long * legs, "W", 0, "exact"))
    return out, ("yes" if fits else "no") if g.asked("on") else None


# NEC chapter 9 table 8, stranded copper.
OHMS = {"18": "7.95", "16": "4.99", "14": "3.14", "12": "1.98", "10": "1.24", "8": "0.778", "6": "0.491", "2": "0.194"}


def voltage_drop(g):
    cord = g.asked("cord")
    if not cord:
        raise Missing("trip.cord")
    if cord["gauge"] not in OHMS:
        raise Missing("trip.cord.gauge")
    length, v = g.told("ft", "cord", "length"), g.told_or("V", ("cord", "volts"), "limit.mains")
    if cord.get("current"):
        current = g.told("A", "cord", "current")
    else:
        at = g.asked("supply")
        post = g.fact("limit.outlet_small", "A")
        if at and at[""] == "Post":
            post = to(si(at["0"]), "A")
            post = min(post, g.fact("shore.cord", "A")) if g.has("shore") else post
        current = post * g.fact("assumed.long_part", "")
    drop = 2 * length * F(OHMS[cord["gauge"]]) / 1000 * current
    share = drop / v * 100
    verdict = "yes" if share <= g.fact("assumed.drop_most", "%") else "no"
    return [("drop", drop, "V", 2, "up"), ("share", share, "%", 1, "up")], verdict


# Road, heat, tires


def speed(g):
    return g.told_or("mph", ("speed",), "driving.speed")


def following_gap(g):
    tow = g.asked("tow") or {}
    if g.has("hitch") and tow.get("length") and tow.get("ball_mount"):
        length = g.told("ft", "tow", "length") + g.told("ft", "tow", "ball_mount") + g.fact("size.length", "ft")
    else:
        length = g.fact("driving.follow", "ft")
    gap = math.ceil(round(length / g.fact("assumed.gap_per", "ft"), 9))
    return [("", F(gap + (speed(g) > g.fact("assumed.gap_fast", "mph"))), "s", 0, "up")], None


def stopping_distance(g):
    # TxDOT Roadway Design Manual 4.11.1; on a grade AASHTO's V²/(30 (a/32.2 ± G)).
    v, t, a = speed(g), g.fact("assumed.reaction", "s"), g.fact("assumed.braking", "ft/s2")
    grade = g.told("", "grade") if g.asked("grade") else F(0)
    hold = a / F("32.2") + grade
    if hold <= 0:
        raise Missing("trip.grade")
    brake = F("1.075") * v * v / a if grade == 0 else v * v / (30 * hold)
    return [("", F("1.47") * v * t + brake, "ft", 0, "up")], None


def heat_up_minutes(g):
    g.need("water_heater", "water_heater.tank")
    heat, ways = h.tank_heat(g), []
    if g.has("water_heater.propane"):
        ways.append(("propane", g.fact("water_heater.propane", "BTU/h") * g.fact("assumed.heater_tank_part", "")))
    if g.has("water_heater.electric"):
        ways.append(("electric", g.fact("water_heater.electric", "W") * si("1 W") / si("1 BTU/h")))
    if len(ways) == 2:
        ways.append(("both", ways[0][1] + ways[1][1]))
    return [(of, heat / power * 60, "min", 0, "up") for of, power in ways], None


def outlet_temperature(g):
    g.need("water_heater")
    if g.word("water_heater.kind") != "OnDemand":
        raise Absent("water_heater")
    flow = g.told_or("gal/min", ("shower",), "assumed.shower_flow")
    inlet, top = g.told_or("°F", ("inlet",), "assumed.inlet"), g.fact("water_heater.set", "°F")
    if flow <= 0:
        raise Missing("trip.shower")
    if g.has("water_heater.least_flow") and flow < g.fact("water_heater.least_flow", "gal/min"):
        return [("", inlet, "°F", 0, "down")], None
    rise = g.fact("water_heater.propane", "BTU/h") * g.fact("assumed.heater_flow_part", "") / (500 * flow)
    return [("", min(inlet + rise, max(top, inlet)), "°F", 0, "down")], None


def axles(g):
    return [(a["at"][""].lower(), to(si(a["cold"]), "psi")) for a in g.sheet["axles"]]


def tire_part(name):
    def limit(g):
        part = 1 - g.fact(name, "")
        return [(of, psi * part, "psi", 0, "up") for of, psi in axles(g)], None

    return limit


def air(metres):
    # ICAO 1993.
    return 101325 * (1 - 0.0065 * float(metres) / 288.15) ** 5.25588 / float(si("1 psi"))


def tire_pressure_at(g):
    if not g.asked("tires"):
        raise Missing("trip.tires")
    t1 = g.told("°C", "tires", "set_at") + F("273.15")
    read = ("tires", "read_at") if g.asked("tires", "read_at") else ("coldest",)
    if g.asked(*read) is None:
        raise Missing("trip.tires.read_at")
    t2 = g.told("°C", *read) + F("273.15")
    here = g.fact("site.elevation", "m")
    there = to(si(g.asked("tires", "height")), "m") if g.asked("tires", "height") else here
    ratio = float(t2 / t1)
    return [(of, (float(psi) + air(here)) * ratio - air(there), "psi", 0, "nearest") for of, psi in axles(g)], None


# Tow, awning, level


def rig_length(g):
    g.need("hitch")
    sum_ = g.told("in", "tow", "length") + g.told("in", "tow", "ball_mount") + g.fact("size.length", "in")
    return [("", sum_, "in", 0, "up")], None


def tow_check(g):
    g.need("hitch")
    cargo = g.told("lb", "bags") if g.asked("bags") else F(0)
    loaded = g.fact("weight.uvw", "lb") + h.water_pounds(g) + g.fact("weight.kit", "lb") + cargo
    tongue = loaded * g.fact("hitch.tongue_part", "")
    sticker, rating = g.told("lb", "tow", "payload"), g.told("lb", "tow", "rating")
    own = g.told("lb", "tow", "bags") if g.asked("tow", "bags") else F(0)
    left = {
        "tow-payload-left": sticker - h.people_weight(g) - tongue - g.fact("hitch.gear", "lb") - own,
        "trailer-left": g.fact("weight.gvwr", "lb") - loaded,
        "tow-rating-left": rating - loaded,
        "tow-rating-over-least": rating - g.fact("hitch.rating", "lb"),
        "hitch-left": g.fact("hitch.trailer_most", "lb") - loaded,
        "tongue-left": g.fact("hitch.tongue_most", "lb") - tongue,
    }
    out = [("loaded", loaded, "lb", 0, "up"), ("tongue", tongue, "lb", 0, "up")]
    out += [(of, value, "lb", 0, "down") for of, value in left.items()]
    return out, "yes" if min(left.values()) >= 0 else "no"


# Strongest wind of a Beaufort force in m/s (WMO); EN 13561 classes.
STRONGEST = ["0.2", "1.5", "3.3", "5.4", "7.9", "10.7", "13.8", "17.1", "20.7", "24.4", "28.4", "32.6"]


def awning_verdict(g):
    g.need("awning")
    limits = [g.fact("awning.wind_limit", "mph")] if g.raw("awning.wind_limit") is not None else []
    if g.sheet["awning"].get("wind_class") is not None:
        ends = {0: "3.3", 1: "7.9", 2: "10.7", 3: "13.8"}
        limits.append(to(F(ends[int(g.sheet["awning"]["wind_class"])]), "mph"))
    limit = min(limits) if limits else F(10)
    wind = g.asked("wind") or {}
    strongest = [g.told("mph", "wind", name) for name in ("speed", "gust") if wind.get(name)]
    if wind.get("force") is not None:
        force = int(wind["force"])
        if force > 12:
            raise Missing("trip.wind.force")
        strongest.append(to(F(STRONGEST[force]), "mph") if force < 12 else F(10**9))
    must = not wind.get("watched") or wind.get("rain") or wind.get("night")
    if not strongest and not must:
        raise Missing("trip.wind.speed")
    inside = must or max(strongest) >= limit
    return [("", limit, "mph", 0, "down")], "in" if inside else "out"


def level_blocks(g):
    if not g.asked("slope"):
        raise Missing("trip.slope.side")
    side, along = abs(si(g.asked("slope", "side"))), abs(si(g.asked("slope", "length")))
    out = [("side", float(g.fact("size.track", "in")) * math.tan(math.radians(side)), "in", 1, "up")]
    if g.has("size.wheelbase"):
        base = float(g.fact("size.wheelbase", "in"))
        out.append(("length", base * math.tan(math.radians(along)), "in", 1, "up"))
    verdict = None
    if g.has("fridge.level_side") and g.has("fridge.level_length"):
        fits = side <= g.fact("fridge.level_side", "°") and along <= g.fact("fridge.level_length", "°")
        verdict = "yes" if fits else "no"
    return out, verdict
