"""The log as pages, a season each: every entry that counts, with all that it says."""

from generator.book.pages.written import RECORDS, Written, from_template
from generator.book.written_down import names_of, said_in
from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.model.finding import Subject
from generator.plan.model.plan import Plan


def log_address(entry: LogEntry) -> str:
    """Return the page on which an entry stands, without its ending."""
    return f"log/{season_of(entry.done_on)}"


def log_seasons(plan: Plan) -> list[int]:
    """Return the seasons with entries, the newest first."""
    return sorted({season_of(entry.done_on) for entry in plan.entries}, reverse=True)


def log_page(plan: Plan, season: int) -> Written:
    """Return the page of a season of the log."""
    names = names_of(plan)
    entries = [entry for entry in plan.entries if season_of(entry.done_on) == season]
    return from_template(
        plan,
        f"log/{season}.md",
        f"The log, season {season}",
        RECORDS,
        "log",
        [f"log {season}", "entries", "what was done"],
        ("record",),
        season=season,
        entries=[
            (
                entry,
                [said for said in told if not said.inside],
                [said for said in told if said.inside],
                plan.findings_on(Subject("entry", entry.id)),
            )
            for entry in sorted(entries, key=lambda entry: (entry.done_on, entry.id), reverse=True)
            # its day is the heading
            if (told := said_in(entry, names)[1:])
        ],
    )
