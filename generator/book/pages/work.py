"""Pages of the work: the first page, the list of jobs, job sheets."""

import datetime
from functools import cache
from itertools import chain, zip_longest

from markupsafe import Markup

from generator.book.content import callout, chapters_for
from generator.book.homes import marks_of, unfold_what_is_at_home
from generator.book.marks import Marks
from generator.book.origin import origin_words
from generator.book.pages.lines import NamedLine, in_groups, line_of, sheet_of
from generator.book.pages.pictures_ground import job_ground
from generator.book.pages.pictures_work import strip_picture, tank_picture
from generator.book.pages.sheet_lines import count_days_left, setting_to, sheet_lines, ticked_lines
from generator.book.pages.signs import seen_rows
from generator.book.pages.written import (
    CALENDAR,
    CALENDAR_SPANS,
    GROUND_GEOJSON,
    GROUND_GPX,
    GROUND_KML,
    YEAR,
    Listed,
    Written,
    address_of,
    everything_to_do,
    finished,
    from_template,
    place_of,
)
from generator.book.render import caution_heads, cautions_block, render
from generator.inventory.page_names import slug
from generator.inventory.places import Route
from generator.inventory.schema import PARTNER
from generator.plan.days.spray_weather import longest_dry, tightest_wind
from generator.plan.feeding.doses import NUTRIENT_WORDS
from generator.plan.findings.about_days import DayNote
from generator.plan.findings.about_spraying import SprayCaution, SprayNote
from generator.plan.jobs.alternatives import still_to_sow
from generator.plan.jobs.lane_mowing import lane_mowing
from generator.plan.jobs.slope import slope_to_measure
from generator.plan.labels.label_harm import leaves_asked
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import Job, UpkeepJob
from generator.plan.model.plan import Plan
from generator.plan.season.open_dates import day_in_season
from generator.plan.sowing.seed_findings import says_something
from generator.plan.sowing.sown_how import METHOD_WORDS
from generator.plan.spraying.setbacks import kept_mixing, kept_spraying
from generator.plan.views.ground_features import ground_features
from generator.reference.library import (
    marker_names,
    mixing_steps,
    species,
    values,
)
from generator.reference.operations import operations
from generator.working import Figure

# The states of jobs, as the page of all work heads its groups, in their order there.
GROUPS = {
    "open": "Open now",
    "waiting": "Waiting",
    "missed": "Missed",
    "undated": "Without dates",
    "done": "Done",
    "not_needed": "Not needed",
}


# What the sheet itself says, beside the loads and at its head.
NOTHING_SET_BACK = SprayCaution.NOTHING_SET_BACK.value.code
ON_THE_SHEET = (
    NOTHING_SET_BACK,
    SprayCaution.LEFT_OUT.value.code,
    DayNote.PART_QUIET.value.code,
)
_GAP = "\0"  # stands in no text of ours
BARE_GROUND = (SprayCaution.NO_PASSES.value.code, SprayNote.NO_PASSES.value.code)


def work_page(plan: Plan) -> Written:
    """Return the list of jobs by where they stand, each group by date."""
    listed = everything_to_do(plan)
    is_hired = plan.reader not in ("owner", PARTNER)
    return from_template(
        plan,
        "work.md",
        f"Work in season {plan.season}",
        YEAR,
        "work",
        [job.step.name for job, _, _ in listed],
        signs=_signs(plan),
        seen=seen_rows(plan),
        fewest_years=values()["fewest_years"],
        files=(CALENDAR, CALENDAR_SPANS),
        ground=(GROUND_GPX, GROUND_KML, GROUND_GEOJSON) if ground_features(plan) else (),
        worn={job.id: [line for line in job.safety if _is_worn(line)] for job in plan.jobs},
        groups=[
            (words, group if is_hired else _in_lines(group))
            for kind, words in GROUPS.items()
            if (group := [row for row in listed if row[0].state.kind == kind])
        ],
    )


