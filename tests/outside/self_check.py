"""Checks of the checks: each must pass what is right and catch what is made wrong."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pikepdf

import air
import arm_length
import plumb
from amounts import mixed, plain, read, rounded, within
from arithmetic import agrees, evaluate
from bench import Bench, Check, Result
from paper import glyphs, page_texts, shown
from plumb import follows, foreign
from predict import Key, changed, litres, pail, place_by
from read_back import above_footer, key_size, small_fractions, small_words


def expect(wanted: dict[str, tuple[object, object]]) -> Result:
    """Compares what came out with what should have."""
    return Result(
        f"{len(wanted)} cases", [f"{name}: {got!r}, not {want!r}" for name, (got, want) in wanted.items() if got != want]
    )


def made_up(path: Path, lines: Sequence[tuple[float, float, float, str]]) -> Path:
    """A tabloid page with lines of text at (x, y from the top, size, text)."""
    with pikepdf.new() as pdf:
        font = pdf.make_indirect(
            pikepdf.Dictionary(Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type1, BaseFont=pikepdf.Name("/Helvetica-Bold"))
        )
        page = pdf.add_blank_page(page_size=(792, 1224))
        page.Resources = pikepdf.Dictionary(Font=pikepdf.Dictionary(F=font))
        ops = "\n".join(f"BT /F {size} Tf {x} {1224 - y} Td ({text}) Tj ET" for x, y, size, text in lines)
        page.Contents = pdf.make_stream(ops.encode("latin-1"))
        pdf.save(path)
    return path


CARD = [
    (60, 120, 101, "3 gal 1 qt"),
    (60, 200, 54, "1/2 cup"),
    (60, 260, 28, "add 1 pt"),
    (60, 320, 28, "4 minutes"),
    (60, 400, 76, "4 gal"),
    (60, 460, 28, "by 40 min"),
    (60, 1190, 9, "M-02 EN, issued"),
]


def amounts_and_prediction(_: Bench) -> Result:
    """Vectors of the trade's own worked examples."""
    return expect(
        {
            "crew words": (pail(Fraction(81, 16), "es"), "5 gal 1 taza"),
            "all four": (pail(Fraction(111, 16), "en"), "6 gal 3 qt 1 pt 1 cup"),
            "whole gallons": (pail(Fraction(3), "en"), "3 gal"),
            "litres go down": (litres(Fraction(81, 16)), "19.15 L"),
            "terms add": (within("1 gal 2 qt 1 pt", "gal"), Fraction(13, 8)),
            "mixed": (mixed(Fraction(69, 2)), "34 1/2"),
            "up": (rounded(Fraction("34.282"), "up", Fraction(1, 2)), Fraction(69, 2)),
            "negative down": (rounded(Fraction(-1, 4), "down", Fraction(1, 2)), Fraction(-1, 2)),
            "half goes up": (rounded(Fraction(1, 4), "nearest", Fraction(1, 2)), Fraction(1, 2)),
            "23.3 min at 92": (place_by("50 min at 70 °F", [], Fraction(92)), "20 min"),
            "75 min at 50, half as long again at most": (place_by("50 min at 70 °F", [], Fraction(50)), "75 min"),
            "foot and inch": (read("5 ft 6 in")[1], Fraction("1.6764")),
            "soft marks": (plain("3\u00a0gal\u2060 1\u202fqt"), "3 gal 1 qt"),
        }
    )


def evaluator(_: Bench) -> Result:
    """Right arithmetic agrees, wrong arithmetic does not."""
    right = {
        "217.2 × 1.25 ÷ 12 ÷ (1 − 5 ÷ 100)": "905/38",
        "3.625^2 ÷ 2 × (1.522 − sin(1.522))": "3.437524",
        "2 × asin(5 ÷ (2 × 3.625))": "1.522026",
        "pi × 3.5^2 ÷ 8": "4.810564",
        "sqrt(4^2 + (3 − 2)^2)": "4.123106",
        "up(34.282, 1/2)": "34.5",
        "down(50 × 2^(−(74 − 70) ÷ 20), 5)": "40",
        "nearest(12.3026, 1/20)": "12.3",
        "max(0, 2.25 − 10/3)": "0",
        "10 − 4 − 3": "3",
        "2^3^2": "512",
        "-5/3 + 1": "-2/3",
    }
    wrong = {"258.5 − 66.6232": "191.8790", "10 − 4 − 3": "9", "up(34.282, 1/2)": "34", "2 × 3": "6.0001"}
    cases: dict[str, tuple[object, object]] = {
        text: (agrees(evaluate(text), evaluate(said)), True) for text, said in right.items()
    }
    cases |= {f"wrong {text}": (agrees(evaluate(text), evaluate(said)), False) for text, said in wrong.items()}
    for bad in ("2 +", "2 3", "__import__(1)", "max(1)", "(2", "1 % 2"):
        cases[f"refuses {bad}"] = (refuses(bad), True)
    cases["symbols of its own lines"] = (
        foreign("A × t ÷ (1 − w) + larkenfell/LF-1.net_area", ("A", "t", "w", "larkenfell/LF-1.net_area")),
        "",
    )
    cases["a foreign symbol"] = (foreign("A × t ÷ (1 − w)", ("A", "t")), "w")
    printed = {"text": "12.30\u00a0L", "direction": "down", "measure": "1/20", "unit": "L"}
    cases["rounding follows"] = (follows(Fraction(13, 4), "gal", printed), True)
    cases["rounding up where down is said"] = (follows(Fraction(13, 4), "gal", printed | {"text": "12.35 L"}), False)
    cases["a reading"] = (
        follows(Fraction(74), "°F", {"text": "23 °C", "direction": "nearest", "measure": "1", "unit": "°C"}),
        True,
    )
    return expect(cases)


