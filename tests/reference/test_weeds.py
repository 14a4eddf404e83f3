"""The list of weeds: every word in it is known, and no way that harms a planting spares it."""

import re

import pytest

from generator.reference.library import planting_kinds, ways_of_working
from generator.reference.weeds import OTHER, Weed, weed_named, weeds

ALL = list(weeds().values())


def test_there_are_twenty_each_with_an_id_and_a_name_of_its_own() -> None:
    assert len(ALL) == 20
    assert len({one.name for one in ALL}) == 20
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", one.id) for one in ALL)


@pytest.mark.parametrize("weed", ALL, ids=lambda one: one.id)
def test_a_weed_is_told_in_words_we_know(weed: Weed) -> None:
    assert weed.cycle in ("annual", "biennial", "perennial")
    assert weed.form in ("grass", "broadleaf", "sedge")
    assert weed.works
    assert set(weed.works) <= ways_of_working().keys()
    assert weed.looks.endswith(".")
    assert weed.weak.endswith(".")
    assert weed.looks != weed.weak


@pytest.mark.parametrize("weed", ALL, ids=lambda one: one.id)
@pytest.mark.parametrize("kind", planting_kinds())
def test_a_way_that_spares_a_kind_does_not_harm_it(weed: Weed, kind: str) -> None:
    spares = weed.spares(frozenset({kind}))
    assert set(spares) <= set(weed.works) - {OTHER}
    assert all(kind not in ways_of_working()[one].harms for one in spares)


def test_what_kills_grass_is_never_for_grass_nor_growth_regulators_for_broad_leaves() -> None:
    """By works.yaml: grass killers harm native grass, growth regulators legumes and clover."""
    for weed in ALL:
        assert "grass_killer" not in weed.spares(frozenset({"native_grass"}))
        assert "auxin" not in weed.spares(frozenset({"native_grass", "native_legume"}))
        assert ("auxin" in weed.works) == (weed.form == "broadleaf")
        assert ("grass_killer" in weed.works) == (weed.form == "grass")


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("giant-foxtail", "giant-foxtail"),
        (" Giant FOXTAIL ", "giant-foxtail"),
        ("foxtail", None),
        ("", None),
    ],
)
def test_an_owner_s_words_mean_a_weed_or_none(typed: str, found: str | None) -> None:
    weed = weed_named(typed)
    assert (weed.id if weed is not None else None) == found