def _in_lines(listed: list[Listed]) -> list[tuple[NamedLine, Listed]]:
    """Return jobs in lines, those of one step with the same days and state together."""
    groups = in_groups(listed, lambda row: (row[0].step.name, row[0].usable, row[1], row[0].state))
    return [
        (line_of(key[0], [sheet_of(row) for row in rows], len(rows)), rows[0])
        for key, rows in groups.items()
    ]


def _is_worn(line: SafetyLine) -> bool:
    return line.key.startswith("label.protective_equipment")


def _signs(plan: Plan) -> list[tuple[str, list[datetime.date | None], str]]:
    """Return the season signs as days of the plan's season, with what each rests on.

    None for others than the owner; without weather all that are known were typed.
    """
    if plan.land.signs is None:
        return []
    rows: list[tuple[str, list[datetime.date | None], str]] = []
    origin = (
        {found.sign: origin_words(found) for found in plan.weather.signs} if plan.weather else {}
    )
    for key, name in marker_names().items():
        sign = getattr(plan.land.signs, key)
        days = (sign.early, sign.typical, sign.late) if sign is not None else (None, None, None)
        in_season = [day_in_season(day, plan.season) if day is not None else None for day in days]
        rows.append((name, in_season, origin.get(key, "")))
    return rows


def job_page(plan: Plan, job: Job) -> Written:
    """Return a job sheet with what stands behind it."""
    address = f"work/{job.address}.md"
    marks = marks_of(plan, address)
    place = place_of(plan, job)
    title = f"{job.step.name}: {place.name}{_season_before(plan, job)}"
    found = plan.findings_on(job.id)
    stops = [finding for finding in found if finding.severity == "stop"]
    run = plan.run_of(job.id)
    ticked = ticked_lines(job, may_go=job.state.is_ahead and not stops)
    body = render(
        "job.md.jinja",
        marks,
        plan=plan,
        root=Markup("../"),
        job=job,
        place=place,
        stops=stops,
        others=[
            finding
            for finding in found
            if finding.severity != "stop" and finding.code not in ON_THE_SHEET
        ],
        lines=sheet_lines(job.safety, plan.reader, ticked.keys()),
        ticked=ticked,
        setting=setting_to(job),
        left=count_days_left(job.usable, plan.as_of),
        wind=tightest_wind(job.mix) if job.mix is not None else None,
        dry_for=longest_dry(job.mix) if job.mix is not None else None,
        kept_spraying=kept_spraying(job.mix) if job.mix is not None else (),
        kept_mixing=kept_mixing(job.mix) if job.mix is not None else (),
        leaves=leaves_asked(job.mix) if job.mix is not None else (),
        measures=_measures(job),
        several=job.mix is not None and len(job.mix.parts) > 1,
        unmeasured_slopes=slope_to_measure(job),
        species=species(),
        timed_stretch=values()["timed_stretch_ft"],
        stretch=values()["stretch_of_strip_ft"],
        treated=[sowing.lot for sowing in job.sowings if says_something(sowing.lot.tag.treated)],
        instead=still_to_sow(job, plan.as_of),
        method_words=METHOD_WORDS,
        strip=strip_picture(job),
        lies=job_ground(plan, job),
        tank=tank_picture(job),
        mixing={step.id: step for step in mixing_steps()},
        chapters=chapters_for(plan.reader, job.step.chapters),
        nutrient_words=NUTRIENT_WORDS,
        counted=plan.suited_days.get(job.id),
        wind_use=plan.wind_use.get(job.id),
        count_values=values(),
        run=run,
        in_run=len(run.places) if run is not None else 0,
        nothing_set_back=any(finding.code == NOTHING_SET_BACK for finding in found),
        bare_ground=any(finding.code in BARE_GROUND for finding in found),
    )
    body += usual_cautions(job, marks)
    unfold_what_is_at_home(plan, marks)
    said = [job.step.name, place.name, job.step.does.name]
    said += [species()[sowing.lot.species].name for sowing in job.sowings]
    said += [part.product.name for part in job.mix.parts] if job.mix is not None else []
    said += [spreading.item.name for spreading in job.spreadings]
    said += [row.plant.name for row in job.rows]
    said += [finding.words for finding in found]
    return finished(
        address,
        title,
        YEAR,
        body,
        marks,
        said,
        ("job",),
        tuple(line.key for line in job.safety),
    )


