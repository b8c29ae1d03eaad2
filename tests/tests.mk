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

$(BUILD)/tests/exchange/gpx_%.o: ALL_CFLAGS += $(EXPAT_CFLAGS)

libs_of = $(if $(filter book,$(below_$(1))),$(SQLITE_LIBS)) \
	$(if $(filter exchange,$(below_$(1))),$(EXPAT_LIBS)) \
	$(if $(filter term,$(below_$(1))),$(CURSES_LIBS) -lutil) $(MATH_LIBS)

# What the tests of a layer share stands beside them, in files not named *_test.c.
shared_of = $(patsubst %.c,$(BUILD)/%.o,$(filter-out %_test.c,$(wildcard tests/$(1)/*.c)))

define test_layer
$(BUILD)/tests/$(1)/%_test: $(BUILD)/tests/$(1)/%_test.o $(call shared_of,$(1)) \
		$(call archives,$(below_$(1)))
	$$(CC) $$(CFLAGS) $$(HARDEN_LD) $$(LDFLAGS) $$^ $$(call libs_of,$(1)) $$(CMOCKA_LIBS) -o $$@
endef
$(foreach l,$(TEST_LAYERS),$(eval $(call test_layer,$(l))))
.PRECIOUS: $(BUILD)/tests/%.o

# Random bytes into the parsers; clang alone has the engine.
FUZZ_SECONDS ?= 30
FUZZED := $(patsubst tests/fuzz/%_fuzz.c,$(BUILD)/fuzz/%,$(wildcard tests/fuzz/*_fuzz.c))
$(BUILD)/fuzz/%: tests/fuzz/%_fuzz.c $(wildcard src/base/*.c) $(BUILD)/shipped.c
	@mkdir -p $(@D)
	clang -g -O1 -fsanitize=fuzzer,address,undefined -std=c11 -D_DEFAULT_SOURCE \
		-Iinclude $^ -o $@

.PHONY: fuzz
fuzz: $(FUZZED)
	@for f in $(FUZZED); do $$f -max_total_time=$(FUZZ_SECONDS) || exit 1; done

.PHONY: unit
unit: $(TESTS)
	sh tests/run-units $(TESTS)
