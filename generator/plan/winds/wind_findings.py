"""Where typed winds of a stand and the bearings typed of it do not agree: told once for each."""

from collections.abc import Iterable, Iterator

from generator.inventory.places import Stand
from generator.inventory.plain_values import named_direction
from generator.plan.findings.about_places import PlaceCaution, PlaceNote
from generator.plan.findings.order import all_listed, finding
from generator.plan.model.finding import Finding, Subject
from generator.plan.winds.airs import OK, WRONG_WIND, Air
from generator.plan.winds.stand_winds import worked_out
from generator.working import Given


def wind_findings(stands: Iterable[Stand]) -> Iterator[Finding]:
    """Yield the stands of which a typed wind and what is worked out say opposite things."""
    for stand in stands:
        for reason, winds, word in (
            (PlaceCaution.TYPED_WIND_IS_WRONG, stand.winds_for, WRONG_WIND),
            (PlaceNote.TYPED_WIND_IS_RIGHT, stand.winds_against, OK),
        ):
            found = [wind for wind in winds if worked_out(stand, Air(wind.value)).word == word]
            if found:
                told = all_listed(map(_told, found))
                where = stand.where_of(found[0].name.removesuffix("_deg"))
                subject = Subject("stand", stand.id)
                yield finding(reason, subject, where, stand=stand.name, winds=told)


def _told(wind: Given) -> str:
    return f"wind from the {named_direction(wind.value) or f'bearing {wind.value:g} degrees'}"
