"""Finished pages as a browser's parser sees them: elements, text, numbers and their workings."""

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
    """One input in a working: its unrounded value, None where it is the owner's own affair."""

    name: str
    value: float | None
    mark: Element | None


@dataclass(frozen=True)
class Working:
    """One unfolding block: the number unrounded and as printed, its formula where it has one.

    `read_as` is empty of a number, else how it is printed: as on a tape, or as both.
    """

    unit: str
    value: float
    identity: str
    printed: str
    formula: str
    inputs: tuple[Input, ...]
    read_as: str


def workings(document: Element) -> dict[str, Working]:
    """Every working on a page by its anchor."""
    return {one.attributes["id"]: _working(one) for one in document.all("details", "working")}


def _working(block: Element) -> Working:
    (summary,) = block.all("summary")
    (printed,) = summary.all("span", "n")
    formulas = block.all("code", "formula")
    return Working(
        block.attributes["data-unit"],
        float(block.attributes["data-value"]),
        block.attributes.get("data-q", ""),
        printed.text(),
        formulas[0].text() if formulas else "",
        tuple(_input(one) for one in block.all("li") if "data-name" in one.attributes),
        block.attributes.get("data-read", ""),
    )


def _input(item: Element) -> Input:
    value = item.attributes.get("data-value")
    marks = item.all("a", "n")
    assert (value is None) == item.has("withheld")
    return Input(
        item.attributes["data-name"],
        None if value is None else float(value),
        marks[0] if marks else None,
    )


def marked_numbers(document: Element) -> list[Element]:
    """Every number on a page that leads to its working."""
    return document.all("a", "n")
