"""Stops of a rate against a card's limits: at one time, in a year, each as the card counts it."""

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeGuard

from generator.compute import buying, dose
from generator.dataclass import dataclass
from generator.inventory.label import LabelCard, Use, YearlyLimit
from generator.inventory.stock import Product
from generator.plan.findings.about_labels import LabelStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.may_count import may_count_stops, unsaid_stops
from generator.plan.labels.rates import (
    ROUNDING,
    JobRate,
    as_active,
    counted_basis,
    is_dry,
    strengths_of,
)
from generator.plan.labels.yearly_sums import (
    PlannedSpray,
    Together,
    amount_at_one_time,
    amount_in_a_year,
    in_doubt,
    in_doubt_at_once,
    times_in_a_year,
)
from generator.plan.model.finding import Finding, about_job
from generator.working import (
    KEPT_WHILE_STOPPED,
    Figure,
    Given,
    Input,
    Quantity,
    Withheld,
    flat_inputs,
)

_Shown = tuple[tuple[str, Figure], ...]
# What a stop may unfold: pounds of active and how they follow from what was typed.
UNFOLDED = (
    dose.ACTIVE_RATE,
    dose.DRY_ACTIVE_RATE,
    buying.TOTAL_RATE,
    buying.TOTAL_STRENGTH,
    buying.TOTAL_FRACTION,
)
TYPED = "The typed rate"
_BY_PERCENT = (
    "What an acre gets of {product}, its percent of the spray that the last catch test puts on,"
)
_WITHIN = "Type a rate that the label allows for this use"
CHECK_CATCH = (
    "Check the last catch test of the sprayer: what was caught and the ground that took it. If it "
    "is right, wet less"
)


@dataclass(frozen=True, slots=True)
class Judged:
    """A product of a job that is held against its card: the use it rests on and its rate."""

    request: JobRequest
    product: Product
    card: LabelCard
    use: Use
    rate: JobRate


def limit_basis(use: Use, limit: Given | YearlyLimit, card: LabelCard) -> str | None:
    """Return what a limit on ground counts, None where a card of several actives leaves it open.

    What is said beside a year's limit holds; else its unit tells a volume of product from pounds
    of active. Pounds beside the rates of a dry product are of product, as those are.
    """
    if isinstance(limit, YearlyLimit):
        if limit.basis is not None:
            return limit.basis
        limit = limit.amount
    # ounces by volume can be of product alone: active is counted in pounds
    if limit.unit == "fl_oz_per_ac":
        return "product"
    if use.basis in ("ai", "ae") or (use.basis == "product" and is_dry(card)):
        return use.basis
    return counted_basis(card)


def limit_stops(judged: Judged, sprays: tuple[PlannedSpray, ...]) -> Iterator[Finding]:
    """Yield a stop for each limit of the use that the job passes, or may pass."""
    yield from _range_stops(judged)
    yield from _one_time_stops(judged, sprays)
    yield from _year_stops(judged, sprays)


def _range_stops(judged: Judged) -> Iterator[Finding]:
    use = judged.use
    assert use.basis is not None
    mine = figure_value(judged.rate.in_basis(use.basis))
    # an end that is left out is among the gaps of the use, with a stop of its own
    if use.rate_low is not None and use.rate_high is not None:
        low, high = use.rate_low.value, use.rate_high.value
        if not low * (1 - ROUNDING) <= mine <= high * (1 + ROUNDING):
            limits = (("Lowest on the card", use.rate_low), ("Highest on the card", use.rate_high))
            own = judged.rate.counted.rate if judged.rate.counted is not None else None
            figures = beside(judged, "Your rate", judged.rate.product, own, limits, use.basis)
            yield finding(
                LabelStop.RATE_OUTSIDE,
                about_job(judged.request.job_id),
                use.where,
                figures,
                what=_BY_PERCENT.format(product=judged.product.name)
                if _is_percent(judged)
                else TYPED,
                cure=f"{_cure(judged)}.",
            )


