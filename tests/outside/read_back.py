"""Every PDF read back: paper, text, soundness, fonts, accessibility, type sizes."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path
from typing import Any

import pdfplumber
import pikepdf

from amounts import plain
from bench import Bench, Check, Result
from paper import FRACTION, Glyph, attached, faces, glyphs, page_texts, runs, shown, tool
from predict import front_matter

PAPERS: dict[str, tuple[int, int]] = {
    "tabloid": (792, 1224),
    "letter": (612, 792),
    "half letter": (396, 612),
    "3x5 in": (216, 360),
}
# distance -> smallest operative type, smallest key numeral, smallest digit of a fraction; points
SIZES = {"WALL": (28.0, 72.0, 36.0), "HAND": (14.0, 28.0, 14.0)}
SLACK = 0.05


def paper_size(name: str) -> tuple[int, int]:
    base, _, turned = name.partition(" landscape")
    width, height = PAPERS[base]
    return (height, width) if name.endswith(" landscape") else (width, height)


def kind_of(bench: Bench, pdf: Path) -> tuple[Path, dict[str, Any]]:
    """The author's file behind a card, by its code letter, and its front matter."""
    letter = pdf.stem.split("-")[0]
    for path in sorted((bench.job / "cards").glob("*.md")):
        matter = front_matter(path)
        if matter.get("code") == letter:
            return path, matter
    raise LookupError(f"no card in the job has the code {letter}")


def allowed_sizes(bench: Bench, pdf: Path) -> set[tuple[int, int]]:
    if pdf.parent.name == "cards":
        return {paper_size(kind_of(bench, pdf)[1]["paper"])}
    if pdf.parent.name == "book":
        return {paper_size(front_matter(bench.job / "handbook.md")["paper"])}
    # A run is one sheet size, either way up; small cards are laid on letter.
    name = next((n for n in ("tabloid", "half letter") if pdf.stem.startswith(n.replace(" ", "-"))), "letter")
    return {PAPERS[name], PAPERS[name][::-1]}


def sheets(bench: Bench) -> Result:
    """Page sizes fit the paper, a card has one page for each face, a run has one size."""
    faults, count = [], 0
    for pdf in bench.pdfs():
        with pdfplumber.open(pdf) as opened:
            sizes = [(float(p.width), float(p.height)) for p in opened.pages]
        count += len(sizes)
        allowed = allowed_sizes(bench, pdf)
        fits = {next((a for a in allowed if abs(a[0] - w) < 0.5 and abs(a[1] - h) < 0.5), None) for w, h in sizes}
        if None in fits or len(fits) != 1:
            faults.append(f"{pdf.name}: pages of {sorted(set(sizes))}, paper of {sorted(allowed)}")
        if pdf.parent.name == "cards":
            wanted = len(kind_of(bench, pdf)[1].get("faces", ["en", "es"]))
            if not len(sizes) == len(faces(attached(pdf))) == wanted:
                faults.append(f"{pdf.name}: {len(sizes)} pages and {len(faces(attached(pdf)))} faces, {wanted} wanted")
    return Result(f"{count} pages", faults)


def values_shown(bench: Bench) -> Result:
    """Each attached text stands on its face's page; in a book, somewhere in it."""
    faults, count = [], 0
    for pdf in (p for p in bench.pdfs() if p.parent.name != "runs"):
        values, pages = attached(pdf), page_texts(pdf)
        places = {face: at for at, face in enumerate(faces(values))}
        whole = " ".join(pages)
        for value in values["values"] + values.get("texts", []):
            count += 1
            if pdf.parent.name == "cards":
                at = places[value["face"]]
                page = pages[at] if at < len(pages) else ""
            else:
                page = whole
            if not shown(value["text"], page):
                faults.append(
                    f"{pdf.name} {value['face']}: {plain(value['text'])!r} ({value.get('figure') or value.get('slot')}) is not there"
                )
    return Result(f"{count} texts", faults if count else ["no document has any printed value"])


def sound(bench: Bench) -> Result:
    """`qpdf --check` has nothing to say."""
    faults = []
    for pdf in bench.pdfs():
        done = subprocess.run(["qpdf", "--check", str(pdf)], capture_output=True, text=True, check=False)
        if done.returncode != 0:
            faults.append(f"{pdf.name}: {' | '.join((done.stdout + done.stderr).splitlines()[-3:])}")
    return Result(f"{len(bench.pdfs())} files", faults)


