"""A computed number keeps what it came from, and nothing is computed from what is withheld."""

import dataclasses

import pytest

from generator.working import (
    SET_BY_OWNER,
    Formula,
    Given,
    Quantity,
    Reference,
    Withheld,
    flat_inputs,
    formula,
    walk,
)


def times(a_ac: float, b_lb_per_ac: float) -> float:
    return a_ac * b_lb_per_ac


def added(parts: list[float]) -> float:
    return sum(parts)


TIMES = Formula(times, "lb", "a_ac * b_lb_per_ac", "Product of two", "arithmetic")
ADDED = Formula(added, "lb", "total(parts)", "Sum", "arithmetic")


def typed(name: str, value: float, unit: str) -> Given:
    return Given(name, value, unit, value, unit, "screens.yaml", 14, "page")


AREA = typed("area_ac", 3, "ac")
RATE = Reference("rate_lb_per_ac", 8, "lb_per_ac", "common_practice", "nowhere in particular")


def product(identity: str) -> Quantity:
    return TIMES(identity, a_ac=AREA, b_lb_per_ac=RATE)


def test_a_quantity_has_value_unit_formula_and_inputs() -> None:
    made = product("lane/2027/sow/seed_lb")
    assert made.value == 24
    assert made.unit == "lb"
    assert made.formula is TIMES
    assert made.inputs == (("a_ac", AREA), ("b_lb_per_ac", RATE))


def test_a_quantity_rests_on_quantities() -> None:
    made = ADDED("all", parts=(product("one"), product("two")))
    assert made.value == 48


def test_what_is_computed_cannot_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        product("one").value = 5  # type: ignore[misc]  # what the test forbids


def test_a_withheld_input_is_refused_by_name() -> None:
    with pytest.raises(TypeError, match="rate_lb_per_ac is withheld"):
        TIMES("one", a_ac=AREA, b_lb_per_ac=Withheld("rate_lb_per_ac", "lb_per_ac", SET_BY_OWNER))


def test_a_withheld_member_of_a_list_is_refused_by_name() -> None:
    parts = (product("two"), Withheld("price_usd", "usd", SET_BY_OWNER))
    with pytest.raises(TypeError, match="price_usd is withheld"):
        ADDED("one", parts=parts)


def test_a_wrong_name_is_refused() -> None:
    with pytest.raises(TypeError, match="b_lb_per_ac"):
        TIMES("one", a_ac=AREA)


def test_members_of_a_list_are_numbered_from_one() -> None:
    first, second = product("one"), product("two")
    made = ADDED("all", parts=(first, second))
    assert list(flat_inputs(made)) == [("parts[1]", first), ("parts[2]", second)]
    assert list(flat_inputs(first)) == [("a_ac", AREA), ("b_lb_per_ac", RATE)]


def test_walk_gives_each_quantity_once_outermost_first() -> None:
    low = product("low")
    left = TIMES("left", a_ac=low, b_lb_per_ac=RATE)
    right = ADDED("right", parts=(low, left))
    top = ADDED("top", parts=(left, right, low))
    assert [one.identity for one in walk(top)] == ["top", "left", "right", "low"]


def test_walk_of_a_number_that_rests_on_typed_ones_is_itself() -> None:
    low = product("low")
    assert list(walk(low)) == [low]


def halved_ft(width_ft: float) -> float:
    """Half of a width, in feet.

    Formula: width_ft
             / 2
    Valid for: a width that is known,
        however wide
    Source: half of a width (source key arithmetic)

    >>> halved_ft(6)
    3.0
    """
    return width_ft / 2


def test_a_formula_has_text_and_source_of_its_docstring_and_the_unit_of_its_name() -> None:
    made = formula(halved_ft, "Half of it", read_as="tape")
    assert made == Formula(halved_ft, "ft", "width_ft / 2", "Half of it", "arithmetic", "tape")
    assert formula(halved_ft, "Half of it", unit="in").unit == "in"


def without_words(width_ft: float) -> float:
    """Half of a width."""
    return width_ft / 2


def test_a_calculation_that_says_too_little_makes_no_formula() -> None:
    with pytest.raises(ValueError, match="without_words does not say"):
        formula(without_words, "Half of it", unit="ft")
    with pytest.raises(RuntimeError, match="times has no docstring"):
        formula(times, "Product of two")
