"""Cautions on text that others read and that holds a name they are not told.

A text is shared where its class lets it pass and its words stand in the plan that a reader's book
is made from; so nothing is asked of text that never reaches them.
"""

from collections.abc import Iterator
from dataclasses import fields

from generator.dataclass import dataclass
from generator.inventory.fields import Record, Where, rules_of
from generator.inventory.places import PlantedGround, Route, Stand
from generator.inventory.schema import Inventory, Reader
from generator.plan.findings.about_readers import ReaderCaution
from generator.plan.findings.order import finding
from generator.plan.model.finding import READERS, Finding
from generator.plan.model.plan import Plan
from generator.plan.readers.kept_names import (
    NAMES,
    KeptName,
    KeptNames,
    handed_ids,
    in_plain_words,
    kept_names,
    kept_points,
    name_for_others,
    shown_names,
)
from generator.plan.readers.land_shown import things_shown
from generator.plan.readers.seen_by import SEEN_CLASSES, handed_jobs, seen_by
from generator.plan.readers.texts_in import stands_in

# What a finding on the page "What each reader sees" is about.
TEXT_FORMS = ("text", "word")


@dataclass(frozen=True, slots=True)
class SharedText:
    """A text of the owner's: in which field, of what, where it stands."""

    text: str
    field: str
    whose: str
    where: Where


def shared_text_findings(plan: Plan, inventory: Inventory) -> list[Finding]:
    """Return a caution on every shared text that names what a reader of it is not handed."""
    read_by: dict[tuple[SharedText, KeptName], list[str]] = {}
    for reader in inventory.readers:
        for found in _named(plan, inventory, reader):
            read_by.setdefault(found, []).append(reader.name or reader.id)
    return [
        finding(
            ReaderCaution.NAMES_WHAT_IS_KEPT,
            READERS,
            shared.where,
            field=shared.field,
            whose=shared.whose,
            readers=" and ".join(readers),
            name=kept.name,
            what=kept.what,
            file=shared.where.file,
        )
        for (shared, kept), readers in read_by.items()
    ]


def _named(
    plan: Plan, inventory: Inventory, reader: Reader
) -> Iterator[tuple[SharedText, KeptName]]:
    """Yield the texts that reach a reader with a name they are not told."""
    things = things_shown(plan.land.things, handed_jobs(plan.jobs, reader), reader)
    known = handed_ids(inventory.places(), reader)
    handed = known | {thing.id for thing in things}
    kept = (*kept_names(inventory, handed), *kept_points(inventory, reader, known))
    lookup = KeptNames(kept, shown_names(inventory, handed))
    texts = (*_texts(inventory, SEEN_CLASSES[reader.kind]), *_names(inventory, handed))
    named = [(text, name) for text in texts for name in lookup.names_in(text.text)]
    # a reader's plan takes long to make, so only where a text holds a name at all
    if named:
        # plain words hold no bar, so no text is found across two that only stand side by side
        read = "|".join(in_plain_words(words) for words in stands_in(seen_by(plan, reader)).texts)
        yield from (pair for pair in named if in_plain_words(pair[0].text) in read)


def _names(inventory: Inventory, handed: frozenset[str]) -> Iterator[SharedText]:
    """Yield the names that what is handed over goes by."""
    things: tuple[PlantedGround | Stand | Route, ...] = (
        *inventory.places(),
        *inventory.stands,
        *inventory.routes,
    )
    for thing in things:
        name = name_for_others(thing)
        if thing.id in handed and name is not None:
            yield SharedText(name, "known_as" if thing.known_as else "name", thing.id, thing.where)


def _texts(inventory: Inventory, seen: frozenset[str]) -> Iterator[SharedText]:
    """Yield every text of the property folder whose class lets it pass."""
    for field in fields(inventory):
        value = getattr(inventory, field.name)
        for record in value if isinstance(value, tuple) else (value,):
            if isinstance(record, Record) and rules_of(type(record)):
                whose = getattr(record, "id", None) or field.name
                yield from _texts_of(record, seen, "", str(whose))


def _texts_of(
    record: Record, seen: frozenset[str], inside: str, whose: str
) -> Iterator[SharedText]:
    for name, rule in rules_of(type(record)).items():
        is_name = name in NAMES and isinstance(record, PlantedGround | Stand | Route)
        if is_name or not (rule.visible in seen or rule.safety):
            continue
        value = getattr(record, name)
        for item in value if isinstance(value, tuple) else (value,):
            if isinstance(item, Record) and rule.form == "record":
                yield from _texts_of(item, seen, f"{inside}{name}.", whose)
            elif isinstance(item, str) and rule.form in TEXT_FORMS:
                yield SharedText(item, f"{inside}{name}", whose, record.where)
