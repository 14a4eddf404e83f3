"""The changes of code, and what is made of them: on a few lines, and on one small module whole."""

import ast
import importlib
import sys
import time
import types
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.mutants import judged
from tests.mutants.changes import Change, Key, changes_of
from tests.mutants.children import in_children
from tests.mutants.in_place import put, put_tree
from tests.mutants.judged import listed, told
from tests.mutants.reach import WATCH, Watch, watched
from tests.mutants.targets import COUNTED, EXPLAINED, path_of
from tests.structure.test_calculations import doctests_of, failures_of

TEXT = '''
import datetime
LIMIT = 5
HALF = LIMIT / 2

def over(days: int = 3) -> bool | None:
    """Say so."""
    assert days < 100
    return days > LIMIT and days != 7

def last(day: datetime.date, wait: int) -> datetime.date:
    if not wait:
        return day
    return day + datetime.timedelta(days=wait)

def half() -> float:
    return HALF
'''
TREE = ast.parse(TEXT)


@pytest.fixture
def module() -> Iterator[types.ModuleType]:
    """A module made from the text, under a name of its own."""
    made = types.ModuleType("tests.mutants.made")
    made.__dict__["__file__"] = "made.py"
    exec(compile(TEXT, "made.py", "exec"), made.__dict__)
    sys.modules[made.__name__] = made
    yield made
    del sys.modules[made.__name__]


def the(text: str) -> Change:
    """The change that reads like this."""
    (one,) = (one for one in changes_of("made", TREE) if str(one.key) == f"made {text}")
    return one


def test_every_change_of_a_few_lines() -> None:
    before = ast.dump(TREE)
    assert [str(one.key).removeprefix("made ") for one in changes_of("made", TREE)] == [
        ": LIMIT = 5  ->  LIMIT = 6",
        ": LIMIT = 5  ->  LIMIT = 4",
        ": LIMIT / 2  ->  LIMIT * 2",
        ": LIMIT / 2  ->  LIMIT / 3",
        ": LIMIT / 2  ->  LIMIT / 1",
        "over: days: int=3  ->  days: int=4",
        "over: days: int=3  ->  days: int=2",
        "over: return days > LIMIT and days != 7  ->  return None",
        "over: days > LIMIT and days != 7  ->  days > LIMIT or days != 7",
        "over: days > LIMIT  ->  days >= LIMIT",
        "over: days != 7  ->  days == 7",
        "over: days != 7  ->  days != 8",
        "over: days != 7  ->  days != 6",
        "last: not wait  ->  wait",
        "last: return day  ->  return None",
        "last: return day + datetime.timedelta(days=wait)  ->  return None",
        "last: day + datetime.timedelta(days=wait)  ->  day - datetime.timedelta(days=wait)",
        "last: datetime.timedelta(days=wait)  ->  datetime.timedelta(days=wait + 1)",
        "last: datetime.timedelta(days=wait)  ->  datetime.timedelta(days=wait - 1)",
        "half: return HALF  ->  return None",
    ]
    assert ast.dump(TREE) == before


def test_one_text_twice_in_a_function_is_told_apart() -> None:
    tree = ast.parse("def f(a, b):\n    if a < b:\n        b = 2\n    return a < b")
    bounds = [one.key for one in changes_of("made", tree) if one.key.after == "a <= b"]
    assert [one.nth for one in bounds] == [1, 2]


def test_a_change_acts_wherever_the_function_was_imported(module: types.ModuleType) -> None:
    over, last, half = module.over, module.last, module.half
    assert (over(5), over(6), over()) == (False, True, False)
    put(the("over: days > LIMIT  ->  days >= LIMIT"), TREE, module)
    assert (over(5), over(6)) == (True, True)
    put(the("over: days: int=3  ->  days: int=4"), TREE, module)
    assert over.__defaults__ == (4,)
    put(the("last: not wait  ->  wait"), TREE, module)
    assert last(1, 3) == 1
    # a value of the module, and what is worked out from it
    put(the(": LIMIT = 5  ->  LIMIT = 6"), TREE, module)
    assert (half(), module.LIMIT) == (3, 6)


