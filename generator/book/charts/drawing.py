"""The pieces of a picture: shapes placed by shares of the width, so that text keeps its size.

A picture is as wide as the page and as high as it says in pixels. Fills are told apart by pattern,
not by color: they read the same in gray, in the dark and on paper.
"""

from collections.abc import Iterable, Sequence
from typing import Literal

from markupsafe import Markup

from generator.book.text import inert

Fill = Literal["solid", "hatch", "dots", "cross", "empty", "bars", "above"]

_END = Markup("</svg>")
# What each pattern repeats, on a tile of eight by eight pixels.
_TILES: dict[Fill, str] = {
    "hatch": '<path d="M-2,2 l4,-4 M0,8 l8,-8 M6,10 l4,-4"/>',
    "cross": '<path d="M0,8 l8,-8 M0,0 l8,8"/>',
    "bars": '<path d="M2,0 v8 M6,0 v8"/>',
    "dots": '<circle cx="4" cy="4" r="1.4"/>',
}


def percent(width_fraction: float) -> str:
    """Return a share of the width as it stands in an attribute.

    >>> percent(1 / 3)
    '33.333%'
    """
    return f"{100 * width_fraction:.3f}".rstrip("0").rstrip(".") + "%"


def pixels(length_px: float) -> str:
    """Return a length in pixels as it stands in an attribute.

    >>> pixels(12.0), pixels(3.14159)
    ('12', '3.14')
    """
    return f"{length_px:.2f}".rstrip("0").rstrip(".")


def picture(
    name: str,
    height_px: float,
    title: str,
    told: str,
    parts: Iterable[Markup],
    fills: Iterable[Fill] = (),
    data: dict[str, str] | None = None,
) -> Markup:
    """Return a whole picture; `told` is what somebody hears who does not see it.

    Where nothing is told the words under the picture describe it, by the id that `caption_id`
    gives. `name` is an id of our own, unlike any other on the page. `data` are what a script goes
    by.
    """
    said = Markup(f'<title id="{name}-t">{{}}</title>').format(inert(title))
    by = f' aria-labelledby="{name}-t" aria-describedby="{caption_id(name)}"'
    if told:
        said += Markup(f'<desc id="{name}-d">{{}}</desc>').format(inert(told))
        by = f' aria-labelledby="{name}-t {name}-d"'
    opening = (
        f'<svg class="picture" width="100%" height="{pixels(height_px)}" role="img"{by}'
        f"{_said(data or {})}>"
    )
    return Markup(opening) + said + _patterns(name, fills) + Markup("").join(parts) + _END


def caption_id(name: str) -> str:
    """Return the id of the words under a picture that describe it."""
    return f"{name}-f"


def unspoken(height_px: float, parts: Iterable[Markup]) -> Markup:
    """Return a picture of which the words beside it say all there is."""
    opening = Markup('<svg class="picture" width="100%" height="{}" aria-hidden="true">')
    return opening.format(pixels(height_px)) + Markup("").join(parts) + _END


def key(name: str, fill: Fill) -> Markup:
    """Return the sample of a fill that stands before its words in the key of a picture."""
    top, height = ("6", "3") if fill == "above" else ("1", "14")
    return _sample(box("0", top, "100%", height, paint(name, fill)))


def dot_sample() -> Markup:
    """Return the sample of a dot in the key of a picture."""
    return _sample(dot("11", "8", {}))


def _sample(drawn: Markup) -> Markup:
    opening = Markup('<svg class="sample" width="22" height="16" aria-hidden="true">')
    return opening + drawn + Markup("</svg>")


def paint(name: str, fill: Fill) -> str:
    """Return the attributes that fill a shape of the picture `name`."""
    if fill not in _TILES:
        return f'class="{fill}"'
    return f'class="drawn" fill="url(#{name}-{fill})"'


def box(
    x: str, y: str, width: str, height: str, painted: str, data: dict[str, str] | None = None
) -> Markup:
    """Return a rectangle; `data` are the plan's own values it stands for."""
    return Markup(
        f'<rect x="{x}" y="{y}" width="{width}" height="{height}" {painted}{_said(data or {})}/>'
    )


def rule(
    x1: str, y1: str, x2: str, y2: str, kind: str, data: dict[str, str] | None = None
) -> Markup:
    """Return a line; `kind` is the class it is drawn by, `data` are what it stands for."""
    said = _said(data or {})
    return Markup(f'<line x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}" class="{kind}"{said}/>')


def dot(x: str, y: str, data: dict[str, str]) -> Markup:
    """Return a filled circle; `data` are the plan's own values it stands for."""
    return Markup(f'<circle cx="{x}" cy="{y}" r="5" class="dot"{_said(data)}/>')


def text_line(
    x: str, y: str, text: str, anchor: str = "start", kind: str = "", beside_px: float = 0
) -> Markup:
    """Return a line of text, as far beside its place as is said."""
    said = f' text-anchor="{anchor}"' if anchor != "start" else ""
    said += f' class="{kind}"' if kind else ""
    said += f' dx="{pixels(beside_px)}"' if beside_px else ""
    return Markup(f'<text x="{x}" y="{y}"{said}>{{}}</text>').format(inert(text))


def kept_apart(places_px: Sequence[float], least_px: float) -> tuple[float, ...]:
    """Return places moved as little as keeps each so far from the next, in the same order.

    >>> kept_apart((10, 12, 50), 14)
    (4.0, 18.0, 50.0)
    """
    order = sorted(range(len(places_px)), key=lambda number: (places_px[number], number))
    # heaps_px of places that touch: their sum once each is drawn back by its rank, and how many
    heaps_px: list[tuple[float, int]] = []
    for rank, number in enumerate(order):
        total, count = places_px[number] - rank * least_px, 1
        while heaps_px and heaps_px[-1][0] / heaps_px[-1][1] > total / count:
            total, count = total + heaps_px[-1][0], count + heaps_px[-1][1]
            heaps_px.pop()
        heaps_px.append((total, count))
    level = [total / count for total, count in heaps_px for _ in range(count)]
    placed = {number: level[rank] + rank * least_px for rank, number in enumerate(order)}
    return tuple(placed[number] for number in range(len(places_px)))


def _said(data: dict[str, str]) -> str:
    return "".join(f' data-{name}="{inert(value)}"' for name, value in data.items())


def _patterns(name: str, fills: Iterable[Fill]) -> Markup:
    drawn = "".join(
        f'<pattern id="{name}-{fill}" width="8" height="8" patternUnits="userSpaceOnUse">'
        f'<rect width="8" height="8" class="ground"/>{_TILES[fill]}</pattern>'
        for fill in fills
        if fill in _TILES
    )
    return Markup(f"<defs>{drawn}</defs>" if drawn else "")
