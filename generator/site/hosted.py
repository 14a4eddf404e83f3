"""What a book needs on a web host: to be installed, and kept whole on a device without signal.

Opened from a folder it asks for none of this.
"""

import hashlib
import json
from collections.abc import Mapping
from html import unescape

from generator.book.model import Book
from generator.lookup import shipped
from generator.site.settings import day_in_words

MANIFEST, WORKER = "handbook.webmanifest", "service-worker.js"
ICON_SIZES_PX = (192, 512)
# Paper and bar of the pages, as their style has them.
_PAPER, _BAR = "#fbf8f1", "#1d4a2c"
# Read from a folder, or by whoever installs, alone: no device keeps them.
_NOT_KEPT = frozenset(
    [MANIFEST, WORKER, "search/search_index.js", *(f"assets/icon-{px}.png" for px in ICON_SIZES_PX)]
)
# Of a SHA-256; the worker compares as many.
_DIGITS = 16


def hosted_files(book: Book, digests: Mapping[str, str]) -> dict[str, bytes]:
    """Return the manifest and the worker of a book, by their names.

    `digests` are the SHA-256 of all its other files.
    """
    files = {name: digests[name][:_DIGITS] for name in sorted(digests) if name not in _NOT_KEPT}
    kept = {
        "asOf": day_in_words(book.as_of),
        "pages": len(book.pages),
        "version": hashlib.sha256(json.dumps(files).encode()).hexdigest()[:_DIGITS],
        "files": files,
    }
    script = (shipped("site_templates") / "hosted" / WORKER).read_text(encoding="utf-8")
    return {
        MANIFEST: json.dumps(_manifest(book), indent=1).encode(),
        WORKER: f"const BOOK = {json.dumps(kept, indent=0)};\n{script}".encode(),
    }


def _manifest(book: Book) -> dict[str, object]:
    # every address counts from the manifest: the folder may lie anywhere on a host
    return {
        "name": unescape(book.title),
        "short_name": "Handbook",
        "lang": "en",
        "start_url": "index.html",
        "scope": "./",
        "display": "standalone",
        # one page leads to another: a way back is worth its line on the screen
        "display_override": ["minimal-ui"],
        "background_color": _PAPER,
        "theme_color": _BAR,
        "icons": [
            {
                "src": f"assets/icon-{px}.png",
                "sizes": f"{px}x{px}",
                "type": "image/png",
                "purpose": "any maskable",
            }
            for px in ICON_SIZES_PX
        ],
    }
