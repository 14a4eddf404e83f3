"""Every number has its unit in its name, and a formula's unit is the one its function names."""

import ast
from collections.abc import Iterator

import pytest

from generator.units import UNITS, split_suffix
from generator.working import Formula
from tests.compute.formulas import FORMULAS
from tests.structure.modules import Module, module_of, modules

CHECKED = ("working", "geometry", "compute", "plan", "book")

# What has no unit of its own, each with the reason.
WITHOUT_SUFFIX = {
    "working.Given.value": "its unit stands in the field beside it",
    "working.Given.typed": "its unit stands in the field beside it",
    "working.Measured.value": "its unit stands in the field beside it",
    "working.Reference.value": "its unit stands in the field beside it",
    "working.Quantity.value": "its unit stands in the field beside it",
    "working.mean.values": "in the unit of the result",
    "working.number_of.values": "in any unit, since they are counted alone",
    "working.total.values": "in the unit of the result",
    "working.whole_up.value": "a count, or a length in marks of a measure",
    "working.whole_down.value": "a count, or a length in marks of a measure",
    "working.replay.values": "each in the unit its own name says",
    "working._evaluate.values": "each in the unit its own name says",
    "compute.buying.packages_count.needed": "all three in the unit of the call",
    "compute.buying.packages_count.on_hand": "all three in the unit of the call",
    "compute.buying.packages_count.package_size": "all three in the unit of the call",
    "compute.buying.sum_of.parts": "in the unit of the sum",
    "compute.stock.counted_and_bought.counted": "all of a call in one unit",
    "compute.stock.counted_and_bought.bought": "all of a call in one unit",
    "compute.stock.left_after_use.had": "all of a call in one unit",
    "compute.stock.left_after_use.used": "all of a call in one unit",
    "compute.stock.still_needed.planned": "all of a call in one unit",
    "compute.stock.still_needed.used": "all of a call in one unit",
    "compute.buying.none_count.needed": "both in the unit of the call",
    "compute.buying.none_count.on_hand": "both in the unit of the call",
    "compute.buying.loose_cost_usd.amount": "in the unit of package_size",
    "compute.buying.loose_cost_usd.package_size": "in the unit of amount",
    "compute.stock.there.on_hand": "in the unit of the result",
    "compute.stock.short_of.needed": "all of a call in one unit",
    "compute.stock.short_of.on_hand": "all of a call in one unit",
    "compute.stock.short_of.package_size": "all of a call in one unit",
    "compute.stock.short_by.needed": "all of a call in one unit",
    "compute.stock.short_by.on_hand": "all of a call in one unit",
    "compute.stock.left_of_loose.on_hand": "all of a call in one unit",
    "compute.stock.left_of_loose.bought": "all of a call in one unit",
    "compute.stock.left_of_loose.needed": "all of a call in one unit",
    "compute.stock.left_over.on_hand": "all of a call in one unit",
    "compute.stock.left_over.package_size": "all of a call in one unit",
    "compute.stock.left_over.needed": "all of a call in one unit",
    "compute.sun._power_series.coefficients": "in the unit of the result",
    "compute.sun._power_series.centuries": "a count of centuries, used for nothing else",
    "compute.money.used_usd.amount": "in the unit of package_size",
    "compute.money.used_usd.package_size": "in the unit of amount",
    "compute.money.part_of.whole": "dollars or days, and so is the part",
    "compute.money.part_of.part": "in the unit of together",
    "compute.money.part_of.together": "in the unit of part",
    "book.cells.decimals.value": "in the unit of its column",
    "book.model.SearchRecord.boost": "a weight among hits, without a unit",
    "book.charts.columns.ColumnPart.value": "in the unit of its picture",
    "book.charts.scale.scale_top.highest": "in the unit of the picture",
    "book.charts.scale.level_step.highest": "in the unit of the picture",
    "book.charts.scale.levels.top": "in the unit of the picture",
    "book.charts.scale.down_px.value": "in the unit of the picture",
    "book.charts.scale.down_px.top": "in the unit of the picture",
    "book.charts.columns._column.top": "in the unit of the picture",
    "book.charts.ground_frame.Frame.px_per_ft": "pixels to a foot, of drawings alone",
    "geometry.thin.corners_kept.off": "in the unit of the spots",
    "plan.land.drawn.fewer_corners.off": "in the unit of the line",
    "plan.land.measured._measured.value": "its unit stands in the argument beside it",
    "geometry.heights.HeightGrid.cell_size": "degrees, or meters of a UTM zone",
    "plan.placed.measured.measured_on.value": "its unit stands in the argument beside it",
    "plan.placed.slopes._measured.value": "its unit stands in the argument beside it",
    "plan.land.left_drawn._figure.value": "its unit stands in the argument beside it",
    "plan.model.work.Pour.low": "in the unit of the rate beside it",
    "plan.model.work.Pour.most": "in the unit of the rate beside it",
    "plan.runs.together.InCommon.rates": "each with its unit beside it",
    "plan.runs.together._rounded.rate": "in the unit of the rate",
    "plan.money.packages.is_short.missing": "in the unit of the thing",
    "plan.money.packages.is_let_go.missing": "in the unit of the thing",
    "plan.spraying.tank.holds.given": "in the unit of the rate",
}
# Functions whose result is in the unit of what they are given.
WITHOUT_UNIT = {
    "compute.buying.sum_of": "in the unit of the parts",
    "compute.money.part_of": "in the unit of the whole",
    "compute.stock.counted_and_bought": "in the unit of the call",
    "compute.stock.left_after_use": "in the unit of the call",
    "compute.stock.still_needed": "in the unit of the call",
    "compute.stock.left_over": "in the unit of the call",
    "compute.stock.there": "in the unit of the call",
    "compute.stock.short_of": "in the unit of the call",
    "compute.stock.short_by": "in the unit of the call",
    "compute.stock.left_of_loose": "in the unit of the call",
}


