"""Pages speak American English, one word for one thing: words_not_used.yaml lists the others.

Keys of the property files keep their spelling; they are code, and code is not read here.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.structure.modules import CHECKOUT

LISTED = yaml.safe_load(
    (CHECKOUT / "tests" / "structure" / "words_not_used.yaml").read_text(encoding="utf-8")
)
DATA = CHECKOUT / "generator" / "reference" / "data"
# Fields of the reference data that a page shows as prose; a title or a place in a source is as its
# author wrote it.
PROSE_FIELDS = {
    "name", "words", "meaning", "why", "if_missed", "ticks", "asks", "looks", "weak", "rain",
    "decides", "sign_off",
}  # fmt: skip
SPEAKING = (
    *("cli", "said", "typed", "run_day", "scanning", "log_commands", "save_commands"),
    *("site/leaks", "site/containers", "inventory/undo"),
)
SPOKEN = (
    *sorted((CHECKOUT / "generator" / "plan" / "findings").glob("*.py")),
    *(CHECKOUT / "generator" / f"{name}.py" for name in SPEAKING),
    *sorted((CHECKOUT / "generator" / "saved").glob("*.py")),
)
IN_TEMPLATE = re.compile(r"{#.*?#}|{%.*?%}|{{.*?}}|<[^<>]*>", re.DOTALL)
# What is typed: in backticks, in bold by its key, an id, a name with an underscore.
TYPED = re.compile(
    r"`[^`\n]*`|\*\*[a-z_]+(?:: ?[a-z]+)?:?\*\*|\{[^{}]*\}|\b\w+_\w+\b|<code>.*?</code>"
)


def prose_of_template(text: str) -> str:
    """What a template or a chapter says, without what it computes, marks up or has typed."""
    text = re.sub(r"<code>.*?</code>", " ", text, flags=re.DOTALL)
    return TYPED.sub(" ", IN_TEMPLATE.sub(" ", text))


def strings(record: Any, field: str = "") -> Iterator[str]:
    """The prose of a file of reference data."""
    if isinstance(record, dict):
        for key, value in record.items():
            yield from strings(value, key)
    elif isinstance(record, list):
        for value in record:
            yield from strings(value, field)
    elif isinstance(record, str) and field in PROSE_FIELDS:
        yield TYPED.sub(" ", record)


def said_by(text: str) -> Iterator[str]:
    """The texts of a module, its docstrings aside."""
    tree = ast.parse(text)
    documented = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        is_text = isinstance(node, ast.Constant) and isinstance(node.value, str)
        # a word alone is a name of the program's own
        if is_text and id(node) not in documented and " " in node.value:
            yield TYPED.sub(" ", node.value)


def pages() -> Iterator[tuple[str, str]]:
    """Every file that pages and commands take words from, with its prose."""
    content, templates = CHECKOUT / "content", CHECKOUT / "site_templates" / "pages"
    for path in (*sorted(content.rglob("*.md")), *sorted(templates.glob("*.jinja"))):
        yield _named(path), prose_of_template(path.read_text(encoding="utf-8"))
    # what is typed into a search is in the words of whoever types
    for path in sorted(set(content.glob("*.yaml")) - {content / "search_words.yaml"}):
        told = yaml.safe_load(path.read_text(encoding="utf-8"))
        yield _named(path), "\n".join(map(prose_of_template, _leaves(told)))
    for path in sorted(DATA.rglob("*.yaml")):
        if path.name != "sources.yaml":
            told = yaml.safe_load(path.read_text(encoding="utf-8"))
            yield _named(path), "\n".join(strings(told))
    for path in SPOKEN:
        yield _named(path), "\n".join(said_by(path.read_text(encoding="utf-8")))
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    yield "README.md", prose_of_template(readme)


def _named(path: Path) -> str:
    return path.relative_to(CHECKOUT).as_posix()


def _leaves(told: Any) -> Iterator[str]:
    for value in told.values() if isinstance(told, dict) else told:
        if isinstance(value, str):
            yield value
        elif isinstance(value, dict | list):
            yield from _leaves(value)


def not_used(text: str) -> list[str]:
    """The words in a text that are not used, each with what stands in its place."""
    found = []
    for one in LISTED:
        for met in re.finditer(rf"(?<![\w-])(?:{one['not']})(?![\w-])", text, re.IGNORECASE):
            if not _is_meant_otherwise(met, text, one.get("but", [])):
                found.append(f"{met[0]}: {one['use']}")
    return found


def _is_meant_otherwise(met: re.Match[str], text: str, phrases: list[str]) -> bool:
    for phrase in phrases:
        for at in re.finditer(re.escape(phrase), text, re.IGNORECASE):
            if at.start() <= met.start() and met.end() <= at.end():
                return True
    return False


PAGES = dict(pages())


@pytest.mark.parametrize("name", PAGES)
def test_prose_says_it_in_american_words_and_one_word_for_one_thing(name: str) -> None:
    assert not_used(PAGES[name]) == []


def test_prose_of_every_kind_is_read() -> None:
    for name, words in (
        ("content/callouts/cut.md", "Two tree lengths."),
        ("content/sentences.yaml", "Nothing was found"),
        ("content/finding_heads.yaml", "Choose a product"),
        ("site_templates/pages/weeds.md.jinja", "Declared noxious here"),
        ("generator/reference/data/steps/frost_seeded_native_grass.yaml", "Frost seed the grass"),
        ("generator/reference/data/words.yaml", "a hunting stand"),
        ("generator/plan/findings/about_labels.py", "label card"),
        ("generator/log_commands.py", "Day it was done"),
        ("README.md", "by the label in your hand"),
    ):
        assert words in " ".join(PAGES[name].split()), name


def test_a_word_that_is_not_used_is_seen_and_what_is_typed_is_not_read() -> None:
    assert not_used("The neighbour's colour") == ["colour: color", "neighbour: neighbor"]
    assert not_used("quiet dates, 5 % at 28 F") == [
        "5 %: the sign without a space",
        "28 F: °F",
        "quiet dates: stay-out dates",
    ]
    assert not_used("a guard on the tree, before 12 June, in autumn")
    assert not_used("**Guards.** Chain guards front and rear, and the shield") == []
    assert not_used(prose_of_template("type `licence_class`, **upkeep:** or {{ colour }}")) == []
    assert not_used("A stand is for a hunter. It hangs in an oak; the color is gray.") == []
