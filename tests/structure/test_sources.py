"""Every source that is named is known, every known source is used, and no record is bare."""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.compute.formulas import FORMULAS
from tests.reasons import every
from tests.structure.modules import CHECKOUT

DATA = CHECKOUT / "generator" / "reference" / "data"
SOURCES = yaml.safe_load((DATA / "sources.yaml").read_text(encoding="utf-8"))
TRUST = {"published", "definition", "common_practice", "memory"}
FIELDS = {"title", "publisher", "year", "address", "trust", "note"}
# The two honest answers where nothing was read stand ready, used or not.
STANDING = {"common_practice", "memory", "owner_steps"}
SOURCE_KEYS = {"source", "why_source", "weak_source", "works_source"}
CITED = re.compile(r"""\bsource\(\s*["']([^"']+)["']\s*\)""")


def record_faults(records: dict[str, dict[str, Any]]) -> Iterator[str]:
    """What is wrong with the records of a list of sources."""
    for key, record in records.items():
        if not re.fullmatch(r"[a-z][a-z0-9_]*", key):
            yield f"{key}: a key is small letters, digits and underscores"
        if record.keys() - FIELDS:
            yield f"{key}: unknown {sorted(record.keys() - FIELDS)}"
        if not str(record.get("title", "")).strip():
            yield f"{key}: no title"
        if record.get("trust") not in TRUST:
            yield f"{key}: trust is {record.get('trust')!r}"
        if record.get("trust") == "published" and not record.get("address"):
            yield f"{key}: said to be read, without the address it was read at"


def keys_in_data(value: object) -> Iterator[str]:
    """The source keys in a YAML value, however deep."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if key in SOURCE_KEYS and isinstance(inner, str):
                yield inner
            else:
                yield from keys_in_data(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from keys_in_data(inner)


def keys_in_files(paths: Iterable[Path]) -> set[str]:
    return {
        key
        for path in paths
        for key in keys_in_data(yaml.safe_load(path.read_text(encoding="utf-8")))
    }


def keys_in_prose(text: str) -> set[str]:
    """The sources a template or chapter cites by name, as `source("uga_pls")`."""
    return set(CITED.findall(text))


def named() -> dict[str, set[str]]:
    """Every source key that is named, by the part that names it."""
    prose = [*(CHECKOUT / "content").rglob("*.md"), *(CHECKOUT / "site_templates").rglob("*.jinja")]
    texts = [path.read_text(encoding="utf-8") for path in prose]
    return {
        "formulas": {formula.source for formula in FORMULAS.values()},
        "data": keys_in_files(one for one in DATA.rglob("*.yaml") if one.name != "sources.yaml"),
        "findings": {one.value.source for one in every() if one.value.source},
        "prose": set().union(*map(keys_in_prose, texts)),
        "published cases": keys_in_files((CHECKOUT / "tests" / "published").glob("*.yaml")),
    }


NAMED = named()


def test_every_record_is_whole() -> None:
    assert list(record_faults(SOURCES)) == []


@pytest.mark.parametrize("part", NAMED)
def test_every_source_named_is_known(part: str) -> None:
    assert NAMED[part] - SOURCES.keys() == set()


def test_every_source_known_is_named() -> None:
    assert SOURCES.keys() - set().union(*NAMED.values()) - STANDING == set()


def test_formulas_data_and_cases_do_name_sources() -> None:
    assert "uga_pls" in NAMED["formulas"]
    assert "tpc_timing" in NAMED["data"]
    assert "albany_calibration" in NAMED["published cases"]


def test_no_title_is_given_twice() -> None:
    titles = [record["title"] for record in SOURCES.values()]
    assert len(titles) == len(set(titles))


@pytest.mark.parametrize(
    ("key", "record", "fault"),
    [
        ("Key", {"title": "A", "trust": "memory"}, "small letters"),
        ("key", {"trust": "memory"}, "no title"),
        ("key", {"title": " ", "trust": "memory"}, "no title"),
        ("key", {"title": "A"}, "trust is None"),
        ("key", {"title": "A", "trust": "certain"}, "trust is 'certain'"),
        ("key", {"title": "A", "trust": "memory", "author": "B"}, "unknown ['author']"),
        ("key", {"title": "A", "trust": "published"}, "without the address"),
    ],
)
def test_a_bare_record_is_named(key: str, record: dict[str, Any], fault: str) -> None:
    (said,) = record_faults({key: record})
    assert fault in said


def test_keys_are_found_at_any_depth() -> None:
    data = yaml.safe_load(
        "why_source: one\nsteps: [{opens: [{date: 01-20, source: two}], source_note: no}]\n"
    )
    assert list(keys_in_data(data)) == ["one", "two"]


def test_a_source_cited_in_prose_is_found() -> None:
    assert keys_in_prose("{{ source(\"one\") }} and {{ source( 'two' ) }}") == {"one", "two"}
    assert keys_in_prose("{{ source(step.why_source) }}") == set()
