"""Pages every reader needs at once: emergency, safety, what stands in the way."""

from dataclasses import replace

from markupsafe import Markup

from generator.book.content import Chapter, callout, chapters_for
from generator.book.marks import Marks
from generator.book.pages.by_rule import by_rule
from generator.book.pages.subjects import Subjects
from generator.book.pages.written import HOW, YEAR, Written, finished, from_template
from generator.book.render import cautions_block, render, render_authored
from generator.plan.jobs.safety import emergency_lines
from generator.plan.model.plan import Plan
from generator.reference.operations import operations

SAFETY_CHAPTERS = (
    "emergencies",
    "machines-and-lines",
    "heat-ticks-alone",
    "stands-and-climbing",
    "what-this-book-does-not-know",
)


# The heads of a list of findings, the gravest first.
SEVERITIES = {"stop": "Stops", "caution": "Cautions", "note": "Notes"}


def findings_page(plan: Plan) -> Written:
    """Return every stop, caution and note, each rule with all that it is about."""
    rules = by_rule(plan.findings, Subjects(plan))
    return from_template(
        plan,
        "findings.md",
        "Stops, cautions and notes",
        YEAR,
        "findings",
        [
            *(rule.head for rule in rules),
            *(question.asks for question in plan.unanswered),
        ],
        severities=[
            (title, [rule for rule in rules if rule.severity == severity])
            for severity, title in SEVERITIES.items()
        ],
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
