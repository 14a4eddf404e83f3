"""Authored prose: chapters and safety callouts, with values drawn from reference data."""

import dataclasses
import re
from collections.abc import Iterable
from functools import cache

import yaml

from generator.dataclass import dataclass
from generator.kept import STORE
from generator.lookup import shipped
from generator.plan.model.finding import Finding
from generator.reference.library import values
from generator.reference.steps import step_plans
from generator.working import Reference

# The parts of the book in the order of the work, by the word that a chapter names one with.
BOOK_PARTS = {
    "ground": "Getting the ground ready",
    "seed": "Seed and sowing",
    "after": "From seedling to screen",
    "food": "Food, water and rows",
    "spraying": "Labels, tanks and machines",
    "hunting": "Walking in",
    "safety": "Safety",
    "papers": "Records and papers",
    "limits": "About this book",
}

_YAML = f"yaml values {yaml.__version__}"
_FRONT = re.compile(r"\A---\n(.*?)\n---\n(.*)\Z", re.DOTALL)
_TYPING = re.compile(r"^## What to type\n.*?(?=^## |\Z)", re.DOTALL | re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Chapter:
    """One chapter: its title, the part of the book it stands in, the readers it is for, its text.

    The text is Markdown before values are filled in.
    """

    name: str
    title: str
    part: str
    readers: tuple[str, ...]
    body: str


@cache
def chapters() -> tuple[Chapter, ...]:
    """Return every chapter, part by part of the book, by title within a part."""
    paths = (shipped("content") / "chapters").glob("*.md")
    found = (_chapter(path.stem, path.read_text(encoding="utf-8")) for path in paths)
    order = list(BOOK_PARTS)
    return tuple(sorted(found, key=lambda chapter: (order.index(chapter.part), chapter.title)))


@cache
def sentences() -> dict[str, str]:
    """Return what pages say in some cases and not in others, by template and name."""
    text = (shipped("content") / "sentences.yaml").read_text(encoding="utf-8")
    told = STORE.made_of(_YAML, text, yaml.safe_load)
    return {
        f"{template}.{name}": sentence
        for template, named in told.items()
        for name, sentence in named.items()
    }


@cache
def search_words() -> dict[str, str]:
    """Return what is typed to find a page, by its address, or by the folder of pages alike."""
    text = (shipped("content") / "search_words.yaml").read_text(encoding="utf-8")
    return _listed(text)


@cache
def input_words() -> dict[str, str]:
    """Return what formulas call their inputs on a page, by the names of the inputs."""
    text = (shipped("content") / "input_words.yaml").read_text(encoding="utf-8")
    return _listed(text)


@cache
def finding_heads() -> dict[str, str]:
    """Return what a stop, caution or note is about in a few words, by its code.

    `{thing}` stands for what one deed settles for all that it is said of.
    """
    text = (shipped("content") / "finding_heads.yaml").read_text(encoding="utf-8")
    return _listed(text)


def _listed(text: str) -> dict[str, str]:
    listed: dict[str, str] = STORE.made_of(_YAML, text, yaml.safe_load)
    return listed


def head_words(finding: Finding) -> str:
    """Return the head of a finding."""
    return finding_heads()[finding.code].format(thing=finding.thing)


@cache
def drawing(name: str) -> str:
    """Return a drawing of the content as SVG. Raises FileNotFoundError where there is none."""
    return (shipped("content") / "drawings" / f"{name}.svg").read_text(encoding="utf-8")


def written_for(reader: str) -> list[Chapter]:
    """Return the chapters written for a kind of reader; what to type is for the owner alone."""
    found = [chapter for chapter in chapters() if reader in chapter.readers]
    if reader == "owner":
        return found
    return [dataclasses.replace(one, body=_TYPING.sub("", one.body)) for one in found]


def chapters_for(reader: str, names: Iterable[str]) -> tuple[Chapter, ...]:
    """Return the chapters of these names that a reader has, in the order of the names.

    Raises KeyError for a name that no chapter has.
    """
    by_name = _chapters_by_name()
    return tuple(chapter for name in names if reader in (chapter := by_name[name]).readers)


@cache
def _chapters_by_name() -> dict[str, Chapter]:
    return {chapter.name: chapter for chapter in chapters()}


def _chapter(name: str, text: str) -> Chapter:
    found = _FRONT.match(text)
    if found is None:
        raise ValueError(f"chapter {name} has no front matter")
    front = STORE.made_of(_YAML, found[1], yaml.safe_load)
    part = front.get("part")
    if part not in BOOK_PARTS:
        raise ValueError(
            f"chapter {name}: part is {part}; it must be one of {', '.join(BOOK_PARTS)}"
        )
    return Chapter(name, front["title"], part, tuple(front["readers"]), found[2])


@cache
def callout(operation: str) -> str:
    """Return the cautions of an operation as Markdown before values are filled in."""
    path = shipped("content") / "callouts" / f"{operation}.md"
    return path.read_text(encoding="utf-8")


def named_value(key: str) -> Reference:
    """Return a reference value by name, or a step's setting as `plan.step.setting`.

    Raises KeyError for a name that is not in the data.
    """
    if key in values():
        return values()[key]
    for plan in step_plans().values():
        for step in plan.steps:
            for setting in step.settings:
                if key == f"{plan.id}.{step.id}.{setting.name}":
                    return setting
    raise KeyError(key)
