# Each tests/LAYER/*_test.c is a program that links its layer and those below, and
# no more: a wrong call does not link.

below_base := base
below_season := season base
below_book := book base
below_answers := answers book season base
below_screen := screen base
below_term := term screen base
below_paper := paper base
below_exchange := exchange answers book season base
below_command := command paper exchange term screen answers book season base
below_reference := answers book season base

TEST_LAYERS := base season book answers screen term paper exchange command reference
TESTS := $(foreach l,$(TEST_LAYERS),\
	$(patsubst %.c,$(BUILD)/%,$(sort $(wildcard tests/$(l)/*_test.c))))

$(BUILD)/tests/%.o: tests/%.c
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) $(GSL_CFLAGS) $(CMOCKA_CFLAGS) -Itests -c $< -o $@

$(BUILD)/tests/exchange/%.o: ALL_CFLAGS += $(FORMAT_CFLAGS)

libs_of = $(if $(filter book,$(below_$(1))),$(SQLITE_LIBS)) \
	$(if $(filter exchange,$(below_$(1))),$(FORMAT_LIBS)) \
	$(if $(filter term,$(below_$(1))),$(CURSES_LIBS) -lutil) \
	$(if $(filter paper,$(below_$(1))),$(PDF_LIBS)) $(MATH_LIBS)

# What the tests of a layer share stands beside them, in files not named *_test.c.
shared_of = $(patsubst %.c,$(BUILD)/%.o,$(filter-out %_test.c,$(wildcard tests/$(1)/*.c)))

COMPILED_TESTS := $(foreach l,$(TEST_LAYERS) faulty fuzz bench e2e,\
	$(patsubst %.c,$(BUILD)/%.o,$(wildcard tests/$(l)/*.c)))

define test_layer
$(BUILD)/tests/$(1)/%_test: $(BUILD)/tests/$(1)/%_test.o $(call shared_of,$(1)) \
		$(call archives,$(below_$(1)))
	$$(CC) $$(CFLAGS) $$(HARDEN_LD) $$(LDFLAGS) $$(WRAPPED) $$^ $$(call libs_of,$(1)) \
		$$(CMOCKA_LIBS) -o $$@
endef
$(foreach l,$(TEST_LAYERS),$(eval $(call test_layer,$(l))))
.PRECIOUS: $(BUILD)/tests/%.o

# These take the place of the C library's calls, for the test that asks for it alone.
$(BUILD)/tests/book/faults_test: $(BUILD)/tests/faulty/disk.o $(BUILD)/tests/faulty/power.o
$(BUILD)/tests/command/memory_test: $(BUILD)/tests/faulty/memory.o
$(BUILD)/tests/book/sqlite_faults_test: $(BUILD)/tests/faulty/sqlite.o
$(BUILD)/tests/book/sqlite_faults_test: WRAPPED = $(patsubst %,-Wl$(comma)--wrap=sqlite3_%,\
	open_v2 prepare_v2 prepare_v3 step exec sleep backup_init backup_step)
$(BUILD)/tests/book/no_links_test: WRAPPED = -Wl,--wrap=link
$(BUILD)/tests/book/meanwhile_test: WRAPPED = -Wl,--wrap=link
$(BUILD)/tests/book/seeds_test: WRAPPED = -Wl,--wrap=shipped_find
comma := ,

# Random bytes, in a build of its own that tells the engine what it reached; clang alone
# has the engine. The terminal is tests/fuzz/terminal.c, and no PDF is set.
FUZZ_SECONDS ?= 30
FUZZ_SAN := -g -O1 -fsanitize=fuzzer-no-link,address,undefined \
	-fno-sanitize-recover=all -fno-omit-frame-pointer
FUZZED := $(patsubst tests/fuzz/%.c,$(BUILD)/tests/fuzz/%,\
	$(sort $(wildcard tests/fuzz/*_fuzz.c)))
FUZZ_SHARED := $(patsubst %.c,$(BUILD)/%.o,\
	$(filter-out %_fuzz.c,$(sort $(wildcard tests/fuzz/*.c))))
FUZZ_BELOW := $(filter-out term,$(LAYERS))

$(BUILD)/tests/fuzz/%.o: ALL_CFLAGS += $(SQLITE_CFLAGS)
$(BUILD)/tests/fuzz/%_fuzz: $(BUILD)/tests/fuzz/%_fuzz.o $(FUZZ_SHARED) \
		$(call archives,$(FUZZ_BELOW))
	$(CC) $(CFLAGS) -fsanitize=fuzzer $(LDFLAGS) $^ $(FORMAT_LIBS) $(SQLITE_LIBS) \
		$(PDF_LIBS) $(MATH_LIBS) -o $@

.PHONY: fuzz fuzzers
fuzzers: $(FUZZED)
fuzz:
	+@if sh tests/need $(NEED_FUZZ); then \
		$(patsubst +@%,%,$(AGAIN)) -s BUILD=$(BUILD)/fuzz CC=clang CFLAGS='$(FUZZ_SAN)' \
			HARDEN= HARDEN_LD= PDF=no fuzzers && \
		BUILD=$(BUILD)/fuzz FUZZ_SECONDS=$(FUZZ_SECONDS) sh tests/run-fuzz; \
	else \
		echo "fuzzing is left out: it needs clang with its fuzzing engine"; \
		echo "0 passed, 0 failed"; \
	fi

.PHONY: unit
unit: $(TESTS)
	sh tests/run-units $(TESTS)
