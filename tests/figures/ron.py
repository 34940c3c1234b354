"""Reads the RON of data sheets, lots and trips, and their quantities, by itself: nothing is shared with the program."""

import re
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction as F

TOKEN = re.compile(r'\s+|//[^\n]*|"((?:[^"\\]|\\.)*)"|(-?\d+(?:\.\d+)?)|([A-Za-z_][A-Za-z_0-9]*)|([()\[\]{}:,])')


def tokens(text):
    at = 0
    while at < len(text):
        found = TOKEN.match(text, at)
        assert found, text[at : at + 30]
        at = found.end()
        string, number, name, sign = found.groups()
        if string is not None:
            yield "text", string
        elif number is not None:
            yield "number", number
        elif name is not None:
            yield "name", name
        elif sign is not None:
            yield "sign", sign
    yield "end", ""


class Reader:
    def __init__(self, text):
        self.all = list(tokens(text))
        self.at = 0

    def peek(self, ahead=0):
        return self.all[self.at + ahead]

    def next(self):
        self.at += 1
        return self.all[self.at - 1]

    def until(self, close, item):
        out = []
        while self.peek() != ("sign", close):
            out.append(item())
            if self.peek() == ("sign", ","):
                self.next()
        self.next()
        return out

    def value(self):
        kind, text = self.next()
        if kind == "text":
            return text
        if kind == "number":
            return F(text)
        if kind == "name":
            if text in ("true", "false"):
                return text == "true"
            if self.peek() == ("sign", "("):
                self.next()
                inner = self.group()
                return {"": text, **inner} if isinstance(inner, dict) else {"": text, "0": inner[0]}
            return {"": text}
        if text == "[":
            return self.until("]", self.value)
        if text == "{":
            return dict(self.until("}", lambda: self.pair("text")))
        assert text == "(", text
        return self.group()

    def group(self):
        if self.peek()[0] == "name" and self.peek(1) == ("sign", ":"):
            return dict(self.until(")", lambda: self.pair("name")))
        return self.until(")", self.value)

    def pair(self, kind):
        key = self.next()
        assert key[0] == kind and self.next() == ("sign", ":"), key
        return key[1], self.value()


def read(text):
    return Reader(text).value()


# Factors to the SI unit, exact: NIST SP 811.
POUND, FOOT, GALLON, BTU = F("0.45359237"), F("0.3048"), F("0.003785411784"), F("1055.05585262")
IMPERIAL = F("0.00454609")
SI = {
    "in": F("0.0254"), "ft": FOOT, "mi": F("1609.344"), "mm": F(1, 1000), "cm": F(1, 100), "m": F(1), "km": F(1000),
    "oz": POUND / 16, "lb": POUND, "g": F(1, 1000), "kg": F(1),
    "gal": GALLON, "US gal": GALLON, "imp gal": IMPERIAL, "qt": GALLON / 4, "L": F(1, 1000),
    "psi": F(8896443230521, 1290320000), "kPa": F(1000), "bar": F(100000),
    "mph": F("0.44704"), "km/h": F(1000, 3600), "m/s": F(1), "kn": F(1852, 3600),
    "W": F(1), "kW": F(1000), "BTU/h": BTU / 3600, "A": F(1), "V": F(1), "Ah": F(3600),
    "Wh": F(3600), "kWh": F(3600000), "BTU": BTU, "s": F(1), "min": F(60), "h": F(3600), "d": F(86400),
    "%": F(1, 100), "": F(1), "°": F(1),
    "gal/min": GALLON / 60, "US gal/min": GALLON / 60, "imp gal/min": IMPERIAL / 60, "L/min": F(1, 60000),
    "gal/h": GALLON / 3600, "US gal/h": GALLON / 3600, "imp gal/h": IMPERIAL / 3600, "L/h": F(1, 3600000),
    "mpg": F("1609.344") / GALLON, "US mpg": F("1609.344") / GALLON, "imp mpg": F("1609.344") / IMPERIAL,
    "lb/US gal": POUND / GALLON, "lb/gal": POUND / GALLON, "lb/imp gal": POUND / IMPERIAL, "kg/L": F(1000),
    "BTU/lb": F(2326), "kJ/kg": F(1000), "ft/s2": FOOT, "m/s2": F(1),
}  # fmt: skip
LOT_GALLON = {"gal": "imp gal", "gal/min": "imp gal/min", "gal/h": "imp gal/h", "mpg": "imp mpg", "lb/gal": "lb/imp gal"}


def number(text):
    total = F(0)
    sign = -1 if text.startswith("-") else 1
    for part in text.lstrip("-").split():
        total += F(part)
    return sign * total


def si(text, imperial=False):
    """The value in the SI unit (kelvin for a temperature, degrees for an angle)."""
    tall = re.fullmatch(r"(\d+) ft (\d+(?:\.\d+)?) in", text)
    if tall:
        return F(tall[1]) * FOOT + F(tall[2]) * SI["in"]
    found = re.fullmatch(r"(-?[\d./]+(?: \d+/\d+)?)\s*(.*)", text)
    value, unit = number(found[1]), found[2]
    if unit == "°F":
        return (value + F("459.67")) * 5 / 9
    if unit == "°C":
        return value + F("273.15")
    if unit == "L/100 km":
        return F(100000) * 1000 / value
    if imperial:
        unit = LOT_GALLON.get(unit, unit)
    return value * SI[unit]


def to(value, unit):
    """An SI value in a unit."""
    if unit == "°F":
        return value * 9 / 5 - F("459.67")
    if unit == "°C":
        return value - F("273.15")
    return value / SI[unit]


def settled(value):
    """Twelve significant digits, half to even."""
    if isinstance(value, float):
        value = F(value)
    wide = Context(prec=40, Emax=999999, Emin=-999999)
    exact = wide.divide(Decimal(value.numerator), Decimal(value.denominator))
    return Context(prec=12, rounding=ROUND_HALF_EVEN).plus(exact)


def rounded(value, places, way):
    how = {"down": ROUND_FLOOR, "up": ROUND_CEILING, "nearest": ROUND_HALF_EVEN}
    value = settled(value)
    if way == "exact":
        return value
    return value.quantize(Decimal(1).scaleb(-places), rounding=how[way], context=Context(prec=60))
