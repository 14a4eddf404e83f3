"""What one reader sees of a plan: removes, and lets nothing private past.

A job handed over keeps its own amounts, dates and ground; in its working, inputs that the reader
may not see are withheld. Ids, files and lines of the owner's folder never pass.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from generator.inventory.page_names import slug
from generator.inventory.schema import PARTNER, Reader
from generator.plan.findings import in_order
from generator.plan.model import (
    AdjuvantPart,
    Dose,
    Finding,
    Handed,
    Job,
    JobState,
    Load,
    Mix,
    MixPart,
    Place,
    Plan,
    RowPlanted,
    SafetyLine,
    Sowing,
)
from generator.plan.partner import HandedGround, handed_ground
from generator.plan.redacted import redacted
from generator.plan.spreading import LimeAsked, Nutrient, Spreading
from generator.working import (
    SET_BY_OWNER,
    Figure,
    Given,
    Input,
    Measured,
    Quantity,
    Withheld,
    flat_inputs,
    walk,
)

SEEN_CLASSES = {"contractor": frozenset({"page"}), PARTNER: frozenset({"page"})}
TITLES = {"contractor": "Work sheets", PARTNER: "Stands, walks and work"}
ALL = "all"


def is_handed(reader: Reader, planting_id: str, step_id: str) -> bool:
    """Return whether a reader is handed a step of a planting."""
    steps = {one for jobs in reader.jobs if jobs.planting == planting_id for one in jobs.steps}
    return ALL in steps or step_id in steps


def handed_over(plan: Plan, readers: tuple[Reader, ...]) -> tuple[Handed, ...]:
    """Return for each other reader the jobs handed over and the numbers with hidden inputs."""
    return tuple(
        Handed(
            reader.id,
            reader.kind,
            reader.name,
            reader.note,
            tuple(job.id for job in _handed_jobs(plan, reader)),
            tuple(
                (quantity, hidden)
                for job in _handed_jobs(plan, reader)
                for quantity in _shown_numbers(job)
                if (hidden := _hidden_inputs(quantity, SEEN_CLASSES[reader.kind]))
            ),
            tuple(one.id for one in plan.stands if one.id in reader.stands),
            tuple(one.id for one in plan.routes if one.id in reader.routes),
        )
        for reader in readers
    )


def _handed_jobs(plan: Plan, reader: Reader) -> list[Job]:
    return [job for job in plan.jobs if is_handed(reader, job.planting_id, job.step.id)]


def _shown_numbers(job: Job) -> list[Quantity]:
    return [
        *job.numbers.values(),
        *(q for one in job.sowings for q in one.numbers.values()),
        *(q for one in job.spreadings for q in one.numbers.values()),
        *(q for one in job.nutrients for q in one.numbers()),
        *(q for one in job.rows for q in one.numbers.values()),
    ]


def _hidden_inputs(quantity: Quantity, seen: frozenset[str]) -> tuple[str, ...]:
    hidden = {
        name
        for one in walk(quantity)
        for name, figure in flat_inputs(one)
        if isinstance(figure, Given | Measured) and figure.visible not in seen
    }
    return tuple(sorted(hidden))


def seen_by(plan: Plan, reader: Reader) -> Plan:
    """Return the plan as another reader may see it."""
    seen = SEEN_CLASSES[reader.kind]
    # Done or missed, a job goes without its amounts, so that nobody does it by an old number.
    jobs = [
        job if job.state.is_ahead else job.without_amounts() for job in _handed_jobs(plan, reader)
    ]
    place_ids = _place_ids(plan, jobs)
    shown_jobs = tuple(
        sorted((_job(job, place_ids[job.place_id], seen) for job in jobs), key=_by_date)
    )
    new_ids = {job.id: _job_id(job, place_ids[job.place_id]) for job in jobs}
    places = {job.place_id: plan.place(job.place_id) for job in jobs}
    ground = HandedGround()
    if reader.kind == PARTNER:
        ground = handed_ground(plan, reader, {old: new.id for old, new in place_ids.items()})
    return Plan(
        reader=reader.kind,
        title=TITLES[reader.kind],
        season=plan.season,
        as_of=plan.as_of,
        emergency=redacted(plan.emergency, seen) if plan.emergency is not None else None,
        signs=None,
        signs_looked_up_on=None,
        note=None,
        location_lat_lon=None,
        places=tuple(
            sorted(
                (_place(place, place_ids[place.id], seen) for place in places.values()),
                key=lambda place: place.id,
            )
        ),
        jobs=shown_jobs,
        findings=_findings(plan, {**new_ids, **ground.new_ids, **ground.new_sheets}),
        entries=ground.looks,
        stands=ground.stands,
        routes=ground.routes,
        upkeep=ground.upkeep,
        others_out=ground.others_out,
    )


def _by_date(job: Job) -> tuple[str, str, str]:
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


def _job_id(job: Job, place: _NewPlace) -> str:
    return "/".join([place.id, *job.id.split("/")[1:]])


def _place(place: Place, new: _NewPlace, seen: frozenset[str]) -> Place:
    area = _quantity(place.area, {place.id: new.id}, {}, seen)
    return Place(new.id, new.id, new.name, area, None)


def _job(job: Job, place: _NewPlace, seen: frozenset[str]) -> Job:
    lots = {one.lot.id: f"lot-{number}" for number, one in enumerate(job.sowings, 1)}
    lots |= {one.item.id: f"spread-{number}" for number, one in enumerate(job.spreadings, 1)}
    lots |= {one.plant.id: f"plants-{number}" for number, one in enumerate(job.rows, 1)}

    def release(quantity: Quantity) -> Quantity:
        return _quantity(quantity, {job.place_id: place.id}, lots, seen)

    new_id = _job_id(job, place)
    return replace(
        job,
        id=new_id,
        address=new_id.replace("/", "-"),
        place_id=place.id,
        planting_id="",
        dates=job.dates.without_origin(),
        numbers={name: release(one) for name, one in job.numbers.items()},
        sowings=tuple(
            Sowing(
                replace(redacted(one.lot, seen), id=lots[one.lot.id]),
                _released(one.rate, release, seen),
                {name: release(quantity) for name, quantity in one.numbers.items()},
            )
            for one in job.sowings
        ),
        note=None,
        state=_state(job.state),
        days=replace(job.days, why=()) if job.days is not None else None,
        needs=(),
        mix=_mix(job.mix, release, seen) if job.mix is not None else None,
        spreader=redacted(job.spreader, seen) if job.spreader is not None else None,
        spreader_test=redacted(job.spreader_test, seen) if job.spreader_test else None,
        drill=redacted(job.drill, seen) if job.drill is not None else None,
        drill_test=redacted(job.drill_test, seen) if job.drill_test is not None else None,
        safety=tuple(_safety(line) for line in job.safety),
        spreadings=tuple(
            Spreading(
                replace(redacted(one.item, seen), id=lots[one.item.id]),
                {name: release(quantity) for name, quantity in one.numbers.items()},
            )
            for one in job.spreadings
        ),
        nutrients=tuple(
            Nutrient(
                one.name,
                _released(one.need, release, seen),
                release(one.got) if one.got is not None else None,
                _released(one.short, release, seen) if one.short is not None else None,
                release(one.over) if one.over is not None else None,
            )
            for one in job.nutrients
        ),
        lime_asked=_lime_asked(job.lime_asked, release, seen) if job.lime_asked else None,
        rows=tuple(
            RowPlanted(
                replace(redacted(one.plant, seen), id=lots[one.plant.id]),
                redacted(one.guard, seen) if one.guard is not None else None,
                _figure(one.spacing, {}, {}, seen),
                _figure(one.rows_apart, {}, {}, seen) if one.rows_apart is not None else None,
                {name: release(quantity) for name, quantity in one.numbers.items()},
            )
            for one in job.rows
        ),
    )


def _state(state: JobState) -> JobState:
    """Return where a job stands without the days that the owner's log or mind alone holds."""
    by_log = state.is_settled or state.question is not None
    return replace(state, day=None) if by_log else state


