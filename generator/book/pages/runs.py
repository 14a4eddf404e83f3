"""Pages of runs: one mix or one fill for several places, and the list of them."""

from markupsafe import Markup

from generator.book.content import chapters_for
from generator.book.homes import marks_of, unfold_what_is_at_home
from generator.book.pages.lines import NamedPage
from generator.book.pages.sheet_lines import sheet_lines
from generator.book.pages.work import usual_cautions
from generator.book.pages.written import YEAR, Written, finished, from_template, place_of
from generator.book.render import render
from generator.dataclass import dataclass
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.model.work import Run, RunPlace

# What a line to write on asks for, and how wide: never a word of the plan.
BLANKS_OF_SPRAYING = (
    ("product", "long"), ("amount", "short"), ("ground", "short"), ("time", "short"),
    ("to", "short"), ("wind", "short"), ("from the", "short"),
)  # fmt: skip
BLANKS_OF_SOWING = (
    ("lot", "long"), ("amount", "short"), ("ground", "short"), ("time", "short"), ("to", "short"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class PlaceOnRun:
    """One place of a run as its page prints it: the job there, where, and its numbers."""

    job: Job
    place: Place
    numbers: RunPlace


def runs_page(plan: Plan) -> Written:
    """Return the list of runs, each with its places and days."""
    return from_template(
        plan,
        "runs.md",
        "One mix for several places",
        YEAR,
        "runs",
        ["run", "one mix", "one fill"],
        listed=[(run, run_title(plan, run), _on_run(plan, run)) for run in plan.runs],
    )


def run_page(plan: Plan, run: Run) -> Written:
    """Return the sheet of a run: the mix or the fill, its places in order, lines to record on."""
    address = f"runs/{run.address}.md"
    marks = marks_of(plan, address)
    places = _on_run(plan, run)
    first = places[0].job
    lines = sheet_lines(first.safety, plan.reader)
    body = render(
        "run.md.jinja",
        marks,
        plan=plan,
        root=Markup("../"),
        run=run,
        first=first,
        places=places,
        blanks=BLANKS_OF_SPRAYING if run.kind == "spray" else BLANKS_OF_SOWING,
        call=lines.call,
        worn=[line for line in first.safety if line.key.startswith("label.protective_equipment")],
        apart=[(why, [_sheet(plan, job_id) for job_id in job_ids]) for why, job_ids in run.apart],
        chapters=chapters_for(plan.reader, first.step.chapters),
    )
    body += usual_cautions(first, marks)
    unfold_what_is_at_home(plan, marks)
    said = [first.step.name, *(one.place.name for one in places), *(name for name, _ in run.doses)]
    return finished(address, run_title(plan, run), YEAR, body, marks, said, ("run",))


def run_title(plan: Plan, run: Run) -> str:
    """Return what a run is called: the work, one mix or one fill, its first place."""
    first = _on_run(plan, run)[0]
    once = "one mix" if run.kind == "spray" else "one fill"
    more = len(run.places) - 1
    return f"{first.job.step.name}, {once}: {first.place.name} and {more} more"


def _on_run(plan: Plan, run: Run) -> list[PlaceOnRun]:
    jobs = {job.id: job for job in plan.jobs}
    return [
        PlaceOnRun(jobs[one.job_id], place_of(plan, jobs[one.job_id]), one) for one in run.places
    ]


def _sheet(plan: Plan, job_id: str) -> NamedPage:
    job = next(job for job in plan.jobs if job.id == job_id)
    name = f"{place_of(plan, job).name}, {job.step.name}"
    return name, Markup("work/{}.html").format(job.address)