def refuses(text: str) -> bool:
    try:
        evaluate(text)
    except SyntaxError:
        return True
    return False


def texts_and_sizes(bench: Bench) -> Result:
    """A made-up card passes; with one fault each it does not."""
    good = made_up(bench.temp / "good.pdf", CARD)
    page, body = page_texts(good)[0], above_footer(glyphs(good)[0], "M-02")
    bad = made_up(
        bench.temp / "bad.pdf", [*CARD[1:], (60, 120, 60, "3 gal 1 qt"), (60, 520, 27, "small"), (300, 520, 30, "3/8 in")]
    )
    bad_body = above_footer(glyphs(bad)[0], "M-02")
    return expect(
        {
            "shown": (shown("3\u00a0gal\u00a01\u00a0qt", page), True),
            "stacked": (shown("34 1/2 loads", "34 1 \u2044 2 loads"), True),
            "a digit lost": (shown("34 1/2 loads", "34 /2 loads"), False),
            "part of a number": (shown("2 loads", "12 loads"), False),
            "part of a decimal": (shown("12.3 L", "12.30 L"), False),
            "part of an amount": (shown("3 gal", page, alone=True), False),
            "not there": (shown("3 gal 1 pt", page), False),
            "no small word": (small_words(body, 28), []),
            "footer is left out": (any("issued" in word for word in small_words(glyphs(good)[0], 28)), True),
            "a small word": (small_words(bad_body, 28), ["'small' at 27.0 pt"]),
            "no small fraction": (small_fractions(body, 36), []),
            "a small fraction": (small_fractions(bad_body, 36), ["3/8 at 30.0 pt"]),
            "key numeral": (key_size(body, "3 gal 1 qt"), 101.0),
            "a small key numeral": (key_size(bad_body, "3 gal 1 qt"), 60.0),
        }
    )


def reader(bench: Bench) -> Result:
    """The reader reads a good card, misses a number that is too small, and is not told what to read."""
    texts = ["3 gal 1 qt", "4 gal", "1 pt", "40 min", "4 minutes"]
    good = made_up(bench.temp / "seen.pdf", CARD)
    tiny = made_up(bench.temp / "tiny.pdf", [(x, y, size / 4, text) for x, y, size, text in CARD])
    image = arm_length.seen(arm_length.drawn(good, 1, bench.temp))
    swapped = made_up(bench.temp / "swapped.pdf", [(x, y, size, text.replace("1 qt", "1 pt")) for x, y, size, text in CARD])
    other = arm_length.seen(arm_length.drawn(swapped, 1, bench.temp))
    small = arm_length.seen(arm_length.drawn(tiny, 1, bench.temp))
    return expect(
        {
            "a good card": (arm_length.unread(image, glyphs(good)[0], texts), []),
            "another word in its place": (len(arm_length.unread(other, glyphs(good)[0], texts[:1])), 1),
            "a quarter of the size": (len(arm_length.unread(small, glyphs(tiny)[0], texts)) > 0, True),
        }
    )


def leaf(symbol: str, text: str, number: str, unit: str, row: int, column: int) -> dict[str, Any]:
    authored = {"text": text, "key": symbol}
    place = {"path": "a.md", "line": row, "column": column, "source": ""}
    return {
        "symbol": symbol,
        "symbols": "",
        "numbers": number,
        "result": number,
        "unit": unit,
        "authored": authored,
        **place,
        "rests_on": [],
    }


def derivation() -> dict[str, Any]:
    """The water of two loads, as the tool would print it."""
    top = {
        "symbol": "W",
        "symbols": "n × w",
        "numbers": "2 × 1.625",
        "result": "3.25",
        "unit": "gal",
        "authored": None,
        "source": "",
    }
    us = {"text": "3 gal 1 qt", "direction": "down", "measure": "1/32", "unit": "gal"}
    metric = {"text": "12.30 L", "direction": "down", "measure": "1/20", "unit": "L"}
    lines = [
        top | {"rests_on": [1, 2]},
        leaf("n", "2 loads", "2", "load", 1, 8),
        leaf("w", "1 gal 2 qt 1 pt", "1.625", "gal", 2, 8),
    ]
    return {"format": 1, "figure": "water", "lines": lines, "printed": {"us": us, "metric": metric}}


