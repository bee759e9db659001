"""The mud card by hand: twenty texts of one card, and ten changes of which exactly the right values follow."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from amounts import plain
from bench import Bench, Check, Result
from paper import attached, page_texts, shown
from predict import LANGS, Key, changed, covered_codes, predict

BATCH = "larkenfell/carve-24/2"
MIX = "carve-24"

# figure, how it is asked for, English face, Spanish face
STRINGS: list[tuple[str, str, str, str]] = [
    (f"{BATCH}.loads", "own", "2 loads", "2 juegos"),
    (f"{BATCH}.start_water", "own", "3 gal 1 qt", "3 gal 1 qt"),
    (f"{BATCH}.start_water", "second", "12.30 L", "12.30 L"),
    (f"{BATCH}.start_water_weight", "own", "27.1 lb", "27.1 lb"),
    (f"{BATCH}.limit", "own", "4 gal", "4 gal"),
    (f"{BATCH}.mortar_first", "own", "1 bag", "1 saco"),
    (f"{BATCH}.additive", "own", "2 bags", "2 sacos"),
    (f"{MIX}.mixing", "long", "4 minutes", "4 minutos"),
    (f"{BATCH}.step", "own", "1 pt", "1 pt"),
    (f"{BATCH}.place_by", "own", "40 min", "40 min"),
]


def code_of(job: Path, subject: str) -> str:
    """The code that the register gave to a subject."""
    for line in (job / "records" / "register.jsonl").read_text(encoding="utf-8").splitlines():
        entry = json.loads(line)
        if entry["subject"] == subject:
            return entry["code"]
    raise FileNotFoundError(f"{subject} is not in the register")


def strings(bench: Bench) -> Result:
    """Each text is what the prediction gives and stands on its face."""
    predicted = predict(bench.job)
    pages = page_texts(bench.out / "cards" / f"{code_of(bench.job, f'mud {BATCH}')}.pdf")
    faults = []
    for figure, ask, *texts in STRINGS:
        for lang, text, page in zip(LANGS, texts, pages, strict=True):
            if predicted[Key(figure, ask, lang)] != text:
                faults.append(f"{figure} {ask} {lang}: {text!r} typed, {predicted[Key(figure, ask, lang)]!r} predicted")
            if not shown(text, page, alone=True):
                faults.append(f"{figure} {ask} {lang}: {text!r} is not on its face")
    return Result(f"{2 * len(STRINGS)} texts", faults)


@dataclass(frozen=True)
class Change:
    """One change of the author's: a file and what is retyped in it."""

    what: str
    file: str
    edits: tuple[tuple[str, str], ...]
    # The yard delivers the new bag to every site: a lot of another bag would stop the cards.
    lots: tuple[str, str] | None = None

    def apply(self, job: Path) -> None:
        for site in sorted((job / "sites").glob("*.md")) if self.lots else ():
            text = site.read_text(encoding="utf-8")
            site.write_text(text.replace(f"{self.lots[0]}, made:", f"{self.lots[1]}, made:"), encoding="utf-8")
        path = job / self.file
        text = path.read_text(encoding="utf-8")
        for old, new in self.edits:
            if text.count(old) != 1:
                raise ValueError(f"{self.file}: {old!r} stands there {text.count(old)} times, not once")
            text = text.replace(old, new)
        path.write_text(text, encoding="utf-8")


