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
