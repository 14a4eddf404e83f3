"""Damages tiny properties by the thousand, and sees that each ends in a plan or in clear faults.

    python -m tests.fuzz.run [--from SEED] [--to SEED] [--jobs N] [--books EVERY] [--afresh]

Every seed makes one damaged property, the same on every machine; `--from N --to N+1` tries one and
prints what was done to it. Each is read and planned, and every so many that plan make the books of
all their readers. None may raise, take over 60 seconds of the processor, or a gigabyte more than
the process held. What is found is kept in build/fuzz, and a range that was broken off goes on where
it stopped. Ends with 1 where anything was found.
"""

from __future__ import annotations

import argparse
import contextlib
import json
import os
import resource
import shutil
import signal
import sys
import tempfile
import time
import traceback
import warnings
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from tests.forked import first_ended
from tests.fuzz.bases import known
from tests.fuzz.damage import Damaged, damaged
from tests.fuzz.tried import tried, write

KEPT = Path(__file__).resolve().parents[2] / "build" / "fuzz"
WHOLE = 100_000
# So many seeds go to one process before the next is made.
CHUNK = 250
MOST_S = 60
MOST_BYTES = 1 << 30
PUBLISHED_EVERY = 20
KIB = 1024 if sys.platform != "darwin" else 1


def chunks(first: int, end: int) -> list[range]:
    """Return a range of seeds in parts that begin at the same seeds whatever the range is."""
    starts = [first, *range(first - first % CHUNK + CHUNK, end, CHUNK)]
    return [range(one, min(one - one % CHUNK + CHUNK, end)) for one in starts if one < end]


def run_chunk(seeds: range, every: int, told: Path) -> None:
    """Try seeds one after the other, and write a line about each; ends the process it is in."""
    warnings.simplefilter("error")
    held = _bytes_now()
    with contextlib.suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_AS, (held + 2 * MOST_BYTES, held + 2 * MOST_BYTES))
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * KIB
    with tempfile.TemporaryDirectory() as scratch, told.open("a", encoding="utf-8") as lines:
        for seed in seeds:
            lines.write(json.dumps({"seed": seed}) + "\n")
            lines.flush()
            begun = time.process_time()
            signal.setitimer(signal.ITIMER_PROF, MOST_S)
            one = outcome(seed, every, Path(scratch))
            signal.setitimer(signal.ITIMER_PROF, 0)
            most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * KIB - before
            if most > MOST_BYTES and "found" not in one:
                one["found"] = f"took {most >> 20} MiB more than the process held"
            one |= {"seed": seed, "seconds": round(time.process_time() - begun, 4)}
            lines.write(json.dumps(one | {"mib": most >> 20}) + "\n")


def outcome(seed: int, every: int, scratch: Path) -> dict[str, Any]:
    """Return how far the property of a seed gets, or what was found: the end of the traceback."""
    property_of = damaged(seed)
    books = seed % every == 0
    sites = scratch / "sites" if seed % (every * PUBLISHED_EVERY) == 0 else None
    try:
        reached = tried(write(property_of, scratch / "property"), sites, books=books)
    except Exception as raised:
        last = traceback.format_exc().strip().splitlines()[-14:]
        return {"found": f"{type(raised).__name__}: {raised}"[:500], "trace": last}
    finally:
        if sites is not None:
            shutil.rmtree(sites, ignore_errors=True)
    return {"reached": reached}


def _bytes_now() -> int:
    """The address space of this process, 0 where the system does not tell."""
    statm = Path("/proc/self/statm")
    if not statm.is_file():
        return resource.RLIM_INFINITY
    return int(statm.read_text().split()[0]) * resource.getpagesize()


def in_processes(parts: Sequence[range], every: int, jobs: int) -> Iterator[list[dict[str, Any]]]:
    """Yield what became of every seed of a part, part by part as they are done."""
    waiting, running = list(reversed(parts)), {}
    with tempfile.TemporaryDirectory() as folder:
        while waiting or running:
            while waiting and len(running) < jobs:
                part = waiting.pop()
                told = Path(folder) / f"{part.start}.jsonl"
                sys.stdout.flush()
                child = os.fork()
                if child == 0:
                    _in_child(part, every, told)
                running[child] = (part, told)
            ended, status = first_ended(running)
            part, told = running.pop(ended)
            found, begun = _read(told)
            if begun is not None:
                # the process was stopped over this seed; the rest of its part goes to another
                found.append({"seed": begun, "found": _stopped_by(status)})
            left = range(max((one["seed"] for one in found), default=part.start) + 1, part.stop)
            if left and os.waitstatus_to_exitcode(status) != 0:
                waiting.append(left)
            yield found


def _in_child(part: range, every: int, told: Path) -> None:
    ended = 1
    try:
        run_chunk(part, every, told)
        ended = 0
    except BaseException:
        traceback.print_exc()
    finally:
        os._exit(ended)


