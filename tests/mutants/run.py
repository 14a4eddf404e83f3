"""Changes the code that decides, bit by bit, and says which change no test notices.

    python -m tests.mutants.run [MODULE ...] [--jobs N] [--afresh]

The tests are read once; each change is made in a copy of that process, and only tests in which it
would show are run, those first that have most to do with it, up to the first that fails. In which
tests each change would show, and what became of it, is kept in build/mutants: a run that was broken
off goes on where it stopped, and a change is tried again only where its module or a test that
counts for it changed. Ends with 1 where what survives is not what `survivors.yaml` says.
"""

import argparse
import ast
import hashlib
import importlib
import itertools
import json
import os
import shutil
import signal
import sys
import time
import types
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from tests.mutants.changes import Change, Key, changes_of
from tests.mutants.children import in_children
from tests.mutants.in_place import put, put_tree
from tests.mutants.judged import told
from tests.mutants.reach import WATCH, Watch, watched
from tests.mutants.targets import CHECKOUT, LEFT_OUT, PACKAGE, TARGETS, TESTS, path_of

KEPT = CHECKOUT / "build" / "mutants"
RECORD_S = 900.0
NUMBERING = ("changes.py", "reach.py")
# What a test takes at the least, so that those that take nothing do not all come first.
START_S = 0.01
# A change may make a test slower, yet not without end; nor does any test wait for ever.
TIMES_AS_LONG, AND_S, PATIENCE = 6, 20, 8


def digest(*paths: Path) -> str:
    """Return one short text for what these files hold."""
    found = hashlib.sha256()
    for path in sorted(paths):
        found.update(path.relative_to(CHECKOUT).as_posix().encode())
        found.update(path.read_bytes())
    return found.hexdigest()[:20]


@dataclass
class Tests:
    """The tests by their names, and what each reaches; those of a file are noted together."""

    items: dict[str, pytest.Item]
    files: dict[str, str]
    failed: set[str] = field(default_factory=set)
    reached: dict[str, tuple[float, dict[str, frozenset[int]]]] = field(default_factory=dict)

    def run(self, names: Sequence[str]) -> str | None:
        """Run tests, and return the first that fails; the process ends where one takes too long."""
        for name, following in itertools.zip_longest(names, names[1:]):
            item, after = self.items[name], self.items.get(following)
            most_s = AND_S + TIMES_AS_LONG * self.reached[name][0]
            signal.setitimer(signal.ITIMER_PROF, most_s)
            signal.alarm(int(most_s * PATIENCE))
            item.ihook.pytest_runtest_protocol(item=item, nextitem=after)
            if name in self.failed:
                return name
        return None

    def telling(self, module: str, number: int) -> list[str]:
        """Return the tests in which a change of a module would show."""
        return [
            name for name, (_, shown) in self.reached.items() if number in shown.get(module, ())
        ]

    def file_of(self, name: str) -> str:
        """Return the file a test stands in."""
        return name.split("::")[0]


