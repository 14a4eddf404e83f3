"""Which tests what changed can break, the likeliest first.

A test file stands the nearer to a changed module, the fewer imports lie between them, and the more
rare words they have in common: names, findings, keys of files. For files that are no modules a
table says who looks at them.
"""

from __future__ import annotations

import ast
import functools
import math
import re
from collections import Counter, defaultdict, deque
from collections.abc import Iterable, Mapping
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
# The tests that look at files which no module imports, by how the names of these begin.
LOOKS_AT = (
    ("site_templates/pages/", ("tests/structure/test_templates.py",
                               "tests/structure/test_sentences.py",
                               "tests/structure/test_traits.py",
                               "tests/structure/test_all_used.py",
                               "tests/structure/test_fields_shown.py", "tests/book")),
    ("site_templates/", ("tests/structure/test_templates.py", "tests/site", "tests/book")),
    ("content/callouts/", ("tests/structure/test_chapters.py", "tests/structure/test_all_used.py",
                           "tests/reference/test_steps.py", "tests/book")),
    ("content/finding_heads.yaml", ("tests/book/test_findings_by_rule.py",)),
    ("content/sentences.yaml", ("tests/structure/test_sentences.py", "tests/book")),
    ("content/", ("tests/structure/test_chapters.py", "tests/structure/test_no_herbicide_rate.py",
                  "tests/structure/test_words.py", "tests/book")),
    ("generator/reference/data/operations.yaml", ("tests/reference/test_operations.py",
                                                  "tests/structure/test_traits.py",
                                                  "tests/structure/test_all_used.py",
                                                  "tests/plan/test_demo_property.py",
                                                  "tests/reference")),
    ("generator/reference/data/", ("tests/reference", "tests/structure/test_sources.py",
                                   "tests/structure/test_words.py", "tests/published")),
    ("generator/live/", ("tests/live",)),
    ("generator/starter/", ("tests/cli", "tests/inventory")),
    ("demo_property/", ("tests/plan/test_demo_property.py", "tests/stories", "tests/book")),
    ("tests/inventories/", ("tests/inventory",)),
    ("tests/published/", ("tests/published",)),
    ("tests/plan/", ("tests/plan",)),
    ("README.md", ("tests/structure/test_readme.py",)),
    ("tests/readme/", ("tests/structure/test_readme.py",)),
    ("DEVELOPERS.md", ("tests/structure",)),
    ("", ("tests/structure/test_packaging.py",)),
)  # fmt: skip
# What is held to every module, whichever it is.
OF_ANY_MODULE = (
    "tests/structure/test_layers.py",
    "tests/structure/test_calculations.py",
    "tests/structure/test_suffixes.py",
    "tests/structure/test_reasons.py",
    "tests/structure/test_all_used.py",
)
FINDING = re.compile(r"\b\w*(?:Stop|Caution|Note)\.([A-Z_]+)\b")
WORD = re.compile(r"\w+")
LEAST_LETTERS = 4
# What counts against the imports between: how much is shared, a file of the same name or layer.
TIMES_ALIKE, MIRRORED, SAME_LAYER = 12.0, 3.0, 1.0
FAR = 99


@functools.cache
def modules() -> Mapping[str, Path]:
    """Every module of the package and of the tests, by its dotted name."""
    found = {}
    for top in ("generator", "tests"):
        for path in sorted((CHECKOUT / top).rglob("*.py")):
            parts = path.relative_to(CHECKOUT).with_suffix("").parts
            found[".".join(parts[:-1] if parts[-1] == "__init__" else parts)] = path
    return found


@functools.cache
def importers() -> Mapping[str, frozenset[str]]:
    """The modules that import a module, by its name."""
    found: defaultdict[str, set[str]] = defaultdict(set)
    for name, path in modules().items():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                for one in node.names:
                    whole = f"{node.module}.{one.name}"
                    found[whole if whole in modules() else node.module].add(name)
            elif isinstance(node, ast.Import):
                for one in node.names:
                    found[one.name].add(name)
    return {name: frozenset(by) for name, by in found.items()}


def is_test(path: Path) -> bool:
    """Whether pytest looks for tests in a file."""
    return path.name.startswith("test_") and path.suffix == ".py"


def apart_from(module: str) -> dict[Path, int]:
    """Return the test files that a module reaches, and over how many imports."""
    found: dict[Path, int] = {}
    waiting, seen = deque([(module, 0)]), {module}
    while waiting:
        name, apart = waiting.popleft()
        path = modules()[name]
        if is_test(path):
            found.setdefault(path, apart)
        for by in sorted(importers().get(name, ())):
            if by not in seen:
                seen.add(by)
                waiting.append((by, apart + 1))
    return found


