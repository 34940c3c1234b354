"""Figures of a whole trip: what runs out and when, and the return bill in decimals."""

from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from fractions import Fraction as F
import math

import handbook as h
import handbook_more as m
from handbook import Absent, Missing
from ron import si, to


def run_down(nights, whole, start, nets, full_on=()):
    """Days until it is used up; none when it lasts."""
    left = start
    for day in range(nights):
        if day + 1 in full_on:
            left = whole
        net = nets[day]
        if left + net < 0:
            return day + left / -net
        left = min(max(left + net, F(0)), whole)
    return None


def ends(g):
    nights = int(g.trip["nights"])
    up = [(g.asked("hook_up") or [])[day : day + 1] for day in range(nights)]
    up = [(place[0][""] if place else "None") for place in up]
    power = [place in ("Full", "Water", "Power") for place in up]
    days = lambda name: [int(day) for day in g.asked(name) or []]

    def fresh():
        people, each, _, _ = h.use(g)
        tank = g.fact("water.fresh", "gal")
        start = tank * g.level("fresh", "assumed.start_fresh")
        nets = [F(0) if place in ("Full", "Water") else -people * each for place in up]
        return run_down(nights, tank, start, nets, days("fill"))

    def grey():
        people, each, flush, _ = h.use(g)
        tank = g.fact("waste.grey", "gal") + (g.fact("waste.grey_galley", "gal") if g.has("waste.grey_galley") else 0)
        start = tank * (1 - g.level("grey", "assumed.start_waste"))
        nets = [F(0) if place == "Full" else -people * (each - flush) for place in up]
        return run_down(nights, tank, start, nets, days("empty"))

    def toilet():
        people, _, flush, waste = h.use(g)
        if not g.has("waste.black") and not g.has("waste.cassette"):
            raise Absent("waste.black")
        black = g.has("waste.black")
        tank = g.fact("waste.black" if black else "waste.cassette", "gal")
        start = tank * (1 - g.level("black", "assumed.start_waste"))
        nets = [F(0) if black and place == "Full" else -people * (flush + waste) for place in up]
        return run_down(nights, tank, start, nets, days("empty"))

    def battery():
        there, need, gain = h.off_grid(g)
        there = F(there)
        nets = [there if on and g.has("charger") else gain - need for on in power]
        return run_down(nights, there, there, nets)

    def propane():
        g.need("propane")
        full = g.fact("propane.full", "lb")
        start = full * g.level("propane", "assumed.start_propane")
        always, fridge = m.daily_gas(g)
        on_post = any(load["id"] == "fridge" for load in g.sheet["loads"])
        heat = g.fact("assumed.propane_heat", "BTU/lb")
        nets = [-(always + (F(0) if on and on_post else fridge)) / heat for on in power]
        return run_down(nights, full, start, nets, days("refill"))

    def generator():
        g.need("generator")
        tank, pickup = g.fact("engine.tank", "gal"), g.fact("generator.pickup", "")
        level = m.fuel(g)
        hours = g.told("h", "generator_run") if g.asked("generator_run") else F(0)
        burn = hours * g.fact("generator.burn_half", "gal/h")
        nets = [F(0) if on else -burn for on in power]
        whole = tank * max(1 - pickup, F(0))
        return run_down(nights, whole, tank * max(level - pickup, F(0)), nets, days("refuel"))

    out, unknown = {}, []
    for name, course in (("fresh", fresh), ("grey", grey), ("toilet", toilet), ("battery", battery),
                         ("propane", propane), ("generator", generator)):  # fmt: skip
        try:
            out[name] = course()
        except Missing:
            unknown.append(name)
        except Absent:
            pass
    return out, unknown


def trip_projection(g):
    if int(g.trip["nights"]) == 0:
        raise Missing("trip.nights")
    found, unknown = ends(g)
    if not found:
        raise Missing("trip")
    out = sorted(((end, name) for name, end in found.items() if end is not None), key=lambda pair: pair[0])
    values = [(name, end, "d", 1, "down") for end, name in out]
    return values, "runs-out" if values else "unknown" if unknown else "lasts"


# ISO 4217.
PLACES = {"USD": 2, "EUR": 2, "JPY": 0, "KWD": 3, "CLF": 4}