class Mutants:
    """Takes the place of pytest's loop over the tests it has collected."""

    def __init__(self, modules: Sequence[str], jobs: int, afresh: bool, only: str | None) -> None:
        self.modules = modules
        self.jobs = jobs
        self.only = only
        self.ended = 2
        self.tests = Tests({}, {})
        if afresh:
            shutil.rmtree(KEPT, ignore_errors=True)
        self.scratch = KEPT / f"scratch-{os.getpid()}"

    def pytest_collection(self) -> None:
        """Make chance the same in every run, keep no example, and look for no smaller one."""
        # not before pytest is there to rewrite it
        from hypothesis import HealthCheck, Phase, settings

        settings.register_profile(
            "mutants",
            deadline=None,
            database=None,
            derandomize=True,
            phases=(Phase.explicit, Phase.generate),
            suppress_health_check=list(HealthCheck),
        )
        settings.load_profile("mutants")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note a test that fails, in whichever part of it."""
        if report.failed:
            self.tests.failed.add(report.nodeid)

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Try every change of the modules."""
        items = {item.nodeid: item for item in session.items}
        files = {name.split("::")[0] for name in items}
        self.tests = Tests(items, {file: digest(CHECKOUT / file) for file in files})
        self.scratch.mkdir(parents=True)
        try:
            _warm()
            self._reach()
            results = {module: self._try(module) for module in self.modules}
        finally:
            shutil.rmtree(self.scratch)
        self.ended = told(results, whole=self.only is None)
        return True

    def _reach(self) -> None:
        """Find out in which test each change would show, or read it where nothing changed since."""
        kept = KEPT / "reach.json"
        self.code = digest(*PACKAGE.rglob("*.py"), *PACKAGE.rglob("*.yaml"), *_helpers())
        noted = _read(kept)
        if noted.get("code") != self.code:
            noted = {"code": self.code, "files": {}}
        stale = [
            file
            for file, now in self.tests.files.items()
            if noted["files"].get(file, {}).get("now") != now
        ]
        if stale:
            # in a process of its own: what is watched stays so
            tasks = in_children(
                [stale], lambda them: self._watch(them, noted), None, 1, self.scratch
            )
            if next(tasks)[1] is None:
                raise RuntimeError("the tests could not be run one file by one")
            noted = _read(kept)
        for file in self.tests.files:
            for name, (passed, seconds, shown) in noted["files"][file]["tests"].items():
                if passed and name in self.tests.items:
                    numbers = {module: frozenset(found) for module, found in shown.items()}
                    self.tests.reached[name] = (seconds, numbers)

    def _watch(self, stale: list[str], noted: dict[str, Any]) -> bool:
        watches = {}
        for name in TARGETS:
            module = importlib.import_module(f"generator.{name}")
            tree = ast.parse(path_of(name).read_text(encoding="utf-8"))
            watches[name] = Watch()
            watched(tree, list(changes_of(name, tree)), watches[name])
            vars(module)[WATCH] = watches[name]
            put_tree(tree, module)
        by_file = defaultdict(list)
        for name in self.tests.items:
            by_file[self.tests.file_of(name)].append(name)
        for file, answer in in_children(
            stale,
            lambda one: self._watched(by_file[one], watches),
            lambda _: RECORD_S,
            self.jobs,
            self.scratch / "reach",
        ):
            if answer is None:
                return False
            noted["files"][file] = {"now": self.tests.files[file], "tests": answer}
            _write(KEPT / "reach.json", noted)
        return True

    def _watched(self, names: list[str], watches: dict[str, Watch]) -> dict[str, Any]:
        found = {}
        for name, following in itertools.zip_longest(names, names[1:]):
            for watch in watches.values():
                watch.shown.clear()
            begun = time.process_time()
            item, after = self.tests.items[name], self.tests.items.get(following)
            item.ihook.pytest_runtest_protocol(item=item, nextitem=after)
            seconds = round(time.process_time() - begun, 4)
            shown = {one: sorted(watch.shown) for one, watch in watches.items() if watch.shown}
            found[name] = (name not in self.tests.failed, seconds, shown)
        return found

    def _try(self, name: str) -> dict[str, Any]:
        """Try every change of a module, and return what became of each, by its key."""
        path, module = path_of(name), importlib.import_module(f"generator.{name}")
        source = digest(path)
        tree = ast.parse(path.read_text(encoding="utf-8"))
        every = list(changes_of(name, tree))
        changes = [one for one in every if self.only is None or self.only in str(one.key)]
        kept = KEPT / f"{name}.json"
        noted = _read(kept)
        if noted.get("source") != source:
            noted = {"source": source, "became": {}}
        numbers = {one.key: number for number, one in enumerate(every)}
        trial = _Trial(self.tests, tree, module, noted["became"], self.code, numbers)
        open_ones = [one for one in changes if trial.is_open(one)]
        begun = time.monotonic()
        for change, answer in in_children(
            open_ones, trial.work, None, self.jobs, self.scratch / name
        ):
            trial.note(change, answer)
            _write(kept, noted)
        became = {str(one.key): (one, trial.became[str(one.key)]) for one in changes}
        alive = sum("survived" in one for _, one in became.values())
        took = time.monotonic() - begun
        print(
            f"{name}: {len(changes)} changes, {len(open_ones)} tried in {took:.0f} s, "
            f"{alive} survive",
            flush=True,
        )
        return became


