"""Real weather for tests: small cuts whose origin and hashes stand in tests/data/weather."""

import csv
import datetime
import gzip
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(__file__).resolve().parents[1] / "data" / "weather"


@dataclass(frozen=True)
class Day:
    """One day of a daily record, in degrees F."""

    day: datetime.date
    high_f: float
    low_f: float


def daily(name: str) -> list[Day]:
    """The days of a plain daily record in degrees C, read without the project's own reader."""
    with gzip.open(FOLDER / f"{name}_daily.csv.gz", "rt", encoding="utf-8") as file:
        return [
            Day(
                datetime.date.fromisoformat(row["date"]),
                float(row["tmax_c"]) * 9 / 5 + 32,
                float(row["tmin_c"]) * 9 / 5 + 32,
            )
            for row in csv.DictReader(file)
        ]


def budburst() -> dict[int, float]:
    """The mean day of the year of blueberry budburst, by year."""
    with (FOLDER / "harvard_budburst.csv").open(encoding="utf-8", newline="") as file:
        return {int(row["year"]): float(row["mean_day_of_year"]) for row in csv.DictReader(file)}


def spring_means_c() -> dict[int, list[float]]:
    """Daily means from Feb 1 (day 32) on, by year."""
    springs: dict[int, list[float]] = {}
    with gzip.open(FOLDER / "harvard_mean_c.csv.gz", "rt", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            springs.setdefault(int(row["year"]), []).append(float(row["mean_c"]))
    return springs