def _season_before(plan: Plan, job: Job) -> str:
    """Return what tells a sheet apart from that of the same step in the season after it."""
    later = (other for other in plan.jobs_on(job.place_id) if other.season > job.season)
    return f", {job.season}" if any(other.step.name == job.step.name for other in later) else ""


SUBJECT_FOLDERS = {"stand": "stands", "route": "routes", "water_hole": "ground"}


def upkeep_page(plan: Plan, job: UpkeepJob) -> Written:
    """Return the sheet of a step of a stand, a walk or a water hole."""
    marks = marks_of(plan, f"work/{job.address}.md")
    body = render(
        "upkeep.md.jinja",
        marks,
        plan=plan,
        root=Markup("../"),
        job=job,
        lines=sheet_lines(job.safety, plan.reader),
        left=count_days_left(job.usable, plan.as_of),
        lane=lane_mowing(job.subject, plan.land.machines)
        if isinstance(job.subject, Route)
        else None,
        subject_page=f"{SUBJECT_FOLDERS[job.kind]}/{address_of(job.subject)}.html",
        chapters=chapters_for(plan.reader, job.step.chapters),
        findings=[
            finding
            for about in (job.id, job.subject.id)
            for finding in plan.findings_on(about)
            if finding.severity != "note"
        ],
    )
    body += usual_cautions(job, marks)
    # The same step comes every season: the sheet of the one before is told apart by its name.
    before = f", {job.season}" if job.season != plan.season else ""
    return finished(
        f"work/{job.address}.md",
        f"{job.step.name}: {job.subject.name}{before}",
        YEAR,
        body,
        marks,
        [job.step.name, job.subject.name, job.step.does.name],
        ("job",),
        tuple(line.key for line in job.safety),
    )


def _measures(job: Job) -> list[str]:
    """Return what the tank is measured with, each once."""
    if job.mix is None:
        return []
    measures = [part.measure for part in job.mix.parts]
    measures += [part.measure for part in job.mix.adjuvants]
    return list(dict.fromkeys(measure.name for measure in measures))


def usual_cautions(job: Job | UpkeepJob, marks: Marks) -> str:
    """Return the usual cautions, once: their heads in one look, their words folded behind them."""
    parts, figures, cited = _cautions_of(job.step.does.cautions)
    marks.cited |= cited
    shown = [str(marks.show(figure)) for figure in figures]
    return "".join(chain.from_iterable(zip_longest(parts, shown, fillvalue="")))


@cache
def _cautions_of(name: str) -> tuple[list[str], tuple[Figure, ...], frozenset[str]]:
    """Return the usual cautions in parts, with the figures that stand between, and the sources.

    All sheets of one kind of work say the same; where a figure links to is the page's to say.
    """
    gaps = _Gaps()
    text = render(
        "cautions.md.jinja",
        gaps,
        heads=caution_heads(callout(name)),
        # the words of our own callouts, made inert where they are put together
        cautions=Markup(cautions_block((callout(name), callout("general")), gaps)),
        section=slug(operations()[name].name),
        kind=operations()[name].name,
    )
    return text.split(_GAP), tuple(gaps.figures), frozenset(gaps.cited)


class _Gaps(Marks):
    """Marks of no page yet: a gap stands for each figure."""

    def show(self, figure: Figure) -> Markup:
        """Keep the figure, and return the gap that stands for it."""
        self.figures.append(figure)
        return Markup(_GAP)
