"""Times builds from cold starts beside plain `mkdocs build`, and says where a limit is missed.

The limits are ratios of times of one run, growth and sizes: they decide the exit code. Seconds are
aims, and are told.
"""

import datetime
import gc
import math
import os
import platform
import re
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT))

from generator.book.make import make_book  # noqa: E402 - after the path above
from generator.book.model import Book  # noqa: E402 - after the path above
from generator.inventory.load import load_inventory  # noqa: E402 - after the path above
from generator.inventory.schema import Reader  # noqa: E402 - after the path above
from generator.plan.build.season_plan import make_plan  # noqa: E402 - after the path above
from generator.plan.model.plan import Plan  # noqa: E402 - after the path above
from generator.plan.readers.seen_by import seen_by  # noqa: E402 - after the path above
from generator.scanning import LeakScan  # noqa: E402 - after the path above
from generator.site.stage import stage  # noqa: E402 - after the path above
from tests.bench.later import tell_later  # noqa: E402 - after the path above
from tests.bench.measured import (  # noqa: E402 - after the path above
    ENVIRONMENT,
    RUNS,
    Took,
    in_turn,
    run,
    told_by,
)
from tests.bench.one_file import (  # noqa: E402 - after the path above
    MOST_MB,
    SLOWED,
    on_a_phone,
    sizes_mb,
)
from tests.bench.planning import compare_planning  # noqa: E402 - after the path above
from tests.bench.shapes import compare_shapes  # noqa: E402 - after the path above
from tests.bench.yardstick_tree import MIX, yardstick  # noqa: E402 - after the path above
from tests.properties import SEASON, make_property  # noqa: E402 - after the path above

PHASES = Path(__file__).with_name("phases.py")
LIVE = Path(__file__).with_name("live.py")
DEMO, STARTER = CHECKOUT / "demo_property", CHECKOUT / "generator" / "starter"
AS_OF = datetime.date(2026, 8, 20)
SEED = 2027
PAGES = 1001
FEW, MANY, MOST = 23, 75, 230
DRIFT = 2.0
KB = 1024
SCANNED_BYTES = 50_000_000


@dataclass
class Limits:
    """What was measured against limits and aims, printed as it comes."""

    missed: list[str] = field(default_factory=list)

    def limit(self, what: str, value: float, most: float, unit: str = "") -> None:
        """Tell a value that decides how this run ends."""
        met = value <= most
        self.missed += [] if met else [what]
        print(f"  {what:48s} {value:8.3f}{unit}  at most {most:g}: {'met' if met else 'MISSED'}")

    def aim(self, what: str, took: Took, most_s: float | None = None) -> None:
        """Tell seconds, which decide nothing."""
        told = ""
        if most_s is not None:
            told = f"  aim {most_s:g} s: {'met' if took.wall_s <= most_s else 'not met'}"
        print(f"  {what:48s} {took.wall_s:8.3f} s, processors {took.cpu_s:.2f} s{told}")


def building(folder: Path, out: Path, reader: str, *more: str) -> Callable[[], Took]:
    """The command that builds one reader's book."""
    day = ("--as-of", str(AS_OF), *more)
    command = ("-m", "generator", "build", str(folder), "--for", reader, "--out", str(out), *day)
    return lambda: run(*command)


def in_one(folder: Path, out: Path, reader: str) -> Callable[[], Took]:
    """The same command as on a system that cannot copy a process: one does all tasks."""
    command = ("build", str(folder), "--for", reader, "--out", str(out), "--as-of", str(AS_OF))
    begin = f"import os, sys; os.cpu_count = lambda: 1; sys.argv[1:] = {list(command)!r}"
    return lambda: run("-c", f"{begin}; from generator.__main__ import run; run()")


# The one file of a book is told beside the folder, which alone is what plain MkDocs makes.
FOLDER_ALONE = """
import sys
from pathlib import Path
import generator.site.publish as publishing
from generator.__main__ import run

sys.argv[1:], kept, whole = {command!r}, Path({kept!r}), publishing.built
kept.unlink(missing_ok=True)

def folder_alone(book, workshop, site, one_file):
    problems = whole(book, workshop, site)
    one_file.write_bytes(b"")
    return problems

publishing.built = folder_alone
run()
"""


