"""How numbers are measured that no line of formula gives."""

from generator.compute import sun
from generator.geometry import geodesic
from generator.reference.load import methods, sources
from generator.units import split_suffix


def test_a_method_measures_by_a_function_of_its_name_and_says_how_after_which_source() -> None:
    for name, method in methods().items():
        assert split_suffix(name) is not None
        assert callable(getattr(geodesic, name, None) or getattr(sun, name))
        assert method.words[0].islower()
        assert sources()[method.source].trust == "published"
