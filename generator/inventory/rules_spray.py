"""Rules of herbicides, sprayers and measures."""

from collections.abc import Iterator

from generator.inventory.equipment import Sprayer
from generator.inventory.label import NO_KIND, Use
from generator.inventory.places import Partner, Work
from generator.inventory.problems import shown_value
from generator.inventory.rule import Broken, Rule
from generator.inventory.schema import Inventory
from generator.inventory.stock import Adjuvant, Product

_BY_HAND = ("hand_gun", "backpack")


def _works(inventory: Inventory) -> Iterator[Work]:
    for place in inventory.places():
        for planting in place.plantings:
            yield from planting.work


def _strengths(inventory: Inventory) -> Iterator[Broken]:
    for product in inventory.products:
        actives = product.label.actives if product.label else ()
        liquid = [active for active in actives if active.strength_lb_per_gal is not None]
        dry = [active for active in actives if active.strength_fraction is not None]
        for active in actives:
            if (active in liquid) == (active in dry):
                what = f"active {shown_value(active.active)} has no strength, or two"
                where = active.where_of("strength_fraction", "strength_lb_per_gal")
                yield Broken(where, what, "strength_lb_per_gal, or strength_pct of a dry one")
        # with no strength or two, told above, an active says nothing of the kind it has
        if liquid and dry and len(liquid) + len(dry) == len(actives):
            what = "one active is given by the gallon and another by weight"
            where = dry[0].where_of("strength_fraction")
            yield Broken(where, what, "all actives of a product in one kind of strength")


def _sprayer_parts(inventory: Inventory) -> Iterator[Broken]:
    for sprayer in inventory.sprayers:
        if sprayer.kind == "boom" and sprayer.nozzle_spacing_in is None:
            what = f"{shown_value(sprayer.id)} is a boom without nozzle_spacing_in"
            yield Broken(
                sprayer.where_of("kind"), what, "nozzle_spacing_in: inches between nozzles"
            )
        if sprayer.kind == "boomless" and sprayer.swath_ft is None:
            what = f"{shown_value(sprayer.id)} sprays without a boom and has no swath_ft"
            yield Broken(sprayer.where_of("kind"), what, "swath_ft: width of the pattern, in feet")


def _catch_tests(inventory: Inventory) -> Iterator[Broken]:
    for sprayer in inventory.sprayers:
        wanted = _wanted_of_a_test(sprayer)
        for test in sprayer.catch_tests:
            for name in wanted:
                if getattr(test, name) is None:
                    what = f"the catch test of a {_kind(sprayer)} leaves out {name}"
                    yield Broken(test.where, what, " and ".join(wanted))


def _wanted_of_a_test(sprayer: Sprayer) -> tuple[str, ...]:
    by_hand = sprayer.kind in _BY_HAND
    return ("covered_sq_ft",) if by_hand else ("caught_in_seconds", "speed_mph")


def _kind(sprayer: Sprayer) -> str:
    return sprayer.kind.replace("_", " ")


def _one_mark(inventory: Inventory) -> Iterator[Broken]:
    for measure in inventory.measures:
        if (measure.mark_fl_oz is None) == (measure.mark_oz_wt is None):
            what = f"measure {shown_value(measure.id)} has no mark, or two"
            where = measure.where_of("mark_oz_wt", "mark_fl_oz")
            yield Broken(where, what, "mark_fl_oz of a jug, or mark_oz_wt of a scale")


def _once_in_a_tank(inventory: Inventory) -> Iterator[Broken]:
    for work in _works(inventory):
        names = [work.product, *(partner.product for partner in work.partners)]
        for partner, name in zip(work.partners, names[1:], strict=True):
            if names.count(name) > 1:
                what = f"product {shown_value(str(name))} stands twice in one tank"
                yield Broken(
                    partner.where_of("product"), what, "each product once, with its whole rate"
                )
        if work.partners and work.product is None:
            where = work.where_of("partners")
            yield Broken(where, "partners without a product", "product: the first of them")


def _percent_for_spots(inventory: Inventory) -> Iterator[Broken]:
    for work in _works(inventory):
        entries: tuple[Work | Partner, ...] = (work, *work.partners)
        for entry in entries:
            if entry.mix_fraction is not None and work.method != "spot":
                what = "a percent mix is for spots alone"
                yield Broken(
                    entry.where_of("mix_fraction"), what, "a rate to an acre, or method: spot"
                )


def _one_form(inventory: Inventory) -> Iterator[Broken]:
    stock: tuple[Product | Adjuvant, ...] = (*inventory.products, *inventory.adjuvants)
    for kept in stock:
        liquid = kept.package_fl_oz is not None or kept.on_hand_fl_oz is not None
        dry = kept.package_oz_wt is not None or kept.on_hand_oz_wt is not None
        if liquid and dry:
            what = f"{shown_value(kept.id)} is counted by volume and by weight"
            where = kept.where_of("package_oz_wt", "on_hand_oz_wt")
            yield Broken(where, what, "package and on hand both by volume, or both by weight")


def _uses(inventory: Inventory) -> Iterator[Use]:
    for product in inventory.products:
        yield from product.label.uses if product.label is not None else ()


def _none_alone(inventory: Inventory) -> Iterator[Broken]:
    for use in _uses(inventory):
        for line in use.plant_back_days if isinstance(use.plant_back_days, tuple) else ():
            if NO_KIND in line.means and len(line.means) > 1:
                what = f"crop {shown_value(line.crop)} means none, and something too"
                yield Broken(
                    line.where_of("means"), what, "means: [none], or what it means without none"
                )


def _wait_once(inventory: Inventory) -> Iterator[Broken]:
    for use in _uses(inventory):
        listed = use.waiting_days if isinstance(use.waiting_days, tuple) else ()
        names = [wait.before for wait in listed]
        for number, wait in enumerate(listed):
            if wait.before in names[:number]:
                what = f"the wait before {wait.before} stands twice"
                yield Broken(
                    wait.where_of("before"),
                    what,
                    "each once for a use, with the longest of its days",
                )


SPRAY_RULES = (
    Rule("F330", "An active has one strength.", _strengths, alone=True),
    Rule("F331", "A sprayer says how wide it sprays.", _sprayer_parts, alone=True),
    Rule("F332", "A catch test holds what its kind of sprayer needs.", _catch_tests, alone=True),
    Rule("F333", "A measure has one kind of mark.", _one_mark, alone=True),
    Rule("F334", "A product goes into a tank once.", _once_in_a_tank, alone=True),
    Rule("F335", "A percent mix is for spots.", _percent_for_spots, alone=True),
    Rule("F336", "What is bought and what is on hand are counted alike.", _one_form, alone=True),
)
# Of the waits on a card; their codes come after all others.
WAIT_RULES = (
    Rule("F450", "A crop that means none of ours means nothing else.", _none_alone, alone=True),
    Rule("F451", "A use has one wait before a thing.", _wait_once, alone=True),
)
