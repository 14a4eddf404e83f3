"""Where pages and files of a book may stand in its site."""

from generator.book.model import Book


def check_addresses(book: Book) -> None:
    """Raise ValueError where an address leaves the site, stands twice or is MkDocs' own."""
    seen: set[str] = set()
    for address in (*(page.address for page in book.pages), *book.files):
        parts = address.split("/")
        if any(not part or part.startswith(".") for part in parts) or "\\" in address:
            raise ValueError(f"{address!r} is not an address inside the book.")
        if parts[0] == "templates" or parts[-1].lower() == "readme.md":
            raise ValueError(f"{address!r} is an address that MkDocs keeps for itself.")
        if address.endswith(".md") and address in book.files:
            raise ValueError(f"{address!r} is a page and cannot be a file beside the pages.")
        # Some disks take capital and small letters for the same name.
        published = address.removesuffix(".md").lower() + (
            ".html" if address.endswith(".md") else ""
        )
        if published in seen:
            raise ValueError(f"{address!r} stands twice in the book.")
        seen.add(published)
    if not all(page.address.endswith(".md") for page in book.pages):
        raise ValueError("Every page's address ends in .md.")
