"""The small property with one product on two jobs of an acre, 32 fl oz each, and its plans."""

import datetime

from generator.plan.build.season_plan import make_plan
from generator.plan.model.plan import Plan
from tests.plan.planned import AS_OF, inventory_of
from tests.properties import SEASON, Data, full_card, full_use, small_property, the_work


def twice(**product: object) -> Data:
    """The small property, sprayed in fall and in spring."""
    spring = full_use("after_sowing_before_emergence")
    data = small_property(full_card(full_use(), spring))
    kill = next(one for one in the_work(data) if one["step"] == "autumn_kill")
    the_work(data).append(kill | {"step": "spring_burn_down"})
    brew: Data = data["products"]["products"][0]
    brew |= {"lead_days": 0} | product
    return data


def plan_of(data: Data, as_of: datetime.date = AS_OF) -> Plan:
    return make_plan(inventory_of(data), SEASON, as_of)