def plumb_faults(bench: Bench, name: str, figure: dict[str, Any]) -> str:
    """Which of plumb's checks find fault with a derivation, when a stand-in for the tool prints it."""
    temp = bench.temp / f"plumb-{name}"
    temp.mkdir()
    (temp / "a.md").write_text("loads: 2 loads\nstart:\u00a01 gal 2 qt 1 pt\n", encoding="utf-8")
    (temp / "said.json").write_text(json.dumps(figure) + "\n", encoding="utf-8")
    tool = temp / "tool"
    tool.write_text(f"#!/bin/sh\ncat '{temp / 'said.json'}'\n", encoding="utf-8")
    tool.chmod(0o755)
    stand_in = Bench(tool, temp, temp, temp, bench.root)
    tried = {"numbers": plumb.numbers, "symbols": plumb.symbols, "leaves": plumb.leaves, "rounding": plumb.rounding}
    return " ".join(what for what, check in tried.items() if check(stand_in).faults)


def derivations(bench: Bench) -> Result:
    """A right derivation passes; each wrong one is caught by the check whose business it is."""
    spoiled: dict[str, tuple[str, dict[str, Any]]] = {"right": ("", derivation())}
    for wanted, at, key, value in (
        ("numbers", 0, "numbers", "2 × 1.6251"),
        ("symbols", 0, "rests_on", [1]),
        ("symbols", 0, "rests_on", [1, 3]),
        ("leaves", 2, "column", 9),
        ("leaves", 2, "authored", None),
        ("leaves", 1, "line", 3),
    ):
        figure = derivation()
        figure["lines"][at][key] = value
        spoiled[f"{key} {value}".replace("/", "-")] = (wanted, figure)
    for text in ("12.35 L", "12.25 L"):
        figure = derivation()
        figure["printed"]["metric"]["text"] = text
        spoiled[text] = ("rounding", figure)
    return expect(
        {name: (plumb_faults(bench, str(n), figure), wanted) for n, (name, (wanted, figure)) in enumerate(spoiled.items())}
    )


def differences(_: Bench) -> Result:
    """A value that moved, came or went is a change; one that stayed is none."""
    before, after = (
        {Key("a", "own", "en"): "1", Key("b", "own", "en"): "2"},
        {Key("a", "own", "en"): "1", Key("c", "own", "en"): "2"},
    )
    rows = {(Key("b", "own", "en"), "2", None), (Key("c", "own", "en"), None, "2")}
    return expect({"came and went": (changed(before, after), rows), "nothing": (changed(before, before), set())})


def airs(bench: Bench) -> Result:
    """The libraries' own grid passes; a grid with one number wrong, a row lost or from older tests does not."""
    good = []
    for celsius, humidity in ((t, h) for t in range(51) for h in range(5, 101, 5)):
        kpa, dew = air.moist_air(celsius), air.dew_point(celsius, humidity)
        good.append(air.Row(celsius, humidity, kpa, kpa / air.PSI, dew, dew))

    def spoiled(**change: float) -> int:
        return len(air.judged([*good[:-1], replace(good[-1], **change)]))

    last = good[-1]
    folder = bench.temp / "airs"
    written, tests = folder / "target" / "outside" / "air.csv", folder / "target" / "release" / "deps" / "reference-0"
    for path in (written, tests):
        path.parent.mkdir(parents=True)
        path.write_text(",".join(air.COLUMNS) + "\n20,50,2.3,0.3,49,49\n", encoding="utf-8")
    os.utime(tests, (1, 1))
    fresh = len(air.grid(folder))
    os.utime(written, (0, 0))
    return expect(
        {
            "the libraries' own": (air.judged(good), []),
            "pressure in SI": (spoiled(kpa=last.kpa * 1.002), 2),
            "pressure in US units": (spoiled(psi=last.psi * 0.998), 2),
            "dew point": (spoiled(dew=last.dew + 0.2), 1),
            "Magnus": (spoiled(magnus=last.magnus - 0.2), 1),
            "a row lost": (len(air.judged(good[1:])), 1),
            "a fresh grid": (fresh, 1),
            "an old grid": (stale(folder), True),
        }
    )


def stale(folder: Path) -> bool:
    try:
        air.grid(folder)
    except FileNotFoundError:
        return True
    return False


CHECKS = [
    Check("self, amounts and prediction", amounts_and_prediction),
    Check("self, evaluator", evaluator),
    Check("self, texts and sizes", texts_and_sizes),
    Check("self, reader", reader),
    Check("self, derivations", derivations),
    Check("self, differences", differences),
    Check("self, airs", airs),
]
