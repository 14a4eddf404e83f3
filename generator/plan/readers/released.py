"""A job as another reader is handed it: put together field by field, so that no new one passes.

A job handed over keeps its own amounts, dates and ground; in its working, inputs that the reader
may not see are withheld. Ids, files and lines of the owner's folder never pass.
"""

from collections.abc import Mapping

from generator.dataclass import dataclass
from generator.plan.model.finding import SafetyLine
from generator.plan.model.job import DateReason, Job, JobDays, JobState, OpenDates
from generator.plan.model.work import (
    AdjuvantPart,
    Dose,
    JobWork,
    LimeAsked,
    Load,
    Mix,
    MixPart,
    Nutrient,
    OwnLoads,
    RowPlanted,
    RowsWork,
    Sower,
    Sowing,
    SowWork,
    SprayWork,
    Spreading,
    SpreadWork,
)
from generator.plan.readers.land_shown import measured_alone, released_near
from generator.plan.readers.redacted import redacted, redacted_kept_off, without_line
from generator.reference.steps import Step
from generator.working import (
    SET_BY_OWNER,
    Figure,
    Given,
    Input,
    Measured,
    Quantity,
    Withheld,
)


@dataclass(frozen=True, slots=True)
class Releasing:
    """How numbers pass to a reader: classes seen, places and things by their new names."""

    seen: frozenset[str]
    places: Mapping[str, str]
    things: Mapping[str, str]

    def keeps(self, figure: Figure) -> bool:
        """Return whether a figure is kept back as an input of another number.

        Kept is also what rests on another place, as seed that places before this one leave.
        """
        if isinstance(figure, Quantity):
            return figure.identity.partition("/")[0] not in self.places
        return isinstance(figure, Given | Measured) and figure.visible not in self.seen

    def number(self, quantity: Quantity) -> Quantity:
        """Return a computed number of a handed place, with what it rests on as far as seen."""
        return Quantity(
            identity=self._identity(quantity.identity),
            value=quantity.value,
            unit=quantity.unit,
            formula=quantity.formula,
            inputs=tuple((name, self._input(figure)) for name, figure in quantity.inputs),
        )

    def numbers(self, numbers: Mapping[str, Quantity]) -> dict[str, Quantity]:
        """Return numbers by their names."""
        return {name: self.number(number) for name, number in numbers.items()}

    def figure(self, figure: Figure) -> Figure:
        """Return a figure, or in its place that it is withheld."""
        if self.keeps(figure):
            return Withheld(_name(figure), figure.unit, SET_BY_OWNER)
        if isinstance(figure, Quantity):
            return self.number(figure)
        if isinstance(figure, Given):
            return without_line(figure)
        if isinstance(figure, Measured):
            return measured_alone(figure)
        return figure

    def _input(self, figure: Input) -> Input:
        if isinstance(figure, tuple):
            return tuple(self.figure(part) for part in figure)
        return self.figure(figure)

    def _identity(self, identity: str) -> str:
        place, *middle, last = identity.split("/")
        thing, dot, name = last.partition(".")
        if dot:
            last = f"{self.things.get(thing, thing)}.{name}"
        # no `get` here: a number of a place that is not handed over fails rather than passes
        return "/".join([self.places[place], *middle, last])


def _name(figure: Figure) -> str:
    if isinstance(figure, Quantity):
        return figure.identity.rpartition("/")[2].rpartition(".")[2]
    return figure.name


def released_job(job: Job, place_id: str, seen: frozenset[str], land: Mapping[str, str]) -> Job:
    """Return a job as another reader is handed it, on a place by its new name.

    `land` are the new ids of the things of the land that they see.
    """
    things = {sowing.lot.id: f"lot-{number}" for number, sowing in enumerate(job.sowings, 1)}
    things |= {
        spreading.item.id: f"spread-{number}" for number, spreading in enumerate(job.spreadings, 1)
    }
    things |= {row.plant.id: f"plants-{number}" for number, row in enumerate(job.rows, 1)}
    release = Releasing(seen, {job.place_id: place_id}, things)
    new_id = released_id(job, place_id)
    return Job(
        id=new_id,
        address=new_id.replace("/", "-"),
        place_id=place_id,
        planting_id="",
        season=job.season,
        step=released_step(job.step),
        dates=released_dates(job.dates),
        state=_state_without_log(job.state),
        note=None,
        part=job.part,
        safety=tuple(released_safety(line) for line in job.safety),
        needs=(),
        work=_work(job.work, release, land),
        days=released_days(job.days),
        had_left=job.had_left,
        method=job.method,
        near=released_near(job.near, land),
    )