def _read(told: Path) -> tuple[list[dict[str, Any]], int | None]:
    """What became of each seed, and the one that was begun and not ended."""
    lines = [json.loads(line) for line in told.read_text(encoding="utf-8").splitlines()]
    found = [one for one in lines if len(one) > 1]
    begun = {one["seed"] for one in lines} - {one["seed"] for one in found}
    return found, min(begun, default=None)


def _stopped_by(status: int) -> str:
    if os.WIFSIGNALED(status):
        by = signal.Signals(os.WTERMSIG(status))
        words = f"took over {MOST_S} s of the processor" if by == signal.SIGPROF else by.name
        return f"the process was stopped: {words}"
    return "the process broke off"


class Kept:
    """What was found of a range so far, kept in a file."""

    def __init__(self, first: int, end: int, every: int) -> None:
        self.path = KEPT / f"{first}-{end}-books-{every}.json"
        self.tally: Counter[str] = Counter()
        self.found: list[dict[str, Any]] = []
        self.done: set[int] = set()
        self.longest, self.seconds, self.mib = (0.0, 0), 0.0, 0
        if self.path.is_file():
            was = json.loads(self.path.read_text(encoding="utf-8"))
            self.tally, self.found, self.done = (
                Counter(was["tally"]),
                was["found"],
                set(was["done"]),
            )
            self.longest, self.seconds, self.mib = tuple(was["longest"]), was["seconds"], was["mib"]

    def add(self, outcomes: Sequence[dict[str, Any]]) -> None:
        """Add what became of some seeds, and write it down."""
        for one in outcomes:
            self.done.add(one["seed"])
            self.tally["found" if "found" in one else one["reached"]] += 1
            self.seconds += one.get("seconds", MOST_S)
            self.longest = max(self.longest, (one.get("seconds", MOST_S), one["seed"]))
            self.mib = max(self.mib, one.get("mib", 0))
            if "found" in one:
                self.found.append(one | {"done": damaged(one["seed"]).done})
        self.path.parent.mkdir(parents=True, exist_ok=True)
        fresh = self.path.with_suffix(".tmp")
        fresh.write_text(json.dumps(self._content(), indent=1), encoding="utf-8")
        fresh.replace(self.path)

    def _content(self) -> dict[str, Any]:
        return {
            "tally": self.tally, "found": self.found, "done": sorted(self.done),
            "longest": self.longest, "seconds": self.seconds, "mib": self.mib,
        }  # fmt: skip

    def told(self) -> str:
        """The counts, the throughput and what took most, in a few lines."""
        count = sum(self.tally.values())
        books = self.tally["book"] + self.tally["site"]
        plans = self.tally["plan"] + books
        throughput = count / self.seconds if self.seconds else 0
        return (
            f"{count} damaged properties: {self.tally['faults']} told their faults, {plans} were "
            f"planned, {self.tally['refused']} have a day no plan is made for, "
            f"{self.tally['found']} were found wanting\n"
            f"{books} went through the books of their readers, {self.tally['site']} of them to a "
            f"site\n"
            f"{self.seconds:.0f} s of the processor, {throughput:.1f} in a second; the longest "
            f"{self.longest[0]:.1f} s (seed {self.longest[1]}), at most {self.mib} MiB more"
        )


def show(one: Damaged) -> None:
    """Print what was done to a property."""
    print(f"from {one.base}:", *one.done, sep="\n  ")


def main(words: Sequence[str] | None = None) -> int:
    """Try the seeds of a range that were not tried yet."""
    parser = argparse.ArgumentParser(prog="tests.fuzz.run", description=__doc__)
    parser.add_argument("--from", dest="first", type=int, default=0, metavar="SEED")
    parser.add_argument("--to", dest="end", type=int, default=WHOLE, metavar="SEED")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--books", type=int, default=15, metavar="EVERY")
    parser.add_argument("--afresh", action="store_true", help="forget what was found before")
    asked = parser.parse_args(words)
    if asked.end - asked.first == 1:
        show(damaged(asked.first))
    kept = Kept(asked.first, asked.end, asked.books)
    if asked.afresh:
        kept.path.unlink(missing_ok=True)
        kept = Kept(asked.first, asked.end, asked.books)
    known()
    parts = [one for one in chunks(asked.first, asked.end) if not set(one) <= kept.done]
    for number, outcomes in enumerate(in_processes(parts, asked.books, asked.jobs), 1):
        kept.add([one for one in outcomes if one["seed"] not in kept.done])
        for one in outcomes:
            if "found" in one:
                print(f"seed {one['seed']}: {one['found']}", flush=True)
        if number % 8 == 0:
            print(kept.told(), flush=True)
    print(kept.told())
    return 1 if kept.found else 0


if __name__ == "__main__":
    sys.exit(main())
