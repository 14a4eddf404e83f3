"""Each layer uses only what its row of the table names, and only a few may print, write or read."""

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest

from tests.structure.modules import Module, module_of, modules


@dataclass(frozen=True)
class Row:
    """What one layer may import: other layers, and libraries beside the standard one."""

    layers: frozenset[str] = frozenset()
    libraries: frozenset[str] = frozenset()
    only_in: dict[str, frozenset[str]] = field(default_factory=dict)
    siblings: bool = True


def row(layers: str = "", libraries: str = "", **more: object) -> Row:
    return Row(frozenset(layers.split()), frozenset(libraries.split()), **more)  # type: ignore[arg-type]  # one shape of keyword


TABLE: dict[str, Row] = {
    "package": row(),
    "dataclass": row(),
    "lookup": row(),
    "kept": row(),
    "compiled": row("kept", "jinja2"),
    "second": row(),
    "in_two": row("second"),
    "beside": row("second"),
    "units": row(),
    "working": row("units"),
    "geometry": row("units", "pyproj shapely"),
    "reference": row("units working kept", "yaml tzdata"),
    "inventory": row(
        "units working reference geometry",
        "yaml",
        only_in={"inventory.elevation_tiff": frozenset({"tifffile", "imagecodecs"})},
    ),
    "compute": row("units working", siblings=False),
    "plan": row("units working geometry reference inventory compute"),
    # A book is made of the plan's objects, whose records come from the layers below the plan.
    # Front matter of a chapter is YAML.
    "book": row(
        "units working reference inventory plan lookup kept compiled in_two",
        "jinja2 markupsafe yaml",
        only_in={"book.tables": frozenset({"pandas"}), "book.workbook": frozenset({"xlsxwriter"})},
    ),
    "site": row("book lookup kept compiled in_two", "mkdocs markdown yaml jinja2"),
    "typed": row("inventory site", "click"),
    "said": row("typed inventory plan book site", "click"),
    # What is kept from a reader, which the plan knows, held against what the site wrote.
    "scanning": row("inventory plan site"),
    "live": row("inventory plan book site", "click"),
    "building": row("typed said run_day scanning inventory plan book site", "click"),
    "run_day": row("typed said inventory", "click"),
    "start_commands": row("typed said inventory site lookup", "click"),
    "import_command": row("typed said inventory geometry reference units", "click"),
    "pack_command": row("typed said run_day building scanning plan book site", "click"),
    "saved": row("inventory site"),
    "log_commands": row("inventory plan typed said", "click"),
    "save_commands": row("saved inventory run_day typed said", "click"),
    "cli": row(
        "package run_day live typed said building scanning start_commands pack_command "
        "log_commands save_commands import_command inventory plan book site kept beside",
        "click",
    ),
    # What MkDocs calls when it is typed in a checkout: stages the demo property's own book.
    "demo_tree": row("inventory plan book site lookup", "click yaml"),
    "__main__": row("cli"),
}
PURE = {"units", "working", "geometry", "compute", "plan"}
PRINTS = {
    "cli", "said", "start_commands", "pack_command", "log_commands", "save_commands",
    "import_command",
}  # fmt: skip
TIMES_OR_ASKS = PRINTS | {"run_day", "live"}
# The day a plan is made for, where none is given: asked for once, at the outermost edge.
ASKS_FOR_THE_DAY = "datetime.date.today"
# What is written to a pipe between two processes of our own is no file.
WRITES = {
    "site",
    "cli",
    "kept",
    "second",
    "in_two",
    "beside",
    "live",
    "demo_tree",
    "saved",
    "inventory.write",
}

OUTSIDE_MODULES = {
    "glob", "importlib", "io", "logging", "os", "pathlib", "platform", "random", "secrets",
    "shutil", "socket", "subprocess", "sys", "tempfile", "threading", "time", "urllib", "uuid",
}  # fmt: skip
OUTSIDE_CALLS = {"open", "print", "input", "Path"}
READING_METHODS = {"read_text", "read_bytes", "open", "iterdir", "glob", "rglob", "exists"}
CLOCK = {
    "today", "now", "utcnow", "localtime", "gmtime", "time_ns", "perf_counter", "monotonic",
}  # fmt: skip
PRINTING = {"echo", "secho", "pprint"}
WRITING_METHODS = {
    "write_text", "write_bytes", "mkdir", "makedirs", "touch", "unlink", "rmdir", "removedirs",
    "symlink_to", "hardlink_to", "chmod", "rmtree", "copytree", "copyfile", "copy2", "move",
    "mkdtemp", "mkstemp", "NamedTemporaryFile", "TemporaryDirectory",
}  # fmt: skip
OS_WRITES = {"replace", "rename", "renames", "remove", "link", "symlink", "write", "truncate"}
READ_MODES = {"r", "rb", "rt"}


