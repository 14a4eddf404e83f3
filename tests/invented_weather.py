"""An invented climate: days and hours of weather from a seed, no place on earth's.

The demo property ships what this makes; a test holds the shipped files to it.
"""

import datetime
import gzip
import math
import random
from collections.abc import Iterator

FIRST, LAST = datetime.date(2001, 1, 1), datetime.date(2025, 12, 31)
WIND_FIRST, WIND_LAST = datetime.date(2025, 9, 1), datetime.date(2025, 11, 30)
# A thermometer out of order: too many days for that spring to count, few enough for the next.
BROKEN = (
    (datetime.date(2009, 2, 3), datetime.date(2009, 3, 2)),
    (datetime.date(2016, 4, 11), datetime.date(2016, 4, 14)),
)
YEAR_DAYS = 365.25


def invented_days(
    seed: int, first: datetime.date = FIRST, last: datetime.date = LAST
) -> Iterator[tuple[datetime.date, int, int, float]]:
    """Every day with its high, its low and its rain, cold in January and warm in July."""
    chance = random.Random(seed)
    off = 0.0
    for n in range((last - first).days + 1):
        day = first + datetime.timedelta(days=n)
        turn = math.cos(2 * math.pi * (day.timetuple().tm_yday - 13) / YEAR_DAYS)
        off = 0.65 * off + chance.gauss(0, 5.0 + 1.5 * turn)
        mean = 51.0 - 25.0 * turn + off
        half = max(4.0, chance.gauss(10.5, 3.0))
        wet = chance.random() < 0.27
        rain = round(chance.expovariate(2.6), 2) if wet else 0.0
        yield day, round(mean + half), round(mean - half), rain


def daily_file(seed: int = 20270314) -> bytes:
    """A plain daily record, packed the same way on every day it is made."""
    lines = ["# Invented weather of no place on earth.", "date,tmax_f,tmin_f,precip_in"]
    for day, high, low, rain in invented_days(seed):
        if any(begin <= day <= end for begin, end in BROKEN):
            lines.append(f"{day},,,{rain:.2f}")
        else:
            lines.append(f"{day},{high},{low},{rain:.2f}")
    return packed("\n".join(lines) + "\n")


def wind_file(seed: int = 20270315) -> bytes:
    """One fall of hourly wind as ISD-Lite has it: calms, turning winds, hours without a word."""
    chance = random.Random(seed)
    lines, direction, speed = [], 250.0, 35.0
    hours = ((WIND_LAST - WIND_FIRST).days + 1) * 24
    for n in range(hours):
        at = datetime.datetime.combine(WIND_FIRST, datetime.time()) + datetime.timedelta(hours=n)
        direction = (direction + chance.gauss(0, 24) + 0.03 * (250 - direction)) % 360
        speed = max(0.0, 0.85 * speed + chance.gauss(5.5, 12))
        if chance.random() < 0.004:
            continue
        tenths, tens = round(speed), round(direction / 10) * 10 or 360
        if chance.random() < 0.006:
            tens, tenths = -9999, -9999
        elif tenths < 6:
            tens, tenths = 0, 0
        elif tenths < 16 and chance.random() < 0.25:
            tens = -9999
        lines.append(
            f"{at:%Y %m %d %H} {-9999:5d} {-9999:5d} {-9999:5d} {tens:5d} {tenths:5d}"
            f" {-9999:5d} {-9999:5d} {-9999:5d}"
        )
    return packed("\n".join(lines) + "\n")


def packed(text: str) -> bytes:
    """The text packed without name or time, so that it is the same bytes each time."""
    return gzip.compress(text.encode("ascii"), compresslevel=9, mtime=0)
