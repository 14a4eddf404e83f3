"""What a fault offers cures it: typed as it is offered, where it stands, the fault is gone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.inventory.load import load_inventory
from generator.inventory.problems import Problem
from tests.inventories.overlaid import BAD, HERE, overlaid

BASE = HERE / "base"
KEY_CODES = ("F201", "F205")
# What is offered for a file's own name, or for a file that is not there, is no text to type.
OF_FILES = ("F214", "F215", "F217", "F218", "F219")
A_VALUE = re.compile(r"\"[^\"]*\"|'[^']*'|[^,}\]#\n]*[^,}\]#\s]|")


def cures(fault: Problem, lines: list[str]) -> list[str]:
    """The texts a file can be given by what a fault of it offers; none where it is words alone."""
    text = lines[fault.line - 1]
    indent = text[: len(text) - len(text.lstrip())]
    accepted = fault.accepted
    if "..." in accepted or "<U+" in accepted:  # a text too long or hidden is shown in part
        return []
    if found := re.match(r"write: (.+), its dash in column ([0-9]+)$", accepted):
        return [_with_line(lines, fault, " " * (int(found[2]) - 1) + found[1])]
    if found := re.match(r"(?:close it, or )?write: (.+)", accepted):
        return [_with_line(lines, fault, _written(text, indent, fault, found[1]))]
    if found := re.match(r"begin it in column ([0-9]+)", accepted):
        return [_with_line(lines, fault, " " * (int(found[1]) - 1) + text.lstrip())]
    return [_with_line(lines, fault, _typed(text, fault, word)) for word in _words(fault)]


def _written(text: str, indent: str, fault: Problem, written: str) -> str:
    """A line written as it is offered; inside brackets that is the part with the fault alone."""
    before = text[: fault.column - 1]
    if before.count("{") == before.count("}") and before.count("[") == before.count("]"):
        return f"{indent}{written}"
    begin = max(before.rfind(one) for one in "[{,") + 1
    value = A_VALUE.match(text, fault.column - 1)
    assert value is not None
    return f"{text[:begin]} {written}{text[value.end() :]}"


def _words(fault: Problem) -> list[str]:
    accepted = fault.accepted
    if found := re.match(r"did you mean (.+?)\?", accepted):
        return re.split(r", | or ", found[1])
    if found := re.search(r"\bwrite ([^\s,;]+)", accepted):
        return [found[1]]
    if found := re.match(r"(\S+), without quotes", accepted):
        return [found[1]]
    if found := re.fullmatch(r"([0-9.]+) or ([0-9.]+%)", accepted):
        return [found[1], found[2]]
    if fault.code == "F205" and "more" not in accepted:
        return re.split(r", | or ", accepted)
    return []


def _typed(text: str, fault: Problem, word: str) -> str:
    """A line with a word typed where the fault stands, in the place of what stands there."""
    begin = fault.column - 1
    of_key = fault.code in KEY_CODES
    there = re.compile(r"[^:]*").match(text, begin) if of_key else A_VALUE.match(text, begin)
    assert there is not None
    return f"{text[:begin]}{word}{text[there.end() :]}"


def _with_line(lines: list[str], fault: Problem, line: str) -> str:
    return "\n".join([*lines[: fault.line - 1], line, *lines[fault.line :]])


def check(folder: Path, fault: Problem, text: str) -> int:
    """Fails where what a fault offers leaves it as it is; returns how much it offers."""
    offered = cures(fault, text.split("\n"))
    for cured in offered:
        left = load_inventory(folder, {fault.file: cured.encode()}).problems
        again = [one for one in left if (one.line, one.code) == (fault.line, fault.code)]
        assert again == [], (str(fault), cured.split("\n")[fault.line - 1])
    return len(offered)


def test_what_the_fault_of_a_broken_inventory_offers_cures_it(tmp_path: Path) -> None:
    checked = 0
    for name in BAD:
        folder = overlaid("bad", name, tmp_path / name)
        for fault in load_inventory(folder).problems:
            if fault.code not in OF_FILES:
                text = (folder / fault.file).read_bytes().decode("utf-8", "replace")
                checked += check(folder, fault, text)
    assert checked >= 40


LOG = "entries:\n  - {{id: one, done_on: {}}}\n"
SPRAYED = "entries:\n  - {{id: one, done_on: 2026-08-01, sprayed: {{{}}}}}\n"
SEED = (BASE / "seed.yaml").read_text()
LAND = (BASE / "property.yaml").read_text()
CARD = (BASE / "products.yaml").read_text()
DAYS = ("20260914", "9/14/26", "Sept. 14 2026", "2026-9-14", "9-14-2026", "09142026", "14.9.2026")
MONTHS = ("9/14/2026", "2026-09-14", "Sep 2026", "2026/09", "2026-9", "9-2026", "09.2026")
YEAR_DAYS = ("9/14", "Sep 14", "14.9.", "2026-09-14", "0914", "9-4")
TAG_MONTHS = ("Jun 2028", "06/28", "6-2028")
WHOLE = ('"2027"', "two thousand", "2_027", "02027")
FRACTIONS = ("70", "98.2", "7/4", "ninety")
BULLETIN = "    label:\n      bulletin: [{{checked_on: 2026-08-01, month: {}}}]\n"
SLIPS = [
    *(("log", LOG.format(one)) for one in DAYS),
    *(("products", CARD.replace("    label:\n", BULLETIN.format(one))) for one in MONTHS),
    *(("property", LAND.replace("early: 10-04", f"early: {one}")) for one in YEAR_DAYS),
    *(("seed", f"{SEED}    inoculant: {{group: EL, expires_on: {one}}}\n") for one in TAG_MONTHS),
    *(("property", LAND.replace("season: 2027", f"season: {one}")) for one in WHOLE),
    *(("seed", SEED.replace("purity_pct: 98", f"purity_fraction: {one}")) for one in FRACTIONS),
    *(("log", SPRAYED.format(one)) for one in ("wind: 6", "wind_from: 270", "humidity: 60")),
    ("log", SPRAYED.format("weeds: @home, nozzle: fan")),
    ("log", SPRAYED.format("weeds: *any, nozzle: fan")),
    ("log", SPRAYED.format("weeds: “thistle”, nozzle: fan")),
    ("stands", "stands:\n  - {id: oak, name: Oak}\n- {id: ash, name: Ash}\n"),
    ("stands", "stands:\n  - id: oak\nname: Oak\n    note: Old\n"),
]


@pytest.mark.parametrize(("file", "text"), SLIPS)
def test_what_is_offered_for_a_slip_cures_it(file: str, text: str) -> None:
    faults = load_inventory(BASE, {f"{file}.yaml": text.encode()}).problems
    (fault,) = faults
    check(BASE, fault, text)
    if re.search(r"\bwrite\b|did you mean|begin it in", fault.accepted):
        assert cures(fault, text.split("\n"))
    assert fault.what not in fault.accepted


@pytest.mark.parametrize(
    ("file", "text", "offered"),
    [
        ("products", CARD.replace("    label:\n", BULLETIN.format("9/14/2026")), "write 2026-09"),
        ("property", LAND.replace("season: 2027", 'season: "2027"'), "2027, without quotes"),
        ("seed", SEED.replace("purity_pct: 98", "purity_fraction: 70"), "0.7 or 70%"),
        ("log", LOG.format("2/30/2026"), "a date like 2027-03-14"),
        ("log", LOG.format("2026-09"), "a date like 2027-03-14, with its day"),
    ],
)
def test_a_cure_never_shows_the_fault_again(file: str, text: str, offered: str) -> None:
    (fault,) = load_inventory(BASE, {f"{file}.yaml": text.encode()}).problems
    assert fault.accepted == offered
