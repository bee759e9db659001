"""Broken front matter that moves printed values: the prediction from the files alone says the same new values."""

from __future__ import annotations

import json

from bench import Bench, Check, Result
from predict import Key, predict

LEAST = 100


def moved(bench: Bench) -> Result:
    """Every predicted value of every sampled mutant is what the tool says, and the sample is whole."""
    laid = bench.root / "target" / "outside" / "mutants.jsonl"
    if not laid.exists():
        return Result("", [f"{laid} is missing: the Rust tests lay it down"])
    rows = [json.loads(line) for line in laid.read_text(encoding="utf-8").splitlines()]
    faults: list[str] = [] if len(rows) >= LEAST else [f"{len(rows)} mutants in the sample, fewer than {LEAST}"]
    compared = values = 0
    for number, row in enumerate(rows):
        job = bench.copy_of_job(f"mutant-{number}")
        (job / row["path"]).write_text(row["text"], encoding="utf-8")
        said = {Key(figure, ask, lang): text for figure, ask, lang, text in row["values"]}
        try:
            predicted = predict(job)
        except ValueError:
            # No time is printed so far from the sheet's temperature; the prediction has none either.
            continue
        compared += 1
        values += len(predicted)
        for key, want in predicted.items():
            if said.get(key) != want:
                faults.append(f"{row['path']}: {row['what']}: {' '.join(key)}: {want!r} predicted, {said.get(key)!r} said")
    if compared * 10 < len(rows) * 9:
        faults.append(f"only {compared} of {len(rows)} could be predicted")
    return Result(f"{compared} mutants, {values} values", faults[:20])


CHECKS = [Check("mutants, values as predicted from the files alone", moved)]