def released_id(job: Job, place_id: str) -> str:
    """Return the id of a job on a place by its new name."""
    return "/".join([place_id, *job.id.split("/")[1:]])


def released_step(step: Step) -> Step:
    """Return a step with its words, which every reader of its sheet sees."""
    return Step(
        id=step.id,
        name=step.name,
        operation=step.operation,
        timing=step.timing,
        why=step.why,
        why_source=step.why_source,
        opens=step.opens,
        closes=step.closes,
        settings=step.settings,
        ticks=step.ticks,
        if_missed=step.if_missed,
        only_with=step.only_with,
        seasons_later=step.seasons_later,
        asks=step.asks,
        needs=step.needs,
        excludes=step.excludes,
        instead=step.instead,
        chapters=step.chapters,
        suits=step.suits,
    )


def released_dates(dates: OpenDates) -> OpenDates:
    """Return open dates without what the signs they wait for rest on."""
    return OpenDates(
        opens=dates.opens,
        closes=dates.closes,
        opens_reasons=tuple(_reason(reason) for reason in dates.opens_reasons),
        closes_reasons=tuple(_reason(reason) for reason in dates.closes_reasons),
        missing_signs=dates.missing_signs,
        by_year=(),
    )


def _reason(reason: DateReason) -> DateReason:
    return DateReason(
        day=reason.day,
        sign=reason.sign,
        by=reason.by,
        offset_days=reason.offset_days,
        source=reason.source,
        rests_on=None,
    )


def released_state(state: JobState) -> JobState:
    """Return where a job stands, with its day."""
    return JobState(
        kind=state.kind,
        day=state.day,
        step=state.step,
        question=state.question,
        answer=state.answer,
        why_not=None,
    )


def _state_without_log(state: JobState) -> JobState:
    """Return where a job stands without the days that the owner's log or mind alone holds."""
    # days of open dates stand on the sheet anyway; those of the log tell when somebody was there
    by_log = state.is_settled or state.question is not None
    return JobState(
        kind=state.kind,
        day=None if by_log else state.day,
        step=state.step,
        question=state.question,
        answer=state.answer,
        why_not=None,
    )


def released_days(days: JobDays | None) -> JobDays | None:
    """Return what dates take of a job without what takes it; None where they take nothing."""
    if days is None:
        return None
    # the days to keep free are all that the work needs: reasons would tell quiet dates from others
    return JobDays(not_on=days.not_on, left=days.left, last_before=days.last_before, why=())


def released_safety(line: SafetyLine) -> SafetyLine:
    """Safety outranks privacy: the line passes whole, only the owner's file and line stay."""
    return SafetyLine(
        key=line.key,
        label=line.label,
        text=line.text,
        figure=_told_whole(line.figure),
        product=line.product,
        after=line.after,
    )


def _told_whole(figure: Figure | None) -> Figure | None:
    if isinstance(figure, Given):
        return without_line(figure)
    return measured_alone(figure) if isinstance(figure, Measured) else figure


def _work(work: JobWork | None, release: Releasing, land: Mapping[str, str]) -> JobWork | None:
    match work:
        case SprayWork():
            mix = _mix(work.mix, release) if work.mix is not None else None
            return SprayWork(
                numbers=release.numbers(work.numbers),
                mix=mix,
                kept_off=tuple(
                    redacted_kept_off(one, land.get(one.thing_id, ""), release.seen, release.number)
                    for one in work.kept_off
                ),
            )
        case SowWork():
            return SowWork(
                numbers=release.numbers(work.numbers),
                sowings=tuple(_sowing(sowing, release) for sowing in work.sowings),
                sower=_sower(work.sower, release.seen),
            )
        case SpreadWork():
            asked = work.lime_asked
            return SpreadWork(
                spreadings=tuple(_spreading(spreading, release) for spreading in work.spreadings),
                nutrients=tuple(_nutrient(nutrient, release) for nutrient in work.nutrients),
                lime_asked=_lime_asked(asked, release) if asked is not None else None,
            )
        case RowsWork():
            return RowsWork(rows=tuple(_row(row, release) for row in work.rows))
        case None:
            return None