def without_one_file(folder: Path, out: Path, reader: str) -> Callable[[], Took]:
    """The command that builds one reader's book, as a folder alone."""
    command = ["build", str(folder), "--for", reader, "--out", str(out), "--as-of", str(AS_OF)]
    script = FOLDER_ALONE.format(command=command, kept=str(out / f"{reader}.html"))
    return lambda: run("-c", script)


def plainly(tree: Path, out: Path) -> Callable[[], Took]:
    """The command that has plain MkDocs build a tree."""
    return lambda: run(
        "-m", "mkdocs", "build", "-q", "-f", str(tree / "mkdocs.yml"), "-d", str(out)
    )


def book_of(folder: Path, reader: str | None = None) -> Book:
    """The book of the owner, or of a reader, of a property folder."""
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    plan = make_plan(inventory, SEASON, AS_OF)
    if reader is None:
        return make_book(plan)
    return make_book(seen_by(plan, next(one for one in inventory.readers if one.id == reader)))


def kind_of(address: str) -> str:
    """The kind of a page, as the mix of the yardstick has them: a run sheet is one of work."""
    folder = address.partition("/")[0] if "/" in address else "lists"
    folder = "work" if folder == "runs" else folder
    return folder if folder in MIX else "products"


def mix(book: Book, limits: Limits) -> None:
    """Print how many pages of each kind there are, and hold the mix to that of the yardstick."""
    counts = Counter(kind_of(page.address) for page in book.pages)
    print(f"\nmix of {len(book.pages)} pages, in a hundred, beside that of the yardstick")
    for kind, share in MIX.items():
        own = 100 * counts[kind] / len(book.pages)
        limits.limit(f"{kind}: {counts[kind]} pages, {own:.1f} to {share}", abs(own - share), DRIFT)


def many_pages(work: Path, limits: Limits) -> None:
    """A thousand pages, everything included; what a page more takes; memory."""
    folders = {n: make_property(work / f"property-{n}", SEED, n) for n in (FEW, MANY)}
    pages = {n: len(book_of(folder).pages) for n, folder in folders.items()}
    mix(book_of(folders[MANY]), limits)
    trees = {n: yardstick(work / f"yardstick-{n}", count) for n, count in pages.items()}
    first = building(folders[MANY], work / "fresh", "owner", "--fresh")()
    few, many, whole, alone, plain_few, plain_many = in_turn(
        without_one_file(folders[FEW], work / "few", "owner"),
        without_one_file(folders[MANY], work / "many", "owner"),
        building(folders[MANY], work / "whole", "owner"),
        in_one(folders[MANY], work / "alone", "owner"),
        plainly(trees[FEW], work / "plain-few"),
        plainly(trees[MANY], work / "plain-many"),
    )
    print(f"\n{pages[MANY]} pages, the owner's of {MANY} screens; the least of {RUNS} in turn")
    limits.aim("handbook build, the folder alone", many, 2.5 * pages[MANY] / PAGES)
    limits.aim("handbook build, the one file too", whole)
    limits.aim("the same, nothing kept before", first)
    limits.aim("the same, one process", alone)
    limits.aim("plain mkdocs build of the yardstick", plain_many)
    limits.limit("ratio", many.wall_s / plain_many.wall_s, 0.13)
    more = pages[MANY] - pages[FEW]
    own_ms = 1000 * (many.wall_s - few.wall_s) / more
    plain_ms = 1000 * (plain_many.wall_s - plain_few.wall_s) / more
    print(f"  a page more takes {own_ms:.2f} ms, and {plain_ms:.2f} ms plainly")
    limits.limit("marginal page, ratio", own_ms / plain_ms, 0.12)
    out, day = work / "watched", ("--as-of", str(AS_OF))
    held = run(
        *(
            "-m",
            "generator",
            "build",
            str(folders[MANY]),
            "--for",
            "owner",
            "--out",
            str(out),
            *day,
        ),
        watched=True,
    )
    limits.limit("memory of all processes, shared once", held.memory_mb, 200, " MB")
    frames = [_frame_bytes(path) for path in (out / "owner").rglob("*.html")]
    limits.limit("largest frame of a page", max(frames) / KB, 20, " kB")


