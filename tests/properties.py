"""Invented property folders: one small and complete, and large ones made from a seed.

A property is plain data, {file name without ending: what stands in it}, until it is written.
Every active, product and number of a label card is made up.
"""

from __future__ import annotations

import copy
import random
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import yaml

from tests.feeding import fed
from tests.properties_dates import add_dates
from tests.properties_money import add_money
from tests.rows import with_rows
from tests.shapes import with_shapes
from tests.sowings import drill, drilled, sown_its_way, tagged_further

Data = dict[str, Any]

SEASON = 2027
# Names of made-up actives, more than a letter apart: nearer ones may be the same.
TREES = ("alder", "birch", "cedar", "dogwood")
SPRAY_STEPS = ("autumn_kill", "spring_burn_down")
TIMING = {"autumn_kill": "before_sowing", "spring_burn_down": "after_sowing_before_emergence"}
SPECIES = ("switchgrass", "big-bluestem", "indiangrass")
FL_OZ_PER = {"fl_oz": 1.0, "pt": 16.0, "qt": 32.0}


def make_property(folder: Path, seed: int, screens: int) -> Path:
    """Write a generated property of so many screens into a new folder, and return the folder."""
    return write_property(folder, property_data(seed, screens))


def write_property(
    folder: Path, data: Mapping[str, Any], split: Iterable[str] = (), comment: str = ""
) -> Path:
    """Write a property; the lists named in `split` as one file for each entry, in a folder.

    `weather_files` and `elevation_files` are texts by their names, for the folders of those names.
    """
    folder.mkdir(parents=True)
    for name, content in data.items():
        if name in ("weather_files", "elevation_files"):
            lying = folder / name.removesuffix("_files")
            lying.mkdir(exist_ok=True)
            for file, text in content.items():
                (lying / file).write_text(text, encoding="utf-8")
        elif name in split:
            _write_split(folder / name, content, comment)
        else:
            _write(folder / f"{name}.yaml", content, comment)
    return folder


def _write_split(folder: Path, content: Mapping[str, Any], comment: str) -> None:
    folder.mkdir(exist_ok=True)
    entries = [(key, entry) for key, entries in content.items() for entry in entries]
    for number, (key, entry) in enumerate(entries):
        _write(folder / f"{number:03}.yaml", {key: [entry]}, comment)


class _Plain(yaml.SafeDumper):
    """Writes what stands in two places twice: files of a property have no anchors."""

    def ignore_aliases(self, data: object) -> bool:  # noqa: ARG002 - pyyaml calls it so
        return True


def _write(path: Path, content: object, comment: str) -> None:
    text = yaml.dump(content, Dumper=_Plain, sort_keys=False, allow_unicode=True, width=1000)
    path.write_text(f"# {comment}\n{text}" if comment else text, encoding="utf-8")


def full_use(timing: str = "before_sowing", **changes: Any) -> Data:
    """Return a use on which a broadcast job on native grass can be cleared."""
    use = {
        "site_words": "Establishing native grass, invented site",
        "page": "p. 4",
        "covers": {
            "kinds": ["native_grass"],
            "species": ["any"],
            "land": "any",
            "places": ["any"],
        },
        "timing": timing,
        "growth_stage": "green and growing",
        "seedling_leaves_at_least": "not_on_label",
        "weed_height_in": 12,
        "method": "broadcast",
        "rate_low_fl_oz_per_ac": 24,
        "rate_high_fl_oz_per_ac": 64,
        "max_per_application_fl_oz_per_ac": 64,
        "max_per_year": {"amount_fl_oz_per_ac": 128, "counted": "calendar_year"},
        "basis": "product",
        "times_per_year": 2,
        "carrier_gal_per_ac": {"low_gal_per_ac": 10, "high_gal_per_ac": 25},
        "wind_mph": {"low_mph": 3, "high_mph": 9},
        "droplet": "coarse or coarser",
        "setbacks_ft": [{"keep_from": "open water", "distance_ft": 30}],
        "plant_back_days": "not_on_label",
        "seeding_interval_days": 7,
        "waiting_days": "not_on_label",
        "soil_limits": "not on saturated ground",
        "slope_limit_pct": "not_on_label",
        "last_date": "not_on_label",
        "allowed": "yes",
    }
    return use | changes


