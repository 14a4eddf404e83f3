"""Pictures of the work: the passes over a strip, and a tank as it is filled layer by layer."""

from markupsafe import Markup

from generator.book.charts.drawing import caption_id
from generator.book.charts.strip import StripPass, StripPicture, strip_drawn
from generator.dataclass import dataclass
from generator.plan.model.job import Job
from generator.plan.model.work import Dose, Load

STRIP = "strip"


@dataclass(frozen=True, slots=True)
class StripPictured:
    """The passes over a strip as a picture, with the id of the words under it."""

    svg: Markup
    caption_id: str


@dataclass(frozen=True, slots=True)
class TankPictured:
    """A load of a tank, and what goes into it between the first water and the last, in order."""

    load: Load
    doses: tuple[Dose, ...]


def strip_picture(job: Job) -> StripPictured | None:
    """Return the passes of a spraying over its strip; None where none are laid out.

    All of it comes from the numbers of the passes, which stand on the sheet of every reader.
    """
    passes = _passes(job)
    if job.mix is None or not passes:
        return None
    first, last = passes[0], passes[-1]
    # what the first pass has beside the place, one alone has on both sides
    width_ft = last.to_ft + (first.from_ft if len(passes) == 1 else 0)
    svg = strip_drawn(StripPicture(STRIP, "The strip with its passes", width_ft, passes))
    return StripPictured(svg, caption_id(STRIP))


def _passes(job: Job) -> tuple[StripPass, ...]:
    numbers = {name: number.value for name, number in job.numbers.items()}
    if "lanes_count" not in numbers or "first_pass_ft" not in numbers:
        return ()
    count, wide_ft = int(numbers["lanes_count"]), numbers["pass_width_ft"]
    middle_ft, apart_ft = numbers["first_pass_ft"], numbers.get("passes_apart_ft", wide_ft)
    laid = [
        StripPass(middle_ft + n * apart_ft - wide_ft / 2, middle_ft + n * apart_ft + wide_ft / 2)
        for n in range(count)
    ]
    if "last_width_ft" in numbers:
        begins_ft = laid[-1].from_ft
        laid[-1] = StripPass(begins_ft, begins_ft + numbers["last_width_ft"])
    return tuple(laid)


def tank_picture(job: Job) -> TankPictured | None:
    """Return the first kind of load in the order of its parts; None where no order is known.

    A part that goes in alone needs no order, and no picture of one.
    """
    if job.mix is None or not job.mix.order or not job.mix.loads:
        return None
    load = job.mix.loads[0]
    by_name = {dose.name: dose for dose in load.doses}
    return TankPictured(load, tuple(by_name[name] for name in job.mix.order))
