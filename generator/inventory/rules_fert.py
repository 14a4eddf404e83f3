"""Rules on soil tests, fertilizers, limes and water holes."""

from collections.abc import Iterator

from generator.inventory.ground import LimeNeed, WaterHole
from generator.inventory.places import PlantedGround, Planting
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.units import UNITS, convert
from generator.working import Given

SIZES = ("top_ft", "bottom_ft", "length_ft", "width_ft", "side_ft_per_ft")
SIZES_OF = {
    "round": ("top_ft", "bottom_ft"),
    "cone": ("top_ft",),
    "rectangle": ("length_ft", "width_ft", "side_ft_per_ft"),
}
# What a planting may name to be spread, and the operation of the step that spreads it.
SPREAD_BY = {"lime": "lime", "fertilizers": "fertilizer", "need": "fertilizer"}
# A grade in percent adds up to whole numbers; binary fractions do not always.
_ROUNDING = 1e-9


def _plantings(inventory: Inventory) -> Iterator[tuple[PlantedGround, Planting]]:
    for place in inventory.places():
        for planting in place.plantings:
            yield place, planting


def _lime_base(inventory: Inventory) -> Iterator[Broken]:
    for test in inventory.soil_tests:
        # a lab's 0 is none, whatever it counts
        if test.lime_need is not None and test.lime_need.amount_lb_per_ac.value > 0:
            yield from _base_faults(test.lime_need)


def _base_faults(need: LimeNeed) -> Iterator[Broken]:
    name = need.base.upper()
    if need.base != "enm":
        if need.base_fraction is None:
            yield Broken(
                need.where_of("base"),
                f"base {need.base} without the percent of {name} the lab reckons with",
                f"base_pct: the {name} printed beside the amount, as 100 or 90",
            )
    elif need.base_fraction is not None:
        what = "ENM is a weight; no percent goes with it"
        yield Broken(typed_at(need.base_fraction), what, "base: enm alone, or base cce or ecce")
    elif need.amount_lb_per_ac.typed_unit not in ("lb_per_ac", "kg_per_ha"):
        # what is asked for in tons is the lime itself, not its ENM
        unit = UNITS[need.amount_lb_per_ac.typed_unit].words
        yield Broken(
            typed_at(need.amount_lb_per_ac),
            f"ENM in {unit}",
            "pounds of ENM to an acre; for tons of lime, base cce or ecce and its percent",
        )


def _test_of_this_ground(inventory: Inventory) -> Iterator[Broken]:
    places = {test.id: test.places for test in inventory.soil_tests}
    for place, planting in _plantings(inventory):
        if planting.soil_test is not None and place.id not in places[planting.soil_test]:
            taken = ", ".join(places[planting.soil_test])
            yield Broken(
                planting.where_of("soil_test"),
                f"soil test {shown_value(planting.soil_test)} was taken on {taken}, not here",
                "a soil test whose places name this one",
            )


def _sizes_of_the_shape(inventory: Inventory) -> Iterator[Broken]:
    for hole in inventory.water_holes:
        wanted = SIZES_OF[hole.shape]
        for name in SIZES:
            size: Given | None = getattr(hole, name)
            if name in wanted and size is None:
                what = f"a {hole.shape} without {name}"
                yield Broken(hole.where_of("shape"), what, f"depth_ft, {', '.join(wanted)}")
            elif name not in wanted and size is not None:
                what = f"{size.name} on a {hole.shape}"
                yield Broken(typed_at(size), what, f"depth_ft, {', '.join(wanted)}")


def _a_hole_that_can_be(inventory: Inventory) -> Iterator[Broken]:
    for hole in inventory.water_holes:
        if hole.shape == "round" and hole.top_ft is not None and hole.bottom_ft is not None:
            if hole.bottom_ft.value > hole.top_ft.value:
                what = "the bottom is wider than the top, so the bank hangs over"
                yield Broken(typed_at(hole.bottom_ft), what, "a bottom no wider than the top")
        elif hole.shape == "rectangle" and _meets_above_the_bottom(hole):
            assert hole.side_ft_per_ft is not None
            what = "the sides meet above this depth"
            accepted = "a smaller depth, or steeper sides, measured at the hole"
            yield Broken(typed_at(hole.side_ft_per_ft), what, accepted)


def _meets_above_the_bottom(hole: WaterHole) -> bool:
    if hole.length_ft is None or hole.width_ft is None or hole.side_ft_per_ft is None:
        return False
    inward = 2 * hole.side_ft_per_ft.value * hole.depth_ft.value
    # sides that meet right at the depth still make a hole
    return inward > min(hole.length_ft.value, hole.width_ft.value)