def _lime_asked(
    asked: LimeAsked, release: Callable[[Quantity], Quantity], seen: frozenset[str]
) -> LimeAsked:
    base = asked.base_strength
    return LimeAsked(
        asked.base,
        _released(asked.need, release, seen),
        _released(base, release, seen) if base is not None else None,
        _released(asked.own_strength, release, seen),
    )


def _mix(mix: Mix, release: Callable[[Quantity], Quantity], seen: frozenset[str]) -> Mix:
    return Mix(
        parts=tuple(
            MixPart(
                product=redacted(part.product, seen),
                card=redacted(part.card, seen),
                use=redacted(part.use, seen),
                measure=redacted(part.measure, seen),
                in_all=release(part.in_all),
            )
            for part in mix.parts
        ),
        adjuvants=tuple(
            AdjuvantPart(
                redacted(part.adjuvant, seen),
                redacted(part.measure, seen),
                release(part.in_all),
            )
            for part in mix.adjuvants
        ),
        sprayer=redacted(mix.sprayer, seen),
        test=redacted(mix.test, seen),
        loads=tuple(_load(load, release, seen) for load in mix.loads),
        small_place=_load(mix.small_place, release, seen) if mix.small_place else None,
        order=mix.order,
    )


def _load(load: Load, release: Callable[[Quantity], Quantity], seen: frozenset[str]) -> Load:
    return Load(
        load.name,
        _released(load.count, release, seen) if load.count is not None else None,
        _released(load.spray, release, seen),
        tuple(Dose(one.name, release(one.amount), release(one.rate)) for one in load.doses),
    )


