"""The plan's numbers by their ids, and the lines that explain one."""

from collections.abc import Iterable, Iterator

from generator.plan.feeding.nutrient_price import nutrient_prices
from generator.plan.jobs.lane_mowing import lane_mowing
from generator.plan.model.finding import Finding
from generator.plan.model.plan import Plan
from generator.plan.money.budget import cost_in_all
from generator.plan.money.free_hours import hour_numbers
from generator.plan.money.money_hours import money_numbers
from generator.plan.money.weekends import weekends
from generator.plan.sits.sits_over import sit_numbers
from generator.plan.sowing.catches import catch_numbers
from generator.plan.sowing.seed_price import live_prices
from generator.plan.standing.cover_by_season import acres_by_age
from generator.plan.standing.heights_told import height_numbers
from generator.plan.standing.low_curve import low_numbers
from generator.plan.views.years_ahead import ahead_numbers
from generator.plan.winds.winds_told import wind_numbers
from generator.units import shown
from generator.working import (
    Figure,
    Given,
    Measured,
    Quantity,
    Reference,
    Withheld,
    flat_inputs,
    walk,
)


def numbers_of(plan: Plan, more: Iterable[Quantity | None] = ()) -> dict[str, Quantity]:
    """Return every computed number that pages show, by id, those they rest on included.

    `more` are numbers of views that the book alone makes.
    """
    tops: list[Quantity | None] = [place.area for place in plan.places]
    tops += [number for place in plan.places if place.ground for number in place.ground.numbers()]
    for job in plan.jobs:
        tops += job.every_number()
    tops += [number for run in plan.runs for number in run.numbers()]
    tops += [number for handed in plan.handed for number, _ in handed.rest_on_hidden]
    tops += nutrient_prices(plan.land)
    lanes = (lane_mowing(route, plan.land.machines) for route in plan.land.routes)
    tops += [number for lane in lanes if lane is not None for number in lane.numbers()]
    tops += [number for hole in plan.water for number in hole.all_numbers()]
    tops += [number for lot in live_prices(plan) for number in (lot.pls, lot.pound)]
    tops += catch_numbers(plan.land, plan.season)
    tops += [active.total for active in plan.actives]
    tops += plan.decided.numbers()
    for item in plan.buying.purchases:
        tops += [item.needed, item.packages, item.loose, item.cost, item.left_over, item.short]
        tops.append(item.on_hand if isinstance(item.on_hand, Quantity) else None)
    tops += [need for late in plan.buying.too_late for need, _ in late.needs]
    tops.append(cost_in_all(plan))
    tops += money_numbers(plan)
    tops += hour_numbers(plan)
    tops += weekends(plan).numbers()
    tops += height_numbers(plan)
    tops += low_numbers(plan)
    tops += [number for season in acres_by_age(plan) for number in season.acres.values()]
    tops += ahead_numbers(plan)
    tops += wind_numbers(plan.land.stands, plan.land.routes)
    tops += sit_numbers(plan.land.stands, plan.entries)
    tops += more
    # a stop keeps inputs back that a cleared job shows: what is told whole stands last
    stops = (found for found in plan.findings if found.severity == "stop")
    others = (found for found in plan.findings if found.severity != "stop")
    return {**_by_id(_figures(stops)), **_by_id(_figures(others)), **_by_id(tops)}


def _figures(findings: Iterable[Finding]) -> Iterator[Quantity]:
    for finding in findings:
        yield from (figure for _, figure in finding.figures if isinstance(figure, Quantity))


def _by_id(tops: Iterable[Quantity | None]) -> dict[str, Quantity]:
    return {number.identity: number for number in walk(*(top for top in tops if top is not None))}


def explained(figure: Figure, depth: int = 0, name: str = "") -> Iterator[str]:
    """Yield the lines of a working, the inputs of each number indented below it."""
    pad = "  " * depth
    if isinstance(figure, Withheld):
        yield f"{pad}{name}: {figure.why}"
        return
    printed = figure.printed() if isinstance(figure, Quantity) else shown(figure.value, figure.unit)
    number = f"{printed} ({figure.value!r})"
    if isinstance(figure, Given):
        yield f"{pad}{name} = {number}, typed in {figure.file}:{figure.line}"
    elif isinstance(figure, Measured):
        yield (
            f"{pad}{name} = {number}, {figure.method}, {figure.points} points "
            f"in {figure.file}:{figure.line} [{figure.source}]"
        )
    elif isinstance(figure, Reference):
        yield f"{pad}{name} = {number}, {figure.source}: {figure.locator}"
    else:
        yield f"{pad}{name or figure.identity} = {number}"
        yield f"{pad}  {figure.formula.label}: {figure.formula.text} [{figure.formula.source}]"
        for input_name, part in flat_inputs(figure):
            yield from explained(part, depth + 2, input_name)
