"""Third stage: what jobs, log, papers and stands say to each other, once each job is planned."""

from generator.dataclass import dataclass
from generator.inventory.season import season_of
from generator.plan.after.crop_dangers import crop_cautions
from generator.plan.after.later import later_findings, sprayed_later
from generator.plan.after.plant_back import decide
from generator.plan.after.reentry import reentry_findings
from generator.plan.build.season_jobs import SeasonJobs
from generator.plan.build.typed_and_logged import Logged
from generator.plan.days.day_findings import day_findings
from generator.plan.days.paper_findings import paper_findings
from generator.plan.doubts.doubt_stops import doubt_stops
from generator.plan.doubts.every_doubt import doubt_findings, doubts
from generator.plan.jobs.latitudes import latitude_findings
from generator.plan.log.upkeep import upkeep_by_dates, upkeep_jobs
from generator.plan.model.counts import Decided
from generator.plan.model.finding import Finding, stopped_in
from generator.plan.model.job import UpkeepJob
from generator.plan.readers.promised import promised_findings
from generator.plan.spraying.tank_before import tank_before_findings
from generator.plan.standing.burning import burning_findings
from generator.plan.standing.sod import sod_findings
from generator.plan.views.years_ahead import seasons_ahead


@dataclass(frozen=True, slots=True)
class Across:
    """Upkeep of the season, what counts decide, and what is said across jobs.

    Of the season before too, apart once it is over.
    """

    upkeep: tuple[UpkeepJob, ...]
    upkeep_before: tuple[UpkeepJob, ...]
    decided: Decided
    findings: tuple[Finding, ...]


def across_jobs(logged: Logged, season: SeasonJobs) -> Across:
    """Return what is said across the jobs of a season."""
    inventory, as_of, entries = logged.inventory, logged.as_of, logged.entries
    requests, states = season.requests, season.states
    # what is still open in the season that runs must not fall out of a book for the next
    runs_before = season_of(as_of) == logged.season - 1
    before = upkeep_jobs(inventory, (logged.season - 1,), entries, as_of)
    upkeep = upkeep_jobs(inventory, (logged.season,), entries, as_of)
    upkeep = upkeep_by_dates((*before, *upkeep)) if runs_before else upkeep
    in_question = doubts(inventory, entries, as_of, lambda: inventory.property.season_signs)
    decided, of_counts = decide(
        inventory,
        logged.places,
        season.every,
        requests,
        entries,
        as_of,
        logged.grounds,
        sprayed_later(inventory, as_of, logged.grounds),
    )
    jobs = list(season.jobs)
    return Across(
        upkeep,
        () if runs_before else before,
        decided,
        (
            *sod_findings(requests, season.every, states, stopped_in(season.findings)),
            *tank_before_findings(
                requests, season.every, states, inventory.products, inventory.sprayers
            ),
            *burning_findings(requests, season.every, inventory.routes, entries, states),
            *crop_cautions(requests, states, inventory.places(), inventory.plans(), logged.season),
            *day_findings(jobs, inventory, as_of),
            *paper_findings(jobs, inventory, entries, as_of),
            *reentry_findings(logged.records, jobs, as_of, logged.told, logged.grounds),
            *doubt_findings(in_question),
            *doubt_stops(in_question, requests, states, inventory, as_of, logged.grounds),
            *of_counts,
            *latitude_findings(requests, states, upkeep, inventory),
            *later_findings(requests, states, upkeep, inventory, as_of, logged.grounds),
            *promised_findings(
                (*season.every, *season.later), seasons_ahead(logged.season)[-1], inventory
            ),
        ),
    )
