"""A canary stands in every private field of a property, and in no other reader's site."""

import base64
import copy
import datetime
import gzip
import html
import io
import math
import random
import re
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote

import pytest
from click.testing import CliRunner
from pyproj import Proj

from generator.book.pages.written import GROUND_GEOJSON, GROUND_GPX, GROUND_KML
from generator.cli import main
from generator.inventory.counted import Counted
from generator.inventory.fields import FieldRule, rules_of
from generator.inventory.load import FILES
from generator.inventory.reading import legal_keys
from generator.inventory.reading_values import unit_of
from generator.inventory.schema import Property
from generator.site.one_file import file_beside
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
CONTRACTOR, PARTNER = "hired", "hunts"
FIRST_DAY = datetime.date(1996, 2, 1)
DATA_URI = re.compile(rb";base64,([A-Za-z0-9+/]+={0,2})")
UNICODE = re.compile(r"\\u([0-9a-fA-F]{4})")
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
        "confirms": ["e-1"],
        "counted": {"planting": "spare-90"},
        "sprayed": {"sprayer": "boom", "applicator": "sprays"},
    },
    {
        "id": "e-3",
        "sprayed": {"place": "spare"},
        "unknown": {"products": ["brew"], "places": ["spare"], "most_fl_oz_per_ac": 1},
        "measured": {"planting": "spare-90"},
        "inspected": {"what": ["oak", "spare", "hole"]},
        "soil_tested": {"test": "cores"},
        "sight_checked": {"route": "walk"},
        "harvested": {"crops": ["beans"]},
        "laid_down": {"places": ["spare"], "by": "ice"},
        "drift_checked": {"place": "spare"},
        "cleaned_out": {"sprayer": "boom"},
        "water_added": {"water_hole": "hole"},
        "upkeep": [{"at": "oak", "step": "stand_check"}],
        "not_doing": [
            {"planting": "spare-90", "step": "autumn_kill"},
            {"at": "oak", "step": "stand_check", "season": 2027},
        ],
        "spent": [{"planting": "spare-row"}],
    },
    {
        "id": "e-4",
        "seeded": {"spreader": "crank", "drill": "box"},
        "measured": {"planting": "spare-90", "stations": [{}, {}]},
    },
    {"id": "e-5", "mowed": {}},
    {"id": "e-7", "sat": {"stand": "pine", "walk_in": "walk"}},
    {"id": "e-6", "burned": {}},
]
# What was used on the handed job, on a part of it, at less than its rate: it stays cleared.
BEGUN = {"amount_fl_oz": 1.371377, "area_ac": 0.0713771}
TIMES = {"started_at": "03:17", "stopped_at": "04:51", "ended_at": "02:43",
         "from_time": "01:37", "until_time": "02:59",
         "began_at": "02:11", "left_at": "03:29"}  # fmt: skip


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
STATION = {"at_ft": 1913.713}
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
FULL_DATES: Data = {
    "dates": [{"id": "rest", "kind": "hunting", "places": ["lane"]}],
    "shooting_hours": [{"id": "light", "dates": "rest", "begins": "sunrise", "ends": "sunset"}],
    "looked_up": [
        {"id": "hat", "subject": "orange", "words": "A hat", "source": "a booklet"}
        | {"looked_up_on": "2026-08-02"}
    ],
}
ZONE = "America/Menominee"
FULL_PEOPLE: Data = {
    "applicators": [
        {"id": "sprays", "licence_class": "commercial", "reader": "hired", "fits": ["brew"]}
    ],
    "helpers": [{"id": "friend", "months": [{"month": "june", "free_hours": 1}]}],
    "contractors": [{"id": "digger", "reader": "hired", "insured": True}],
}
FULL_SITS: Data = {
    "sits": [
        {"id": "vigil", "stand": "pine", "arc_of_fire": {}},
        {"id": "theirs", "stand": "oak", "walk_in": "walk", "reader": "hunts"},
    ]
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
FULL_WEATHER: Data = {
    "stations": [{"id": "ridge", "kind": "plain"}],
    "wind_stations": [{"id": "field", "kind": "isd_lite"}],
    "freeze_dates": [
        {"when": "first_in_autumn", "threshold_f": 28}
        | {"early": "10-06", "typical": "10-19", "late": "11-01"}
    ],
    "normals": [{}],
    "emergence": [
        {"species": "switchgrass", "method": "drill", "fewest_days": 14, "most_days": 21}
    ],
}
# A thing of each form; the one whose numbers are looked for stands last and is nobody's to see.
FULL_LAND: Data = {
    "land": [
        {"id": "dug", "kind": "well", "known_as": "The dug well", "shape": {}},
        {"id": "hedge", "kind": "fence", "known_as": "Thornzq", "shape": {}},
        {"id": "edge", "kind": "boundary", "shape": {}},
        {"id": "nest", "kind": "bedding", "known_as": "Nestzq", "shape": {}},
    ]
}
LAND_FORMS = {"dug": "at_lat_lon", "hedge": "line_lat_lon", "edge": "area_lat_lon",
              "nest": "at_lat_lon"}  # fmt: skip
HEIGHT_FT = 9371.371
DAYS_OF_WEATHER = "date,tmax_f,tmin_f\n2026-01-01,40,20\n"
GRID_OF_HEIGHTS = "ncols 2\nnrows 1\nxllcorner {}\nyllcorner {}\ncellsize 30\n300 301\n"
HOUR_OF_WIND = "2026 10 01 00   -44   -83 10256   260    67     4 -9999 -9999\n"
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
        return 7001.137 + self.count if most is None else most * (0.8337 + self.count / 100_000)

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
        elif rule.form == "direction":
            bearing = 137.0137 + self.count / 1000
            entry[name] = [bearing] if rule.many else bearing
            self.numbers[name] = (bearing, "")
        elif rule.form == "date":
            self.days.append(FIRST_DAY + datetime.timedelta(days=self.count))
            entry[name] = self.days[-1].isoformat()
        elif rule.form == "lat_lon":
            entry[name] = [47 + self.count / 1000 + 0.000137, -88.000137 + self.count / 1000]
            self.numbers[name] = (entry[name][0], "")
        elif rule.form == "points":
            lat, lon = 47 + self.count / 1000 + 0.000137, -87.000137 + self.count / 1000
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
    # One of each is handed to the partner; the one kept back stands last, so its numbers are looked
    # for.
    stand = {"id": "oak", "name": "Oak", "known_as": "Ladder", "upkeep": "stand_inspection"}
    pine = {"id": "pine", "name": "Pine"}
    for one in (stand, pine):
        one |= {"beds": [{}], "food": [{}], "arc_of_fire": {}, "keeps_off": [{}]}
    data["stands"] = {"stands": [stand, pine]}
    walk = {"id": "walk", "name": "Walk", "known_as": "Lane", "serves": ["oak", "pine"],
            "crops_beside": [{"id": "corn"}]}  # fmt: skip
    back = {"id": "back", "name": "Back", "serves": ["oak"], "crops_beside": [{"id": "beans"}]}
    data["routes"] = {"routes": [walk, back]}
    data["sits"] = copy.deepcopy(FULL_SITS)
    data["screens"]["screens"][0]["hides"] = ["walk"]
    spare: Data = {"id": "spare", "name": "Spare", "known_as": "Strip 2", "length_ft": 100,
             "width_ft": 10, "crops_beside": [{"id": "hay"}]}  # fmt: skip
    data["seed"] |= copy.deepcopy(FULL_ROWS)
    data["screens"]["screens"].append(spare)
    # The length feeds a released number: a long strip of narrow ground stays a job of one load.
    data["screens"]["screens"][0]["width_ft"] = 6
    data["readers"]["readers"][0]["jobs"][0]["steps"] = ["autumn_kill", "frost_seeding"]
    handed = {"planting": "spare-row", "steps": ["row_planting"]}
    data["readers"]["readers"][0]["jobs"].append(handed)
    partner = {"id": PARTNER, "kind": "partner", "stands": ["oak"], "routes": ["walk"]}
    partner["jobs"] = copy.deepcopy(data["readers"]["readers"][0]["jobs"])
    data["readers"]["readers"].append(partner)
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
    data["weather"] = copy.deepcopy(FULL_WEATHER)
    data["land"] = copy.deepcopy(FULL_LAND)
    data["screens"]["screens"][0]["plantings"][0]["steps"] = "wet_ground_grass"
    hidden = Hidden()
    data["property"]["elevation"] = {"source": "an invented survey"}
    hidden.fill(Property, data["property"])
    for file, lists in FILES.items():
        for key, kind in lists.items():
            for entry in data[file][key]:
                hidden.fill(kind, entry)
    _in_one_form(data, hidden)
    _land_in_one_form(data, hidden)
    _weather_in_one_form(data, hidden)
    _heights_of_the_ground(data)
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
        "pine",
        "back",
        "hunts",
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
        "e-7",
        "rest",
        "light",
        "hat",
        "sprays",
        "friend",
        "digger",
        "leave",
        "cover",
        "call",
        "ridge",
        "field",
        "corn",
        "beans",
        "hay",
        "vigil",
        "theirs",
        "dug",
        "hedge",
        "edge",
        "nest",
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
    _heights_in_one_form(data, hidden)
    _work_in_one_form(data, hidden)
    data["property"]["time_zone"] = ZONE
    sat = next(entry["sat"] for entry in data["log"]["entries"] if "sat" in entry)
    # no more than were seen can have winded anybody
    sat["deer_count"], sat["winded_count"] = sat["winded_count"], sat["deer_count"]
    sat |= {"began_at": TIMES["began_at"], "left_at": TIMES["left_at"]}
    for sit in data["sits"]["sits"]:
        sit |= {"from_time": TIMES["from_time"], "until_time": TIMES["until_time"]}
    del data["dates"]["shooting_hours"][0]["ends_at"]


def _land_in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave of each thing the form it is typed in, and lay the well beside the handed lane."""
    for thing in data["land"]["land"]:
        thing["far"] = "yes"
        form = LAND_FORMS[thing["id"]]
        sizes = {"radius_ft": "at_lat_lon", "width_ft": "line_lat_lon"}
        for name in {*LAND_FORMS.values(), "shape"} - {form}:
            del thing[name]
        for name in [size for size, of in sizes.items() if of != form]:
            del thing[name]
    well, hedge, edge, nest = data["land"]["land"]
    lat, lon = data["screens"]["screens"][0]["area_lat_lon"][0]
    well |= {"at_lat_lon": [lat - 0.0003713, lon - 0.0001713], "radius_ft": 3.137}
    kept = [*nest["at_lat_lon"], *(part for point in hedge["line_lat_lon"] for part in point)]
    kept += [part for point in edge["area_lat_lon"] for part in point]
    hidden.numbers |= {
        f"of land {number}": (part, "") for number, part in enumerate((*well["at_lat_lon"], *kept))
    }


def _heights_of_the_ground(data: Data) -> None:
    """Lay the grid of heights where it says, beside a corner of a place and too small for it."""
    lat, lon = data["screens"]["screens"][0]["area_lat_lon"][0]
    zone = math.floor((lon + 180) / 6) + 1
    east_m, north_m = Proj(proj="utm", zone=zone, south=lat < 0)(lon, lat)
    typed = data["property"]["elevation"]
    hemisphere = "S" if lat < 0 else "N"
    typed |= {"file": f"{typed['file']}.asc", "heights_in": "m", "utm_zone": f"{zone}{hemisphere}"}
    corner = (math.floor(east_m), math.floor(north_m))
    data["elevation_files"] = {typed["file"]: GRID_OF_HEIGHTS.format(*corner)}


def _weather_in_one_form(data: Data, hidden: Hidden) -> None:
    """Lay the files of the stations where they say, and make normals of twelve months."""
    data["weather_files"] = {}
    for lists, text in (("stations", DAYS_OF_WEATHER), ("wind_stations", HOUR_OF_WIND)):
        for station in data["weather"][lists]:
            file = f"{station['file']}.csv"
            data["weather_files"][file] = text
            station["file"] = f"weather/{file}"
    for station in data["weather"]["wind_stations"]:
        (more,) = station["more_files"]
        data["weather_files"][f"{more}.csv"] = HOUR_OF_WIND.replace("2026", "2025", 1)
        station["more_files"] = [f"weather/{more}.csv"]
    for station in data["weather"]["stations"]:
        station.pop("units", None)
    # In miles a height has three digits: one that no page has by chance.
    high = (data["property"], *data["weather"]["stations"], *data["weather"]["wind_stations"])
    for one in high:
        one["elevation_ft"] = HEIGHT_FT
    hidden.numbers["elevation_ft"] = (HEIGHT_FT, "ft")
    (normals,) = data["weather"]["normals"]
    for name, mean in (("highs_f", 70.7137), ("lows_f", 40.7137)):
        normals[name] = [round(mean + month / 100, 4) for month in range(12)]
        hidden.numbers.pop(name, None)
        hidden.numbers |= {
            f"{name}[{month}]": (one, "f") for month, one in enumerate(normals[name])
        }


def _work_in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave of a spraying either its job or its ground, and times that can be read."""
    begun, *others = data["log"]["entries"][1:]
    for name in ("place", "location", "treated_ac", "part"):
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


def _heights_in_one_form(data: Data, hidden: Hidden) -> None:
    """Leave one height at a station, and others at a station and of a stretch within the place."""
    one, many = (entry["measured"] for entry in data["log"]["entries"][2:4])
    one |= STATION
    for name in ("height_in", "at_ft"):
        del many[name]
    at, over = many["stations"]
    for name in STRETCH:
        del at[name]
    del over["at_ft"]
    at |= STATION
    over |= STRETCH
    for name, number in (STATION | STRETCH).items():
        hidden.numbers[name] = (number, "ft")


def every_byte(folder: Path) -> str:
    """All that a reader could find in a site: names of files, and contents, unpacked.

    With what the one file beside it holds, its drawings unpacked too.
    """
    parts = [html.unescape(unpacked(file_beside(folder).read_text(encoding="utf-8")))]
    for path in sorted(folder.rglob("*")):
        parts.append(path.relative_to(folder).as_posix())
        if path.is_file():
            raw = path.read_bytes()
            raw = gzip.decompress(raw) if path.suffix == ".gz" else raw
            raw = unzipped(raw) if path.suffix == ".xlsx" else raw
            raw = raw.replace(b"\r\n ", b"") if path.suffix == ".ics" else raw
            raw += b"".join(b"\n" + base64.b64decode(one[1]) for one in DATA_URI.finditer(raw))
            text = html.unescape(raw.decode("utf-8", errors="replace"))
            parts += (text, unquote(text), UNICODE.sub(lambda one: chr(int(one[1], 16)), text))
    return "\n".join(parts).lower()


def unpacked(page: str) -> str:
    """A page and, behind it, all that stands in it as base64."""
    packed = re.findall(r";base64,([A-Za-z0-9+/=]+)", page)
    return "\n".join([page, *(base64.b64decode(one).decode("latin-1") for one in packed)])


def unzipped(raw: bytes) -> bytes:
    """Every name and content in a zip archive, one after the other."""
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        return b"\n".join(
            part for n in archive.namelist() for part in (n.encode(), archive.read(n))
        )


@dataclass(frozen=True)
class Sites:
    """What was hidden, in which property, and all that stands in the sites."""

    hidden: Hidden
    data: Data
    owner: str
    others: dict[str, str]
    folder: Path

    def days_told(self, reader: str) -> set[datetime.date]:
        """Days that go with what a reader is handed: the looks over and walks of a partner's."""
        if reader != PARTNER:
            return set()
        stand, walk = self.data["stands"]["stands"][0], self.data["routes"]["routes"][0]
        look = next(one for one in self.data["log"]["entries"] if "inspected" in one)
        (crop,) = walk["crops_beside"]
        told = (stand["straps_checked_on"], walk["walked_on"], look["done_on"],
                crop["harvested_on"])  # fmt: skip
        return {datetime.date.fromisoformat(one) for one in told}


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Sites:
    """The sites of the owner and of each other reader, of a property with everything hidden."""
    work = tmp_path_factory.mktemp("canary")
    data, hidden = property_with_everything()
    folder = write_property(work / "property", data)
    built = CliRunner().invoke(main, ["build", str(folder), "--out", str(work / "site")])
    assert built.exit_code == 0, built.output
    others = {one: every_byte(work / f"site/{CANARY}-{one}") for one in (CONTRACTOR, PARTNER)}
    return Sites(hidden, data, every_byte(work / "site/owner"), others, work / "site")


def test_every_private_field_of_the_schema_was_filled(sites: Sites) -> None:
    kinds = [Property, *(kind for lists in FILES.values() for kind in lists.values())]
    wanted = {field for kind in kinds for field in private_fields(kind)}
    assert sites.hidden.fields == wanted
    assert len(wanted) > 50


@pytest.mark.parametrize("reader", [CONTRACTOR, PARTNER])
def test_no_private_word_or_id_is_in_another_reader_s_site(sites: Sites, reader: str) -> None:
    text = sites.others[reader]
    assert "fill to <strong>" in text
    assert "hopper fills" in text
    assert ("stands/ladder.html" in text) == (reader == PARTNER)
    assert CANARY not in text
    assert ZONE.lower() not in text
    assert sites.owner.count(CANARY) > 50
    assert [time for time in TIMES.values() if time in text] == []
    assert all(TIMES[name] in sites.owner for name in ("started_at", "stopped_at"))


def _ways(value: float, unit: str) -> set[str]:
    if not unit:
        return {repr(value)}
    family = family_suffixes(UNITS[unit].family)
    # a few digits stand in any page: with their unit they tell that it is this number
    return {repr(convert(value, unit, one)) for one in family} | {shown(value, unit).lower()}


def _stands_in(way: str, text: str) -> bool:
    """Whether a number stands in the text; lengths of the theme's style sheets are no such."""
    return bool(re.search(rf"{re.escape(way)}(?!r?em\b)", text))


@pytest.mark.parametrize("reader", [CONTRACTOR, PARTNER])
def test_no_private_number_is_in_another_reader_s_site(sites: Sites, reader: str) -> None:
    text = COLOUR.sub("", sites.others[reader])
    numbers = sites.hidden.numbers
    assert len(numbers) >= 8
    for name, (value, unit) in numbers.items():
        assert not [way for way in _ways(value, unit) if _stands_in(way, text)], name
    seen = [name for name, (value, _) in numbers.items() if repr(value) in sites.owner]
    assert {"length_ft", "seat_height_ft"} <= set(seen)


@pytest.mark.parametrize("reader", [CONTRACTOR, PARTNER])
def test_where_a_handed_stand_is_stays_with_the_owner(sites: Sites, reader: str) -> None:
    stands = [one["at_lat_lon"] for one in sites.data["stands"]["stands"]]
    assert len(stands) == 2
    for lat, _ in stands:
        assert repr(lat) in sites.owner
        assert repr(lat)[:6] not in sites.others[reader]


@pytest.mark.parametrize("reader", [CONTRACTOR, PARTNER])
def test_what_is_dangerous_near_work_is_named_and_nothing_else_of_the_land(
    sites: Sites, reader: str
) -> None:
    text = sites.others[reader]
    assert "the dug well" in text
    assert "from the edge" in text
    assert [name for name in ("thornzq", "nestzq") if name in text] == []


def as_written(part_deg: float) -> str:
    """Degrees as files have them, to seven decimals."""
    return f"{part_deg:.7f}".rstrip("0")


@pytest.mark.parametrize("name", [GROUND_GPX, GROUND_KML, GROUND_GEOJSON])
def test_files_of_the_ground_hold_the_places_of_work_and_nothing_else(
    sites: Sites, name: str
) -> None:
    lane, spare = sites.data["screens"]["screens"]
    plot = sites.data["strips"]["strips"][0]
    own = [part for place in (lane, spare) for point in place["area_lat_lon"] for part in point]
    kept = [part for point in plot["area_lat_lon"] for part in point[:1]]
    kept += [
        thing["at_lat_lon"][0] for thing in sites.data["land"]["land"] if "at_lat_lon" in thing
    ]
    kept += [stand["at_lat_lon"][0] for stand in sites.data["stands"]["stands"]]
    for reader in (CONTRACTOR, PARTNER):
        text = (sites.folder / f"{CANARY}-{reader}" / name).read_text(encoding="utf-8")
        assert CANARY not in text
        assert all(as_written(part) in text for part in own)
        assert [part for part in kept if f"{part:.5f}" in text] == []
        one_file = file_beside(sites.folder / f"{CANARY}-{reader}").read_text(encoding="utf-8")
        assert name in one_file
        assert "in the folder of this book and not in this file" in one_file
    owner = (sites.folder / "owner" / name).read_text(encoding="utf-8")
    assert all(as_written(part) in owner for part in (*own, *kept))


@pytest.mark.parametrize("reader", [CONTRACTOR, PARTNER])
def test_no_private_day_is_in_another_reader_s_site(sites: Sites, reader: str) -> None:
    text, told = sites.others[reader], sites.days_told(reader)
    days = [one for one in sites.hidden.days if one not in told]
    assert len(days) >= 5
    assert [day for day in days if day.isoformat() in text or _words(day) in text] == []
    assert any(day.isoformat() in text for day in told) == bool(told)
    assert any(day.isoformat() in sites.owner for day in days)


def _words(day: datetime.date) -> str:
    return f"{day.day} {day:%B} {day.year}".lower()