def full_card(*uses: Data, **changes: Any) -> Data:
    """Return a card with nothing left out, holding these uses."""
    card = {
        "read_on": "2026-08-01",
        "label_date": "2026-02, invented",
        "epa_reg_no": "none, invented",
        "signal_word": "warning",
        "restricted_use": False,
        "state_registered": "yes",
        "actives": [{"active": "made-up active A", "strength_lb_per_gal": 4, "basis": "ae"}],
        "pooled_with": "not_on_label",
        "bulletin": "not_on_label",
        "reentry": {"agricultural_hours": 12, "elsewhere": "until the spray has dried"},
        "protective_equipment": ["long sleeves", "gloves", "eye cover"],
        "rainfast_hours": 6,
        "mixing_setbacks_ft": [{"keep_from": "wells", "distance_ft": 50}],
        "uses": list(uses),
    }
    return card | changes


def small_property(card: Data | None = None, **work: Any) -> Data:
    """Return one screen of one acre whose fall kill a full card clears.

    726 ft by 60 ft are 43,560 square feet, an acre. Six nozzles of 20 in catching 32 fl oz in 60
    seconds at 4 mph give 5940 x 0.25 / (4 x 20) = 18.5625 gal to an acre; the tank holds 25 gal.
    """
    asked = {
        "step": "autumn_kill",
        "product": "brew",
        "rate_product_fl_oz_per_ac": 32,
        "method": "broadcast",
        "sprayer": "boom",
    }
    asked = {key: value for key, value in (asked | work).items() if value is not None}
    screen = {
        "id": "lane",
        "name": "Lane screen",
        "known_as": "Strip 1",
        "length_ft": 726,
        "width_ft": 60,
        "contract": "none",
        "cover_now": {"kind": "perennial_sod"},
        "plantings": [
            {
                "id": "lane-27",
                "season": SEASON,
                "seed": [{"species": "switchgrass", "lot": "sg", "rate_pls_lb_per_ac": 8}],
                "method": "frost_seed",
                "steps": "frost_seeded_native_grass",
                "work": [asked],
            }
        ],
    }
    return {
        "property": _property_file("Small bend"),
        "screens": {"screens": [screen]},
        "seed": {"lots": [_lot("sg", "switchgrass", 90, 60, 0, 20)]},
        "products": {"products": [_product("brew", card or full_card(full_use()))]},
        "equipment": {
            "measures": [{"id": "jug", "name": "jug", "mark_fl_oz": 0.5}],
            "sprayers": [_sprayer("boom", "Boom", 25, "jug", 32)],
        },
        "readers": {
            "readers": [
                {
                    "id": "hired",
                    "kind": "contractor",
                    "jobs": [{"planting": "lane-27", "steps": ["all"]}],
                }
            ]
        },
    }


def the_work(data: Data) -> list[Data]:
    """Return the list of work of the small property's planting, to change it in place."""
    work: list[Data] = data["screens"]["screens"][0]["plantings"][0]["work"]
    return work


def _property_file(name: str) -> Data:
    return {
        "format": 1,
        "name": name,
        "season": SEASON,
        "as_of": "2026-08-20",
        "location_lat_lon": [41.03, -93.02],
        "season_signs": {
            "first_hard_freeze": {"early": "10-04", "typical": "10-17", "late": "10-30"},
            "freeze_thaw_ends": {"early": "03-24", "typical": "04-03", "late": "04-14"},
            "weed_green_up": {"early": "03-18", "typical": "03-28", "late": "04-08"},
            "grass_emergence": {"early": "05-06", "typical": "05-14", "late": "05-22"},
        },
        "emergency": {
            "address_911": "1200 Demo Ridge Road",
            "gate_lat_lon": [41.02671, -93.01842],
            "hospital": "County hospital, 22 minutes north",
            "owner_telephone": "555-0117",
        },
        "note": "an invented property",
    }


def _lot(
    identity: str, species: str, purity: float, germination: float, hard: float, dormant: float
) -> Data:
    return {
        "id": identity,
        "species": species,
        "tag": {
            "variety": "Common, invented",
            "origin": "Iowa",
            "purity_pct": purity,
            "germination_pct": germination,
            "hard_pct": hard,
            "dormant_pct": dormant,
            "noxious_weeds": "none found",
            "treated": "none",
            "tested_on": "2026-03-02",
        },
        "live_seeds_per_lb": 259000,
        "package_lb": 10,
        "price_usd": 118.5,
        "priced_on": "2026-08-10",
        "on_hand_lb": 1.25,
        "counted_on": "2026-08-15",
    }


