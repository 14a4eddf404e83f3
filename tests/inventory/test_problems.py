"""Sentences for faults of content: what is wrong, with the value, and what is accepted."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.inventory import problems
from generator.inventory.problems import Problem, Sentence, not_a_number, shown_text, shown_value
from generator.inventory.yaml_positions import read_document


def test_a_problem_in_one_line() -> None:
    problem = Problem("screens.yaml", 7, 5, "F201", "what", "accepted")
    assert str(problem) == "screens.yaml:7:5 F201 what - accepted"
    assert Sentence("F201", "what", "accepted").at("screens.yaml", 7, 5) == problem


def test_problems_sort_by_place() -> None:
    late = Problem("a.yaml", 10, 1, "F001", "w", "a")
    early = Problem("a.yaml", 9, 40, "F900", "w", "a")
    assert sorted([late, early]) == [early, late]


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        ("1/4", '"1/4"'),
        (24, "24"),
        (30.0, "30"),
        (0.1, "0.1"),
        (True, "true"),
        (None, "nothing"),
        ({"id": 1, "name": 2}, "a group of keys (id, name)"),
        ([1, 2], "a list of 2"),
        ("a\u202eb\x00\nc", '"a<U+202E>b<U+0000><U+000A>c"'),
        ("x" * 100, '"' + "x" * 57 + '..."'),
    ],
)
def test_shown_value(value: object, shown: str) -> None:
    assert shown_value(value) == shown


@given(st.text())
def test_shown_text_is_one_short_line_without_hidden_characters(text: str) -> None:
    shown = shown_text(text)
    assert len(shown) <= 120
    assert shown.isprintable()


@pytest.mark.parametrize(
    ("text", "key", "cure"),
    [
        ("1/4", "depth_in", "write 0.25"),
        ("1-1/2", "depth_in", "write 1.5"),
        ("1 1/2", "depth_in", "write 1.5"),
        ("1/3", "depth_in", "write 0.3333"),
        ("1/100000", "depth_in", "write 0.00001"),
        ("1 1/300", "depth_in", "write 1.0033"),
        ("~12345678901234567890", "width_ft", "at most 18 digits"),
        ("$12345678901234567890", "price_usd", "at most 18 digits"),
        ("123456789012345678901234 ft", "width_ft", "at most 18 digits"),
        ("123456789012345678901234-5", "width_ft", "at most 18 digits"),
        ("½", "depth_in", "write 0.5"),
        ("1½", "depth_in", "write 1.5"),
        ("1,200", "length_ft", "write 1200"),
        ("12,345.50", "length_ft", "write 12345.5"),
        ("1_000", "length_ft", "write 1000"),
        ("0,5", "depth_in", "with a point: write 0.5"),
        ("$12.50", "price_usd", "write 12.5, without the sign"),
        ("$1,200", "price_usd", "write 1200, without the sign"),
        ("$1,200", "width_ft", "dollars go with a key that ends in _usd"),
        ("98%", "purity_pct", "write 98, without the sign"),
        ("98%", "purity_fraction", "write 0.98, without the sign"),
        ("30 ft", "width_ft", "write 30; the unit stands in the key"),
        ("30ft", "width_ft", "write 30; the unit stands in the key"),
        ("30'", "width_ft", "write 30; the unit stands in the key"),
        ("30 feet", "width_ft", "write 30; the unit stands in the key"),
        ("6 lb/ac", "rate_lb_per_ac", "write 6; the unit stands in the key"),
        ("~5", "width_ft", "one number: write 5"),
        ("about 5", "width_ft", "one number: write 5"),
        ("5+", "width_ft", "one number: write 5"),
        ("1e3", "length_ft", "write 1000"),
        ("8-10", "width_ft", "not a range: 8, 10 or one between"),
        ("8 to 10", "width_ft", "not a range"),
        ("8–10", "width_ft", "not a range"),
        ("0x1F", "width_ft", "everyday digits"),
        ("08", "width_ft", "write 8"),
        ("012", "width_ft", "write 12"),
        (".5", "width_ft", "write 0.5"),
        ("5.", "width_ft", "write 5"),
        ("+5", "width_ft", "write 5"),
        ("-.5", "width_ft", "write -0.5"),
        ("24", "width_ft", "24, without quotes"),
        ("２４", "width_ft", "write 24, in the digits 0 to 9"),
        ("٢٤", "width_ft", "write 24, in the digits 0 to 9"),
        ("−5", "low_f", "write -5"),
        ("NaN", "width_ft", "leave the line out"),
        (".inf", "width_ft", "leave the line out"),
        ("?", "width_ft", "leave the line out"),
        ("n/a", "width_ft", "leave the line out"),
        ("ten", "width_ft", "in digits: write 10"),
        ("half", "depth_in", "in digits: write 0.5"),
        ("12345678901234567890", "width_ft", "at most 18 digits"),
        ("1e99", "width_ft", "plain digits"),
        ("5:30", "width_ft", "a number in digits"),
        ("", "width_ft", "a number in digits"),
        ("wide", "width_ft", "a number in digits"),
    ],
)
def test_each_way_of_writing_a_number_has_its_cure(text: str, key: str, cure: str) -> None:
    sentence = not_a_number(text, key)
    assert shown_value(text) in sentence.what
    assert cure in sentence.accepted


@pytest.mark.parametrize(
    ("text", "key"), [("30 m", "width_ft"), ('24"', "width_ft"), ("2 qt", "rate_pt_per_ac")]
)
def test_a_number_in_another_unit_is_never_said_to_fit_the_key(text: str, key: str) -> None:
    accepted = not_a_number(text, key).accepted
    assert "write" not in accepted
    assert "in the unit the key names" in accepted


NUMBER_LIKE = st.text("0123456789.,-+/_ %$eEx'~½", max_size=9)


@given(NUMBER_LIKE | st.text(max_size=12))
def test_a_number_named_in_a_cure_is_read_as_a_number(text: str) -> None:
    written = re.search(r"write (-?[0-9.]+)", not_a_number(text, "width_ft").accepted)
    if written is None:
        return
    document, faults = read_document(f"k: {written[1]}\n".encode(), "f.yaml")
    assert faults == ()
    assert document is not None
    assert isinstance(document.data, dict)
    assert isinstance(document.data["k"], int | float)


def test_unknown_key_names_the_nearest_word_else_all() -> None:
    near = problems.unknown_key("widht_ft", ["id", "width_ft"])
    assert near.accepted == "did you mean width_ft?"
    far = problems.unknown_key("colour", ["id", "width_ft"])
    assert far.accepted == "id or width_ft"


def test_long_lists_are_cut() -> None:
    assert problems.listed([f"w{n}" for n in range(30)]).endswith("w11 and 18 more")


def test_unknown_reference_with_and_without_anything_known() -> None:
    assert "sg-26a" in problems.unknown_reference("sg-26b", "seed lot", ["sg-26a"]).accepted
    none_yet = problems.unknown_reference("sg-26b", "seed lot", [])
    assert none_yet.accepted == "the id of a seed lot; none is written down yet"
    assert none_yet.what == 'there is no seed lot "sg-26b"'


def test_missing_key_type_range_and_units() -> None:
    missing = problems.missing_key("width_ft", "the screen lane")
    assert missing.what == "the screen lane has no width_ft"
    assert problems.wrong_type([1, 2], "a number").what == "a list of 2 is not a number"
    assert problems.wrong_type(None, "text").what == "nothing stands after the key"
    assert '"26.1"' in problems.wrong_type(26.1, "text").accepted
    assert problems.out_of_range(-30, "ft", "greater than 0").what == "-30 ft is out of range"
    unit = problems.unknown_unit("width_feet", "width", ["width_ft", "width_m"])
    assert unit.accepted == "width_ft or width_m"
    assert '"feet"' in unit.what
    assert "width_ft and width_m" in problems.two_units(["width_ft", "width_m"]).what


def test_duplicate_id_choice_and_format() -> None:
    assert "screens.yaml:4" in problems.duplicate_id("lane", "screens.yaml:4").what
    assert "did you mean frost_seed?" in problems.bad_choice("frost_sed", ["frost_seed"]).accepted
    assert problems.bad_choice(3, ["a", "b"]).accepted == "a or b"
    assert "format 2" in problems.newer_format(2, 1).what


@pytest.mark.parametrize(
    ("value", "fragment"),
    [
        ("Lane 27", "as in lane-27"),
        ("Bob's Lane", "as in bobs-lane"),
        ("lane_27", "as in lane-27"),
        ("Öster", "as in oster"),
        ("con", "con-strip"),
        ("COM1", "com1-strip"),
        ("", "as in lane-27"),
        ("!!", "as in lane-27"),
    ],
)
def test_bad_ids(value: str, fragment: str) -> None:
    assert fragment in problems.bad_id(value).accepted


DATE, MONTH_DAY = "a date like 2027-03-14", "a month and day like 03-14"


@pytest.mark.parametrize(
    ("text", "wanted", "cure"),
    [
        ("3/14/2027", DATE, "write 2027-03-14"),
        ("14.3.2027", DATE, "write 2027-03-14"),
        ("2027-3-4", DATE, "write 2027-03-04"),
        ("2027/03/14", DATE, "write 2027-03-14"),
        ("14 March 2027", DATE, "write 2027-03-14"),
        ("March 14th, 2027", DATE, "write 2027-03-14"),
        ("3/4/2027", DATE, DATE),  # March or April: nobody can tell
        ("2027-02-30", DATE, DATE),
        ("March 14", DATE, DATE),
        ("spring", DATE, DATE),
        ("3/14", MONTH_DAY, "write 03-14"),
        ("2027-03-14", MONTH_DAY, "write 03-14"),
        ("14 March", MONTH_DAY, "write 03-14"),
    ],
)
def test_bad_dates(text: str, wanted: str, cure: str) -> None:
    assert problems.bad_date(text, wanted).accepted == cure


def test_a_day_that_no_month_has_is_called_so() -> None:
    assert "no day of the calendar" in problems.bad_date("2027-02-30", DATE).what
    assert "no day of the calendar" in problems.bad_date("2027-02-29", DATE).what
    assert "has no year" in problems.bad_date("March 14", DATE).what


@given(st.text(max_size=30))
def test_no_date_text_raises(text: str) -> None:
    assert problems.bad_date(text, DATE).code == "F212"
