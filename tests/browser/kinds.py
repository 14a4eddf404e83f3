"""The pages of the demo's sites by their kind: what one template makes for one sort of thing."""

from collections.abc import Container, Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath

from tests.book.sites import Site


@dataclass(frozen=True)
class Looked:
    """A page of one reader's site, with its kind: the folder, of a sheet also the work on it."""

    reader: str
    site: Site
    address: str
    kind: str

    @property
    def uri(self) -> str:
        return (self.site.folder / self.address).as_uri()

    @property
    def bytes(self) -> int:
        return (self.site.folder / self.address).stat().st_size

    @property
    def name(self) -> str:
        return f"{self.reader}: {self.address}"


def every_page(sites: Mapping[str, Site]) -> list[Looked]:
    """Every page of every reader."""
    return [
        Looked(reader, site, address, _kind(address, _operations(site)))
        for reader, site in sites.items()
        for address in site.pages()
    ]


def one_of_each_kind(sites: Mapping[str, Site]) -> list[Looked]:
    """One page of each kind for each reader; of a kind the fullest one."""
    found: dict[tuple[str, str], Looked] = {}
    for page in sorted(every_page(sites), key=lambda page: page.bytes):
        found[page.reader, page.kind] = page
    return sorted(found.values(), key=lambda page: page.name)


def of_each_and_carried(sites: Mapping[str, Site], carried: Container[str]) -> list[Looked]:
    """One page of each kind, whoever reads it, and of what is carried the page of each reader."""
    each = one_of_each(sites)
    names = {page.name for page in each}
    others = (page for page in one_of_each_kind(sites) if page.name not in names)
    return [*each, *(page for page in others if page.kind in carried)]


def one_of_each(sites: Mapping[str, Site]) -> list[Looked]:
    """One page of each kind, whoever reads it."""
    return list({page.kind: page for page in one_of_each_kind(sites)}.values())


def _operations(site: Site) -> dict[str, str]:
    return {job.address: job.step.operation for job in (*site.plan.jobs, *site.plan.upkeep)}


def _kind(address: str, operations: Mapping[str, str]) -> str:
    path = PurePosixPath(address)
    if path.parts[0] == path.name:
        return address
    if path.parts[0] == "work":
        return f"work/{operations[path.stem]}"
    return path.parts[0]
