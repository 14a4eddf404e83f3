"""Findings put together by the rule that they come of, so that many places are named once."""

from collections.abc import Iterable

from generator.book.content import head_words
from generator.book.pages.subjects import SubjectNamed, Subjects
from generator.dataclass import dataclass
from generator.plan.model.finding import Finding, Severity

_WORK = ("job", "upkeep")


@dataclass(frozen=True, slots=True)
class AboutAlike:
    """Things that a list names in one line: the work they are a part of, and each with its page."""

    work: str
    named: tuple[SubjectNamed, ...]


@dataclass(frozen=True, slots=True)
class RuleMet:
    """What came of one rule: its head, what holds of all that it is about, and what that is.

    `words` and `cure` are empty where they differ from one thing to the next. Of what `is_told` all
    stands on the pages of what it is about; else what differs stands in `whole`, beside its thing.
    `to_type` and `places` are for the owner's fold.
    """

    severity: Severity
    code: str
    head: str
    words: str
    cure: str
    is_told: bool
    about: tuple[AboutAlike, ...]
    whole: tuple[tuple[SubjectNamed, Finding], ...]
    to_type: tuple[str, ...]
    places: tuple[str, ...]
    jobs_count: int

    @property
    def said(self) -> tuple[str, ...]:
        """What is read of it, places aside: another list need not say the same again."""
        return self.code, self.head, self.words, self.cure


def by_rule(findings: Iterable[Finding], subjects: Subjects) -> list[RuleMet]:
    """Return findings by their rules, in the order in which each rule is met first."""
    groups: dict[tuple[str, str], list[Finding]] = {}
    for finding in findings:
        groups.setdefault((finding.code, finding.thing), []).append(finding)
    return [_rule(group, subjects) for group in groups.values()]


def said_alike(findings: Iterable[Finding]) -> list[list[Finding]]:
    """Return findings of one rule that ask for the same together, in the order they are met."""
    groups: dict[object, list[Finding]] = {}
    for finding in findings:
        asks = (finding.severity, finding.code, finding.cure, finding.source, finding.chapter)
        groups.setdefault(asks, []).append(finding)
    return list(groups.values())


def _rule(group: list[Finding], subjects: Subjects) -> RuleMet:
    first = group[0]
    words = _alike(finding.words for finding in group)
    untold = [finding for finding in group if not subjects.is_told(finding)]
    whole = [] if words else untold
    named = {finding.subject: finding for finding in group if finding not in whole}
    return RuleMet(
        first.severity,
        first.code,
        head_words(first),
        words,
        _alike(finding.cure for finding in group),
        not untold,
        _together(named.values(), subjects),
        tuple((subjects.named(finding.subject), finding) for finding in whole),
        tuple(dict.fromkeys(finding.to_type for finding in group if finding.to_type)),
        tuple(dict.fromkeys(finding.place for finding in group if finding.place)),
        len(named) if all(finding.subject.kind in _WORK for finding in group) else 0,
    )


def _alike(texts: Iterable[str]) -> str:
    """Return the text that all of these are, or nothing."""
    different = dict.fromkeys(texts)
    return next(iter(different)) if len(different) == 1 else ""


def _together(findings: Iterable[Finding], subjects: Subjects) -> tuple[AboutAlike, ...]:
    """Return things by the work that they are part of: one step on many places is one line."""
    lines: dict[str, list[SubjectNamed]] = {}
    for finding in findings:
        name, page = subjects.named(finding.subject)
        work, thing = subjects.work_on(finding.subject) or ("", name)
        lines.setdefault(work, []).append((thing, page))
    return tuple(AboutAlike(work, tuple(named)) for work, named in lines.items())
