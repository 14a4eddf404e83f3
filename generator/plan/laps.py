"""What passes lay twice or beside the place: cautions, and stops where the label's limits break."""

from collections.abc import Iterator

from generator.inventory.label import YearlyLimit
from generator.plan.asked import JobAsked
from generator.plan.cautions import Caution
from generator.plan.findings import finding
from generator.plan.limit_stops import (
    Judged,
    beside,
    in_pounds,
    limit_basis,
    may_be_over,
    on_the_place,
    value_of,
)
from generator.plan.may_count import may_count_stops
from generator.plan.model import Finding
from generator.plan.notes import Note
from generator.plan.passes import (
    Figures,
    Passes,
    is_over_spots,
    is_over_the_place,
    lap_too_wide,
)
from generator.plan.rates import ROUNDING
from generator.plan.stops import Stop
from generator.plan.tank import Machine
from generator.plan.years import (
    PlannedSpray,
    amount_at_one_time,
    amount_in_a_year,
    as_laid,
    in_doubt,
    in_doubt_at_once,
)
from generator.working import Given

AT_ONCE, IN_A_YEAR = "at one time", "in a year"


def lap_stops(asked: JobAsked, machine: Machine) -> Iterator[Finding]:
    """Yield a stop for a typed lap that is half of a pass or more."""
    figures = lap_too_wide(asked, machine)
    if figures:
        words = {"item": machine.sprayer.name}
        yield finding(Stop.LAP_TOO_WIDE, asked.job_id, machine.sprayer.where, figures, **words)


def twice_stops(
    one: Judged, sprays: tuple[PlannedSpray, ...], passes: Passes | None
) -> Iterator[Finding]:
    """Yield a stop for each limit that holds, but not on the ground that passes lay twice."""
    mine, here = on_the_place(one.asked, one.product, sprays)
    fits = passes.fits() if passes is not None and mine.laid_times > 1 else ()
    if mine.laid_times > 1:
        yield from _at_one_time(one, mine, here, fits)
    if any(spray.laid_times > 1 for spray in here):
        yield from _in_a_year(one, mine, here, fits)


def _at_one_time(
    one: Judged, mine: PlannedSpray, here: tuple[PlannedSpray, ...], fits: Figures
) -> Iterator[Finding]:
    """Yield a stop over the card's most at one time; where it names none, over its highest rate."""
    use, card = one.use, one.card
    limit, basis = use.rate_high, use.basis
    tank: tuple[PlannedSpray, ...] = (mine,)
    if isinstance(use.max_per_application, Given):
        limit = use.max_per_application
        basis = limit_basis(use, limit, card)
        tank = tuple(spray for spray in here if spray.job_id == mine.job_id)
    if limit is None or basis is None or basis == "mix":
        return  # a share of the spray stays what it is, however often it is laid
    found = amount_at_one_time(mine, as_laid(tank), card, basis)
    if found is not None and value_of(found.amount) <= limit.value * (1 + ROUNDING):
        if doubted := in_doubt_at_once(mine, tank):
            possible = amount_at_one_time(mine, as_laid(tank), card, basis, "possible")
            if may_be_over(possible, limit):
                yield from may_count_stops(mine, doubted, one.asked.job_id, use.where)
        return
    pounds = in_pounds(one, basis)
    shown = amount_at_one_time(mine, as_laid(tank), card, pounds) if pounds else None
    figures = beside(
        one,
        "Where passes lap",
        found.amount if found else None,
        shown.amount if shown else None,
        (("Most at one time", limit),),
        basis,
    )
    yield _over(one, (*figures, *fits), AT_ONCE)


def _in_a_year(
    one: Judged, mine: PlannedSpray, here: tuple[PlannedSpray, ...], fits: Figures
) -> Iterator[Finding]:
    use, card, limit = one.use, one.card, one.use.max_per_year
    if not isinstance(limit, YearlyLimit):
        return
    basis, laid = limit_basis(use, limit, card), as_laid(here)
    found = amount_in_a_year(mine, laid, card, basis, limit) if basis else None
    if basis is None or found is None:
        return  # what cannot be added up has a stop of its own
    if value_of(found.amount) > limit.amount.value * (1 + ROUNDING):
        pounds = in_pounds(one, basis)
        shown = amount_in_a_year(mine, laid, card, pounds, limit) if pounds else None
        figures = beside(
            one,
            "In a year where passes lap",
            found.amount,
            shown.amount if shown else None,
            (("Most in a year", limit.amount),),
            basis,
        )
        yield _over(one, (*figures, *fits), IN_A_YEAR)
    elif doubted := in_doubt(mine, here, limit):
        possible = amount_in_a_year(mine, laid, card, basis, limit, "possible")
        if may_be_over(possible, limit.amount):
            yield from may_count_stops(mine, doubted, one.asked.job_id, use.where)


def _over(one: Judged, figures: Figures, when: str) -> Finding:
    product = one.product.name
    return finding(
        Stop.OVER_WHERE_PASSES_LAP,
        one.asked.job_id,
        one.use.where,
        figures,
        product=product,
        when=when,
    )


def pass_findings(asked: JobAsked, machine: Machine, passes: Passes | None) -> Iterator[Finding]:
    """Yield cautions of ground laid twice or beside the place; a note where nobody can say."""
    job = asked.job_id
    if passes is None:
        if not is_over_spots(asked):
            yield _not_worked_out(asked, machine)
        return
    numbers, where = passes.numbers, machine.sprayer.where
    if passes.is_laid_twice:
        figures = (
            ("Laid twice between two passes", numbers["lap_in"]),
            ("Of the width of a pass", numbers["lap_fraction"]),
            *passes.fits(),
        )
        yield finding(Caution.LAID_TWICE, job, where, figures)
    if passes.falls_beside:
        figures = (
            ("Beside each edge", numbers["beside_in"]),
            ("Of the width of the pass, on both sides", numbers["beside_fraction"]),
            *passes.fits(),
        )
        yield finding(Caution.SPRAYED_BESIDE, job, where, figures)


def _not_worked_out(asked: JobAsked, machine: Machine) -> Finding:
    if not is_over_the_place(asked):
        why = "the work covers a part of the place, and how wide that is is not typed"
        cure = "Measure what the passes over it cover, laps counted, and type that as treated_sq_ft"
        where = asked.work.where if asked.work is not None else asked.ground.where
    elif asked.ground.width_ft is None:
        why, cure = "the place has no taped width", "Tape the width and type width_ft of the place"
        where = asked.ground.where
    else:
        why = f"the width that {machine.sprayer.name} covers in one pass is not typed"
        cure, where = "Measure it on a dry track and type swath_ft", machine.sprayer.where
    return finding(Note.NO_PASSES, asked.job_id, where, why=why, cure=cure)