def imports(module: Module) -> Iterator[tuple[int, str]]:
    """Every import with its line, as a full dotted name; names out of `generator` one by one."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            if node.level:
                yield node.lineno, "." * node.level + (node.module or "")
            elif node.module == "generator":
                yield from ((node.lineno, f"generator.{alias.name}") for alias in node.names)
            else:
                yield node.lineno, node.module or ""


def import_faults(module: Module) -> Iterator[str]:
    """Imports that the module's row does not allow, and modules that stand in no row."""
    allowed = TABLE.get(module.layer)
    if allowed is None:
        yield f"{module.file}:1 {module.name} stands in no row of the layer table"
        return
    for line, name in imports(module):
        fault = _import_fault(module, allowed, name)
        if fault:
            yield f"{module.file}:{line} {fault}"


def _import_fault(module: Module, allowed: Row, name: str) -> str | None:
    top, _, rest = name.partition(".")
    if not top:
        return f"imports {name} relatively; name the module in full"
    if top != "generator":
        libraries = allowed.libraries | allowed.only_in.get(module.name, frozenset())
        known = top in sys.stdlib_module_names or top in libraries
        return None if known else f"{module.layer} may not import the library {top}"
    # what the standard library has, only made at less cost
    if rest == "dataclass":
        return None
    layer = rest.split(".")[0]
    layer = layer if layer in TABLE else "package"
    if layer == module.layer:
        own = allowed.siblings or rest == module.name
        return None if own else f"modules of {layer} may not import each other ({name})"
    return None if layer in allowed.layers else f"{module.layer} may not import {name}"


def calls(module: Module) -> Iterator[tuple[ast.Call, str, str]]:
    """Every call with the name called and the name it is looked up on ("" if none)."""
    for node in ast.walk(module.tree):
        if not isinstance(node, ast.Call):
            continue
        if isinstance(node.func, ast.Name):
            yield node, node.func.id, ""
        elif isinstance(node.func, ast.Attribute):
            yield node, node.func.attr, ast.unparse(node.func.value)


def clock_faults(module: Module) -> Iterator[str]:
    """Places that read a clock, in any layer; the commands may time their run, and ask the day."""
    for line, name in imports(module):
        # The commands time their own run, to say what takes long; that is no day and on no page.
        if name == "time" and module.layer not in TIMES_OR_ASKS:
            yield f"{module.file}:{line} imports time"
    for node, name, on in calls(module):
        may = module.layer in TIMES_OR_ASKS and f"{on}.{name}" in {
            "time.monotonic",
            ASKS_FOR_THE_DAY,
        }
        if on and (name in CLOCK or f"{on}.{name}" == "time.time") and not may:
            yield f"{module.file}:{node.lineno} reads a clock: {on}.{name}"


def outside_faults(module: Module) -> Iterator[str]:
    """Places where a pure module reaches a file, the environment, chance or the screen."""
    for line, name in imports(module):
        if name.split(".")[0] in OUTSIDE_MODULES:
            yield f"{module.file}:{line} a pure module imports {name}"
    for node, name, on in calls(module):
        if (not on and name in OUTSIDE_CALLS) or (on and name in READING_METHODS):
            yield f"{module.file}:{node.lineno} a pure module calls {name}"


def print_faults(module: Module) -> Iterator[str]:
    """Places that print, by any of the ways there are."""
    for node, name, on in calls(module):
        if (name == "print" and not on) or name in PRINTING:
            yield f"{module.file}:{node.lineno} prints with {name}"
        if name == "write" and on in {"sys.stdout", "sys.stderr"}:
            yield f"{module.file}:{node.lineno} prints with {on}.write"


def write_faults(module: Module) -> Iterator[str]:
    """Places that write, move or remove a file."""
    for node, name, on in calls(module):
        if _writes(node, name, on):
            yield f"{module.file}:{node.lineno} writes with {name}"


