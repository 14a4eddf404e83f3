"""Names of actives, compared as a careful person compares two labels.

By letters and figures, without the words of salts, esters and acids: equal is the same active.
Where one name's words are all in the other, or they are one letter apart, they may be the same and
it is asked. What the owner says of a name settles it.
"""

import re
import unicodedata
from collections.abc import Iterable, Mapping
from functools import cache
from typing import Literal, TypeVar

from generator.dataclass import dataclass
from generator.reference.library import hard_on, known_actives, name_words

Alike = Literal["same", "asked", "other"]
_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class ActiveName:
    """A name as printed, another that the owner says is the same, and those that are not."""

    printed: str
    same_as: str | None = None
    other_than: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The name by which amounts of one active are added up."""
        return key_of(self.same_as or self.printed)

    @property
    def keys(self) -> frozenset[str]:
        """Every name it is known by, as names are compared."""
        return frozenset(map(key_of, filter(None, (self.printed, self.same_as))))


@cache
def key_of(name: str) -> str:
    """Return the letters and figures of a name, without the words of salts, esters and acids.

    >>> key_of("2,4-D, dimethylamine salt") == key_of("2\N{NON-BREAKING HYPHEN}4 d (as the acid)*")
    True
    """
    return "".join(_words(name))


def is_a_class(name: str) -> bool:
    """Return whether a name means more than one active, as in "all other inhibitors".

    >>> is_a_class("other triazine herbicides"), is_a_class("glyphosate")
    (True, False)
    """
    return bool(set(_plain(name)) & name_words().classes)


@cache
def alike(one: ActiveName, other: ActiveName) -> Alike:
    """Return whether two names are of the same active, may be, or are not.

    >>> alike(ActiveName("made up active A"), ActiveName("Made-up active A, potassium salt"))
    'same'
    >>> alike(ActiveName("2,4-D"), ActiveName("2,4-DB"))
    'asked'
    >>> alike(ActiveName("2,4-D"), ActiveName("2,4-DB", other_than=("2,4-D",)))
    'other'
    """
    # before the owner's word: a name is never another than itself
    if one.keys & other.keys:
        return "same"
    # before classes and near names: what the owner has said of two names is not asked again
    if _said_apart(one, other) or _said_apart(other, one):
        return "other"
    if is_a_class(one.printed) or is_a_class(other.printed):
        return "asked"
    return "asked" if _near(one.printed, other.printed) else "other"


def most_alike(some: Iterable[ActiveName], others: Iterable[ActiveName]) -> Alike:
    """Return how alike the nearest two names of two lists are; `other` where one is empty."""
    found = {alike(one, other) for other in tuple(others) for one in tuple(some)}
    return "same" if "same" in found else "asked" if "asked" in found else "other"


@cache
def works_known(name: str) -> frozenset[str]:
    """Return how an active works, as known of its name; empty where that is not on our list."""
    return _by_key(known_actives()).get(key_of(name), frozenset())


@cache
def known_to_be_hard_on(name: str) -> tuple[tuple[str, str], ...]:
    """Return the species that trials found an active hard on, each with its source."""
    return _by_key(hard_on()).get(key_of(name), ())


def _by_key(named: Mapping[str, _T]) -> dict[str, _T]:
    return {key_of(name): value for name, value in named.items()}


def _said_apart(one: ActiveName, other: ActiveName) -> bool:
    return bool(frozenset(map(key_of, one.other_than)) & other.keys)


def _near(one: str, other: str) -> bool:
    words, others = set(_words(one)), set(_words(other))
    return words <= others or others <= words or _a_letter_apart(key_of(one), key_of(other))


def _a_letter_apart(one: str, other: str) -> bool:
    """Whether one letter or figure is changed, added or left out."""
    short, long = sorted((one, other), key=len)
    if len(long) - len(short) > 1:
        return False
    at = next((n for n, letter in enumerate(short) if letter != long[n]), len(short))
    return short[at + (len(short) == len(long)) :] == long[at + 1 :]


@cache
def _words(name: str) -> tuple[str, ...]:
    """Return the words that name the active; all of them where no other word is left."""
    known, words = name_words(), _plain(name)
    text = " ".join(words)
    for phrase in known.phrases:
        text = re.sub(rf"\b{phrase}\b", " ", text)
    told = [word for word in text.split() if word not in known.around]
    own = tuple(word for word in told if word not in known.salts_and_esters)
    return own or tuple(told) or words


def _plain(name: str) -> tuple[str, ...]:
    # wide and raised letters of a label are the letters they look like
    plain = unicodedata.normalize("NFKC", name).casefold()
    return tuple(re.findall(r"[^\W_]+", plain))
