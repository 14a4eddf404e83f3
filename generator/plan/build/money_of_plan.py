"""Fifth stage: hours, hire, what is bought, who is handed what, and what that asks."""

from dataclasses import replace

from generator.inventory.schema import Inventory
from generator.plan.jobs.request import JobRequest
from generator.plan.model.finding import Finding
from generator.plan.model.job import Job
from generator.plan.model.plan import BudgetLine, Plan
from generator.plan.money.budget import buying_of, priced
from generator.plan.money.field_work import hire_lines, machine_lines, work_times
from generator.plan.money.free_hours import hour_findings
from generator.plan.money.money_findings import money_findings
from generator.plan.readers.handed import handed_over
from generator.plan.readers.shared_text import shared_text_findings
from generator.plan.usual.days_to_come import days_to_come
from generator.plan.usual.usual_stock import stock_findings
from generator.working import Quantity


def with_money(plan: Plan, inventory: Inventory) -> Plan:
    """Return a plan that has its jobs and stops with hours, budget, purchases and readers."""
    used = tuple(
        _line(job, *taken) for job in plan.jobs if job.state.is_ahead for taken in job.used_up()
    )
    # step by step on the plan itself: hours rest on its jobs, lines on hours, money on lines
    timed = replace(
        plan,
        lines=priced(used, plan.items),
        times=work_times(plan, inventory.machines, inventory.places()),
    )
    lined = replace(timed, lines=(*timed.lines, *machine_lines(timed), *hire_lines(timed)))
    bought = replace(lined, buying=buying_of(lined))
    # before hours: what is handed over takes none of the owner's
    return replace(bought, handed=handed_over(bought, inventory.readers))


def _line(job: Job, kind: str, item_id: str, amount: Quantity) -> BudgetLine:
    return BudgetLine(job.id, job.place_id, job.planting_id, job.season, kind, item_id, amount)


def findings_of_money(
    plan: Plan, inventory: Inventory, ahead: tuple[JobRequest, ...]
) -> tuple[Finding, ...]:
    """Return what money, stock, hours and shared words ask; `ahead` are jobs of other seasons."""
    of_money = money_findings(plan, inventory.lots, inventory.places(), ahead)
    return (
        *of_money,
        *days_to_come(inventory, plan.as_of, of_money),
        *stock_findings(plan, inventory.lots, inventory.places()),
        *shared_text_findings(plan, inventory),
        *hour_findings(plan),
    )
