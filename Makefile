# Everything that a newcomer or CI needs, on a machine with Python, make and the package
# registries. On Windows, which has no make, README.md gives the same steps.

ifndef PYTHON
TRIED := import sys; sys.exit(not (3, 11) <= sys.version_info[:2] <= (3, 13))
PYTHON := $(shell for each in python3 python3.13 python3.12 python3.11 python; do \
  $$each -c '$(TRIED)' 2>/dev/null && echo $$each && break; done)
endif
VENV ?= .venv
BIN := $(VENV)/bin
PIP := $(BIN)/python -m pip install --disable-pip-version-check --constraint constraints.txt
EXTRAS := dev,cluster,motion,health

.DEFAULT_GOAL := help
.PHONY: help install install-dev libraries programs model demo test check app clips \
  bench bench-accuracy bench-real bench-calibration bench-progress fuzz soak proof screenshots \
  bundle bundle-test

help:
	@echo "make demo    set everything up and measure the sample clips against their truth"
	@echo "make test    set everything up and run the tests"
	@echo "make check   lint, format, types, import contract, spelling, sizes"
	@echo "make app     open the window"
	@echo "make bench   speed and memory, as ratios within one run"
	@echo "make bench-accuracy   readings against the truth of virtual people (hours; FOLDER=...)"
	@echo "make bench-real       readings against angles marked on real people (a minute; REAL=folder for more)"
	@echo "make fuzz    2,000 damaged clips and 2,000 damaged files"
	@echo "make soak    an hour of measuring in the window; MINUTES=... for less"
	@echo "make proof   killed programs, full disk, frozen workers, traced network (three quarters of an hour)"
	@echo "make bench-calibration   what knowing lens, level and body is worth (after bench-accuracy)"
	@echo "make bench-progress   false alarms and power of the verdicts over months"
	@echo "make screenshots      pictures of every page"
	@echo "make bundle           a folder that runs without Python, model and fonts inside (DIST=dist)"
	@echo "make bundle-test      the same, and the tests of what came out"
	@echo "make clips   film the sample clips anew (brings PyTorch, needs the program ffmpeg)"

