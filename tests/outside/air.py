"""Saturation pressure and dew point of air, against a library of water's properties and one of moist air's.

The grid is written by the reference tests; a file that is older than they are says nothing about them.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

import psychrolib
from CoolProp.CoolProp import PropsSI

from bench import Bench, Check, Result

COLUMNS = ["celsius", "humidity", "saturation_kpa", "saturation_psi", "dew_f", "magnus_dew_f"]
PSI = 6.894757293168361
PRESSURE = 0.001
DEW = 0.1
# Magnus's form over water has no frost, so it is judged above freezing only.
FREEZING = 32.0
# Triple point of water: below it the library of water's properties has no liquid.
TRIPLE = 273.16


@dataclass(frozen=True)
class Row:
    """One air of the grid, with what the tool makes of it."""

    celsius: float
    humidity: float
    kpa: float
    psi: float
    dew: float
    magnus: float


def rows(text: str) -> list[Row]:
    """The grid as numbers; its columns are checked by name."""
    reader = csv.reader(text.splitlines())
    if next(reader, None) != COLUMNS:
        raise ValueError(f"the grid's columns are not {', '.join(COLUMNS)}")
    return [Row(*(float(cell) for cell in row)) for row in reader]


def grid(root: Path) -> list[Row]:
    """The grid, if the newest reference tests wrote it."""
    file = root / "target" / "outside" / "air.csv"
    tests = [p for p in (root / "target" / "release" / "deps").glob("reference-*") if not p.suffix]
    if not tests:
        raise FileNotFoundError("the reference tests are not built: cargo test --release --test reference")
    if not file.is_file() or file.stat().st_mtime < max(p.stat().st_mtime for p in tests):
        raise FileNotFoundError("the grid is missing or older than the reference tests: cargo test --release --test reference")
    return rows(file.read_text(encoding="utf-8"))


def water(celsius: float) -> float:
    """Saturation pressure in kPa by the international formulation for water, which begins at the triple point."""
    kelvin = celsius + 273.15
    # The pressure at 0 °C is 0.0723 % below that of the triple point (IAPWS-IF97: 611.213 and 611.655 Pa).
    below = 1.000723 if kelvin < TRIPLE else 1.0
    return float(PropsSI("P", "T", max(kelvin, TRIPLE), "Q", 0, "Water")) / 1000 / below


def moist_air(celsius: float) -> float:
    """Saturation pressure in kPa by the library of moist air."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetSatVapPres(celsius)) / 1000


def whole(grid: Sequence[Row]) -> list[str]:
    """Every air of the grid, once."""
    seen = [(row.celsius, row.humidity) for row in grid]
    wanted = [(float(t), float(h)) for t in range(51) for h in range(5, 101, 5)]
    return [] if sorted(seen) == wanted else [f"{len(seen)} rows, {len(set(wanted) - set(seen))} of the grid missing"]


def pressures(grid: Sequence[Row], library: Callable[[float], float]) -> list[str]:
    """Rows whose saturation pressure, in either unit, is off by more than a tenth of one per cent."""
    faults = []
    for row in grid:
        wanted = library(row.celsius)
        for name, got in (("kPa", row.kpa), ("psi", row.psi * PSI)):
            if abs(got / wanted - 1) > PRESSURE:
                faults.append(f"{row.celsius} °C: {got:.5f} kPa from {name}, not {wanted:.5f}")
    return faults


def dew_point(celsius: float, humidity: float) -> float:
    """Dew or frost point in °F by the library of moist air."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    return float(psychrolib.GetTDewPointFromRelHum(celsius, humidity / 100)) * 1.8 + 32


def dew_points(grid: Sequence[Row]) -> list[str]:
    """Rows whose dew or frost point is off by more than a tenth of a degree Fahrenheit."""
    faults = []
    for row in grid:
        wanted = dew_point(row.celsius, row.humidity)
        forms = [("dew point", row.dew)] + ([("Magnus", row.magnus)] if wanted > FREEZING else [])
        for name, got in forms:
            if abs(got - wanted) > DEW:
                faults.append(f"{row.celsius} °C, {row.humidity} %: {name} {got:.3f} °F, not {wanted:.3f}")
    return faults


def judged(grid: Sequence[Row]) -> list[str]:
    """All faults of a grid."""
    return whole(grid) + pressures(grid, water) + pressures(grid, moist_air) + dew_points(grid)


def air(bench: Bench) -> Result:
    """The grid as the tool makes it."""
    found = grid(bench.root)
    return Result(f"{len(found)} airs", judged(found))


CHECKS = [Check("air, saturation pressure and dew point", air)]
