"""A canary stands in every private field of a property, and in no other reader's site."""

import copy
import datetime
import gzip
import html
import io
import random
import re
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.inventory.counted import Counted
from generator.inventory.fields import FieldRule, rules_of
from generator.inventory.load import FILES
from generator.inventory.reading import legal_keys, unit_of
from generator.inventory.schema import Property
from generator.units import UNITS, convert, family_suffixes, shown
from tests.properties import (
    SEASON,
    Data,
    full_card,
    full_use,
    small_property,
    the_work,
    write_property,
)
from tests.properties_money import add_money
from tests.readers.scramble import new_names
from tests.sowings import drill

CANARY = "canaryzq"
FIRST_DAY = datetime.date(1996, 2, 1)
COLOUR = re.compile(r"#[0-9a-f]{3,8}\b")  # of the theme's style sheets: no number of the owner's


FULL_HIRE: Data = {
    "id": "crew",
    "jobs": [{"planting": "lane-27", "steps": ["first_summer_mowing"]}],
    "price_usd": 1,
}
FULL_SHARE: Data = {"id": "program", "planting": "lane-27", "pays_usd": 1}
FULL_ENTRIES: list[Data] = [
    {
        "id": "e-1",
        "used": [{"item": "brew", "amount_fl_oz": 1}],
        "bought": [{"item": "sg", "amount_lb": 1}],
        "counted": {"planting": "spare-90"},
        "weeds_seen": [{"planting": "spare-90"}],
    },
    {
        "id": "e-2",
        "job": {"planting": "lane-27", "step": "autumn_kill"},
        "used": [{"item": "brew", "amount_fl_oz": 1}],
        "bought": [{"item": "sg", "amount_lb": 1}],
        "corrects": "e-1",
        "counted": {"planting": "spare-90"},
        "sprayed": {"sprayer": "boom", "applicator": "sprays"},
    },
    {
        "id": "e-3",
        "sprayed": {"place": "spare"},
        "measured": {"planting": "spare-90"},
        "inspected": {"what": ["oak", "spare", "hole"]},
        "soil_tested": {"test": "cores"},
        "sight_checked": {"route": "walk"},
        "drift_checked": {"place": "spare"},
        "cleaned_out": {"sprayer": "boom"},
        "water_added": {"water_hole": "hole"},
        "upkeep": [{"at": "oak", "step": "stand_check"}],
        "spent": [{"planting": "spare-row"}],
    },
    {"id": "e-4", "seeded": {"spreader": "crank", "drill": "box"}},
    {"id": "e-5", "mowed": {}},
    {"id": "e-6", "burned": {}},
]
# What was used on the handed job, on a part of it, at less than its rate: it stays cleared.
BEGUN = {"amount_fl_oz": 1.371377, "area_ac": 0.0713771}
TIMES = {"started_at": "03:17", "stopped_at": "04:51", "ended_at": "02:43"}


# Old enough that a count on any hidden day is of grass that stands there.
GRASS_OF_BEFORE: Data = {
    "id": "spare-90",
    "season": 1990,
    "seed": [{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 8}],
    "method": "frost_seed",
    "steps": "frost_seeded_native_grass",
}
FULL_STRIPS: Data = {
    "strips": [{"id": "plot", "name": "Plot", "known_as": "Strip 3", "length_ft": 100,
                "width_ft": 10}]
}  # fmt: skip
FRAME = {"placements_count": 700711, "cells_with_plant_count": 700713, "cells_count": 700717}
ROW = {"mean_plants_per_row_ft": 79.37137, "row_spacing_in": 7013.137}
STRETCH = {"from_ft": 1713.713, "to_ft": 2713.713}
KEPT: Data = {"package_lb": 1, "price_usd": 1, "on_hand_lb": 1}
FULL_PRODUCTS: Data = {
    "adjuvants": [{"id": "oil", "formulation": "surfactant_or_oil", "name": "Oil"}],
    "fertilizers": [
        KEPT | {"id": "map", "name": "Grade", "n_pct": 11, "p2o5_pct": 52, "k2o_pct": 0}
    ],
    "limes": [KEPT | {"id": "quarry", "name": "Quarry lime", "enm_lb_per_ton": 400}],
}
FULL_ROWS: Data = {
    "plants": [
        {"id": "cedar", "name": "Cedar", "species": "eastern-redcedar", "root": "bare_root"}
    ],
    "guards": [{"id": "tube", "name": "Tube"}],
}
FULL_GROUND: Data = {
    "soil_tests": [{"id": "cores", "places": ["spare"], "sampled_on": "2026-04-02"}],
    "water_holes": [{"id": "hole", "shape": "rectangle"}],
}
FULL_DATES: Data = {"dates": [{"id": "rest", "kind": "hunting", "places": ["lane"]}]}
FULL_PEOPLE: Data = {
    "applicators": [
        {"id": "sprays", "licence_class": "commercial", "reader": "hired", "fits": ["brew"]}
    ],
    "helpers": [{"id": "friend", "months": [{"month": "june", "free_hours": 1}]}],
    "contractors": [{"id": "digger", "reader": "hired", "insured": True}],
}
FULL_STEPS: Data = {
    "step_plans": [
        {
            "id": "wet_ground_grass",
            "name": "Grass on wet ground",
            "based_on": "frost_seeded_native_grass",
            "skip": [{"step": "spring_burn_down"}],
        }
    ]
}
FULL_PAPERS: Data = {
    "permits": [{"id": "leave", "kind": "burn", "places": ["lane"]}],
    "contracts": [
        {
            "id": "cover",
            "places": ["lane"],
            "cost_share": ["program"],
            "work_allowed": ["mow"],
            "written_permission_for": ["mow"],
        }
    ],
    "one_calls": [{"id": "call", "places": ["spare"], "clear_on": "2027-03-20"}],
}


