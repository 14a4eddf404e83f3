"""The weather of an inventory out of its files; nothing is read or imported where there is none."""

from dataclasses import replace
from pathlib import Path

from generator.inventory.known import Known
from generator.inventory.problems import Problem
from generator.inventory.schema import Inventory


def with_weather(
    folder: Path, inventory: Inventory, known: Known
) -> tuple[Inventory, list[Problem]]:
    """Return the inventory with the records of its stations, and every fault in their files.

    A file that holds what it held when it was `known` is not read again.
    """
    if not inventory.stations and not inventory.wind_stations:
        return inventory, []
    from generator.inventory.weather_days import read_days
    from generator.inventory.weather_wind import read_wind

    days = [read_days(folder, one, known) for one in inventory.stations]
    winds = [read_wind(folder, one, known) for one in inventory.wind_stations]
    problems = [one for _, faults in (*days, *winds) for one in faults]
    return replace(
        inventory,
        daily=tuple(record for record, _ in days if record is not None),
        hourly_wind=tuple(record for record, _ in winds if record is not None),
    ), problems
