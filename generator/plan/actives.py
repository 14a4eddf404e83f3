"""What the season's cleared sprayings put on a place of each active, by calendar year."""

from itertools import product

from generator.compute.buying import TOTAL_RATE
from generator.plan.model import ActiveTotal
from generator.plan.years import PlannedSpray
from generator.working import Figure


def active_totals(
    sprays: tuple[PlannedSpray, ...], cleared: frozenset[str]
) -> tuple[ActiveTotal, ...]:
    """Return each active's pounds on an acre by place and year, over all products and premixes.

    `cleared` are the ids of the jobs that are cleared and still to come; others add nothing here,
    unless the log says that they are done. A job whose open dates touch two years counts in both,
    and a spraying on every place on whose ground it lies.
    """
    rates: dict[tuple[str, int, str, str], list[Figure]] = {}
    printed: dict[str, str] = {}
    for spray in sprays:
        told = (spray.by_log or spray.job_id in cleared) and "place" not in spray.gaps
        if told and spray.rate is not None and spray.opens and spray.closes:
            for year in range(spray.opens.year, spray.closes.year + 1):
                for one, place_id in product(spray.rate.actives, sorted(spray.grounds)):
                    printed.setdefault(one.named.key, one.named.printed)
                    key = (place_id, year, one.named.key, one.basis)
                    rates.setdefault(key, []).append(one.rate)
    return tuple(
        ActiveTotal(
            place,
            year,
            printed[active],
            basis,
            TOTAL_RATE(f"{place}/{year}/actives/total_{number}_lb_per_ac", parts=tuple(parts)),
        )
        for number, ((place, year, active, basis), parts) in enumerate(sorted(rates.items()), 1)
    )
