"""Which kinds and species of ours a crop on a label card means.

A name counts where it is ours to the letter; capitals, hyphens and blanks beside them aside. A
plural, two words for one, or "all other crops" is no name of ours, and the owner says what it
means: a guess could let seed into ground that is not ready for it.
"""

import unicodedata
from collections.abc import Mapping
from functools import cache

from generator.inventory.label import ALL_OTHER_KINDS, NO_KIND, CropDays
from generator.reference.load import planting_kinds, species

HYPHENS = "-_\u2010\u2011\u2012\u2013\u2014\u2212"


def plain_name(name: str) -> str:
    """Return a name as names of crops are compared.

    >>> plain_name("  Native-Grass ") == plain_name("native grass")
    True
    >>> plain_name("Switch grass") == plain_name("Switchgrass")
    False
    """
    text = unicodedata.normalize("NFKC", name).casefold()
    for hyphen in HYPHENS:
        text = text.replace(hyphen, " ")
    return " ".join(text.split())


@cache
def ids_by_name() -> Mapping[str, frozenset[str]]:
    """Return the ids of kinds and species by their plain names, and by the ids themselves."""
    found: dict[str, frozenset[str]] = {}
    names = [*planting_kinds().items(), *((one.id, one.name) for one in species().values())]
    for identity, name in names:
        for word in (plain_name(name), plain_name(identity)):
            found[word] = found.get(word, frozenset()) | {identity}
    return found


def meant_by(line: CropDays) -> frozenset[str] | None:
    """Return the ids a line means, None where nobody has said; none of ours is an empty set."""
    named = ids_by_name().get(plain_name(line.crop), frozenset())
    said = frozenset(line.means)
    return (named | said) - {NO_KIND} if named or said else None


def lines_for(lines: tuple[CropDays, ...], kind: str, one: str) -> tuple[CropDays, ...]:
    """Return the lines for a species of a kind: those that name either, else those for all."""
    meant = [(line, meant_by(line) or frozenset()) for line in lines]
    named = tuple(line for line, ids in meant if ids & {kind, one})
    return named or tuple(line for line, ids in meant if ALL_OTHER_KINDS in ids)


def means_in_words(line: CropDays) -> str:
    """Return what the owner says a line means, in words; empty where nothing is said."""
    names = {NO_KIND: "no planting of this book", ALL_OTHER_KINDS: "all that no other line names"}
    kinds = {**planting_kinds(), **{one.id: one.name for one in species().values()}, **names}
    return ", ".join(kinds[one] for one in line.means)