def _writes(node: ast.Call, name: str, on: str) -> bool:
    if name == "open":
        return not _opens_to_read(node, method=bool(on))
    if name in WRITING_METHODS or (on == "os" and name in OS_WRITES):
        return True
    # Path.rename and Path.replace take one target; str.replace takes two texts.
    return bool(on) and name in {"rename", "replace"} and len(node.args) == 1 and not node.keywords


def _opens_to_read(node: ast.Call, *, method: bool) -> bool:
    positional = node.args[0 if method else 1 :][:1]
    modes = positional + [one.value for one in node.keywords if one.arg == "mode"]
    return all(isinstance(one, ast.Constant) and one.value in READ_MODES for one in modes)


def test_every_module_imports_only_what_its_row_allows() -> None:
    assert [fault for module in modules() for fault in import_faults(module)] == []


# Named where the package's data is read, never imported.
READ_AS_DATA = {"tzdata"}


def test_the_table_names_no_library_that_nothing_imports() -> None:
    imported = {
        (module.layer, name.partition(".")[0])
        for module in modules()
        for _, name in imports(module)
    }
    idle = [
        f"{layer}: {library}"
        for layer, allowed in TABLE.items()
        for library in allowed.libraries.union(*allowed.only_in.values()) - READ_AS_DATA
        if (layer, library) not in imported
    ]
    assert idle == []


def test_pure_layers_reach_nothing_outside() -> None:
    assert [fault for module in modules(*PURE) for fault in outside_faults(module)] == []


def test_no_layer_reads_a_clock() -> None:
    assert [fault for module in modules() for fault in clock_faults(module)] == []


def days_asked_for(module: Module) -> list[int]:
    """The lines of a module that ask a clock for the day."""
    return [node.lineno for node, name, on in calls(module) if f"{on}.{name}" == ASKS_FOR_THE_DAY]


def test_the_commands_alone_ask_for_the_day_and_do_so_once() -> None:
    assert {one.name: len(days_asked_for(one)) for one in modules() if days_asked_for(one)} == {
        "run_day": 1
    }


