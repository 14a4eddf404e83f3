"""A fault in one place hides nothing in another, and stands where the thing itself is."""

from __future__ import annotations

import random
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from tests.inventories.overlaid import BAD, GOOD, overlaid, place_said

# What no YAML reads, put into a line that holds a key and its value.
SPOILED: dict[str, Callable[[str], str]] = {
    "no colon": lambda line: line.replace(": ", "  ", 1),
    "a bracket left open": lambda line: line.replace(": ", ": [", 1),
    "a quote left open": lambda line: line.replace(": ", ': "', 1),
    "a link": lambda line: line.replace(": ", ": *", 1),
    "an at sign": lambda line: line.replace(": ", ": @", 1),
    "a second colon": lambda line: f"{line}: x",
    "too far in": lambda line: f"   {line}",
    "a tab": lambda line: "\t" + line.lstrip(),
}
OF_A_KEY = re.compile(r" +[a-z_]+: +[^\[{|>&*]+")
AN_ID = re.compile(r"(?P<before>  - \{?id: )(?P<id>[a-z][a-z-]*)")
RUNS, LONG_RUNS = 20, 3000


def _entries(lines: list[str]) -> list[range]:
    """The lines of each entry of a file's lists, by their numbers from 0."""
    starts = [n for n, line in enumerate(lines) if AN_ID.match(line)]
    ends = [n for n, line in enumerate(lines) if not line.startswith("    ")] + [len(lines)]
    return [range(start, min(n for n in ends if n > start)) for start in starts]


def check_two_places(seed: int, folder: Path) -> None:
    """Fails where a line that is no YAML hides an id that cannot be one, in another entry."""
    chance = random.Random(seed)
    overlaid("good", chance.choice(GOOD), folder)
    path = chance.choice([folder / "seed.yaml", folder / "screens.yaml", folder / "products.yaml"])
    lines = path.read_text(encoding="utf-8").split("\n")
    both = [(one, other) for one in _entries(lines) for other in _entries(lines) if one != other]
    spoilable = [n for one, _ in both for n in one if OF_A_KEY.fullmatch(lines[n])]
    if not spoilable:
        lines += ["  - id: spare", "    name: Spare"]
        spoilable = [len(lines) - 1]
    spoilt = chance.choice(spoilable)
    other = chance.choice([one[0] for one in _entries(lines) if spoilt not in one])
    kind = chance.choice(sorted(SPOILED))
    lines[spoilt] = SPOILED[kind](lines[spoilt])
    found = AN_ID.match(lines[other])
    assert found is not None
    lines[other] = lines[other].replace(found["id"], found["id"].upper(), 1)
    text = "\n".join(lines).encode()
    problems = load_inventory(folder, {path.name: text}).problems
    told = [(one.line, one.column, one.code) for one in problems if one.file == path.name]
    assert (other + 1, len(found["before"]) + 1, "F210") in told, (kind, lines[spoilt], told)
    near = (spoilt + 1, spoilt + 2)  # a line too far in may be told at the one that follows it
    assert any(line in near and code < "F130" for line, _, code in told), (kind, told)
    assert len(problems) <= 3, [str(one) for one in problems]


def test_a_line_that_is_no_yaml_does_not_hide_a_fault_elsewhere_in_its_file(tmp_path: Path) -> None:
    for seed in range(RUNS):
        check_two_places(seed, tmp_path / str(seed))


@pytest.mark.long
def test_no_such_line_hides_a_fault(tmp_path: Path) -> None:
    for seed in range(LONG_RUNS):
        check_two_places(seed, tmp_path / "property")
        shutil.rmtree(tmp_path / "property")


OF_RULES = [name for name in BAD if "F300" < name < "F430" or name > "F437"]


@pytest.mark.parametrize("name", OF_RULES[::8])
def test_a_record_that_cannot_be_read_does_not_hide_a_broken_rule(
    name: str, tmp_path: Path
) -> None:
    folder = overlaid("bad", name, tmp_path / "property")
    stands = folder / "stands.yaml"
    before = stands.read_text(encoding="utf-8")
    stands.write_text(f"{before}  - {{id: spare-stand, name: Spare, seat_height_ft: high}}\n")
    found = [f"{one.file} {one.line} {one.code}" for one in load_inventory(folder).problems]
    assert sorted(found) == sorted(
        [place_said(name), f"stands.yaml {before.count(chr(10)) + 1} F206"]
    )


@pytest.mark.parametrize("name", [one for one in BAD if one.startswith(("F2", "F3", "F4"))][::6])
def test_a_fault_stands_at_the_beginning_of_a_word_or_a_group(name: str, tmp_path: Path) -> None:
    folder = overlaid("bad", name, tmp_path / "property")
    (fault,) = load_inventory(folder).problems
    if not fault.file.endswith(".yaml") or fault.code in ("F214", "F215"):
        return
    line = (folder / fault.file).read_text(encoding="utf-8").split("\n")[fault.line - 1]
    before, thing = line[: fault.column - 1], line[fault.column - 1 :]
    if not thing:  # nothing stands there: it is told where it should
        assert before.endswith(":")
        return
    assert re.fullmatch(r"|.*[\s\[{(-]", before), line
    assert thing[0].strip(), line


def test_an_id_given_twice_is_told_at_the_second_id(tmp_path: Path) -> None:
    folder = overlaid("good", GOOD[0], tmp_path / "property")
    (folder / "stands.yaml").write_text(
        "stands:\n  - name: A\n    id: oak\n  - name: B\n    id: oak\n"
    )
    (fault,) = load_inventory(folder).problems
    assert (fault.line, fault.column, fault.code) == (5, 9, "F209")
    assert "stands.yaml:3" in fault.what


def test_what_rests_on_a_thing_that_cannot_be_read_is_not_told_again(tmp_path: Path) -> None:
    folder = overlaid("good", GOOD[0], tmp_path / "property")
    seed = folder / "seed.yaml"
    seed.write_text(seed.read_text().replace("purity_pct: 98", "purity_pct: high"))
    assert [one.code for one in load_inventory(folder).problems] == ["F206"]
    seed.write_text(seed.read_text().replace("purity_pct: high", "purity_pct high"))
    assert {one.file for one in load_inventory(folder).problems} == {"seed.yaml"}


def test_a_word_of_the_property_file_that_cannot_be_read_hides_no_rule(tmp_path: Path) -> None:
    folder = overlaid("bad", "F309_late_before_early", tmp_path / "property")
    path = folder / "property.yaml"
    path.write_text(path.read_text().replace("season: 2027", "season: soon"))
    assert sorted(one.code for one in load_inventory(folder).problems) == ["F203", "F309"]
