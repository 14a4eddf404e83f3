"""What passes lay twice or beside the place: cautions, and stops where the label's limits break."""

from collections.abc import Iterator

from generator.compute import lapped
from generator.inventory.label import YearlyLimit
from generator.plan.findings.about_spraying import SprayCaution, SprayNote, SprayStop
from generator.plan.findings.order import finding
from generator.plan.jobs.request import JobRequest
from generator.plan.labels.limit_stops import (
    Judged,
    beside,
    figure_value,
    in_pounds,
    limit_basis,
    may_be_over,
    on_the_place,
)
from generator.plan.labels.may_count import may_count_stops
from generator.plan.labels.rates import ROUNDING
from generator.plan.labels.yearly_sums import (
    PlannedSpray,
    amount_at_one_time,
    amount_in_a_year,
    as_laid,
    in_doubt,
    in_doubt_at_once,
)
from generator.plan.model.finding import Finding, about_job
from generator.plan.spraying.passes import (
    Figures,
    Passes,
    caught_but_once,
    is_over_spots,
    is_over_the_place,
    lapped_half,
    width_of,
)
from generator.plan.spraying.tank import SprayerSetUp
from generator.working import Given, Quantity, whole_up

AT_ONCE, IN_A_YEAR = "at one time", "in a year"
TIMES = {2: "twice", 3: "three times", 4: "four times", 5: "five times", 6: "six times"}
# What to do and what to type, of each thing that passes rest on.
TAPE_THE_WIDTH = {
    "cure": "Tape the width across the passes, where the place is widest",
    "typed": "Type it as width_ft of the place.",
}
CATCH_UNDER_EACH = {
    "cure": "Catch under every nozzle",
    "typed": "Type each under caught_fl_oz; what truly sprays with one nozzle is kind: boomless, "
    "with its swath_ft.",
}
MEASURE_THE_SWATH = {
    "cure": "Measure it on a dry track",
    "typed": "Type it as swath_ft of the sprayer.",
}


def times_words(times: int) -> str:
    """Return how often, in words.

    >>> times_words(2), times_words(3), times_words(12)
    ('twice', 'three times', 'more than six times')
    """
    return TIMES.get(times, f"more than {TIMES[max(TIMES)]}")


def lap_stops(
    request: JobRequest, machine: SprayerSetUp, passes: Passes | None
) -> Iterator[Finding]:
    """Yield a stop for a typed lap that is half of a pass or more."""
    found = lapped_half(request, machine, passes)
    if found is None:
        return
    lap, width = found
    figures = (("Typed lap", lap), ("Width of one pass", width))
    words = {"item": machine.sprayer.name, "how": _lapped_how(lap, width_of(width), passes)}
    yield finding(
        SprayStop.LAP_TOO_WIDE, about_job(request.job_id), machine.sprayer.where, figures, **words
    )


def _lapped_how(lap: Given, pass_ft: float, passes: Passes | None) -> str:
    """Return what comes of such a lap: on many passes side by side where none are laid."""
    share = lapped.lap_fraction(lap.value, pass_ft)
    if share >= 1:
        return "no pass would reach new ground"
    times = passes.over_the_same if passes is not None else int(whole_up(1 / (1 - share)))
    return f"the same ground would be sprayed {times_words(times)}"


def twice_stops(
    judged: Judged, sprays: tuple[PlannedSpray, ...], passes: Passes | None
) -> Iterator[Finding]:
    """Yield a stop for each limit that holds, but not on the ground that passes lay most often."""
    mine, here = on_the_place(judged.request, judged.product, sprays)
    fits: Figures = ()
    if passes is not None and mine.laid_times > 1:
        fits = (_over_the_same(passes), *passes.fits())
    if mine.laid_times > 1:
        yield from _at_one_time(judged, mine, here, fits)
    # laps of another spraying too: this one may go over the ground that they lay twice
    if any(spray.laid_times > 1 for spray in here):
        yield from _in_a_year(judged, mine, here, fits)


def _at_one_time(
    judged: Judged, mine: PlannedSpray, here: tuple[PlannedSpray, ...], fits: Figures
) -> Iterator[Finding]:
    """Yield a stop over the card's most at one time; where it names none, over its highest rate."""
    use, card = judged.use, judged.card
    limit, basis = use.rate_high, use.basis
    tank: tuple[PlannedSpray, ...] = (mine,)
    if isinstance(use.max_per_application, Given):
        limit = use.max_per_application
        basis = limit_basis(use, limit, card)
        tank = tuple(spray for spray in here if spray.job_id == mine.job_id)
    if limit is None or basis is None or basis == "mix":
        return  # a share of the spray stays what it is, however often it is laid
    found = amount_at_one_time(mine, as_laid(tank), card, basis)
    # what cannot be added up counts as over: no limit is known to hold where passes lap
    if found is not None and figure_value(found.amount) <= limit.value * (1 + ROUNDING):
        if doubted := in_doubt_at_once(mine, tank):
            possible = amount_at_one_time(mine, as_laid(tank), card, basis, "possible")
            if may_be_over(possible, limit):
                yield from may_count_stops(mine, doubted, judged.request.job_id, use.where)
        return
    pounds = in_pounds(judged, basis)
    shown = amount_at_one_time(mine, as_laid(tank), card, pounds) if pounds else None
    figures = beside(
        judged,
        "Where passes lap",
        found.amount if found else None,
        shown.amount if shown else None,
        (("Most at one time", limit),),
        basis,
    )
    yield _over(judged, (*figures, *fits), AT_ONCE, mine.laid_times)