def environment_faults(module: Module) -> Iterator[str]:
    """Places that name SOURCE_DATE_EPOCH."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Constant) and node.value == "SOURCE_DATE_EPOCH":
            yield f"{module.file}:{node.lineno} names SOURCE_DATE_EPOCH"


def test_the_commands_alone_know_of_a_day_given_by_the_system() -> None:
    # The site sets it to the plan's day while MkDocs runs, and puts back what was there.
    sets_it = {"site.build"}
    naming = {one.name for one in modules() if list(environment_faults(one))}
    assert naming == {"run_day"} | sets_it
    (told,) = environment_faults(module_of("site.stage", "os.environ['SOURCE_DATE_EPOCH']"))
    assert "names SOURCE_DATE_EPOCH" in told


def test_only_the_command_line_prints() -> None:
    quiet = (module for module in modules() if module.layer not in PRINTS)
    assert [fault for module in quiet for fault in print_faults(module)] == []


def test_only_the_site_and_the_property_writer_write() -> None:
    quiet = (module for module in modules() if not {module.layer, module.name} & WRITES)
    assert [fault for module in quiet for fault in write_faults(module)] == []


def test_the_table_names_no_layer_that_is_not_in_it() -> None:
    assert all(one.layers <= TABLE.keys() for one in TABLE.values())


def test_the_layers_stand_in_an_order_without_a_circle() -> None:
    placed: set[str] = set()
    while waiting := TABLE.keys() - placed:
        ready = {layer for layer in waiting if TABLE[layer].layers <= placed}
        assert ready, f"these layers import each other in a circle: {sorted(waiting)}"
        placed |= ready


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("units", "from generator.working import mean", "units may not import generator.working"),
        ("compute.seed", "from generator.compute.area import STRIP_AREA", "import each other"),
        ("compute.seed", "import generator.compute.area", "import each other"),
        ("compute.seed", "from generator.compute import area", "import each other"),
        ("compute.seed", "from generator import plan", "compute may not import generator.plan"),
        ("compute.seed", "from .area import STRIP_AREA", "relatively"),
        ("compute.seed", "def f():\n    import scipy", "compute may not import the library scipy"),
        ("plan.money.budget", "import pandas", "plan may not import the library pandas"),
        (
            "plan.build.season_plan",
            "from jinja2 import Template",
            "plan may not import the library jinja2",
        ),
        ("book.pages", "import generator.site.stage", "book may not import generator.site.stage"),
        ("book.pages", "from generator.compute import seed", "book may not import"),
        ("inventory.load", "import pydantic", "inventory may not import the library pydantic"),
        ("toolbox", "", "stands in no row"),
    ],
)
def test_a_wrong_import_is_named_with_file_and_line(name: str, text: str, said: str) -> None:
    (fault,) = import_faults(module_of(name, text))
    line = 2 if text.startswith("def") else 1
    assert fault.startswith(f"generator/{name.replace('.', '/')}.py:{line} ")
    assert said in fault


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("book.tables", "import pandas"),
        ("geometry.geodesic", "import pyproj"),
        ("book.workbook", "import xlsxwriter.format"),
        ("plan.build.season_plan", "from generator.compute import seed\nimport datetime, math"),
        ("site.engine", "import mkdocs.config\nfrom generator.book.model import Book"),
        ("cli", "from generator import __version__\nimport click"),
    ],
)
def test_a_right_import_passes(name: str, text: str) -> None:
    assert list(import_faults(module_of(name, text))) == []


@pytest.mark.parametrize(
    "text",
    [
        "import os",
        "import random",
        "from pathlib import Path",
        "import os.path",
        "open('x')",
        "print(1)",
        "Path('x')",
        "folder.read_text()",
    ],
)
def test_a_reach_outside_is_seen(text: str) -> None:
    assert len(list(outside_faults(module_of("compute.seed", text)))) == 1


@pytest.mark.parametrize(
    "text",
    ["import time", "datetime.date.today()", "datetime.now(UTC)", "date.today()"],
)
def test_a_clock_is_seen(text: str) -> None:
    assert len(list(clock_faults(module_of("site.stage", text)))) == 1


def test_the_command_line_may_time_its_run_and_no_more() -> None:
    assert list(clock_faults(module_of("cli", "import time\nbegun = time.monotonic()"))) == []
    assert len(list(clock_faults(module_of("cli", "import time\nnow = time.time()")))) == 1
    assert list(clock_faults(module_of("cli", "day = datetime.date.today()"))) == []
    assert len(list(clock_faults(module_of("cli", "now = datetime.datetime.now()")))) == 1
    assert (
        len(list(clock_faults(module_of("plan.build.season_plan", "day = datetime.date.today()"))))
        == 1
    )
    assert days_asked_for(module_of("cli", "a = datetime.date.today()\nb = a")) == [1]


def test_a_day_that_is_handed_over_is_no_clock() -> None:
    text = "import datetime\nday = datetime.date(2027, 3, 1) + datetime.timedelta(days=2)"
    module = module_of("plan.season.open_dates", text)
    assert list(clock_faults(module)) == list(outside_faults(module)) == []


@pytest.mark.parametrize(
    "text", ["print(1)", "click.echo(1)", "sys.stdout.write('x')", "pprint.pprint(1)"]
)
def test_printing_is_seen(text: str) -> None:
    assert len(list(print_faults(module_of("site.stage", text)))) == 1


@pytest.mark.parametrize(
    "text",
    [
        "open('x', 'w')",
        "open('x', mode='ab')",
        "open('x', mode)",
        "path.open('x')",
        "path.write_text('x')",
        "path.mkdir()",
        "path.unlink()",
        "path.replace(other)",
        "path.rename(other)",
        "os.replace(a, b)",
        "shutil.rmtree(a)",
        "tempfile.mkdtemp()",
    ],
)
def test_writing_is_seen(text: str) -> None:
    assert len(list(write_faults(module_of("plan.build.season_plan", text)))) == 1


@pytest.mark.parametrize(
    "text",
    [
        "open('x')",
        "open('x', 'rb')",
        "path.open(encoding='utf-8')",
        "path.open('r')",
        "text.replace('a', 'b')",
        "replace(record, name='x')",
        "dataclasses.replace(record, name='x')",
        "path.read_text()",
    ],
)
def test_reading_is_not_taken_for_writing(text: str) -> None:
    assert list(write_faults(module_of("reference.library", text))) == []
