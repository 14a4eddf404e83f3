"""Rules on things of the land: where each lies, in a form its kind can have."""

from collections.abc import Iterator

from generator.inventory.land import LandThing
from generator.inventory.problems import listed, shown_value
from generator.inventory.rule import Broken, Rule, typed_at
from generator.inventory.schema import Inventory
from generator.inventory.shapes_read import FIELD_OF, forms_it_takes
from generator.reference.land_kinds import land_kinds


def _one_form(inventory: Inventory) -> Iterator[Broken]:
    for thing in inventory.land:
        # beside a shape in a file the reader of files says what is typed too much
        if thing.shape is not None:
            continue
        typed = _typed_forms(thing)
        if not typed:
            keys = [FIELD_OF[form] for form in forms_it_takes(thing)]
            what = f"nothing says where {shown_value(thing.name)} lies"
            yield Broken(thing.where, what, f"{listed(keys)}; or shape, one in a file")
        elif len(typed) > 1:
            keys = [FIELD_OF[form] for form in typed]
            what = f"where it lies is typed {len(typed)} times: {listed(keys, 'and')}"
            yield Broken(thing.where_of(keys[1]), what, "one of them")


def _form_of_its_kind(inventory: Inventory) -> Iterator[Broken]:
    for thing in inventory.land:
        typed = _typed_forms(thing)
        # of what is typed twice the other rule tells
        if thing.shape is None and len(typed) == 1 and typed[0] not in forms_it_takes(thing):
            kind = land_kinds()[thing.kind].name
            keys = listed(FIELD_OF[form] for form in forms_it_takes(thing))
            what = f"a thing of the kind {kind} is no {typed[0]}"
            yield Broken(thing.where_of(FIELD_OF[typed[0]]), what, keys)


def _typed_forms(thing: LandThing) -> list[str]:
    return [form for form, field in FIELD_OF.items() if getattr(thing, field) is not None]


def _reach_of_its_form(inventory: Inventory) -> Iterator[Broken]:
    for thing in inventory.land:
        if len(_typed_forms(thing)) != 1:
            continue
        if thing.radius_ft is not None and thing.at_lat_lon is None:
            what = "a radius goes around a point, and this is none"
            yield Broken(typed_at(thing.radius_ft), what, "at_lat_lon, or no radius")
        if thing.width_ft is not None and thing.line_lat_lon is None:
            what = "a width is that of a line, and this is none"
            yield Broken(typed_at(thing.width_ft), what, "line_lat_lon, or no width")


LAND_RULES = (
    Rule("F500", "A thing of the land lies somewhere, said once.", _one_form, alone=True),
    Rule("F501", "A thing of the land is a point, a line or an outline as its kind is.",
         _form_of_its_kind, alone=True),
    Rule("F502", "A radius goes around a point, a width along a line.", _reach_of_its_form,
         alone=True),
)  # fmt: skip
