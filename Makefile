# mothtally: a weekly pheromone-trap scouting log. `make help` lists the targets.

PREFIX ?= /usr/local
BUILD ?= build
CC ?= cc
CFLAGS ?= -O2 -g
PKG_CONFIG ?= pkg-config

SHIPPED := $(sort $(wildcard share/*.sql)) $(sort $(wildcard share/*.csv share/demo/*.csv))
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
EXPAT_CFLAGS = $(shell $(PKG_CONFIG) --cflags expat)
EXPAT_LIBS = $(shell $(PKG_CONFIG) --libs expat)
CMOCKA_CFLAGS = $(shell $(PKG_CONFIG) --cflags cmocka)
CMOCKA_LIBS = $(shell $(PKG_CONFIG) --libs cmocka)
GSL_CFLAGS = $(shell $(PKG_CONFIG) --cflags gsl)
MATH_LIBS = $(shell $(PKG_CONFIG) --libs gsl) -lm

objects = $(patsubst src/%.c,$(BUILD)/%.o,$(sort $(wildcard src/$(1)/*.c)))
archives = $(patsubst %,$(BUILD)/lib%.a,$(1))

.PHONY: all
all: $(BUILD)/mothtally

# One archive a layer: what a layer must not call is not there when its tests link.
define layer
$(BUILD)/lib$(1).a: $(call objects,$(1)) $(if $(filter base,$(1)),$(BUILD)/shipped.o)
	@rm -f $$@
	$(AR) rcs $$@ $$^
endef
$(foreach l,$(LAYERS),$(eval $(call layer,$(l))))

$(BUILD)/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) -c $< -o $@

$(BUILD)/book/%.o: ALL_CFLAGS += $(SQLITE_CFLAGS)
$(BUILD)/term/%.o: ALL_CFLAGS += $(CURSES_CFLAGS)
$(BUILD)/exchange/%.o: ALL_CFLAGS += $(EXPAT_CFLAGS)
$(BUILD)/season/%.o: ALL_CFLAGS += $(GSL_CFLAGS)

$(BUILD)/shipped.c: $(SHIPPED) share/carry.sh
	@mkdir -p $(@D)
	sh share/carry.sh $(SHIPPED) >$@.part && mv $@.part $@
$(BUILD)/shipped.o: $(BUILD)/shipped.c
	$(CC) $(ALL_CFLAGS) -c $< -o $@

$(BUILD)/mothtally: $(BUILD)/main.o $(call archives,$(LAYERS))
	$(CC) $(CFLAGS) $(HARDEN_LD) $(LDFLAGS) $^ $(CURSES_LIBS) $(EXPAT_LIBS) $(SQLITE_LIBS) \
		$(MATH_LIBS) -o $@

include tests/tests.mk

# What each target needs of the machine; tests/need knows the packages.
NEED_BUILD := cc libc pkg-config sqlite ncurses expat gsl
NEED_TEST := $(NEED_BUILD) cmocka tmux strace sqlite-shell ps mandoc
NEED_LINT := $(NEED_BUILD) cmocka gcc clang clang-format cppcheck mandoc

# As many jobs as processors, unless a number was asked for.
AGAIN = +@$(MAKE) --no-print-directory $(if $(findstring jobserver,$(MAKEFLAGS)),,-j$(shell nproc))
SAN := -g -O1 -fsanitize=address,undefined -fno-sanitize-recover=all \
	-fno-omit-frame-pointer

.PHONY: demo
demo:
	@sh tests/need $(NEED_BUILD)
	@echo "Building mothtally"
	$(AGAIN) -s all
	@if [ -t 0 ] && [ -t 1 ]; then exec $(BUILD)/mothtally demo; \
	else exec $(BUILD)/mothtally demo --print; fi

.PHONY: test check check-san programs
test:
	@sh tests/need $(NEED_TEST)
	$(AGAIN) -s check

programs: $(TESTS)

check: all programs
	@MOTHTALLY=$(abspath $(BUILD))/mothtally BUILD=$(BUILD) sh tests/run-all $(TESTS)

check-san:
	@sh tests/need $(NEED_TEST)
	$(AGAIN) -s BUILD=$(BUILD)/san CFLAGS='$(SAN)' HARDEN= HARDEN_LD= SANITIZED=yes check

.PHONY: lint bench
lint:
	@sh tests/need $(NEED_LINT)
	@MAKE='$(MAKE)' sh tests/lint $(BUILD)

bench: all
	@MOTHTALLY=$(abspath $(BUILD))/mothtally BUILD=$(BUILD) sh tests/bench/run

BINDIR = $(DESTDIR)$(PREFIX)/bin
MANDIR = $(DESTDIR)$(PREFIX)/share/man
.PHONY: install uninstall clean help
install: all
	install -d $(BINDIR) $(MANDIR)/man1 $(MANDIR)/man5
	install -m 755 $(BUILD)/mothtally $(BINDIR)/mothtally
	install -m 644 man/mothtally.1 $(MANDIR)/man1/mothtally.1
	install -m 644 man/mothtally.5 $(MANDIR)/man5/mothtally.5

uninstall:
	rm -f $(BINDIR)/mothtally $(MANDIR)/man1/mothtally.1 $(MANDIR)/man5/mothtally.5

clean:
	rm -rf $(BUILD)

help:
	@echo "make            build $(BUILD)/mothtally"
	@echo "make demo       install what the build needs, build, open the invented season"
	@echo "make test       install what the tests need, build, run all tests"
	@echo "make check      run all tests, install nothing"
	@echo "make check-san  run all tests under the address and undefined sanitizers"
	@echo "make lint       layout, warnings as errors (gcc, clang), cppcheck, manual"
	@echo "make fuzz       random bytes into the parsers, FUZZ_SECONDS each"
	@echo "make bench      speed, as ratios"
	@echo "make install    under PREFIX ($(PREFIX)), below DESTDIR; uninstall undoes it"
	@echo "make clean      remove $(BUILD)"
	@echo "CC, CFLAGS, LDFLAGS and BUILD are yours to set."

-include $(wildcard $(BUILD)/*.d $(BUILD)/*/*.d $(BUILD)/*/*/*.d)
