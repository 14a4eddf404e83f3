"""Calculations give what their sources print, to half a unit of the last printed digit."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
import yaml

from generator.reference.library import sources
from generator.units import convert
from tests.compute.formulas import FORMULAS, FUNCTIONS

FOLDER = Path(__file__).parent
WITHOUT_SOURCE = yaml.safe_load((FOLDER / "without_source.yaml").read_text(encoding="utf-8"))
KINDS = {"published", "independent"}
TABLE_KEYS = {"kind", "source", "locator", "within", "because", "cases"}
CASE_KEYS = {"function", "inputs", "printed", "printed_in", "within", "because", "note"}


@dataclass(frozen=True)
class Case:
    """One printed answer: what is computed, from what, and how near it must come."""

    table: str
    kind: str
    source: str
    function: str
    inputs: dict[str, Any]
    printed: str
    printed_in: str | None
    within: float | None
    because: str | None

    @property
    def tolerance(self) -> float:
        return half_a_unit(self.printed) if self.within is None else self.within


def half_a_unit(printed: str) -> float:
    """Half a unit of the last digit of a number as printed."""
    exponent = Decimal(printed).as_tuple().exponent
    assert isinstance(exponent, int)
    return float(Decimal((0, (5,), exponent - 1)))


def cases_of(table: str, entries: list[dict[str, Any]]) -> Iterator[Case]:
    """The cases of one file; a key that none of them has is refused."""
    for entry in entries:
        assert entry.keys() <= TABLE_KEYS, f"{table}: {entry.keys() - TABLE_KEYS}"
        for case in entry["cases"]:
            assert case.keys() <= CASE_KEYS, f"{table}: {case.keys() - CASE_KEYS}"
            yield Case(
                table,
                entry["kind"],
                entry["source"],
                case["function"],
                case["inputs"],
                case["printed"],
                case.get("printed_in"),
                case.get("within", entry.get("within")),
                case.get("because", entry.get("because")),
            )


def all_cases() -> list[Case]:
    return [
        case
        for path in sorted(FOLDER.glob("*.yaml"))
        if path.name != "without_source.yaml"
        for case in cases_of(path.name, yaml.safe_load(path.read_text(encoding="utf-8")))
    ]


CASES = all_cases()


def names_of(cases: list[Case]) -> list[str]:
    return [
        f"{one.source}-{one.function.rsplit('.', 1)[1]}-{number}"
        for number, one in enumerate(cases)
    ]


def computed(case: Case) -> float:
    """What the function gives, in the unit the source prints."""
    function = FUNCTIONS[case.function]
    value = function(**case.inputs)
    if case.printed_in is None:
        return value
    unit = next(one.unit for one in FORMULAS.values() if one.function is function)
    return convert(value, unit, case.printed_in)


def agrees(case: Case) -> bool:
    """Whether the answer rounds to what is printed; exactly half a unit off still does."""
    return abs(computed(case) - float(case.printed)) <= case.tolerance * (1 + 1e-9)


def unaccounted(functions: set[str], tested: set[str], listed: set[str]) -> list[str]:
    """What is wrong with the two lists: functions on neither or on both, names of none."""
    return [
        *(f"{name} has no case and no reason" for name in sorted(functions - tested - listed)),
        *(f"{name} has a case and a reason for none" for name in sorted(tested & listed)),
        *(f"{name} is no public calculation" for name in sorted((tested | listed) - functions)),
    ]


@pytest.mark.parametrize("case", CASES, ids=names_of(CASES))
def test_the_printed_answer(case: Case) -> None:
    assert agrees(case), f"{case.printed} printed, {computed(case)} computed"


@pytest.mark.parametrize("case", CASES, ids=names_of(CASES))
def test_a_case_says_where_it_is_from(case: Case) -> None:
    assert case.kind in KINDS
    assert case.source in sources()
    assert (case.within is None) == (case.because is None)
    if case.kind == "published":
        assert sources()[case.source].trust == "published"


def test_no_source_is_asked_the_same_thing_over_and_over() -> None:
    published = [case for case in CASES if case.kind == "published"]
    asked = Counter((case.function, case.source) for case in published)
    assert {pair: count for pair, count in asked.items() if count > 4} == {}
    assert len(published) >= 70


def test_every_calculation_is_accounted_for() -> None:
    tested = {case.function for case in CASES}
    print("Calculations without a published or independent case:")
    for name, reason in WITHOUT_SOURCE.items():
        print(f"  {name}: {reason}")
    assert unaccounted(set(FUNCTIONS), tested, set(WITHOUT_SOURCE)) == []
    assert all(WITHOUT_SOURCE.values())


def test_the_lists_are_compared() -> None:
    assert unaccounted({"a", "b", "c"}, {"b", "d"}, {"b"}) == [
        "a has no case and no reason",
        "c has no case and no reason",
        "b has a case and a reason for none",
        "d is no public calculation",
    ]


@pytest.mark.parametrize(
    ("printed", "half"),
    [("20", 0.5), ("0.125", 0.0005), ("3.90", 0.005), ("1.0", 0.05), ("111450", 0.5)],
)
def test_half_a_unit_of_the_last_digit(printed: str, half: float) -> None:
    assert half_a_unit(printed) == half


def carrier_case(printed: str) -> Case:
    # One web page prints 20 for 32 oz in 163 ft with nozzles 20 in apart. At 3 mph, 264 ft in a
    # minute, 163 ft take 37.05 s: 51.83 oz or 0.4049 gal in a minute.
    inputs = {"flow_gal_per_minute": 0.4049, "speed_mph": 3, "nozzle_spacing_in": 20}
    function = "compute.spray.carrier_gal_per_ac"
    return Case("here", "published", "none", function, inputs, printed, None, None, None)


def test_a_misprint_is_refused() -> None:
    """Twice the ground makes half the rate: 40.1 is right, and the printed 20 is not."""
    assert agrees(carrier_case("40.1"))
    assert not agrees(carrier_case("20"))
