"""Runs the outside checks on what the tool made: one line each, then how many passed and failed."""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

import air
import arm_length
import findings
import mud_card
import mutants
import plumb
import read_back
import self_check
import sun
import units
import weather
from bench import Bench, report

CHECKS = [check for module in (self_check, units, air, sun, mud_card, read_back, arm_length, plumb, weather, findings, mutants) for check in module.CHECKS]


def main() -> int:
    root = Path(__file__).resolve().parents[2]
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--bin", type=Path, default=root / "target" / "release" / "hodbook", help="the tool")
    parser.add_argument("--job", type=Path, default=root / "content", help="the job folder it was run on")
    parser.add_argument("--out", type=Path, default=root / "out", help="the folder it wrote")
    parser.add_argument("--only", default="", help="run the checks whose name holds this text")
    parser.add_argument("--list", action="store_true", help="print the checks' names and stop")
    asked = parser.parse_args()
    checks = [check for check in CHECKS if asked.only in check.name]
    if asked.list:
        print("\n".join(check.name for check in checks))
        return 0
    if not checks:
        parser.error(f"no check's name holds {asked.only!r}")
    with tempfile.TemporaryDirectory() as temp:
        bench = Bench(asked.bin.resolve(), asked.job.resolve(), asked.out.resolve(), Path(temp), root)
        return 1 if report(checks, bench) else 0


if __name__ == "__main__":
    sys.exit(main())
