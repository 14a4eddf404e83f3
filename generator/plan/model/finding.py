"""What is said of a plan: findings, lines of safety, and what it cannot say."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import field
from typing import Literal, get_args

from generator.dataclass import dataclass
from generator.working import Figure

Severity = Literal["stop", "caution", "note"]


SubjectKind = Literal[
    "job", "upkeep", "place", "item", "machine", "sprayer", "spreader", "drill", "measure", "hire",
    "cost_share", "water_hole", "soil_test", "stand", "route", "entry", "marker", "station",
    "land", "hours", "dates", "shooting_hours", "looked_up", "person", "contractor", "permit",
    "contract", "one_call", "reader", "readers", "folder", "sit", "sits",
]  # fmt: skip
# How an id of a kind is told from those of things, where it is not one of a thing.
_PREFIXES = {"entry": "log/", "marker": "sign/", "hours": "hours/"}
_OF_A_SEASON = ("job", "upkeep")  # their ids are a place or a thing, a season and a step


class Subject(str):
    """What a finding is about: a kind and an id; as text, what it is named by.

    Raises ValueError for a kind that is not known and an id that cannot be of its kind.

    >>> Subject("entry", "e-4"), Subject("entry", "e-4").kind
    ('log/e-4', 'entry')
    """

    kind: SubjectKind
    id: str
    __slots__ = ("id", "kind")

    def __new__(cls, kind: SubjectKind, id: str) -> Subject:
        """Return the subject of a kind with an id of that kind."""
        if kind not in get_args(SubjectKind):
            raise ValueError(f"no finding is about a {kind}")
        if (id.count("/") == len(("place", "season"))) != (kind in _OF_A_SEASON):
            raise ValueError(f"{id} is no id of a {kind}")
        self = super().__new__(cls, _PREFIXES.get(kind, "") + id)
        self.kind, self.id = kind, id
        return self

    def __getnewargs__(self) -> tuple[SubjectKind, str]:  # type: ignore[override]  # of its own __new__
        """Return what a copy is made of."""
        return self.kind, self.id


def about_job(job_id: str) -> Subject:
    """Return a job as what a finding is about."""
    return Subject("job", job_id)


def about_place(place_id: str) -> Subject:
    """Return a place as what a finding is about."""
    return Subject("place", place_id)


def about_item(item_id: str) -> Subject:
    """Return a thing that is bought and kept as what a finding is about."""
    return Subject("item", item_id)


WHOLE_FOLDER = Subject("folder", "property folder")  # of what is said of the folder as a whole
ALL_SITS = Subject("sits", "sits")  # of what is said of all sits at once
READERS = Subject("readers", "readers")  # of what is said of what readers are given


@dataclass(frozen=True, slots=True)
class Finding:
    """A stop, caution or note on a subject.

    `words` and `figures` are the owner's; other readers see `words_for_others` alone. `cure` is
    what to do, `to_type` what to write in the files for it, with keys as they are spelled. `place`
    is file and line there, `column` counts from 1 and is 0 where it is not known.
    `cause` is the id of a finding whose slip, most likely, is what makes this one. `thing` names
    what one deed settles for all it is said of: a sprayer to clean, a card to finish.
    """

    code: str
    severity: Severity
    subject: Subject
    words: str
    words_for_others: str
    cure: str
    place: str = ""
    figures: tuple[tuple[str, Figure], ...] = ()
    chapter: str = ""
    source: str = ""
    cause: str = ""
    column: int = field(default=0, compare=False)
    thing: str = ""
    to_type: str = ""

    @property
    def id(self) -> str:
        """What another finding names it by: its code and its subject."""
        return f"{self.code} {self.subject}"


@dataclass(frozen=True, slots=True)
class Unanswered:
    """What cannot be said, what to do and to type so that it can, and the ids of its places."""

    asks: str
    cure: str
    to_type: str
    place_ids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SafetyLine:
    """A line no reader's sheet may lose; `text` None prints as a bold blank.

    `product` names the product whose label says it, where several are in one tank; `after` is what
    is said behind the figure.
    """

    key: str
    label: str
    text: str | None = None
    figure: Figure | None = None
    product: str | None = None
    after: str = ""


def stopped_in(findings: Iterable[Finding]) -> frozenset[str]:
    """Return the jobs, places and things on which a stop stands."""
    return frozenset(finding.subject for finding in findings if finding.severity == "stop")
