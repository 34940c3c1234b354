#!/usr/bin/env python3
"""Recomputes the reference values of the figures with independent libraries.

Without arguments prints them as JSON; with --check compares them with reference.json beside this file and ends
with 1 when one differs by more than its last digit. Needs CoolProp, pint and ambiance.
"""
import json
import pathlib
import sys
from decimal import Decimal

import CoolProp
import pint
from ambiance import Atmosphere
from CoolProp.CoolProp import PropsSI

HERE = pathlib.Path(__file__).parent
POUND, GALLON, FOOT = 0.45359237, 0.003785411784, 0.3048
SIXTY_F = (60 - 32) / 1.8 + 273.15
EARTH = 6356766.0  # radius of the standard atmosphere, m


def pounds_a_gallon(density):
    return density * GALLON / POUND


def values():
    ureg = pint.UnitRegistry(non_int_type=Decimal)

    def factor(source, target):
        return str(ureg.Quantity(Decimal(1), source).to(target).magnitude)

    water = PropsSI("D", "T", SIXTY_F, "P", 101325, "Water")
    propane = PropsSI("D", "T", SIXTY_F, "Q", 0, "Propane")
    latent = PropsSI("H", "P", 101325, "Q", 1, "Propane") - PropsSI("H", "P", 101325, "Q", 0, "Propane")
    # Heats of formation at 25 C, kJ/mol: propane gas -104.68, CO2 -393.51, liquid water -285.83.
    molar = 3 * 393.51 + 4 * 285.83 - 104.68
    higher = molar * 1000 / PropsSI("M", "Propane")
    air = {}
    for meters in (0, 500, 1000, 1500, 2000, 2500, 3000, 3500, 4000):
        # `ambiance` takes geometric heights; the figures take geopotential ones.
        air[str(round(EARTH * meters / (EARTH + meters), 3))] = round(float(Atmosphere(meters).pressure[0]), 1)
    return {
        "water_lb_per_gal_60F": round(pounds_a_gallon(water), 4),
        "propane_lb_per_gal_60F": round(pounds_a_gallon(propane), 4),
        "propane_latent_btu_per_lb": round(latent / 2326, 2),
        "propane_higher_heat_btu_per_lb": round(higher / 2326),
        "air_pascal_by_geopotential_m": air,
        "pint": {
            "lb_kg": factor("pound", "kg"),
            "gal_L": factor("gallon", "liter"),
            "imp_gal_L": factor("imperial_gallon", "liter"),
            "mph_mps": factor("mile/hour", "meter/second"),
            "Wh_Btu": factor("watt*hour", "Btu_it"),
        },
    }


def main():
    now = {
        "made_with": {"CoolProp": CoolProp.__version__, "pint": pint.__version__},
        "values": values(),
    }
    if "--check" not in sys.argv:
        print(json.dumps(now, indent=2))
        return 0
    kept = json.loads((HERE / "reference.json").read_text())
    if kept["values"] != now["values"]:
        print("kept:", kept["values"], "\nnow: ", now["values"])
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
