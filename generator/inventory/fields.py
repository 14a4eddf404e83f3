"""How a field of the property folder is described: who may see it, help, unit, limits.

Records are frozen dataclasses whose fields are declared through the functions here. `reading`
walks the descriptions, `json_schema` prints them for editors; nothing is described twice.
"""

import datetime
from collections.abc import Mapping
from dataclasses import MISSING, field, fields
from types import MappingProxyType
from typing import Any, ClassVar

from generator.dataclass import dataclass
from generator.units import UNITS, LatLon
from generator.working import Visible

NOT_ON_LABEL = "not_on_label"
_KEY = "rule"


@dataclass(frozen=True, slots=True)
class Limits:
    """Bounds of a number, in the canonical unit of its field; None is no bound."""

    above: float | None = None
    at_least: float | None = None
    at_most: float | None = None


POSITIVE = Limits(above=0)
SHARE = Limits(at_least=0, at_most=1)
# Jobs, entries, prices and tests; contracts, plantings that stand, and weather go further back.
FIRST_YEAR, FIRST_YEAR_LONG_AGO, LAST_YEAR = 1990, 1850, 2100
YEAR_LIMITS = Limits(at_least=FIRST_YEAR, at_most=LAST_YEAR)
A_YEAR_LONG_AGO = Limits(at_least=FIRST_YEAR_LONG_AGO, at_most=LAST_YEAR)
FieldMark = tuple[str, int | None]


@dataclass(frozen=True, slots=True)
class FieldRule:
    """What may stand in a field and who may see it.

    `form` says how it is read: text, identity, word, reference, choice, measure, whole, yes_no,
    date, month, month_day, lat_lon, points, sign, direction or record. `many` is a list of them;
    `label` also takes `not_on_label`; `safety` marks what no reader may lose. `numbered` is text
    that often is a whole number; `month_too` a day of which a month alone may be known.
    `unless` names the field of the same record whose presence spares this one, and gives its value
    where both are read alike.
    """

    form: str
    visible: Visible
    help: str
    required: bool = False
    many: bool = False
    label: bool = False
    families: tuple[str, ...] = ()
    unit: str = ""
    limits: Limits = Limits()
    choices: tuple[str, ...] = ()
    refers_to: tuple[str, ...] = ()
    record: "type[Record] | None" = None
    safety: bool = False
    numbered: bool = False
    month_too: bool = False
    unless: str = ""


@dataclass(frozen=True, slots=True)
class Where:
    """The place of a record in the owner's files, counted from 1."""

    file: str
    line: int
    column: int


# The first: it makes a seed test older, and an inoculant over sooner, than any other day.
class FirstOfMonth(datetime.date):
    """A month of which no day is known: it counts as its first day, and is shown as a month."""


@dataclass(frozen=True, slots=True)
class Points:
    """Points in their order, with the place of the first and of each in the owner's files.

    `holes` are outlines inside of an outline that is not its ground; only files have them.
    """

    lat_lon: tuple[LatLon, ...]
    where: Where
    each: tuple[Where, ...]
    holes: tuple[tuple[LatLon, ...], ...] = ()

    @property
    def every_lat_lon(self) -> tuple[LatLon, ...]:
        """All points, those of the holes behind the others."""
        return (*self.lat_lon, *(point for hole in self.holes for point in hole))


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """What every record of the property folder has: where it stands, and where each field does.

    `field_marks` holds line and column of fields that were typed, by their names, and of entries
    of a list by name and number. No two records differ by them. Of a record whose
    `EMPTY_IS_LEFT_OUT` a key with nothing behind it counts as left out, where it may be.
    """

    EMPTY_IS_LEFT_OUT: ClassVar[bool] = False

    where: Where
    field_marks: Mapping[FieldMark, tuple[int, int]] = field(
        default_factory=dict, compare=False, repr=False
    )

    def where_of(self, *names: str, number: int | None = None) -> Where:
        """Return where the first of the fields that were typed stands, else the record itself."""
        for name in names:
            # one word typed where a list may stand has no number of its own
            mark = self.field_marks.get((name, number)) or self.field_marks.get((name, None))
            if mark is not None:
                return Where(self.where.file, *mark)
        return self.where


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonMarker(Record):
    """A day the season reaches something, as (month, day) in an early, typical and late year."""

    early: tuple[int, int]
    typical: tuple[int, int]
    late: tuple[int, int]
    single: bool


