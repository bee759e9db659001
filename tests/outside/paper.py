"""Reading a PDF back: its attached values, its text, where each letter stands and how large it is."""

from __future__ import annotations

import json
import re
import subprocess
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfplumber
import pikepdf

from amounts import plain

ATTACHED = "printed-values.json"
FRACTION = re.compile(r"(\d+)/(\d+)")


def attached(pdf: Path) -> dict[str, Any]:
    """The values a document says it prints."""
    with pikepdf.open(pdf) as opened:
        if ATTACHED not in opened.attachments:
            raise LookupError(f"{pdf.name} has no {ATTACHED}")
        values = json.loads(opened.attachments[ATTACHED].get_file().read_bytes())
    if values["format"] != 1:
        raise ValueError(f"{pdf.name}: {ATTACHED} has format {values['format']}")
    return values


def faces(values: dict[str, Any]) -> list[str]:
    """The faces a document's values stand on, in page order."""
    return list(dict.fromkeys(v["face"] for v in values["values"] + values.get("texts", [])))


def tool(*words: str) -> str:
    """Output of a PDF tool; its failure is an error."""
    return subprocess.run(words, capture_output=True, text=True, check=True).stdout


@cache
def page_texts(pdf: Path) -> list[str]:
    """The text of every page, hyphenated words joined, all spaces plain."""
    # Once as laid out, once in the order of the page's own content: a value on two lines of a table cell stands
    # together only in the second.
    readings = [tool("pdftotext", *order, "-enc", "UTF-8", str(pdf), "-").split("\f")[:-1] for order in ((), ("-raw",))]
    return [plain(re.sub("\u00ad\\s*", "", "\n\n".join(pages))) for pages in zip(*readings, strict=True)]


# An amount of water goes on over several terms; these keep a part from passing for the whole.
MORE_BEFORE = r"(?<!gal )(?<!qt )(?<!pt )"
MORE_AFTER = r"(?!\s*\d+(?:\s*[/\u2044]\s*\d+)?\s*(?:qt|pt|cup|taza))"


def shown(text: str, page: str, alone: bool = False) -> bool:
    """True if a printed text stands on a page as a whole, not as a part of a longer word or number.

    With `alone`, nor as a part of a longer amount: `3 gal` is not shown by `3 gal 1 qt`.

    A fraction's numerator and denominator may come out with spaces around the slash or with a fraction
    slash; a number set as a stack may lose the space before it. No digit may be lost.
    """
    words = []
    for word in plain(text).split(" "):
        parts = [re.escape(part) for part in word.split("/")] if FRACTION.fullmatch(word) else [re.escape(word)]
        words.append(r"\s*[/\u2044]\s*".join(parts))
    pattern = words[0]
    for before, word in pairwise(words):
        # Two numbers side by side must stay apart; a whole number and its stacked fraction may not.
        apart = before[-1].isdigit() and word[0].isdigit() and "/" not in word
        pattern += (r"\s+" if apart else r"\s*") + word
    # Litres and pounds are never a term of a longer amount, whatever stands before them.
    term = alone and re.search(r"(?:gal|qt|pt|cups?|tazas?)$", plain(text)) is not None
    before, after = (MORE_BEFORE, MORE_AFTER) if term else ("", "")
    return re.search(rf"(?<![\w/.,]){before}{pattern}(?![\w/])(?![.,]\d){after}", page) is not None


@dataclass(frozen=True)
class Glyph:
    """One letter on a page: points, origin at the top left."""

    letter: str
    size: float
    x0: float
    top: float
    x1: float
    bottom: float


@cache
def glyphs(pdf: Path) -> list[list[Glyph]]:
    """Every visible letter of every page in the order it was drawn, spaces left out, ligatures taken apart."""
    with pdfplumber.open(pdf) as opened:
        return [
            [
                Glyph(letter, c["size"] if c["upright"] else c["width"], c["x0"], c["top"], c["x1"], c["bottom"])
                for c in page.chars
                for letter in plain(c["text"]).replace(" ", "")
            ]
            for page in opened.pages
        ]


def runs(page: list[Glyph], text: str) -> list[list[Glyph]]:
    """Everywhere a text is drawn as one run of letters, whatever its spaces."""
    stream = "".join(g.letter for g in page)
    wanted = re.escape(plain(text).replace(" ", ""))
    return [page[m.start() : m.end()] for m in re.finditer(wanted, stream)]