def _released(
    figure: Figure, release: Callable[[Quantity], Quantity], seen: frozenset[str]
) -> Figure:
    return release(figure) if isinstance(figure, Quantity) else _figure(figure, {}, {}, seen)


def _safety(line: SafetyLine) -> SafetyLine:
    """Safety outranks privacy: the line passes whole, only the owner's file and line stay."""
    if isinstance(line.figure, Given):
        return replace(line, figure=replace(line.figure, file="", line=0))
    return line


def _quantity(
    quantity: Quantity,
    places: Mapping[str, str],
    lots: Mapping[str, str],
    seen: frozenset[str],
) -> Quantity:
    inputs = tuple((name, _input(one, places, lots, seen)) for name, one in quantity.inputs)
    identity = _identity(quantity.identity, places, lots)
    return replace(quantity, identity=identity, inputs=inputs)


def _input(
    figure: Input, places: Mapping[str, str], lots: Mapping[str, str], seen: frozenset[str]
) -> Input:
    if isinstance(figure, tuple):
        return tuple(_figure(one, places, lots, seen) for one in figure)
    return _figure(figure, places, lots, seen)


def _figure(
    figure: Figure, places: Mapping[str, str], lots: Mapping[str, str], seen: frozenset[str]
) -> Figure:
    if isinstance(figure, Quantity):
        if figure.identity.partition("/")[0] not in places:
            # what rests on another place, as seed that places before this one leave
            return Withheld(_last_name(figure), figure.unit, SET_BY_OWNER)
        return _quantity(figure, places, lots, seen)
    if isinstance(figure, Given | Measured):
        if figure.visible not in seen:
            return Withheld(figure.name, figure.unit, SET_BY_OWNER)
        return replace(figure, file="", line=0)
    return figure


def _last_name(quantity: Quantity) -> str:
    return quantity.identity.rpartition("/")[2].rpartition(".")[2]


def _identity(identity: str, places: Mapping[str, str], lots: Mapping[str, str]) -> str:
    place, *middle, last = identity.split("/")
    lot, dot, name = last.partition(".")
    if dot:
        last = f"{lots.get(lot, lot)}.{name}"
    return "/".join([places[place], *middle, last])


def _findings(plan: Plan, new_ids: Mapping[str, str]) -> tuple[Finding, ...]:
    """Stops on what is handed over stand for every reader; in words that give nothing away."""
    return in_order(
        [
            replace(
                one,
                subject=new_ids[one.subject],
                words=one.words_for_others,
                cure="",
                place="",
                figures=(),
                chapter="",
                source="",
            )
            for one in plan.findings
            if one.subject in new_ids and one.words_for_others
        ]
    )
