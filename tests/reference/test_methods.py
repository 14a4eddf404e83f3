"""How numbers are measured, and days of a record found, that no line of formula gives."""

from generator.compute import sun
from generator.geometry import geodesic, heights, overlap, pieces, treated
from generator.reference.library import methods, sources
from generator.units import split_suffix
from tests.compute.formulas import FUNCTIONS

# What is part of a larger answer, by the function that gives it.
PART_OF = {
    "along_walk_ft": overlap.shortest_way,
    "apart_ft": overlap.shortest_way,
    "steepest_slope_pct": heights.fall_of,
    "falls_to_deg": heights.fall_of,
    "counted_twice_fraction": pieces.strip_piece,
    "left_fraction": treated.share_taken,
    "lost_fraction": treated.share_taken,
    "along_ft": treated.stretches_taken,
    "across_ft": treated.stretches_taken,
}
OVER_DAYS = {name.rsplit(".", 1)[1]: one for name, one in FUNCTIONS.items()}


def test_a_method_is_that_of_a_function_of_its_name_and_says_how_after_which_source() -> None:
    for name, method in methods().items():
        found = (getattr(where, name, None) for where in (geodesic, overlap, pieces, sun))
        function = next(filter(None, found), None) or OVER_DAYS.get(name) or PART_OF.get(name)
        assert callable(function)
        # a verdict has no unit
        says_whether = "bool" in str(function.__annotations__["return"])
        assert says_whether or split_suffix(name) is not None
        assert method.words[0].islower()
        assert method.source in sources()


def test_a_method_on_points_is_published() -> None:
    measured = [method for name, method in methods().items() if hasattr(geodesic, name)]
    assert len(measured) >= 3
    assert {sources()[method.source].trust for method in measured} == {"published"}
