"""The same property with everything private changed: names, ids, order, files, and what is added.

What another reader is handed stays: jobs of handed plantings, what they are worked out from,
handed stands and walks with what the log says of them, and every safety line.
"""

import copy
import datetime
import random
from collections.abc import Iterator
from typing import Any

from tests.properties import Data, property_data
from tests.properties_dates import change_dates
from tests.readers.lands import change_land
from tests.readers.partnered import handed_ground
from tests.shapes import line_of, with_other_acres, with_other_ground
from tests.sowings import AMPLE_LB

READER = "hired"
WITH_NOTES = {
    "screens": ("screens",),
    "strips": ("strips",),
    "stands": ("stands",),
    "routes": ("routes",),
    "seed": ("lots", "plants", "guards"),
    "products": ("products", "fertilizers", "limes"),
    "equipment": ("sprayers", "spreaders", "drills", "machines"),
    "readers": ("readers",),
    "money": ("hires", "cost_share"),
    "log": ("entries",),
    "ground": ("soil_tests", "water_holes"),
    "dates": ("dates", "shooting_hours", "looked_up"),
    "people": ("applicators", "helpers", "contractors"),
    "papers": ("permits", "contracts", "one_calls"),
    "sits": ("sits",),
    "land": ("land",),
}
# Entries lie in the fifty days up to the plan's, of which each has at most one.
AS_OF, DAYS_BEFORE = datetime.date(2026, 8, 20), 50
AMPLE_FL_OZ = 4000  # more than any generated log sprays
WITHOUT_FORMER_NAMES = ("readers", "money", "log", "dates", "people", "papers", "sits")
MONEY = ("package_lb", "package_gal", "price_usd", "priced_on", "on_hand_lb", "on_hand_fl_oz",
         "package_count", "on_hand_count", "counted_on")  # fmt: skip
# What a sheet counts bags by.
SEEN = {"fertilizers": ("package_lb",), "limes": ("package_lb",)}
REFERENCES = ("lot", "product", "products", "same_ground_as", "sprayer", "spreader", "drill",
              "measure", "planting", "hides", "serves", "places", "machine", "item", "corrects",
              "confirms", "soil_test", "fertilizers", "lime", "plants", "guards", "reader", "fits",
              "cost_share", "place", "applicator", "water_hole", "what", "dates", "test", "route",
              "mixed_with", "at", "stands", "routes", "crops", "stand", "walk_in",
              "walk_out", "shown_to", "coordinates_for")  # fmt: skip


def scrambled(data: Data, chance: random.Random, reader: str = READER) -> tuple[Data, str]:
    """Return a property in which only what its reader may not see is another; and the reader."""
    result = copy.deepcopy(data)
    handed, ground = handed_plantings(result, reader), handed_ground(result, reader)
    result["screens"]["screens"] = list(_screens(result, handed, chance))
    _forget_lost_plantings(result)
    _change_other_readers(result, reader, handed, chance)
    _add_strangers(result, chance)
    result["strips"] = {"strips": []}
    _change_spending(result, ground, chance)
    _change_routes_and_stands(result, ground, chance)
    _change_sits(result, reader, chance)
    change_land(result, reader, _places_of(result, handed), chance)
    seen = _places_of(result, handed) | ground
    change_dates(result, seen, chance, looked_up_is_told=bool(ground))
    _change_words(result, ground, chance)
    for name in ("seed", "products"):
        for kind, entries in result[name].items():
            _change_money(entries, chance, [one for one in MONEY if one not in SEEN.get(kind, ())])
    result["strips"]["strips"] += _made_strips(result, chance)
    named = _new_ids(result, chance)
    result = new_names(result, named)
    for name in WITH_NOTES:
        for entries in result[name].values():
            chance.shuffle(entries)
    return result, named[reader]


def handed_plantings(data: Data, reader: str) -> set[str]:
    """The plantings of which a reader is handed a job."""
    readers = {one["id"]: one for one in data["readers"]["readers"]}
    return {one["planting"] for one in readers[reader]["jobs"]}


