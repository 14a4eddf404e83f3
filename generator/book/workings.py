"""How the numbers of a page were worked out, in words, folded away behind one line.

A working is read by a person: inputs go by words, never by the names they have in the program.
What is printed is enough to work the number out again, since every input carries its value whole.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import cache

from generator.book.content import input_words
from generator.book.marks import Marks, figure_identity, label, printed, source_words
from generator.book.text import inert
from generator.units import split_suffix
from generator.working import (
    Figure,
    Given,
    Measured,
    Quantity,
    Reference,
    Withheld,
    flat_inputs,
)

FOLD = "Show the working"
TYPED, FROM_SOURCES = "Typed in your files", "From sources"
# Functions and signs of a formula as a page writes them.
SIGNS = {
    "whole_up": "rounded up ",
    "whole_down": "rounded down ",
    "max": "the largest of ",
    "min": "the smallest of ",
    "mean": "the mean of ",
    "number_of": "the number of ",
    "total": "the sum of ",
    "*": "×",
    "/": "÷",
    "-": "−",
}
_PART = re.compile(r"[A-Za-z_]\w*|[*/-]")
# Units that are part of what an input is, as in the days of a wait.
_KEPT_UNITS = ("hours", "days")
# A sum needs nobody's word that it is one.
_ARITHMETIC = "arithmetic"
_NEXT_SECTION = re.compile(r"\n(?=## )")
_TABLE = '<table class="figures'
_OWN_MARK = re.compile(r'<a class="n" href="#([^"]+)"')


def with_workings(body: str, marks: Marks) -> str:
    """Return a page's Markdown with its workings folded behind each table's section and its end.

    Each stands once, where the number is first shown in a table, or else at the end of the page.
    """
    if not marks.figures:
        return body
    waiting = {marks.anchors[figure_identity(figure)]: figure for figure in marks.entries()}
    *others, last = _NEXT_SECTION.split(body)
    sections = [*(f"{section}\n" for section in others), last]
    told = [
        (section, _told_in(section, waiting, marks) if _TABLE in section else [])
        for section in sections
    ]
    # behind the last section the page ends: one fold, not two
    told[-1][1].extend(waiting.values())
    return "".join(section + _fold(mine, marks) for section, mine in told)


def _told_in(section: str, waiting: dict[str, Figure], marks: Marks) -> list[Figure]:
    """Return the numbers of a section that still wait, with those they rest on, none twice."""
    found = []
    anchors = list(dict.fromkeys(_OWN_MARK.findall(section)))
    # the list grows while it is walked, by what a working rests on
    for anchor in anchors:
        figure = waiting.pop(anchor, None)
        if figure is None:
            continue
        found.append(figure)
        if isinstance(figure, Quantity):
            keys = (figure_identity(basis) for _, basis in flat_inputs(figure))
            anchors += [marks.anchors[key] for key in keys if key in marks.anchors]
    return found


def _fold(figures: Sequence[Figure], marks: Marks) -> str:
    """Return workings behind one closed line, those of one thing together, or nothing."""
    if not figures:
        return ""
    groups: dict[str, list[Figure]] = {}
    for figure in figures:
        groups.setdefault(_head(figure, marks), []).append(figure)
    lines = [f'\n\n<details class="workings">\n<summary>{FOLD}</summary>']
    for head, members in groups.items():
        lines += [f'<p class="of">{inert(head)}</p>'] if head else []
        lines += [_working(figure, head, marks) for figure in members]
    return "\n".join([*lines, "</details>\n\n"])


def _head(figure: Figure, marks: Marks) -> str:
    if isinstance(figure, Given | Measured):
        return TYPED if figure.file else ""
    return FROM_SOURCES if isinstance(figure, Reference) else marks.subject(figure)


def _working(figure: Figure, head: str, marks: Marks) -> str:
    """Return the working of one figure as HTML: formula, unrounded inputs, source.

    Every part of it is inert text, a number, or a name or id of our own.
    """
    assert not isinstance(figure, Withheld)
    named = f' data-q="{figure.identity}"' if isinstance(figure, Quantity) else ""
    if isinstance(figure, Quantity) and figure.formula.read_as != "number":
        named += f' data-read="{figure.formula.read_as}"'
    # the value stands whole, so that the formula can be worked out again from the page alone
    begun = (
        f'<div class="working" id="{marks.anchor(figure)}" data-unit="{figure.unit}"'
        f' data-value="{float(figure.value)!r}"{named}>\n'
        f'<p>{inert(label(figure))}: <span class="n">{inert(printed(figure))}</span>'
    )
    if not isinstance(figure, Quantity):
        return f"{begun}, {inert(origin(figure))}</p>\n</div>"
    return (
        f'{begun} = <span class="formula">{formula_words(figure.formula.text)}</span></p>\n'
        f"<ul>\n{_inputs(figure, head, marks)}\n</ul>\n{_source(figure.formula.source)}</div>"
    )


def _source(key: str) -> str:
    if key == _ARITHMETIC:
        return ""
    return f"<p><small>{inert(f'Source: {source_words(key)}')}</small></p>\n"


@cache
def formula_words(text: str) -> str:
    """Return a formula in the words and signs of a page.

    >>> formula_words("area_ac * max(0, rate_lb_per_100_gal - 1)")
    'area × the largest of (0, rate in a hundred gallons − 1)'
    """
    return _PART.sub(lambda part: SIGNS.get(part[0]) or input_called(part[0]), text)


@cache
def input_called(name: str) -> str:
    """Return what an input of a formula is called, by its name there.

    >>> input_called("length_ft"), input_called("rent_days"), input_called("carrier_gal_per_ac")
    ('length', 'rent days', 'spray to an acre')
    """
    suffixed = split_suffix(name)
    has_own = suffixed is not None and suffixed[1] not in _KEPT_UNITS
    return input_words().get(name) or (suffixed[0] if suffixed and has_own else name).replace(
        "_", " "
    )


def _inputs(quantity: Quantity, head: str, marks: Marks) -> str:
    return "\n".join(
        f"<li>{input_called(name)}:\n<ol>\n{_members(figure, head, marks)}\n</ol>\n</li>"
        if isinstance(figure, tuple)
        else _input(input_called(name), figure, marks)
        for name, figure in quantity.inputs
    )


def _members(figures: Iterable[Figure], head: str, marks: Marks) -> str:
    """Return the members of a list, each by what it is of where that is not what all is of."""
    return "\n".join(_input(name, figure, marks) for name, figure in _named(figures, head, marks))


def _named(figures: Iterable[Figure], head: str, marks: Marks) -> Iterator[tuple[str, Figure]]:
    for figure in figures:
        of = marks.subject(figure) if isinstance(figure, Quantity) else ""
        own = label(figure) if isinstance(figure, Quantity) else ""
        yield inert(own if of in ("", head) else of), figure


def _input(name: str, figure: Figure, marks: Marks) -> str:
    begun = f"{name}: " if name else ""
    if isinstance(figure, Withheld):
        return f'<li class="withheld">{begun}{figure.why}</li>'
    if isinstance(figure, Quantity):
        number = str(marks.show(figure))
    else:
        number = f'<span class="n">{inert(printed(figure))}</span>, {inert(origin(figure))}'
    return f'<li data-value="{float(figure.value)!r}">{begun}{number}</li>'


def origin(figure: Given | Measured | Reference) -> str:
    """Return where a number that was not computed comes from."""
    if isinstance(figure, Measured):
        told = f"{figure.method}, {figure.points} points"
        where = f" typed in {figure.file}, line {figure.line}" if figure.file else ""
        return f"{told}{where}. {source_words(figure.source)}"
    if isinstance(figure, Reference):
        return f"{source_words(figure.source)}: {figure.locator}"
    return f"typed in {figure.file}, line {figure.line}" if figure.file else "from the owner"
