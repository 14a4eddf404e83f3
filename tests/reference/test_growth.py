"""Heights of growth.yaml against what their sources print, and what must hold between kinds.

Read in the sources, in feet: switchgrass 3 to 6 (NRCS, South Carolina) and 3 to 7 (Kentucky), big
bluestem 3 to 7 (Kentucky), indiangrass 3 to 8 (NRCS plant guide), eastern gamagrass 4 to 6
(Kentucky), its seed stalks 3 to 9 (Missouri), little bluestem 2 to 4 (Tennessee), Kanlow 6 to 8
(NRCS release), forage sorghum 6 to 15 (Virginia).
"""

import itertools

import pytest

from generator.reference.growth import (
    CURVES,
    Growth,
    growths,
    has_kinds,
    kind_growth,
    on_soil,
    species_growth,
)
from generator.reference.library import sources
from generator.working import Reference

PRINTED_FT = {
    "nrcs_sc_switchgrass": (3, 6),
    "uky_switchgrass": (3, 7),
    "uky_big_bluestem": (3, 7),
    "nrcs_indiangrass": (3, 8),
    "uky_gamagrass": (4, 6),
    "mu_gamagrass": (3, 9),
    "ut_native_grasses": (2, 4),
    "nrcs_kanlow": (6, 8),
    "va_forage_sorghum": (6, 15),
}
BY_ID = {one.id: one for one in growths()}
SOILS = (None, "poor", "ordinary", "good")


def full_heights() -> list[Reference]:
    return [one for growth in growths() for season in growth.full for one in season.values()]


@pytest.mark.parametrize("source", sorted(PRINTED_FT))
def test_a_height_with_a_source_is_an_end_or_the_middle_of_what_it_prints(source: str) -> None:
    low_ft, high_ft = PRINTED_FT[source]
    heights = [one for one in full_heights() if one.source == source]
    assert heights
    for one in heights:
        ends = {"lower end": low_ft, "upper end": high_ft, "middle": (low_ft + high_ft) / 2}
        (expected_ft,) = [feet for words, feet in ends.items() if words in one.locator]
        assert one.value == expected_ft * 12, (one.name, one.locator)


def test_every_other_height_says_that_it_was_not_read() -> None:
    others = {one.source for one in full_heights()} - set(PRINTED_FT)
    assert others == {"common_practice", "memory"}
    assert {sources()[one].trust for one in PRINTED_FT} == {"published"}


@pytest.mark.parametrize(
    ("season", "low_ft", "high_ft"), [(1, 40 / 12, 40 / 12), (2, 5, 6), (3, 7, 8), (9, 7, 8)]
)
def test_the_rule_of_thumb_is_the_high_curve_of_switchgrass_on_good_ground(
    season: int, low_ft: float, high_ft: float
) -> None:
    """Common practice on good ground: 40 in, then 5 to 6 ft, then 7 to 8 ft, kind not named."""
    unknown = BY_ID["switchgrass"]
    high = on_soil(unknown, unknown, "good").full_in(season, "high").value
    assert low_ft * 12 <= high <= high_ft * 12


@pytest.mark.parametrize("growth", growths(), ids=lambda one: one.id)
def test_curves_and_seasons_stand_in_order(growth: Growth) -> None:
    for season in growth.full:
        heights = [season[curve].value for curve in CURVES]
        assert heights == sorted(heights)
        assert heights[0] > 0
    for before, after in itertools.pairwise(growth.full):
        assert all(before[curve].value <= after[curve].value for curve in CURVES)
    shares = [growth.winter[curve].value for curve in CURVES]
    assert shares == sorted(shares)


@pytest.mark.parametrize("growth", growths(), ids=lambda one: one.id)
def test_better_soil_and_a_kind_that_is_known_never_lower_a_curve(growth: Growth) -> None:
    unknown = species_growth(growth.species)
    assert unknown is not None
    on_soils = [on_soil(growth, unknown, soil) for soil in SOILS]
    for lesser, better in itertools.pairwise(on_soils):
        for season, curve in itertools.product(range(1, 5), CURVES):
            low, high = (one.full_in(season, curve).value for one in (lesser, better))
            assert low <= high, (growth.id, season, curve)


def test_winter_leaves_what_common_practice_says() -> None:
    """Common practice: low 0.6, typical 0.85; an annual sorghum low 0.3."""
    shares = {one.id: [one.winter[curve].value for curve in CURVES] for one in growths()}
    assert shares.pop("tall_sorghum") == [0.3, 0.85, 1]
    assert set(map(tuple, shares.values())) == {(0.6, 0.85, 1)}


def test_only_switchgrass_has_kinds_and_the_ecotype_of_another_says_nothing() -> None:
    assert [one for one in {g.species for g in growths()} if has_kinds(one)] == ["switchgrass"]
    big = species_growth("big-bluestem")
    assert kind_growth("big-bluestem", "lowland", "Kanlow") == big
    assert kind_growth("sideoats-grama", None, None) is None
