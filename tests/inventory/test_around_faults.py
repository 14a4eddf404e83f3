"""A fault in one place hides nothing in another, and stands where the thing itself is."""

from __future__ import annotations

import random
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from tests.inventories.overlaid import BAD, GOOD, HERE, overlaid, place_said

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
SEED = (HERE / "base" / "seed.yaml").read_text()


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


TWO_SCREENS = """screens:
  - id: lane
    name: Lane screen
    known_as: Strip 1
    length_ft: 1240
    width_ft: 24
    plantings:
      - id: lane-27
        season: 2027
        seed: [{species: switchgrass, lot: sg, rate_pls_lb_per_ac: 8}]
        method: frost_seed
        steps: frost_seeded_native_grass
  - id: creek
    name: Creek screen
    known_as: Strip 2
    length_ft: 600
    width_ft: 24
    plantings:
      - {id: creek-27, season: 2027, method: frost_seed, steps: frost_seeded_native_grass, seed: [
         {species: big-bluestem, lot: bb, rate_pls_lb_per_ac: 5}]}
"""
NAMED = {
    "readers.yaml": "readers:\n  - {id: hired, kind: contractor, jobs: "
    "[{planting: creek-27, steps: [all]}, {planting: lane-27, steps: [all]}]}\n",
    "products.yaml": "products: []\n",
    "routes.yaml": "routes: []\n",
}


def told_of(screens: str) -> list[tuple[int, int, str]]:
    files = {name: text.encode() for name, text in NAMED.items()}
    problems = load_inventory(HERE / "base", {"screens.yaml": screens.encode()} | files).problems
    assert {one.file for one in problems} <= {"screens.yaml"}
    return [(one.line, one.column, one.code) for one in problems]


def test_an_entry_without_its_dash_is_one_fault_and_is_read_as_an_entry() -> None:
    assert told_of(TWO_SCREENS) == []
    without = TWO_SCREENS.replace("  - id: creek", "    id: creek")
    assert told_of(without) == [(13, 5, "F470")]
    assert told_of(without.replace("length_ft: 600", "length_ft: far")) == [
        (13, 5, "F470"),
        (16, 16, "F206"),
    ]
    first = TWO_SCREENS.replace("      - id: lane-27", "        id: lane-27")
    assert told_of(first) == [(8, 9, "F203")]


def test_one_key_given_twice_is_no_dash_that_is_missing() -> None:
    twice = TWO_SCREENS.replace("    name: Creek screen", "    name: Creek\n    name: Creek screen")
    assert told_of(twice) == [(15, 5, "F114")]


@pytest.mark.parametrize("line", [n for n in range(2, 19) if n not in (2, 7, 18)])
@pytest.mark.parametrize("spaces", [0, 1])
def test_a_line_that_begins_too_early_is_one_fault_of_that_line(line: int, spaces: int) -> None:
    lines = TWO_SCREENS.split("\n")
    lines[line - 1] = " " * spaces + lines[line - 1].lstrip()
    ((found, column, code),) = told_of("\n".join(lines))
    assert code == "F107"
    # a dash too far left may be told at the first of its own keys
    assert (found, column) == (line, spaces + 1) or (
        found == line + 1 and "- id" in lines[line - 1]
    )


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("seed.yaml", "id: bb", "id: sg"),
        ("screens.yaml", "id: creek-27", "id: lane-27"),
        ("screens.yaml", "id: creek\n", "id: lane\n"),
    ],
)
def test_an_id_typed_twice_is_told_once(file: str, old: str, new: str) -> None:
    """What is then looked for in vain, or is another than what was meant, follows from it."""
    files = NAMED | {"screens.yaml": TWO_SCREENS, "seed.yaml": SEED}
    before = {name: text.encode() for name, text in files.items()}
    assert load_inventory(HERE / "base", before).problems == ()
    files[file] = files[file].replace(old, new)
    after = {name: text.encode() for name, text in files.items()}
    assert [one.code for one in load_inventory(HERE / "base", after).problems] == ["F209"]


@pytest.mark.parametrize(
    ("old", "new", "line"),
    [
        ("basis: product", "basis: ae", 11),
        ("rate_low_pt_per_ac: 1", "rate_low_lb_per_ac: 1", 9),
        ("rate_high_pt_per_ac: 3", "rate_high_lb_per_ac: 3", 10),
    ],
)
def test_a_basis_that_does_not_go_with_its_rates_is_told_once(
    old: str, new: str, line: int
) -> None:
    card = (HERE / "base" / "products.yaml").read_text().replace(old, new)
    (fault,) = load_inventory(HERE / "base", {"products.yaml": card.encode()}).problems
    assert (fault.line, fault.code) == (line, "F308")
    unsaid = {"products.yaml": card.replace("          basis: product\n", "").encode()}
    left = [one.code for one in load_inventory(HERE / "base", unsaid).problems]
    assert left == (["F308"] if "basis" in old else ["F307"])


@pytest.mark.parametrize("line", [7, 12])
def test_a_key_of_an_entry_in_the_first_column_is_one_fault(line: int) -> None:
    """YAML takes it for a key of the file, and what it holds and what follows with it."""
    lines = TWO_SCREENS.split("\n")
    lines[line - 1] = lines[line - 1].lstrip()
    assert told_of("\n".join(lines)) == [(line, 1, "F107")]
    tag = SEED.replace("    tag: {purity_pct: 98,", "tag:\n      {purity_pct: 98,")
    (fault,) = load_inventory(HERE / "base", {"seed.yaml": tag.encode()}).problems
    assert (fault.line, fault.column, fault.code) == (4, 1, "F107")


def test_a_key_that_the_file_may_have_at_its_top_is_none_out_of_line() -> None:
    land = (HERE / "base" / "property.yaml").read_text() + "tme_zone: America/Chicago\n"
    (fault,) = load_inventory(HERE / "base", {"property.yaml": land.encode()}).problems
    assert (fault.code, fault.accepted) == ("F201", "did you mean time_zone?")


def test_the_first_line_below_a_key_that_begins_too_early_is_one_fault() -> None:
    near = "    near:\n    slope: Flat\n      lines: None\n      others: Nobody\n    plantings"
    (told,) = told_of(TWO_SCREENS.replace("    plantings", near, 1))
    assert told == (8, 5, "F107")


def test_many_lines_that_name_one_thing_that_is_not_there_are_one_fault() -> None:
    entry = "  - {{id: e-{}, done_on: 2026-08-01, job: {{planting: {}, step: autumn_kill}}}}\n"
    for count, told in ((3, 3), (4, 1)):
        log = "entries:\n" + "".join(entry.format(n, "lane-2027") for n in range(count))
        found = load_inventory(HERE / "base", {"log.yaml": log.encode()}).problems
        assert [one.code for one in found] == ["F208"] * told
        assert ("4 lines name it: 4 in log.yaml" in found[0].what) == (told == 1)
        assert found[0].line == 2
    log = f"{log}{entry.format(9, 'creek-2027')}"
    found = load_inventory(HERE / "base", {"log.yaml": log.encode()}).problems
    assert [one.line for one in found] == [2, 6]
