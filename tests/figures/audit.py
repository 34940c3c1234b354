"""Random data sheets and trips, computed by the program and by `handbook.py`, compared to the last digit.

    python3 audit.py target/debug/sendoff [--count 300] [--seed 1] [--keep cases.json --keep-count 80]

Needs nothing but Python. `--keep` writes cases with the values computed here; the test `audited` reads them.
"""

import argparse
import json
import random
import re
import shutil
import subprocess
import sys
import tempfile
from fractions import Fraction as F
from pathlib import Path

import handbook_trip
from ron import read, rounded, settled, si, to

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
BASES = {
    "wren": ROOT / "walkthroughs/units/wren.ron",
    "plover": ROOT / "walkthroughs/units/plover.ron",
    "heron": ROOT / "walkthroughs/units/heron.ron",
}
LOT = ROOT / "walkthroughs/lot.ron"

# Units a writer may use, with how many of each make one of the first.
UNITS = {
    "length": [("in", 1), ("cm", 2.54), ("m", 0.0254), ("ft", 1 / 12), ("ft in", 1), ("mm", 25.4)],
    "height": [("ft", 1), ("m", 0.3048)], "mass": [("lb", 1), ("kg", 0.4536), ("oz", 16)],
    "volume": [("gal", 1), ("L", 3.785), ("imp gal", 0.8327), ("US gal", 1), ("qt", 4)],
    "charge": [("Ah", 1)], "power": [("W", 1), ("kW", 0.001), ("BTU/h", 3.412)], "gas": [("BTU/h", 1), ("kW", 0.000293)],
    "current": [("A", 1)], "volt": [("V", 1)], "time": [("h", 1), ("min", 60)], "minutes": [("min", 1), ("h", 1 / 60)],
    "flow": [("gal/min", 1), ("L/min", 3.785), ("imp gal/min", 0.8327)], "burn": [("gal/h", 1), ("L/h", 3.785)],
    "economy": [("mpg", 1), ("imp mpg", 1.2), ("US mpg", 1)], "speed": [("mph", 1), ("km/h", 1.609), ("m/s", 0.447), ("kn", 0.869)],
    "heat": [("°F", 1)], "density": [("lb/US gal", 1), ("kg/L", 0.1198)], "pressure": [("psi", 1), ("kPa", 6.895), ("bar", 0.06895)],
    "angle": [("°", 1)], "braking": [("ft/s2", 1), ("m/s2", 0.3048)], "energy": [("BTU", 1), ("kWh", 0.000293)],
    "specific": [("BTU/lb", 1), ("kJ/kg", 2.326)],
}  # fmt: skip


class Dice(random.Random):
    def quantity(self, kind, low, high):
        """A value between, in some unit, with some decimals; now and then the extreme."""
        value = self.choice([low, high]) if self.random() < 0.06 else self.uniform(low, high)
        if kind == "heat" and self.random() < 0.4:
            return f"{(value - 32) / 1.8:.1f} °C"
        if kind == "part":
            return self.choice([f"{value * 100:.0f} %", f"{value:.3f}", f"{round(value * 8)}/8"])
        unit, factor = self.choice(UNITS[kind])
        value *= factor
        if unit == "ft in":
            return f"{int(value // 12)} ft {int(value % 12)} in"
        digits = self.choice([0, 0, 1, 2, 3]) if abs(value) >= 3 else self.choice([2, 3, 4])
        return f"{value:.{digits}f} {unit}"


