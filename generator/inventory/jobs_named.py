"""Jobs that a record names, by steps of plantings: looked up without a walk over all of them.

Each job of a property asks each reader and each hire, and either may name as many as there are.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

ALL_STEPS = "all"


class StepsNamed(Protocol):
    """Steps of one planting, or the word for all of them."""

    @property
    def planting(self) -> str:
        """The planting, by its id."""

    @property
    def steps(self) -> tuple[str, ...]:
        """The steps, by their ids."""


class JobsNamed:
    """The jobs that one record names, put in order when they are first asked for."""

    def __init__(self) -> None:
        self._steps: dict[str, set[str]] | None = None

    def has(self, named: Iterable[StepsNamed], planting_id: str, step_id: str) -> bool:
        """Return whether a step of a planting is among the jobs of the record, `named`."""
        if self._steps is None:
            self._steps = {}
            for jobs in named:
                self._steps.setdefault(jobs.planting, set()).update(jobs.steps)
        steps = self._steps.get(planting_id, ())
        return step_id in steps or ALL_STEPS in steps
