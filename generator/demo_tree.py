"""Has `mkdocs build` and `mkdocs serve`, typed in a checkout, show the demo property's own book.

mkdocs.yml names this file among its hooks. What is authored has no values in it until a book is
made, so each build stages that book first, in a process of its own: under `mkdocs serve` what was
changed in a chapter, a template, the data or the demo property is read anew.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
import yaml

if TYPE_CHECKING:
    from generator.book.model import Book

CHECKOUT = Path(__file__).resolve().parent.parent
AUTHORED = "content"  # docs_dir of mkdocs.yml, which `mkdocs serve` watches by itself
WATCHED = ("demo_property", "site_templates", "generator/reference/data")
_trees: list[Path] = []


def on_config(config: Any) -> None:
    """Stage the demo property's book and let MkDocs build that."""
    tree = Path(tempfile.mkdtemp(prefix="handbook-")) / "tree"
    _trees.append(tree)
    _stage_apart(tree)
    settings = yaml.safe_load((tree / "mkdocs.yml").read_text(encoding="utf-8"))
    config["site_name"], config["nav"] = settings["site_name"], settings["nav"]
    config["extra"].update(settings["extra"])
    config["docs_dir"] = str(tree / "docs")
    config["watch"] += [str(CHECKOUT / name) for name in WATCHED]


def on_post_build(config: Any) -> None:
    """Leave no staged tree behind, and have what is authored watched instead."""
    config["docs_dir"] = str(CHECKOUT / AUTHORED)
    _clear()


def on_build_error(error: Exception) -> None:  # noqa: ARG001 - MkDocs calls it so
    """Leave no staged tree behind."""
    _clear()


def _stage_apart(tree: Path) -> None:
    command = [sys.executable, "-m", "generator.demo_tree", str(tree)]
    done = subprocess.run(command, cwd=CHECKOUT, stderr=subprocess.PIPE, text=True, check=False)
    if done.returncode:
        raise click.ClickException(f"The demo property makes no book.\n{done.stderr.strip()}")


def _clear() -> None:
    while _trees:
        shutil.rmtree(_trees.pop().parent, ignore_errors=True)


def _demo_book() -> Book:
    """Return the owner's book of the demo property; ends with every fault where it has one."""
    from generator.book.make import make_book
    from generator.inventory.load import load_inventory
    from generator.lookup import shipped
    from generator.plan.build.season_plan import make_plan

    loaded = load_inventory(shipped("demo_property"))
    if loaded.inventory is None:
        sys.exit("\n".join(map(str, loaded.problems)))
    own = loaded.inventory.property
    if own.as_of is None:
        sys.exit("property.yaml has no as_of:, and the book of the demo property is of one day")
    return make_book(make_plan(loaded.inventory, own.season, own.as_of))


if __name__ == "__main__":
    from generator.site.stage import stage

    stage(_demo_book(), Path(sys.argv[1]))
