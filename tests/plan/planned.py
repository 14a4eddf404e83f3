"""Plans of property data, through the files an owner would have, and what they say of a job."""

import datetime
import tempfile
from pathlib import Path

from generator.book.pages.subjects import Subjects
from generator.inventory.load import load_inventory
from generator.inventory.schema import Inventory
from generator.plan.build.season_plan import make_plan
from generator.plan.model.job import Job
from generator.plan.model.plan import Plan
from tests.properties import SEASON, Data, write_property

AS_OF = datetime.date(2026, 8, 20)
KILL = f"lane/{SEASON}/autumn_kill"
BURN_DOWN = f"lane/{SEASON}/spring_burn_down"


def inventory_of(data: Data) -> Inventory:
    """The records of property data; fails on a fault."""
    with tempfile.TemporaryDirectory() as folder:
        loaded = load_inventory(write_property(Path(folder) / "property", data))
    assert loaded.problems == ()
    assert loaded.inventory is not None
    return loaded.inventory


def well_stocked(data: Data) -> Data:
    """Property data with so much on hand that no use in its log is more than was there."""
    for product in data["products"]["products"]:
        product["on_hand_fl_oz"] = 10_000
    return data


def planned(data: Data) -> Plan:
    """The owner's plan of property data; whatever it tells is about something with a name."""
    plan = make_plan(inventory_of(data), SEASON, AS_OF)
    subjects = Subjects(plan)
    assert all(subjects.named(finding.subject) for finding in plan.findings)
    return plan


def job_of(plan: Plan, job_id: str = KILL) -> Job:
    """One job of a plan."""
    return next(one for one in plan.jobs if one.id == job_id)


def stops_of(plan: Plan, job_id: str = KILL) -> set[str]:
    """The names of the stops on a job; a job has a mix where, and only where, there is none."""
    codes = {one.code for one in plan.findings_on(job_id) if one.severity == "stop"}
    assert (job_of(plan, job_id).mix is None) == bool(codes)
    assert bool(job_of(plan, job_id).numbers) != bool(codes)
    return codes
