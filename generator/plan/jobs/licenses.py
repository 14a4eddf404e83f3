"""Who does a job, whether for hire, and whether their license is good on its last open day."""

import datetime

from generator.inventory.log import LogEntry
from generator.inventory.money import Hire
from generator.inventory.people import Applicator
from generator.inventory.schema import PARTNER, Reader, Workers
from generator.plan.model.days import day_words

NO_LICENCE, FOR_HIRE = "none", "commercial"


def readers_of(planting_id: str, step_id: str, readers: tuple[Reader, ...]) -> tuple[str, ...]:
    """Return the readers a job is handed to."""
    return tuple(reader.id for reader in readers if reader.has(planting_id, step_id))


def is_handed_to_a_contractor(planting_id: str, step_id: str, readers: tuple[Reader, ...]) -> bool:
    """Return whether a job is handed to somebody who works for pay."""
    return any(reader.has(planting_id, step_id) for reader in readers if reader.kind != PARTNER)


def is_hired(planting_id: str, step_id: str, hires: tuple[Hire, ...]) -> bool:
    """Return whether a job is hired."""
    return any(hire.has(planting_id, step_id) for hire in hires)


def doers_of(planting_id: str, step_id: str, workers: Workers) -> tuple[Applicator, ...]:
    """Return the applicators who may be the ones that do a job.

    Of a job handed to a reader it is the one who is that reader, a contractor only where the
    license is for hire; of one that is hired anybody who sprays for hire; of any other, somebody
    who is no reader.
    """
    readers = readers_of(planting_id, step_id, workers.readers)
    if readers:
        known = (applicator for applicator in workers.applicators if applicator.reader in readers)
        return tuple(
            applicator
            for applicator in known
            if is_partner(applicator, workers.readers) or _for_hire(applicator)
        )
    if is_hired(planting_id, step_id, workers.hires):
        return tuple(applicator for applicator in workers.applicators if _for_hire(applicator))
    return tuple(applicator for applicator in workers.applicators if applicator.reader is None)


def is_partner(applicator: Applicator, readers: tuple[Reader, ...]) -> bool:
    """Return whether an applicator is a partner, who works without pay."""
    return any(reader.id == applicator.reader and reader.kind == PARTNER for reader in readers)


def _for_hire(applicator: Applicator) -> bool:
    # for_hire that is left out is not yes
    return applicator.licence_class == FOR_HIRE and applicator.for_hire is True


def is_good(applicator: Applicator, last_day: datetime.date | None) -> bool:
    """Return whether a license is held and good on a day; never on one that is not known."""
    if (
        applicator.licence_class == NO_LICENCE
        or applicator.licence_expires_on is None
        or last_day is None
    ):
        return False
    return last_day <= applicator.licence_expires_on


def may_be_restricted(
    product_id: str,
    planting_id: str,
    step_id: str,
    last_day: datetime.date | None,
    workers: Workers,
) -> bool:
    """Return whether whoever does a job holds a license that fits a restricted product."""
    return any(
        # which license fits is the state's to say, so it counts once they were asked
        product_id in doer.fits and doer.asked_on is not None and is_good(doer, last_day)
        for doer in doers_of(planting_id, step_id, workers)
    )


def lack_of_a_licence(
    product_id: str,
    planting_id: str,
    step_id: str,
    last_day: datetime.date | None,
    workers: Workers,
) -> str:
    """Return which key is missing or wrong, where nobody who does a job may use a product."""
    doers = doers_of(planting_id, step_id, workers)
    lacks = [_lack(doer, product_id, last_day) for doer in doers]
    readers = readers_of(planting_id, step_id, workers.readers)
    others = (other for other in workers.applicators if other not in doers)
    # a good license in other hands is told too: else nobody sees why it is not enough
    lacks += [
        _other_hands(other, readers)
        for other in others
        if product_id in other.fits and other.asked_on is not None and is_good(other, last_day)
    ]
    return "; ".join(lacks) or "nobody who does it stands under applicators:"


def _lack(doer: Applicator, product_id: str, last_day: datetime.date | None) -> str:
    if doer.licence_class == NO_LICENCE:
        return f"{doer.id} has licence_class: none"
    missing = [] if product_id in doer.fits else [f"{product_id} under fits:"]
    missing += [] if doer.asked_on is not None else ["asked_on:"]
    missing += [] if doer.licence_expires_on is not None else ["licence_expires_on:"]
    if missing:
        return f"of {doer.id}, {' and '.join(missing)} is missing"
    if last_day is None:
        return "the last open day of this job is not known"
    assert doer.licence_expires_on is not None
    ends = day_words(doer.licence_expires_on)
    return f"the license of {doer.id} ends on {ends}, before the last open day"


def _other_hands(other: Applicator, readers: tuple[str, ...]) -> str:
    """Return why somebody with a good license is not the one who does a job."""
    handed = " and ".join(readers)
    if other.reader is None and readers:
        return f"{other.id} holds one, and no reader: says that it is {handed}, who gets this job"
    if other.reader is not None and other.reader not in readers:
        to = f"handed to {handed}" if readers else "handed to nobody"
        return f"{other.id} holds one as reader {other.reader}, and this job is {to}"
    return f"the license of {other.id} covers no hire: licence_class: commercial, for_hire: true"


def was_hired(entry: LogEntry, workers: Workers) -> bool:
    """Return whether somebody sprayed for hire: who is named, else whom the job was meant for."""
    said = entry.sprayed.applicator if entry.sprayed is not None else None
    applicator = next((person for person in workers.applicators if person.id == said), None)
    if applicator is not None:
        by_reader = applicator.reader is not None and not is_partner(applicator, workers.readers)
        return by_reader or applicator.for_hire is True
    job = entry.job
    if job is None:
        return False
    handed = is_handed_to_a_contractor(job.planting, job.step, workers.readers)
    return handed or is_hired(job.planting, job.step, workers.hires)
