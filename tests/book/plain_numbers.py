"""Finds numbers with a unit that stand on a page as plain text, without a way to their working."""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import yaml

from generator.book.text import clean
from generator.units import UNITS
from tests.book.reading import Element

SPELLED = (
    *("acre", "acres", "gallon", "gallons", "foot", "feet", "inch", "inches", "yard", "yards"),
    *("mile", "miles", "pound", "pounds", "ounce", "ounces", "quart", "quarts", "pint", "pints"),
    *("hour", "hours", "minute", "minutes", "second", "seconds", "day", "week", "weeks"),
    *("month", "months", "percent", "dollar", "degrees", "F", "C"),
)
WORDS = sorted({*SPELLED, *(unit.words for unit in UNITS.values() if unit.words)}, key=len)[::-1]
# "Season 2027 in" names a year.
YEAR = r"(?!(?:19|20)\d\d in\b)"
NUMBER_WITH_UNIT = re.compile(
    rf"\$\s?\d[\d.,]*|(?<![\w.]){YEAR}\d[\d.,]*(?:\s|-)?(?:"
    + "|".join(re.escape(word) for word in WORDS)
    + r")(?![\w])"
)
INLINE = frozenset(["a", "b", "em", "i", "small", "span", "strong", "sub", "sup"])
# What a drawing tells those who do not see it holds no link: the same figures stand below it.
NOT_PROSE = frozenset(["script", "style", "time", "code", "head", "desc"])
# Between two pieces of text that do not belong together; no number and no unit reaches over it.
GAP = "\n"


def plain_numbers(document: Element, typed: Iterable[str] = ()) -> list[str]:
    """Every number with a unit outside a mark, a time, code, or a text the owner typed.

    The levels of a picture's scale are round numbers that stand for nothing of the plan. The line
    of a working that says where a number comes from may quote the source's words, and so may the
    line under a source's title on the page of sources.
    """
    prose = "".join(_prose(document))
    for text in sorted({clean(one) for one in typed}, key=len, reverse=True):
        if any(one.isdigit() for one in text):
            prose = prose.replace(text, GAP)
    return NUMBER_WITH_UNIT.findall(prose)


def _prose(element: Element) -> Iterator[str]:
    marked = element.tag in ("a", "span") and element.has("n")
    is_level = element.tag == "text" and element.has("scale")
    if marked or is_level or element.tag in NOT_PROSE:
        yield GAP
        return
    yield "" if element.tag in INLINE else GAP
    is_working = element.tag == "div" and element.has("working")
    for one in element.inside:
        if isinstance(one, str):
            yield re.sub(r"\s+", " ", one)
        elif not (one.tag == "p" and (is_working or one.has("says"))):
            yield from _prose(one)
    yield "" if element.tag in INLINE else GAP


def typed_texts(property_folder: Path) -> set[str]:
    """Every text that stands as a value in the files of a property folder."""
    texts: set[str] = set()
    for path in sorted(property_folder.rglob("*.yaml")):
        texts.update(_texts(yaml.safe_load(path.read_text(encoding="utf-8"))))
    return texts


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for one in value.values():
            yield from _texts(one)
    elif isinstance(value, list):
        for one in value:
            yield from _texts(one)
