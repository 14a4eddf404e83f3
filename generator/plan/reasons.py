"""A reason of a finding, whichever of the three it is, and how grave it is."""

from typing import Literal

from generator.plan.cautions import Caution
from generator.plan.notes import Note
from generator.plan.stops import Stop

Reason = Stop | Caution | Note


def severity_of(reason: Reason) -> Literal["stop", "caution", "note"]:
    """Return how grave a reason is."""
    if isinstance(reason, Stop):
        return "stop"
    return "caution" if isinstance(reason, Caution) else "note"
