"""The theme's frame around a page, rendered once for each kind of neighborhood and joined as text.

Pages of one section differ in their title, their own line in the contents, the pages beside them
and what stands on them. So the theme renders one stand-in for each kind, holes in place of those,
and every page of the kind fills them; the first page of a section has a frame of its own. What
comes out is what the theme renders of the page itself.
"""

import posixpath
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import field
from typing import Any, Protocol

from generator.dataclass import dataclass

# An owner's text has no hyphen in it, which stands as an entity: none is ever taken for a hole.
_HOLE = "hole-of-the-frame-"
TITLE, FILE, CONTENT = f"{_HOLE}title", f"{_HOLE}file", f"{_HOLE}content"
PREVIOUS, PREVIOUS_TITLE = f"{_HOLE}previous", f"{_HOLE}previous-title"
NEXT, NEXT_TITLE = f"{_HOLE}next", f"{_HOLE}next-title"
HEADING, HEADING_TITLE = f"{_HOLE}heading", f"{_HOLE}heading-title"
HEADINGS, BEFORE, AFTER = f"{_HOLE}headings", f"{_HOLE}before", f"{_HOLE}after"
# An address is made relative to the page: a hole takes all of it.
_ANY_HOLE = re.compile(rf"(?:\.\./)*({_HOLE}[a-z-]*[a-z])(?:\.html)?")
_ENTRY = re.compile(r"<li>.*?</li>", re.DOTALL)
_HERE = re.compile(r'<li class="here">.*?</li>', re.DOTALL)
_HERE_WITH_HEADINGS = re.compile(r'<li class="here">.*?</li></ul></li>', re.DOTALL)
_ONE_HEADING = f'<li><a href="#{HEADING}">{HEADING_TITLE}</a></li>'
_H1 = "<h1"
_WITH_H1 = f"{_H1} {CONTENT}>"


class Rendering(Protocol):
    """A template of the theme."""

    def render(self, context: Mapping[str, Any], /) -> str:
        """Return a page in its frame."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading as the theme lists it: its address on the page, its words, those below it."""

    url: str
    title: str
    children: tuple["Heading", ...] = ()


@dataclass(frozen=True, slots=True)
class Headings:
    """The headings of a page as the theme asks for them: as `items`, or one after another."""

    items: tuple[Heading, ...]

    def __iter__(self) -> Iterator[Heading]:
        return iter(self.items)


@dataclass(frozen=True, slots=True, eq=False)
class _Beside:
    url: str
    title: str


@dataclass(slots=True, eq=False)
class _StandIn:
    """What the theme takes for a page: holes, and what the pages of its kind have in common."""

    url: str
    content: str
    toc: Headings
    parent: Any
    ancestors: list[Any]
    is_homepage: bool
    previous_page: _Beside | None
    next_page: _Beside | None
    title: str = TITLE
    meta: Mapping[str, str] = field(default_factory=lambda: {"title": TITLE})
    children: None = None


@dataclass(frozen=True, slots=True)
class _Frame:
    """The text around the pages of one kind: what stands between holes, and the holes by turns.

    `lines` are those of the section in the contents behind its first, as they stand where another
    page is read; none where the theme does not name them all.
    """

    parts: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Framed:
    """A page in its frame; `frame` is the frame alone where the page is the first of its kind."""

    html: str
    kind: object
    frame: str | None