def _product(identity: str, card: Data) -> Data:
    return {
        "id": identity,
        "name": f"Made-up product {identity}",
        "invented": True,
        "label": card,
        "package_gal": 1,
        "price_usd": 41.25,
        "priced_on": "2026-08-10",
        "on_hand_fl_oz": 12,
        "counted_on": "2026-08-15",
    }


def _sprayer(identity: str, name: str, tank: float, measure: str, caught: float) -> Data:
    return {
        "id": identity,
        "name": name,
        "kind": "boom",
        "tank_gal": tank,
        "nozzle": "flat fan",
        "nozzle_spacing_in": 20,
        "measure": measure,
        "last_load": {"sprayed_on": "2026-05-02", "cleaned_out_on": "2026-05-02"},
        "catch_tests": [
            {
                "tested_on": "2026-08-16",
                "caught_fl_oz": [caught] * 6,
                "caught_in_seconds": 60,
                "speed_mph": 4,
            }
        ],
    }


def property_data(seed: int, screens: int) -> Data:
    """Return a generated property of so many screens; the same seed gives the same property."""
    data = add_money(_Maker(random.Random(seed)).data(screens), random.Random(f"money {seed}"))
    data = fed(data, random.Random(f"fed {seed}"))
    data = with_rows(data, random.Random(f"rows {seed}"))
    return add_dates(data, random.Random(f"dates {seed}"))


