"""Every field of the property files is shown or counted with: nothing is typed in vain."""

import re
from collections.abc import Iterator

from generator.book.written_down import FieldSaid, said_in
from generator.inventory.fields import Record, rules_of
from generator.inventory.load import load_inventory
from generator.inventory.log import LogEntry
from generator.inventory.schema import SeasonMarkers
from generator.reference.library import marker_names
from generator.units import UNITS
from tests.book.sites import DEMO
from tests.structure.modules import CHECKOUT, PACKAGE

# Asked for by a name that is put together: with the unit a thing is counted in.
BY_UNIT = {f"{stem}_{unit}" for stem in ("package", "on_hand") for unit in UNITS}
# Read where the files are: what a name means is settled before there is a plan.
SETTLED = {
    ("ActiveStrength", "same_as"),
    ("ActiveStrength", "other_than"),
    ("Elevation", "heights_in"),
    ("Elevation", "utm_zone"),
    ("LabelCard", "pooled_with"),
    ("OwnPlan", "based_on"),
    ("OwnPlan", "skip"),
    ("WindStation", "more_files"),
}


def kinds_of(kind: type) -> Iterator[type]:
    """A kind of record with those that may stand in it."""
    yield kind
    for rule in rules_of(kind).values():
        if rule.record is not None:
            yield from kinds_of(rule.record)


def every_kind() -> set[type]:
    found: set[type] = set()
    waiting = [Record]
    while waiting:
        below = [kind for kind in waiting.pop().__subclasses__() if kind not in found]
        found |= set(below)
        waiting += below
    # a record with slots is made twice, and the first of the two is no record of the files
    return {kind for kind in found if kind.__module__.startswith("generator.inventory.")}


def asked_for() -> str:
    """All that plans, books and templates are made by.

    What is handed on to another reader is named there field by field, shown or not.
    """
    readers = PACKAGE / "plan" / "readers"
    files = [
        *(path for path in (PACKAGE / "plan").rglob("*.py") if path.parent != readers),
        *(PACKAGE / "book").rglob("*.py"),
        *(CHECKOUT / "site_templates").rglob("*.jinja"),
    ]
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


def test_every_field_is_asked_for_somewhere() -> None:
    text, in_the_log = asked_for(), set(kinds_of(LogEntry))
    names = {kind.__name__ for kind in in_the_log}
    unasked = {
        (kind.__name__, name)
        for kind in every_kind()
        # the pages of the log show all that stands in one, by its rules
        if kind.__name__ not in names
        for name in rules_of(kind)
        if name not in BY_UNIT and not re.search(rf'\.{name}\b|"{name}"', text)
    }
    markers = {(SeasonMarkers.__name__, name) for name in marker_names()}
    assert unasked - markers == SETTLED


def labels(said: tuple[FieldSaid, ...]) -> int:
    return sum(1 + sum(labels(part) for part in one.inside) for one in said)


def fields_said(record: Record) -> int:
    """How many fields of a record say something, ids aside, those of records in it too."""
    count = 0
    for name, rule in rules_of(type(record)).items():
        value = getattr(record, name)
        if rule.form == "identity" or value in (None, ()):
            continue
        count += 1
        if rule.form == "record":
            parts = value if isinstance(value, tuple) else (value,)
            count += sum(fields_said(part) for part in parts)
    return count


def test_the_log_is_shown_to_the_last_field() -> None:
    inventory = load_inventory(DEMO).inventory
    assert inventory is not None
    assert len(inventory.entries) > 20
    for entry in inventory.entries:
        assert labels(said_in(entry, {})) == fields_said(entry) > 1