def _in_a_year(
    judged: Judged, mine: PlannedSpray, here: tuple[PlannedSpray, ...], fits: Figures
) -> Iterator[Finding]:
    use, card, limit = judged.use, judged.card, judged.use.max_per_year
    if not isinstance(limit, YearlyLimit):
        return
    basis, laid = limit_basis(use, limit, card), as_laid(here)
    found = amount_in_a_year(mine, laid, card, basis, limit) if basis else None
    if basis is None or found is None:
        return  # what cannot be added up has a stop of its own
    if figure_value(found.amount) > limit.amount.value * (1 + ROUNDING):
        pounds = in_pounds(judged, basis)
        shown = amount_in_a_year(mine, laid, card, pounds, limit) if pounds else None
        figures = beside(
            judged,
            "In a year where passes lap",
            found.amount,
            shown.amount if shown else None,
            (("Most in a year", limit.amount),),
            basis,
        )
        most = max(spray.laid_times for spray in here)
        yield _over(judged, (*figures, *fits), IN_A_YEAR, most)
    elif doubted := in_doubt(mine, here, limit):
        possible = amount_in_a_year(mine, laid, card, basis, limit, "possible")
        if may_be_over(possible, limit.amount):
            yield from may_count_stops(mine, doubted, judged.request.job_id, use.where)


def _over(judged: Judged, figures: Figures, when: str, times: int) -> Finding:
    return finding(
        SprayStop.OVER_WHERE_PASSES_LAP,
        about_job(judged.request.job_id),
        judged.use.where,
        figures,
        product=judged.product.name,
        when=when,
        times=times_words(times),
    )


def _over_the_same(passes: Passes) -> tuple[str, Quantity]:
    return ("Passes over the same ground", passes.numbers["laid_times_count"])


def pass_findings(
    request: JobRequest, machine: SprayerSetUp, passes: Passes | None
) -> Iterator[Finding]:
    """Yield cautions of ground laid twice or beside the place, or that nobody can say."""
    job = request.job_id
    if passes is None:
        # over spots nobody lays passes, so none are missing
        if not is_over_spots(request):
            yield from _not_worked_out(request, machine)
        return
    numbers, where = passes.numbers, machine.sprayer.where
    if passes.is_laid_twice:
        figures = (
            ("Lap between two passes", numbers["lap_in"]),
            ("Of the width of a pass", numbers["lap_fraction"]),
            _over_the_same(passes),
            *passes.fits(),
        )
        times = times_words(passes.most_times)
        yield finding(SprayCaution.LAID_TWICE, about_job(job), where, figures, times=times)
    if passes.falls_beside:
        figures = (
            ("Beside each edge", numbers["beside_in"]),
            ("Of the width of the pass, on both sides", numbers["beside_fraction"]),
            *passes.fits(),
        )
        yield finding(SprayCaution.SPRAYED_BESIDE, about_job(job), where, figures)


def _not_worked_out(request: JobRequest, machine: SprayerSetUp) -> Iterator[Finding]:
    """Yield a caution for each thing that passes would rest on; a note for a part of the place."""
    sprayer, job = machine.sprayer, request.job_id
    if not is_over_the_place(request):
        yield finding(
            SprayNote.NO_PASSES,
            about_job(job),
            request.work.where if request.work is not None else None,
        )
        return
    unknown = SprayCaution.NO_PASSES
    if request.ground.width_ft is None:
        where, why = request.ground.where, "nobody has taped the width of the place"
        yield finding(unknown, about_job(job), where, (), why=why, **TAPE_THE_WIDTH)
    if caught_but_once(machine):
        why = f"the last catch test of {sprayer.name} has one catch, and a boom several nozzles"
        where = machine.test.where
        yield finding(unknown, about_job(job), where, (), why=why, **CATCH_UNDER_EACH)
    elif sprayer.kind != "boom" and sprayer.swath_ft is None:
        where, why = sprayer.where, f"the width that {sprayer.name} covers in one pass is not known"
        yield finding(unknown, about_job(job), where, (), why=why, **MEASURE_THE_SWATH)
