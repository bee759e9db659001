"""What every check works on, and how a check reports."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path


@dataclass(frozen=True)
class Bench:
    """The tool, the job it was run on, what it made, and a folder to work in."""

    binary: Path
    job: Path
    out: Path
    temp: Path
    root: Path

    def pdfs(self) -> list[Path]:
        """Every PDF the tool made, cards first; none is an error, not an empty pass."""
        found = [p for folder in ("cards", "runs", "book") for p in sorted((self.out / folder).glob("*.pdf"))]
        if not found:
            raise FileNotFoundError("no PDF in cards/, runs/ or book/ of the output folder")
        return found

    def cards(self) -> list[Path]:
        """One PDF per card."""
        found = sorted((self.out / "cards").glob("*.pdf"))
        if not found:
            raise FileNotFoundError("no PDF in cards/ of the output folder")
        return found

    def hodbook(self, job: Path, out: Path, *words: str) -> str:
        """Runs the tool and returns what it printed; anything but success is an error."""
        done = subprocess.run(
            [str(self.binary), "--job", str(job), "--out", str(out), *words], capture_output=True, text=True, check=False
        )
        if done.returncode != 0:
            tail = " | ".join((done.stdout + done.stderr).strip().splitlines()[-6:])
            raise RuntimeError(f"hodbook {' '.join(words)} ended with {done.returncode}: {tail}")
        return done.stdout

    def copy_of_job(self, name: str) -> Path:
        """A fresh copy of the job that a check may change."""
        copy = self.temp / name
        shutil.rmtree(copy, ignore_errors=True)
        shutil.copytree(self.job, copy)
        return copy


@dataclass
class Result:
    """What a check looked at, in a few words, and what was wrong."""

    note: str = ""
    faults: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class Check:
    """One line of the report."""

    name: str
    run: Callable[[Bench], Result]


def report(checks: list[Check], bench: Bench) -> int:
    """Runs the checks, one line each; returns how many failed."""
    failed = 0
    for check in checks:
        try:
            result = check.run(bench)
        except Exception as trouble:  # one check's trouble must not hide the others
            result = Result(faults=[f"{type(trouble).__name__}: {trouble}"])
        failed += bool(result.faults)
        note = f" ({result.note})" if result.note else ""
        print(f"{'FAIL' if result.faults else 'ok  '} {check.name}{note}", flush=True)
        for fault in result.faults[:12]:
            print(f"       {fault}")
        if len(result.faults) > 12:
            print(f"       and {len(result.faults) - 12} more")
    print(f"{len(checks) - failed} passed, {failed} failed")
    return failed
