"""What the law decides for those who hunt, beside what the owner looked up about each."""

from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.inventory.law import LookedUp
from generator.plan.findings.about_days import DayCaution
from generator.plan.findings.order import finding
from generator.plan.model.days import day_words, moved
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.plan import HuntedDates
from generator.reference.library import LawSubject, law_subjects


@dataclass(frozen=True, slots=True)
class LawRow:
    """One thing the law decides, and what the owner wrote down about it, the newest first."""

    subject: LawSubject
    looked_up: tuple[LookedUp, ...]


def law_rows(looked_up: Iterable[LookedUp]) -> tuple[LawRow, ...]:
    """Return everything the law decides in one order, also what nobody looked up."""
    found: dict[str, list[LookedUp]] = {subject: [] for subject in law_subjects()}
    # by what it says and not by where it stands: the order of a file is the owner's own
    for entry in sorted(looked_up, key=lambda entry: (entry.words, entry.source)):
        found[entry.subject].append(entry)
    return tuple(
        LawRow(
            subject,
            tuple(sorted(found[subject.id], key=lambda entry: entry.looked_up_on, reverse=True)),
        )
        for subject in law_subjects().values()
    )


def law_findings(hunted: Iterable[HuntedDates], looked_up: Iterable[LookedUp]) -> Iterator[Finding]:
    """Yield a caution on what was looked up before hunting dates of a year ago ended."""
    ended = min((moved(hunt.spans[0][1], -1) for hunt in hunted), default=None)
    for entry in looked_up:
        # looked up since then, it can be the rule of this season
        if ended is not None and entry.looked_up_on <= ended:
            yield finding(
                DayCaution.LAW_OF_BEFORE,
                Subject("looked_up", entry.id),
                entry.where,
                of=law_subjects()[entry.subject].name,
                entry=entry.id,
                day=day_words(entry.looked_up_on),
                ended=day_words(ended),
            )