def _declare(rule: FieldRule) -> Any:
    if rule.required:
        return field(metadata={_KEY: rule})
    return field(metadata={_KEY: rule}, default=() if rule.many else None)


def text(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a field of text."""
    return _declare(FieldRule("text", visible, help, **more))


def identity(help: str, **more: Any) -> Any:
    """Declare the id of a record: small letters, digits and dashes, never shown to others."""
    return _declare(FieldRule("identity", "place", help, required=True, **more))


def word(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a name that log and work call a thing by: small letters, digits, underscores."""
    return _declare(FieldRule("word", visible, help, **more))


def reference(visible: Visible, help: str, *refers_to: str, **more: Any) -> Any:
    """Declare the id of another record, or of an entry of our own lists."""
    return _declare(FieldRule("reference", visible, help, refers_to=refers_to, **more))


def choice(visible: Visible, help: str, *choices: str, **more: Any) -> Any:
    """Declare one word out of a list."""
    return _declare(FieldRule("choice", visible, help, choices=choices, **more))


def measure(visible: Visible, help: str, unit: str, limits: Limits, **more: Any) -> Any:
    """Declare a number with a unit; any suffix of the unit's family may be typed."""
    rule = FieldRule(
        "measure", visible, help, unit=unit, families=(UNITS[unit].family,), limits=limits, **more
    )
    return _declare(rule)


def amount(visible: Visible, help: str, units: tuple[str, ...], **more: Any) -> Any:
    """Declare a number above 0 whose unit may be of several families."""
    families = tuple(UNITS[unit].family for unit in units)
    return _declare(
        FieldRule("measure", visible, help, families=families, limits=Limits(above=0), **more)
    )


def whole(visible: Visible, help: str, limits: Limits, **more: Any) -> Any:
    """Declare a whole number without a unit."""
    return _declare(FieldRule("whole", visible, help, limits=limits, **more))


def yes_no(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a field that is true or false."""
    return _declare(FieldRule("yes_no", visible, help, **more))


def day(visible: Visible, help: str, years: Limits = YEAR_LIMITS, **more: Any) -> Any:
    """Declare a calendar day, as 2027-03-14, in the years it can lie in."""
    return _declare(FieldRule("date", visible, help, limits=years, **more))


def month(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a month of a year, kept as text like 2027-03."""
    return _declare(FieldRule("month", visible, help, **more))


def month_day(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a day of the year, as 03-14."""
    return _declare(FieldRule("month_day", visible, help, **more))


def lat_lon(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a point as [latitude, longitude] in degrees, west and south negative."""
    return _declare(FieldRule("lat_lon", visible, help, **more))


def points(visible: Visible, help: str, fewest: int, **more: Any) -> Any:
    """Declare a list of points; how many there must be is checked once repeats are left out."""
    limits = Limits(at_least=fewest)
    return _declare(FieldRule("points", visible, help, limits=limits, **more))


def sign(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a season sign: {early, typical, late}, or one day for all three."""
    return _declare(FieldRule("sign", visible, help, **more))


def direction(visible: Visible, help: str, **more: Any) -> Any:
    """Declare a direction: a point of the compass, of eight or sixteen, or degrees from north."""
    return _declare(FieldRule("direction", visible, help, **more))


def record(visible: Visible, help: str, kind: type, **more: Any) -> Any:
    """Declare a record inside a record, or with `many` a list of them."""
    return _declare(FieldRule("record", visible, help, record=kind, **more))


# What classes say never changes: each is read once.
_RULES: dict[type, Mapping[str, FieldRule]] = {}
_DEFAULTS: dict[type, Mapping[str, object]] = {}


def rules_of(kind: type) -> Mapping[str, FieldRule]:
    """Return the description of every field an owner may type in a record of this kind."""
    if kind not in _RULES:
        found = {one.name: one.metadata[_KEY] for one in fields(kind) if _KEY in one.metadata}
        _RULES[kind] = MappingProxyType(found)
    return _RULES[kind]


def defaults_of(kind: type) -> Mapping[str, object]:
    """Return what the fields of a record hold that are left out."""
    if kind not in _DEFAULTS:
        found = {one.name: None if one.default is MISSING else one.default for one in fields(kind)}
        _DEFAULTS[kind] = MappingProxyType(found)
    return _DEFAULTS[kind]