class Hidden:
    """Fills private fields and remembers what was put where."""

    def __init__(self) -> None:
        self.fields: set[tuple[str, str]] = set()
        self.numbers: dict[str, tuple[float, str]] = {}
        self.days: list[datetime.date] = []
        self.count = 0

    def fill(self, kind: type, entry: Data) -> None:
        """Put something to be found into every private field of a record, and of those in it."""
        for name, rule in rules_of(kind).items():
            if _is_private(rule):
                self.fields.add((kind.__name__, name))
                self._put(name, rule, entry)
            elif rule.record is not None:
                for one in _records(entry.get(name)):
                    self.fill(rule.record, one)

    def _number(self, rule: FieldRule) -> float:
        """A number like no other, within what the field takes."""
        if rule.unit == "count":
            return 700137 + self.count
        most = rule.limits.at_most
        return 7001.137 + self.count if most is None else most * (0.7937 + self.count / 100_000)

    def _put(self, name: str, rule: FieldRule, entry: Data) -> None:
        self.count += 1
        if rule.form == "text":
            entry[name] = [f"{CANARY}{self.count}"] if rule.many else f"{CANARY}{self.count}"
        elif rule.form == "measure" and not rule.unit:
            (key,) = set(legal_keys(name, rule)) & entry.keys()
            entry[key] = self._number(rule)
            self.numbers[name] = (entry[key], unit_of(key, rule))
        elif rule.form == "measure":
            for key in [key for key in entry if key.startswith(name.removesuffix(rule.unit))]:
                del entry[key]
            entry[name] = self._number(rule)
            self.numbers[name] = (entry[name], rule.unit)
        elif rule.form == "date":
            self.days.append(FIRST_DAY + datetime.timedelta(days=self.count))
            entry[name] = self.days[-1].isoformat()
        elif rule.form == "lat_lon":
            entry[name] = [47 + self.count / 1000 + 0.000137, -87.000137]
            self.numbers[name] = (entry[name][0], "")
        elif rule.form == "points":
            lat, lon = 47 + self.count / 1000 + 0.000137, -87.000137
            entry[name] = [[lat, lon], [lat + 0.00011, lon], [lat + 0.00011, lon + 0.00013]]
            for number, point in enumerate(entry[name]):
                self.numbers[f"{name}[{number}] latitude"] = (point[0], "")
                self.numbers[f"{name}[{number}] longitude"] = (point[1], "")
        elif rule.form == "record" and rule.record is not None:
            for one in _records(entry.get(name)):
                self.fill(rule.record, one)
        else:
            # Ids become canaries when the whole property is renamed; a word of a list cannot, nor
            # a season, which is a year near that of the entry.
            assert rule.form in ("identity", "reference", "choice", "yes_no", "whole"), name


def _is_private(rule: FieldRule) -> bool:
    return rule.visible != "page" and not rule.safety


def _records(value: object) -> Iterator[Data]:
    entries = value if isinstance(value, list) else [value]
    yield from (one for one in entries if isinstance(one, dict))


def private_fields(kind: type) -> Iterator[tuple[str, str]]:
    """Every private field of a kind of record and of the records in it."""
    for name, rule in rules_of(kind).items():
        if _is_private(rule):
            yield kind.__name__, name
        if rule.record is not None:
            yield from private_fields(rule.record)


