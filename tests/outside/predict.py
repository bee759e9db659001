"""What the mud, half-load, ladder and pocket cards must say, worked out from the job folder alone."""

from __future__ import annotations

import decimal as dec
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from amounts import decimal, mixed, number, rounded, within

LANGS = ("en", "es")
CARDS = ("mud", "half-load", "ladder", "pocket")
GAL_PER_L = 1 / within("1 gal", "L")

WORDS: dict[str, dict[str, tuple[str, str]]] = {
    "cup": {"en": ("cup", "cups"), "es": ("taza", "tazas")},
    "load": {"en": ("load", "loads"), "es": ("juego", "juegos")},
    "bag": {"en": ("bag", "bags"), "es": ("saco", "sacos")},
    "minute": {"en": ("minute", "minutes"), "es": ("minuto", "minutos")},
}


class Key(NamedTuple):
    """One printed value: which figure, how it was asked for, in which language."""

    figure: str
    ask: str
    lang: str


def front_matter(path: Path) -> dict[str, Any]:
    """A file's front matter, every scalar as the text typed."""
    return yaml.load(path.read_text(encoding="utf-8").split("---\n")[1], Loader=yaml.BaseLoader)


def counted(value: Fraction, thing: str, lang: str) -> str:
    one, many = WORDS[thing][lang]
    return f"{mixed(value)} {one if 0 < value <= 1 else many}"


def pail(gallons: Fraction, lang: str) -> str:
    """Gallons as they are measured on site."""
    said, cups = [], gallons * 16
    for name, size in (("gal", 16), ("qt", 4), ("pt", 2)):
        count, cups = divmod(cups, size)
        if count:
            said.append(f"{count} {name}")
    if cups or not said:
        said.append(counted(cups, "cup", lang))
    return " ".join(said)


def litres(gallons: Fraction) -> str:
    return f"{decimal(rounded(gallons / GAL_PER_L, 'down', Fraction(1, 20)), 2)} L"


KG_PER_LB = within("1 lb", "kg")


def weight_of_water(pounds: Fraction, metric: bool) -> str:
    if metric:
        return f"{decimal(rounded(pounds * KG_PER_LB, 'down', Fraction(1, 20)), 2)} kg"
    return f"{decimal(rounded(pounds, 'down', Fraction(1, 10)), 1)} lb"


def weight_of_bag(pounds: Fraction, metric: bool) -> str:
    if metric:
        return f"{decimal(rounded(pounds * KG_PER_LB, 'nearest', Fraction(1, 10)), 1)} kg"
    return f"{float(rounded(pounds, 'nearest', Fraction(1, 10))):g} lb"


def ceiling(value: Fraction) -> Fraction:
    return rounded(value, "up", Fraction(1))


def place_by(open_time: str, table: list[dict[str, str]], hottest: Fraction) -> str:
    """Open time at the hottest end of the band, down to 5 min: by the sheet's own table the shorter of the rows next to
    it, else halved for each 20 °F, and half as long again at most."""
    if table:
        rows = sorted((within(row["at"], "°F"), within(row["open"], "min")) for row in table)
        above = [minutes for degrees, minutes in rows if degrees >= hottest]
        below = [minutes for degrees, minutes in rows if degrees <= hottest]
        if not above:
            raise ValueError("too hot for the sheet: the card has no time and this prediction does not apply")
        return f"{mixed(rounded(min(above[:1] + below[-1:]), 'down', Fraction(5)))} min"
    time, reading = open_time.split(" at ")
    degrees = hottest - within(reading, "°F")
    with dec.localcontext(prec=50):
        share = Fraction(dec.Decimal(2) ** (dec.Decimal(-degrees.numerator) / (20 * degrees.denominator)))
    share = min(share, Fraction(3, 2))
    if share < Fraction(35, 100):
        raise ValueError("too hot: the card has no time and this prediction does not apply")
    return f"{mixed(rounded(within(time, 'min') * share, 'down', Fraction(5)))} min"