# section.field: kind, low, high. Refitted only where the base has it fitted.
SHEET = {
    "size.height": ("length", 80, 160), "size.margin": ("length", 2, 12), "size.turn_radius": ("length", 120, 500),
    "size.rear_overhang": ("length", 10, 180), "size.track": ("length", 50, 90), "size.wheelbase": ("length", 100, 300),
    "size.length": ("length", 180, 480), "weight.occc": ("mass", 300, 4000), "weight.ccc": ("mass", 200, 3000),
    "weight.uvw": ("mass", 3000, 14000), "weight.gvwr": ("mass", 5000, 18000), "weight.kit": ("mass", 0, 400),
    "house.capacity": ("charge", 40, 900), "house.usable": ("part", 0.13, 1), "engine.tank": ("volume", 10, 120),
    "engine.economy": ("economy", 4, 30), "engine.reserve": ("part", 0, 0.5), "generator.rated": ("power", 1000, 9000),
    "generator.breaker": ("current", 10, 60), "generator.pickup": ("part", 0, 0.6), "generator.burn_half": ("burn", 0.1, 2),
    "generator.burn_full": ("burn", 0.2, 3), "propane.full": ("mass", 5, 39), "furnace.input": ("gas", 5000, 50000),
    "water_heater.tank": ("volume", 1, 16), "water_heater.propane": ("gas", 3000, 60000),
    "water_heater.electric": ("power", 200, 3000), "water_heater.set": ("heat", 70, 160),
    "fridge.propane": ("gas", 500, 4000), "fridge.level_side": ("angle", 1, 10), "fridge.level_length": ("angle", 1, 10),
    "water.fresh": ("volume", 0, 130), "waste.grey": ("volume", 5, 90), "waste.grey_galley": ("volume", 5, 60),
    "waste.black": ("volume", 5, 60), "waste.cassette": ("volume", 2, 9), "driving.speed": ("speed", 20, 80),
    "driving.follow": ("length", 150, 800), "solar.power": ("power", 50, 1500), "inverter.power": ("power", 300, 5000),
    "inverter.idle": ("current", 0, 4), "inverter.efficiency": ("part", 0.5, 1), "engine_charger.current": ("current", 5, 80),
    "charger.bulk": ("power", 100, 2000), "shore.cord": ("current", 10, 50), "shore.branch": ("current", 10, 30),
    "hitch.tongue_part": ("part", 0.13, 0.25), "hitch.tongue_most": ("mass", 300, 2000),
    "hitch.trailer_most": ("mass", 2000, 15000), "hitch.gear": ("mass", 0, 200), "hitch.rating": ("mass", 2000, 12000),
    "diesel_heater.burn": ("burn", 0.02, 0.3), "diesel_heater.pickup": ("part", 0, 0.5),
}  # fmt: skip
LOT_FACTS = {
    "site.elevation": ("height", -200, 9000), "people.weight": ("mass", 100, 250), "people.use_normal": ("volume", 2, 20),
    "people.use_careful": ("volume", 1, 8), "people.flush_tank": ("volume", 0.3, 1.9), "people.waste": ("volume", 0.1, 1),
    "tires.add_below": ("part", 0.01, 0.4), "tires.flat_below": ("part", 0.1, 0.6), "assumed.water": ("density", 8, 8.6),
    "assumed.start_fresh": ("part", 0, 1), "assumed.start_propane": ("part", 0, 1), "assumed.start_waste": ("part", 0, 1),
    "assumed.tap_flow": ("flow", 0.5, 8), "assumed.shower_flow": ("flow", 0.3, 4), "assumed.inlet": ("heat", 35, 80),
    "assumed.propane_heat": ("specific", 19000, 22000), "assumed.heat_time": ("time", 1, 14),
    "assumed.heat_duty": ("part", 0.13, 1), "assumed.heat_duty_cold": ("part", 0.2, 1), "assumed.cooking": ("energy", 0, 20000),
    "assumed.cold_at": ("heat", 20, 45), "assumed.cold_part": ("part", 0.3, 1), "assumed.battery_volts": ("volt", 11, 14),
    "assumed.sun": ("time", 0.5, 10), "assumed.solar_part": ("part", 0.3, 1), "assumed.charger_part": ("part", 0.4, 1),
    "assumed.long_part": ("part", 0.5, 1), "assumed.inverter_part": ("part", 0.5, 1), "assumed.drop_most": ("part", 0.01, 0.1),
    "assumed.gap_per": ("length", 60, 200), "assumed.gap_fast": ("speed", 20, 60), "assumed.braking": ("braking", 5, 20),
    "awning.wind_limit": ("speed", 5, 40), "charges.tax": ("part", 0, 0.25), "charges.late_grace": ("minutes", 0, 90),
}  # fmt: skip
MAY_GO = ["generator", "solar", "inverter", "propane", "furnace", "diesel_heater", "water_heater", "shore", "awning",
          "charger", "engine_charger", "hitch"]  # fmt: skip


