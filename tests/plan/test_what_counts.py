"""Each kind of entry, each thing it may leave out, each thing that weighs: held to the table."""

from itertools import product

import pytest

from tests.plan.what_counts import KINDS, LEFT_OUT, TABLE, WEIGHS, seen

ROWS = {(row["entry"], row["leaves_out"]): row for row in TABLE["rows"]}
COMBINATIONS = list(product(KINDS, LEFT_OUT, WEIGHS))


def test_every_combination_has_one_row_and_a_reason() -> None:
    assert set(ROWS) == set(product(KINDS, LEFT_OUT))
    assert len(TABLE["rows"]) == len(ROWS)
    assert set(TABLE["why"]) == set(LEFT_OUT)
    for row in TABLE["rows"]:
        assert set(row) - {"entry", "leaves_out"} == set(WEIGHS), row
        assert {row[name] for name in WEIGHS} <= {"counts", "asked", "nothing"}, row


@pytest.mark.parametrize("weighs", WEIGHS)
def test_each_thing_that_weighs_has_every_outcome(weighs: str) -> None:
    wanted = {"counts", "nothing"} if weighs == "times" else {"counts", "asked", "nothing"}
    assert {row[weighs] for row in ROWS.values()} == wanted


@pytest.mark.parametrize(("kind", "gap", "weighs"), COMBINATIONS)
def test_an_entry_weighs_as_the_table_says(kind: str, gap: str, weighs: str) -> None:
    assert seen(kind, gap, weighs) == ROWS[kind, gap][weighs], TABLE["why"][gap]