$(BIN)/python:
	@test -n "$(PYTHON)" || { \
	  echo "Thawline needs Python 3.11, 3.12 or 3.13, and none was found on the PATH."; \
	  echo "Install one, or name it: make PYTHON=/path/to/python3.12 demo"; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || $(MAKE) --no-print-directory python-venv
	$(PYTHON) -m venv --clear $(VENV)

# Debian and Ubuntu keep the means to make a virtual environment in a package of their own.
.PHONY: python-venv
python-venv:
	@name=$$($(PYTHON) -c 'import sys; print("python%d.%d-venv" % sys.version_info[:2])'); \
	if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
	  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq $$name; \
	else \
	  echo "This Python cannot make virtual environments."; \
	  echo "On Debian and Ubuntu: sudo apt-get install $$name   then run make again."; exit 1; \
	fi

# The stamps say what was installed; a change of versions installs again.
$(VENV)/installed: pyproject.toml constraints.txt | $(BIN)/python
	$(PIP) --editable .
	@touch $@

$(VENV)/installed-dev: $(VENV)/installed
	$(PIP) --editable '.[$(EXTRAS)]'
	@touch $@

install: $(VENV)/installed libraries model

install-dev: $(VENV)/installed-dev libraries model

# As root on Debian and Ubuntu what is missing is installed, elsewhere it is named.
define get
if [ -n "$$missing" ]; then \
  if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
    apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq $$missing \
      || echo "These could not be installed:" $$missing; \
  else \
    echo "$(1) On Debian and Ubuntu:"; \
    echo "  sudo apt-get install" $$missing; \
    echo "Other systems name them much the same. Going on without them."; \
  fi; \
fi
endef

libraries: $(VENV)/installed
	@missing=$$($(BIN)/python -m measure.diagnostics.system_libraries) || true; \
	$(call get,Thawline needs system libraries that are not here.)

# Programs that some tests call, and a font with every letter that they write.
programs:
	@missing=; \
	command -v ffmpeg >/dev/null || missing="$$missing ffmpeg"; \
	command -v Xvfb >/dev/null || missing="$$missing xvfb"; \
	command -v strace >/dev/null || missing="$$missing strace"; \
	command -v pdftotext >/dev/null || missing="$$missing poppler-utils"; \
	fc-list 2>/dev/null | grep -q DejaVu || missing="$$missing fontconfig fonts-dejavu-core"; \
	$(call get,Some tests need programs that are not here.)

model: $(VENV)/installed
	$(BIN)/thawline model

demo: install
	$(BIN)/thawline demo

test: install-dev programs
	$(BIN)/python -m pytest --numprocesses=auto --maxprocesses=4 --dist=loadfile

check: $(VENV)/installed-dev
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/mypy --explicit-package-bases tests/bench tests/fuzz tests/proof tests/soak
	$(BIN)/lint-imports
	$(BIN)/codespell
	$(BIN)/python -m tests.repository.structure
	$(BIN)/python -m tests.repository.reading_grade

app: install
	$(BIN)/thawline app

clips: $(VENV)/installed
	$(PIP) --editable '.[synth]'
	$(BIN)/python -m sample_clips.make

# The benches print figures; nothing passes or fails. FOLDER keeps clips and what was seen in them;
# `make bench WRITE=--write` also keeps the table of speed in measure/docs/analyst.md.
FOLDER ?= $(HOME)/.cache/thawline-bench

bench: install-dev
	$(BIN)/python -m tests.bench.bench_speed $(WRITE)
	$(BIN)/python -m tests.bench.bench_live
	$(BIN)/python -m tests.bench.bench_window
	$(BIN)/python -m tests.bench.bench_guided --model-quality full
	$(BIN)/python -m tests.bench.bench_guided --model-quality full --clinic

bench-accuracy: install-dev
	$(PIP) --editable '.[synth]'
	$(BIN)/python -m tests.bench.bench_accuracy $(FOLDER) --film --write

# REAL names folders with more people than tests/real_people may hold.
bench-real: install-dev
	$(BIN)/python -m tests.bench.bench_real $(REAL) $(WRITE)

bench-calibration: install-dev
	$(PIP) --editable '.[synth]'
	$(BIN)/python -m tests.bench.bench_calibration $(FOLDER) --write

bench-progress: install-dev
	$(BIN)/python -m tests.bench.bench_progress --write

# `WRITE=--write` keeps what these show in measure/docs/proof.md. FIRST is the first seed.
FIRST ?= 0

fuzz: install-dev programs
	$(BIN)/python -m tests.fuzz.run --first $(FIRST) $(WRITE)

MINUTES ?= 60

soak: install-dev
	QT_QPA_PLATFORM=offscreen $(BIN)/python -m tests.soak.run --minutes $(MINUTES) $(WRITE)

proof: export QT_QPA_PLATFORM = offscreen
proof: install-dev programs
	$(BIN)/python -m tests.proof.kills --first $(FIRST) $(WRITE)
	$(BIN)/python -m tests.proof.full_disk $(WRITE)
	$(BIN)/python -m tests.proof.strikes --first $(FIRST) $(WRITE)
	$(BIN)/python -m tests.proof.by_tests $(WRITE)
	$(BIN)/python -m tests.proof.installed $(WRITE)
	$(BIN)/python -m tests.proof.platforms $(WRITE)
	$(BIN)/python -m tests.soak.rounds $(WRITE)

screenshots: install-dev
	$(BIN)/python -m tests.support.gui.screenshots screenshots

# Made on the system that it is for. On two slow cores it takes 13 minutes; it needs 1 GB of disk.
DIST ?= dist

bundle: install-dev
	$(PIP) --editable '.[bundle]'
	$(BIN)/pyinstaller --noconfirm --distpath $(DIST) --workpath build gui/desktop/thawline.spec

bundle-test: bundle programs
	THAWLINE_BUNDLE=$(abspath $(DIST))/thawline $(BIN)/python -m tests.proof.by_tests bundle $(WRITE)
