"""Every figure computed anew from handbook E.2 and E.3 and the published tables, in exact fractions.

Each function gets the sheet, lot and trip as they are written and returns `Missing`, `NOT_FITTED`, or a list of
(part, number, unit, decimals, direction), and a verdict where it answers yes or no.
"""

import math
from fractions import Fraction as F

from ron import si, to

NOT_FITTED = "not-fitted"


class Missing(Exception):
    pass


class Absent(Exception):
    pass


class Given:
    """Sheet, lot and trip; a fact of the sheet stands before the lot's."""

    def __init__(self, sheet, lot, trip):
        self.sheet, self.lot, self.trip = sheet, lot, trip
        self.imperial = lot["gallon"][""] == "Imperial"

    def raw(self, name):
        section, field = name.split(".")
        if section == "limit":
            return self.lot["constants"].get(field)
        for source in (self.sheet, self.lot):
            part = source.get(section)
            if part == {"": "NotFitted"} and source is self.sheet:
                raise Absent(name)
            if isinstance(part, dict) and field in part:
                return part[field]
        return None

    def has(self, name):
        if "." not in name:
            return self.sheet[name] != {"": "NotFitted"}
        try:
            return self.raw(name) not in (None, {"": "NotFitted"})
        except Absent:
            return False

    def need(self, *names):
        for name in names:
            if not self.has(name):
                raise Absent(name)

    def fact(self, name, unit):
        value = self.raw(name)
        if value == {"": "NotFitted"}:
            raise Absent(name)
        if value is None:
            raise Missing(name)
        return value if isinstance(value, F) else self.number(value, unit, name)

    def number(self, text, unit, name):
        value = to(si(text, self.imperial), unit)
        free = unit in ("°F", "°C", "°") or name in ("trip.highest", "site.elevation", "trip.grade")
        if value < 0 and not free:
            raise Missing(name)
        return value

    def word(self, name):
        return self.raw(name)[""]

    def asked(self, *path):
        at = self.trip
        for name in path:
            at = at.get(name) if at else None
        return at

    def told(self, unit, *path):
        """A value of the trip in a unit; missing when the trip does not say."""
        text = self.asked(*path)
        if text is None:
            raise Missing("trip." + ".".join(path))
        return self.number(text, unit, "trip." + ".".join(path))

    def told_or(self, unit, path, otherwise):
        return self.told(unit, *path) if self.asked(*path) is not None else self.fact(otherwise, unit)

    def level(self, name, otherwise):
        level = self.told_or("", ("start", name), otherwise)
        if not 0 <= level <= 1:
            raise Missing("trip.start." + name)
        return level


# Size, weight


def clearance(g):
    sum_ = g.fact("size.height", "in") + g.fact("size.margin", "in")
    if g.asked("roof"):
        sum_ += g.told("in", "roof")
    sign = g.asked("sign")
    verdict = None
    if sign:
        verdict = "unknown"
        if sign[""] == "Says":
            text = sign["0"]
            says = si(text)
            inches = text.endswith("in") or text.endswith("ft")
            unit = F("0.0254") if inches else F(1, 100)
            need = math.ceil(F(round(to(sum_ * F("0.0254"), "m") / unit, 9)))
            verdict = "yes" if round(says / unit, 9) >= need else "no"
    return [("", sum_, "in", 0, "up")], verdict


def tail_swing(g):
    radius, overhang = g.fact("size.turn_radius", "in"), g.fact("size.rear_overhang", "in")
    if radius <= 0:
        raise Missing("size.turn_radius")
    return [("", math.sqrt(radius**2 + overhang**2) - float(radius), "in", 0, "up")], None


def people_weight(g):
    each = None
    total = F(0)
    for person in g.trip["people"]:
        if person.get("weight"):
            total += g.number(person["weight"], "lb", "trip.people.weight")
        else:
            each = g.fact("people.weight", "lb") if each is None else each
            total += each
    return total


def water_pounds(g):
    fresh = g.fact("water.fresh", "gal") * g.level("fresh", "assumed.start_fresh")
    heater = g.fact("water_heater.tank", "gal") if g.has("water_heater.tank") else 0
    return (fresh + heater) * g.fact("assumed.water", "lb/US gal")


def water_weight(g):
    return [("", water_pounds(g), "lb", 0, "up")], None


