"""What a number is of, in words: the thing, and the day or season where it has one."""

import datetime
from collections.abc import Callable, Mapping
from functools import partial

from generator.dataclass import dataclass
from generator.plan.model.days import MONTHS, day_words
from generator.plan.model.job import Job, JobAhead
from generator.plan.model.plan import Plan
from generator.working import Figure, Quantity

_YEAR_DIGITS = 4
_MONTH_LENGTH = len("2027-03")


@dataclass(frozen=True, slots=True)
class _Words:
    """What the things of a plan are called, by the ids that numbers name them with."""

    jobs: Mapping[str, str]
    places: Mapping[str, str]
    plantings: Mapping[str, str]
    runs: Mapping[str, str]
    things: Mapping[str, str]
    counted_on: Mapping[str, datetime.date]


def subjects_of(plan: Plan) -> Callable[[Figure], str]:
    """Return what says in words what a computed number is of; "" where no words are needed."""
    words = plan.once("words of numbers", _words)
    known: dict[str, str] = plan.once("subjects of numbers", lambda _: {})
    return partial(_subject, words, known)


def planting_words(plan: Plan) -> dict[str, str]:
    """Return what plantings are called: the place, and the season where it has several."""
    return {
        planting.id: (
            f"{place.name}, season {planting.season}"
            if len(place.typed.plantings) > 1
            else place.name
        )
        for place in plan.places
        if place.typed is not None
        for planting in place.typed.plantings
    }


def _words(plan: Plan) -> _Words:
    places = {place.id: place.name for place in plan.places}
    on_places: tuple[Job | JobAhead, ...] = (*plan.jobs, *plan.ahead)
    jobs = {
        job.id: _job_words(places[job.place_id], job.step.name, job.season, plan)
        for job in on_places
    }
    runs = {run.id: f"run that begins with {jobs[run.places[0].job_id]}" for run in plan.runs}
    jobs |= {
        job.id: _job_words(job.subject.name or job.subject.id, job.step.name, job.season, plan)
        for job in plan.upkeep
    }
    land = plan.land
    things = {item.id: item.words for item in plan.items}
    things |= {
        thing.id: thing.name
        for things_of_a_kind in (
            land.machines, land.fertilizers, land.products, land.sprayers, land.spreaders,
            land.drills, land.cost_share,
        )
        for thing in things_of_a_kind
    }  # fmt: skip
    things |= {hole.hole.id: hole.hole.name or hole.hole.id for hole in plan.water}
    things |= {hire.id: hire.name or "Hired work" for hire in land.hires}
    counted = {entry.id: entry.done_on for entry in plan.entries if entry.id is not None}
    return _Words(jobs, places, planting_words(plan), runs, things, counted)


def _job_words(where: str, step: str, season: int, plan: Plan) -> str:
    told = f"{where}: {step}"
    return told if season == plan.season else f"{told}, season {season}"


def _subject(words: _Words, known: dict[str, str], figure: Figure) -> str:
    if not isinstance(figure, Quantity):
        return ""
    # the last part says which number of the thing it is
    of = figure.identity.rpartition("/")[0]
    if of not in known:
        known[of] = _told(words, of.split("/"))
    return known[of]


def _told(words: _Words, parts: list[str]) -> str:
    first, rest = parts[0], parts[1:]
    if run := words.runs.get("/".join(parts[:4])):
        return run
    if job := words.jobs.get("/".join(parts[:3])):
        return job
    if first in words.places:
        return _of_place(words, words.places[first], rest)
    if first == "height":
        where = words.plantings.get(rest[0], "")
        days = [day_words(day) for part in rest[1:] if (day := _day(part))]
        return ", ".join(filter(None, [where, *(f"height on {day}" for day in days)]))
    return _of_thing(words, parts)


def _of_place(words: _Words, name: str, rest: list[str]) -> str:
    if rest[-1:] == ["ground"]:
        return f"{name}, the ground"
    for part in rest:
        if day := words.counted_on.get(part.removeprefix("count-")):
            return f"{name}, plant count of {day_words(day)}"
    seasons = [f"season {part}" for part in rest if len(part) == _YEAR_DIGITS and part.isdigit()]
    return ", ".join([name, *seasons])


def _of_thing(words: _Words, parts: list[str]) -> str:
    """Return what a number of no one job or place is of: a thing, a day, a month or a season."""
    named = {**words.things, **words.plantings, **words.places, **words.jobs}.get
    rest = parts[2:]
    # a job's id is three parts, a thing's one
    found = named("/".join(rest[:3])) or next(filter(None, map(named, reversed(parts[1:]))), "")
    days = [f"weekend of {day_words(day)}" for part in rest if (day := _day(part))]
    months = [_month(part) for part in rest if len(part) == _MONTH_LENGTH and _month(part)]
    years = [f"season {part}" for part in rest if len(part) == _YEAR_DIGITS and part.isdigit()]
    when = ", ".join(dict.fromkeys([*days, *months, *years]))
    # a name stands as it is typed
    return f"{found}, {when}" if found and when else found or when[:1].upper() + when[1:]


def _day(part: str) -> datetime.date | None:
    try:
        return datetime.date.fromisoformat(part)
    except ValueError:
        return None


def _month(part: str) -> str:
    day = _day(f"{part}-01")
    return f"{MONTHS[day.month - 1]} {day.year}" if day else ""