def words_of(path: Path) -> frozenset[str]:
    """Return the words of a file, the codes of the findings it makes among them."""
    text = path.read_text(encoding="utf-8")
    codes = {codes_by_name().get(name, "") for name in FINDING.findall(text)}
    return frozenset(codes | {word for word in WORD.findall(text) if len(word) >= LEAST_LETTERS})


@functools.cache
def words_of_tests() -> Mapping[Path, frozenset[str]]:
    """The words of every file of tests."""
    return {path: words_of(path) for path in modules().values() if is_test(path)}


@functools.cache
def rarities() -> Mapping[str, float]:
    """How much a word says: the more, the fewer files of tests hold it."""
    tests = words_of_tests()
    held = Counter(word for words in tests.values() for word in words)
    return {word: math.log(len(tests) / count) for word, count in held.items()}


def alike(path: Path, test: Path) -> float:
    """Return how much of what is rare a file and a file of tests share, from 0 to 1."""
    rare = rarities()
    mine, other = words_of(path), words_of_tests()[test]

    def length(words: Iterable[str]) -> float:
        return math.sqrt(math.fsum(rare.get(word, 0) ** 2 for word in words))

    both = length(mine & other)
    return both * both / (length(mine & rare.keys()) * length(other)) if both else 0.0


@functools.cache
def codes_by_name() -> Mapping[str, str]:
    """The codes of findings by the names of their reasons."""
    found = {}
    for path in sorted((CHECKOUT / "generator/plan/findings").glob("about_*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call):
                first = node.value.args[0]
                if isinstance(node.targets[0], ast.Name) and isinstance(first, ast.Constant):
                    found[node.targets[0].id] = str(first.value)
    return found


def near(path: Path) -> dict[Path, float]:
    """Return the test files that look at a changed file, the nearest with the least number."""
    name = path.relative_to(CHECKOUT).as_posix()
    module = next((one for one, where in modules().items() if where == path), None)
    if is_test(path):
        return {path: 0}
    if module is None:
        return _by_table(name)
    found: dict[Path, float] = {}
    for test, apart in apart_from(module).items():
        mirrored = test.stem == f"test_{path.stem}"
        same_layer = test.relative_to(CHECKOUT).parts[1] == path.relative_to(CHECKOUT).parts[1]
        far = apart - TIMES_ALIKE * alike(path, test)
        found[test] = far - MIRRORED * mirrored - SAME_LAYER * same_layer
    if name.startswith("generator/"):
        found |= {CHECKOUT / one: 0.5 for one in OF_ANY_MODULE}
    return found


def _by_table(name: str) -> dict[Path, float]:
    looking = next(tests for begins, tests in LOOKS_AT if name.startswith(begins))
    found: dict[Path, float] = {}
    for apart, one in enumerate(looking):
        path = CHECKOUT / one
        tests = [path] if path.is_file() else sorted(path.rglob("test_*.py"))
        stem = Path(name).name.split(".")[0]
        for test in tests:
            names_it = stem in test.read_text(encoding="utf-8")
            found[test] = apart + (0 if names_it or path.is_file() else 1)
    return found


def named_in(words: Iterable[str]) -> dict[Path, float]:
    """Return the test files near a module that asks for what changed lines of data name."""
    found: dict[Path, float] = {}
    for name, path in modules().items():
        if name.startswith("generator.") and set(words) & words_of(path):
            for test, apart in near(path).items():
                found[test] = min(apart, found.get(test, FAR))
    return found


def names_on(lines: Iterable[str]) -> set[str]:
    """Return what lines name that code can ask for: words put together with a low line."""
    return {word for line in lines for word in WORD.findall(line) if "_" in word.strip("_")}


def chosen(
    changed: Iterable[Path],
    seconds: Mapping[str, float],
    most_s: float,
    names: Iterable[str] = (),
) -> tuple[list[Path], list[Path]]:
    """Return the test files to run, the likeliest first, and those left out for want of time.

    `seconds` is what each took last, by its path in the checkout; one that is not known counts as
    one second. `names` are what changed lines of files that are no modules name.
    """
    nearest: dict[Path, float] = named_in(names) if names else {}
    for path in changed:
        for test, apart in near(path).items():
            nearest[test] = min(apart, nearest.get(test, FAR))
    taken, left, spent = [], [], 0.0
    for test in sorted(nearest, key=lambda one: (nearest[one], one)):
        takes = seconds.get(test.relative_to(CHECKOUT).as_posix(), 1.0)
        if taken and spent + takes > most_s:
            left.append(test)
            continue
        spent += takes
        taken.append(test)
    return taken, left
