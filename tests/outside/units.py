"""The tool's table of units against an independent library's, exactly."""

from __future__ import annotations

import re
from fractions import Fraction

from pint import UnitRegistry

from bench import Bench, Check, Result

ROW = re.compile(r'Row\(\s*"([^"]+)",\s*&\[.*?\],\s*Dim::(\w+),\s*[\w:]+,\s*"([^"]+)",\s*"([^"]+)",\s*"([^"]+)",?\s*\)', re.S)

# The library's names where they are not ours.
NAMES = {
    "in2": "inch**2", "ft2": "foot**2", "yd2": "yard**2", "m2": "meter**2",
    "in3": "inch**3", "ft3": "foot**3", "yd3": "yard**3", "m3": "meter**3",
    "in": "inch", "gal": "gallon", "qt": "quart", "pt": "pint", "fl oz": "fluid_ounce",
    "°F": "delta_degree_Fahrenheit", "°C": "delta_degree_Celsius", "%": "percent",
    "Btu": "Btu_it", "mi": "mile", "mph": "mile/hour", "K": "kelvin",
    "°C·h": "delta_degree_Celsius*hour",
}  # fmt: skip
READINGS = {"°F": "degree_Fahrenheit", "°C": "degree_Celsius"}
# Counts, money and degrees of angle are held as they are written.
COUNTS = {"load", "bag", "lift", "mol", "°", "USD", "CAD", "AUD", "MXN", "EUR", "GBP"}
SI = {
    "LENGTH": "meter", "AREA": "meter**2", "VOLUME": "meter**3", "MASS": "kilogram", "TIME": "second",
    "TEMPERATURE": "kelvin", "STRESS": "pascal", "NONE": "", "SPEED": "meter/second", "ENERGY": "joule",
    "MATURITY": "kelvin*second",
}  # fmt: skip


def product(text: str) -> Fraction:
    """`231*0.000016387064/4`, from left to right."""
    value, divide = Fraction(1), False
    for piece in re.findall(r"[\d.]+|[*/]", text):
        if piece in "*/":
            divide = piece == "/"
        else:
            value = value / Fraction(piece) if divide else value * Fraction(piece)
    return value


def table(bench: Bench) -> Result:
    """Factor and zero of every row."""
    registry: UnitRegistry = UnitRegistry(non_int_type=Fraction)
    source = (bench.root / "src" / "quantity" / "units.rs").read_text(encoding="utf-8")
    body = source[source.index("const ROWS") : source.index("\n];")]
    rows, faults = ROW.findall(body), []
    if len(rows) != len(re.findall(r"^\s*Row\(", body, re.M)) or not rows:
        faults.append(f"{len(rows)} rows read of {len(re.findall(r'^ *Row', body, re.M))}")
    for symbol, dim, factor, zero, origin in rows:
        if symbol in COUNTS:
            wanted, zero_wanted = Fraction(1), Fraction(0)
        else:
            wanted = Fraction(registry.Quantity(Fraction(1), NAMES.get(symbol, symbol)).to(SI[dim]).magnitude)
            reading = registry.Quantity(Fraction(0), READINGS[symbol]).to("kelvin").magnitude if symbol in READINGS else 0
            zero_wanted = Fraction(reading) / wanted
        if product(factor) != wanted:
            faults.append(f"{symbol}: {factor} is {product(factor)}, not {wanted}")
        if product(zero) != zero_wanted:
            faults.append(f"{symbol}: zero at {zero}, not {zero_wanted}")
        if not origin:
            faults.append(f"{symbol} has no source")
    return Result(f"{len(rows)} units", faults)


CHECKS = [Check("units, exact factors", table)]