def _grade_is_parts_of_a_whole(inventory: Inventory) -> Iterator[Broken]:
    for fertilizer in inventory.fertilizers:
        grade = (fertilizer.n_fraction, fertilizer.p2o5_fraction, fertilizer.k2o_fraction)
        percent = convert(sum(part.value for part in grade), "fraction", "pct")
        # a sum below 1 is a grade in parts of one, typed behind keys in percent
        if not 1 <= percent <= 100 + _ROUNDING:
            what = f"the three numbers of the grade add up to {percent:g} percent"
            accepted = "1 to 100 percent: 46 in n_pct, or 0.46 in n_fraction"
            yield Broken(typed_at(fertilizer.n_fraction), what, accepted)


def _lime_of_some_strength(inventory: Inventory) -> Iterator[Broken]:
    for lime in inventory.limes:
        stated = (lime.enm_lb_per_ton, lime.cce_fraction, lime.ecce_fraction)
        if all(figure is None for figure in stated):
            yield Broken(
                lime.where,
                "nothing says how strong this lime is",
                "enm_lb_per_ton, cce_pct or ecce_pct, as its seller states it",
            )


def _effective_is_no_more_than_pure(inventory: Inventory) -> Iterator[Broken]:
    for lime in inventory.limes:
        cce, ecce = lime.cce_fraction, lime.ecce_fraction
        if cce is not None and ecce is not None and ecce.value > cce.value:
            yield Broken(
                typed_at(ecce),
                "the ECCE is above the CCE",
                "ECCE is CCE less what is too coarse to work: at most the CCE",
            )


def _need_stated_once(inventory: Inventory) -> Iterator[Broken]:
    needs = {test.id: test.need for test in inventory.soil_tests}
    for _, planting in _plantings(inventory):
        on_test = needs[planting.soil_test] if planting.soil_test is not None else None
        if planting.need is not None and on_test is not None:
            yield Broken(
                planting.need.where,
                "the need is stated here and on the soil test",
                "the soil test alone; need: only where no test states it",
            )


def _each_fertilizer_once(inventory: Inventory) -> Iterator[Broken]:
    for _, planting in _plantings(inventory):
        for number, fertilizer in enumerate(planting.fertilizers):
            if fertilizer in planting.fertilizers[:number]:
                what = "a fertilizer is named twice in this planting"
                where = planting.where_of("fertilizers", number=number)
                yield Broken(where, what, "each fertilizer once")


def _a_step_to_spread_in(inventory: Inventory) -> Iterator[Broken]:
    for _, planting in _plantings(inventory):
        known = {step.does.puts_down for step in inventory.steps_of(planting)}
        names = [
            name
            for name, spread in SPREAD_BY.items()
            if getattr(planting, name) and spread not in known
        ]
        if names:
            named, spreading = ", ".join(names), ", ".join(_spreading_plans(inventory))
            yield Broken(
                planting.where_of(*names),
                f"{named} in a planting whose step plan {planting.steps} spreads nothing of it",
                f"{named} left out here; step plans that spread: {spreading}",
            )


def _spreading_plans(inventory: Inventory) -> list[str]:
    wanted = set(SPREAD_BY.values())
    return [
        plan.id
        for plan in inventory.plans().values()
        if wanted <= {step.does.puts_down for step in plan.steps}
    ]


FERT_RULES = (
    Rule("F340", "A lime need says what its figure counts.", _lime_base, alone=True),
    Rule("F341", "A soil test speaks for the ground it was taken on.", _test_of_this_ground),
    Rule("F342", "A water hole has the sizes of its shape.", _sizes_of_the_shape, alone=True),
    Rule("F343", "A water hole is one that can be dug.", _a_hole_that_can_be, alone=True),
    Rule("F344", "A grade is parts of one whole.", _grade_is_parts_of_a_whole, alone=True),
    Rule("F345", "A lime states how strong it is.", _lime_of_some_strength, alone=True),
    Rule("F346", "A need is stated in one place.", _need_stated_once),
    Rule(
        "F347",
        "Fineness takes from lime and adds nothing.",
        _effective_is_no_more_than_pure,
        alone=True,
    ),
    Rule("F348", "A fertilizer's numbers are known by its id.", _each_fertilizer_once, alone=True),
    Rule("F349", "What is named to be spread has a step to be spread in.", _a_step_to_spread_in),
)