class Frames:
    """The frames of one site, by kind."""

    def __init__(self, template: Rendering) -> None:
        self.template = template
        self.frames: dict[object, _Frame] = {}
        self.places: dict[int, dict[int, int]] = {}

    def around(
        self, page: Any, entries: list[Any], context_of: Callable[[Any], Mapping[str, Any]]
    ) -> Framed:
        """Return a page in its frame, as the theme would render it.

        `entries` are those at the top of the contents. The context is asked for only where a frame
        is rendered.
        """
        beside = page.parent.children if page.parent is not None else entries
        place = self._place(page, beside)
        # a head leads to its first page and a list to its own: others cannot take their places
        is_shared = page.parent is not None and place > 0
        kind = _kind(page) if is_shared else page.url
        is_first = kind not in self.frames
        if is_first:
            self.frames[kind] = (
                self._shared(page, context_of(page), beside)
                if is_shared
                else self._own(page, context_of(page), beside, place)
            )
        frame = self.frames[kind]
        alone = _joined(frame, page, place, "") if is_first else None
        return Framed(_joined(frame, page, place, page.content), kind, alone)

    def _place(self, page: Any, beside: list[Any]) -> int:
        """Return where a page stands among the entries beside it."""
        if id(beside) not in self.places:
            self.places[id(beside)] = {id(entry): number for number, entry in enumerate(beside)}
        return self.places[id(beside)][id(page)]

    def _own(self, page: Any, context: Mapping[str, Any], beside: list[Any], place: int) -> _Frame:
        stand_in = _stand_in(page)
        beside[place] = stand_in
        try:
            rendered = self.template.render({**context, "page": stand_in})
        finally:
            beside[place] = page
        before, here, after = _around_here(page, rendered)
        return _frame(f"{before}{here}{after}", ())

    def _shared(self, page: Any, context: Mapping[str, Any], beside: list[Any]) -> _Frame:
        stand_in = _stand_in(page)
        inside = {**context, "page": stand_in}
        others, every = self.template.render(inside), beside[:]
        beside[:] = [every[0], stand_in]
        try:
            alone = self.template.render(inside)
        finally:
            beside[:] = every
        before, here, after = _around_here(page, alone)
        listed = others.removeprefix(before).removesuffix(after)
        lines = tuple(_ENTRY.findall(listed))
        # of a long list the theme names the first and what is read
        if f"{before}{''.join(lines)}{after}" != others or len(lines) not in (0, len(every) - 1):
            raise ValueError("the contents of the theme's frame are not one line an entry")
        return _frame(f"{before}{BEFORE}{here}{AFTER}{after}", lines)


def _around_here(page: Any, rendered: str) -> tuple[str, str, str]:
    """Return what stands before the line of the page that is read, that line, and all after it."""
    found = (_HERE_WITH_HEADINGS if _below(page) else _HERE).search(rendered)
    if found is None:
        raise ValueError("the theme's frame does not say in its contents which page is read")
    here = found[0].replace(_ONE_HEADING, HEADINGS)
    return rendered[: found.start()], here, rendered[found.end() :]


def _frame(whole: str, lines: tuple[str, ...]) -> _Frame:
    return _Frame(tuple(_ANY_HOLE.split(whole.replace(_WITH_H1, CONTENT))), lines)


def _below(page: Any) -> tuple[Heading, ...]:
    """Return the headings of a page that the contents list: those below its first."""
    items = page.toc.items
    return items[0].children if items else ()


def _kind(page: Any) -> object:
    """Return what pages with the same frame have in common."""
    return (
        id(page.parent),
        posixpath.dirname(page.url),
        page.is_homepage,
        page.previous_page is None,
        page.next_page is None,
        page.toc.items[0].url if page.toc.items else None,
        bool(_below(page)),
        _H1 in page.content,
    )


def _stand_in(page: Any) -> _StandIn:
    below = (Heading(f"#{HEADING}", HEADING_TITLE),) if _below(page) else ()
    return _StandIn(
        posixpath.join(posixpath.dirname(page.url), f"{FILE}.html"),
        # the theme writes a title above what has none
        _WITH_H1 if _H1 in page.content else CONTENT,
        Headings(tuple(Heading(item.url, "", below) for item in page.toc.items[:1])),
        page.parent,
        page.ancestors,
        page.is_homepage,
        _Beside(f"{PREVIOUS}.html", PREVIOUS_TITLE) if page.previous_page is not None else None,
        _Beside(f"{NEXT}.html", NEXT_TITLE) if page.next_page is not None else None,
    )


def _joined(frame: _Frame, page: Any, place: int, content: str) -> str:
    values = {
        TITLE: page.title,
        FILE: posixpath.basename(page.url),
        CONTENT: content,
        BEFORE: "".join(frame.lines[: place - 1]),
        AFTER: "".join(frame.lines[place:]),
        HEADINGS: "".join(
            f'<li><a href="{heading.url}">{heading.title}</a></li>' for heading in _below(page)
        ),
    }
    start = posixpath.dirname(page.url) or "."
    if page.previous_page is not None:
        values[PREVIOUS] = posixpath.relpath(page.previous_page.url, start)
        values[PREVIOUS_TITLE] = page.previous_page.title
    if page.next_page is not None:
        values[NEXT] = posixpath.relpath(page.next_page.url, start)
        values[NEXT_TITLE] = page.next_page.title
    return "".join(values[part] if number % 2 else part for number, part in enumerate(frame.parts))
