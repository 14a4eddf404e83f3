"""Findings as lines for a terminal: place, code and subject as faults have them, the rest below."""

import textwrap
from collections.abc import Iterable

from generator.book.marks import printed, source_words
from generator.plan.model.finding import Finding
from generator.working import Figure, Withheld

WIDTH = 80
INDENT = " " * 4


def finding_lines(finding: Finding) -> list[str]:
    """Return a finding as lines: place and subject, words, figures, cure, what to type."""
    place = f"{finding.place}:{finding.column}" if finding.column else finding.place
    head = f"{place} {finding.severity} {finding.code} {finding.subject}".lstrip()
    figures = "; ".join(f"{label}: {_figure(figure)}" for label, figure in finding.figures)
    source = f" Source: {source_words(finding.source)}." if finding.source else ""
    told = f"{figures}.{source}" if figures else ""
    below = (finding.words, told, f"{finding.cure} {finding.to_type}".strip())
    return [head, *(line for text in below if text for line in _wrapped(text))]


def cause_lines(findings: Iterable[Finding]) -> list[str]:
    """Return a line for each finding that jobs stop because of: how many do, and where it is."""
    listed = tuple(findings)
    stops = [finding for finding in listed if finding.severity == "stop" and finding.cause]
    lines = []
    for cause in (finding for finding in listed if any(stop.cause == finding.id for stop in stops)):
        jobs = len({stop.subject for stop in stops if stop.cause == cause.id})
        many = "1 job stops" if jobs == 1 else f"{jobs} jobs stop"
        place = f"{cause.place}:{cause.column}" if cause.column else cause.place
        lines.append(f"{many} because of {cause.id}, {place}: see it first.")
    return lines


def _figure(figure: Figure) -> str:
    return figure.why if isinstance(figure, Withheld) else printed(figure)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=INDENT,
        subsequent_indent=INDENT,
        # ids and paths are copied off the terminal, so none is cut in two
        break_long_words=False,
        break_on_hyphens=False,
    )
