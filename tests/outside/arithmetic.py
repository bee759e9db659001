"""An evaluator of printed arithmetic: numbers, + − × ÷ ^, fractions a/b, parentheses, a few functions."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache

from amounts import rounded

Number = Fraction | float

TOKEN = re.compile(r"\s*(?:(\d+(?:\.\d+)?)|([A-Za-z]\w*)|([+−×÷^(),/-]))")
# A value this close to a multiple stands on it: printed numbers are not exact.
STANDS = 1e-9


def step(direction: str) -> Callable[[Number, Number], Number]:
    """up, down or nearest, forgiving the noise of floats."""

    def to(value: Number, measure: Number) -> Number:
        exact, size = Fraction(value), Fraction(measure)
        near = rounded(exact, "nearest", size)
        if isinstance(value, float) and abs(exact - near) <= STANDS * max(abs(exact), size):
            return near
        return rounded(exact, direction, size)

    return to


FUNCTIONS: dict[str, tuple[int, Callable[..., Number]]] = {
    "sqrt": (1, lambda x: math.sqrt(x)),
    "sin": (1, lambda x: math.sin(x)),
    "asin": (1, lambda x: math.asin(x)),
    "cos": (1, lambda x: math.cos(x)),
    "acos": (1, lambda x: math.acos(x)),
    "exp": (1, lambda x: math.exp(x)),
    "ln": (1, lambda x: math.log(x)),
    "log10": (1, lambda x: math.log10(x)),
    "abs": (1, abs),
    "max": (2, max),
    "min": (2, min),
    "up": (2, step("up")),
    "down": (2, step("down")),
    "nearest": (2, step("nearest")),
}
BINARY: dict[str, tuple[int, Callable[[Number, Number], Number]]] = {
    "+": (1, lambda a, b: a + b),
    "−": (1, lambda a, b: a - b),
    "×": (2, lambda a, b: a * b),
    "÷": (2, lambda a, b: a / b),
    "^": (4, lambda a, b: float(a) ** float(b)),
    "/": (5, lambda a, b: a / b),
}
NEGATION = 3


def tokens(text: str) -> list[str]:
    """Splits a text; anything outside the grammar is an error."""
    found, at = [], 0
    text = text.strip()
    while at < len(text):
        match = TOKEN.match(text, at)
        if match is None:
            raise SyntaxError(f"cannot read {text[at:]!r} in {text!r}")
        found.append(match.group(match.lastindex or 0))
        at = match.end()
    return found


class Reader:
    """Evaluates while it reads, by binding strength."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.left = tokens(text)[::-1]

    def peek(self) -> str:
        return self.left[-1] if self.left else ""

    def take(self, wanted: str = "") -> str:
        token = self.left.pop() if self.left else "the end"
        if wanted and token != wanted:
            raise SyntaxError(f"{wanted!r} expected, {token!r} found in {self.text!r}")
        return token

    def whole(self) -> Number:
        value = self.value(0)
        if self.left:
            raise SyntaxError(f"{self.peek()!r} left over in {self.text!r}")
        return value

    def value(self, least: int) -> Number:
        value = self.start()
        while self.peek() in BINARY and BINARY[self.peek()][0] > least:
            strength, apply = BINARY[self.take()]
            # A power binds to the right, everything else to the left.
            value = apply(value, self.value(strength - (strength == BINARY["^"][0])))
        return value

    def start(self) -> Number:
        token = self.take()
        if token[0].isdigit():
            return Fraction(token)
        if token == "pi":
            return math.pi
        if token in ("-", "−"):
            return -self.value(NEGATION)
        if token == "(":
            value = self.value(0)
            self.take(")")
            return value
        if token not in FUNCTIONS:
            raise SyntaxError(f"{token!r} is no number in {self.text!r}")
        count, function = FUNCTIONS[token]
        self.take("(")
        arguments = [self.value(0)]
        while self.peek() == ",":
            self.take()
            arguments.append(self.value(0))
        self.take(")")
        if len(arguments) != count:
            raise SyntaxError(f"{token} takes {count} numbers, has {len(arguments)} in {self.text!r}")
        return function(*arguments)


@cache
def evaluate(text: str) -> Number:
    """The value of a printed arithmetic text; the same line stands in many derivations."""
    return Reader(text).whole()


def agrees(a: Number, b: Number) -> bool:
    """Equal within one in the sixth significant digit of the second."""
    if b == 0:
        return abs(float(a)) <= STANDS
    return abs(float(a) - float(b)) <= 10.0 ** (math.floor(math.log10(abs(float(b)))) - 5)
