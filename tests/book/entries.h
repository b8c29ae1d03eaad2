/* entries.h - random entries of every table, as a grower or another program would make
 * them; some are refused. */
#ifndef TESTS_BOOK_ENTRIES_H
#define TESTS_BOOK_ENTRIES_H

#include "fixture.h"

#include "book/sources.h"
#include "book/steps.h"
#include "book/weather.h"

#include <math.h>

enum { DAY0 = 20000, DAYS = 6 };

struct dice {
	struct desk *desk;
	unsigned seed;
	int done; /* edits that were not refused */
};

static inline int roll(struct dice *d, int n)
{
	return rand_r(&d->seed) % n;
}

/* A row of the table by chance; 0: it is empty, or chance says none. */
static inline int64_t any(struct dice *d, const char *table)
{
	char sql[128];
	struct book *b = d->desk->book;

	snprintf(sql, sizeof sql, "SELECT count(*) FROM %s", table);
	int n = (int)store_number(b, sql, 0);
	int at = roll(d, n + 1);
	snprintf(sql, sizeof sql, "SELECT id FROM %s ORDER BY id LIMIT 1 OFFSET %d",
		table, at);
	return at < n ? store_number(b, sql, 0) : 0;
}

static inline void name(struct dice *d, char *out)
{
	snprintf(out, CODE_BYTES, "n%d'\"\\%s", roll(d, 12), roll(d, 2) ? "é" : "");
}

static inline bool put_farm(struct dice *d, struct err *e)
{
	struct farm f = { .id = any(d, "farm"),
		.season_start = roll(d, 2) ? 101 : 701,
		.station = any(d, "station"),
		.run_weekday = roll(d, 8),
		.retired = roll(d, 4) == 0 };

	name(d, f.name);
	return book_put_farm(d->desk->book, &f, e);
}

static inline bool put_block(struct dice *d, struct err *e)
{
	struct block b = { .id = any(d, "block"),
		.farm = any(d, "farm"),
		.condition = (enum condition)roll(d, 3),
		.area_x100 = roll(d, 50) - 1,
		.retired = roll(d, 4) == 0 };

	name(d, b.name);
	name(d, b.crop);
	return book_put_block(d->desk->book, &b, e);
}

static inline bool put_trap(struct dice *d, struct err *e)
{
	struct trap t = { .id = any(d, "trap"),
		.block = any(d, "block"),
		.pest = any(d, "pest"),
		.lure = roll(d, 3) ? 0 : any(d, "lure"),
		.card = any(d, "card"),
		.place = (enum place)roll(d, 4),
		.has_position = roll(d, 2),
		.lat = roll(d, 1000) / 7.0,
		.lon = -roll(d, 1000) / 7.0 };
	char sql[64];

	snprintf(sql, sizeof sql, "SELECT farm FROM block WHERE id = %d", (int)t.block);
	t.farm = store_number(d->desk->book, sql, 0);
	t.order = t.id ? 1 + roll(d, 5) : 0;
	name(d, t.label);
	return book_put_trap(d->desk->book, &t, e);
}

static inline bool put_pest(struct dice *d, struct err *e)
{
	struct pest p = { .id = any(d, "pest"), .retired = roll(d, 4) == 0 };

	if (roll(d, 2))
		p.heat = (struct heat){ 'C', roll(d, 300) / 10.0, (double)NAN, "sine",
			"none", "" };
	name(d, p.code);
	return book_put_pest(d->desk->book, &p, e);
}

static inline struct stock stock(struct dice *d)
{
	if (roll(d, 2))
		return (struct stock){ 0 };
	return (struct stock){ roll(d, 50), DAY0 + roll(d, 9), roll(d, 9) - 1 };
}

static inline bool put_lure(struct dice *d, struct err *e)
{
	struct lure_kind k = { .id = any(d, "lure"),
		.pest = any(d, "pest"),
		.life_days = 1 + roll(d, 60),
		.stock = stock(d),
		.retired = roll(d, 4) == 0 };

	name(d, k.name);
	return book_put_lure(d->desk->book, &k, e);
}

static inline bool put_card(struct dice *d, struct err *e)
{
	struct card_kind k = { .id = any(d, "card"),
		.life_days = 1 + roll(d, 60),
		.stir_at = 1 + roll(d, 20),
		.change_at = 25,
		.floor_at = 50,
		.stock = stock(d),
		.retired = roll(d, 4) == 0 };

	name(d, k.name);
	return book_put_card(d->desk->book, &k, e);
}

static inline bool put_rule(struct dice *d, struct err *e)
{
	struct rule r = { .id = any(d, "threshold"),
		.pest = any(d, "pest"),
		.farm = any(d, "farm"),
		.block = any(d, "block"),
		.lure = any(d, "lure"),
		.measure = MEASURE_TRAP_WEEK,
		.span = 1 + roll(d, 8),
		.value_x100 = roll(d, 900) };

	name(d, r.note);
	return book_put_rule(d->desk->book, &r, e);
}

