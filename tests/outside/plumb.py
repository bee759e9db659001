"""Every printed value followed down to what an author typed, its arithmetic done again by another hand."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from amounts import ZERO, plain, read, rounded, unit
from arithmetic import BINARY, FUNCTIONS, agrees, evaluate
from bench import Bench, Check, Result
from paper import attached
from predict import front_matter

# The result is printed to seven digits: a value this near to a step of its measure may stand on it.
NEAR = Fraction(1, 10**6)


@cache
def derivations(bench: Bench) -> dict[str, dict[str, Any]]:
    """Every derivation the tool prints, by figure."""
    printed = bench.hodbook(bench.job, bench.temp / "plumb-out", "plumb", "--all", "--format", "json")
    found = [json.loads(line) for line in printed.splitlines() if line.strip()]
    if not found:
        raise ValueError("plumb --all prints nothing")
    if odd := {f["format"] for f in found} - {1}:
        raise ValueError(f"format {odd}")
    return {f["figure"]: f for f in found}


@cache
def each_line(bench: Bench) -> list[tuple[str, dict[str, Any], dict[str, Any]]]:
    return [(f"{name} line {n}", f, line) for name, f in derivations(bench).items() for n, line in enumerate(f["lines"])]


def is_leaf(line: dict[str, Any]) -> bool:
    return not line["symbols"]


def numbers(bench: Bench) -> Result:
    """The numbers of each line come to its result."""
    faults, rows = [], each_line(bench)
    for name, _, line in rows:
        try:
            value = evaluate(line["numbers"])
            if not agrees(value, evaluate(line["result"])):
                faults.append(f"{name}: {line['numbers']} is {float(value):.9g}, not {line['result']}")
        except (SyntaxError, ValueError, ZeroDivisionError) as trouble:
            faults.append(f"{name}: {trouble}")
    return Result(f"{len(rows)} lines", faults)


@cache
def foreign(symbols: str, known: tuple[str, ...]) -> str:
    """What is left of a formula once its known symbols, numbers, functions and operators are out."""
    for symbol in sorted(set(known), key=len, reverse=True):
        symbols = re.sub(rf"(?<![\w./-]){re.escape(symbol)}(?![\w./-])", " ", symbols)
    words = re.sub(r"[\s(),]+|[+−×÷^](?=\s|\(|$)|\^(?=\d)", " ", symbols).split()
    return " ".join(
        w for w in words if w not in FUNCTIONS | BINARY and w not in ("pi", "-") and not re.fullmatch(r"-?\d+(\.\d+)?(/\d+)?", w)
    )


def symbols(bench: Bench) -> Result:
    """A formula names only the lines it rests on, and those are other lines of the same derivation."""
    faults, count = [], 0
    for name, figure, line in each_line(bench):
        if is_leaf(line):
            continue
        count += 1
        at = line["rests_on"]
        if not all(0 <= i < len(figure["lines"]) and figure["lines"][i] is not line for i in at):
            faults.append(f"{name} rests on {at}, of {len(figure['lines'])} lines")
            continue
        left = foreign(line["symbols"], tuple(figure["lines"][i]["symbol"] for i in at))
        if left:
            faults.append(f"{name}: {line['symbols']!r} names {left!r}, on which it does not rest")
    return Result(f"{count} formulas", faults)


def typed_there(job: Path, line: dict[str, Any]) -> bool:
    """True if the author's file holds the text at its line and column, both counted from one."""
    rows = (job / line["path"]).read_text(encoding="utf-8").splitlines()
    if not 1 <= line["line"] <= len(rows):
        return False
    return rows[line["line"] - 1][line["column"] - 1 :].lstrip("\"'").startswith(line["authored"]["text"])