def end_of(text, at):
    """Where the value that starts here ends."""
    depth = 0
    while True:
        sign = text[at]
        if sign == '"':
            at = text.index('"', at + 1)
        elif sign in "([{":
            depth += 1
        elif depth == 0 and sign in ",)\n":
            return at
        elif sign in ")]}":
            depth -= 1
        at += 1


def edit(text, section, field, value):
    """A section, or a field of it, given another value; a field that is not there is added."""
    start = text.index(f"\n    {section}: ") + len(section) + 7
    end = end_of(text, start)
    body = text[start:end]
    if field:
        found = re.search(rf"(?<![a-z_]){field}: ", body)
        if found:
            body = body[: found.end()] + value + body[end_of(body, found.end()) :]
        else:
            body = body.rstrip().removesuffix(")").rstrip().rstrip(",") + f", {field}: {value})"
    else:
        body = value
    return text[:start] + body + text[end:]


def sheet_edits(dice, base):
    sheet, out = read(BASES[base].read_text()), []
    gone = [section for section in MAY_GO if dice.random() < 0.08]
    for name, (kind, low, high) in SHEET.items():
        section, field = name.split(".")
        body = sheet[section]
        if section not in gone and dice.random() < 0.6 and body.get(field) not in (None, {"": "NotFitted"}):
            out.append([section, field, json.dumps(dice.quantity(kind, low, high), ensure_ascii=False)])
    fitted = lambda section: section not in gone and sheet[section] != {"": "NotFitted"}
    if fitted("generator"):
        step = f'above: "{dice.choice(["0 ft", "500 ft", "1000 m"])}", loss: "{dice.choice(["3 %", "3.5 %"])}", per: "{dice.choice(["1000 ft", "300 m", "500 m"])}"'
        table = 'rows: [(at: "1500 m", part: "0.97"), (at: "2000 m", part: "0.94"), (at: "3000 m", part: "0.88")]'
        out.append(["generator", "derate", dice.choice([f"Linear({step})", f"Step({step})", f"Table({table})"])])
    if fitted("house") and dice.random() < 0.3:
        out.append(["house", "peukert", f'"{dice.uniform(1, 1.4):.2f}"'])
        out.append(["house", "rated_over", f'"{dice.choice([5, 10, 20, 100])} h"'])
    if fitted("propane") and dice.random() < 0.2:
        out.append(["propane", "water_capacity", f'"{dice.uniform(40, 110):.1f} lb"'])
    if fitted("awning") and dice.random() < 0.4:
        out.append(["awning", dice.choice(["wind_class", "wind_limit"]), ""])
        out[-1][2] = str(dice.randint(0, 3)) if out[-1][1] == "wind_class" else f'"{dice.quantity("speed", 5, 40)}"'
    if fitted("shore") and dice.random() < 0.2:
        out.append(["shore", "legs", str(dice.randint(1, 2))])
    axle = lambda at: f'(at: {at}, cold: "{dice.quantity("pressure", 30, 110)}", wheels: 2)'
    out.append(["axles", "", f"[{axle('Front')}, {axle('Rear')}]"])
    duty = lambda: dice.choice(["", f', duty: "{dice.randint(5, 100)} %"', f', duty: "{dice.randint(5, 60)} %", cold_duty: "60 %"'])
    load = lambda n: f'(id: "{n}", draw: "{dice.uniform(0.1, 12):.1f} A"{duty()}, hours: "{dice.quantity("time", 0.1, 12)}")'
    out.append(["night", "", "[" + ", ".join(load(n) for n in ("lights", "pump", "heat-fan")[: dice.randint(1, 3)]) + "]"])
    if base == "plover":
        out.append(["day", "", "[" + load("pump") + ", " + load("lights") + "]"])
    return [[section, "", "NotFitted"] for section in gone] + out


