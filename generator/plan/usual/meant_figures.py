"""What amounts would be if the figures told as out of the usual were as they were meant.

So a caution of an amount is left out where such a figure alone gives it, and stands where another
cause does.
"""

import statistics
from collections.abc import Iterable, Iterator, Mapping

from generator.compute.seed import VIABLE
from generator.compute.spray import FARTHEST_NOZZLE
from generator.plan.model.finding import Finding
from generator.plan.usual.out_of_usual import range_told
from generator.reference.usual import Usual
from generator.units import convert
from generator.working import Figure, Formula, Given, Measured, Quantity, Withheld, flat_inputs

# A typed or measured figure itself; of a computed one its formula and inputs, whatever its id.
SameFigure = Figure | tuple[Formula, tuple[object, ...]]
MeantFigures = Mapping[SameFigure, float]
TEN = 10
MOST_TENS = 6


def meant_in(findings: Iterable[Finding]) -> dict[SameFigure, float]:
    """Return by figure what those that are told were meant to be, in the unit of each."""
    return {figure: value for found in findings for figure, value in _meant(found)}


def as_if(figure: Figure, instead: MeantFigures) -> float:
    """Return the value of a figure if some of those it rests on had others instead."""
    assert not isinstance(figure, Withheld)
    if not instead:
        return figure.value
    found = instead.get(figure_as_such(figure))
    if found is not None:
        return found
    if not isinstance(figure, Quantity):
        return figure.value
    values = {
        name: [as_if(each, instead) for each in part]
        if isinstance(part, tuple)
        else as_if(part, instead)
        for name, part in figure.inputs
    }
    return figure.formula.function(**values)


def figure_as_such(figure: Figure) -> SameFigure:
    """Return what two figures have in common that are the same number under different ids."""
    if not isinstance(figure, Quantity):
        return figure
    inputs = ((name, figure_as_such(part)) for name, part in flat_inputs(figure))
    return figure.formula, tuple(inputs)


def _meant(found: Finding) -> Iterator[tuple[SameFigure, float]]:
    if not found.figures:
        return
    # the first figure of such a finding is the one that is off
    _, figure = found.figures[0]
    assert isinstance(figure, Given | Measured | Quantity)
    if isinstance(figure, Quantity) and figure.formula is FARTHEST_NOZZLE:
        yield from _nozzle(figure)
        return
    value = moved_by_tens(figure, range_told(found))
    # by what it is, not by its id: other jobs work out the same number anew
    yield figure_as_such(figure), value
    if isinstance(figure, Quantity):
        for typed in _typed(figure):
            # its inputs move by as much, so that amounts that rest on them alone do too
            yield typed, typed.value * value / figure.value


def _nozzle(farthest: Quantity) -> Iterator[tuple[SameFigure, float]]:
    """Yield the nozzle that is far from the mean, with what the middle one caught."""
    caught = [nozzle for _, nozzle in flat_inputs(farthest) if isinstance(nozzle, Given)]
    mean = statistics.fmean(nozzle.value for nozzle in caught)
    far = max(caught, key=lambda nozzle: abs(nozzle.value - mean))
    # the middle one, since the slip is in the mean
    yield far, statistics.median(nozzle.value for nozzle in caught)


def _typed(figure: Quantity) -> Iterator[Given]:
    """Yield the rates, or the parts alive, that were typed and that a figure told rests on."""
    for _, part in flat_inputs(figure):
        if isinstance(part, Quantity):
            yield from _typed(part)
        elif isinstance(part, Given) and (figure.formula is VIABLE or part.unit == "lb_per_ac"):
            yield part


def _is_part(figure: Given | Measured | Quantity) -> bool:
    """Whether a fraction is a part of a bag or of what else is typed, no share of several rates."""
    return not isinstance(figure, Quantity) or figure.formula is VIABLE


def moved_by_tens(figure: Given | Measured | Quantity, usual: Usual) -> float:
    """Return a figure with its point moved until it is usual; where that never is, the end.

    A part of a whole on a tag is never moved beyond it.
    """
    beyond = usual.beyond(figure)
    assert beyond is not None
    low, high = (
        convert(end.value, end.unit, figure.unit) if end is not None else None
        for end in (usual.low, usual.high)
    )
    # no more than all of a bag can be pure or alive
    if high is None and figure.unit == "fraction" and _is_part(figure):
        high = 1
    value = figure.value
    for _ in range(MOST_TENS):
        value = value * TEN if beyond == "less" else value / TEN
        if (low is None or value >= low) and (high is None or value <= high):
            return value
    # no shift of the point makes it usual: the nearest that is
    end = usual.end(beyond)
    return convert(end.value, end.unit, figure.unit)
