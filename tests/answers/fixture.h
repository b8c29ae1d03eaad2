/* A small book in memory for the tests of the answers: one farm, one block of apples,
 * traps for CM, cards and lures. */
#ifndef TESTS_ANSWERS_FIXTURE_H
#define TESTS_ANSWERS_FIXTURE_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "answers/log.h"
#include "base/text.h"
#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct fixture {
	struct book *book;
	struct farm farm;
	struct block block;
	struct pest cm, ofm;
	struct lure_kind lure;
	struct card_kind card;
	struct log log;
};

static inline void must(bool ok, const struct err *e)
{
	if (!ok)
		fail_msg("%s", e->text);
}

static inline int32_t day_of(const char *iso)
{
	int32_t day = DAY_NONE;

	assert_true(day_parse(iso, &day));
	return day;
}

static inline void fixture_pest(struct fixture *f, struct pest *out, const char *code)
{
	struct pests pests = { 0 };
	struct err e = { 0 };

	must(book_pests(f->book, &pests, &e), &e);
	for (size_t i = 0; i < pests.n; i++)
		if (strcmp(pests.items[i].code, code) == 0)
			*out = pests.items[i];
	free(pests.items);
	if (out->id == 0) {
		text_copy(out->code, sizeof out->code, code);
		text_copy(out->name, sizeof out->name, code);
		must(book_put_pest(f->book, out, &e), &e);
	}
}

static inline void fixture_open(struct fixture *f)
{
	struct err e = { 0 };

	memset(f, 0, sizeof *f);
	f->book = book_open(":memory:", BOOK_CREATE, "T", &e);
	must(f->book != NULL, &e);
	fixture_pest(f, &f->cm, "CM");
	fixture_pest(f, &f->ofm, "OFM");
	f->farm = (struct farm){ .name = "Quillback", .season_start = 101 };
	must(book_put_farm(f->book, &f->farm, &e), &e);
	f->block = (struct block){ .farm = f->farm.id,
		.name = "Upper Russet",
		.crop = "apple",
		.condition = CONDITION_CONVENTIONAL,
		.area_x100 = -1 };
	must(book_put_block(f->book, &f->block, &e), &e);
	f->lure = (struct lure_kind){
		.name = "three weeks", .pest = f->cm.id, .life_days = 21
	};
	must(book_put_lure(f->book, &f->lure, &e), &e);
	f->card = (struct card_kind){ .name = "test card",
		.life_days = 60,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50 };
	must(book_put_card(f->book, &f->card, &e), &e);
}

static inline void fixture_close(struct fixture *f)
{
	log_free(&f->log);
	book_close(f->book);
}

/* A trap for CM in the block, hung on `hung` (NULL: not yet). */
static inline int64_t fixture_trap(
	struct fixture *f, const char *label, const char *hung)
{
	struct err e = { 0 };
	struct trap t = { .farm = f->farm.id,
		.block = f->block.id,
		.pest = f->cm.id,
		.lure = f->lure.id,
		.card = f->card.id };

	text_copy(t.label, sizeof t.label, label);
	must(book_put_trap(f->book, &t, &e), &e);
	if (hung) {
		struct visit v = { .trap = t.id,
			.day = day_of(hung),
			.outcome = OUTCOME_HUNG,
			.count = COUNT_NONE,
			.females = COUNT_NONE,
			.others = COUNT_NONE,
			.new_lure = f->lure.id,
			.new_card = f->card.id };
		must(book_save_visit(f->book, &v, NULL, &e), &e);
	}
	return t.id;
}

static inline struct visit fixture_counted(int64_t trap, const char *iso, int32_t count)
{
	return (struct visit){ .trap = trap,
		.day = day_of(iso),
		.outcome = OUTCOME_COUNTED,
		.count = count,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
}

static inline void fixture_save(struct fixture *f, struct visit v)
{
	struct err e = { 0 };
	struct visit_words w = { .scout = "JQ" };

	must(book_save_visit(f->book, &v, &w, &e), &e);
}

static inline void fixture_count(
	struct fixture *f, int64_t trap, const char *iso, int32_t count)
{
	fixture_save(f, fixture_counted(trap, iso, count));
}

static inline void fixture_skip(struct fixture *f, int64_t trap, const char *iso)
{
	struct visit v = fixture_counted(trap, iso, COUNT_NONE);

	v.outcome = OUTCOME_SKIPPED;
	v.reason = REASON_WEATHER;
	fixture_save(f, v);
}

static inline struct visit fixture_visit(
	struct fixture *f, int64_t trap, const char *day)
{
	struct visit v = { 0 };
	struct err e = { 0 };

	must(book_visit(f->book, trap, day_of(day), &v, NULL, &e), &e);
	return v;
}

static inline struct rule fixture_rule(
	struct fixture *f, enum measure m, int32_t span, int32_t value_x100)
{
	return (struct rule){
		.pest = f->cm.id, .measure = m, .span = span, .value_x100 = value_x100
	};
}

static inline void fixture_put_rule(struct fixture *f, struct rule r)
{
	struct err e = { 0 };

	must(book_put_rule(f->book, &r, &e), &e);
}

static inline void fixture_read(struct fixture *f, const char *today)
{
	struct err e = { 0 };

	must(log_read(&f->log, f->book, 0, day_of(today), &e), &e);
}

#endif
