"""What one reader sees of a plan: removes, and lets nothing private past.

Jobs are put together in `released`, stands and walks in `partner`; what the owner is told of it
all is made in `handed`.
"""

from collections.abc import Mapping

from generator.compute.area import STRIP_LENGTH
from generator.dataclass import dataclass
from generator.inventory.page_names import slug
from generator.inventory.schema import PARTNER, Reader
from generator.plan.findings.order import in_order
from generator.plan.model.finding import Finding, Subject
from generator.plan.model.job import Job
from generator.plan.model.place import Place
from generator.plan.model.plan import Land, Plan
from generator.plan.readers.hours_away import hours_for_others
from generator.plan.readers.land_shown import ground_alone, released_things, things_shown
from generator.plan.readers.partner import HandedGround, handed_ground, own_sits
from generator.plan.readers.redacted import redacted
from generator.plan.readers.released import Releasing, released_id, released_job
from generator.plan.readers.released_runs import released_runs
from generator.working import Quantity

SEEN_CLASSES = {"contractor": frozenset({"page"}), PARTNER: frozenset({"page"})}
TITLES = {"contractor": "Work sheets", PARTNER: "Stands, walks and work"}


def handed_jobs(jobs: tuple[Job, ...], reader: Reader) -> list[Job]:
    """Return the jobs a reader is handed, still as the owner sees them.

    Done or missed, a job goes without its amounts, so that nobody does it by an old number.
    """
    return [
        job if job.state.is_ahead else job.without_amounts()
        for job in jobs
        if reader.has(job.planting_id, job.step.id)
    ]


def seen_by(plan: Plan, reader: Reader) -> Plan:
    """Return the plan as another reader may see it."""
    seen = SEEN_CLASSES[reader.kind]
    jobs = handed_jobs(plan.jobs, reader)
    place_ids = _place_ids(plan, jobs)
    things, thing_ids = released_things(things_shown(plan.land.things, jobs, reader), reader)
    shown_jobs = tuple(
        sorted(
            (released_job(job, place_ids[job.place_id].id, seen, thing_ids) for job in jobs),
            key=_by_date,
        )
    )
    new_ids = {job.id: released_id(job, place_ids[job.place_id].id) for job in jobs}
    places = {job.place_id: plan.place(job.place_id) for job in jobs}
    ground = HandedGround()
    if reader.kind == PARTNER:
        ground = handed_ground(plan, reader, {old: new.id for old, new in place_ids.items()})
    emergency = plan.land.emergency
    return Plan(
        reader=reader.kind,
        title=TITLES[reader.kind],
        season=plan.season,
        as_of=plan.as_of,
        old_after=plan.old_after,
        land=Land(
            emergency=redacted(emergency, seen) if emergency is not None else None,
            stands=ground.stands,
            routes=ground.routes,
            things=things,
            looked_up=ground.looked_up,
            after_the_shot=ground.after_the_shot,
        ),
        places=tuple(
            sorted(
                (_place(place, place_ids[place.id], seen) for place in places.values()),
                key=lambda place: place.id,
            )
        ),
        jobs=shown_jobs,
        findings=_findings(plan.findings, {**new_ids, **ground.new_ids, **ground.new_sheets}),
        entries=ground.looks,
        upkeep=ground.upkeep,
        others_out=ground.others_out,
        runs=tuple(
            released_runs(plan.runs, jobs, {old: new.id for old, new in place_ids.items()}, seen)
        ),
        open_walks=ground.open_walks,
        sits=ground.sits,
        answers=ground.answers,
        keep_away=hours_for_others(
            plan.keep_away,
            {**{old: new.id for old, new in place_ids.items()}, **ground.new_ids},
            own_sits(plan, reader),
        ),
    )


def _by_date(job: Job) -> tuple[str, str, str]:
    # of the same days by the new id: the order by the owner's id would tell something of that id
    return (str(job.dates.opens or "9999"), str(job.dates.closes or "9999"), job.id)


@dataclass(frozen=True, slots=True)
class _NewPlace:
    id: str
    name: str


def _place_ids(plan: Plan, jobs: list[Job]) -> dict[str, _NewPlace]:
    """Name places by what others know them as; the rest by counting visible ones."""
    places = {job.place_id: plan.place(job.place_id) for job in jobs}
    named: dict[str, _NewPlace] = {}
    nameless: list[Place] = []
    for place in places.values():
        known_as = place.typed.known_as if place.typed is not None else None
        if known_as is None:
            nameless.append(place)
        else:
            named[place.id] = _NewPlace(slug(known_as), known_as)
    nameless.sort(key=lambda place: _outward(place, jobs))
    for number, place in enumerate(nameless, 1):
        # two dashes: no name of a place gives such an address
        named[place.id] = _NewPlace(f"no-name--{number}", f"Place without a name {number}")
    return named


def _outward(place: Place, jobs: list[Job]) -> tuple[float, list[tuple[object, ...]]]:
    """Return what a reader sees of a place without a name, so that order gives nothing away."""
    seen = [
        (job.id.partition("/")[2], *((line.key, line.text or "") for line in job.safety))
        for job in jobs
        if job.place_id == place.id
    ]
    return (place.area.value, sorted(seen, key=repr))


def _place(place: Place, new: _NewPlace, seen: frozenset[str]) -> Place:
    release = Releasing(seen, {place.id: new.id}, {})
    length = length_told(place)
    return Place(
        id=new.id,
        address=new.id,
        name=new.name,
        area=release.number(place.area),
        typed=None,
        ground=None,
        sides=(release.number(length), release.figure(place.sides[1]))
        if length is not None and place.sides is not None
        else None,
        # who works there has to find it
        lies=ground_alone(place.lies),
        begins_lat_lon=place.begins_lat_lon,
    )


def length_told(place: Place) -> Quantity | None:
    """Return the length that others are told: what ground and width give, as they see both."""
    if place.sides is None:
        return None
    identity = f"{place.area.identity.rpartition('/')[0]}/length_ft"
    return STRIP_LENGTH(identity, area_ac=place.area, width_ft=place.sides[1])


def _findings(findings: tuple[Finding, ...], new_ids: Mapping[str, str]) -> tuple[Finding, ...]:
    """Stops on what is handed over stand for every reader; in words that give nothing away."""
    return in_order(
        [
            Finding(
                code=finding.code,
                severity=finding.severity,
                subject=Subject(finding.subject.kind, new_ids[finding.subject]),
                words=finding.words_for_others,
                words_for_others=finding.words_for_others,
                cure="",
                to_type="",
                place="",
                figures=(),
                chapter="",
                source="",
                cause="",
                column=0,
                thing="",
            )
            # what has no words for others was written for the owner and may name what is kept
            for finding in findings
            if finding.subject in new_ids and finding.words_for_others
        ]
    )
