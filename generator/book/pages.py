"""One function per kind of page: what its template is given, and what the search box knows."""

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.book.content import Chapter, callout
from generator.book.marks import Marks, identity, label, printed
from generator.book.model import Page, SearchRecord
from generator.book.render import cautions_block, render, render_authored, workings_block
from generator.book.text import inert, searchable
from generator.inventory.schema import Product, Route, SeedLot, Sprayer, Spreader, Stand
from generator.plan.budget import buying_findings, cost_in_all, not_to_buy_yet, purchases
from generator.plan.calendar import day_in_season
from generator.plan.model import Finding, Job, Place, Plan, is_stopped
from generator.plan.safety import emergency_lines
from generator.reference.load import (
    operations,
    sign_names,
    sources,
    species,
    step_plans,
    words,
)
from generator.working import Quantity, Reference

WORK, PLACES, STANDS, ROUTES = "Work", "Places", "Stands", "Routes"
SEED, PRODUCTS, EQUIPMENT, CHAPTERS = "Seed", "Products", "Equipment", "Chapters"
BOOK = "About this book"
BOOST = {PLACES: 4}  # a place stands before the jobs that carry its name
TITLE_ANCHOR = "this-page"


@dataclass(frozen=True, slots=True)
class Written:
    """A finished page with the numbers it shows."""

    page: Page
    marks: Marks


def _write(
    plan: Plan,
    address: str,
    title: str,
    group: str,
    template: str,
    found: Iterable[str] = (),
    tags: tuple[str, ...] = (),
    safety_keys: tuple[str, ...] = (),
    **context: Any,
) -> Written:
    marks = Marks()
    root = Markup("../" if "/" in address else "")
    body = render(f"{template}.md.jinja", marks, plan=plan, root=root, **context)
    return _written(address, title, group, body, marks, found, tags, safety_keys)


def _written(
    address: str,
    title: str,
    group: str,
    body: str,
    marks: Marks,
    found: Iterable[str],
    tags: tuple[str, ...] = (),
    safety_keys: tuple[str, ...] = (),
) -> Written:
    record = SearchRecord(
        searchable(title),
        searchable(" ".join(found)),
        tuple(searchable(one) for one in tags),
        BOOST.get(group, 1),
    )
    # An anchor made from the words of a title could be one that a number on the page has.
    heading = f"# {inert(title)} {{: #{TITLE_ANCHOR} }}\n\n"
    markdown = heading + body + workings_block(marks)
    return Written(Page(address, inert(title), group, markdown, record, safety_keys), marks)


def home_page(plan: Plan) -> Written:
    """Return the first page: what this is, for whom, as of when, what needs doing."""
    stops = [one for one in plan.findings if one.severity == "stop"]
    return _write(
        plan,
        "index.md",
        plan.title,
        "",
        "home",
        [f"season {plan.season}", *(job.step.name for job in plan.jobs)],
        jobs=[(job, is_stopped(job.id, plan.findings), place_of(plan, job)) for job in plan.jobs],
        stops=[(one, subject_of(plan, one)) for one in stops],
    )


def work_page(plan: Plan) -> Written:
    """Return the list of jobs by date."""
    return _write(
        plan,
        "work.md",
        f"Work in season {plan.season}",
        WORK,
        "work",
        [job.step.name for job in plan.jobs],
        signs=_signs(plan),
        jobs=[(job, is_stopped(job.id, plan.findings), place_of(plan, job)) for job in plan.jobs],
    )


def _signs(plan: Plan) -> list[tuple[str, list[datetime.date | None]]]:
    """Return the season signs the owner typed, as days of the plan's season; none for others."""
    if plan.signs is None:
        return []
    rows: list[tuple[str, list[datetime.date | None]]] = []
    for key, name in sign_names().items():
        sign = getattr(plan.signs, key)
        days = (sign.early, sign.typical, sign.late) if sign is not None else (None, None, None)
        rows.append(
            (name, [day_in_season(one, plan.season) if one is not None else None for one in days])
        )
    return rows


def job_page(plan: Plan, job: Job) -> Written:
    """Return a job sheet with what stands behind it."""
    marks = Marks()
    place = place_of(plan, job)
    title = f"{job.step.name}: {place.name}"
    found = plan.findings_on(job.id)
    body = render(
        "job.md.jinja",
        marks,
        plan=plan,
        root=Markup("../"),
        job=job,
        place=place,
        stops=[one for one in found if one.severity == "stop"],
        others=[one for one in found if one.severity != "stop"],
        operation=operations()[job.step.operation],
        species=species(),
    )
    cautions = cautions_block((callout(job.step.operation), callout("general")), marks)
    body += f"\n## Cautions\n\n{cautions}"
    said = [job.step.name, place.name, operations()[job.step.operation]]
    said += [species()[one.lot.species].name for one in job.sowings]
    said += [job.mix.product.name] if job.mix is not None else []
    said += [one.words for one in found]
    return _written(
        f"work/{job.address}.md",
        title,
        WORK,
        body,
        marks,
        said,
        ("job",),
        tuple(line.key for line in job.safety),
    )


