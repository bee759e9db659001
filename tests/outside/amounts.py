"""Amounts as people write them: units with their exact factors, reading, rounding, writing.

Factors are typed here from their definitions (1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 gal = 231 in³),
so that nothing the tool says about units is taken over.
"""

from __future__ import annotations

import re
import unicodedata
from datetime import date
from fractions import Fraction

INCH = Fraction("0.0254")
POUND = Fraction("0.45359237")
GALLON = 231 * INCH**3

# name -> (dimension, factor to SI)
UNITS: dict[str, tuple[str, Fraction]] = {
    "mm": ("m", Fraction(1, 1000)), "cm": ("m", Fraction(1, 100)), "m": ("m", Fraction(1)),
    "in": ("m", INCH), "ft": ("m", 12 * INCH), "yd": ("m", 36 * INCH),
    "in2": ("m2", INCH**2), "ft2": ("m2", (12 * INCH) ** 2), "yd2": ("m2", (36 * INCH) ** 2), "m2": ("m2", Fraction(1)),
    "in3": ("m3", INCH**3), "ft3": ("m3", (12 * INCH) ** 3), "yd3": ("m3", (36 * INCH) ** 3), "m3": ("m3", Fraction(1)),
    "gal": ("m3", GALLON), "qt": ("m3", GALLON / 4), "pt": ("m3", GALLON / 8), "cup": ("m3", GALLON / 16),
    "L": ("m3", Fraction(1, 1000)), "mL": ("m3", Fraction(1, 10**6)),
    "lb": ("kg", POUND), "oz": ("kg", POUND / 16), "kg": ("kg", Fraction(1)), "g": ("kg", Fraction(1, 1000)),
    "floz": ("m3", GALLON / 128), "yd3": ("m3", (36 * INCH) ** 3),
    "mph": ("m/s", 5280 * 12 * INCH / 3600), "km": ("m", Fraction(1000)), "°": ("°angle", Fraction(1)),
    "USD": ("USD", Fraction(1)), "K": ("°", Fraction(1)), "lift": ("1", Fraction(1)), "kPa": ("Pa", Fraction(1000)),
    "Pa": ("Pa", Fraction(1)), "°C·h": ("°h", Fraction(3600)),
    "s": ("s", Fraction(1)), "min": ("s", Fraction(60)), "h": ("s", Fraction(3600)), "day": ("s", Fraction(86400)),
    "°F": ("°", Fraction(5, 9)), "°C": ("°", Fraction(1)),
    "psi": ("Pa", POUND * Fraction("9.80665") / INCH**2), "MPa": ("Pa", Fraction(10**6)),
    "%": ("1", Fraction(1, 100)), "load": ("load", Fraction(1)), "bag": ("bag", Fraction(1)), "": ("1", Fraction(1)),
}  # fmt: skip

# What is added to a thermometer's number before the factor.
ZERO: dict[str, Fraction] = {"°F": Fraction("459.67"), "°C": Fraction("273.15")}

ALSO: dict[str, str] = {
    "cups": "cup", "taza": "cup", "tazas": "cup", "loads": "load", "juego": "load", "juegos": "load",
    "bags": "bag", "saco": "bag", "sacos": "bag", "days": "day", "día": "day", "días": "day",
    "minute": "min", "minutes": "min", "minuto": "min", "minutos": "min",
    "hour": "h", "hours": "h", "hora": "h", "horas": "h",
}  # fmt: skip

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
# A date is the time since 1970-01-01.
DAY = re.compile(r"(?:not before )?(\d{1,2}) ([A-Z][a-z]{2}) (\d{4})")
CLOCK = re.compile(r"(\d{1,2}):(\d\d)(?: (am|pm))?")
TERM = re.compile(r"(-?\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)(?: *([^\d\s]\S*))?")


def plain(text: str) -> str:
    """Text with every kind of space made one plain space, and no soft marks."""
    text = unicodedata.normalize("NFC", text).replace("\u2060", "").replace("\u00ad", "")
    return " ".join(text.split())


def number(text: str) -> Fraction:
    """`34 1/2`, `3/8`, `2.30`."""
    return sum((Fraction(piece) for piece in text.split()), Fraction(0))


def unit(symbol: str) -> tuple[str, Fraction]:
    """Dimension and factor of a unit or a quotient of two."""
    symbol = symbol.replace("fl oz", "floz").replace("²", "2").replace("³", "3").replace("·h", "/h") if symbol != "°C·h" else symbol
    over, *under = symbol.split("/")
    dim, factor = UNITS[ALSO.get(over, over)]
    for name in under:
        lower, divisor = UNITS[ALSO.get(name, name)]
        dim, factor = f"{dim}/{lower}", factor / divisor
    # A speed has a unit of its own name.
    return {"m/s": "m/s"}.get(dim, dim), factor


def read(text: str) -> tuple[str, Fraction]:
    """An amount's dimension and SI value; terms add up, as in `1 gal 2 qt`."""
    text = plain(text).replace("fl oz", "floz")
    if (clock := CLOCK.fullmatch(text)) is not None:
        hour, minute = int(clock.group(1)), int(clock.group(2))
        if half := clock.group(3):
            hour = hour % 12 + (12 if half == "pm" else 0)
        return "s", Fraction(60 * (60 * hour + minute))
    if (day := DAY.fullmatch(text)) is not None:
        since = date(int(day.group(3)), MONTHS.index(day.group(2)) + 1, int(day.group(1))) - date(1970, 1, 1)
        return "s", Fraction(86400 * since.days)
    terms = list(TERM.finditer(text))
    if not terms or "".join(t.group(0) for t in terms).replace(" ", "") != text.replace(" ", ""):
        raise ValueError(f"no amount: {text!r}")
    dims, total = set(), Fraction(0)
    for term in terms:
        symbol = term.group(2) or ""
        dim, factor = unit(symbol)
        dims.add(dim)
        total += (number(term.group(1)) + ZERO.get(symbol, 0)) * factor
    if len(dims) != 1:
        raise ValueError(f"terms of different kinds: {text!r}")
    return dims.pop(), total


def within(text: str, symbol: str) -> Fraction:
    """The number of an amount in a unit."""
    (dim, si), (wanted, factor) = read(text), unit(symbol)
    if dim != wanted:
        raise ValueError(f"{text!r} cannot be said in {symbol}")
    return si / factor - ZERO.get(symbol, 0)


def rounded(value: Fraction, direction: str, measure: Fraction) -> Fraction:
    """To a whole multiple of the measure: up, down or nearest (halves up)."""
    ratio = value / measure
    whole = ratio.numerator // ratio.denominator
    if direction == "nearest":
        half = ratio + Fraction(1, 2)
        return (half.numerator // half.denominator) * measure
    if direction not in ("up", "down"):
        raise ValueError(f"no direction: {direction!r}")
    return (whole + (direction == "up" and whole != ratio)) * measure


def mixed(value: Fraction) -> str:
    """`34 1/2`, `3/8`, `2`."""
    whole, part = divmod(value, 1)
    if part == 0:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


def decimal(value: Fraction, places: int) -> str:
    """Exactly so many places; the value must already stand on them."""
    scaled = value * 10**places
    if scaled.denominator != 1:
        raise ValueError(f"{value} does not end after {places} places")
    digits = str(scaled.numerator).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits
