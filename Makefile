# make site    builds the handbook of the demo property into build/handbook
# make test    runs the tests and prints the time each part takes
# Each sets up .venv by itself. PYTHON=python3.12 names the Python to set it up with.

VENV := .venv
BIN := $(VENV)/bin
PYTHON := python3.15 python3.14 python3.13 python3.12 python3.11 python3
DEMO_SITE := build/handbook

.PHONY: site test quick test-long lint pictures bench mutants fuzz proof lock wheel clean set-up browser

site: set-up
	$(BIN)/handbook build demo_property --out $(DEMO_SITE)

test: set-up browser
	$(BIN)/python -m pytest -n 2 --dist loadgroup --durations 10

# About a minute of the tests that what differs from a commit can break, the likeliest first.
SINCE := HEAD
quick: set-up browser
	$(BIN)/python -m tests.quick.run $(SINCE)

test-long: set-up browser
	$(BIN)/python -m pytest -n 2 --dist loadgroup --durations 20 -m "long or not long"

lint: set-up
	$(BIN)/python -m ruff check .
	$(BIN)/python -m ruff format --check .
	$(BIN)/python -m mypy

# The pictures of the README, taken from the books of the demo property, and the icons of a book.
pictures: set-up browser
	$(BIN)/python -m tests.readme_pictures
	$(BIN)/python -m tests.icons

bench: set-up
	$(BIN)/python tests/bench/run.py

# Changes of the code that decides which no test notices; MODULES="plan.after.waits" names some alone.
mutants: set-up
	$(BIN)/python -m tests.mutants.run $(MODULES)

# Damaged properties, by their seeds; a range that was broken off goes on where it stopped.
FROM := 0
TO := 100000
fuzz: set-up
	$(BIN)/python -m tests.fuzz.run --from $(FROM) --to $(TO)

# Whether the working tree makes the same books as a commit: the demo, the starter, generated ones.
proof: set-up
	$(BIN)/python -m tests.proof.run $(SINCE)

# One resolution for every supported Python and system; no registry is named in it.
lock: set-up
	$(BIN)/python -m uv pip compile pyproject.toml --group develop --universal \
	    --python-version 3.11 --generate-hashes --upgrade \
	    --no-header --no-emit-index-url --no-emit-find-links --quiet \
	    --output-file requirements.lock

# The program as one file, for whoever installs it.
wheel: set-up
	$(BIN)/python -m hatchling build -t wheel -d dist

clean:
	rm -rf $(VENV) build dist site .mypy_cache .ruff_cache .pytest_cache .hypothesis

# A failure here does not stop the tests: those that need a browser say what to do.
browser: set-up
	-@$(BIN)/python -m tests.chromium

# The stamp holds what the environment was made from and where, so that a changed lock or a
# moved folder makes it anew.
set-up:
	@made_from="$$(cat requirements.lock pyproject.toml generator/__init__.py | cksum) $(CURDIR)"; \
	if [ "$$(cat $(VENV)/made_from 2>/dev/null)" = "$$made_from" ] \
	    && $(BIN)/python -c '' 2>/dev/null; then exit 0; fi; \
	in_range='import sys; sys.exit(not (3, 11) <= sys.version_info[:2] < (3, 16))'; \
	python=; without_venv=; \
	for candidate in $(PYTHON); do \
	    $$candidate -c "$$in_range" 2>/dev/null || continue; \
	    if $$candidate -c 'import venv, ensurepip' 2>/dev/null; then python=$$candidate; break; fi; \
	    without_venv=$$candidate; \
	done; \
	if [ -z "$$python" ] && [ -n "$$without_venv" ]; then \
	    echo "$$without_venv cannot make an environment: install its venv module" \
	        "(on Debian: apt-get install python3-venv) and run make again." >&2; exit 1; fi; \
	if [ -z "$$python" ]; then \
	    echo "No Python from 3.11 to 3.15 was found: install one" \
	        "(on Debian: apt-get install python3 python3-venv) and run make again." >&2; exit 1; fi; \
	echo "Setting up $(VENV) with $$($$python --version)"; \
	$$python -m venv --clear $(VENV) \
	&& $(BIN)/python -m pip install --quiet --disable-pip-version-check \
	    --require-hashes --only-binary :all: -r requirements.lock \
	&& $(BIN)/python -m pip install --quiet --disable-pip-version-check \
	    --no-deps --no-build-isolation --editable . \
	&& printf '%s\n' "$$made_from" > $(VENV)/made_from