@dataclass(frozen=True)
class Mix:
    """The facts of a mix sheet that cards print, per load; water in gallons."""

    id: str
    start: Fraction
    step: Fraction
    limit: Fraction
    water_lb_per_gal: Fraction
    additive_bag: Fraction
    mortar_bag: Fraction
    additive_bags: Fraction
    mortar_bags: Fraction
    mixing: Fraction
    after_step: Fraction
    open_time: str
    times: list[dict[str, str]]

    @staticmethod
    def read(path: Path) -> Mix:
        m = front_matter(path)
        per, mass = within("1 gal", "m3"), within("1 lb", "kg")
        water, bags = m["water"], m["bags_per_load"]
        return Mix(
            id=path.stem,
            start=within(water["start"], "gal"),
            step=within(water["step"], "gal"),
            limit=within(water["limit"], "gal"),
            water_lb_per_gal=within(water["constant"], "kg/m3") * per / mass,
            additive_bag=within(m["additive"]["bag"], "lb"),
            mortar_bag=within(m["mortar"]["bag"], "lb"),
            additive_bags=number(bags["additive"]),
            mortar_bags=number(bags["mortar"]),
            mixing=ceiling(within(m["mixing"]["least"], "min")),
            after_step=ceiling(within(m["mixing"]["after_step"], "min")),
            open_time=m["open_time"],
            times=m.get("times", []),
        )


Say = Callable[[str], str]


@dataclass(frozen=True)
class Value:
    """A predicted value: the same in both languages unless `say` says otherwise."""

    figure: str
    ask: str
    say: Say