def _one_time_stops(judged: Judged, sprays: tuple[PlannedSpray, ...]) -> Iterator[Finding]:
    """Yield a stop where the tank holds more at one time than the card allows, partners counted."""
    most, job = judged.use.max_per_application, judged.request.job_id
    # not_on_label limits nothing, and what is left out is a gap of the use
    if not isinstance(most, Given):
        return
    mine, here = on_the_place(judged.request, judged.product, sprays)
    # a job is one tank: what another job puts here is another time
    tank = tuple(spray for spray in here if spray.job_id == job)
    basis = limit_basis(judged.use, most, judged.card)
    found = amount_at_one_time(mine, tank, judged.card, basis) if basis else None
    if found is None or basis is None:
        yield finding(
            LabelStop.NOT_TO_BE_ADDED_UP,
            about_job(job),
            judged.use.where,
            product=judged.product.name,
        )
    elif found.amount.value > most.value * (1 + ROUNDING):
        pounds = in_pounds(judged, basis)
        shown = amount_at_one_time(mine, tank, judged.card, pounds) if pounds else None
        alone = found.count == 1
        figures = beside(
            judged,
            "Your rate" if alone else "In the tank at one time",
            found.amount,
            shown.amount if shown else None,
            (("Most at one time", most),),
            basis,
        )
        together = "" if alone else "Together with what else of it is in the tank, "
        yield finding(
            LabelStop.OVER_ONE_TIME,
            about_job(job),
            judged.use.where,
            figures,
            what=_what(together, judged),
            cure=_cure(judged),
        )
    elif doubted := in_doubt_at_once(mine, tank):
        possible = amount_at_one_time(mine, tank, judged.card, basis, "possible")
        if may_be_over(possible, most):
            yield from may_count_stops(mine, doubted, job, judged.use.where)


def _year_stops(judged: Judged, sprays: tuple[PlannedSpray, ...]) -> Iterator[Finding]:
    use, job = judged.use, judged.request.job_id
    mine, here = on_the_place(judged.request, judged.product, sprays)
    limit = use.max_per_year
    if isinstance(limit, YearlyLimit):
        yield from _over_year(judged, limit, mine, here)
    # a card may limit how often and not how much; then the year is counted in either way
    counted = limit if isinstance(limit, YearlyLimit) else None
    times = use.times_per_year
    if isinstance(times, int) and times_in_a_year(mine, here, counted) > times:
        yield finding(LabelStop.TOO_OFTEN, about_job(job), use.where)


def _over_year(
    judged: Judged, limit: YearlyLimit, mine: PlannedSpray, here: tuple[PlannedSpray, ...]
) -> Iterator[Finding]:
    job, card, where = judged.request.job_id, judged.card, judged.use.where
    basis = limit_basis(judged.use, limit, card)
    doubted = in_doubt(mine, here, limit)
    yield from unsaid_stops(doubted, job, where)
    found = amount_in_a_year(mine, here, card, basis, limit) if basis else None
    if found is None or basis is None:
        yield finding(
            LabelStop.NOT_TO_BE_ADDED_UP, about_job(job), where, product=judged.product.name
        )
    elif found.amount.value > limit.amount.value * (1 + ROUNDING):
        yield _over(judged, limit, mine, here, found, basis)
    # what is surely too much asks no question besides about what may be
    elif doubted:
        possible = amount_in_a_year(mine, here, card, basis, limit, "possible")
        if may_be_over(possible, limit.amount):
            yield from may_count_stops(mine, doubted, job, where)


def may_be_over(possible: Together | None, limit: Given) -> bool:
    """Return whether what may be on the ground is over a limit, or cannot be added up."""
    # where what may be here cannot be added up, no sum says that it holds
    return possible is None or possible.amount.value > limit.value * (1 + ROUNDING)


def _over(
    judged: Judged,
    limit: YearlyLimit,
    mine: PlannedSpray,
    here: tuple[PlannedSpray, ...],
    found: Together,
    basis: str,
) -> Finding:
    pounds = in_pounds(judged, basis)
    shown = amount_in_a_year(mine, here, judged.card, pounds, limit) if pounds else None
    alone = found.count == 1
    figures = beside(
        judged,
        "Planned in a year",
        found.amount,
        shown.amount if shown else None,
        (("Most in a year", limit.amount),),
        basis,
    )
    together = "" if alone else "Together with the other sprayings on this ground, "
    return finding(
        LabelStop.OVER_YEAR,
        about_job(judged.request.job_id),
        judged.use.where,
        figures,
        what=_what(together, judged),
        cure=_lower(judged) if alone else "Leave one of them out, or lower a rate",
    )


