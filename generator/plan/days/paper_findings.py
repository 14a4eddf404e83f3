"""Stops, cautions and notes of papers and people: permits, contracts, requests, licenses."""

import datetime
from collections.abc import Iterator

from generator.inventory.log import LogEntry
from generator.inventory.money import CostShare
from generator.inventory.papers import Contract, Permit
from generator.inventory.people import Contractor
from generator.inventory.places import PlantedGround
from generator.inventory.schema import PARTNER, Inventory, Reader
from generator.plan.days.contracts import (
    approval_of,
    contracts_on,
    is_contract_land,
    is_permitted,
    names_job,
)
from generator.plan.findings.about_days import DayCaution, DayNote, DayStop
from generator.plan.findings.order import about_record, finding
from generator.plan.jobs.job_days import is_clear, open_span
from generator.plan.jobs.licenses import doers_of, is_good, is_hired, readers_of
from generator.plan.model.days import day_words, holds_on
from generator.plan.model.finding import Finding, Subject, about_job, about_place
from generator.plan.model.job import Job


def paper_findings(
    jobs: list[Job],
    inventory: Inventory,
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> list[Finding]:
    """Return what papers and licenses leave open for jobs still to be done."""
    waiting = [job for job in jobs if job.state.is_ahead]
    found = [told for job in waiting for told in _job(job, inventory, as_of)]
    for contract in inventory.contracts:
        found += _approval(contract, jobs, inventory.cost_share, entries, as_of)
    for contractor in inventory.contractors:
        found += _insurance(contractor, waiting, inventory.readers)
    found += _of_no_reader(waiting, inventory.contractors, inventory.readers)
    found += _later(inventory.permits, inventory.contracts, as_of)
    return found + list(_no_paper(inventory.places(), inventory.contracts))


def _job(job: Job, inventory: Inventory, as_of: datetime.date) -> Iterator[Finding]:
    does, closes = job.step.does, job.dates.closes
    permits = [permit for permit in inventory.permits if permit.kind == "burn"]
    if does.uses_fire and not any(is_permitted(permit, job, as_of) for permit in permits):
        yield finding(DayStop.NO_BURN_PERMIT, about_job(job.id))
    calls = inventory.one_calls
    if does.digs and not any(is_clear(call, job.place_id, open_span(job)) for call in calls):
        yield finding(DayCaution.NO_ONE_CALL, about_job(job.id))
    for contract in contracts_on(job.place_id, inventory.contracts):
        if not names_job(contract.work_allowed, job):
            yield finding(
                DayCaution.NOT_IN_CONTRACT,
                about_job(job.id),
                contract.where,
                contract=contract.name,
            )
    if does.sprays and is_hired(job.planting_id, job.step.id, inventory.hires):
        doers = doers_of(job.planting_id, job.step.id, inventory.workers())
        if not any(is_good(doer, closes) for doer in doers):
            yield finding(DayCaution.HIRE_UNLICENSED, about_job(job.id))


def _approval(
    contract: Contract,
    jobs: list[Job],
    cost_share: tuple[CostShare, ...],
    entries: tuple[LogEntry, ...],
    as_of: datetime.date,
) -> Iterator[Finding]:
    """Yield a caution on a contract that may forfeit its payment; cost-share has its own."""
    paid = {
        share.planting
        for share in cost_share
        if share.id in contract.cost_share or share.name == contract.name
    }
    mine = [
        job
        for job in jobs
        if holds_on(contract.places, job.place_id) and job.planting_id not in paid
    ]
    if not mine:
        return
    plantings = {job.planting_id for job in mine}
    logged = [
        entry.done_on
        for entry in entries
        if entry.job is not None and entry.job.planting in plantings
    ]
    begun, approved = min(logged, default=None), approval_of(contract, as_of)
    # What the season before owes opened before this season was planned.
    season = max(job.season for job in mine)
    opened = [job.dates.opens for job in mine if job.season == season]
    opens = min((day for day in opened if day is not None), default=None)
    why = _why_not(begun, opens, approved)
    if why is not None:
        yield finding(
            DayCaution.CONTRACT_NOT_APPROVED,
            Subject("contract", contract.id),
            contract.where,
            contract=contract.name,
            why=why,
        )


def _why_not(
    begun: datetime.date | None, opens: datetime.date | None, approved: datetime.date | None
) -> str | None:
    if begun is not None and (approved is None or begun < approved):
        return f"was not approved when work on its ground was logged, on {day_words(begun)}"
    if approved is None:
        return "is not approved in writing yet"
    # once work is logged, the log says when it began, and open dates no longer do
    if begun is None and opens is not None and opens < approved:
        return (
            f"was approved on {day_words(approved)}, and a job on its ground opened before, on "
            f"{day_words(opens)}"
        )
    return None


def _insurance(
    contractor: Contractor, waiting: list[Job], readers: tuple[Reader, ...]
) -> Iterator[Finding]:
    handed = [
        job
        for job in waiting
        if contractor.reader in readers_of(job.planting_id, job.step.id, readers)
    ]
    if not handed:
        return
    until = contractor.insured_until
    last = max((job.dates.closes for job in handed if job.dates.closes is not None), default=None)
    why = None
    if not contractor.insured:
        why = "no proof of insurance was seen"
    elif until is not None and last is not None and until < last:
        why = f"the insurance ends on {day_words(until)}, before the last open day"
    if why is not None:
        yield finding(
            DayCaution.NOT_INSURED,
            Subject("contractor", contractor.id),
            contractor.where,
            contractor=contractor.id,
            why=why,
        )


def _of_no_reader(
    waiting: list[Job], contractors: tuple[Contractor, ...], readers: tuple[Reader, ...]
) -> Iterator[Finding]:
    """Yield a caution on each contractor who may be a reader that is handed work, and is not said.

    A reader whom another contractor names is that one.
    """
    known = {contractor.reader for contractor in contractors}
    named = [
        reader.id
        for reader in readers
        # a partner works without pay, so no contractor is one
        if reader.kind != PARTNER
        and reader.id not in known
        and any(reader.has(job.planting_id, job.step.id) for job in waiting)
    ]
    if not named:
        return
    cure = " or ".join(f"reader: {name}" for name in named)
    for contractor in contractors:
        if contractor.reader is None:
            yield finding(
                DayCaution.CONTRACTOR_OF_NO_READER,
                Subject("contractor", contractor.id),
                contractor.where,
                contractor=contractor.id,
                readers=" and ".join(named),
                cure=cure,
            )


def _later(
    permits: tuple[Permit, ...], contracts: tuple[Contract, ...], as_of: datetime.date
) -> Iterator[Finding]:
    for permit in permits:
        if permit.approved_on is not None and as_of < permit.approved_on:
            yield _not_yet(permit, permit.name or permit.id, permit.approved_on)
    for contract in contracts:
        if contract.approved_on is not None and as_of < contract.approved_on:
            yield _not_yet(contract, contract.name, contract.approved_on)


def _not_yet(paper: Permit | Contract, name: str, approved_on: datetime.date) -> Finding:
    latest = approved_on.isoformat()
    subject = about_record(paper)
    return finding(DayNote.PAPER_LATER, subject, paper.where, paper=name, latest=latest)


def _no_paper(
    places: tuple[PlantedGround, ...], contracts: tuple[Contract, ...]
) -> Iterator[Finding]:
    for place in places:
        under = is_contract_land(place, contracts)
        if under and not contracts_on(place.id, contracts):
            said = str(place.contract)
            yield finding(
                DayNote.NO_CONTRACT_PAPER,
                about_place(place.id),
                place.where,
                place=place.name,
                contract=said,
            )