class Predictor:
    """Predicts the cards of one site."""

    def __init__(self, job: Path, site: Path) -> None:
        self.site = site.stem
        facts = front_matter(site)
        self.metric = facts["units"] == "metric"
        company = front_matter(job / "company.md")
        marks = [m["marked"] for m in company["measures"].values()]
        self.mark = min(within(m, "gal") for m in marks if m.split()[-1] in ("gal", "qt", "pt", "cup"))
        self.metric_mark = min(within(m, "gal") for m in marks if m.split()[-1] in ("L", "mL"))
        mixes = [Mix.read(p) for p in sorted((job / "mixes").glob("*.md")) if not p.name.endswith(".es.md")]
        named = {front_matter(job / "mixes" / f"{m.id}.md")["name"]: m for m in mixes}
        self.mixes = [named[name] for name in facts["mixes"].values()]
        self.batches = [(named[b["mix"]], within(b["loads"], "load")) for b in facts["batches"]]
        coolest, hottest = facts["climate"]["band"].split(" to ")
        self.coolest, self.hottest = within(coolest, "°F"), within(hottest, "°F")

    def marked(self, gallons: Fraction) -> Fraction:
        return rounded(gallons, "down", self.mark)

    def water(self, figure: str, gallons: Fraction, ask: str = "own") -> Value:
        if (ask == "second") != self.metric:
            return Value(figure, ask, lambda _: litres(gallons))
        return Value(figure, ask, lambda lang: pail(self.marked(gallons), lang))

    def mud(self, mix: Mix, loads: Fraction) -> Iterator[Value]:
        batch = f"{self.site}/{mix.id}/{mixed(loads)}"
        start, mortar = loads * mix.start, ceiling(loads * mix.mortar_bags)
        first = ceiling(mortar / 2)

        def bags(name: str, count: Fraction) -> Value:
            return Value(f"{batch}.{name}", "own", lambda lang: counted(count, "bag", lang))

        yield Value(f"{batch}.loads", "own", lambda lang: counted(loads, "load", lang))
        yield self.water(f"{batch}.start_water", start)
        yield self.water(f"{batch}.start_water", start, "second")
        yield Value(f"{batch}.start_water_weight", "own", lambda _: weight_of_water(start * mix.water_lb_per_gal, self.metric))
        yield self.water(f"{batch}.limit", loads * mix.limit)
        yield self.water(f"{batch}.step", loads * mix.step)
        if loads == 1:
            yield bags("mortar", mortar)
        else:
            yield bags("mortar_first", first)
            yield bags("mortar_rest", mortar - first)
        yield bags("additive", ceiling(loads * mix.additive_bags))
        yield self.mixing_spelled(mix)
        yield Value(f"{mix.id}.after_step", "own", lambda _: f"{mixed(mix.after_step)} min")
        yield Value(f"{batch}.place_by", "own", lambda _: place_by(mix.open_time, mix.times, self.hottest))
        yield from self.band()

    def band(self) -> Iterator[Value]:
        for name, degrees in (("low", self.coolest), ("high", self.hottest)):
            said = within(f"{degrees} °F", "°C") if self.metric else degrees
            yield Value(f"{self.site}.band_{name}", "own", lambda _, d=said: f"{mixed(d)} {'°C' if self.metric else '°F'}")

    def mixing_spelled(self, mix: Mix) -> Value:
        return Value(f"{mix.id}.mixing", "long", lambda lang: counted(mix.mixing, "minute", lang))

    def half_load(self, mix: Mix) -> Iterator[Value]:
        yield self.water(f"{mix.id}.half_start_water", mix.start / 2)
        yield self.water(f"{mix.id}.half_start_water", mix.start / 2, "second")
        yield self.water(f"{mix.id}.half_limit", mix.limit / 2)
        yield Value(f"{mix.id}.half_mortar", "own", lambda _: weight_of_bag(mix.mortar_bag * mix.mortar_bags / 2, self.metric))
        yield Value(f"{mix.id}.half_additive", "own", lambda _: weight_of_bag(mix.additive_bag * mix.additive_bags / 2, self.metric))
        yield self.mixing_spelled(mix)

    def ladder(self, mix: Mix) -> Iterator[Value]:
        sizes = {"half": Fraction(1, 2)} | {mixed(loads): loads for of, loads in self.batches if of is mix}
        for name, loads in sizes.items():
            if name != "half":
                yield Value(f"{mix.id}.ladder_size.{name}", "own", lambda lang, n=loads: counted(n, "load", lang))
        last = int((mix.limit - mix.start) / mix.step)
        for rung in range(last + 1):
            if rung < last:
                yield self.water(f"{mix.id}.ladder.added.{rung}", rung * mix.step)
            for name, loads in sizes.items():
                yield self.water(f"{mix.id}.ladder.{name}.{rung}", loads * (mix.start + rung * mix.step))

    def pocket(self, mix: Mix) -> Iterator[Value]:
        yield self.water(f"{mix.id}.start_water", mix.start)
        yield self.water(f"{mix.id}.step", mix.step)
        yield self.water(f"{mix.id}.limit", mix.limit)
        yield Value(f"{mix.id}.mixing", "own", lambda _: f"{mixed(mix.mixing)} min")
        yield Value(f"{self.site}/{mix.id}.place_by", "own", lambda _: place_by(mix.open_time, mix.times, self.hottest))

    def values(self) -> Iterator[Value]:
        for mix, loads in self.batches:
            yield from self.mud(mix, loads)
        for mix in self.mixes:
            yield from self.half_load(mix)
            yield from self.ladder(mix)
            yield from self.pocket(mix)


def predict(job: Path) -> dict[Key, str]:
    """Every value of the cards covered, for every site of a job."""
    sites = [p for p in sorted((job / "sites").glob("*.md")) if not p.name.endswith(".es.md")]
    texts: dict[Key, str] = {}
    for site in sites:
        for value in Predictor(job, site).values():
            for lang in LANGS:
                texts[Key(value.figure, value.ask, lang)] = value.say(lang)
    return texts


def covered_codes(job: Path) -> dict[str, str]:
    """The code letters of the cards covered, from their own files."""
    return {front_matter(job / "cards" / f"{name}.md")["code"]: name for name in CARDS}


def changed(before: dict[Key, str], after: dict[Key, str]) -> set[tuple[Key, str | None, str | None]]:
    """What differs, with both texts; a value that came or went has None on one side."""
    return {(k, before.get(k), after.get(k)) for k in before.keys() | after.keys() if before.get(k) != after.get(k)}
