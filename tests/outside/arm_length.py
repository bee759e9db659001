"""The mud card read from an arm's length in poor light, by a reader that knows nothing of the job.

What an eye of half the usual sharpness sees at 1 m: usual sharpness parts 1 minute of arc, 0.29 mm at 1 m;
half of that is 0.58 mm, 44 points to the inch. So each page is drawn at 100 dpi, blurred by 1 px, brought down
to 44 px/in and to three tenths of its contrast (dusk, a muddy laminate), then enlarged fourfold for the reader,
which looks at one line at a time, as a person does.

A page degraded four times more (11 px/in, blur 4 px) must not be readable, or the reading proves nothing.
"""

from __future__ import annotations

import shutil
import subprocess
import tempfile
from itertools import groupby
from pathlib import Path

from PIL import Image, ImageFilter, ImageOps

from amounts import plain
from bench import Bench, Check, Result
from paper import Glyph, attached, faces, glyphs, runs, tool
from predict import covered_codes

DRAWN = 100
SEEN = 44
CONTRAST = 0.3
# The numbers a mixer tender acts on: end of the figure id, how it is asked for.
KEYS = [("start_water", "own"), ("limit", "own"), ("step", "own"), ("mixing", "long"), ("place_by", "own")]
# What a reader of single letters takes for each other and a reader of amounts does not.
ALIKE = str.maketrans({"l": "1", "I": "1", "|": "1", "i": "1", "O": "0", "o": "0"})


def drawn(pdf: Path, page: int, temp: Path) -> Image.Image:
    """A page in grey at 100 dpi."""
    stem = temp / f"{pdf.stem}-{page}"
    tool("pdftoppm", "-r", str(DRAWN), "-gray", "-singlefile", "-f", str(page), "-l", str(page), "-png", str(pdf), str(stem))
    with Image.open(stem.with_suffix(".png")) as image:
        return image.convert("L")


def seen(image: Image.Image, worse: int = 1) -> Image.Image:
    """The page as seen: blurred, coarse, grey, then back at the size drawn so that places stay the same."""
    coarse = SEEN / DRAWN / worse
    small = image.filter(ImageFilter.GaussianBlur(worse)).resize(
        (round(image.width * coarse), round(image.height * coarse)), Image.Resampling.BOX
    )
    grey = small.point(lambda v: round(127 + (v - 127) * CONTRAST))
    return grey.resize((image.width * 2, image.height * 2), Image.Resampling.BICUBIC)


def lines(run: list[Glyph]) -> list[tuple[float, float, float, float]]:
    """The boxes of a text's lines, in points."""
    rows = [list(row) for _, row in groupby(run, key=lambda g: round(g.bottom))]
    return [(min(g.x0 for g in r), min(g.top for g in r), max(g.x1 for g in r), max(g.bottom for g in r)) for r in rows]


def read(image: Image.Image, box: tuple[float, float, float, float]) -> str:
    """What the reader makes of one line; the box is in points of the page."""
    scale = 2 * DRAWN / 72
    x0, top, x1, bottom = (round(v * scale) for v in box)
    line = image.crop((x0 - 6, top, x1 + 6, bottom))
    # The reader wants letters some 60 px tall on an even ground.
    if line.height > 120:
        line = line.resize((round(line.width * 120 / line.height), 120), Image.Resampling.LANCZOS)
    ground = max(grey for grey, count in enumerate(line.histogram()) if count)
    line = ImageOps.expand(line, 30, fill=ground)
    with tempfile.NamedTemporaryFile(suffix=".png") as file:
        line.save(file.name)
        words = ["tesseract", file.name, "-", "--psm", "7", "-l", "eng"]
        return subprocess.run(words, capture_output=True, text=True, check=True).stdout


def same(wanted: str, got: str) -> bool:
    """True if the letters and digits agree, spaces and lookalikes aside; nothing may be missing or added."""
    wanted, got = (plain(t).replace(" ", "").rstrip(".,:;'’‘").translate(ALIKE) for t in (wanted, got))
    return wanted == got


def unread(image: Image.Image, page: list[Glyph], texts: list[str]) -> list[str]:
    """The texts that cannot be read off a page, with what was read instead."""
    faults = []
    for text in texts:
        places = runs(page, text)
        if not places:
            faults.append(f"{plain(text)!r} is not drawn as one run")
            continue
        largest = max(places, key=lambda run: min(g.size for g in run))
        got = "".join(read(image, box) for box in lines(largest))
        if not same(text, got):
            faults.append(f"{plain(text)!r} read as {plain(got)!r}")
    return faults


def key_texts(values: dict, face: str) -> list[str]:
    """The key numbers of a face; one missing from the card is an error."""
    texts = []
    for end, ask in KEYS:
        found = [v["text"] for v in values["values"] if v["face"] == face and v["ask"] == ask and v["figure"].endswith(f".{end}")]
        if not found:
            raise LookupError(f"{face} prints no {end}")
        texts.append(found[0])
    return texts


def mud_cards(bench: Bench) -> list[Path]:
    letter = next(code for code, name in covered_codes(bench.job).items() if name == "mud")
    found = [pdf for pdf in bench.cards() if pdf.stem.startswith(f"{letter}-")]
    if not found:
        raise FileNotFoundError("no mud card")
    return found


def reading(bench: Bench, worse: int) -> tuple[int, list[list[str]]]:
    """How many numbers were looked for, and for each page what could not be read."""
    if shutil.which("tesseract") is None:
        raise FileNotFoundError("tesseract is not installed")
    count, pages = 0, []
    for pdf in mud_cards(bench):
        values = attached(pdf)
        for at, (face, page) in enumerate(zip(faces(values), glyphs(pdf), strict=True), start=1):
            texts = key_texts(values, face)
            count += len(texts)
            faults = unread(seen(drawn(pdf, at, bench.temp), worse), page, texts)
            pages.append([f"{face}: {fault}" for fault in faults])
    return count, pages


def legible(bench: Bench) -> Result:
    """Every key number of every mud card is read."""
    count, pages = reading(bench, 1)
    return Result(f"{count} numbers", [fault for page in pages for fault in page])


def illegible(bench: Bench) -> Result:
    """Four times worse, no page can be read whole."""
    count, pages = reading(bench, 4)
    missed = sum(len(page) for page in pages)
    return Result(f"{missed} of {count} numbers lost", ["a page was read whole at 11 px/in"] * sum(not page for page in pages))


CHECKS = [
    Check("mud cards read at an arm's length", legible),
    Check("and not from four times farther", illegible),
]
