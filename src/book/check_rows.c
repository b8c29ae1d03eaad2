/* check_rows.c - what stands in the rows: can it be read, can it be shown? */
#include "check.h"

#include "visit.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "book/places.h"
#include "book/rules.h"
#include "book/sources.h"
#include "book/weather.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool check_visits(struct finder *f, const char *what, struct err *e)
{
	struct query q;
	char text[256];
	struct visit v;

	query_start(&q, f->book, "SELECT " VISIT_COLUMNS " FROM visit");
	q.table = "visit";
	while (query_row(&q)) {
		visit_read(&q, &v, NULL);
		if (*q.damage == '\0')
			continue;
		snprintf(text, sizeof text, _("a visit cannot be used: %s"), q.damage);
		finder_say(f, text);
		*q.damage = '\0';
		q.code = SQLITE_OK;
	}
	return query_end(&q, what, e);
}

static void say_failure(struct finder *f, bool good, const struct err *e)
{
	if (!good)
		finder_say(f, e->text);
}

static void check_lists(struct finder *f)
{
	struct lure_kinds lures = { 0 };
	struct card_kinds cards = { 0 };
	struct sources sources = { 0 };
	struct blocks blocks = { 0 };
	struct farms farms = { 0 };
	struct traps traps = { 0 };
	struct pests pests = { 0 };
	struct rules rules = { 0 };
	struct book *b = f->book;
	struct limits limits;
	struct err e;

	say_failure(f, book_farms(b, &farms, &e), &e);
	say_failure(f, book_blocks(b, 0, &blocks, &e), &e);
	say_failure(f, book_traps(b, 0, &traps, &e), &e);
	say_failure(f, book_pests(b, &pests, &e), &e);
	say_failure(f, book_lures(b, &lures, &e), &e);
	say_failure(f, book_cards(b, &cards, &e), &e);
	say_failure(f, book_rules(b, &rules, &e), &e);
	say_failure(f, book_sources(b, 0, &sources, &e), &e);
	say_failure(f, book_limits(b, &limits, &e), &e);
	free(farms.items);
	free(blocks.items);
	free(traps.items);
	free(pests.items);
	free(lures.items);
	free(cards.items);
	free(rules.items);
	free(sources.items);
}

static void check_acts(struct finder *f)
{
	int32_t first = VISIT_DAY_FIRST, last = VISIT_DAY_LAST;
	struct treatments treatments = { 0 };
	struct disruptions disruptions = { 0 };
	struct fruit_checks checks = { 0 };
	struct answers answers = { 0 };
	struct picks picks = { 0 };
	struct book *b = f->book;
	struct err e;

	say_failure(f, book_treatments(b, 0, first, last, &treatments, &e), &e);
	say_failure(f, book_picks(b, 0, first, last, &picks, &e), &e);
	say_failure(f, book_fruit_checks(b, 0, first, last, &checks, &e), &e);
	say_failure(f, book_disruptions(b, 0, first, last, &disruptions, &e), &e);
	say_failure(f, book_answers(b, 0, first, last, &answers, &e), &e);
	free(treatments.items);
	free(picks.items);
	free(checks.items);
	free(disruptions.items);
	free(answers.items);
}

static void check_weather(struct finder *f)
{
	struct biofix_dates dates = { 0 };
	struct weather_days days = { 0 };
	struct stations all = { 0 };
	struct book *b = f->book;
	struct err e;

	say_failure(f, book_biofixes(b, &dates, &e), &e);
	say_failure(f, book_stations(b, &all, &e), &e);
	for (size_t i = 0; i < all.n; i++)
		say_failure(f,
			book_weather(b, all.items[i].id, VISIT_DAY_FIRST,
				VISIT_DAY_LAST, &days, &e),
			&e);
	free(dates.items);
	free(days.items);
	free(all.items);
}

bool check_readable(struct finder *f, const char *what, struct err *e)
{
	bool ok = f->passed || check_visits(f, what, e);

	if (!ok)
		return false;
	check_lists(f);
	check_acts(f);
	check_weather(f);
	return true;
}

bool text_harmless(const char *text, size_t n)
{
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(text + at, n - at, &cp);
		if (text_control(cp) || (cp == 0xFFFD && step == 1))
			return false;
	}
	return true;
}

static void check_row(struct finder *f, const char *table, sqlite3_stmt *row)
{
	char text[256];

	for (int i = 0; i < sqlite3_column_count(row); i++) {
		if (sqlite3_column_type(row, i) != SQLITE_TEXT)
			continue;
		const char *value = (const char *)sqlite3_column_text(row, i);
		size_t n = (size_t)sqlite3_column_bytes(row, i);
		if (!value || text_harmless(value, n))
			continue;
		snprintf(text, sizeof text,
			_("in the table %s, %s of row %.20s holds a character that "
			  "cannot be printed"),
			table, sqlite3_column_name(row, i),
			(const char *)sqlite3_column_text(row, 0));
		finder_say(f, text);
	}
}

/* Its own statement: the name of a table cannot be bound. */
static bool check_table(
	struct finder *f, const char *table, const char *what, struct err *e)
{
	sqlite3_stmt *row = NULL;
	char sql[2 * NAME_BYTES];

	sqlite3_snprintf(sizeof sql, sql, "SELECT * FROM \"%w\"", table);
	int code = sqlite3_prepare_v2(f->book->db, sql, -1, &row, NULL);
	while (code == SQLITE_OK && (code = sqlite3_step(row)) == SQLITE_ROW) {
		check_row(f, table, row);
		code = SQLITE_OK;
	}
	sqlite3_finalize(row);
	return code == SQLITE_DONE || store_fail(f->book, code, what, e);
}

bool check_texts(struct finder *f, const char *what, struct err *e)
{
	char table[NAME_BYTES];
	struct query q;
	bool ok = true;

	query_start(&q, f->book,
		"SELECT name FROM sqlite_schema WHERE type = 'table' AND "
		"name NOT LIKE 'sqlite\\_%' ESCAPE '\\'");
	while (ok && query_row(&q)) {
		query_get_copy(&q, table, sizeof table);
		ok = (f->passed && strcmp(f->passed, table) == 0) ||
		     check_table(f, table, what, e);
	}
	return query_end(&q, what, ok ? e : NULL) && ok;
}