def property_with_everything() -> tuple[Data, Hidden]:
    """The small property, its private fields all typed, its ids all renamed."""
    use = full_use(
        covers={
            "kinds": ["native_grass"],
            "species": ["any"],
            "land": "any",
            "places": ["lane"],
        }
    )
    data = small_property(full_card(use))
    the_work(data).append({"step": "frost_seeding", "spreader": "crank"})
    test = {"tested_on": "2026-08-16", "lot": "sg", "setting": "third", "caught_lb": 0.2,
            "swath_ft": 12, "distance_ft": 100}  # fmt: skip
    spreader = {"id": "crank", "name": "Crank", "hopper_lb": 3000, "catch_tests": [test]}
    data["equipment"]["spreaders"] = [spreader]
    data["equipment"]["drills"] = [drill("sg")]
    stand = {"id": "oak", "name": "Oak", "upkeep": "stand_inspection"}
    data["stands"] = {"stands": [stand]}
    data["routes"] = {"routes": [{"id": "walk", "name": "Walk", "serves": ["oak"]}]}
    data["screens"]["screens"][0]["hides"] = ["walk"]
    spare: Data = {"id": "spare", "name": "Spare", "known_as": "Strip 2", "length_ft": 100,
             "width_ft": 10}  # fmt: skip
    data["seed"] |= copy.deepcopy(FULL_ROWS)
    data["screens"]["screens"].append(spare)
    # The length feeds a released number: a long strip of narrow ground stays a job of one load.
    data["screens"]["screens"][0]["width_ft"] = 6
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["autumn_kill", "frost_seeding"]
    handed = {"planting": "spare-row", "steps": ["row_planting"]}
    data["readers"]["readers"][0]["jobs"].append(handed)
    add_money(data, random.Random(0))
    row = {"plants": "cedar", "rows_count": 1, "spacing_ft": 8, "guards": "tube", "row_ft": 90}
    spare["plantings"] = [{"id": "spare-row", "season": SEASON, "woody": [row],
                           "method": "plant", "steps": "woody_row"}]  # fmt: skip
    spare["plantings"].append(GRASS_OF_BEFORE)
    data["money"] = copy.deepcopy({"hires": [FULL_HIRE], "cost_share": [FULL_SHARE]})
    data["log"] = copy.deepcopy({"entries": FULL_ENTRIES})
    data["products"] |= copy.deepcopy(FULL_PRODUCTS)
    data["ground"] = copy.deepcopy(FULL_GROUND)
    data["dates"] = copy.deepcopy(FULL_DATES)
    data["people"] = copy.deepcopy(FULL_PEOPLE)
    data["papers"] = copy.deepcopy(FULL_PAPERS)
    data["strips"] = copy.deepcopy(FULL_STRIPS)
    data["steps"] = copy.deepcopy(FULL_STEPS)
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "wet_ground_grass"
    hidden = Hidden()
    hidden.fill(Property, data["property"])
    for file, lists in FILES.items():
        for key, kind in lists.items():
            for entry in data[file][key]:
                hidden.fill(kind, entry)
    _in_one_form(data, hidden)
    names = (
        "lane",
        "lane-27",
        "sg",
        "brew",
        "boom",
        "jug",
        "crank",
        "box",
        "oak",
        "walk",
        "spare",
        "hired",
        "mower",
        "tug",
        "crew",
        "program",
        "oil",
        "map",
        "quarry",
        "cores",
        "hole",
        "cedar",
        "tube",
        "spare-row",
        "spare-90",
        "plot",
        "e-1",
        "e-2",
        "e-3",
        "e-4",
        "e-5",
        "e-6",
        "rest",
        "sprays",
        "friend",
        "digger",
        "leave",
        "cover",
        "call",
    )
    return new_names(data, {name: f"{CANARY}-{name}" for name in names}), hidden


def _in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave of what excludes each other one form: liquids by volume, a hole with straight sides."""
    for entry in (*data["products"]["products"], *data["products"]["adjuvants"]):
        for name in ("package", "on_hand"):
            entry[f"{name}_fl_oz"] = entry.pop(f"{name}_oz_wt")
            hidden.numbers[f"{name}_fl_oz"] = (entry[f"{name}_fl_oz"], "fl_oz")
            hidden.numbers.pop(f"{name}_oz_wt", None)
    (hole,) = data["ground"]["water_holes"]
    hole |= {"side_ft_per_ft": 0.0713771, "depth_ft": 5713.137}
    for name, unit in (("side_ft_per_ft", "ft_per_ft"), ("depth_ft", "ft")):
        hidden.numbers[name] = (hole[name], unit)
    for name in ("top_ft", "bottom_ft"):
        del hole[name]
        del hidden.numbers[name]

    _counts_in_one_form(data, hidden)
    _work_in_one_form(data, hidden)


def _work_in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave of a spraying either its job or its ground, and times that can be read."""
    begun, *others = data["log"]["entries"][1:]
    for name in ("place", "location", "treated_ac"):
        begun["sprayed"].pop(name, None)
    begun["used"][0]["amount_fl_oz"] = BEGUN["amount_fl_oz"]
    begun["job"]["area_ac"] = BEGUN["area_ac"]
    hidden.numbers |= {name: (BEGUN[name], name.partition("_")[2]) for name in BEGUN}
    for entry in (begun, *others):
        for said in (entry.get("sprayed", {}), entry.get("burned", {})):
            said |= {name: time for name, time in TIMES.items() if name in said}


