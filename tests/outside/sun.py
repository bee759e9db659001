"""Sunrise and sunset against a solar library's algorithm of higher precision."""

from __future__ import annotations

import csv
from datetime import date, datetime, timedelta, timezone

import pandas as pd
from pvlib.solarposition import sun_rise_set_transit_spa

from bench import Bench, Check, Result

MOST = 2.0  # minutes
ROWS = 12 * 3 * 12


def minutes(moment: pd.Timestamp, day: date, zone: timezone) -> float:
    """Civil minutes since midnight of the day."""
    return (moment.to_pydatetime() - datetime(day.year, day.month, day.day, tzinfo=zone)).total_seconds() / 60


def sun(bench: Bench) -> Result:
    """Every row of the grid that the reference test wrote; a missing file is an error."""
    path = bench.root / "target" / "outside" / "sun.csv"
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    faults = [] if len(rows) == ROWS else [f"{len(rows)} rows, not {ROWS}"]
    worst = 0.0
    for row in rows:
        day, zone = date.fromisoformat(row["date"]), timezone(timedelta(minutes=int(row["zone_min"])))
        noon = pd.DatetimeIndex([datetime(day.year, day.month, day.day, 12, tzinfo=zone)])
        found = sun_rise_set_transit_spa(noon, float(row["latitude"]), float(row["longitude"]), how="numpy").iloc[0]
        for what in ("sunrise", "sunset"):
            exact, ours = minutes(found[what], day, zone), int(row[f"{what}_min"])
            worst = max(worst, abs(exact - ours))
            if abs(exact - ours) > MOST:
                faults.append(f"{row['latitude']}° {row['longitude']}° {day}: {what} {ours}, not {exact:.2f}")
    return Result(f"{len(rows)} days, at most {worst:.2f} min apart", faults)


CHECKS = [Check("sun, rise and set", sun)]
