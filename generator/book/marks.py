"""The marks on numbers: every number on a page leads to its working, there or on its own sheet."""

from collections.abc import Callable, Mapping
from dataclasses import field
from typing import NamedTuple

from markupsafe import Markup

from generator.book.text import inert
from generator.dataclass import dataclass
from generator.reference.library import sources
from generator.units import shown
from generator.working import (
    Figure,
    Given,
    Measured,
    Quantity,
    Reference,
    Withheld,
    flat_inputs,
)


class Home(NamedTuple):
    """Where a number unfolds, wherever it is shown: a page without its ending, and the anchor."""

    page: str
    anchor: str


@dataclass(slots=True)
class Marks:
    """The numbers shown on one page, in the order they first stand there, and sources named.

    `page` is its address without the ending; `homes` are numbers by id that unfold on one page
    alone, so that a list of a hundred places does not carry the workings of all their sheets. A
    sheet `is_whole`: what it rests on stands on it too, since it is read on paper.
    """

    page: str = ""
    homes: Mapping[str, Home] = field(default_factory=dict)
    subject: Callable[[Figure], str] = lambda _: ""
    is_whole: bool = False
    anchors: dict[object, str] = field(default_factory=dict)
    figures: list[Figure] = field(default_factory=list)
    cited: set[str] = field(default_factory=set)
    walked: int = 0

    def cite(self, key: str) -> str:
        """Return a source's title for the page, and keep that the page names it."""
        self.cited.add(key)
        return source_words(key)

    def anchor(self, figure: Figure) -> str:
        """Return the anchor of a figure's working here, giving the next one to a new figure."""
        key = figure_identity(figure)
        if key not in self.anchors:
            home = self._home(figure)
            own = home.anchor if home is not None and home.page == self.page else None
            self.figures.append(figure)
            self.anchors[key] = own or f"w-{len(self.figures)}"
        return self.anchors[key]

    def show(self, figure: Figure) -> Markup:
        """Return the number as printed, marked and linked to its working."""
        if isinstance(figure, Withheld):
            return Markup('<span class="withheld">{}</span>').format(figure.why)
        return Markup(f'<a class="n" href="{self._link(figure)}">{inert(printed(figure))}</a>')

    def entries(self) -> list[Figure]:
        """Return every figure with a working here, those they rest on after them."""
        # the list grows while it is walked: what a working rests on gets a working of its own;
        # asked again it goes on from there, since no page becomes whole that was not
        while self.walked < len(self.figures):
            figure = self.figures[self.walked]
            self.walked += 1
            if isinstance(figure, Quantity):
                for _, basis in flat_inputs(figure):
                    if isinstance(basis, Quantity) and self.is_here(basis):
                        self.anchor(basis)
        return self.figures

    def is_here(self, figure: Figure) -> bool:
        """Return whether a figure unfolds on this page where it is shown."""
        home = self._home(figure)
        return home is None or self.is_whole or home.page == self.page

    def _home(self, figure: Figure) -> Home | None:
        return self.homes.get(figure.identity) if isinstance(figure, Quantity) else None

    def _link(self, figure: Figure) -> str:
        known = self.anchors.get(figure_identity(figure))
        if known is not None:
            return f"#{known}"
        home = self._home(figure)
        if home is None or self.is_whole or home.page == self.page:
            return f"#{self.anchor(figure)}"
        return f"{'../' * self.page.count('/')}{home.page}.html#{home.anchor}"


def figure_identity(figure: Figure) -> object:
    """Return what tells one figure from another: its id, or where it was typed or read."""
    if isinstance(figure, Quantity):
        return figure.identity
    if isinstance(figure, Given):
        return (figure.name, figure.file, figure.line, figure.typed, figure.typed_unit)
    return figure


def printed(figure: Given | Measured | Reference | Quantity) -> str:
    """Return a number as a page prints it; the owner's own unit stands first."""
    if isinstance(figure, Quantity):
        return figure.printed()
    canonical = shown(figure.value, figure.unit)
    if not isinstance(figure, Given):
        return canonical
    typed = shown(figure.typed, figure.typed_unit)
    return typed if typed == canonical else f"{typed} ({canonical})"


def label(figure: Figure) -> str:
    """Return what a figure is called on a page."""
    if isinstance(figure, Quantity):
        return figure.formula.label
    if isinstance(figure, Given) and figure.label:
        return figure.label[0].upper() + figure.label[1:]
    return _name_words(figure.name, figure.unit)


def _name_words(name: str, unit: str) -> str:
    """Return a field's name as words, without its unit.

    >>> _name_words("rate_pls_lb_per_ac", "lb_per_ac")
    'Rate pls'
    """
    words = name.removesuffix(unit).strip("_").replace("_", " ")
    return (words or unit.replace("_", " ")).capitalize()


def source_words(key: str) -> str:
    """Return a source's title, with how far it can be trusted where that must be said."""
    source = sources()[key]
    trust = {"common_practice": " (common practice)", "memory": " (from memory, unchecked)"}
    return source.title + ("" if key in trust else trust.get(source.trust, ""))