def payload(g):
    motor = g.has("weight.occc")
    if not motor and not g.has("weight.ccc"):
        raise Missing("weight.occc")
    left = g.fact("weight.occc" if motor else "weight.ccc", "lb")
    if motor:
        left -= people_weight(g)
    left -= water_pounds(g) + g.fact("weight.kit", "lb")
    if g.asked("bags"):
        left -= g.told("lb", "bags")
    return [("", left, "lb", 0, "down")], None


# Water and waste


def use(g):
    people = len(g.trip["people"])
    if people == 0:
        raise Missing("trip.people")
    normal = g.fact("people.use_normal", "gal")
    careful = g.asked("use") == {"": "Careful"}
    each = g.told("gal", "use_each") if g.asked("use_each") else None
    if each is None:
        each = g.fact("people.use_careful", "gal") if careful else normal
    if normal <= 0 or each <= 0:
        raise Missing("people.use_normal")
    flush = F(0)
    if g.has("waste.black"):
        flush = g.fact("people.flush_tank", "gal") * each / normal
    elif g.has("waste.cassette"):
        flush = g.fact("people.flush_cassette", "gal") * each / normal
    return people, each, flush, g.fact("people.waste", "gal")


def fresh_days(g):
    people, each, _, _ = use(g)
    there = g.fact("water.fresh", "gal") * g.level("fresh", "assumed.start_fresh")
    return [("", there / (people * each), "d", 1, "down")], None


def grey_days(g):
    people, each, flush, _ = use(g)
    tank = g.fact("waste.grey", "gal")
    if g.has("waste.grey_galley"):
        tank += g.fact("waste.grey_galley", "gal")
    free = tank * (1 - g.level("grey", "assumed.start_waste"))
    return [("", free / (people * (each - flush)), "d", 1, "down")], None


def toilet_days(g):
    if not g.has("waste.black") and not g.has("waste.cassette"):
        raise Absent("waste.black")
    people, _, flush, waste = use(g)
    tank = g.fact("waste.black" if g.has("waste.black") else "waste.cassette", "gal")
    free = tank * (1 - g.level("black", "assumed.start_waste"))
    return [("", free / (people * (flush + waste)), "d", 1, "down")], None


def fill_minutes(g):
    tank = g.fact("water.fresh", "gal")
    level = g.level("fresh", "assumed.start_fresh") if g.asked("start", "fresh") else F(0)
    if g.asked("bucket"):
        seconds = g.told("s", "bucket")
        gallon = to(si("1 gal", g.imperial), "gal")
        if seconds <= 0:
            raise Missing("trip.tap")
        flow = 60 / seconds * gallon
    else:
        flow = g.told_or("gal/min", ("tap",), "assumed.tap_flow")
    if flow <= 0:
        raise Missing("trip.tap")
    return [("", tank * (1 - level) / flow, "min", 0, "up")], None


# Battery


def is_cold(g):
    if g.asked("coldest") is None:
        return False
    return g.told("°F", "coldest") <= g.fact("assumed.cold_at", "°F")


def amp_hours(g, loads, cold):
    total = F(0)
    for load in loads:
        duty = load.get("duty")
        if cold and load.get("cold_duty"):
            duty = load["cold_duty"]
        part = to(si(load["draw"]), "A") * to(si(load["hours"]), "h")
        total += part * (to(si(duty), "") if duty else 1)
    return total


def night_hours(g):
    return max(to(si(load["hours"]), "h") for load in g.sheet["night"])


def night_need(g, cold):
    if not g.sheet["night"]:
        raise Missing("night")
    need = amp_hours(g, g.sheet["night"], cold)
    if g.asked("inverter_on") and g.has("inverter"):
        need += g.fact("inverter.idle", "A") * night_hours(g)
    return need


def usable(g, cold, need):
    capacity, part = g.fact("house.capacity", "Ah"), g.fact("house.usable", "")
    if capacity <= 0 or not 0 < part <= 1:
        raise Missing("house.capacity")
    there = capacity * part
    if cold and g.word("house.chemistry") == "LeadAcid":
        there *= g.fact("assumed.cold_part", "")
    if g.has("house.peukert") and g.has("house.rated_over"):
        # t = H (C / (I H))^k at the night's mean current; never more than the rating.
        k, over = float(g.fact("house.peukert", "")), g.fact("house.rated_over", "h")
        current = need / night_hours(g)
        hours = float(over) * (float(capacity) / (float(current) * float(over))) ** k
        there = float(there) * min(1.0, hours * float(current) / float(capacity))
    return there