def lot_edits(dice):
    out = []
    for name, (kind, low, high) in LOT_FACTS.items():
        if dice.random() < 0.4:
            out.append([*name.split("."), json.dumps(dice.quantity(kind, low, high), ensure_ascii=False)])
    for field, choices in (("gallon", ["Us", "Us", "Imperial"]), ("rounding", ["HalfUp", "HalfEven"]),
                           ("currency", ['"USD"', '"USD"', '"JPY"', '"KWD"'])):  # fmt: skip
        out.append([field, "", dice.choice(choices)])
    out.append(["charges", "tax_on", dice.choice(["Bill", "Line"])])
    return out


def trip_text(dice, base):
    q, chance = dice.quantity, lambda p: dice.random() < p
    person = lambda: f"(age: {dice.randint(1, 90)}" + (f', weight: "{q("mass", 20, 300)}")' if chance(0.4) else ")")
    nights = dice.choice([1, 2, 3, 5, 7, 14, 30])
    out = [f"nights: {nights}", f"people: [{', '.join(person() for _ in range(dice.choice([1, 2, 4, 6, 0] if chance(0.1) else [1, 2, 3, 4, 6])))}]"]
    add = lambda p, text: out.append(text) if chance(p) else None
    levels = [f'{name}: "{dice.choice(["0", "1", "1/2", "3/4", "7/8", "1/3", "0.4", "65 %"])}"'
              for name in ("fresh", "grey", "black", "propane", "fuel") if chance(0.8)]  # fmt: skip
    add(0.95, f"start: ({', '.join(levels)})")
    add(0.6, "hook_up: [" + ", ".join(dice.choice(["Full", "Water", "Power", "None", "None"]) for _ in range(nights)) + "]")
    add(0.5, "use: Careful")
    add(0.2, f'use_each: "{q("volume", 2, 12)}"')
    add(0.6, f'highest: "{q("height", -200, 9500)}"')
    add(0.6, f'coldest: "{q("heat", 5, 60)}"')
    for name, (kind, low, high) in {
        "sun": ("time", 0, 9), "bags": ("mass", 0, 1500), "roof": ("length", 0, 40), "inlet": ("heat", 34, 150),
        "shower": ("flow", 0.2, 4), "generator_run": ("time", 0.2, 8), "driving": ("time", 0.2, 6), "speed": ("speed", 5, 85),
    }.items():  # fmt: skip
        add(0.5, f'{name}: "{q(kind, low, high)}"')
    add(0.5, f'grade: "{dice.choice(["", "-"])}{dice.choice([1, 2, 5, 7, 12])} %"')
    add(0.4, dice.choice([f'bucket: "{dice.randint(5, 90)} s"', f'tap: "{q("flow", 0.5, 9)}"']))
    add(0.5, dice.choice(["sign: NoSign", f'sign: Says("{q("length", 90, 200)}")']))
    wind = [f'{name}: "{q("speed", 1, 45)}"' for name in ("speed", "gust") if chance(0.6)]
    wind += [f"{name}: true" for name, p in (("watched", 0.8), ("rain", 0.15), ("night", 0.15)) if chance(p)]
    add(0.8, f"wind: ({', '.join(wind + ([f'force: {dice.randint(0, 13)}'] if chance(0.3) else []))})")
    slope = lambda: f'"{dice.choice(["", "-"])}{dice.uniform(0, 9):.1f} °"'
    add(0.8, f"slope: (length: {slope()}, side: {slope()})")
    add(0.7, "supply: " + dice.choice(['Post("15 A")', 'Post("20 A")', 'Post("30 A")', 'Post("50 A")', "Generator", "Inverter", "Nothing"]))
    loads = [load["id"] for load in read(BASES[base].read_text())["loads"]]
    on = [f'(load: "{name}"{", settled: true" if chance(0.3) else ""})' for name in dice.sample(loads, dice.randint(0, 4))]
    add(0.9, f"on: [{', '.join(on)}]")
    current = f', current: "{dice.uniform(1, 30):.1f} A"' if chance(0.5) else ""
    add(0.7, f'cord: (length: "{q("length", 60, 1800)}", gauge: "{dice.choice(["18", "16", "14", "12", "10", "8", "6", "2"])}"{current})')
    tow = [f'{n}: "{q(k, a, b)}"' for n, k, a, b in (("payload", "mass", 500, 4000), ("rating", "mass", 3000, 14000),
           ("length", "length", 150, 260), ("ball_mount", "length", 4, 20), ("bags", "mass", 0, 600)) if chance(0.85)]  # fmt: skip
    add(0.8, f"tow: ({', '.join(tow)})")
    tires = [f'set_at: "{q("heat", 10, 110)}"'] + [t for t in (f'read_at: "{q("heat", -10, 120)}"', f'height: "{q("height", 0, 9000)}"') if chance(0.6)]
    add(0.7, f"tires: ({', '.join(tires)})")
    add(0.5, f'house_volts: "{dice.uniform(11.5, 13.4):.2f} V"')
    add(0.2, f'house_charge: "{dice.randint(0, 100)} %"')
    add(0.4, "inverter_on: true")
    for name in ("fill", "empty", "refill", "refuel"):
        add(0.3, f"{name}: [{dice.randint(1, nights)}]")
    add(0.7, f"returned: ({', '.join(returned(dice, base))})")
    return "(" + ", ".join(out) + ")"


