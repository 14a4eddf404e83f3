"""The pieces of a picture: shapes placed by shares of the width, so that text keeps its size.

A picture is as wide as the page and as high as it says in pixels. Fills are told apart by pattern,
not by colour: they read the same in gray, in the dark and on paper.
"""

from collections.abc import Iterable
from typing import Literal

from markupsafe import Markup

from generator.book.text import inert

Fill = Literal["solid", "hatch", "dots", "cross", "empty", "bars", "above"]

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
) -> Markup:
    """Return a whole picture; `told` is what somebody hears who does not see it.

    `name` is an id of our own, unlike any other on the page.
    """
    return Markup(
        '<svg class="picture" width="100%" height="{}" role="img" aria-labelledby="{}-t {}-d">'
        '<title id="{}-t">{}</title><desc id="{}-d">{}</desc>{}{}</svg>'
    ).format(
        pixels(height_px),
        name,
        name,
        name,
        inert(title),
        name,
        inert(told),
        _patterns(name, fills),
        Markup("").join(parts),
    )


def unspoken(height_px: float, parts: Iterable[Markup]) -> Markup:
    """Return a picture of which the words beside it say all there is."""
    opening = Markup('<svg class="picture" width="100%" height="{}" aria-hidden="true">')
    return opening.format(pixels(height_px)) + Markup("").join(parts) + Markup("</svg>")


def key(name: str, fill: Fill) -> Markup:
    """Return the sample of a fill that stands before its words in the key of a picture."""
    top, height = ("6", "3") if fill == "above" else ("1", "14")
    return _sample(box("0", top, "100%", height, paint(name, fill)))


def line_sample(kind: str) -> Markup:
    """Return the sample of a kind of line in the key of a picture."""
    return _sample(rule("0", "8", "22", "8", f"curve {kind}"))


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


def rule(x1: str, y1: str, x2: str, y2: str, kind: str) -> Markup:
    """Return a line; `kind` is the class it is drawn by."""
    return Markup(f'<line x1="{x1}" y1="{y1}" x2="{x2}" y2="{y2}" class="{kind}"/>')


def dot(x: str, y: str, data: dict[str, str]) -> Markup:
    """Return a filled circle; `data` are the plan's own values it stands for."""
    return Markup(f'<circle cx="{x}" cy="{y}" r="5" class="dot"{_said(data)}/>')


def text_line(x: str, y: str, text: str, anchor: str = "start", kind: str = "") -> Markup:
    """Return a line of text."""
    said = f' class="{kind}"' if kind else ""
    return Markup(f'<text x="{x}" y="{y}" text-anchor="{anchor}"{said}>{{}}</text>').format(
        inert(text)
    )


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