def battery_nights(g):
    cold = is_cold(g)
    need = night_need(g, cold)
    return [("", usable(g, cold, need) / need, "nights", 1, "down")], None


def ceil_to(value, places):
    return F(math.ceil(round(value * 10**places, 9)), 10**places)


def volts(g):
    volts_ = g.fact("assumed.battery_volts", "V")
    if volts_ <= 0:
        raise Missing("assumed.battery_volts")
    return volts_


def tank_heat(g):
    rise = g.fact("water_heater.set", "°F") - g.told_or("°F", ("inlet",), "assumed.inlet")
    return g.fact("water_heater.tank", "gal") * g.fact("assumed.water", "lb/US gal") * max(rise, F(0))


def jobs(g):
    g.need("inverter")
    part = g.fact("inverter.efficiency", "")
    out = []
    if g.has("cook") and g.word("cook.kind") == "Induction":
        zone = next((load for load in g.sheet["loads"] if load["id"] == "induction"), None)
        if zone is None:
            raise Missing("loads.induction")
        out.append(("cooking", to(si(zone["draw"]), "W") * g.fact("assumed.cooking_time", "h")))
    heater = g.has("water_heater.electric") and not g.has("water_heater.propane")
    if heater and g.has("water_heater.tank"):
        out.append(("hot-water", tank_heat(g) * si("1 BTU") / si("1 Wh")))
    return [(of, energy / part / volts(g)) for of, energy in out]


def battery_cost(g):
    out = jobs(g)
    if not out:
        raise Absent("jobs")
    return [(of, cost, "Ah", 1, "up") for of, cost in out], None


def sun(g):
    g.need("solar")
    hours = g.told_or("h", ("sun",), "assumed.sun")
    return g.fact("solar.power", "W") * hours * g.fact("assumed.solar_part", "") / volts(g)


def solar_ah(g):
    return [("", sun(g), "Ah", 0, "down")], None


def off_grid(g):
    """Usable amp-hours, what a day takes and what it gives, each part rounded as E.3 prints it."""
    cold = is_cold(g)
    night = night_need(g, cold)
    there = usable(g, cold, night)
    need = night + amp_hours(g, g.sheet.get("day") or [], cold)
    if g.has("inverter"):
        need += sum(ceil_to(cost, 1) for _, cost in jobs(g))
    gain = F(math.floor(round(sun(g), 9))) if g.has("solar") else F(0)
    if g.asked("driving") and g.has("engine_charger"):
        gain += g.told("h", "driving") * g.fact("engine_charger.current", "A")
    if g.asked("generator_run") and g.has("generator") and g.has("charger"):
        amps = g.fact("charger.bulk", "W") * g.fact("assumed.charger_part", "") / volts(g)
        gain += g.told("h", "generator_run") * amps
    return there, need, gain


def battery_days(g):
    if not g.sheet.get("day"):
        raise Missing("day")
    there, need, gain = off_grid(g)
    if need <= gain:
        return [], "lasts"
    return [("", there / (need - gain), "d", 1, "down")], None


# Battery Council International, 80 °F, rested.
BCI = [(F("11.89"), 0), (F("12.06"), 25), (F("12.24"), 50), (F("12.45"), 75), (F("12.65"), 100)]


def state_of_charge(g):
    if g.asked("house_charge"):
        charge = g.told("%", "house_charge")
        if charge > 100:
            raise Missing("trip.house_charge")
        return [("", charge, "%", 0, "down")], None
    if g.word("house.chemistry") != "LeadAcid":
        raise Missing("trip.house_charge")
    v = g.told("V", "house_volts")
    if not 9 <= v <= 16:
        raise Missing("trip.house_volts")
    if v >= BCI[-1][0]:
        charge = F(100)
    else:
        charge = F(0)
        for (v0, c0), (v1, c1) in zip(BCI, BCI[1:]):
            if v0 <= v < v1:
                charge = c0 + (c1 - c0) * (v - v0) / (v1 - v0)
    return [("", charge, "%", 0, "down")], None
