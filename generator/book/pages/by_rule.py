"""Findings put together by the rule that they come of, so that many places are named once."""

from collections.abc import Iterable

from generator.book.content import finding_heads
from generator.book.pages.subjects import SubjectNamed, Subjects
from generator.dataclass import dataclass
from generator.plan.model.finding import Finding, Severity

# What these are about has no page on which its findings stand: a list says them whole.
NO_PAGE_OF_FINDINGS = ("folder", "readers", "hours", "entry", "item")


@dataclass(frozen=True, slots=True)
class RuleAbout:
    """A finding as its rule lists it: what it is about, and whether it is said here whole."""

    finding: Finding
    subject: SubjectNamed
    whole: bool


@dataclass(frozen=True, slots=True)
class RuleMet:
    """What came of one rule: its head, the one finding that says all of it if there is one."""

    severity: Severity
    code: str
    head: str
    same: Finding | None
    told: tuple[RuleAbout, ...]


def by_rule(findings: Iterable[Finding], subjects: Subjects) -> list[RuleMet]:
    """Return findings by their rules, in the order in which each rule is met first."""
    groups: dict[str, list[Finding]] = {}
    for finding in findings:
        groups.setdefault(finding.code, []).append(finding)
    return [_rule(group, subjects) for group in groups.values()]


def _rule(group: list[Finding], subjects: Subjects) -> RuleMet:
    first = group[0]
    alike = all((finding.words, finding.cure) == (first.words, first.cure) for finding in group)
    # figures differ with what it is about
    same = first if alike and (len(group) == 1 or not any(one.figures for one in group)) else None
    return RuleMet(
        first.severity,
        first.code,
        finding_heads()[first.code],
        same,
        tuple(
            RuleAbout(
                finding,
                subjects.named(finding.subject),
                same is None and finding.subject.kind in NO_PAGE_OF_FINDINGS,
            )
            for finding in group
        ),
    )
