"""What is said of a plan: findings, lines of safety, and what it cannot say."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from generator.working import Figure

Severity = Literal["stop", "caution", "note"]


WHOLE_FOLDER = "property folder"  # the subject of what is said of the folder as a whole


@dataclass(frozen=True, slots=True)
class Finding:
    """A stop, caution or note on a subject (a job, place or thing by its id).

    `words` and `figures` are the owner's; other readers see `words_for_others` alone. `place` is
    file and line in the owner's files, `column` counts from 1 and is 0 where it is not known.
    `cause` is the id of a finding whose slip, most likely, is what makes this one.
    """

    code: str
    severity: Severity
    subject: str
    words: str
    words_for_others: str
    cure: str
    place: str = ""
    figures: tuple[tuple[str, Figure], ...] = ()
    chapter: str = ""
    source: str = ""
    cause: str = ""
    column: int = field(default=0, compare=False)

    @property
    def id(self) -> str:
        """What another finding names it by: its code and its subject."""
        return f"{self.code} {self.subject}"


@dataclass(frozen=True, slots=True)
class Unanswered:
    """What cannot be said, what to type so that it can, and the places it is about by their ids."""

    asks: str
    cure: str
    place_ids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SafetyLine:
    """A line no reader's sheet may lose; `text` None prints as a bold blank.

    `product` names the product whose label says it, where several are in one tank.
    """

    key: str
    label: str
    text: str | None = None
    figure: Figure | None = None
    product: str | None = None


def stopped_in(findings: Iterable[Finding]) -> frozenset[str]:
    """Return the jobs, places and things on which a stop stands."""
    return frozenset(finding.subject for finding in findings if finding.severity == "stop")
