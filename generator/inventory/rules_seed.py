"""Rules of seed: rates, mixtures, tags, catch tests of spreaders and drills."""

import math
from collections.abc import Iterator

from generator.inventory.drill import Drill, DrillTest
from generator.inventory.equipment import SpreaderTest
from generator.inventory.places import Planting
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.units import convert
from generator.working import Given

# Parts typed in percent come back as binary fractions a hair off.
_ROUNDING = 1e-9
ONE_RATE = "rate_pls_lb_per_ac or rate_seeds_per_sq_ft, or a share of mix_rate_pls_lb_per_ac"


def _plantings(inventory: Inventory) -> Iterator[Planting]:
    for place in inventory.places():
        yield from place.plantings


def _one_seed_rate(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        for seed in planting.seed:
            rates = (seed.rate_pls_lb_per_ac, seed.rate_seeds_per_sq_ft, seed.share_fraction)
            typed = [rate for rate in rates if rate is not None]
            if len(typed) != 1:
                much = "no rate" if not typed else "more than one rate"
                where = typed_at(typed[1]) if typed else seed.where
                yield Broken(where, f"lot {shown_value(seed.lot)} has {much}", ONE_RATE)


def _seeds_counted(inventory: Inventory) -> Iterator[Broken]:
    lots = {lot.id: lot for lot in inventory.lots}
    for planting in _plantings(inventory):
        for seed in planting.seed:
            if seed.rate_seeds_per_sq_ft is not None and lots[seed.lot].live_seeds_per_lb is None:
                yield Broken(
                    typed_at(seed.rate_seeds_per_sq_ft),
                    f"a rate in seeds, and lot {shown_value(seed.lot)} has no live_seeds_per_lb",
                    "live_seeds_per_lb on the lot, from its tag or the seller",
                )


def _whole_mixture(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        shares = [seed.share_fraction for seed in planting.seed if seed.share_fraction is not None]
        mixed = planting.mix_rate_pls_lb_per_ac
        if mixed is None and shares:
            what = "a share of a mixture, and the planting has no rate of the mixture"
            yield Broken(typed_at(shares[0]), what, "mix_rate_pls_lb_per_ac on the planting")
        elif mixed is not None and len(shares) < len(planting.seed):
            what = "a rate of the mixture, and not every seed has its share"
            yield Broken(typed_at(mixed), what, "share_pct for every seed, and no other rate")
        elif mixed is not None and not _whole(shares):
            together = convert(math.fsum(share.value for share in shares), "fraction", "pct")
            what = f"the shares of the mixture add up to {together:g} percent"
            yield Broken(typed_at(mixed), what, "shares by weight that add up to 100 percent")


def _whole(shares: list[Given]) -> bool:
    return abs(math.fsum(share.value for share in shares) - 1) <= _ROUNDING


def _tag_parts(inventory: Inventory) -> Iterator[Broken]:
    for lot in inventory.lots:
        tag = lot.tag
        others = (tag.other_crop_fraction, tag.weed_fraction, tag.inert_fraction)
        parts = [tag.purity_fraction, *(part for part in others if part is not None)]
        together = math.fsum(part.value for part in parts)
        # at most the whole: a tag need not print every part
        if len(parts) > 1 and together > 1 + _ROUNDING:
            percent = convert(together, "fraction", "pct")
            yield Broken(
                typed_at(parts[1]),
                f"pure seed, other crop, weed seed and inert matter add up to {percent:g} percent",
                "parts of one bag: together at most 100 percent",
            )


def _weighed(inventory: Inventory) -> Iterator[Broken]:
    for spreader in inventory.spreaders:
        for test in spreader.catch_tests:
            what = _weighing_fault(test)
            if what:
                where = test.where_of("left_lb", "put_in_lb", "caught_lb")
                yield Broken(where, what, "caught_lb, or put_in_lb with left_lb (0 if run out)")


def _weighing_fault(test: SpreaderTest) -> str:
    run_out = (test.put_in_lb, test.left_lb)
    if (test.caught_lb is None) == (run_out == (None, None)):
        return "what was put down is given twice, or not at all"
    if test.caught_lb is None and None in run_out:
        return "of what was put in and what was left, one is missing"
    put_in, left = run_out
    if put_in is not None and left is not None and left.value >= put_in.value:
        return "nothing was put down: as much was left as was put in"
    return ""


def _one_machine(inventory: Inventory) -> Iterator[Broken]:
    for planting in _plantings(inventory):
        sown = {step.id: step for step in inventory.steps_of(planting) if step.does.sows}
        for work in planting.work:
            named = [machine for machine in (work.spreader, work.drill) if machine is not None]
            if work.step not in sown:
                continue
            if len(named) > 1:
                what = "a spreader and a drill for one sowing"
                yield Broken(work.where_of("drill"), what, "one of them")
            elif sown[work.step].timing != "at_sowing":
                continue  # seed is thrown again onto what was drilled, and the other way about
            elif named and (work.drill is not None) != (planting.method == "drill"):
                what = f"method {planting.method} does not go with what sows here"
                where = work.where_of("spreader", "drill")
                yield Broken(where, what, "method: drill with drill:, else spreader:")


def _drill_tests(inventory: Inventory) -> Iterator[Broken]:
    for drill in inventory.drills:
        yield from _rows_whole(drill)
        for test in drill.catch_tests:
            what = _drill_fault(drill, test)
            if what:
                yield Broken(
                    test.where_of("wheel_turns", "distance_ft"),
                    what,
                    "distance_ft, or wheel_turns of a drill with wheel_circumference_ft",
                )


def _drill_fault(drill: Drill, test: DrillTest) -> str:
    if (test.distance_ft is None) == (test.wheel_turns is None):
        return "the ground of the test is given twice, or not at all"
    if test.wheel_turns is not None and drill.wheel_circumference_ft is None:
        return "turns of the wheel, and the drill has no wheel_circumference_ft"
    return ""


def _rows_whole(drill: Drill) -> Iterator[Broken]:
    counts = [drill.rows_count, *(test.rows_caught_count for test in drill.catch_tests)]
    for count in counts:
        if count.value != int(count.value) or count.value > drill.rows_count.value:
            what = f"{shown_value(count.value)} rows of {shown_value(drill.rows_count.value)}"
            yield Broken(typed_at(count), what, "a whole number, and no more than the drill has")


SEED_RULES = (
    Rule("F320", "A seed has one rate.", _one_seed_rate, alone=True),
    Rule("F321", "A rate in seeds needs the count of a pound.", _seeds_counted),
    Rule("F322", "A mixture is the sum of its shares.", _whole_mixture, alone=True),
    Rule("F323", "The parts of a bag are parts of one whole.", _tag_parts, alone=True),
    Rule("F324", "What a test put down is weighed once.", _weighed, alone=True),
    Rule("F325", "One machine sows, in the planting's way.", _one_machine),
    Rule("F326", "A drill's catch covers ground that is known.", _drill_tests, alone=True),
)
