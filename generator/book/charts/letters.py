"""How wide a line of words is drawn at the most, whichever font a device has."""

import unicodedata

# Shares of the height of letters that are as wide at the most, in the widest fonts of devices.
_SHARES = {
    0.37: "ijl.,' ",
    0.5: 'Iftr!|:;()[]-"\\',
    0.66: "abcdeghknopqsuvxyz0123456789?/_*$`{}",
    0.84: "ABCDEFGHJKLNOPQRSTUVXYZ&+=~<>^#",
    1.02: "mwMW@",
    1.15: "%",
}
_WIDE_FRACTION = {letter: share for share, letters in _SHARES.items() for letter in letters}
BOLD_FRACTION = 1.12  # of the width of letters that are not bold


def words_px(words: str, height_px: float) -> float | None:
    """Return how wide a line of words is at the most; None where a letter's width is not known.

    >>> round(words_px("Old well", 10), 1), words_px("古い井戸", 10)
    (46.6, None)
    """
    # a letter with a mark over or under it is as wide as without
    plain = "".join(part for part in unicodedata.normalize("NFD", words) if not _is_mark(part))
    shares = [_WIDE_FRACTION.get(letter) for letter in plain]
    known = [share for share in shares if share is not None]
    return height_px * sum(known) if len(known) == len(shares) else None


def _is_mark(letter: str) -> bool:
    return unicodedata.combining(letter) > 0
