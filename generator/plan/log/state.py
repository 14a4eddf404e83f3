"""Where every job stands on the plan's day: in exactly one state."""

import datetime
from collections import defaultdict
from collections.abc import Mapping

from generator.dataclass import dataclass
from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.jobs.request import JobRequest
from generator.plan.log.done import entries_on, finished_on
from generator.plan.model.job import JobState, OpenDates
from generator.reference.steps import Answer, AnswerNeeded, Step


@dataclass(frozen=True, slots=True)
class Answered:
    """What a job waits for another step to have answered, and what the log says so far.

    `decide_on` is the day from which it can be answered, None where that is not known.
    """

    step: Step
    wanted: Answer
    answer: Answer | None
    decide_on: datetime.date | None


def states_of(
    requests: tuple[JobRequest, ...], entries: tuple[LogEntry, ...], as_of: datetime.date
) -> Mapping[str, JobState]:
    """Return the state of every job of a property by the job's id."""
    found = {}
    together: dict[tuple[str, str, int | None], dict[str, JobRequest]] = defaultdict(dict)
    for request in requests:
        together[_asked_beside(request)][request.step.id] = request
    for request in requests:
        beside = together[_asked_beside(request)]
        replaced_by = next(
            (
                beside[name].step.name
                for name in request.step.excludes
                if name in beside and finished_on(entries_on(beside[name], entries))
            ),
            None,
        )
        answers = tuple(
            _answered(need, beside[need.step], entries)
            for need in request.step.needs
            if need.step in beside
        )
        finished = finished_on(entries_on(request, entries))
        # of a plan gone through once a step stands in one season alone
        season = None if request.plan.yearly_from is None else request.season
        left_out = why_left_out(request.planting.id, request.step.id, season, entries)
        found[request.job_id] = state_of(
            request.dates, finished, replaced_by, answers, as_of, left_out
        )
    return found


def _asked_beside(request: JobRequest) -> tuple[str, str, int | None]:
    """Return what the steps share among which a job's needs and what it excludes are looked up."""
    # a plan gone through once has steps in several seasons; a yearly one asks within a season
    season = None if request.plan.yearly_from is None else request.season
    return request.planting.id, request.plan.id, season


def state_of(
    dates: OpenDates,
    finished: datetime.date | None,
    replaced_by: str | None,
    answers: tuple[Answered, ...],
    as_of: datetime.date,
    left_out: str | None = None,
) -> JobState:
    """Return where a job stands, the first of these that is so.

    Done by the log; not needed, since a step that replaces it is done, an answer says so or its
    owner leaves it out, which `left_out` says why; missed, its last day passed; undated, a day not
    known or the days not meeting; waiting, for an answer or for its first day; open.
    """
    # first: what was done late, or though it was not needed, is done all the same
    if finished is not None:
        return JobState("done", finished)
    if replaced_by is not None:
        return JobState("not_needed", step=replaced_by)
    if left_out is not None:
        return JobState("not_needed", why_not=left_out)
    refused = next(
        (answered for answered in answers if answered.answer not in (None, answered.wanted)), None
    )
    if refused is not None:
        return JobState("not_needed", step=refused.step.name, answer=refused.answer)
    opens, closes = dates.opens, dates.closes
    # a last day that is over is enough, whether or not the first is known
    if closes is not None and closes < as_of:
        return JobState("missed", closes)
    if opens is None or closes is None or closes < opens:
        return JobState("undated")
    # before the first day is looked at: the answer may leave no job to wait for
    unanswered = next((answered for answered in answers if answered.answer is None), None)
    if unanswered is not None:
        # a day to decide on that has gone by is today
        decide_on = max(as_of, unanswered.decide_on) if unanswered.decide_on else None
        return JobState("waiting", decide_on, unanswered.step.name, question=unanswered.step.asks)
    if as_of < opens:
        return JobState("waiting", opens)
    return JobState("open", closes)


def why_left_out(
    thing_id: str, step_id: str, season: int | None, entries: tuple[LogEntry, ...]
) -> str | None:
    """Return why a step of a planting, a stand, a walk or a water hole is not done in a season.

    By the last entry that says so, None where none does; of any season where none is asked for.
    """
    reasons = [
        said.why
        for entry in entries
        for said in entry.not_doing
        if (said.planting or said.at, said.step) == (thing_id, step_id)
        and season in (None, said.season or season_of(entry.done_on))
    ]
    return reasons[-1] if reasons else None


def _answered(need: AnswerNeeded, asks: JobRequest, entries: tuple[LogEntry, ...]) -> Answered:
    """Return what the last entry that says anything answered, or when it can be answered."""
    answer: Answer | None = None
    decide_on = asks.dates.opens
    for entry in entries_on(asks, entries):
        assert entry.job is not None
        if entry.job.answer is not None:
            answer = "yes" if entry.job.answer == "yes" else "no"
        elif entry.job.decide_on is not None:
            # a decision that is put off takes back the answer before it
            answer, decide_on = None, entry.job.decide_on
    return Answered(asks.step, need.answer, answer, decide_on)