def _frame_bytes(path: Path) -> int:
    html = path.read_bytes()
    begins = html.index(b'<article class="md-content__inner')
    return begins + len(html) - html.index(b"</article>", begins)


def few_pages(work: Path, limits: Limits) -> None:
    """Books of the demo property: of somebody hired, beside plain MkDocs, and the owner's."""
    hired, owner = "hired-sprayer", "owner"
    book = book_of(DEMO, hired)
    tree = stage(book, work / "hired-tree")
    own, both, plain, whole = in_turn(
        without_one_file(DEMO, work / "hired", hired),
        building(DEMO, work / "hired-both", hired),
        plainly(tree, work / "plain-hired"),
        building(DEMO, work / "demo", owner),
    )
    print(f"\nbooks of the demo property; the least of {RUNS} in turn")
    limits.aim(f"{hired}, {len(book.pages)} pages, the folder alone", own, 0.8)
    limits.aim(f"{hired}, the one file too", both)
    limits.aim("plain mkdocs build of its tree", plain)
    limits.limit("ratio", own.wall_s / plain.wall_s, 0.5)
    limits.aim(f"{owner}, {len(book_of(DEMO).pages)} pages", whole, 1.3)


def one_files(work: Path, limits: Limits) -> None:
    """The one file of each reader of the demo property."""
    books = work / "books"
    run("-m", "generator", "build", str(DEMO), "--out", str(books), "--as-of", str(AS_OF))
    print("\none file of each reader of the demo property")
    for name, size in sizes_mb(books).items():
        limits.limit(f"{name}.html", size, MOST_MB[name], " MB")
    print(f"the same on a phone, slowed {SLOWED} times, the file alone in an empty folder")
    for name in MOST_MB:
        print(f"  {on_a_phone(books, name, work / f'alone-{name}')}")


def checks(work: Path, limits: Limits) -> None:
    """Reading a folder alone."""
    shutil.copytree(STARTER, work / "starter")
    starter, demo, start = in_turn(
        lambda: run("-m", "generator", "check", str(work / "starter")),
        lambda: run("-m", "generator", "check", str(DEMO)),
        lambda: run("-c", "pass"),
    )
    print(f"\nreading a folder; the least of {RUNS} in turn")
    limits.aim("handbook check of the starter", starter, 0.15)
    limits.aim("handbook check of the demo property", demo, 0.30)
    limits.aim("python -c pass", start)


def leak_scan(work: Path, limits: Limits) -> None:
    """Searching what readers get for what is kept from them, as a build does for each."""
    folder, sites = make_property(work / "scanned", SEED, MANY), work / "scanned-sites"
    reader, view = _views(folder)[0]
    building(folder, sites, reader.id)()
    pages = [path.read_bytes() for path in sorted((sites / reader.id).rglob("*.html"))]
    book = work / "scanned-book"
    book.mkdir()
    size_bytes = number = 0
    while size_bytes < SCANNED_BYTES:
        # what stands in a page is of that page alone, what stands around it is not
        page = re.sub(rb"<(p|td|li|dd)\b", rb'<\1 id="n%d"' % number, pages[number % len(pages)])
        (book / f"{number}.html").write_bytes(page)
        size_bytes, number = size_bytes + len(page), number + 1
    took = _scanning(folder, [(reader, view, book)])
    print(f"\n{number} pages, searched for what somebody hired may not see; the least of {RUNS}")
    limits.aim(f"leak scan of {size_bytes / 1e6:.0f} MB", took, 1)
    run("-m", "generator", "build", str(DEMO), "--out", str(sites), "--as-of", str(AS_OF))
    demo = [(reader, view, sites / reader.id) for reader, view in _views(DEMO)]
    limits.aim(f"leak scan of the demo's {len(demo)} readers", _scanning(DEMO, demo), 0.06)