def returned(dice, base):
    miles, hours, chance = dice.uniform(0, 90000), dice.uniform(0, 900), lambda: dice.random() < 0.35
    all_ = [
        f'odometer: (out: "{miles:.1f}", back: "{miles + dice.uniform(0, 3000):.1f}")' if base != "heron" else "",
        f'generator: (out: "{hours:.1f}", back: "{hours + dice.uniform(0, 60):.1f}")' if base == "wren" else "",
        f'fuel: (out: "{dice.randint(0, 8)}/8", back: "{dice.randint(0, 8)}/8")' if base != "heron" else "",
        f'propane: (out: "{dice.randint(0, 4)}/4", back: "{dice.randint(0, 4)}/4")' if base == "wren" else "",
        "empty_cylinders: 1" if base == "heron" else "", "black_full: true" if base != "plover" else "",
        "cassette_full: true" if base == "plover" else "", f"grey_full: {dice.randint(0, 2)}", "dirty: true", "smoked: true",
        "pet: true", "pet_hidden: true", f'late: "{dice.randint(1, 400)} min"',
        'missing: ["W03", "W10", "W10"]' if base == "wren" else 'missing: ["P05"]' if base == "plover" else 'missing: ["H02"]',
    ]  # fmt: skip
    return [text for text in all_ if text and chance()]


def case(seed):
    dice = Dice(seed)
    base = dice.choice(list(BASES))
    return {"seed": seed, "unit": base, "sheet": sheet_edits(dice, base), "lot": lot_edits(dice), "trip": trip_text(dice, base)}


def texts(case_):
    sheet, lot = BASES[case_["unit"]].read_text(), LOT.read_text()
    for section, field, value in case_["sheet"]:
        sheet = edit(sheet, section, field, value)
    for section, field, value in case_["lot"]:
        lot = edit(lot, section, field, value)
    return sheet, lot


# What a metric reader sees, and with how many decimals where it is converted.
METRIC = {"lb": ("kg", 1, 0), "mi": ("km", 1, 0), "psi": ("kPa", 0, 0), "mph": ("km/h", 0, 0), "°F": ("°C", 0, 0)}


def shown(values, metric, id_):
    out = []
    for part, value, unit, places, way in values:
        if unit == "in" and id_ in ("clearance_min_sign", "rig_length"):
            tall = ("m", 2, 2)
        elif unit == "in":
            tall = ("cm", 1, 0) if value < 72 else ("m", 2, 2)
        elif unit == "ft":
            tall = ("m", 1, 1) if abs(value) * F("0.3048") < 30 else ("m", 0, 0)
        else:
            tall = METRIC.get(unit)
        if metric and tall:
            other, small, large = tall
            if unit == "°F":
                turned = (F(value) - 32) * 5 / 9
            else:
                turned = F(value) * si(f"1 {unit}") / si(f"1 {other}")
            value, places = turned, small if abs(turned) < 10 else large
        out.append((part, str(rounded(F(value), places, way))))
    return out


