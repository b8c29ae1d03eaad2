# mothtally: a weekly pheromone-trap scouting log. `make help` lists the targets.

PREFIX ?= /usr/local
BUILD ?= build
CC ?= cc
CFLAGS ?= -O2 -g
PKG_CONFIG ?= pkg-config

SHIPPED := $(sort $(wildcard share/*.sql)) $(sort $(wildcard share/*.csv share/demo/*.csv))
SHIPPED_O = $(BUILD)/shipped.o $(BUILD)/shipped_words.o
# In calling order; what each may use stands in DEVELOPERS.md and tests/tests.mk.
LAYERS := command paper exchange term screen answers book season base

WARN := -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wformat=2 -Wvla -Wundef \
	-Wstrict-prototypes -Wmissing-prototypes $(WERROR)
HARDEN ?= -D_FORTIFY_SOURCE=2 -fstack-protector-strong -fPIE
HARDEN_LD ?= -pie -Wl,-z,relro,-z,now
VERSION := 0.1.0
ALL_CFLAGS = -std=c11 -D_DEFAULT_SOURCE -Iinclude -DVERSION='"$(VERSION)"' \
	-DLOCALEDIR='"$(PREFIX)/share/locale"' \
	$(WARN) $(HARDEN) $(CFLAGS) -MMD -MP

CURSES_CFLAGS = $(shell $(PKG_CONFIG) --cflags ncursesw)
CURSES_LIBS = $(shell $(PKG_CONFIG) --libs ncursesw)
SQLITE_CFLAGS = $(shell $(PKG_CONFIG) --cflags sqlite3)
SQLITE_LIBS = $(shell $(PKG_CONFIG) --libs sqlite3)
FORMAT_CFLAGS = $(shell $(PKG_CONFIG) --cflags expat jansson libical)
FORMAT_LIBS = $(shell $(PKG_CONFIG) --libs expat jansson libical)
CMOCKA_CFLAGS = $(shell $(PKG_CONFIG) --cflags cmocka)
CMOCKA_LIBS = $(shell $(PKG_CONFIG) --libs cmocka)
GSL_CFLAGS = $(shell $(PKG_CONFIG) --cflags gsl)
MATH_LIBS = $(shell $(PKG_CONFIG) --libs gsl) -lm

# PDF=no, or no Cairo and Pango there: the program writes text only.
PDF ?= $(shell $(PKG_CONFIG) --exists pangocairo && echo yes || echo no)
PDF_CFLAGS = $(if $(filter yes,$(PDF)),$(shell $(PKG_CONFIG) --cflags pangocairo))
PDF_LIBS = $(if $(filter yes,$(PDF)),$(shell $(PKG_CONFIG) --libs pangocairo))
PDF_PARTS := src/paper/pdf.c src/paper/pdf_text.c src/paper/pdf_lines.c
PDF_NONE := src/paper/pdf_none.c
LEFT_OUT := $(if $(filter yes,$(PDF)),$(PDF_NONE),$(PDF_PARTS))

objects = $(patsubst src/%.c,$(BUILD)/%.o,\
	$(filter-out $(LEFT_OUT),$(sort $(wildcard src/$(1)/*.c))))
archives = $(patsubst %,$(BUILD)/lib%.a,$(1))

.PHONY: all
all: $(BUILD)/mothtally catalogues completions

# Languages other than English; tests/catalogue keeps their sentences those of the source.
MSGFMT ?= msgfmt
LANGUAGES := $(patsubst share/locale/%.po,%,$(sort $(wildcard share/locale/*.po)))
mo_of = locale/$(1)/LC_MESSAGES/mothtally.mo
.PHONY: catalogues catalogue
ifneq ($(shell command -v $(MSGFMT) 2>/dev/null),)
CATALOGUES := $(foreach l,$(LANGUAGES),$(call mo_of,$(l)))
catalogues: $(addprefix $(BUILD)/,$(CATALOGUES))
else
catalogues:
	@echo "No $(MSGFMT) here (Debian: gettext): this build speaks English alone."
endif
$(BUILD)/locale/%/LC_MESSAGES/mothtally.mo: share/locale/%.po
	@mkdir -p $(@D)
	$(MSGFMT) -o $@ $<

catalogue:
	@sh tests/catalogue update $(LANGUAGES)

# What shells complete, as the table of commands has it.
.PHONY: completions
completions: $(BUILD)/completion/bash $(BUILD)/completion/zsh
$(BUILD)/completion/%: $(BUILD)/mothtally
	@mkdir -p $(@D)
	LC_ALL=C $< completion $* >$@.part && mv $@.part $@

# One archive a layer: what a layer must not call is not there when its tests link.
define layer
$(BUILD)/lib$(1).a: $(call objects,$(1)) $(if $(filter base,$(1)),$(SHIPPED_O))
	@rm -f $$@
	$(AR) rcs $$@ $$(filter %.o,$$^)
endef
$(foreach l,$(LAYERS),$(eval $(call layer,$(l))))

$(BUILD)/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) -c $< -o $@

$(BUILD)/book/%.o: ALL_CFLAGS += $(SQLITE_CFLAGS)
$(BUILD)/term/%.o: ALL_CFLAGS += $(CURSES_CFLAGS)
$(BUILD)/exchange/%.o: ALL_CFLAGS += $(FORMAT_CFLAGS)
$(BUILD)/season/%.o: ALL_CFLAGS += $(GSL_CFLAGS)
$(BUILD)/paper/%.o: ALL_CFLAGS += $(PDF_CFLAGS)

# The other answer about PDF makes the archive anew.
PDF_SAID := $(BUILD)/pdf-$(PDF)
$(PDF_SAID):
	@mkdir -p $(@D)
	@rm -f $(BUILD)/pdf-yes $(BUILD)/pdf-no
	@$(if $(filter yes,$(PDF)),,echo "No Cairo and Pango here (Debian: \
	libpango1.0-dev): this build writes text only.")
	@touch $@
$(BUILD)/libpaper.a: $(PDF_SAID)

$(BUILD)/shipped.c: $(SHIPPED) share/carry.sh
	@mkdir -p $(@D)
	sh share/carry.sh $(SHIPPED) >$@.part && mv $@.part $@
# The words in these that people see.
$(BUILD)/shipped_words.c: $(SHIPPED) share/words.sh
	@mkdir -p $(@D)
	sh share/words.sh >$@.part && mv $@.part $@
$(SHIPPED_O): %.o: %.c
	$(CC) $(ALL_CFLAGS) -c $< -o $@

$(BUILD)/mothtally: $(BUILD)/main.o $(call archives,$(LAYERS))
	$(CC) $(CFLAGS) $(HARDEN_LD) $(LDFLAGS) $^ $(CURSES_LIBS) $(FORMAT_LIBS) $(SQLITE_LIBS) \
		$(PDF_LIBS) $(MATH_LIBS) -o $@

include tests/tests.mk

# What each target needs of the machine; tests/need knows the packages.
NEED_BUILD := cc libc pkg-config sqlite ncurses expat jansson ical gsl pango
NEED_TEST := $(NEED_BUILD) poppler ghostscript gettext locales zsh cmocka tmux strace sqlite-shell ps mandoc \
	py-icalendar py-geojson py-gpxpy
NEED_BENCH := $(NEED_BUILD) sqlite-shell
NEED_LINT := $(NEED_BUILD) gettext cmocka gcc clang clang-format cppcheck mandoc
NEED_FUZZ := $(NEED_BUILD) clang fuzz-engine

# As many jobs as processors, unless a number was asked for.
AGAIN = +@$(MAKE) --no-print-directory $(if $(findstring jobserver,$(MAKEFLAGS)),,-j$(shell nproc))
SAN := -g -O1 -fsanitize=address,undefined -fno-sanitize-recover=all \
	-fno-omit-frame-pointer

.PHONY: demo
demo:
	@sh tests/need $(NEED_BUILD)
	@echo "Building mothtally"
	$(AGAIN) -s all
	@export MOTHTALLY_LOCALE=$(abspath $(BUILD))/locale; \
	if [ -t 0 ] && [ -t 1 ]; then exec $(BUILD)/mothtally demo; \
	else exec $(BUILD)/mothtally demo --print; fi

.PHONY: test check check-san programs
test:
	@sh tests/need $(NEED_TEST)
	$(AGAIN) -s check

programs: $(TESTS)

# All that is compiled, and nothing linked.
.PHONY: compiled
compiled: $(BUILD)/main.o $(call archives,$(LAYERS)) $(COMPILED_TESTS)

check: all programs
	@MOTHTALLY=$(abspath $(BUILD))/mothtally BUILD=$(BUILD) sh tests/run-all $(TESTS)

check-san: export LSAN_OPTIONS := suppressions=$(abspath tests/leaks):print_suppressions=0
check-san:
	@sh tests/need $(NEED_TEST)
	$(AGAIN) -s BUILD=$(BUILD)/san CFLAGS='$(SAN)' HARDEN= HARDEN_LD= SANITIZED=yes check

.PHONY: lint bench bench-check soak
lint:
	@sh tests/need $(NEED_LINT)
	@MAKE='$(MAKE)' sh tests/lint $(BUILD)

# A build of its own that counts. A child of a test ends by _exit, which would lose its
# counts. ONLY="season book": their test programs alone; GAPS=book: what was not taken.
COVERAGE := $(BUILD)/coverage
# Counting needs memory itself, so the test that takes it away is left out.
COUNTED := $(filter-out %/memory_test,$(patsubst $(BUILD)/%,$(COVERAGE)/%,$(if $(ONLY),\
	$(filter $(foreach l,$(ONLY),$(BUILD)/tests/$(l)/%),$(TESTS)),$(TESTS))))
COUNTING = BUILD=$(COVERAGE) CC=gcc CFLAGS='-w -g -O0 -DNDEBUG --coverage' \
	LDFLAGS='-Wl,--wrap=_exit $(COVERAGE)/tests/coverage/exit.o' HARDEN= HARDEN_LD=
.PHONY: coverage
coverage:
	@sh tests/need $(NEED_TEST) gcc
	$(AGAIN) -s $(COUNTING) $(COVERAGE)/tests/coverage/exit.o
	$(AGAIN) -s $(COUNTING) $(if $(ONLY),,all) $(COUNTED)
	@MOTHTALLY=$(abspath $(COVERAGE))/mothtally BUILD=$(COVERAGE) ONLY='$(ONLY)' \
		sh tests/coverage/run $(COUNTED)

bench bench-check:
	@sh tests/need $(NEED_BENCH)
	$(AGAIN) -s all
	@MOTHTALLY=$(abspath $(BUILD))/mothtally BUILD=$(BUILD) sh tests/bench/run \
		$(patsubst bench-%,%,$(filter-out bench,$@))

# All figures of the faults that a book is exposed to; about half an hour.
.PHONY: faults
faults:
	@sh tests/need $(NEED_TEST)
	$(AGAIN) -s all $(BUILD)/tests/book/faults_test $(BUILD)/tests/command/memory_test
	@MOTHTALLY=$(abspath $(BUILD))/mothtally BUILD=$(BUILD) sh tests/run-faults

soak: all
	@SOAK=whole MOTHTALLY=$(abspath $(BUILD))/mothtally sh tests/e2e/soak.sh

BINDIR = $(DESTDIR)$(PREFIX)/bin
MANDIR = $(DESTDIR)$(PREFIX)/share/man
BASHDIR = $(DESTDIR)$(PREFIX)/share/bash-completion/completions
ZSHDIR = $(DESTDIR)$(PREFIX)/share/zsh/site-functions
.PHONY: install uninstall clean help
install: all
	install -d $(BINDIR) $(MANDIR)/man1 $(MANDIR)/man5
	install -m 755 $(BUILD)/mothtally $(BINDIR)/mothtally
	install -m 644 man/mothtally.1 $(MANDIR)/man1/mothtally.1
	install -m 644 man/mothtally.5 $(MANDIR)/man5/mothtally.5
	install -D -m 644 $(BUILD)/completion/bash $(BASHDIR)/mothtally
	install -D -m 644 $(BUILD)/completion/zsh $(ZSHDIR)/_mothtally
	@for mo in $(CATALOGUES); do \
		install -D -m 644 $(BUILD)/$$mo $(DESTDIR)$(PREFIX)/share/$$mo || exit 1; \
	done

uninstall:
	rm -f $(BINDIR)/mothtally $(MANDIR)/man1/mothtally.1 $(MANDIR)/man5/mothtally.5
	rm -f $(BASHDIR)/mothtally $(ZSHDIR)/_mothtally
	rm -f $(foreach l,$(LANGUAGES),$(DESTDIR)$(PREFIX)/share/$(call mo_of,$(l)))

clean:
	rm -rf $(BUILD)

help:
	@echo "make            build $(BUILD)/mothtally"
	@echo "make demo       install what the build needs, build, open the invented season"
	@echo "make test       install what the tests need, build, run all tests"
	@echo "make check      run all tests, install nothing"
	@echo "make check-san  run all tests under the address and undefined sanitizers"
	@echo "make lint       layout, warnings as errors (gcc, clang), cppcheck, manual"
	@echo "make fuzz       random files, keys and damaged books, FUZZ_SECONDS each"
	@echo "make faults     disk, memory and power fail at every step: figures"
	@echo "make soak       10 000 keys in one program: memory, frames, open files"
	@echo "make bench      speed, as ratios"
	@echo "make bench-check  the same on small books: is a ratio broken?"
	@echo "make coverage   how much of each layer the tests run, by lines and branches"
	@echo "make catalogue  bring share/locale/*.po up to date with the sources"
	@echo "make install    under PREFIX ($(PREFIX)), below DESTDIR; uninstall undoes it"
	@echo "make clean      remove $(BUILD)"
	@echo "CC, CFLAGS, LDFLAGS and BUILD are yours to set."

-include $(wildcard $(BUILD)/*.d $(BUILD)/*/*.d $(BUILD)/*/*/*.d)