def _what(together: str, judged: Judged) -> str:
    told = _BY_PERCENT if _is_percent(judged) else f"{TYPED} of {{product}}"
    said = told.format(product=judged.product.name)
    return f"{together}{said[0].lower()}{said[1:]}" if together else said


def _is_percent(judged: Judged) -> bool:
    """Whether what an acre gets follows from a percent and from what the sprayer puts on it."""
    return judged.rate.mix is not None


def _cure(judged: Judged) -> str:
    return (
        f"{CHECK_CATCH}, or type a lower percent that the label allows"
        if _is_percent(judged)
        else _WITHIN
    )


def _lower(judged: Judged) -> str:
    return f"{CHECK_CATCH}, or lower the percent" if _is_percent(judged) else "Lower the rate"


def in_pounds(judged: Judged, basis: str) -> str | None:
    """Return the basis in which pounds of active stand beside a limit."""
    return counted_basis(judged.card) if basis == "product" else basis


def beside(
    judged: Judged,
    label: str,
    found: Figure | None,
    pounds: Figure | None,
    limits: tuple[tuple[str, Given], ...],
    basis: str,
) -> _Shown:
    """Return what was typed, and pounds of active to an acre beside the card's limits.

    Where the card counts no pounds, typed product stands beside its limits.
    """
    if pounds is None:
        return ((label, found), *limits) if basis == "product" and _is_typed(found) else ()
    shown = [*_typed(judged, pounds), (label, _unfolded(pounds))]
    for told, limit in limits:
        identity = f"{judged.request.job_id}/{told.lower().replace(' ', '_')}_lb_per_ac"
        active = as_active(identity, limit, basis, judged.card)
        if active is not None:
            shown.append((told, _unfolded(active)))
    return tuple(shown)


def _is_typed(figure: Figure | None) -> TypeGuard[Figure]:
    """Whether a figure is a typed number, or a sum of such."""
    if isinstance(figure, Quantity):
        return all(isinstance(given, Given) for _, given in flat_inputs(figure))
    return isinstance(figure, Given)


def _typed(judged: Judged, pounds: Figure) -> Iterator[tuple[str, Figure]]:
    """Yield the typed rate, and the strengths that make it pounds of active."""
    typed = judged.rate.mix if judged.rate.mix is not None else judged.rate.product
    if isinstance(typed, Given) and typed != pounds:
        yield "Typed", typed
        for name, strength in strengths_of(judged.card):
            yield f"Strength of {name}", strength


def _unfolded(figure: Figure) -> Figure:
    """Return the figure with what is not typed, and is not pounds of active, kept back.

    A stop shows no ounces but those that the owner typed.
    """
    if not isinstance(figure, Quantity):
        return figure
    return replace(figure, inputs=tuple((name, _opened(given)) for name, given in figure.inputs))


def _opened(given: Input) -> Input:
    if isinstance(given, tuple):
        return tuple(_one_opened(figure) for figure in given)
    return _one_opened(given)


def _one_opened(figure: Figure) -> Figure:
    if not isinstance(figure, Quantity):
        return figure
    if figure.formula in UNFOLDED:
        return _unfolded(figure)
    # an amount of product could be poured by, and this job is not cleared
    return Withheld("", figure.unit, KEPT_WHILE_STOPPED)


def figure_value(figure: Figure | None) -> float:
    """Return the value of a figure that has one."""
    assert isinstance(figure, Given | Quantity)
    return figure.value


def on_the_place(
    request: JobRequest, product: Product, sprays: tuple[PlannedSpray, ...]
) -> tuple[PlannedSpray, tuple[PlannedSpray, ...]]:
    """Return the job's own spraying of a product, and every spraying on its ground."""
    here = tuple(spray for spray in sprays if request.ground.id in spray.grounds)
    mine = next(
        spray for spray in here if spray.job_id == request.job_id and spray.product_id == product.id
    )
    return mine, tuple(spray for spray in here if not mine.is_apart_from(spray))
