"""Text from the inventory made inert."""

import functools
import html
import re
import unicodedata

from markupsafe import Markup

_REMEMBERED = 1 << 14  # a book says the same few thousand things on most of its pages
_SIGNS = re.compile(r"[^0-9a-zA-Z ,]")
# Among what cannot be seen are signs that turn the order of letters around.
_HIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})


@functools.lru_cache(maxsize=_REMEMBERED)
def clean(text: str) -> str:
    """Return text on one line, with what cannot be seen shown as a replacement character."""
    line = " ".join(text.split())
    if line.isascii() and line.isprintable():
        return line
    seen = (
        "\N{REPLACEMENT CHARACTER}" if unicodedata.category(letter) in _HIDDEN else letter
        for letter in line
    )
    return "".join(seen)


@functools.lru_cache(maxsize=_REMEMBERED)
def inert(text: str) -> Markup:
    """Return text that is only text in Markdown, HTML and an HTML attribute.

    Every character that could mean anything to a parser stands as its numeric entity.

    >>> inert("*bold* <b>")
    Markup('&#42;bold&#42; &#60;b&#62;')
    """
    return in_entities(clean(text))


@functools.lru_cache(maxsize=_REMEMBERED)
def in_entities(seen: str) -> Markup:
    """Return clean text, or a piece of one with the spaces at its ends, as `inert` does.

    >>> in_entities(" to <")
    Markup(' to &#60;')
    """
    return Markup(_SIGNS.sub(_entity, seen))


def _entity(sign: re.Match[str]) -> str:
    """Return a sign as an entity; letters of any alphabet are no signs to a parser."""
    letter = sign[0]
    return letter if ord(letter) > 127 and letter.isalpha() else f"&#{ord(letter)};"


def searchable(text: str) -> str:
    """Return text for a search record: words stay whole, HTML in it is only text.

    >>> searchable("lane-27 <b>")
    'lane-27 &lt;b&gt;'
    """
    return html.escape(clean(text))