def _counts_in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave one count by the frame and one by the row, both on a stretch within the place."""
    for entry, form in zip(data["log"]["entries"][:2], (FRAME, ROW), strict=True):
        numbers = form | STRETCH
        entry["counted"] = {"planting": entry["counted"]["planting"]} | numbers
        for name, number in numbers.items():
            hidden.numbers[name] = (number, str(rules_of(Counted)[name].unit))


def every_byte(folder: Path) -> str:
    """All that a reader could find in a site: names of files, and contents, unpacked."""
    parts = []
    for path in sorted(folder.rglob("*")):
        parts.append(path.relative_to(folder).as_posix())
        if path.is_file():
            raw = path.read_bytes()
            raw = gzip.decompress(raw) if path.suffix == ".gz" else raw
            raw = unzipped(raw) if path.suffix == ".xlsx" else raw
            parts.append(html.unescape(raw.decode("utf-8", errors="replace")))
    return "\n".join(parts).lower()


def unzipped(raw: bytes) -> bytes:
    """Every name and content in a zip archive, one after the other."""
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        return b"\n".join(
            part for n in archive.namelist() for part in (n.encode(), archive.read(n))
        )


@pytest.fixture(scope="module")
def hidden_and_sites(tmp_path_factory: pytest.TempPathFactory) -> tuple[Hidden, str, str]:
    """What was hidden, and all that stands in the owner's site and in the contractor's."""
    work = tmp_path_factory.mktemp("canary")
    data, hidden = property_with_everything()
    folder = write_property(work / "property", data)
    built = CliRunner().invoke(main, ["build", str(folder), "--out", str(work / "site")])
    assert built.exit_code == 0, built.output
    return (
        hidden,
        every_byte(work / "site/owner"),
        every_byte(work / f"site/{CANARY}-hired"),
    )


def test_every_private_field_of_the_schema_was_filled(
    hidden_and_sites: tuple[Hidden, str, str],
) -> None:
    kinds = [Property, *(kind for lists in FILES.values() for kind in lists.values())]
    wanted = {field for kind in kinds for field in private_fields(kind)}
    assert hidden_and_sites[0].fields == wanted
    assert len(wanted) > 50


def test_no_private_word_or_id_is_in_another_reader_s_site(
    hidden_and_sites: tuple[Hidden, str, str],
) -> None:
    _, owner, contractor = hidden_and_sites
    assert "fill to <strong>" in contractor
    assert "hopper fills" in contractor
    assert CANARY not in contractor
    assert owner.count(CANARY) > 50
    assert [time for time in TIMES.values() if time in contractor] == []
    assert all(TIMES[name] in owner for name in ("started_at", "stopped_at"))


def _ways(value: float, unit: str) -> set[str]:
    if not unit:
        return {repr(value)}
    family = family_suffixes(UNITS[unit].family)
    # a few digits stand in any page: with their unit they tell that it is this number
    return {repr(convert(value, unit, one)) for one in family} | {shown(value, unit).lower()}


def _stands_in(way: str, text: str) -> bool:
    """Whether a number stands in the text; lengths of the theme's style sheets are no such."""
    return bool(re.search(rf"{re.escape(way)}(?!r?em\b)", text))


def test_no_private_number_is_in_another_reader_s_site(
    hidden_and_sites: tuple[Hidden, str, str],
) -> None:
    hidden, owner, contractor = hidden_and_sites
    contractor = COLOUR.sub("", contractor)
    assert len(hidden.numbers) >= 8
    for name, (value, unit) in hidden.numbers.items():
        assert not [way for way in _ways(value, unit) if _stands_in(way, contractor)], name
    seen = [name for name, (value, _) in hidden.numbers.items() if repr(value) in owner]
    assert "length_ft" in seen


def test_no_private_day_is_in_another_reader_s_site(
    hidden_and_sites: tuple[Hidden, str, str],
) -> None:
    hidden, owner, contractor = hidden_and_sites
    assert len(hidden.days) >= 5
    for day in hidden.days:
        assert day.isoformat() not in contractor
        assert f"{day.day} {day:%B} {day.year}".lower() not in contractor
    assert any(day.isoformat() in owner for day in hidden.days)
