"""What stands on a place by what was seen and by the log: sown, killed, or killed in part."""

import datetime
import math
from collections.abc import Iterable, Iterator

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry, LoggedJob
from generator.inventory.places import CoverNow, Planting
from generator.inventory.season import season_of
from generator.plan.model.place import Place
from generator.plan.model.plan import Land, Plan
from generator.plan.model.spray_record import MORE_BY_A_TENTH
from generator.reference.steps import Step

LASTING = frozenset({"native_grass", "native_legume", "woody_row", "clover"})
_BEFORE_SOWING = "before_sowing"


@dataclass(frozen=True, slots=True)
class Killed:
    """A kill of what stood on a place, as the log has it.

    `on` is the last day of it. It is `whole` where the log says that it was finished and nothing
    says that it was of a part alone; `planting` is the one that the ground was killed for.
    """

    on: datetime.date
    step: Step
    planting: Planting
    whole: bool


@dataclass(frozen=True, slots=True)
class StandsNow:
    """What a place carries on the plan's day.

    `seen` is what the owner saw there, and `killed` the kill of it since, if there was one; `sown`
    are the plantings that the log says were sown after the last kill of all of it and that can
    still live, by their days. `before` is the planting that stood before anybody planned, until
    all of it was killed.
    """

    seen: CoverNow | None
    killed: Killed | None
    sown: tuple[tuple[datetime.date, Planting], ...]
    before: Planting | None = None


def kills_on(entries: Iterable[LogEntry], land: Land, place: Place) -> tuple[Killed, ...]:
    """Return the kills of what stood on a place, by the days on which they were done.

    What is done of one in a season is one kill. Of a spraying outside any job nobody can say what
    it killed, so it is none of them.
    """
    found = (
        Killed(
            max(entry.done_on for entry in of_season),
            step,
            planting,
            _is_whole(planting, step, of_season, place),
        )
        for planting, step, done in _done_on(entries, land, place)
        if step.does.kills_sod and step.timing == _BEFORE_SOWING
        for of_season in _by_season(done)
    )
    return tuple(sorted(found, key=lambda kill: (kill.on, kill.planting.id)))


def _by_season(done: Iterable[LogEntry]) -> Iterable[list[LogEntry]]:
    seasons: dict[int, list[LogEntry]] = {}
    for entry in done:
        seasons.setdefault(season_of(entry.done_on), []).append(entry)
    return seasons.values()


def _done_on(
    entries: Iterable[LogEntry], land: Land, place: Place
) -> Iterator[tuple[Planting, Step, list[LogEntry]]]:
    """Yield the steps of the plantings of a place that entries tell of, with those entries."""
    plans = {step_plan.id: step_plan for step_plan in land.step_plans}
    about: dict[tuple[str, str], list[LogEntry]] = {}
    for entry in entries:
        if entry.job is not None and _tells_of_work(entry, entry.job):
            about.setdefault((entry.job.planting, entry.job.step), []).append(entry)
    for planting in plantings_of(place):
        for step in plans[planting.steps].steps if planting.steps in plans else ():
            if done := about.get((planting.id, step.id)):
                yield planting, step, done


def _tells_of_work(entry: LogEntry, job: LoggedJob) -> bool:
    """Whether an entry about a job tells that something was done, and not of a decision alone."""
    if entry.not_done:
        return False
    decides = job.answer is not None or job.decide_on is not None
    return bool(job.finished or job.area_ac is not None or job.part or entry.used) or not decides


def plantings_of(place: Place) -> tuple[Planting, ...]:
    """Return the plantings of a place; of one that a reader sees no more of, none."""
    return place.typed.plantings if place.typed is not None else ()


def _is_whole(planting: Planting, step: Step, done: list[LogEntry], place: Place) -> bool:
    """Whether a kill took all of a place, as far as anything tells; in doubt it did not."""
    jobs = [entry.job for entry in done if entry.job is not None]
    work = next((work for work in planting.work if work.step == step.id), None)
    of_a_part = work is not None and (work.part is not None or work.treated_sq_ft is not None)
    spots = any(entry.sprayed is not None and entry.sprayed.spot for entry in done)
    if of_a_part or spots or not any(job.finished for job in jobs):
        return False
    grounds = [job.area_ac.value for job in jobs if job.area_ac is not None]
    if len(grounds) < len(jobs):
        # without its ground an entry is of all of it, unless it names a part
        return not any(job.part for job in jobs)
    return math.fsum(grounds) * MORE_BY_A_TENTH >= place.area.value


def kill_of(
    entries: Iterable[LogEntry], land: Land, place: Place, planting: Planting
) -> Killed | None:
    """Return the kill of a planting: for a later one on its ground, or of what it was sown to be.

    One of all of it before one of a part; None without one.
    """
    kills = [
        kill
        for kill in kills_on(entries, land, place)
        if (kill.planting.season > planting.season and season_of(kill.on) >= planting.season)
        or (kill.planting.id == planting.id and _is_after_sowing(kill, entries, land, place))
    ]
    return next((kill for kill in kills if kill.whole), kills[0] if kills else None)


def _is_after_sowing(kill: Killed, entries: Iterable[LogEntry], land: Land, place: Place) -> bool:
    """Whether the ground of a planting was killed again after its last sowing."""
    sown = [
        entry.done_on
        for planting, step, done in _done_on(entries, land, place)
        if planting.id == kill.planting.id and step.does.begins_planting
        for entry in done
    ]
    # without a record of its sowing it stands from its season on
    return kill.on > max(sown) if sown else season_of(kill.on) > kill.planting.season


def stands_now(plan: Plan, place: Place) -> StandsNow:
    """Return what a place carries by what was seen there and by the log."""
    entries, land = plan.entries, plan.land
    lasting = {step_plan.id for step_plan in land.step_plans if step_plan.kind in LASTING}
    seen = place.typed.cover_now if place.typed is not None else None
    kills = kills_on(entries, land, place)
    cleared = max((kill.on for kill in kills if kill.whole), default=datetime.date.min)
    sown = tuple(
        (day, planting)
        for planting, step, done in _done_on(entries, land, place)
        if step.does.begins_planting
        if (day := min((entry.done_on for entry in done), default=None)) is not None
        if day >= cleared
        # what lives one season is gone after it
        if planting.steps in lasting or planting.season >= season_of(plan.as_of)
    )
    last_sown = max((day for day, _ in sown), default=None)
    since = (seen.seen_on if seen is not None else None) or last_sown
    # what was seen on the day of a kill was seen before it, as far as anybody knows
    later = [kill for kill in kills if since is None or kill.on >= since]
    whole = [kill for kill in later if kill.whole]
    killed = (whole or later)[-1] if later else None
    stood = (one for one in plantings_of(place) if one.standing_since is not None)
    before = next(stood, None) if killed is None or not killed.whole else None
    return StandsNow(seen, killed, tuple(sorted(sown, key=_by_day)), before)


def _by_day(sown: tuple[datetime.date, Planting]) -> tuple[datetime.date, str]:
    return sown[0], sown[1].id