class _Maker:
    """Makes one property, all of whose choices come from one source of chance."""

    def __init__(self, chance: random.Random) -> None:
        self.chance = chance
        self.lots: list[Data] = []
        self.products: list[Data] = []

    def data(self, screens: int) -> Data:
        some = self.chance.randint
        self.lots = [self._lot(number) for number in range(some(2, 4))]
        self.products = [self._product(number) for number in range(some(2, 4))]
        stands = [self._stand(number) for number in range(some(1, 5))]
        routes = [self._route(number, stands) for number in range(some(1, 3))]
        places = [self._screen(number, routes) for number in range(screens)]
        return {
            "property": self._property(),
            "screens": {"screens": places},
            "stands": {"stands": stands},
            "routes": {"routes": routes},
            "seed": {"lots": self.lots},
            "products": {"products": self.products},
            "equipment": self._equipment(),
            "readers": {"readers": [self._reader(places)]},
        }

    def _likely(self, share: float) -> bool:
        return self.chance.random() < share

    def _property(self) -> Data:
        file = _property_file(f"Bend {self.chance.randint(1, 999)}")
        if self._likely(0.3):
            del file["season_signs"][self.chance.choice(["weed_green_up", "grass_emergence"])]
        if self._likely(0.3):
            del file["emergency"]["hospital"]
        return file

    def _lot(self, number: int) -> Data:
        species = SPECIES[number % len(SPECIES)]
        germination, dormant = self.chance.randint(30, 60), self.chance.randint(0, 38)
        lot = _lot(f"lot-{number}", species, self.chance.randint(80, 99), germination, 1, dormant)
        if self._likely(0.3):
            del lot["live_seeds_per_lb"]
        if self._likely(0.3):
            del lot["price_usd"]
        if self._likely(0.5):
            lot["note"] = f"bin {number} in the barn"
        return tagged_further(lot, number)

    def _product(self, number: int) -> Data:
        uses = [full_use(TIMING[step]) for step in SPRAY_STEPS]
        card = full_card(*uses)
        card["actives"] = [
            {
                "active": f"made-up active {TREES[number]}",
                "strength_lb_per_gal": self.chance.choice([2, 3.2, 4.1]),
                "basis": self.chance.choice(["ai", "ae"]),
            }
        ]
        if self._likely(0.3):
            del card[self.chance.choice(["rainfast_hours", "reentry", "read_on"])]
        if self._likely(0.3):
            card["uses"] = [full_use(covers={"kinds": ["clover"], "species": ["any"],
                                             "land": "any", "places": ["any"]})]  # fmt: skip
        product = _product(f"product-{number}", card)
        if self._likely(0.2):
            del product["label"]
        return product

    def _stand(self, number: int) -> Data:
        lat, lon = 41 + self.chance.randint(100, 999) / 10000, -93.021
        stand: Data = {"id": f"stand-{number}", "name": f"Oak {number}", "at_lat_lon": [lat, lon]}
        if self._likely(0.6):
            stand |= {"seat_height_ft": 15, "note": "reach it from the lane"}
        if number % 2:
            stand["upkeep"] = "stand_inspection"
        return stand

    def _route(self, number: int, stands: list[Data]) -> Data:
        serves = self.chance.sample(stands, self.chance.randint(1, len(stands)))
        return ({} if number % 2 else {"upkeep": "walk_in_work"}) | {
            "id": f"route-{number}",
            "name": f"Walk {number}",
            "serves": [one["id"] for one in serves],
            "length_ft": self.chance.randint(200, 2000),
        }

    def _screen(self, number: int, routes: list[Data]) -> Data:
        unit, length = self.chance.choice([("ft", 900), ("yd", 300), ("m", 280)])
        width_unit, width = self.chance.choice([("ft", 24), ("m", 7.5)])
        screen: Data = {
            "id": f"place-{number}",
            "name": f"Screen {number}",
            "known_as": f"Strip {number}",
            f"length_{unit}": length + self.chance.randint(0, 400),
            f"width_{width_unit}": width + self.chance.randint(0, 9),
            "hides": [self.chance.choice(routes)["id"]],
            "contract": self.chance.choice(["none", "none", "ten-year cover program"]),
            "cover_now": {"kind": self.chance.choice(["perennial_sod", "stubble", "unsure"])},
            "near": {"water_and_wells": f"ditch {number} steps off", "lines": "none overhead"},
            "plantings": [self._planting(number)],
        }
        for key, share in (("known_as", 0.2), ("near", 0.25), ("contract", 0.2), ("hides", 0.5)):
            if self._likely(share):
                del screen[key]
        return with_shapes(screen, number)

    def _planting(self, number: int) -> Data:
        lots = self.chance.sample(self.lots, self.chance.randint(1, 2))
        planting = {
            "id": f"planting-{number}",
            "season": SEASON if self._likely(0.9) else SEASON - 1,
            "seed": [
                {"species": lot["species"], "lot": lot["id"], "rate_pls_lb_per_ac": rate}
                for lot, rate in zip(lots, (6, 2.5), strict=False)
            ],
            "method": "frost_seed",
            "steps": "frost_seeded_native_grass",
            "work": [
                *map(self._spray, SPRAY_STEPS),
                {"step": "frost_seeding", "spreader": "crank"},
            ],
        }
        return sown_its_way(planting, lots, number)

    def _spray(self, step: str) -> Data:
        unit = self.chance.choice(list(FL_OZ_PER))
        work = {
            "step": step,
            "product": self.chance.choice(self.products)["id"],
            f"rate_product_{unit}_per_ac": self.chance.randint(20, 72) / FL_OZ_PER[unit],
            "method": "broadcast",
            "sprayer": self.chance.choice(["cart", "rig"]),
        }
        if self._likely(0.15):
            del work["sprayer"]
        return work

    def _equipment(self) -> Data:
        test = {
            "tested_on": "2026-08-16",
            "lot": self.lots[0]["id"],
            "setting": "third notch",
            "caught_lb": 0.14,
            "swath_ft": 12,
            "distance_ft": 100,
        }
        return {
            "measures": [{"id": "jug", "name": "pitcher", "mark_fl_oz": 1}],
            "sprayers": [
                _sprayer("cart", "Cart", 8, "jug", 25.5),
                _sprayer("rig", "Rig", self.chance.randint(15, 60), "jug", 31),
            ],
            "spreaders": [{"id": "crank", "name": "Crank", "hopper_lb": 3, "catch_tests": [test]}],
            "drills": [drill(self.lots[0]["id"])],
        }

    def _reader(self, places: list[Data]) -> Data:
        plantings = [one for place in places for one in place["plantings"]]
        named = [one for one in plantings if one["season"] == SEASON] or plantings
        handed = self.chance.sample(named, max(1, len(named) // 3))
        steps = (["all"], ["autumn_kill"], ["autumn_kill", "frost_seeding"])
        return {
            "id": "hired",
            "kind": "contractor",
            "name": "the hired crew",
            "jobs": [
                {"planting": one["id"], "steps": _steps_of(one, self.chance.choice(steps))}
                for one in handed
            ],
        }


def _steps_of(planting: Data, steps: list[str]) -> list[str]:
    return [drilled(one) for one in steps] if planting["method"] == "drill" else list(steps)


def changed(data: Data, file: str, *path: str | int, to: object) -> Data:
    """Return a copy of a property with one value replaced, or left out where `to` is None."""
    result = copy.deepcopy(data)
    at: Any = result[file]
    for part in path[:-1]:
        at = at[part]
    if to is None:
        del at[path[-1]]
    else:
        at[path[-1]] = to
    return result