@dataclass
class _Trial:
    """The changes of one module, and what became of each so far."""

    tests: Tests
    tree: ast.Module
    module: types.ModuleType
    became: dict[str, Any]
    code: str
    numbers: Mapping[Key, int]
    rare: dict[str | None, Mapping[str, float]] = field(default_factory=dict)
    noticed: defaultdict[str, int] = field(default_factory=lambda: defaultdict(int))

    def is_open(self, change: Change) -> bool:
        """Whether a change is still to be tried: no test that counts says what becomes of it."""
        was = self.became.get(str(change.key))
        if was is None:
            return True
        if "noticed" in was:
            file = self.tests.file_of(was["noticed"])
            return was["file"] is not None and self.tests.files.get(file) != was["file"]
        return bool(self._left(change))

    def _left(self, change: Change) -> list[str]:
        """Return the tests a change is still to be held against, the likeliest first."""
        was = self.became.get(str(change.key), {})
        past = was.get("survived", {}) if was.get("code") == self.code else {}
        names = [
            name
            for name in self.tests.telling(change.key.module, self.numbers[change.key])
            if past.get(self.tests.file_of(name)) != self.tests.files[self.tests.file_of(name)]
        ]
        function, module = self._rare(change.key.function), self._rare(None)

        def worth(name: str) -> float:
            return (function[name] + module[name]) / (self.tests.reached[name][0] + START_S)

        return sorted(names, key=lambda one: (-self.noticed[one], -worth(one), one))

    def _rare(self, function: str | None) -> Mapping[str, float]:
        """Return how much each test has to do with a function, or with the whole module.

        A change that shows in few tests says more of them than one that shows in all.
        """
        if function not in self.rare:
            found: defaultdict[str, float] = defaultdict(float)
            for key, number in self.numbers.items():
                if function in (None, key.function):
                    telling = self.tests.telling(key.module, number)
                    for name in telling:
                        found[name] += 1 / len(telling)
            self.rare[function] = found
        return self.rare[function]

    def work(self, change: Change) -> str:
        """Make the change and run the tests: the name of the first that fails, or nothing."""
        signal.alarm(AND_S * PATIENCE)
        try:
            put(change, self.tree, self.module)
        except Exception as raised:
            return f"reading the module: {type(raised).__name__}"
        return self.tests.run(self._left(change)) or ""

    def note(self, change: Change, answer: str | None) -> None:
        """Note which test noticed a change, or the tests that none of them did."""
        if answer == "":
            files = {self.tests.file_of(one) for one in self.tests.reached}
            survived = {file: self.tests.files[file] for file in sorted(files)}
            self.became[str(change.key)] = {"survived": survived, "code": self.code}
            return
        noticed = "the time or memory it takes" if answer is None else answer
        if noticed in self.tests.items:
            self.noticed[noticed] += 1
        file = self.tests.files.get(self.tests.file_of(noticed))
        self.became[str(change.key)] = {"noticed": noticed, "file": file}


def _warm() -> None:
    """Read what ships and plan once, so that no child has to begin with it."""
    from tests.plan.planned import planned
    from tests.properties import small_property

    planned(small_property())


def _helpers() -> Iterator[Path]:
    """What the tests rest on beside themselves, and what gives the changes their numbers."""
    for path in (CHECKOUT / "tests").rglob("*"):
        counts = path.parent.name not in ("mutants", "fuzz") or path.name in NUMBERING
        if counts and path.suffix in (".py", ".yaml") and not path.name.startswith("test_"):
            yield path


def _read(path: Path) -> dict[str, Any]:
    return json.loads(path.read_text(encoding="utf-8")) if path.is_file() else {}


def _write(path: Path, content: object) -> None:
    fresh = path.with_suffix(".tmp")
    fresh.write_text(json.dumps(content), encoding="utf-8")
    fresh.replace(path)


def main(words: Sequence[str] | None = None) -> int:
    """Try the changes of the modules that are named, or of all."""
    parser = argparse.ArgumentParser(prog="tests.mutants.run", description=__doc__)
    parser.add_argument(
        "modules", nargs="*", metavar="MODULE", help="plan.waits, compute.seed, ..."
    )
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    parser.add_argument("--afresh", action="store_true", help="forget what was found before")
    parser.add_argument("--only", metavar="TEXT", help="changes whose line holds this text")
    asked = parser.parse_args(words)
    unknown = sorted(set(asked.modules) - set(TARGETS))
    if unknown:
        parser.error(f"no such module: {', '.join(unknown)}; there are {', '.join(TARGETS)}")
    run = Mutants(asked.modules or TARGETS, asked.jobs, asked.afresh, asked.only)
    tests = [str(CHECKOUT / one) for one in TESTS]
    tests += [f"--ignore={CHECKOUT / one}" for one in LEFT_OUT]
    quiet = ["-s", "-qq", "--no-header", "--no-summary", "-p", "no:cacheprovider", "-p", "no:xdist"]
    ended = pytest.main([*quiet, *tests], plugins=[run])
    return run.ended if ended in (0, 5) else 2


if __name__ == "__main__":
    sys.exit(main())
