"""Pages every reader needs at once: emergency, safety, what stands in the way."""

from dataclasses import replace
from typing import get_args

from markupsafe import Markup

from generator.book.content import Chapter, callout, chapters_for, head_words
from generator.book.marks import Marks
from generator.book.pages.by_rule import RuleMet, by_rule
from generator.book.pages.subjects import Subjects
from generator.book.pages.written import HOW, YEAR, Written, finished, from_template
from generator.book.render import cautions_block, render, render_authored
from generator.plan.jobs.safety import emergency_lines
from generator.plan.model.plan import Plan
from generator.plan.views.before_next import When, next_until, when_needed
from generator.reference.operations import operations

SAFETY_CHAPTERS = (
    "emergencies",
    "machines-and-lines",
    "heat-ticks-alone",
    "stands-and-climbing",
    "what-this-book-does-not-know",
)


# The heads of a list of findings, the gravest first.
SEVERITIES = {"stop": "Stops", "caution": "Cautions"}


def findings_page(plan: Plan) -> Written:
    """Return every stop, caution and note by rule: first what stands before the next jobs."""
    subjects, when = Subjects(plan), when_needed(plan)
    grave = [finding for finding in plan.findings if finding.severity != "note"]
    parts: dict[When, list[RuleMet]] = {
        part: by_rule((finding for finding in grave if when(finding) == part), subjects)
        for part in get_args(When)
    }
    notes = [finding for finding in plan.findings if finding.severity == "note"]
    return from_template(
        plan,
        "findings.md",
        "Stops, cautions and notes",
        YEAR,
        "findings",
        [
            *dict.fromkeys(head_words(finding) for finding in plan.findings),
            *(question.asks for question in plan.unanswered),
        ],
        next_until=next_until(plan),
        severities=[
            (title, [rule for rule in parts["next"] if rule.severity == severity])
            for severity, title in SEVERITIES.items()
        ],
        # a sentence that stands above is not said again
        said={rule.said for rule in parts["next"]},
        later=parts["later"],
        over=[*parts["over"], *by_rule((one for one in notes if when(one) == "over"), subjects)],
        notes=by_rule((one for one in notes if when(one) != "over"), subjects),
        unanswered=[
            (question, [plan.place(place_id) for place_id in question.place_ids])
            for question in plan.unanswered
        ],
    )


def emergency_page(plan: Plan) -> Written:
    """Return the emergency card."""
    lines = emergency_lines(plan.land.emergency)
    return from_template(
        plan,
        "emergency.md",
        "Emergency",
        "",
        "emergency",
        ["911", "poison", "hospital"],
        safety_keys=tuple(line.key for line in lines),
        lines=lines,
    )


def safety_page(plan: Plan) -> Written:
    """Return the usual cautions of every operation."""
    marks = Marks()
    body = render(
        "safety.md.jinja",
        marks,
        plan=plan,
        root=Markup(""),
        chapters=chapters_for(plan.reader, SAFETY_CHAPTERS),
    )
    kinds = operations().values()
    own = [(kind.id, kind.name) for kind in kinds if kind.cautions == kind.id]
    for name, title in (*own, ("general", "Always")):
        body += f"\n## {title}\n\n{cautions_block((callout(name),), marks)}"
    said = ["safety", *(kind.name for kind in kinds)]
    return finished("safety.md", "Safety", "", body, marks, said)


def chapter_page(chapter: Chapter) -> Written:
    """Return an authored chapter."""
    marks = Marks()
    body = render_authored(chapter.body, marks)
    written = finished(
        f"chapters/{chapter.name}.md",
        chapter.title,
        HOW,
        body,
        marks,
        [line.lstrip("#").strip() for line in chapter.body.splitlines() if line.startswith("##")],
        ("chapter",),
    )
    return replace(written, page=replace(written.page, ships=True))
