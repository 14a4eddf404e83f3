"""What a plan stops and asks against cases worked out by hand, expected before it was made."""

from collections import Counter

import pytest

from tests.plan.by_hand import CLEAR, WORDS, Case, cases, plan_of, read_sum, words_of

CASES = cases()
FEWEST = 60
FEWEST_OF_A_THEME = 6
each_case = pytest.mark.parametrize("case", CASES, ids=[f"{one.theme}-{one.id}" for one in CASES])
each_sum = pytest.mark.parametrize(
    ("case", "line"),
    [(case, line) for case in CASES for line in case.sums],
    ids=[f"{case.id}-{number}" for case in CASES for number in range(len(case.sums))],
)
# What a sum must show where a case expects a word for sure, and the other way about.
OVER = {"over_one_time", "over_year", "too_often"}


@each_case
def test_a_plan_says_of_a_job_what_was_worked_out_by_hand(case: Case) -> None:
    plan = plan_of(case)
    said = {job: words_of(plan, job) for job in case.expect}
    assert said == dict(case.expect), case.working


@each_sum
def test_a_sum_is_right_and_shows_what_its_case_expects(case: Case, line: str) -> None:
    one = read_sum(line)
    assert one.holds
    if case.expected_words & OVER:
        assert one.relation == ">"
    elif "wait" in case.expected_words:
        assert one.relation == "<"
    elif not case.expected_words:
        assert one.relation in ("<=", ">=")


def test_what_a_sum_decides_has_its_sum() -> None:
    decided = [case for case in CASES if case.expected_words & (OVER | {"wait"})]
    assert decided
    assert [case.id for case in decided if not case.sums] == []


def test_the_cases_are_many_and_of_every_theme_and_word() -> None:
    assert len(CASES) >= FEWEST
    names = [case.id for case in CASES]
    assert [name for name, count in Counter(names).items() if count > 1] == []
    expected = {word for case in CASES for word in case.expected_words}
    assert expected == set(WORDS)
    for theme in {case.theme for case in CASES}:
        of_theme = [case for case in CASES if case.theme == theme]
        assert len(of_theme) >= FEWEST_OF_A_THEME, theme
        assert {bool(case.expected_words) for case in of_theme} == {True, False}, theme


def test_the_table_holds_each_finding_once() -> None:
    codes = [code for said_by in WORDS.values() for code in said_by]
    assert len(codes) == len(set(codes))
    assert CLEAR not in WORDS


@pytest.mark.parametrize("line", ["lb: 1 + 1 = 3 > 2", "lb: 1 + 1 = 2 > 2", "lb: 3 - 1 = 2 < 2"])
def test_a_sum_that_is_wrong_does_not_hold(line: str) -> None:
    assert not read_sum(line).holds


@pytest.mark.parametrize("line", ["lb: one + 1 = 2 > 1", "lb: 2 ** 2 = 4 > 1"])
def test_a_sum_in_another_form_is_not_read(line: str) -> None:
    with pytest.raises(ValueError, match="no sum"):
        read_sum(line)