def place_page(plan: Plan, place: Place) -> Written:
    """Return a screen with its plantings and jobs."""
    jobs = [job for job in plan.jobs if job.place_id == place.id]
    screen = place.screen
    said = [place.name, *(job.step.name for job in jobs)]
    if screen is not None:
        said += [one.steps.replace("_", " ") for one in screen.plantings]
        said += [screen.note or "", screen.known_as or ""]
    return _write(
        plan,
        f"places/{place.address}.md",
        place.name,
        PLACES,
        "place",
        said,
        ("place",),
        place=place,
        screen=screen,
        jobs=[(job, is_stopped(job.id, plan.findings)) for job in jobs],
        species=species(),
        step_plans=step_plans(),
        routes={one.id: one for one in plan.routes},
        address_of=address_of,
    )


def address_of(thing: Any) -> Markup:
    """Return the file name of a thing's page: the id it had first, so a rename never moves it."""
    return Markup(thing.was[0] if thing.was else thing.id)


def stand_page(plan: Plan, stand: Stand) -> Written:
    """Return a hunting stand."""
    serving = [one for one in plan.routes if stand.id in one.serves]
    return _write(
        plan,
        f"stands/{address_of(stand)}.md",
        stand.name,
        STANDS,
        "stand",
        [stand.name, stand.note or "", *(one.name for one in serving)],
        ("stand",),
        stand=stand,
        routes=serving,
        address_of=address_of,
    )


def route_page(plan: Plan, route: Route) -> Written:
    """Return an access route."""
    hiding = [one for one in plan.places if one.screen is not None and route.id in one.screen.hides]
    return _write(
        plan,
        f"routes/{address_of(route)}.md",
        route.name,
        ROUTES,
        "route",
        [route.name, route.note or ""],
        ("route",),
        route=route,
        stands=[one for one in plan.stands if one.id in route.serves],
        hiding=hiding,
        address_of=address_of,
    )


def lot_page(plan: Plan, lot: SeedLot) -> Written:
    """Return a seed lot with its tag and what is sown of it."""
    sown = [(job, one) for job in plan.jobs for one in job.sowings if one.lot.id == lot.id]
    title = f"{species()[lot.species].name}, lot {lot.id}"
    return _write(
        plan,
        f"seed/{address_of(lot)}.md",
        title,
        SEED,
        "lot",
        [title, lot.tag.variety or "", lot.note or ""],
        ("seed",),
        lot=lot,
        sown=sown,
        places={one.id: one for one in plan.places},
    )


def product_page(plan: Plan, product: Product) -> Written:
    """Return a product: its card where a cleared job rests on it, else what is missing."""
    jobs = [job for job in plan.jobs if product.id in job.needs]
    cleared = any(job.mix is not None for job in jobs)
    return _write(
        plan,
        f"products/{address_of(product)}.md",
        product.name,
        PRODUCTS,
        "product",
        [product.name, *(use.site_words for use in (product.label.uses if product.label else ()))],
        ("product",),
        product=product,
        card=product.label,
        cleared=cleared,
        resting=list(dict.fromkeys(job.mix.use for job in jobs if job.mix is not None)),
        jobs=[(job, is_stopped(job.id, plan.findings), place_of(plan, job)) for job in jobs],
    )


def sprayer_page(plan: Plan, sprayer: Sprayer) -> Written:
    """Return a sprayer with its catch tests."""
    return _write(
        plan,
        f"equipment/{address_of(sprayer)}.md",
        sprayer.name,
        EQUIPMENT,
        "sprayer",
        [sprayer.name, sprayer.nozzle or ""],
        ("equipment",),
        sprayer=sprayer,
        measure=next((one for one in plan.measures if one.id == sprayer.measure), None),
        jobs=[
            (job, place_of(plan, job))
            for job in plan.jobs
            if job.mix is not None and job.mix.sprayer.id == sprayer.id
        ],
    )


def spreader_page(plan: Plan, spreader: Spreader) -> Written:
    """Return a spreader with its catch tests."""
    return _write(
        plan,
        f"equipment/{address_of(spreader)}.md",
        spreader.name,
        EQUIPMENT,
        "spreader",
        [spreader.name],
        ("equipment",),
        spreader=spreader,
        jobs=[
            (job, place_of(plan, job))
            for job in plan.jobs
            if job.spreader is not None and job.spreader.id == spreader.id
        ],
    )


def buy_page(plan: Plan) -> Written:
    """Return what to buy, and what not to buy yet."""
    bought = purchases(plan)
    return _write(
        plan,
        "buy.md",
        "What to buy",
        "",
        "buy",
        [_item_name(one.item) for one in bought],
        bought=[(one, _item_name(one.item)) for one in bought],
        cost=cost_in_all(plan, bought),
        waiting=[_item_name(one) for one in not_to_buy_yet(plan)],
        findings=buying_findings(bought),
    )


