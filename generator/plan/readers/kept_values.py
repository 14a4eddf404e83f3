"""What of the property folder a reader may not see, and can be searched for in what they get.

A value came through a field that a reader may see where the class of its field lets it pass and it
stands in their plan, or where it is the name of something they are handed. Every other name, id,
text and point is kept from them, whether or not it stands in their plan: a plan that holds one
too many is found out too.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import fields
from functools import cache
from typing import Any

from generator.dataclass import dataclass
from generator.inventory.fields import FieldRule, Points, Record, Where, rules_of
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import Inventory, Reader
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_names import (
    NAMES,
    coordinates_pass,
    handed_ids,
    in_plain_words,
    name_for_others,
    shown_names,
)
from generator.plan.readers.seen_by import SEEN_CLASSES
from generator.plan.readers.texts_in import StandsIn, stands_in
from generator.units import LatLon

# A page may cut a text: a longer one is looked for by pieces of so many words, each begun so many
# behind the one before, so that any eight words in a row hold a whole one.
WORDS_OF_A_PIECE, WORDS_ON = 6, 3
# So many of the program's own words in a row, and no fewer, are a name, or a sentence of a note:
# fewer come together on a page by themselves.
OF_A_NAME, OF_A_TEXT = 2, 4
ID_FORMS = ("identity", "word")
LOOKED_FOR = ("text", *ID_FORMS)
POINT_FORMS = ("lat_lon", "points")
TELEPHONE = re.compile(
    r"(?<![\d.-])(?:\+?\d{1,3}[ .-])?(?:\(?\d{3}\)?[ .-])?\d{3}[ .-]\d{4}(?!\d|[.-]\d)"
)
MAIL = re.compile(r"[\w.+-]+@[\w-]+(?:\.[\w-]+)+")
SEARCHED_DECIMALS = 4
_POINT_ROOM = 9  # decimals in which a point is written out before it is cut off


@dataclass(frozen=True, slots=True)
class KeptValue:
    """A text that must not stand in what a reader gets, and which one it is, in words.

    `own_words` is from how many words on it is told from what the program itself says, where all
    of them are its own.
    """

    text: str
    told: str
    own_words: int


@dataclass(frozen=True, slots=True)
class KeptFrom:
    """What is kept from a reader, and the texts they may see, some of which may hold some of it."""

    values: tuple[KeptValue, ...]
    shown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TypedValue:
    """One value as typed, in which field of what record; and what it is looked for by."""

    value: str | LatLon
    plain: str
    record: Record
    field: str
    rule: FieldRule
    looked_for: tuple[KeptValue, ...]


def typed_values(inventory: Inventory) -> tuple[TypedValue, ...]:
    """Return every name, id, text and point of a property folder: the same for all readers."""
    return tuple(_everything_typed(inventory))


def kept_from(
    typed: tuple[TypedValue, ...], inventory: Inventory, reader: Reader, view: Plan
) -> KeptFrom:
    """Return what is kept from a reader; `view` is the plan that their book is made from."""
    inside = stands_in(view)
    # plain words hold no bar, so no text is found across two that only stand side by side
    in_view = "|".join(map(in_plain_words, inside.texts))
    seen, handed = SEEN_CLASSES[reader.kind], handed_ids(inventory.places(), reader)
    shown = [*shown_names(inventory, handed), reader.id]
    shown += [reader.name] if reader.name is not None else []
    kept: list[TypedValue] = []
    points: set[str] = set()
    for one in typed:
        if not (_passes(one, seen, handed, reader) and _is_in(one, in_view, inside)):
            kept.append(one)
        elif isinstance(one.value, str):
            shown.append(one.value)
        else:
            points.update(value.text for value in one.looked_for)
    found: dict[str, KeptValue] = {}
    for one in kept:
        for value in one.looked_for:
            found.setdefault(value.text, value)
    return KeptFrom(
        tuple(value for text, value in found.items() if text not in points), tuple(shown)
    )


def _passes(
    typed: TypedValue, seen: frozenset[str], handed: frozenset[str], reader: Reader
) -> bool:
    """Return whether what stands in a field may reach a reader."""
    record = typed.record
    if isinstance(record, Stand | Route | PlantedGround) and typed.field in NAMES:
        return record.id in handed and typed.value == name_for_others(record)
    if typed.rule.form in POINT_FORMS and not typed.rule.safety:
        return coordinates_pass(record, reader, handed)
    return typed.rule.visible in seen or typed.rule.safety


def _is_in(typed: TypedValue, in_view: str, inside: StandsIn) -> bool:
    if isinstance(typed.value, str):
        return typed.plain in in_view
    # where a point was made words of, as on a sheet, its degrees stand there
    is_told = all(any(one.text in text for text in inside.texts) for one in typed.looked_for[::2])
    return inside.numbers_deg.issuperset(typed.value) or is_told


def _everything_typed(inventory: Inventory) -> Iterator[TypedValue]:
    for field in fields(inventory):
        value = getattr(inventory, field.name)
        for record in value if isinstance(value, tuple) else (value,):
            if isinstance(record, Record):
                whose = getattr(record, "id", None) or field.name
                yield from _typed_in(record, "", str(whose))


def _typed_in(record: Record, inside: str, whose: str) -> Iterator[TypedValue]:
    kind: Any = type(record)
    for name, rule in _rules(kind).items():
        value = getattr(record, name)
        many = rule.many and isinstance(value, tuple)
        for number, item in enumerate(value if many else (value,)):
            if isinstance(item, Record):
                yield from _typed_in(item, f"{inside}{name}.", whose)
            elif item is not None:
                where = record.where_of(name, number=number if many else None)
                for plain, at in _plain(item, where, rule):
                    told = f"{inside}{name} of {whose}, {at.file} line {at.line}"
                    words = in_plain_words(plain) if isinstance(plain, str) else ""
                    looked_for = tuple(_looked_for(plain, name, rule, told))
                    yield TypedValue(plain, words, record, name, rule, looked_for)


def _plain(item: object, where: Where, rule: FieldRule) -> Iterator[tuple[str | LatLon, Where]]:
    if isinstance(item, Points):
        yield from zip(item.lat_lon, item.each, strict=True)
        yield from ((point, item.where) for hole in item.holes for point in hole)
    elif rule.form == "lat_lon" and isinstance(item, tuple):
        yield (item[0], item[1]), where
    elif rule.form in LOOKED_FOR and isinstance(item, str):
        yield item, where


def _looked_for(value: str | LatLon, field: str, rule: FieldRule, told: str) -> Iterator[KeptValue]:
    """Yield what a value is looked for by: phone and mail, pieces of its words, its degrees."""
    if not isinstance(value, str):
        yield from (KeptValue(degrees, told, 0) for degrees in _degrees(value))
        return
    if any(letter.isdigit() or letter == "@" for letter in value):
        for detail in (*TELEPHONE.findall(value), *MAIL.findall(value)):
            yield KeptValue(detail, told, 0)
    own_words = OF_A_NAME if field in NAMES or rule.form in ID_FORMS else OF_A_TEXT
    words = value.split()
    last = max(0, len(words) - WORDS_OF_A_PIECE)
    for start in (*range(0, last, WORDS_ON), last):
        yield KeptValue(" ".join(words[start : start + WORDS_OF_A_PIECE]), told, own_words)


def _degrees(point: LatLon) -> Iterator[str]:
    """Yield latitude and longitude to four decimals, cut off and rounded, signs aside."""
    for part_deg in point:
        exact = f"{abs(part_deg):.{_POINT_ROOM}f}"
        yield exact[: SEARCHED_DECIMALS - _POINT_ROOM]
        yield f"{abs(part_deg):.{SEARCHED_DECIMALS}f}"


@cache
def _rules(kind: Any) -> Mapping[str, FieldRule]:
    """Return the fields of a kind of record that can hold what is looked for."""
    forms = (*LOOKED_FOR, *POINT_FORMS, "record")
    return {name: rule for name, rule in rules_of(kind).items() if rule.form in forms}
