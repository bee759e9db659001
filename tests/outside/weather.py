"""A typical year as a solar library ships it: read without a finding, and every hour as the library's tables read it."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pandas as pd
import pvlib

from bench import Bench, Check, Result

YEARS = ("703165TY.csv", "723170TYA.CSV")
SITE = "larkenfell"
TEST = "read::weather_tests::the_table_of_the_outside_check"


def shipped(name: str) -> Path:
    """A file of the installed library; none is an error."""
    path = Path(pvlib.__file__).parent / "data" / name
    if not path.is_file():
        raise FileNotFoundError(path)
    return path


# What the checks say of the weather itself; a year of another place may be too cold to work in.
JUDGED = (
    "cold-without-heat", "freeze-after-set", "hot-without-plan", "mix-temperature-out-of-range", "drying-fast", "drying-too-fast",
    "face-in-sun", "rain-without-cover", "base-frozen", "base-hot-or-saturated", "spray-drifts", "forecast-old",
    "mix-target-out-of-reach",
)  # fmt: skip


def accepted(bench: Bench) -> Result:
    """The program has nothing to say about the files, and something about one that is spoiled."""
    faults = []
    for name in YEARS:
        job = bench.copy_of_job("weather")
        laid = job / "weather" / f"{SITE}.csv"
        laid.parent.mkdir(exist_ok=True)
        shutil.copy(shipped(name), laid)
        said = subprocess.run(
            [str(bench.binary), "--job", str(job), "--format", "short", "sound", "--no-layout"], capture_output=True, text=True, check=False
        )
        if said.returncode not in (0, 1):
            faults.append(f"{name}: ended with {said.returncode}")
        faults += [f"{name}: {line}" for line in said.stdout.splitlines() if "weather/" in line and not any(f" {j}:" in line for j in JUDGED)]
        text = laid.read_text(encoding="utf-8").replace("Dry-bulb (C)", "Dry-bulb (W)", 1)
        laid.write_text(text, encoding="utf-8")
        spoiled = subprocess.run(
            [str(bench.binary), "--job", str(job), "--format", "short", "sound"], capture_output=True, text=True, check=False
        )
        if spoiled.returncode != 1 or f"weather/{SITE}.csv:2:" not in spoiled.stdout:
            faults.append(f"{name}: a wrong unit in line 2 passes with {spoiled.returncode}")
    return Result(f"{len(YEARS)} years", faults)


def hours(bench: Bench) -> Result:
    """Every hour, value by value."""
    faults, count = [], 0
    place = bench.root / "target" / "outside"
    for name in YEARS:
        job = place / "weather-job"
        shutil.rmtree(job, ignore_errors=True)
        shutil.copytree(bench.job, job)
        shutil.rmtree(job / "weather", ignore_errors=True)
        (job / "weather").mkdir()
        shutil.copy(shipped(name), job / "weather" / f"{SITE}.csv")
        read = place / "weather-read.csv"
        read.unlink(missing_ok=True)
        command = ["cargo", "test", "--release", "--quiet", "--lib", TEST, "--", "--ignored", "--exact"]
        subprocess.run(command, cwd=bench.root, check=True, capture_output=True)
        ours = pd.read_csv(read)
        theirs = pd.read_csv(shipped(name), skiprows=1)
        when = theirs["Date (MM/DD/YYYY)"].str.split("/", expand=True).astype(int)
        clock = theirs["Time (HH:MM)"].str.split(":", expand=True).astype(int)
        wanted = pd.DataFrame({
            "year": when[2], "month": when[0], "day": when[1], "minute": clock[0] * 60 + clock[1],
            "air_C": theirs["Dry-bulb (C)"], "humidity_percent": theirs["RHum (%)"], "wind_m_s": theirs["Wspd (m/s)"],
        })  # fmt: skip
        count += len(wanted)
        if len(ours) != len(wanted) or len(wanted) != 8760:
            faults.append(f"{name}: {len(ours)} hours, not {len(wanted)}")
            continue
        apart = ((ours - wanted).abs() > 1e-9).any(axis=1)
        faults += [f"{name} line {i + 3}: {ours.loc[i].to_dict()}, not {wanted.loc[i].to_dict()}" for i in wanted.index[apart]]
    return Result(f"{count} hours", faults)


CHECKS = [Check("weather, typical years accepted", accepted), Check("weather, every hour", hours)]