static inline bool put_station(struct dice *d, struct err *e)
{
	struct station s = { .id = any(d, "station"),
		.has_position = roll(d, 2),
		.lat = roll(d, 90) / 3.0,
		.lon = roll(d, 90) / 3.0 };

	name(d, s.name);
	return book_put_station(d->desk->book, &s, e);
}

static inline bool put_biofix(struct dice *d, struct err *e)
{
	struct biofix_date x = { .farm = any(d, "farm"),
		.pest = any(d, "pest"),
		.season = 2024 + roll(d, 2),
		.day = DAY0 + roll(d, 99) };

	return book_put_biofix(d->desk->book, &x, e);
}

static inline bool put_treatment(struct dice *d, struct err *e)
{
	struct treatment t = treatment_blank;

	t.id = any(d, "treatment");
	t.block = any(d, "block");
	t.pest = any(d, "pest");
	t.day = DAY0 + roll(d, 99);

	return book_put_treatment(d->desk->book, &t, e);
}

static inline bool put_source(struct dice *d, struct err *e)
{
	struct source s = { .id = any(d, "place"), .farm = any(d, "farm") };

	name(d, s.name);
	return book_put_source(d->desk->book, &s, e);
}

static inline bool put_setting(struct dice *d, struct err *e)
{
	static const char *const names[] = { "read_num", "read_den", "join_nights",
		"long_nights", "scout" };
	const char *name = names[roll(d, 5)];
	char value[8];

	snprintf(value, sizeof value, "%d", 1 + roll(d, name[0] == 'r' ? 4 : 16));
	return book_put_setting(d->desk->book, name, value, e);
}

static inline bool save_visit(struct dice *d, struct err *e)
{
	struct visit v =
		counted(any(d, "trap"), DAY0 + roll(d, DAYS), (int32_t)roll(d, 50));
	struct visit_words w = { "", "" };

	v.new_lure = roll(d, 4) ? 0 : any(d, "lure");
	v.new_card = roll(d, 4) ? 0 : any(d, "card");
	name(d, w.note);
	return book_save_visit(d->desk->book, &v, &w, e);
}

static inline bool remove_visit(struct dice *d, struct err *e)
{
	return book_remove_visit(
		d->desk->book, any(d, "trap"), DAY0 + roll(d, DAYS), e);
}

static inline bool save_weather(struct dice *d, struct err *e)
{
	struct weather_day w = { any(d, "station"), DAY0 + roll(d, DAYS),
		roll(d, 100) / 10.0, 20 + roll(d, 100) / 7.0, roll(d, 2) ? 'C' : 'F' };

	return book_save_weather(d->desk->book, &w, e);
}

static inline bool remove_weather(struct dice *d, struct err *e)
{
	return book_remove_weather(
		d->desk->book, any(d, "station"), DAY0 + roll(d, DAYS), e);
}

static inline bool remove_row(struct dice *d, struct err *e)
{
	static const char *const tables[] = { "farm", "block", "trap", "pest", "lure",
		"card", "threshold", "station", "biofix", "setting", "place", "pick" };
	const char *table = tables[roll(d, 12)];

	return book_remove(d->desk->book, table, any(d, table), e);
}

static inline bool swap(struct dice *d, struct err *e)
{
	return book_swap_traps(d->desk->book, any(d, "trap"), any(d, "trap"), e);
}

/* Past the program, as another one would: there is no step number then. */
static inline bool pick_and_check(struct dice *d, struct err *e)
{
	char sql[512];

	(void)e;
	snprintf(sql, sizeof sql,
		roll(d, 2) ? "INSERT INTO pick (block, day, note, uid, changed_at, "
			     "changed_by) VALUES (%d, '2024-08-2%d', '', "
			     "randomblob(16), '2024-08-20T07:42:11.123Z', '')"
			   : "INSERT INTO fruit_check (block, day, looked_at, entered, "
			     "uid, changed_at, changed_by) VALUES (%d, '2024-08-2%d', "
			     "300, 2, randomblob(16), '2024-08-20T07:42:11.123Z', '')",
		(int)any(d, "block"), roll(d, 10));
	return raw(d->desk->book, sql) == SQLITE_OK;
}

static bool (*const edits[])(struct dice *d, struct err *e) = { put_farm, put_block,
	put_trap, put_pest, put_lure, put_card, put_rule, put_station, put_biofix,
	put_treatment, put_source, put_setting, save_visit, save_visit, save_visit,
	remove_visit, save_weather, save_weather, remove_weather, remove_row,
	remove_row, swap, pick_and_check };

static inline void edit(struct dice *d)
{
	struct err err = { 0 };

	if (edits[roll(d, sizeof edits / sizeof *edits)](d, &err))
		d->done++;
	else if (err.kind == ERR_BOOK)
		fail_msg("seed %u: %s", d->seed, err.text);
}

/* Now and then several together, kept or given up. */
static inline void edit_group(struct dice *d)
{
	must(book_begin(d->desk->book, e));
	for (int i = roll(d, 5); i >= 0; i--)
		edit(d);
	if (roll(d, 4))
		must(book_commit(d->desk->book, e));
	else
		book_rollback(d->desk->book);
}

#endif