def leaves(bench: Bench) -> Result:
    """Every leaf was typed by the author where it says, or is a constant with a source."""
    faults, count = [], 0
    for name, _, line in each_line(bench):
        if not is_leaf(line):
            continue
        count += 1
        if line["rests_on"]:
            faults.append(f"{name}: no formula, but rests on {line['rests_on']}")
        elif line["authored"] is None and not line["source"]:
            faults.append(f"{name}: {line['symbol']} {line['numbers']} is neither typed nor sourced")
        elif line["authored"] is not None and not typed_there(bench.job, line):
            faults.append(f"{name}: {line['authored']['text']!r} is not at {line['path']}:{line['line']}:{line['column']}")
    return Result(f"{count} leaves", faults)


def steps_allowed(value: Fraction, direction: str, measure: Fraction) -> set[Fraction]:
    """The roundings of a value known to seven digits."""
    slack = abs(value) * NEAR
    return {rounded(v, direction, measure) for v in (value - slack, value, value + slack)}


def follows(result: Fraction, symbol: str, printed: dict[str, Any]) -> bool:
    """True if a printed text is the result in its unit, rounded as it says."""
    (_, factor), (_, wanted) = unit(symbol), unit(printed["unit"])
    value = (result + ZERO.get(symbol, 0)) * factor / wanted - ZERO.get(printed["unit"], 0)
    _, said = read(printed["text"])
    number = said / wanted - ZERO.get(printed["unit"], 0)
    return number in steps_allowed(value, printed["direction"], Fraction(printed["measure"]))


def rounding(bench: Bench) -> Result:
    """The printed values of both systems follow from the result by direction and measure."""
    faults, count = [], 0
    for name, figure in derivations(bench).items():
        top = figure["lines"][0]
        for system in ("us", "metric"):
            count += 1
            printed = figure["printed"][system]
            if not follows(Fraction(evaluate(top["result"])), top["unit"], printed):
                faults.append(
                    f"{name} {system}: {plain(printed['text'])!r} is not {top['result']} {top['unit']}"
                    f" {printed['direction']} to {printed['measure']} {printed['unit']}"
                )
    return Result(f"{count} roundings", faults)


@cache
def metric_sites(job: Path) -> tuple[frozenset[str], dict[str, str]]:
    """Sites whose paper is metric first, and the site of every code in the register."""
    sites = {p.stem for p in (job / "sites").glob("*.md") if p.suffixes == [".md"] and front_matter(p)["units"] == "metric"}
    lines = (job / "records" / "register.jsonl").read_text(encoding="utf-8").splitlines()
    entries = [json.loads(line) for line in lines]
    return frozenset(sites), {e["code"]: e["subject"].split(" ", 1)[1].split("/")[0] for e in entries}


def metric(bench: Bench, face: str) -> bool:
    """True if a face, such as `M-02/en` or `larkenfell-en`, is metric first."""
    sites, codes = metric_sites(bench.job)
    code, _, language = face.partition("/")
    return (codes[code] if language else code.rsplit("-", 1)[0]) in sites


def complete(bench: Bench) -> Result:
    """Every figure that a document prints has a derivation that gives the text printed."""
    found, faults, count = derivations(bench), set(), 0
    for pdf in bench.pdfs():
        for value in attached(pdf)["values"]:
            if not value["figure"]:
                continue
            count += 1
            if value["figure"] not in found:
                faults.add(f"{value['figure']} is printed and has no derivation")
                continue
            own, other = ("metric", "us") if metric(bench, value["face"]) else ("us", "metric")
            system = {"own": own, "us": "us", "second": other, "metric": "metric"}.get(value["ask"])
            if system and value["lang"] == "en":
                said = plain(found[value["figure"]]["printed"][system]["text"])
                if said != plain(value["text"]):
                    faults.add(f"{pdf.name}: {value['figure']} is printed as {plain(value['text'])!r}, derived as {said!r}")
    return Result(f"{count} printed values", sorted(faults) if count else ["no document prints a figure"])


CHECKS = [
    Check("plumb, numbers come to results", numbers),
    Check("plumb, formulas name what they rest on", symbols),
    Check("plumb, leaves are typed or sourced", leaves),
    Check("plumb, printed values follow by rounding", rounding),
    Check("plumb, every printed value has a derivation", complete),
]
