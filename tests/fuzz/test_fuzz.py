"""A few damaged properties, and that what goes wrong with one is found."""

from pathlib import Path

import pytest

from generator.inventory.problems import Problem
from tests.fuzz import run, tried
from tests.fuzz.damage import damaged
from tests.fuzz.run import Kept, chunks, in_processes, outcome


def test_a_seed_makes_the_same_property_each_time() -> None:
    seeds = range(20)
    assert [damaged(one) for one in seeds] == [damaged(one) for one in seeds]
    assert len({tuple(damaged(one).done) for one in seeds}) > len(seeds) / 2


def test_a_few_end_in_a_plan_or_in_faults(tmp_path: Path) -> None:
    found = [outcome(seed, 1000, tmp_path) for seed in range(7000, 7010)]
    assert {one.get("reached") for one in found} == {"faults", "plan"}


def test_a_range_of_seeds_is_taken_in_the_same_parts() -> None:
    assert chunks(0, 600) == [range(250), range(250, 500), range(500, 600)]
    assert chunks(240, 260) == [range(240, 250), range(250, 260)]
    assert chunks(7, 8) == [range(7, 8)]


def test_what_is_raised_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(_: Path) -> None:
        raise ZeroDivisionError("as it happens")

    monkeypatch.setattr(tried, "load_inventory", broken)
    one = outcome(1, 1000, tmp_path)
    assert one["found"] == "ZeroDivisionError: as it happens"
    assert "as it happens" in one["trace"][-1]


def test_a_fault_that_is_no_sentence_is_found() -> None:
    with pytest.raises(AssertionError):
        tried._are_clear([Problem("a.yaml", 1, 1, "F201", "<class 'int'>", "a number")])
    with pytest.raises(AssertionError, match="no fault"):
        tried._are_clear([])


def test_a_range_goes_on_where_it_stopped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(run, "KEPT", tmp_path)
    first = Kept(0, 4, 15)
    first.add([{"seed": 0, "reached": "plan", "seconds": 0.5, "mib": 3}])
    first.add([{"seed": 2, "found": "KeyError: 'x'"}])
    again = Kept(0, 4, 15)
    assert (again.done, again.tally) == ({0, 2}, first.tally)
    assert again.told() == first.told()
    assert "1 were found wanting" in again.told()


def test_a_process_tells_of_every_seed_and_of_the_one_it_was_stopped_over(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def reached(seed: int, _every: int, _scratch: Path) -> dict[str, str]:
        while seed == 1:
            pass
        return {"reached": "plan"}

    monkeypatch.setattr(run, "MOST_S", 0.05)
    monkeypatch.setattr(run, "outcome", reached)
    told = [one for part in in_processes([range(3)], 15, 1) for one in part]
    assert [one["seed"] for one in told] == [0, 1, 2]
    assert [one.get("reached") for one in told] == ["plan", None, "plan"]
    assert told[1]["found"] == "the process was stopped: took over 0.05 s of the processor"
