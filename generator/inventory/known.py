"""What a process that stays has read, so that of what is as it was nothing is read again."""

from collections.abc import Callable
from typing import Any, TypeVar

_Made = TypeVar("_Made")


class Known:
    """What came of the texts of files when they were last read, by what was asked of them."""

    def __init__(self) -> None:
        self._held: dict[str, tuple[object, Any]] = {}

    def made_of(self, text: object, about: str, make: Callable[[], _Made]) -> _Made:
        """Return what `make` makes of a text, or made of the same text when it was asked last."""
        before, found = self._held.get(about, (None, None))
        if before != text:
            found = make()
            self._held[about] = text, found
        made: _Made = found
        return made