def _item_name(item: SeedLot | Product) -> str:
    if isinstance(item, SeedLot):
        return f"{species()[item.species].name}, lot {item.id}"
    return item.name


def findings_page(plan: Plan) -> Written:
    """Return every stop, caution and note."""
    return _write(
        plan,
        "findings.md",
        "Stops, cautions and notes",
        "",
        "findings",
        [one.words for one in plan.findings],
        findings=[(one, subject_of(plan, one)) for one in plan.findings],
    )


def readers_page(plan: Plan) -> Written:
    """Return what each other reader is handed, and released numbers that rest on private ones."""
    jobs = {job.id: job for job in plan.jobs}
    return _write(
        plan,
        "readers.md",
        "What each reader sees",
        BOOK,
        "readers",
        [one.kind for one in plan.handed],
        handed=[
            (one, [(jobs[job_id], place_of(plan, jobs[job_id])) for job_id in one.job_ids])
            for one in plan.handed
        ],
    )


def emergency_page(plan: Plan) -> Written:
    """Return the emergency card."""
    lines = emergency_lines(plan.emergency)
    return _write(
        plan,
        "emergency.md",
        "Emergency",
        "",
        "emergency",
        ["911", "poison", "hospital"],
        safety_keys=tuple(line.key for line in lines),
        lines=lines,
    )


def safety_page(plan: Plan) -> Written:
    """Return the usual cautions of every operation."""
    marks = Marks()
    body = render("safety.md.jinja", marks, plan=plan, root=Markup(""))
    for name, title in (*operations().items(), ("general", "Always")):
        body += f"\n## {title}\n\n{cautions_block((callout(name),), marks)}"
    return _written("safety.md", "Safety", "", body, marks, ["safety", *operations().values()])


def chapter_page(chapter: Chapter) -> Written:
    """Return an authored chapter."""
    marks = Marks()
    body = render_authored(chapter.body, marks)
    return _written(
        f"chapters/{chapter.name}.md",
        chapter.title,
        CHAPTERS,
        body,
        marks,
        [one.lstrip("#").strip() for one in chapter.body.splitlines() if one.startswith("##")],
        ("chapter",),
    )


def workings_page(plan: Plan, written: list[Written]) -> Written:
    """Return every computed number of the book, by its id, with the page it unfolds on."""
    rows: dict[str, tuple[Quantity, str, str, str]] = {}
    for one in written:
        for figure in one.marks.entries():
            if isinstance(figure, Quantity):
                anchor = one.marks.anchors[identity(figure)]
                href = one.page.address.removesuffix(".md") + f".html#{anchor}"
                rows.setdefault(figure.identity, (figure, label(figure), printed(figure), href))
    return _write(
        plan,
        "workings.md",
        "Workings",
        BOOK,
        "workings",
        ["workings", "formulas"],
        rows=[
            (number, told, text, Markup(href))
            for _, (number, told, text, href) in sorted(rows.items())
        ],
    )


def glossary_page(plan: Plan) -> Written:
    """Return the words of the book."""
    return _write(
        plan, "glossary.md", "Words", BOOK, "glossary", words(), words=sorted(words().items())
    )


def sources_page(plan: Plan, written: list[Written]) -> Written:
    """Return the sources the book's numbers rest on, with the pages that use them."""
    using: dict[str, list[Page]] = {}
    for one in written:
        for key in sorted(_source_keys(one)):
            using.setdefault(key, []).append(one.page)
    return _write(
        plan,
        "sources.md",
        "Sources",
        BOOK,
        "sources",
        [sources()[key].title for key in sorted(using)],
        used=[
            (
                sources()[key],
                [(Markup(page.title), Markup(_html(page.address))) for page in pages],
            )
            for key, pages in sorted(using.items(), key=lambda pair: sources()[pair[0]].title)
        ],
    )


def _html(address: str) -> str:
    return address.removesuffix(".md") + ".html"


def _source_keys(written: Written) -> set[str]:
    keys = set(written.marks.cited)
    for figure in written.marks.figures:
        if isinstance(figure, Quantity):
            keys.add(figure.formula.source)
        elif isinstance(figure, Reference):
            keys.add(figure.source)
    return keys


def place_of(plan: Plan, job: Job) -> Place:
    """Return the place a job is done on."""
    return plan.place(job.place_id)


def subject_of(plan: Plan, finding: Finding) -> tuple[str, Markup]:
    """Return what a finding is about in words, with the address of its page or nothing."""
    for job in plan.jobs:
        if job.id == finding.subject:
            title = f"{job.step.name}: {place_of(plan, job).name}"
            return title, Markup(f"work/{job.address}.html")
    return "Season signs", Markup("")