def told(figure):
    parts = figure.get("parts")
    if parts:
        return [(part["of"], part["value"]) for part in parts]
    value = figure["value"]
    return [("", text) for text in (value if isinstance(value, list) else [value] if value is not None else [])]


def near(ours, theirs):
    """The same decimals; sums written without end may differ in the twelfth digit."""
    return [(p, settled(F(v))) for p, v in ours] == [(p, settled(F(v))) for p, v in theirs if v != ""]


def differences(figures, expected, metric):
    for figure in figures:
        state, values, verdict = expected[figure["id"]]
        if figure["state"] != state:
            yield figure["id"], f"state {figure['state']} {figure.get('missing')} against {state} {values}"
        elif state == "ok":
            want, got = shown(values, metric, figure["id"]), told(figure)
            answer = figure.get("verdict")
            if answer in ("lasts",) and not want:
                got = []
            if figure["id"] == "trip_projection":
                want, got = sorted(want), sorted(got if figure["projection"]["first"] else [])
            if not near(got, want) or verdict is not None and answer != verdict:
                yield figure["id"], f"{got} {answer} against {want} {verdict}"


def run(binary, case_, folder):
    sheet, lot = texts(case_)
    units = folder / "walkthroughs/units"
    if not units.exists():
        shutil.copytree(ROOT / "walkthroughs", folder / "walkthroughs")
        shutil.copytree(ROOT / "i18n", folder / "i18n")
    for old in units.iterdir():
        old.unlink()
    (units / f"{case_['unit']}.ron").write_text(sheet)
    (folder / "walkthroughs/lot.ron").write_text(lot)
    (folder / "trip.ron").write_text(case_["trip"])
    expected = handbook_trip.compute(read(sheet), read(lot), read(case_["trip"]))
    found = []
    for measures in ("us", "metric"):
        command = [binary, "figures", "--lot", folder, "--unit", case_["unit"], "--trip", folder / "trip.ron",
                   "--format", "json", "--measures", measures]  # fmt: skip
        got = subprocess.run(command, capture_output=True, text=True)
        if got.returncode:
            return expected, [("", got.stderr)]
        found += differences(json.loads(got.stdout)["figures"], expected, measures == "metric")
    return expected, found


def kept(case_, expected):
    values = {}
    for name, (state, parts, verdict) in expected.items():
        told_ = [f"{part} {rounded(F(value), places, way).normalize():f}".strip() for part, value, _, places, way in parts] if state == "ok" else []
        values[name] = [state, verdict, told_]
    return {**case_, "figures": values}


def main():
    args = argparse.ArgumentParser()
    args.add_argument("binary")
    args.add_argument("--count", type=int, default=300)
    args.add_argument("--seed", type=int, default=1)
    args.add_argument("--keep")
    args.add_argument("--keep-count", type=int, default=80)
    args = args.parse_args()
    bad, seen, all_kept = 0, {}, []
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(args.seed, args.seed + args.count):
            made = case(seed)
            expected, found = run(args.binary, made, Path(folder))
            for name, (state, _, _) in expected.items():
                seen.setdefault(name, {}).setdefault(state, 0)
                seen[name][state] += 1
            for name, text in found:
                bad += 1
                print(f"case {seed} ({made['unit']}) {name}: {text}")
            if len(all_kept) < args.keep_count:
                all_kept.append(kept(made, expected))
    for name, states in seen.items():
        print(name, states)
    if args.keep:
        lines = ",\n".join(json.dumps(one, ensure_ascii=False) for one in all_kept)
        Path(args.keep).write_text(f"[\n{lines}\n]\n")
    print(f"{args.count} cases, {bad} differences")
    sys.exit(bad > 0)


main()
