"""What an unknown word was meant for: by what it means before how it is spelled.

Means is judged by parts: `residual` is part of `spring_residual`, `rate_lb_per_ac` of
`rate_pls_lb_per_ac`. Only where no known word shares its parts do letters decide.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Iterable, Mapping, Sequence

from generator.units import UNITS

MOST_OFFERED = 3
_LONGEST = 80
_CLOSE = 0.6
# A slip of the finger; below it two names of steps that share one part look alike.
_SLIPPED = 0.75


def nearest(word: str, known: Iterable[str], close: float = _CLOSE) -> tuple[str, ...]:
    """Return the known words that look most like this one; none where none is close.

    Where more than `MOST_OFFERED` are equally near, none of them is nearer than the others.

    >>> nearest("sg-26", ["sg-26a", "sg-26b", "bb"]), nearest("sg-26", ["oats"])
    (('sg-26a', 'sg-26b'), ())
    """
    by_folded = {name.casefold(): name for name in known}
    # A word far longer than any known one is not a slip of the finger, and slow to compare.
    typed = word[:_LONGEST].casefold()
    # one more than is offered, to see whether too many are equally near
    found = difflib.get_close_matches(typed, by_folded, n=MOST_OFFERED + 1, cutoff=close)
    alike = [difflib.SequenceMatcher(None, folded, typed).ratio() for folded in found]
    first = [
        by_folded[folded] for folded, near in zip(found, alike, strict=True) if near == alike[0]
    ]
    return tuple(sorted(first)) if len(first) <= MOST_OFFERED else ()


def meant(word: str, known: Sequence[str]) -> tuple[str, ...]:
    """Return the known words it can have been meant for, none where nothing is near.

    >>> meant("residual", ["autumn_kill", "spring_residual", "second_spring_residual"])
    ('spring_residual', 'second_spring_residual')
    >>> meant("autum_kil", ["autumn_kill", "second_kill"])
    ('autumn_kill',)
    """
    return _sharing(word, known, _parts) or nearest(word, known, _SLIPPED)


def akin_first(word: str, known: Iterable[str]) -> list[str]:
    """Return the known words in their order, those that share most parts with a word first."""
    mine = _parts(word)
    return sorted(known, key=lambda name: -len(mine & _parts(name)))


def keys_meant(key: str, fields: Mapping[str, Sequence[str]]) -> tuple[str, ...]:
    """Return keys that a mistyped key with a known unit can have been meant for.

    `fields` are the keys of each field that may still be typed. A unit says more than a name: the
    keys that end in it come first, then those that share their other parts.
    """
    in_unit = [
        legal
        for keys in fields.values()
        for legal in keys
        if unit_at_end(legal) == unit_at_end(key) != ""
    ]
    return _sharing(key, in_unit, _named) or meant(key, [keys[0] for keys in fields.values()])


def stem_meant(key: str, stems: Iterable[str]) -> str | None:
    """Return the longest name of an amount that a key is, or begins with; None where it is none.

    >>> stem_meant("wind_from", ["wind", "wind_from"]), stem_meant("width_feet", ["width"])
    ('wind_from', 'width')
    """
    found = [stem for stem in stems if key == stem or key.startswith(f"{stem}_")]
    return max(found, key=len, default=None)


def _sharing(
    word: str, known: Iterable[str], parts_of: Callable[[str], frozenset[str]]
) -> tuple[str, ...]:
    """Return the known words whose parts hold all of the word's, or are held by them.

    Where that is more than `MOST_OFFERED`, those with the fewest other parts.
    """
    mine = parts_of(word)
    apart = {
        name: len(mine ^ theirs)
        for name in known
        if (theirs := parts_of(name)) and mine and (mine <= theirs or theirs <= mine)
    }
    # beside one with the very same parts, those with more are not what was meant
    if 0 in apart.values() or len(apart) > MOST_OFFERED:
        least = min(apart.values())
        apart = {name: number for name, number in apart.items() if number == least}
    return tuple(apart) if len(apart) <= MOST_OFFERED else ()


def _parts(word: str) -> frozenset[str]:
    return frozenset(re.findall(r"[^\W_]+", word.casefold()))


def _named(key: str) -> frozenset[str]:
    """Return the parts of a key before its unit."""
    return _parts(key.removesuffix(unit_at_end(key)))


def unit_at_end(key: str) -> str:
    """Return the longest unit that a key ends in, empty where it ends in none."""
    found = [unit for unit in UNITS if key.endswith(f"_{unit}")]
    return max(found, key=len, default="")