def _places_of(data: Data, plantings: set[str]) -> set[str]:
    return {
        screen["id"]
        for screen in data["screens"]["screens"]
        if plantings & {one["id"] for one in screen["plantings"]}
    }


def _screens(data: Data, handed: set[str], chance: random.Random) -> Iterator[Data]:
    routes = [one["id"] for one in data["routes"]["routes"]]
    for screen in data["screens"]["screens"]:
        if handed & {one["id"] for one in screen["plantings"]}:
            screen["hides"] = chance.sample(routes, chance.randint(0, len(routes)))
            screen["cover_now"]["note"] = f"brush {chance.random()}"
            # where a place of theirs lies is theirs to know
            yield with_other_acres(screen, chance)
        elif chance.random() < 0.7:
            screen |= {"width_ft": chance.randint(9, 99), "known_as": f"Other {screen['id']}"}
            screen.pop("width_m", None)
            yield with_other_ground(screen, chance)


def _made_strips(data: Data, chance: random.Random) -> Iterator[Data]:
    """Make strips of some screens: what a place is for is the owner's alone to know."""
    screens = data["screens"]["screens"]
    for screen in chance.sample(screens, chance.randint(1, len(screens) - 1)):
        screens.remove(screen)
        yield {key: value for key, value in screen.items() if key != "hides"}


def _forget_lost_plantings(data: Data) -> None:
    """Drop what is said in money and log of plantings whose place is gone."""
    left = {one["id"] for screen in data["screens"]["screens"] for one in screen["plantings"]}
    for hire in data["money"]["hires"]:
        hire["jobs"] = [one for one in hire["jobs"] if one["planting"] in left]
    data["money"]["hires"] = [one for one in data["money"]["hires"] if one["jobs"]]
    shares = data["money"]["cost_share"]
    data["money"]["cost_share"] = [one for one in shares if one["planting"] in left]
    lasting = {one["id"] for one in data["screens"]["screens"]}
    tests = data["ground"]["soil_tests"]
    data["ground"]["soil_tests"] = [one for one in tests if lasting.issuperset(one["places"])]
    for entry in data["log"]["entries"]:
        if entry.get("job", {}).get("planting") not in left:
            entry.pop("job", None)
        if entry.get("counted", {}).get("planting") not in left:
            entry.pop("counted", None)
        seen = entry.pop("weeds_seen", [])
        entry["weeds_seen"] = [one for one in seen if one["planting"] in left]


def _add_strangers(data: Data, chance: random.Random) -> None:
    """Add places, lots, products and a reader that have nothing to do with what is handed."""
    other = property_data(chance.randint(0, 10**6), 3)
    named = {one["id"]: f"new-{one['id']}" for file in ("screens", "seed", "products", "ground")
             for one in _entries({file: other[file]})}  # fmt: skip
    other = new_names(other, named)
    for screen in other["screens"]["screens"]:
        screen |= {"hides": [], "known_as": f"New {screen['id']}"}
        for key in ("line_lat_lon", "area_lat_lon"):
            if key in screen:
                # on ground of their own: what is sprayed on shared ground counts for everybody
                screen[key] = [[lat, lon + 0.02] for lat, lon in screen[key]]
        data["screens"]["screens"].append(screen)
    for file in ("seed", "products", "ground"):
        for kind, entries in other[file].items():
            data[file].setdefault(kind, []).extend(entries)
    reader = other["readers"]["readers"][0] | {"id": "second", "name": "another crew"}
    data["readers"]["readers"].append(reader)


