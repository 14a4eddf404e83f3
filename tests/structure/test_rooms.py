"""The rooms of plan/: each says what it is for, uses only rooms below it, and is not crowded."""

import ast
from collections import defaultdict
from collections.abc import Iterator

import pytest

from tests.structure.modules import PACKAGE, Module, module_of, modules
from tests.structure.test_layers import imports

# From the bottom up. What hides a walk, `space`, goes above `standing`.
ROOMS = (
    "model",
    "findings",
    "land",
    "placed",
    "season",
    "jobs",
    "log",
    "feeding",
    "readers",
    "standing",
    "walks",
    "winds",
    "days",
    "sits",
    "labels",
    "spraying",
    "sowing",
    "runs",
    "after",
    "doubts",
    "money",
    "usual",
    "views",
    "build",
)
MOST_FILES = 13
MOST_LINES = 400
SAYS = ("In:", "Out:", "Decided:", "Never:")


def room_of(name: str) -> str | None:
    """The room of a module, by its dotted name; None of one that is in none."""
    parts = name.split(".")
    return parts[1] if parts[0] == "plan" and len(parts) > 1 else None


def room_faults(module: Module) -> Iterator[str]:
    """Imports from a room above the module's own, and modules that stand in no room."""
    room = room_of(module.name)
    if room is None:
        return
    if room not in ROOMS:
        yield f"{module.file}:1 {module.name} stands in no room"
        return
    for line, name in imports(module):
        other = room_of(name.removeprefix("generator."))
        is_above = other in ROOMS and ROOMS.index(other) > ROOMS.index(room)
        if name.startswith("generator.plan.") and is_above:
            yield f"{module.file}:{line} {room} stands below {other} and may not import {name}"


def test_no_module_of_a_plan_imports_from_a_room_above_its_own() -> None:
    assert [fault for module in modules("plan") for fault in room_faults(module)] == []


def test_every_room_is_there_and_says_what_it_is_for() -> None:
    found = {
        path.name: path for path in (PACKAGE / "plan").iterdir() if (path / "__init__.py").is_file()
    }
    assert set(found) == set(ROOMS)
    for room, path in found.items():
        told = ast.get_docstring(ast.parse((path / "__init__.py").read_text(encoding="utf-8")))
        assert told is not None, room
        assert all(word in told for word in SAYS), room


def test_no_room_is_crowded_and_no_module_long() -> None:
    crowded = defaultdict(list)
    for module in modules("plan"):
        room = room_of(module.name)
        if room is not None and module.name != f"plan.{room}":
            crowded[room].append(module.name)
    assert {room: names for room, names in crowded.items() if len(names) > MOST_FILES} == {}
    lines = {
        path.relative_to(PACKAGE).as_posix(): len(path.read_text(encoding="utf-8").splitlines())
        for path in PACKAGE.rglob("*.py")
    }
    assert {name: count for name, count in lines.items() if count > MOST_LINES} == {}


def public_names(module: Module) -> Iterator[str]:
    """What a module defines at its top and others may import."""
    for node in module.tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            named = [node.name]
        elif isinstance(node, ast.Assign):
            named = [one.id for one in node.targets if isinstance(one, ast.Name)]
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            named = [node.target.id]
        else:
            named = []
        yield from (name for name in named if not name.startswith("_"))


def test_no_public_name_stands_in_two_modules() -> None:
    found = defaultdict(list)
    for module in modules():
        for name in dict.fromkeys(public_names(module)):
            found[name].append(module.name)
    assert {name: where for name, where in found.items() if len(where) > 1} == {}


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("plan.model.job", "from generator.plan.jobs.request import JobRequest", "stands below"),
        ("plan.labels.rates", "import generator.plan.spraying.tank", "stands below spraying"),
        ("plan.tank", "", "stands in no room"),
    ],
)
def test_a_wrong_room_is_named_with_file_and_line(name: str, text: str, said: str) -> None:
    (fault,) = room_faults(module_of(name, text))
    assert fault.startswith(f"generator/{name.replace('.', '/')}.py:1 ")
    assert said in fault


def test_a_right_room_and_its_public_names() -> None:
    text = "from generator.plan.model.job import Job\nA = 1\n_B: int = 2\n\ndef f(): ...\n"
    module = module_of("plan.jobs.request", text)
    assert list(room_faults(module)) == []
    assert list(public_names(module)) == ["A", "f"]
