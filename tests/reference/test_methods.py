"""How numbers are measured, and days of a record found, that no line of formula gives."""

from generator.compute import sun
from generator.geometry import geodesic, pieces
from generator.reference.library import methods, sources
from generator.units import split_suffix
from tests.compute.formulas import FUNCTIONS

OVER_DAYS = {name.rsplit(".", 1)[1]: one for name, one in FUNCTIONS.items()}


def test_a_method_is_that_of_a_function_of_its_name_and_says_how_after_which_source() -> None:
    for name, method in methods().items():
        found = (getattr(where, name, None) for where in (geodesic, pieces, sun))
        function = next(filter(None, found), None) or OVER_DAYS.get(name)
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
