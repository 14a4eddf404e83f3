"""What the owner looked up of the law, and what holds after the shot."""

import datetime

from generator.dataclass import dataclass
from generator.inventory.fields import Record, choice, day, identity, record, reference, text
from generator.inventory.ground import NO, YES

ASK_FIRST = "ask_first"  # nobody goes in before whoever decides has said yes that day


@dataclass(frozen=True, slots=True, kw_only=True)
class LookedUp(Record):
    """What the owner looked up about one thing that the law decides, in their own words."""

    id: str = identity("id of what was looked up")
    subject: str = reference("page", "what the law decides", "law_subject", required=True)
    words: str = text("page", "what it says, in your own words", required=True)
    source: str = text("page", "where it was looked up", required=True)
    looked_up_on: datetime.date = day("page", "looked up on", required=True)
    note: str | None = text("note", "a note of your own")


@dataclass(frozen=True, slots=True, kw_only=True)
class GroundBeyond(Record):
    """Ground of somebody else beside the property: whose, and whether a hunter may follow there."""

    side: str = text("page", "where it begins, like over the north fence", required=True)
    whose: str = text("page", "who to ask, and phone", required=True)
    may_enter: str | None = choice(
        "page", "whether they let you follow a deer there", YES, ASK_FIRST, NO
    )
    asked_on: datetime.date | None = day("page", "asked on")


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterTheShot(Record):
    """Whom to call and where one may go after a shot; what is left out prints as a bold blank."""

    game_officer: str | None = text("page", "game officer or agency, and phone")
    tracker: str | None = text("page", "who helps to look, and phone")
    stay_out_ground: str | None = choice(
        "page", "whether ground of stay-out dates may be entered to follow a deer",
        YES, ASK_FIRST, NO,
    )  # fmt: skip
    beyond: tuple[GroundBeyond, ...] = record(
        "page", "ground of others on each side", GroundBeyond, many=True
    )
