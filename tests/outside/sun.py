"""Sunrise and sunset against a solar library's algorithm of higher precision."""

from __future__ import annotations

import csv
from datetime import date, datetime, timedelta, timezone
from itertools import groupby

import numpy as np
import pandas as pd
from pvlib.solarposition import spa_python

from bench import Bench, Check, Result

MOST = 2.0  # minutes
LOOK = 8  # minutes to each side of our time
HORIZON = -50 / 60  # centre of the sun, refraction and half disc
ROWS = 12 * 3 * 12


def crossing(height: np.ndarray, rises: bool) -> float | None:
    """Minutes from the first sample to where the height passes the horizon."""
    above = height > HORIZON
    turns = np.flatnonzero(~above[:-1] & above[1:] if rises else above[:-1] & ~above[1:])
    if len(turns) != 1:
        return None
    at = int(turns[0])
    return at + (HORIZON - height[at]) / (height[at + 1] - height[at])


def sun(bench: Bench) -> Result:
    """Every row of the grid that the reference test wrote; a missing file is an error."""
    path = bench.root / "target" / "outside" / "sun.csv"
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    faults = [] if len(rows) == ROWS else [f"{len(rows)} rows, not {ROWS}"]
    worst = 0.0
    for (latitude, longitude, offset), group in groupby(rows, key=lambda r: (r["latitude"], r["longitude"], r["zone_min"])):
        zone = timezone(timedelta(minutes=int(offset)))
        events = [(row["date"], what, int(row[f"{what}_min"])) for row in group for what in ("sunrise", "sunset")]
        moments = []
        for day, _, ours in events:
            midnight = datetime.combine(date.fromisoformat(day), datetime.min.time(), zone)
            moments += [midnight + timedelta(minutes=ours + step) for step in range(-LOOK, LOOK + 1)]
        position = spa_python(pd.DatetimeIndex(moments), float(latitude), float(longitude), how="numpy")
        heights = position["elevation"].to_numpy().reshape(len(events), 2 * LOOK + 1)
        for (day, what, ours), height in zip(events, heights, strict=True):
            found = crossing(height, what == "sunrise")
            apart = LOOK if found is None else found - LOOK
            worst = max(worst, abs(apart))
            if abs(apart) > MOST:
                faults.append(f"{latitude}° {longitude}° {day}: {what} {ours} is {apart:.2f} min off")
    return Result(f"{len(rows)} days, at most {worst:.2f} min apart", faults)


CHECKS = [Check("sun, rise and set", sun)]
