"""The lock covers what the project asks for, and the wheel works away from the checkout."""

import os
import re
import shutil
import subprocess
import sys
import tomllib
import venv
from pathlib import Path
from zipfile import ZipFile

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from generator.lookup import shipped

CHECKOUT = Path(__file__).resolve().parents[2]
LOCK = (CHECKOUT / "requirements.lock").read_text(encoding="utf-8")


def locked_entries() -> list[tuple[Requirement, list[str]]]:
    """Every entry of the lock: what it pins, and its hashes."""
    lines = (line for line in LOCK.splitlines() if not line.lstrip().startswith("#"))
    entries = []
    for entry in "\n".join(lines).replace("\\\n", " ").splitlines():
        if entry.strip():
            pinned, *hashes = re.split(r"\s+--hash=", entry.strip())
            entries.append((Requirement(pinned), hashes))
    return entries


def asked_for() -> list[Requirement]:
    """Everything pyproject.toml asks for: to run, with extras, to develop and to build."""
    project = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))
    wanted = [
        *project["project"]["dependencies"],
        *(line for extra in project["project"]["optional-dependencies"].values() for line in extra),
        *project["build-system"]["requires"],
        *(line for group in project["dependency-groups"].values() for line in group),
    ]
    return [Requirement(line) for line in wanted]


@pytest.mark.parametrize("wanted", asked_for(), ids=str)
def test_the_lock_holds_what_the_project_asks_for(wanted: Requirement) -> None:
    pins = [
        specifier.version
        for pinned, _ in locked_entries()
        if canonicalize_name(pinned.name) == canonicalize_name(wanted.name)
        for specifier in pinned.specifier
    ]
    assert pins, f"{wanted} is not in the lock: run `make lock`"
    refused = [version for version in pins if not wanted.specifier.contains(version)]
    assert not refused, f"the lock has {wanted.name} {refused}, not {wanted}: run `make lock`"


def test_every_entry_of_the_lock_is_one_version_with_a_hash() -> None:
    entries = locked_entries()
    assert len(entries) > len(asked_for())
    for pinned, hashes in entries:
        assert [specifier.operator for specifier in pinned.specifier] == ["=="], pinned
        assert hashes, pinned
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", value) for value in hashes), pinned


def test_the_lock_names_no_registry() -> None:
    assert "://" not in LOCK
    assert not re.search(r"^\s*(-i|-f|--index-url|--extra-index-url|--find-links)\b", LOCK, re.M)


def test_a_thing_that_does_not_ship_is_said_to_be_missing() -> None:
    with pytest.raises(FileNotFoundError, match=r"^no-such-thing is missing .* again\.$"):
        shipped("no-such-thing")


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project's wheel, built from this checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)], CHECKOUT)
    (built,) = folder.glob("*.whl")
    return built


@pytest.mark.xdist_group("wheel")
def test_the_wheel_holds_the_package_with_all_that_ships(wheel: Path) -> None:
    names = ZipFile(wheel).namelist()
    top_level = {name.split("/")[0] for name in names}
    assert {name for name in top_level if not name.endswith(".dist-info")} == {"generator"}

    in_checkout = {
        path.relative_to(CHECKOUT).as_posix()
        for folder in ("content", "site_templates", "demo_property")
        for path in (CHECKOUT / folder).rglob("*")
        if path.is_file()
    }
    prefix = "generator/shipped/"
    in_wheel = {name.removeprefix(prefix) for name in names if name.startswith(prefix)}
    assert in_wheel == in_checkout | {"mkdocs.yml"}

    package_data = {
        path.relative_to(CHECKOUT).as_posix()
        for path in (CHECKOUT / "generator").rglob("*")
        if path.is_file() and path.suffix != ".pyc"
    }
    assert package_data <= set(names)


@pytest.mark.xdist_group("wheel")
def test_the_unpacked_wheel_makes_a_handbook(wheel: Path, tmp_path: Path) -> None:
    target = tmp_path / "installed"
    pip_install(sys.executable, "--no-deps", "--no-index", "--target", str(target), str(wheel))
    # PYTHONPATH comes before the environment's own packages, the checkout among them.
    environment = os.environ | {"PYTHONPATH": str(target)}
    where = [sys.executable, "-c", "import generator; print(generator.__file__)"]
    assert Path(run(where, tmp_path, environment).strip()).is_relative_to(target)
    make_a_handbook([sys.executable, "-m", "generator"], tmp_path, environment)


@pytest.mark.long
@pytest.mark.xdist_group("wheel")
def test_the_wheel_and_the_lock_make_a_handbook_in_an_empty_environment(
    wheel: Path, tmp_path: Path
) -> None:
    venv.create(tmp_path / "empty", with_pip=True)
    commands = tmp_path / "empty" / ("Scripts" if os.name == "nt" else "bin")
    python = str(commands / "python")
    lock = str(CHECKOUT / "requirements.lock")
    pip_install(python, "--require-hashes", "--only-binary", ":all:", "-r", lock)
    pip_install(python, "--no-deps", "--no-index", str(wheel))
    handbook = shutil.which("handbook", path=str(commands))
    assert handbook is not None
    make_a_handbook([handbook], tmp_path, os.environ | {"PYTHONPATH": ""})


def pip_install(python: str, *arguments: str) -> None:
    run([python, "-m", "pip", "install", "--quiet", *arguments], CHECKOUT)


def make_a_handbook(handbook: list[str], folder: Path, environment: dict[str, str]) -> None:
    """A new property, and its owner's book, in a folder that knows nothing of the checkout."""
    run([*handbook, "new", "my-land"], folder, environment)
    run([*handbook, "build", "my-land", "--as-of", "2027-08-01"], folder, environment)
    assert (folder / "my-land-handbook" / "owner" / "index.html").is_file()


def run(command: list[str], folder: Path, environment: dict[str, str] | None = None) -> str:
    """What a command prints; a command that fails fails the test, with all it said."""
    done = subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.mark.xdist_group("wheel")
def test_the_readme_names_the_wheel_by_which_it_is_installed(wheel: Path) -> None:
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    assert f"    uv tool install {wheel.name}\n" in readme
    assert round(wheel.stat().st_size / 1e6, 1) == 1.6
    assert "1.6 MB" in readme


# The oldest systems the README names, by the tags of the platform compatibility specification of
# the Python Packaging Authority.
SYSTEMS = [
    ("win_amd64",),
    ("macosx_14_0_arm64",),
    ("macosx_13_0_x86_64",),
    ("manylinux_2_28_x86_64", "manylinux2014_x86_64"),
]


@pytest.mark.long
@pytest.mark.xdist_group("wheel")
@pytest.mark.parametrize("tags", SYSTEMS, ids=" ".join)
def test_the_systems_of_the_readme_have_wheels_of_all_it_needs(
    wheel: Path, tmp_path: Path, tags: tuple[str, ...]
) -> None:
    pip_install(
        sys.executable,
        *("--dry-run", "--ignore-installed", "--only-binary", ":all:", "--implementation", "cp"),
        *("--python-version", "3.13", "--target", str(tmp_path / "none")),
        *(word for tag in tags for word in ("--platform", tag)),
        str(wheel),
    )
