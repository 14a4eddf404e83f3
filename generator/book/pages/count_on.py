"""The page of the days that can be counted on: every job with what past years say of it."""

from generator.book.pages.written import YEAR, Written, from_template, place_of
from generator.plan.days.past_days import counted_at
from generator.plan.model.days import Span
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.plan import Plan
from generator.plan.model.suited_days import CountedDays
from generator.reference.library import methods, values
from generator.reference.suited import Suits, suited

_TITLE = "Days you can count on"
_Row = tuple[CountedDays, list[tuple[Job, Place]]]


def count_on_page(plan: Plan) -> list[Written]:
    """Return the page of days to count on, or none where no record of days is typed."""
    station = counted_at(plan.weather.stations) if plan.weather is not None else None
    if station is None or not plan.suited_days:
        return []
    groups = [(suits, rows) for suits in suited().values() if (rows := _rows(plan, suits))]
    return [
        from_template(
            plan,
            "count-on.md",
            _TITLE,
            YEAR,
            "count_on",
            ["weather", "rain", "suited", *(suits.name for suits, _ in groups)],
            station=station.station.name,
            groups=groups,
            methods=methods(),
            values=values(),
        )
    ]


def _rows(plan: Plan, suits: Suits) -> list[_Row]:
    """Return the jobs of one kind of work; those of one step with the same days share a row."""
    rows: dict[tuple[str, tuple[Span, ...]], _Row] = {}
    for job in plan.jobs:
        counted = plan.suited_days.get(job.id)
        if counted is not None and counted.suits.id == suits.id:
            _, jobs = rows.setdefault((job.step.name, counted.spans), (counted, []))
            jobs.append((job, place_of(plan, job)))
    return list(rows.values())