def return_total(g):
    found = g.asked("returned")
    if found is None:
        raise Missing("trip.returned")
    found = found or {}
    half = {"HalfUp": ROUND_HALF_UP, "HalfEven": ROUND_HALF_EVEN}[g.lot["rounding"][""]]
    cent = Decimal(1).scaleb(-PLACES[g.lot["currency"]])
    dec = lambda f: Decimal(f.numerator) / Decimal(f.denominator)
    cents = lambda d: d.quantize(cent, rounding=half)
    nights, lines = g.trip["nights"], []

    def fee(name):
        text = g.sheet["fees"][name]
        if not isinstance(text, str):
            raise Missing("fees." + name)
        return F(text)

    def line(count, price, taxed):
        if count:
            lines.append((cents(dec(count * (fee(price) if isinstance(price, str) else price))), taxed))

    run = lambda name: F(found[name]["back"]) - F(found[name]["out"])
    if found.get("odometer"):
        if run("odometer") < 0:
            raise Missing("trip.returned.odometer")
        line(max(F(math.floor(run("odometer"))) - g.fact("fees.miles_night", "") * nights, F(0)), "mile", True)
    if found.get("generator"):
        if run("generator") < 0:
            raise Missing("trip.returned.generator")
        line(max(run("generator") - g.fact("fees.generator_night", "h") * nights, F(0)), "generator_hour", True)
    parts = lambda name, of: max((to(si(found[name]["out"]), "") - to(si(found[name]["back"]), "")) * of, F(0))
    if found.get("fuel"):
        gallons = parts("fuel", 8) * to(si(g.sheet["engine"]["tank"], g.imperial), "gal") / 8
        if g.imperial:
            gallons = gallons * si("1 gal") / si("1 imp gal")
        line(gallons, "fuel_gallon", False)
        if gallons and g.has("fees.fuel_service"):
            line(F(1), "fuel_service", True)
    if found.get("propane"):
        line(parts("propane", 4), "propane_quarter", False)
    line(found.get("empty_cylinders", F(0)), "propane_cylinder", False)
    for flag, price in (("black_full", "black"), ("cassette_full", "cassette"), ("grey_full", "grey"), ("dirty", "clean"),
                        ("smoked", "smoke"), ("pet", "pet"), ("pet_hidden", "pet_hidden")):  # fmt: skip
        line(F(found.get(flag, 0)), price, True)
    if found.get("late"):
        late = (g.told("min", "returned", "late") - g.fact("charges.late_grace", "min")) / 60
        line(F(max(math.ceil(late), 0)), "late_hour", True)
    for tag in sorted(set(found.get("missing", []))):
        count = found["missing"].count(tag)
        item = next((item for item in g.sheet["kit"] if item["tag"] == tag and item["count"] >= count), None)
        if item is None:
            raise Missing("kit." + tag)
        line(F(count), F(item["price"]), False)
    rate = dec(g.fact("charges.tax", ""))
    taxed = [amount for amount, is_taxed in lines if is_taxed]
    by_line = g.lot["charges"].get("tax_on") == {"": "Line"}
    tax = sum((cents(amount * rate) for amount in taxed), Decimal(0)) if by_line else cents(sum(taxed) * rate)
    fee("deposit")
    return [("", F(sum((amount for amount, _ in lines), Decimal(0)) + tax), "money", PLACES[g.lot["currency"]], "exact")], None


ALL = {
    "clearance_min_sign": h.clearance, "payload_left": h.payload, "water_weight": h.water_weight,
    "fresh_days": h.fresh_days, "grey_days": h.grey_days, "toilet_days": h.toilet_days, "fill_minutes": h.fill_minutes,
    "battery_nights": h.battery_nights, "battery_days": h.battery_days, "state_of_charge": h.state_of_charge,
    "voltage_drop": m.voltage_drop, "solar_ah": h.solar_ah, "battery_cost": h.battery_cost,
    "propane_hours": m.propane_hours, "propane_days": m.propane_days, "generator_hours": m.generator_hours,
    "generator_watts": m.generator_watts, "generator_dial": m.generator_dial, "loads_fit": m.loads_fit,
    "tail_swing": h.tail_swing, "following_gap": m.following_gap, "stopping_distance": m.stopping_distance,
    "heat_up_minutes": m.heat_up_minutes, "outlet_temperature": m.outlet_temperature, "tow_check": m.tow_check,
    "rig_length": m.rig_length, "tire_add_air": m.tire_part("tires.add_below"),
    "tire_flat": m.tire_part("tires.flat_below"), "tire_pressure_at": m.tire_pressure_at, "fuel_range": m.fuel_range,
    "heater_hours": m.heater_hours, "awning_verdict": m.awning_verdict, "level_blocks": m.level_blocks,
    "trip_projection": trip_projection, "return_total": return_total,
}  # fmt: skip


def compute(sheet, lot, trip):
    """State, values and verdict of every figure."""
    given = h.Given(sheet, lot, trip)
    out = {}
    for name, figure in ALL.items():
        try:
            values, verdict = figure(given)
            out[name] = ("ok", values, verdict)
        except Missing as fact:
            out[name] = ("missing", str(fact), None)
        except Absent:
            out[name] = ("not-fitted", [], None)
    return out