def test_a_change_shows_only_where_it_would_make_a_difference(module: types.ModuleType) -> None:
    tree = ast.parse(TEXT)
    changes = list(changes_of("made", tree))
    watch = Watch()
    watched(tree, changes, watch)
    vars(module)[WATCH] = watch
    put_tree(tree, module)

    def shown(number: int) -> set[str]:
        watch.shown.clear()
        assert module.over(number) == (number > 5 and number != 7)
        return {str(changes[one].key).removeprefix("made over: ") for one in watch.shown}

    everywhere = {str(one.key).removeprefix("made ") for one in changes if one.names}
    everywhere |= {"days: int=3  ->  days: int=4", "days: int=3  ->  days: int=2"}
    everywhere |= {"return days > LIMIT and days != 7  ->  return None"}
    everywhere = {one.removeprefix("over: ") for one in everywhere}
    swapped = "days > LIMIT and days != 7  ->  days > LIMIT or days != 7"

    def of_over(number: int) -> set[str]:
        return {one.removeprefix("made ") for one in shown(number)} - everywhere

    assert of_over(4) == {swapped, "days != 7  ->  days == 7"}
    assert of_over(5) == {swapped, "days > LIMIT  ->  days >= LIMIT", "days != 7  ->  days == 7"}
    assert of_over(6) == {"days != 7  ->  days == 7", "days != 7  ->  days != 6"}
    assert "days != 7  ->  days != 8" not in of_over(6)
    assert "days != 7  ->  days != 8" in of_over(8)


def test_every_change_of_a_small_module_is_noticed_by_its_example(tmp_path: Path) -> None:
    name = "compute.waiting"
    module = importlib.import_module(f"generator.{name}")
    tree = ast.parse(path_of(name).read_text(encoding="utf-8"))

    def work(change: Change) -> int:
        put(change, tree, module)
        return sum(failures_of(example)[0] for example in doctests_of(name))

    changes = list(changes_of(name, tree))
    found = {change.key: answer for change, answer in in_children(
        changes, work, lambda _: 20, 2, tmp_path / "children")}  # fmt: skip
    assert set(found) == {one.key for one in changes}
    assert all(answer == 1 for answer in found.values())
    assert [failures_of(example)[0] for example in doctests_of(name)] == [0]


def test_a_child_that_breaks_or_does_not_end_answers_nothing(tmp_path: Path) -> None:
    def work(task: str) -> str:
        if task == "breaks":
            raise RuntimeError(task)
        while task == "goes on":
            time.process_time()
        return task

    tasks = ["breaks", "goes on", "ends"]
    answers = dict(in_children(tasks, work, lambda _: 0.1, 3, tmp_path / "children"))
    assert answers == {"breaks": None, "goes on": None, "ends": "ends"}


@pytest.mark.parametrize(
    ("explained", "survive", "ended"),
    [([], [], 0), ([0], [0], 0), ([], [0], 1), ([0], [], 1), ([0], [0, 1], 1), ([0, 1], [0], 1)],
)
def test_the_list_and_the_survivors_must_be_the_same(
    explained: list[int], survive: list[int], ended: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    changes = [
        one for one in changes_of("plan.after.waits", TREE) if one.key.function == "over"
    ]  # of a module whose survivors are explained
    reasons = {changes[one].key: "because" for one in explained}
    monkeypatch.setattr(judged, "listed", lambda: (reasons, {}))
    became = {
        str(one.key): (one, {"survived": {}} if number in survive else {"noticed": "a test"})
        for number, one in enumerate(changes)
    }
    assert told({"plan.after.waits": became}, whole=True) == ended


@pytest.mark.parametrize(
    ("counted", "ended"), [({}, 1), ({"plan.log.done": 1}, 0), ({"plan.log.done": 2}, 1)]
)
def test_of_other_modules_the_survivors_are_counted(
    counted: dict[str, int], ended: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = next(changes_of("plan.log.done", TREE))
    monkeypatch.setattr(judged, "listed", lambda: ({}, counted))
    became = {str(one.key): (one, {"survived": {}})}
    assert told({"plan.log.done": became}, whole=True) == ended


def test_the_list_names_changes_that_there_are() -> None:
    explained, counted = listed()
    there: set[Key] = set()
    for module in sorted({one.module for one in explained}):
        tree = ast.parse(path_of(module).read_text(encoding="utf-8"))
        there |= {one.key for one in changes_of(module, tree)}
    assert sorted(map(str, set(explained) - there)) == []
    assert {one.module for one in explained} <= set(EXPLAINED)
    assert set(counted) <= set(COUNTED)
    assert all(len(why.split()) > 3 for why in explained.values())
