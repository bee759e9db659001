"""The JSON of findings against its published schema, by a schema library."""

from __future__ import annotations

import json
import subprocess

from jsonschema import Draft202012Validator

from bench import Bench, Check, Result

# A STOP, a HOLD that is accepted, one that is not, and a finding without a place.
CHANGES = [
    ("mixes/carve-24.md", "start: 1 gal 2 qt 1 pt", "start: 2 gal 1 qt"),
    ("mixes/carve-24.md", "approved_by: LEAD", "accept: {approver-missing: {by: LEAD, because: signed on the panel sheet}}"),
    ("mixes/scratch-15.md", "approved_by: LEAD\n", ""),
]


def schema(bench: Bench) -> Result:
    """Valid findings pass, the ones wanted are there, and a spoiled copy is refused."""
    rules = json.loads((bench.root / "docs" / "schema" / "findings.json").read_text(encoding="utf-8"))
    Draft202012Validator.check_schema(rules)
    validator = Draft202012Validator(rules)
    job = bench.copy_of_job("findings")
    for path, old, new in CHANGES:
        text = (job / path).read_text(encoding="utf-8")
        if text.count(old) != 1:
            return Result("", [f"`{old}` must stand once in {path}"])
        (job / path).write_text(text.replace(old, new), encoding="utf-8")
    done = subprocess.run(
        [str(bench.binary), "--job", str(job), "--out", str(bench.temp / "o"), "--format", "json", "sound"],
        capture_output=True, text=True, check=False,
    )
    said = json.loads(done.stdout)
    faults = [f"{'/'.join(map(str, e.absolute_path))}: {e.message}" for e in validator.iter_errors(said)]
    found = said["findings"]
    seen = {(f["severity"], f["accepted"] is not None) for f in found}
    faults += [f"no finding that is {want}" for want in [("STOP", False), ("HOLD", True), ("HOLD", False)] if want not in seen]
    if done.returncode != 1:
        faults.append(f"exit {done.returncode}, not 1")
    for spoil in (lambda f: f.pop("help"), lambda f: f.update(severity="MAYBE"), lambda f: f.update(new=1), lambda f: f["at"].update(line=0)):
        copy = json.loads(json.dumps(said))
        spoil(next(f for f in copy["findings"] if f["at"]))
        if validator.is_valid(copy):
            faults.append("a spoiled finding is valid")
    return Result(f"{len(found)} findings", faults)


CHECKS = [Check("findings, JSON against the schema", schema)]
