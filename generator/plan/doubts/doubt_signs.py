"""Season markers seen on a day that is far from every year that is known of them."""

from collections.abc import Iterator

from generator.inventory.log import LogEntry
from generator.inventory.season import season_of
from generator.plan.doubts.doubt import Confirmed, Doubt, day_of, is_confirmed
from generator.plan.doubts.doubt_days import Markers
from generator.plan.findings.about_doubts import DoubtCaution
from generator.plan.model.days import day_words
from generator.plan.season.open_dates import day_in_season
from generator.reference.library import marker_names, values


def signs_in_question(
    entries: tuple[LogEntry, ...], signs: Markers, confirmed: Confirmed
) -> Iterator[Doubt]:
    """Yield every entry that saw a marker long before its early or long after its late year."""
    for entry in entries:
        for sign in () if is_confirmed(confirmed, entry) else entry.markers_seen:
            known = getattr(signs(), sign, None)
            if known is None:
                continue
            season, apart = season_of(entry.done_on), values()["seen_marker_apart_days"].value
            early, late = day_in_season(known.early, season), day_in_season(known.late, season)
            if (early - entry.done_on).days > apart or (entry.done_on - late).days > apart:
                words = {
                    "marker": marker_names()[sign],
                    "day": day_of(entry),
                    "early": day_words(early),
                    "late": day_words(late),
                    "entry": entry.id,
                }
                yield Doubt(DoubtCaution.SEEN_FAR_OFF, entry, words, is_of_work=False)
