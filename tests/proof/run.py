"""Shows whether two states of the program make the same handbooks, byte by byte.

    python -m tests.proof.run [COMMIT] [--jobs N]

The working tree is held against a commit, the last one where none is named: the books that each
makes of the demo, the starter and twenty generated properties for every reader, as SHA-256 of every
file, what `check --strict` says and ends with, and the list of `explain`. The demo and the starter
are each state's own, the generated properties are the same files for both. What a commit makes is
kept in build/proof. Ends with 1 where anything differs, and names it.
"""

from __future__ import annotations

import argparse
import contextlib
import hashlib
import io
import json
import os
import shutil
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from tests.fuzz.damage import damaged
from tests.fuzz.tried import tried, write
from tests.properties import make_property

CHECKOUT = Path(__file__).resolve().parents[2]
KEPT = CHECKOUT / "build" / "proof"
GENERATED = 10
# Midday of August 20, 2026: the day where a property types none.
DAY = "1787227200"
SHOWN = 30
# What a build says only where it takes a while.
PROGRESS = ("Writing the book for", "Building ")

Proof = dict[str, str]  # what was made, by the property and what it is, to the SHA-256 of it


def properties(folder: Path) -> list[Path]:
    """Write the generated properties, the same in every run: half of them whole, half damaged."""
    whole = [make_property(folder / f"whole-{n}", n, 2 + n % 4) for n in range(GENERATED)]
    return [*whole, *_damaged(folder)]


def _damaged(folder: Path) -> Iterator[Path]:
    """Write the first damaged properties that can still be planned."""
    seed = found = 0
    while found < GENERATED:
        into = folder / f"damaged-{seed}"
        write(damaged(seed), into)
        if tried(into) == "plan":
            found += 1
            yield into
        else:
            shutil.rmtree(into)
        seed += 1


def proof_of(tree: Path, generated: Sequence[Path], jobs: int) -> Proof:
    """Return what the program in a tree makes of its own demo and starter, and of the others."""
    shipped = [tree / "demo_property", tree / "generator" / "starter"]
    with ThreadPoolExecutor(jobs) as pool:
        made = pool.map(lambda one: _made_of(tree, one), [*shipped, *generated])
        return {name: digest for one in made for name, digest in one.items()}


def _made_of(tree: Path, folder: Path) -> Proof:
    with tempfile.TemporaryDirectory() as scratch:
        target = Path(scratch) / "books"
        told = {
            word: _told(tree, word, str(folder), *more).replace(scratch, "")
            for word, more in (
                ("build", ("--out", str(target))),
                ("check", ("--strict",)),
                ("explain", ()),
            )
        }
        proof = {f"{folder.name}: {word}": _digest(text.encode()) for word, text in told.items()}
        for path in sorted(target.rglob("*")):
            if path.is_file():
                name = path.relative_to(target).as_posix()
                proof[f"{folder.name}/{name}"] = _digest(path.read_bytes())
        return proof


def _told(tree: Path, *words: str) -> str:
    """Return what a command says and ends with; the folder of the tree is taken out of it."""
    environment = {**os.environ, "PYTHONPATH": str(tree), "SOURCE_DATE_EPOCH": DAY}
    ended = subprocess.run(
        [sys.executable, "-m", "generator", *words],
        cwd=tree,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    said = f"{ended.returncode}\n{ended.stdout}\n{ended.stderr}".replace(f"{tree}/", "")
    return "\n".join(line for line in said.splitlines() if not line.startswith(PROGRESS))


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def differences(before: Proof, now: Proof) -> list[str]:
    """Return a line for everything that is not the same."""
    gone = [f"gone: {one}" for one in before.keys() - now.keys()]
    come = [f"new: {one}" for one in now.keys() - before.keys()]
    other = [f"differs: {one}" for one in before.keys() & now.keys() if before[one] != now[one]]
    return sorted([*gone, *come, *other])


@contextlib.contextmanager
def tree_of(commit: str) -> Iterator[Path]:
    """The files of a commit in a folder of their own, for as long as they are needed."""
    packed = subprocess.run(
        ["git", "archive", commit], cwd=CHECKOUT, capture_output=True, check=True
    ).stdout
    with tempfile.TemporaryDirectory() as folder:
        with tarfile.open(fileobj=io.BytesIO(packed)) as files:
            files.extractall(folder, filter="data")
        yield Path(folder)


def _named(commit: str) -> str:
    """Return the whole name of a commit. Raises CalledProcessError where there is none."""
    return subprocess.run(
        ["git", "rev-parse", "--verify", f"{commit}^{{commit}}"],
        cwd=CHECKOUT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout.strip()


def main(words: Sequence[str] | None = None) -> int:
    """Hold the working tree against a commit; return 1 where anything differs."""
    parser = argparse.ArgumentParser(prog="tests.proof.run", description=__doc__)
    parser.add_argument("commit", nargs="?", default="HEAD")
    parser.add_argument("--jobs", type=int, default=os.cpu_count() or 1)
    asked = parser.parse_args(words)
    commit = _named(asked.commit)
    with tempfile.TemporaryDirectory() as folder:
        generated = properties(Path(folder))
        inputs = [path.read_bytes() for one in generated for path in sorted(one.rglob("*.*"))]
        kept = KEPT / f"{commit}-{_digest(b''.join(inputs))[:12]}.json"
        if not kept.is_file():
            with tree_of(commit) as tree:
                kept.parent.mkdir(parents=True, exist_ok=True)
                kept.write_text(json.dumps(proof_of(tree, generated, asked.jobs)))
        before = json.loads(kept.read_text())
        now = proof_of(CHECKOUT, generated, asked.jobs)
    found = differences(before, now)
    print(f"{len(now)} files and answers; all of them: {_digest(json.dumps(now).encode())}")
    print(*found[:SHOWN], sep="\n")
    print(f"{len(found)} differ from {commit[:12]}" if found else f"the same as {commit[:12]}")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