def fonts(bench: Bench) -> Result:
    """Every font is in the file."""
    faults, count = [], 0
    for pdf in bench.pdfs():
        rows = [row.split() for row in tool("pdffonts", str(pdf)).splitlines()[2:]]
        count += len(rows)
        if not rows:
            faults.append(f"{pdf.name} has no font: its text is no text")
        # The columns from the right: object number and generation, then unicode, subset, embedded.
        faults += [f"{pdf.name}: {row[0]} is not embedded" for row in rows if row[-5] != "yes"]
    return Result(f"{count} fonts", faults)


def accessible(bench: Bench) -> Result:
    """The file says it is PDF/UA-1, is tagged, names its language and its title."""
    faults = []
    for pdf in bench.pdfs():
        with pikepdf.open(pdf) as opened:
            said = {
                "PDF/UA part 1": opened.open_metadata().get("pdfuaid:part") == "1",
                "tags": "/MarkInfo" in opened.Root and bool(opened.Root.MarkInfo.Marked) and "/StructTreeRoot" in opened.Root,
                "a language": bool(str(opened.Root.get("/Lang", ""))),
                "a title": bool(opened.open_metadata().get("dc:title")),
            }
        faults += [f"{pdf.name} lacks {what}" for what, there in said.items() if not there]
    return Result(f"{len(bench.pdfs())} files", faults)


def above_footer(page: list[Glyph], code: str) -> list[Glyph]:
    """The letters above the footer: the footer begins on the lowest line that opens with the card's code."""
    starts = [run[0] for run in runs(page, code)]
    if not starts:
        raise LookupError(f"no footer with the code {code}")
    foot = max(starts, key=lambda g: g.top)
    return [g for g in page if g.top < foot.top - 1]


def words(page: list[Glyph]) -> list[list[Glyph]]:
    """Letters that stand side by side on a line, in the order drawn."""
    found: list[list[Glyph]] = []
    for g in page:
        last = found[-1][-1] if found else None
        if last and abs(last.bottom - g.bottom) < 1 and -1 < g.x0 - last.x1 < g.size * 0.15:
            found[-1].append(g)
        else:
            found.append([g])
    return found


def small_words(page: list[Glyph], least: float) -> list[str]:
    """Words with a letter below a size."""
    return [
        f"{''.join(g.letter for g in word)!r} at {min(g.size for g in word):.1f} pt"
        for word in words(page)
        if min(g.size for g in word) < least - SLACK
    ]


def small_fractions(page: list[Glyph], least: float) -> list[str]:
    """Fractions with a digit below a size."""
    stream = "".join(g.letter for g in page)
    found = [(m.group(0), [g for g in page[m.start() : m.end()] if g.letter.isdigit()]) for m in FRACTION.finditer(stream)]
    return [
        f"{text} at {min(g.size for g in digits):.1f} pt" for text, digits in found if min(g.size for g in digits) < least - SLACK
    ]


def key_size(page: list[Glyph], text: str) -> float:
    """Size of the largest place where a text is printed, by its smallest digit."""
    return max((min(g.size for g in run if g.letter.isdigit()) for run in runs(page, text)), default=0.0)


def type_sizes(bench: Bench) -> Result:
    """Nothing that is acted on is set smaller than its reading distance allows."""
    faults, count = [], 0
    for pdf in bench.cards():
        source, matter = kind_of(bench, pdf)
        if matter["reads"] not in SIZES:
            continue
        least, least_key, least_digit = SIZES[matter["reads"]]
        has_key = re.search(r"^ *```key", source.read_text(encoding="utf-8"), re.M) is not None
        values = attached(pdf)
        for face, page in zip(faces(values), glyphs(pdf), strict=True):
            body = above_footer(page, values["document"])
            count += len(words(body))
            faults += [f"{face}: {fault}" for fault in small_words(body, least)]
            faults += [f"{face}: fraction {fault}" for fault in small_fractions(body, least_digit)]
            starts = [
                v["text"]
                for v in values["values"]
                if v["face"] == face and v["figure"].endswith("start_water") and v["ask"] == "own"
            ]
            if has_key and not starts:
                faults.append(f"{face}: a key box and no start water")
            if has_key and starts and (size := key_size(body, starts[0])) < least_key - SLACK:
                faults.append(f"{face}: start water {plain(starts[0])} at {size:.1f} pt, at least {least_key:.0f}")
    return Result(f"{count} words", faults if count else ["no card is read from the wall or the hand"])


CHECKS = [
    Check("paper and faces", sheets),
    Check("every printed value is on its face", values_shown),
    Check("files are sound", sound),
    Check("fonts are embedded", fonts),
    Check("files are accessible", accessible),
    Check("type sizes by reading distance", type_sizes),
]