CARVE, SITE = "mixes/carve-24.md", "sites/larkenfell.md"
CHANGES = [
    Change("start 1 gal 2 qt 1 cup, rev D", CARVE, (("rev: C\n", "rev: D\n"), ("start: 1 gal 2 qt 1 pt\n", "start: 1 gal 2 qt 1 cup\n"))),
    Change("limit 1 gal 3 qt 1 pt", CARVE, (("limit: 2 gal\n", "limit: 1 gal 3 qt 1 pt\n"),)),
    Change("step 1 pt", CARVE, (("step: 1 cup\n", "step: 1 pt\n"),)),
    Change("mixing 5 min", CARVE, (("least: 4 min", "least: 5 min"),)),
    Change("after a step 2 min", CARVE, (("after_step: 1 min", "after_step: 2 min"),)),
    Change("open time 55 min", CARVE, (("open_time: 50 min", "open_time: 55 min"),)),
    Change("band to 78 °F", SITE, (("band: 68 °F to 74 °F", "band: 68 °F to 78 °F"),)),
    Change("additive bag 25 lb", CARVE, (("bag: 24 lb", "bag: 25 lb"), ('"10:3 by mass"', '"16:5 by mass"')), ("bag: 24 lb", "bag: 25 lb")),
    Change("mortar bag 81 lb", CARVE, (("bag: 80 lb", "bag: 81 lb"), ('"10:3 by mass"', '"27:8 by mass"')), ("bag: 80 lb", "bag: 81 lb")),
    Change("water 8.33 lb/gal", CARVE, (("constant: 8.345 lb/gal", "constant: 8.33 lb/gal"),)),
]  # fmt: skip


def attached_values(folder: Path, job: Path) -> dict[Key, str]:
    """What the covered cards in a folder say they print; typed values that are no figure left out."""
    codes, seen = covered_codes(job), set()
    texts: dict[Key, str] = {}
    for pdf in sorted(folder.glob("*.pdf")):
        letter = pdf.stem.split("-")[0]
        if letter not in codes:
            continue
        seen.add(letter)
        for value in attached(pdf)["values"]:
            if not value["figure"]:
                continue
            key, text = Key(value["figure"], value["ask"], value["lang"]), plain(value["text"])
            if texts.setdefault(key, text) != text:
                raise ValueError(f"{pdf.name}: {key} is {text!r} here and {texts[key]!r} elsewhere")
    if seen != set(codes):
        raise FileNotFoundError(f"no card with code {', '.join(sorted(set(codes) - seen))}")
    return texts


def issued(bench: Bench, job: Path) -> dict[Key, str]:
    """The values of a proof of a job."""
    out = bench.temp / f"{job.name}-out"
    bench.hodbook(job, out, "issue", "--proof")
    return attached_values(out / "proof" / "cards", job)


@cache
def unchanged(bench: Bench) -> dict[Key, str]:
    """The values before any change."""
    return issued(bench, bench.copy_of_job("unchanged"))


def differences(said: dict[Key, str], predicted: dict[Key, str]) -> list[str]:
    rows = sorted(changed(predicted, said), key=lambda row: row[0])
    return [f"{' '.join(key)}: predicted {want!r}, attached {got!r}" for key, want, got in rows]


def every_value(bench: Bench) -> Result:
    """The prediction and the cards hold the same values, no more and no fewer."""
    said = unchanged(bench)
    return Result(f"{len(said)} values", differences(said, predict(bench.job)))


def follows(change: Change) -> Check:
    """The values that moved are the ones predicted to move."""

    def run(bench: Bench) -> Result:
        job = bench.copy_of_job("changed")
        before, said_before = predict(job), unchanged(bench)
        change.apply(job)
        want = changed(before, predict(job))
        got = changed(said_before, issued(bench, job))
        faults = [] if want else ["nothing is predicted to change: the change tests nothing"]
        faults += [f"{' '.join(k)}: {a!r} -> {b!r} was predicted and did not happen" for k, a, b in sorted(want - got, key=str)]
        faults += [f"{' '.join(k)}: {a!r} -> {b!r} happened and was not predicted" for k, a, b in sorted(got - want, key=str)]
        return Result(f"{len(want)} values predicted to change, {len(got)} changed", faults)

    return Check(f"change, {change.what}", run)


CHECKS = [
    Check("mud card, twenty texts", strings),
    Check("mud, half-load, ladder and pocket cards, every value", every_value),
    *(follows(change) for change in CHANGES),
]
