"""Names of actives as labels print them: what is the same, what is asked, what is another.

The spellings are forms in which ingredient statements give an active: acid, salt, ester, a mark of
a footnote (common practice). Which actives are others is by their names alone.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.reference.active_names import (
    ActiveName,
    alike,
    is_a_class,
    key_of,
    known_to_be_hard_on,
    most_alike,
    works_known,
)

SAME = [
    ("made-up active A", "made up active A"),
    ("made-up active A", "Made-up active A, potassium salt"),
    ("made-up active A", "made-up active A (as the acid)"),
    ("made-up active A", "made\N{NON-BREAKING HYPHEN}up active A*"),
    ("glyphosate", "Glyphosate, isopropylamine salt"),
    ("glyphosate", "glyphosate in the form of its potassium salt"),
    ("2,4-D", "2,4-D, 2-ethylhexyl ester"),
    ("2,4-D", "2,4-D dimethylamine salt"),
    ("metsulfuron", "Metsulfuron-methyl"),
    ("triclopyr", "triclopyr, butoxyethyl ester"),
    ("imazapic", "IMAZAPIC ammonium salt"),
]
ASKED = [
    ("made-up active A", "active-A"),
    ("2,4-D", "2,4-DB"),
    ("MCPA", "MCPB"),
    ("metolachlor", "S-metolachlor"),
    ("glyphosate", "glyphosat"),
    ("fluazifop-P-butyl", "fluazifop"),
    ("all triazine herbicides", "atrazine"),
]
OTHERS = [
    ("glyphosate", "glufosinate"),
    ("imazapic", "imazapyr"),
    ("atrazine", "simazine"),
    ("clethodim", "sethoxydim"),
    ("2,4-D", "dicamba"),
]


@pytest.mark.parametrize(
    ("one", "other", "wanted"),
    [
        *((*pair, "same") for pair in SAME),
        *((*pair, "asked") for pair in ASKED),
        *((*pair, "other") for pair in OTHERS),
    ],
)
def test_names_are_compared_as_a_careful_person_does(one: str, other: str, wanted: str) -> None:
    assert alike(ActiveName(one), ActiveName(other)) == wanted
    assert alike(ActiveName(other), ActiveName(one)) == wanted


@pytest.mark.parametrize(("one", "other"), ASKED[:-1])
def test_what_the_owner_says_settles_it(one: str, other: str) -> None:
    assert alike(ActiveName(one), ActiveName(other, same_as=one)) == "same"
    assert alike(ActiveName(one), ActiveName(other, other_than=(one,))) == "other"
    assert alike(ActiveName(one, other_than=(other,)), ActiveName(other)) == "other"


def test_the_nearest_of_two_lists_decides() -> None:
    names = [ActiveName(one) for one in ("glyphosate", "2,4-D")]
    assert most_alike(names, [ActiveName("dicamba"), ActiveName("2,4-DB")]) == "asked"
    assert most_alike(names, [ActiveName("2,4-DB"), ActiveName("2,4-D*")]) == "same"
    assert most_alike(names, []) == "other"


def test_a_name_of_nothing_but_such_words_keeps_them() -> None:
    assert key_of("acid") == "acid"
    assert key_of("the salts") == "salts"
    assert is_a_class("other products of this family")
    assert not is_a_class("made-up active A")


def test_what_is_known_of_an_active_is_found_under_every_form_of_its_name() -> None:
    assert works_known("Glyphosate, potassium salt") == {"total_killer"}
    assert works_known("metsulfuron-methyl") == {"sulfonylurea", "soil_residual"}
    assert works_known("2,4 D") == {"auxin"}
    assert works_known("made-up active A") == frozenset()
    assert [one for one, _ in known_to_be_hard_on("Imazapic, ammonium salt")] == ["switchgrass"]
    # Big bluestem and little bluestem lived on in the trials of atrazine after seeding.
    assert {one for one, _ in known_to_be_hard_on("Atrazine")} == {"indiangrass", "sideoats-grama"}


@given(st.text(min_size=1, max_size=20))
def test_a_name_is_the_same_as_itself_whatever_stands_in_it(name: str) -> None:
    assert alike(ActiveName(name), ActiveName(f"  {name}*")) == "same"