def _views(folder: Path) -> list[tuple[Reader, Plan]]:
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    plan = make_plan(inventory, SEASON, AS_OF)
    return [(reader, seen_by(plan, reader)) for reader in inventory.readers]


def _scanning(folder: Path, books: list[tuple[Reader, Plan, Path]]) -> Took:
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    taken = []
    # as in a command, which does without the collector
    gc.collect()
    gc.disable()
    for _ in range(RUNS):
        begun_s, begun_cpu_s = time.perf_counter(), time.process_time()
        scan = LeakScan(inventory)
        found = [scan.of(reader, view)(book) for reader, view, book in books]
        taken.append(
            Took(time.perf_counter() - begun_s, time.process_time() - begun_cpu_s, math.nan)
        )
        assert not any(found), found
    gc.enable()
    return min(taken, key=lambda took: took.wall_s)


def growth(work: Path, limits: Limits) -> None:
    """What each phase takes as the book grows, beside the pages, in cold processes."""
    runs: dict[int, list[dict[str, float]]] = {MANY: [], MOST: []}
    folders = {n: make_property(work / f"grown-{n}", SEED, n) for n in runs}
    for _ in range(RUNS):
        for screens, folder in folders.items():
            runs[screens].append(told_by(PHASES, str(folder), str(work / "grown")))
    few, most = (
        {phase: min(one[phase] for one in found) for phase in found[0]} for found in runs.values()
    )
    pages = most.pop("pages") / few.pop("pages")
    print(
        f"\ngrowth from {MANY} to {MOST} screens, which makes {pages:.2f} times the pages; "
        f"the least of {RUNS}"
    )
    for phase, seconds in most.items():
        ratio = seconds / few[phase]
        limits.limit(f"{phase}, {few[phase]:.2f} to {seconds:.2f} s", ratio / pages, 1.1)


def live(work: Path) -> None:
    """What a preview takes from a note that was typed to its page, and the memory it holds."""
    print("\na note typed on one place while the pages are previewed, the quickest round")
    for whose, folder, most_s in (
        ("the demo property", DEMO, 0.25),
        (f"a property of {MANY} screens", work / f"grown-{MANY}", 0.35),
    ):
        took = told_by(LIVE, str(folder))
        print(
            f"  {whose}: its page in {took['looked_at_s']:.2f} s (aim {most_s}), all pages in "
            f"{took['whole_s']:.2f} s, {took['memory_mb']:.0f} MB at the most (aim 200)"
        )


def machine() -> str:
    """What this runs on: processor, cores, system, Python."""
    model = platform.processor() or platform.machine()
    cpuinfo = Path("/proc/cpuinfo")
    if cpuinfo.is_file():
        names = [line for line in cpuinfo.read_text().splitlines() if line.startswith("model name")]
        model = names[0].partition(":")[2].strip() if names else model
    system = f"{platform.system()} {platform.release()}"
    return f"{model}, {os.cpu_count()} cores, {system}, Python {platform.python_version()}"


def main() -> int:
    """Run every comparison; return 1 where a limit is missed."""
    print(machine())
    if hasattr(os, "getloadavg"):
        print(f"load before: {os.getloadavg()[0]:.2f}")
    limits = Limits()
    with tempfile.TemporaryDirectory() as folder:
        work = Path(folder)
        many_pages(work, limits)
        few_pages(work, limits)
        one_files(work, limits)
        checks(work, limits)
        leak_scan(work, limits)
        growth(work, limits)
        live(work)
        for folder, whose in (
            (DEMO, "the demo property"),
            (work / f"grown-{MANY}", f"a property of {MANY} screens"),
        ):
            listed = load_inventory(folder).inventory
            assert listed is not None
            tell_later(listed, whose)
        compare_shapes(work, limits.limit)
        compare_planning(work, ENVIRONMENT)
    print("\nevery limit is met" if not limits.missed else f"\nmissed: {', '.join(limits.missed)}")
    return 1 if limits.missed else 0


if __name__ == "__main__":
    sys.exit(main())
