"""Finished pages as a browser's parser sees them: elements, text, numbers and their workings."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

# Elements that have no end tag.
VOID = frozenset(
    ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "wbr"]
)


@dataclass
class Element:
    """One element with what it holds, elements and pieces of text in their order."""

    tag: str
    attributes: dict[str, str]
    inside: list["Element | str"] = field(default_factory=list)

    def walk(self) -> Iterator["Element"]:
        """This element and every element in it, in document order."""
        yield self
        for one in self.inside:
            if isinstance(one, Element):
                yield from one.walk()

    def all(self, tag: str, name: str = "") -> list["Element"]:
        """The elements in this one that have the tag and, where given, the class."""
        return [one for one in self.walk() if one.tag == tag and (not name or one.has(name))]

    def has(self, name: str) -> bool:
        """Whether the element has the class."""
        return name in self.attributes.get("class", "").split()

    def text(self) -> str:
        """All text in it, with nothing between the pieces."""
        return "".join(one if isinstance(one, str) else one.text() for one in self.inside)


class _Tree(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open = [Element("document", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inside.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        while len(self.open) > 1 and self.open.pop().tag != tag:
            pass

    def handle_data(self, data: str) -> None:
        inside = self.open[-1].inside
        if inside and isinstance(inside[-1], str):
            inside[-1] += data
        else:
            inside.append(data)


def read(html: str) -> Element:
    """The document as a tree."""
    tree = _Tree()
    tree.feed(html)
    tree.close()
    return tree.open[0]


@dataclass(frozen=True)
class Input:
    """One input in a working: its unrounded value, None where it is the owner's own affair.

    `words` are what the formula on the page calls it, the same of every member of a list.
    """

    words: str
    in_list: bool
    value: float | None
    mark: Element | None
    told: str


@dataclass(frozen=True)
class Working:
    """One working: the number unrounded and as printed, its formula in words where it has one.

    `read_as` is empty of a number, else how it is printed: as on a tape, or as both. `head` says
    what the number is of.
    """

    unit: str
    value: float
    identity: str
    printed: str
    formula: str
    inputs: tuple[Input, ...]
    read_as: str
    head: str = ""


def workings(document: Element) -> dict[str, Working]:
    """Every working on a page by its anchor."""
    found: dict[str, Working] = {}
    for fold in document.all("details", "workings"):
        head = ""
        for one in fold.inside:
            if isinstance(one, Element) and one.has("of"):
                head = one.text()
            elif isinstance(one, Element) and one.has("working"):
                assert one.attributes["id"] not in found
                found[one.attributes["id"]] = _working(one, head)
    return found


def _working(block: Element, head: str) -> Working:
    first = block.all("p")[0]
    printed = first.all("span", "n")[0]
    formulas = first.all("span", "formula")
    return Working(
        block.attributes["data-unit"],
        float(block.attributes["data-value"]),
        block.attributes.get("data-q", ""),
        printed.text(),
        formulas[0].text() if formulas else "",
        tuple(_inputs(block)),
        block.attributes.get("data-read", ""),
        head,
    )


def _inputs(block: Element) -> Iterator[Input]:
    for listed in block.all("ul"):
        for item in listed.inside:
            if isinstance(item, Element):
                words = item.text().partition(":")[0]
                members = [one for names in item.all("ol") for one in names.all("li")]
                yield from (_input(one, words, bool(members)) for one in members or [item])


def _input(item: Element, words: str, in_list: bool) -> Input:
    value = item.attributes.get("data-value")
    marks = item.all("a", "n")
    assert (value is None) == item.has("withheld")
    return Input(
        words,
        in_list,
        None if value is None else float(value),
        marks[0] if marks else None,
        item.text(),
    )


# What a formula on a page says for the functions and signs of the text that is worked out.
WRITTEN = {
    "rounded up": "whole_up",
    "rounded down": "whole_down",
    "the largest of": "max",
    "the smallest of": "min",
    "the mean of": "mean",
    "the sum of": "total",
    "×": "*",
    "÷": "/",
    "−": "-",
}


def to_replay(working: Working) -> tuple[str, dict[str, float | list[float]]]:
    """The formula as a person reads it, as text to work out, with the values printed below it."""
    values: dict[str, float | list[float]] = {}
    names: dict[str, str] = {}
    for one in working.inputs:
        assert one.value is not None
        name = names.setdefault(one.words, f"x{len(names)}")
        if one.in_list:
            members = values.setdefault(name, [])
            assert isinstance(members, list)
            members.append(one.value)
        else:
            assert name not in values, f"two inputs are called {one.words}"
            values[name] = one.value
    # the longest first: a width of a pass is no width
    written = sorted((names | WRITTEN).items(), key=lambda pair: -len(pair[0]))
    pattern = "|".join(re.escape(words) for words, _ in written)
    return re.sub(pattern, lambda found: dict(written)[found[0]], working.formula), values


def marked_numbers(document: Element) -> list[Element]:
    """Every number on a page that leads to its working."""
    return document.all("a", "n")
