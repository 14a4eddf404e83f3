"""The fullest tank a small property may ask for: every line of the label, three products over."""

import copy

from tests.properties import Data, small_property, the_work

WORN = [
    "long-sleeved shirt and long pants",
    "chemical-resistant gloves",
    "eye cover",
    "chemical-resistant apron when mixing",
]
FORMULATIONS = ("emulsifiable_concentrate", "solution", "flowable")


def three_in_the_tank() -> Data:
    """The small property with two partners in the tank of the kill, and much on every label.

    The second label lets one spray from 4 to 8 mph and asks for 8 dry hours; the others for 3 to 9
    mph and 6 hours.
    """
    data = small_property()
    products = data["products"]["products"]
    for name, active in (("other", "made-up active birch"), ("third", "made-up active cedar")):
        product = copy.deepcopy(products[0]) | {"id": name, "name": f"Made-up product {name}"}
        product["label"]["actives"][0]["active"] = active
        products.append(product)
    for product, formulation in zip(products, FORMULATIONS, strict=True):
        product["formulation"] = formulation
        product["label"]["protective_equipment"] = WORN
        product["label"]["mixing_setbacks_ft"] = [
            {"keep_from": "wells", "distance_ft": 50},
            {"keep_from": "open water and tile inlets", "distance_ft": 66},
        ]
        product["label"]["uses"][0]["setbacks_ft"] = [
            {"keep_from": "open water", "distance_ft": 30},
            {"keep_from": "dwellings", "distance_ft": 100},
            {"keep_from": "gardens and orchards", "distance_ft": 50},
        ]
    products[1]["label"]["uses"][0]["wind_mph"] = {"low_mph": 4, "high_mph": 8}
    products[1]["label"]["rainfast_hours"] = 8
    the_work(data)[0]["partners"] = [
        {"product": "other", "rate_product_fl_oz_per_ac": 40},
        {"product": "third", "rate_product_fl_oz_per_ac": 36},
    ]
    return data


def on_drawn_ground(data: Data) -> Data:
    """The property with its screen on points, and around it what sprayers ask for and keep off.

    The screen runs north from a gate. Every label keeps 50 ft from wells; one lies beside it.
    """
    data["property"].setdefault("emergency", {})["gate_lat_lon"] = [41.0297, -93.0203]
    (screen,) = data["screens"]["screens"]
    screen["line_lat_lon"] = [[41.03, -93.02], [41.032, -93.02]]
    screen["near"] = screen.get("near", {}) | {"block_lat_lon": [41.03, -93.02]}
    for product in data["products"]["products"]:
        for use in product["label"]["uses"]:
            use["setbacks_ft"].append(
                {
                    "keep_from": "wells",
                    "distance_ft": 50,
                    "kind": "well",
                    "counts_from": "as_printed",
                }
            )
    return data | {"land": {"land": list(AROUND)}}


# Names as long as people type them: few have room on the drawing, the others a number.
AROUND: tuple[Data, ...] = (
    {"id": "well", "kind": "well", "name": "Old well by the fallen windmill",
     "known_as": "Hand-dug well by the windmill", "at_lat_lon": [41.031, -93.0201]},
    {"id": "creek", "kind": "creek", "name": "Mill creek", "known_as": "The creek", "width_ft": 12,
     "line_lat_lon": [[41.0286, -93.0206], [41.031, -93.0207], [41.0335, -93.0206]]},
    {"id": "inlet", "kind": "tile_inlet", "name": "Tile inlet at the low corner",
     "known_as": "Inlet in the low corner", "at_lat_lon": [41.0313, -93.0196]},
    {"id": "house", "kind": "dwelling", "name": "House across the road",
     "known_as": "Dwelling across the road", "at_lat_lon": [41.0303, -93.0189]},
    {"id": "garden", "kind": "neighbors_crop", "name": "Garden of the house across the road",
     "known_as": "Garden of the house", "at_lat_lon": [41.0304, -93.0187]},
    {"id": "orchard", "kind": "neighbors_crop", "name": "Orchard of the neighbor to the east",
     "known_as": "Orchard to the east", "at_lat_lon": [41.0311, -93.0186]},
    {"id": "above", "kind": "line_above", "name": "Power line over the south end",
     "known_as": "Power line", "line_lat_lon": [[41.0301, -93.0215], [41.0302, -93.0185]]},
)  # fmt: skip