# A point is a pair of degrees, north and east, as in the property folder.
POINT = "lat_lon"
# Lengths on a page, in pixels, of pictures alone.
PIXELS = "px"


def unit_of(name: str) -> str | None:
    """The unit a name ends in; none where a `per` before it is part of no legal unit.

    `price_usd_per_lb` ends in `lb` but is no weight.
    """
    if name in UNITS:
        return name
    for own in (POINT, PIXELS):
        if name.endswith(f"_{own}"):
            return own
    split = split_suffix(name)
    return None if split is None or split[0].endswith("_per") else split[1]


def numbers(module: Module) -> Iterator[tuple[int, str]]:
    """Every parameter and field of floats, with its line and its full name."""
    yield from _numbers(module.tree, module.name)


def _numbers(parent: ast.AST, path: str) -> Iterator[tuple[int, str]]:
    for node in ast.iter_child_nodes(parent):
        inside = path
        if isinstance(node, ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
            inside = f"{path}.{node.name}"
        if isinstance(node, ast.arg) and _is_number(node.annotation):
            yield node.lineno, f"{path}.{node.arg}"
        if isinstance(node, ast.AnnAssign) and _is_number(node.annotation):
            yield node.lineno, f"{path}.{ast.unparse(node.target)}"
        yield from _numbers(node, inside)


def _is_number(annotation: ast.expr | None) -> bool:
    """Whether a float stands in the annotation, other than in what a function takes or gives."""
    if annotation is None:
        return False
    if isinstance(annotation, ast.Constant) and isinstance(annotation.value, str):
        return _is_number(ast.parse(annotation.value, mode="eval").body)
    if isinstance(annotation, ast.Subscript) and ast.unparse(annotation.value) == "Callable":
        return False
    if isinstance(annotation, ast.Name):
        return annotation.id == "float"
    return any(
        _is_number(part) for part in ast.iter_child_nodes(annotation) if isinstance(part, ast.expr)
    )


def suffix_faults(module: Module) -> Iterator[str]:
    """Numbers whose name says no unit and that stand on no list."""
    for line, name in numbers(module):
        if name not in WITHOUT_SUFFIX and unit_of(name.rsplit(".", 1)[1]) is None:
            yield f"{module.file}:{line} {name} ends in no unit"


def test_every_number_ends_in_its_unit() -> None:
    assert [fault for module in modules(*CHECKED) for fault in suffix_faults(module)] == []


def test_the_list_of_numbers_without_a_unit_holds_nothing_else() -> None:
    found = {name for module in modules(*CHECKED) for _, name in numbers(module)}
    assert WITHOUT_SUFFIX.keys() - found == set()
    assert [name for name in WITHOUT_SUFFIX if unit_of(name.rsplit(".", 1)[1])] == []


@pytest.mark.parametrize("name", FORMULAS)
def test_a_formula_gives_the_unit_its_function_names(name: str) -> None:
    formula = FORMULAS[name]
    assert formula.unit in UNITS
    if function_name(formula) not in WITHOUT_UNIT:
        assert unit_of(formula.function.__name__) == formula.unit


def function_name(formula: Formula) -> str:
    """A formula's function as `compute.seed.bulk_seed_lb`."""
    module = formula.function.__module__.removeprefix("generator.")
    return f"{module}.{formula.function.__name__}"


@pytest.mark.parametrize(
    "text",
    [
        "def f(area: float): ...",
        "def f(price_usd_per_lb: float): ...",
        "def f(*, width: float | None = None): ...",
        "def f(caught: Sequence[float]): ...",
        "def f(caught: 'list[float]'): ...",
        "class Strip:\n    width: float",
        "def f():\n    def g(width: float): ...",
        "rates: dict[str, float] = {}",
    ],
)
def test_a_number_without_a_unit_is_named(text: str) -> None:
    (fault,) = suffix_faults(module_of("compute.seed", text))
    assert fault.startswith("generator/compute/seed.py:")
    assert fault.endswith("ends in no unit")


@pytest.mark.parametrize(
    "text",
    [
        "def f(area_ac: float, rate_pls_lb_per_ac: float): ...",
        "def f(spray_gal: float, loads_count: float, live_seeds_per_lb: float): ...",
        "def f(name: str, step: Callable[[float], float]): ...",
        "class Strip:\n    width_ft: float | None",
        "class Plan:\n    gate_lat_lon: tuple[float, float] | None",
    ],
)
def test_a_number_with_a_unit_passes(text: str) -> None:
    assert list(suffix_faults(module_of("compute.seed", text))) == []