def _sower(sower: Sower, seen: frozenset[str]) -> Sower:
    return Sower(
        spreader=redacted(sower.spreader, seen) if sower.spreader is not None else None,
        spreader_test=redacted(sower.spreader_test, seen) if sower.spreader_test else None,
        drill=redacted(sower.drill, seen) if sower.drill is not None else None,
        drill_test=redacted(sower.drill_test, seen) if sower.drill_test is not None else None,
    )


def _sowing(sowing: Sowing, release: Releasing) -> Sowing:
    return Sowing(
        lot=redacted(sowing.lot, release.seen, id=release.things[sowing.lot.id]),
        rate=release.figure(sowing.rate),
        numbers=release.numbers(sowing.numbers),
    )


def _spreading(spreading: Spreading, release: Releasing) -> Spreading:
    new_id = release.things[spreading.item.id]
    return Spreading(
        item=redacted(spreading.item, release.seen, id=new_id),
        numbers=release.numbers(spreading.numbers),
    )


def _nutrient(nutrient: Nutrient, release: Releasing) -> Nutrient:
    return Nutrient(
        name=nutrient.name,
        need=release.figure(nutrient.need),
        got=release.number(nutrient.got) if nutrient.got is not None else None,
        short=release.figure(nutrient.short) if nutrient.short is not None else None,
        over=release.number(nutrient.over) if nutrient.over is not None else None,
    )


def _row(row: RowPlanted, release: Releasing) -> RowPlanted:
    return RowPlanted(
        plant=redacted(row.plant, release.seen, id=release.things[row.plant.id]),
        guard=redacted(row.guard, release.seen) if row.guard is not None else None,
        spacing=release.figure(row.spacing),
        rows_apart=release.figure(row.rows_apart) if row.rows_apart is not None else None,
        numbers=release.numbers(row.numbers),
    )


def _lime_asked(asked: LimeAsked, release: Releasing) -> LimeAsked:
    base = asked.base_strength
    return LimeAsked(
        base=asked.base,
        need=release.figure(asked.need),
        base_strength=release.figure(base) if base is not None else None,
        own_strength=release.figure(asked.own_strength),
    )


def _mix(mix: Mix, release: Releasing) -> Mix:
    return Mix(
        parts=tuple(_part(part, release) for part in mix.parts),
        adjuvants=tuple(_adjuvant(part, release) for part in mix.adjuvants),
        sprayer=redacted(mix.sprayer, release.seen),
        test=redacted(mix.test, release.seen),
        loads=tuple(released_load(load, release) for load in mix.loads),
        small_place=tuple(released_load(load, release) for load in mix.small_place),
        order=mix.order,
        own_sprayer=tuple(_own_loads(loads, release) for loads in mix.own_sprayer),
        pours=(),
    )


def _own_loads(loads: OwnLoads, release: Releasing) -> OwnLoads:
    return OwnLoads(
        carrier=release.figure(loads.carrier),
        whole=released_load(loads.whole, release),
        part=released_load(loads.part, release),
    )


def _part(part: MixPart, release: Releasing) -> MixPart:
    return MixPart(
        product=redacted(part.product, release.seen),
        card=redacted(part.card, release.seen),
        use=redacted(part.use, release.seen),
        measure=redacted(part.measure, release.seen),
        in_all=release.number(part.in_all),
    )


def _adjuvant(part: AdjuvantPart, release: Releasing) -> AdjuvantPart:
    return AdjuvantPart(
        adjuvant=redacted(part.adjuvant, release.seen),
        measure=redacted(part.measure, release.seen),
        in_all=release.number(part.in_all),
    )


def released_load(load: Load, release: Releasing) -> Load:
    """Return a tank load with what it rests on as far as the reader sees it."""
    return Load(
        name=load.name,
        count=release.figure(load.count) if load.count is not None else None,
        spray=release.figure(load.spray),
        doses=tuple(_dose(dose, release) for dose in load.doses),
        poured=tuple(release.number(amount) for amount in load.poured),
    )


def _dose(dose: Dose, release: Releasing) -> Dose:
    return Dose(name=dose.name, amount=release.number(dose.amount), rate=release.number(dose.rate))
