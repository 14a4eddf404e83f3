"""A whole property folder: every fault in one run, nothing changed, and never a traceback."""

import hashlib
import random
import shutil
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.inventory.fields import FieldRule, rules_of
from generator.inventory.load import FILES, load_inventory
from generator.inventory.schema import Property
from generator.units import UNITS
from tests.inventories.overlaid import BAD, HERE, overlaid, place_said
from tests.properties import make_property, small_property, write_property

DEMO = Path(__file__).resolve().parents[2] / "demo_property"
KINDS = [Property, *(kind for lists in FILES.values() for kind in lists.values())]


def base(tmp_path: Path) -> Path:
    """A copy of the small property that broken inventories are laid over."""
    return Path(shutil.copytree(HERE / "base", tmp_path / "property"))


def codes(folder: Path) -> list[str]:
    """The codes of the faults of a folder, in order."""
    return [one.code for one in load_inventory(folder).problems]


def retyped(folder: Path, file: str, old: str, new: str) -> None:
    """Type one thing over in a file."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_the_demo_property_and_the_base_have_no_fault(tmp_path: Path) -> None:
    assert load_inventory(DEMO).problems == ()
    assert codes(base(tmp_path)) == []


@pytest.mark.parametrize("seed", range(20))
def test_generated_properties_have_no_fault(seed: int, tmp_path: Path) -> None:
    assert codes(make_property(tmp_path / "property", seed, 5)) == []


def test_the_same_seed_makes_the_same_property(tmp_path: Path) -> None:
    for name in ("one", "two"):
        make_property(tmp_path / name, 7, 4)
    make_property(tmp_path / "other", 8, 4)
    assert _fingerprint(tmp_path / "one") == _fingerprint(tmp_path / "two")
    assert _fingerprint(tmp_path / "one") != _fingerprint(tmp_path / "other")


def test_faults_of_several_files_are_told_in_one_run(tmp_path: Path) -> None:
    folder = base(tmp_path)
    wanted = set()
    for name in ("F203_a_list_for_text", "F204_more_than_all", "F210_a_capital_letter",
                 "F212_a_day_that_is_none", "F209_one_id_for_two_things"):  # fmt: skip
        for path in (HERE / "bad" / name).iterdir():
            shutil.copy(path, folder / path.name)
        wanted.add(place_said(name))
    retyped(folder, "equipment.yaml", "tank_gal: 8", "tank_gal: 0")
    (folder / "products.yaml").write_text("products:\n  - id: brew\n   name: [\n")
    found = {f"{one.file} {one.line} {one.code}" for one in load_inventory(folder).problems}
    assert wanted | {"equipment.yaml 4 F204"} <= found
    assert {one.file for one in load_inventory(folder).problems} >= {"products.yaml"}


def test_two_faults_in_one_record_are_both_told(tmp_path: Path) -> None:
    folder = base(tmp_path)
    retyped(folder, "screens.yaml", "width_ft: 24", "width_ft: -1")
    retyped(folder, "screens.yaml", "length_ft: 1240", "length_ft: long")
    retyped(folder, "screens.yaml", "rate_pls_lb_per_ac: 8", "rate_pls_lb_per_ac: 301")
    assert sorted(codes(folder)) == ["F204", "F204", "F206"]


def _fingerprint(folder: Path) -> dict[str, tuple[str, int]]:
    return {
        path.relative_to(folder).as_posix(): (
            hashlib.sha256(path.read_bytes()).hexdigest(),
            path.stat().st_mode,
        )
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


@pytest.mark.parametrize("command", [["check"], ["check", "--strict"], ["explain"], ["build"]])
def test_no_command_changes_the_folder(command: list[str], tmp_path: Path) -> None:
    folder = Path(shutil.copytree(DEMO, tmp_path / "property"))
    before = _fingerprint(folder)
    arguments = [command[0], str(folder), *command[1:]]
    assert CliRunner().invoke(main, arguments).exit_code in (0, 1)
    assert _fingerprint(folder) == before
    built = command == ["build"]
    assert (tmp_path / "property-handbook/owner/index.html").exists() == built


def test_a_later_format_is_one_sentence_and_exit_code_1(tmp_path: Path) -> None:
    folder = base(tmp_path)
    retyped(folder, "property.yaml", "format: 1", "format: 2\nsomething_new: 3")
    retyped(folder, "screens.yaml", "width_ft", "breadth_ft")
    result = CliRunner().invoke(main, ["build", str(folder)])
    assert result.exit_code == 1
    assert result.output.count("property.yaml:1:9 F213") == 1
    assert result.output.count(" F2") == 1
    assert not (tmp_path / "property-handbook").exists()


@pytest.mark.parametrize("typed", ["format: two", "format: true", "format: 0", "format: 1.5", ""])
def test_a_format_that_is_no_number_is_a_fault(typed: str, tmp_path: Path) -> None:
    folder = base(tmp_path)
    retyped(folder, "property.yaml", "format: 1\n", f"{typed}\n")
    assert len(codes(folder)) == 1


@pytest.mark.parametrize(
    ("name", "cure"),
    [("screen.yaml", "did you mean screens.yaml?"), ("herbicides.yaml", "property.yaml"),
     ("screens.yml", "screens.yaml"), ("Screens.YAML", "screens.yaml")],
)  # fmt: skip
def test_a_file_nobody_reads_is_named(name: str, cure: str, tmp_path: Path) -> None:
    folder = base(tmp_path)
    (folder / name).write_text("screens: []\n")
    (fault,) = load_inventory(folder).problems
    assert (fault.file, fault.code) == (name, "F214")
    assert cure in fault.accepted


@pytest.mark.parametrize(
    ("name", "cure"),
    [("screens/north/a.yaml", "the file in screens/ itself"), ("old/2024/a.yaml", "screens.yaml")],
)
def test_a_file_too_deep_to_be_read_is_named(name: str, cure: str, tmp_path: Path) -> None:
    folder = base(tmp_path)
    (folder / name).parent.mkdir(parents=True)
    (folder / name).write_text("screens: []\n")
    (fault,) = load_inventory(folder).problems
    assert (fault.file, fault.code) == (name, "F214")
    assert cure in fault.accepted


def test_files_that_are_no_part_of_the_property_are_left_alone(tmp_path: Path) -> None:
    folder = base(tmp_path)
    (folder / ".hidden.yaml").write_text("[")
    (folder / "notes.txt").write_text("[")
    (folder / "schema").mkdir()
    (folder / "schema" / "screens.json").write_text("[")
    assert codes(folder) == []


def test_a_folder_without_its_first_file_says_so(tmp_path: Path) -> None:
    folder = base(tmp_path)
    (folder / "property.yaml").unlink()
    assert codes(folder) == ["F215"]
    (tmp_path / "empty").mkdir()
    assert codes(tmp_path / "empty") == ["F215"]


def test_a_list_may_be_one_file_or_a_file_for_each_entry(tmp_path: Path) -> None:
    whole = load_inventory(write_property(tmp_path / "whole", small_property())).inventory
    lists = ("screens", "seed", "products", "equipment", "readers")
    split = load_inventory(write_property(tmp_path / "split", small_property(), lists)).inventory
    assert whole is not None
    assert split is not None
    assert [one.id for one in whole.screens] == [one.id for one in split.screens]
    assert split.screens[0].where.file == "screens/000.yaml"
    assert split.sprayers[0].catch_tests[0].speed_mph.value == 4


def test_an_empty_list_is_no_fault(tmp_path: Path) -> None:
    folder = base(tmp_path)
    for text in ("stands:\n", "stands: []\n", "# nothing yet\n", ""):
        (folder / "stands.yaml").write_text(text)
        retyped_routes = "routes:\n  - {id: walk-in, name: Lane walk}\n"
        (folder / "routes.yaml").write_text(retyped_routes)
        assert codes(folder) == []


# One suffix of every family the reader accepts, and what it means in the field's own unit.
@pytest.mark.parametrize(
    ("typed", "feet"),
    [("width_ft: 24", 24), ("width_yd: 8", 24), ("width_in: 288", 24), ("width_m: 7.3152", 24),
     ("width_cm: 731.52", 24)],
)  # fmt: skip
def test_any_unit_of_the_family_is_taken(typed: str, feet: float, tmp_path: Path) -> None:
    folder = base(tmp_path)
    retyped(folder, "screens.yaml", "width_ft: 24", typed)
    inventory = load_inventory(folder).inventory
    assert inventory is not None
    width = inventory.screens[0].width_ft
    assert width.value == pytest.approx(feet, rel=1e-12)
    assert (width.name, width.unit) == ("width_ft", "ft")
    assert f"width_{width.typed_unit}: {width.typed:g}" == typed


@pytest.mark.parametrize(
    ("typed", "code", "cure"),
    [
        ("width_ft: 24\n    width_m: 7", "F207", "one of them only"),
        ("width_feet: 24", "F205", "width_ft"),
        ("width: 24", "F205", "width_ft"),
        ("width_lb: 24", "F205", "width_ft"),
        ("width_ft: 1-1/2", "F206", ""),
        ("width_ft: '24'", "F206", ""),
        ("width_ft: true", "F203", ""),
        ("width_ft: [24]", "F203", ""),
        ("width_ft:", "F203", ""),
        ("width_ft: 0.0000000000001", "F204", "a size that exists"),
        (f"width_ft: 1{'0' * 400}", "F206", ""),
    ],
)
def test_one_sentence_for_each_way_to_mistype_a_width(
    typed: str, code: str, cure: str, tmp_path: Path
) -> None:
    folder = base(tmp_path)
    retyped(folder, "screens.yaml", "width_ft: 24", typed)
    (fault,) = load_inventory(folder).problems
    assert fault.code == code
    assert cure in fault.accepted


def _fields(kind: type) -> list[tuple[str, FieldRule]]:
    found = [(f"{kind.__name__}.{name}", rule) for name, rule in rules_of(kind).items()]
    for _, rule in list(found):
        found += _fields(rule.record) if rule.record is not None else []
    return found


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_every_field_says_who_may_see_it_and_what_it_is(kind: type) -> None:
    for name, rule in _fields(kind):
        assert rule.visible in {"page", "money", "place", "person", "note"}, name
        assert 2 < len(rule.help) < 80, name
        assert rule.help[0].isalpha(), name
        assert not rule.help.endswith("."), name
        assert (rule.form == "measure") == bool(rule.families), name
        assert not rule.unit or UNITS[rule.unit].family in rule.families, name
        assert (rule.form == "choice") == bool(rule.choices), name
        assert (rule.form == "reference") == bool(rule.refers_to), name
        assert (rule.form == "record") == (rule.record is not None), name
        # What no reader may lose is shown to every reader.
        assert not rule.safety or rule.visible == "page", name


def check_said(folder: Path, *command: str) -> None:
    """Fails where a command ends in any way but done or a sentence."""
    result = CliRunner().invoke(main, [*command[:1], str(folder), *command[1:]])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code in (0, 1), result.output
    assert "Traceback" not in result.output
    assert result.exit_code == 0 or result.output.strip()


@pytest.mark.parametrize("name", BAD)
def test_a_broken_folder_ends_a_build_with_its_place_and_exit_code_1(
    name: str, tmp_path: Path
) -> None:
    folder = overlaid("bad", name, tmp_path / "property")
    file, line, code = place_said(name).split()
    result = CliRunner().invoke(main, ["build", str(folder)])
    assert result.exit_code == 1
    assert isinstance(result.exception, SystemExit)
    assert f"{file}:{line}:" in result.output
    assert f" {code} " in result.output
    assert "1 fault. Nothing was built." in result.output
    assert not (tmp_path / "property-handbook").exists()


# The long run and the fuzz ruin many more.
RUINED, RUINED_IN_THE_LONG_RUN = 40, 200
DAMAGE = b"\x00\xff\xc3\t\r\n :#-[]{}'\"&*!|>%@`,0129aZ\xef\xbb\xbf"


def _ruined(raw: bytes, chance: random.Random) -> bytes:
    damaged = bytearray(raw)
    for _ in range(chance.choice([1, 1, 2, 5, 40])):
        start = chance.randrange(len(damaged) + 1)
        what = chance.randrange(4)
        if what == 0:
            damaged[start : start + 1] = bytes([chance.choice(DAMAGE)])
        elif what == 1:
            damaged[start:start] = bytes([chance.choice(DAMAGE)])
        elif what == 2:
            del damaged[start : start + chance.randint(1, 60)]
        else:
            end = chance.randrange(len(damaged) + 1)
            damaged[start:start] = damaged[end : end + chance.randint(1, 80)]
    return bytes(damaged)


@pytest.mark.parametrize(
    "seed",
    [
        seed if seed < RUINED else pytest.param(seed, marks=pytest.mark.long)
        for seed in range(RUINED_IN_THE_LONG_RUN)
    ],
)
def test_ruined_files_never_end_in_a_traceback(seed: int, tmp_path: Path) -> None:
    chance = random.Random(seed)
    folder = Path(shutil.copytree(DEMO, tmp_path / "property"))
    path = chance.choice(sorted(folder.glob("*.yaml")))
    path.write_bytes(_ruined(path.read_bytes(), chance))
    check_said(folder, "check", "--strict")


WILD: list[Any] = [
    *(0, -1, 5, 10**9, -(10**9), 1e-7, True, None, [], {}, [[]], [1, 2], {"a": 1}),
    *("", "x", "2027-02-30", "none", "not_on_label", "any", "yes", "2026-09-10"),
]


@pytest.mark.parametrize("seed", range(100))
def test_values_out_of_place_never_end_in_a_traceback(seed: int, tmp_path: Path) -> None:
    chance = random.Random(seed)
    data: Any = small_property()
    for _ in range(chance.randint(1, 3)):
        at: Any = data[chance.choice(list(data))]
        while True:
            keys = list(at) if isinstance(at, dict) else list(range(len(at)))
            key = chance.choice(keys)
            if isinstance(at[key], dict | list) and at[key] and chance.random() < 0.9:
                at = at[key]
                continue
            at[key] = chance.choice(WILD)
            break
    folder = write_property(tmp_path / "property", data)
    check_said(folder, "check", "--strict")
    check_said(folder, "explain")