def _change_other_readers(data: Data, reader: str, handed: set[str], chance: random.Random) -> None:
    """Hand other readers more and less, all but jobs on what is handed to this one too."""
    left = {one["id"] for screen in data["screens"]["screens"] for one in screen["plantings"]}
    for other in (one for one in data["readers"]["readers"] if one["id"] != reader):
        shared = [one for one in other["jobs"] if one["planting"] in handed]
        more = chance.sample(sorted(left - handed), len(left - handed) // 2)
        other["jobs"] = [*shared, *({"planting": one, "steps": ["all"]} for one in more)]
        for kind in ("stands", "routes"):
            if kind in other:
                other[kind] = [one["id"] for one in data[kind][kind] if chance.random() < 0.5]


def _change_routes_and_stands(data: Data, ground: set[str], chance: random.Random) -> None:
    """Change, add and take away stands and walks that are not handed over, and what leads where."""
    stands, routes = data["stands"]["stands"], data["routes"]["routes"]
    gone = {one["id"] for one in (*stands, *routes) if chance.random() < 0.3} - ground
    for kind, list_of in (("stands", stands), ("routes", routes)):
        data[kind][kind] = [one for one in list_of if one["id"] not in gone]
    stands, routes = data["stands"]["stands"], data["routes"]["routes"]
    for stand in (one for one in stands if one["id"] not in ground):
        stand |= {"at_lat_lon": [40 + chance.random(), -92.5], "straps_checked_on": "2026-02-03"}
        stand |= {"upkeep": "stand_inspection", "seat_height_ft": chance.randint(1, 30)}
        serving, spoiling = chance.sample(range(0, 360, 45), 2)
        stand |= {"winds_for": [serving], "winds_against": [spoiling]}
    for stand in stands:
        # where deer are is told to nobody, whoever has the stand
        stand["beds"] = [_deer_spot(chance) for _ in range(chance.randint(0, 2))]
        stand["food"] = [_deer_spot(chance)]
        stand |= {"deer_come_from": ["NE"], "downwind_reach_yd": chance.randint(50, 500)}
    for stand in (one for one in stands if one.get("coordinates") != "yes"):
        stand |= {"at_lat_lon": [40 + chance.random(), -92.5]}
        if stand["id"] in ground:
            stand["coordinates"] = "no"
    stands.append({"id": "stand-new", "name": f"Pine {chance.random()}"})
    led_to = sorted(one["id"] for one in stands)
    for route in routes:
        private = [one for one in led_to if one not in ground]
        kept = [one for one in route["serves"] if one in ground]
        route["serves"] = [*kept, *chance.sample(private, chance.randint(0, len(private)))]
        if route["id"] not in ground:
            route |= {"length_ft": chance.randint(1, 5000), "serves": ["stand-new"]}
            serving, spoiling = chance.sample(range(0, 360, 45), 2)
            route |= {"winds_for": [serving], "winds_against": [spoiling]}
        if route.get("coordinates") != "yes":
            route["line_lat_lon"] = line_of(40 + chance.random(), -92.5, 700)
    routes.append({"id": "route-new", "name": "Back way", "serves": [led_to[0]]})
    _forget(data, gone)


def _deer_spot(chance: random.Random) -> Data:
    spot = {"toward": chance.randint(0, 360), "name": f"thicket {chance.random()}"}
    return spot | {"distance_yd": chance.randint(10, 600)}


def _change_sits(data: Data, reader: str, chance: random.Random) -> None:
    """Change who sits at what is not handed over, where, and in how many sits; the hours stay."""
    more: list[Data] = []
    for sit in data["sits"]["sits"]:
        if sit.get("reader") == reader:
            continue
        sit.pop("reader", None)
        sit |= {"person": f"sitter {chance.random()}", "stand": "stand-new"}
        sit.pop("walk_in", None)
        if chance.random() < 0.5:
            # two that lie over each other have the hours of the one
            more.append(sit | {"id": f"{sit['id']}-late", "from_time": "16:40"})
            sit["until_time"] = "17:10"
    data["sits"]["sits"] += more


def _forget(data: Data, gone: set[str]) -> None:
    """Drop every mention of stands and walks that are gone."""
    for screen in data["screens"]["screens"]:
        screen["hides"] = [one for one in screen.get("hides", ()) if one not in gone]
    for reader in data["readers"]["readers"]:
        for kind in ("stands", "routes"):
            if kind in reader:
                reader[kind] = [one for one in reader[kind] if one not in gone]
    for entry in data["log"]["entries"]:
        if "inspected" in entry:
            left = [one for one in entry["inspected"]["what"] if one not in gone]
            entry["inspected"]["what"] = left
            if not left:
                del entry["inspected"]
        if "upkeep" in entry:
            entry["upkeep"] = [one for one in entry["upkeep"] if one["at"] not in gone]
        if entry.get("sight_checked", {}).get("route") in gone:
            del entry["sight_checked"]


def _tells(entry: Data, ground: set[str]) -> bool:
    """Whether an entry of the log says something of stands and walks that are handed over."""
    named = {
        *entry.get("inspected", {}).get("what", ()),
        entry.get("sight_checked", {}).get("route"),
    }
    return bool(ground & (named | {one["at"] for one in entry.get("upkeep", ())}))


def _change_words(data: Data, ground: set[str], chance: random.Random) -> None:
    data["property"] |= {
        "name": f"Another bend {chance.random()}",
        "location_lat_lon": [40 + chance.random(), -91.5],
        "time_zone": chance.choice(["America/Denver", "America/New_York"]),
        "note": f"another note {chance.random()}",
    }
    for file, keys in WITH_NOTES.items():
        for entry in (one for key in keys for one in data[file][key]):
            entry["note"] = f"private {chance.random()}"
            if file not in WITHOUT_FORMER_NAMES:
                entry["was"] = [f"was-{entry['id']}-{chance.randint(0, 999)}"]
            goes_by_it = entry["id"] in ground and "known_as" not in entry
            if goes_by_it:
                continue
            if file in ("screens", "stands", "routes", "readers", "land") or "shape" in entry:
                entry["name"] = f"name {chance.random()}"
            if "sampled_on" in entry:
                entry["lab"] = f"laboratory {chance.random()}"
            if "deer_count" in entry:
                entry["deer_count"] = chance.randint(1, 99)
    for screen in data["screens"]["screens"]:
        for planting in screen["plantings"]:
            planting["note"] = f"planted {chance.random()}"
            for work in planting["work"]:
                work["note"] = f"worked {chance.random()}"
    for reader in data["readers"]["readers"]:
        for kind in ("jobs", "stands", "routes"):
            chance.shuffle(reader.get(kind, []))
        for job in reader["jobs"]:
            chance.shuffle(job["steps"])


def _change_money(entries: list[Data], chance: random.Random, keys: list[str]) -> None:
    for entry in entries:
        for key in keys:
            if key in entry and chance.random() < 0.3:
                del entry[key]
            elif key in entry and key.endswith("_count"):
                entry[key] = chance.randint(1, 120)
            elif key in entry and not key.endswith("_on"):
                entry[key] = chance.randint(1, 500) / 4
        if "most_to_be_had_lb" in entry:
            # short of seed, acres would change; what is ample stays private, however much it is
            entry["most_to_be_had_lb"] = AMPLE_LB + chance.randint(1, 500)
        if "on_hand_fl_oz" in entry:
            # more sprayed than was there would stop a job; what is ample stays private too
            entry["on_hand_fl_oz"] = AMPLE_FL_OZ + chance.randint(1, 500)


def _change_spending(data: Data, ground: set[str], chance: random.Random) -> None:
    """Change every price, amount and day of hires, contracts and log; drop and add some."""
    for machine in data["equipment"]["machines"]:
        machine |= {"rent_usd_per_day": chance.randint(1, 99), "work_day_hours": 5}
    for hire in data["money"]["hires"]:
        for key in [key for key in hire if key.startswith("price_")]:
            del hire[key]
        hire |= {"price_usd_per_ac": chance.randint(1, 99), "minimum_usd": chance.randint(1, 99)}
    kept = [one for one in data["money"]["cost_share"] if chance.random() < 0.5]
    changes = {"cap_usd": 7, "approved_on": "2026-08-02"}
    data["money"]["cost_share"] = [one | changes for one in kept]
    entries = data["log"]["entries"]
    # Days apart: the same use twice on one day is asked about, and would stop a job.
    days = chance.sample(range(DAYS_BEFORE), len(entries))
    for day, entry in zip(days, entries, strict=True):
        entry["by"] = f"person {chance.random()}"
        if not _tells(entry, ground):
            entry["done_on"] = str(AS_OF - datetime.timedelta(days=day))
        if "counted" in entry:
            entry["counted"]["cells_with_plant_count"] = chance.randint(0, 100)
        for seen in entry["weeds_seen"]:
            seen |= {"weed": f"weed {chance.random()}", "share": chance.choice(["few", "most"])}
    _change_records(data, ground, chance)
    bought = {"item": data["seed"]["lots"][0]["id"], "amount_lb": 3, "cost_usd": 5}
    entries.append({"id": "e-new", "done_on": "2026-08-03", "bought": [bought]})


def _change_records(data: Data, ground: set[str], chance: random.Random) -> None:
    """Change what is written down of work, and add a spraying on a place that nobody is handed."""
    for entry in data["log"]["entries"]:
        if "sprayed" in entry:
            entry["sprayed"] |= {
                "location": f"row {chance.random()}",
                "treated_ac": chance.randint(1, 9),
                "wind_mph": chance.randint(1, 9),
                "started_at": f"0{chance.randint(1, 9)}:15",
                "weeds": f"weeds {chance.random()}",
                "lot_number": f"number {chance.random()}",
                "licence_number": f"license {chance.random()}",
                "spot": True,
            }
        if "drift_checked" in entry:
            entry["drift_checked"] = {"found": f"harm {chance.random()}", "clean": False}
            entry["sight_checked"] |= {"seen_from": f"hill {chance.random()}", "hidden": False}
            entry["cleaned_out"]["how"] = f"with {chance.random()}"
            entry["spent"] = [{"what": f"fuel {chance.random()}", "cost_usd": 19}]
        if "inspected" in entry:
            entry["inspected"]["found"] = f"rust {chance.random()}"
            if not _tells(entry, ground):
                entry["inspected"]["sound"] = not entry["inspected"]["sound"]
        if "mowed" in entry:
            entry["mowed"] = {"weeds_height_in": chance.randint(9, 40)}
    stranger = data["screens"]["screens"][-1]["id"]
    used = [{"item": data["products"]["products"][-1]["id"], "amount_fl_oz": 40}]
    spot = {"place": stranger, "treated_ac": 0.01, "weeds": f"thistle {chance.random()}"}
    spot["own_sprayer"] = False
    entry = {"id": "e-stranger", "done_on": "2026-08-19", "used": used, "sprayed": spot}
    data["log"]["entries"].append(entry)


def _entries(data: Data) -> Iterator[Data]:
    for file in sorted(data.keys() & WITH_NOTES.keys()):
        for entries in data[file].values():
            for entry in entries:
                yield entry
                yield from entry.get("plantings", ())


def _new_ids(data: Data, chance: random.Random) -> dict[str, str]:
    names = [one["id"] for one in _entries(data)]
    numbers = chance.sample(range(10**6), len(names))
    return {name: f"{chance.choice('abcxyz')}{n}" for name, n in zip(names, numbers, strict=True)}


def new_names(value: Any, named: dict[str, str], key: str = "") -> Any:
    """Return data with every id, and every mention of one, replaced."""
    if isinstance(value, dict):
        return {name: new_names(one, named, name) for name, one in value.items()}
    if isinstance(value, list):
        return [new_names(one, named, key) for one in value]
    if key == "id" or key in REFERENCES:
        return named.get(value, value)
    return value
