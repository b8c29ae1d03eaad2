/* desk.h - a book and files for the tests of exchange: texts taken in, given out. */
#ifndef TESTS_EXCHANGE_DESK_H
#define TESTS_EXCHANGE_DESK_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/mem.h"
#include "base/text.h"
#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"
#include "exchange/exchange.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TODAY "2026-07-21"

static inline int32_t day_of(const char *iso)
{
	int32_t day = DAY_NONE;

	if (!day_parse(iso, &day))
		fail_msg("%s is no day", iso);
	return day;
}

static inline struct book *new_book(void)
{
	struct err e = { 0 };
	struct book *b = book_open(":memory:", BOOK_CREATE, "QX", &e);

	if (!b)
		fail_msg("%s", e.text);
	return b;
}

/* Takes n bytes in as file.csv; out may be NULL. */
static inline bool take_bytes(struct book *b, const char *kind, const char *bytes,
	size_t n, struct imported *out, struct err *e)
{
	struct imported own = { 0 }, *into = out ? out : &own;
	struct import_from from = { .name = "file.csv", .today = day_of(TODAY) };
	char *copy = mem_new(n + 1, 1); /* fmemopen refuses none and adds NULs */

	memcpy(copy, bytes, n);
	from.file = n ? fmemopen(copy, n, "r") : fopen("/dev/null", "r");
	assert_non_null(from.file);
	bool ok = exchange_import(b, kind_find(kind, NULL), &from, into, e);
	fclose(from.file);
	free(copy);
	if (!out)
		imported_free(&own);
	return ok;
}

static inline bool take(struct book *b, const char *kind, const char *text,
	struct imported *out, struct err *e)
{
	return take_bytes(b, kind, text, strlen(text), out, e);
}

/* Takes it in and fails the test when it does not go in. */
static inline void must_take(struct book *b, const char *kind, const char *text)
{
	struct imported out = { 0 };
	struct err e = { 0 };

	if (!take(b, kind, text, &out, &e))
		fail_msg("%s: %s; %s", kind, e.text,
			out.problems.n ? out.problems.items[0] : "");
	imported_free(&out);
}

static inline bool to_buf(void *arg, struct buf *text, struct err *e)
{
	(void)e;
	buf_add_n(arg, text->text, text->n);
	buf_clear(text);
	return true;
}

/* The kind as a file; the caller frees it. */
static inline char *give(struct book *b, const char *kind)
{
	struct buf all = { 0 };
	struct err e = { 0 };

	if (!exchange_export(b, kind_find(kind, NULL), to_buf, &all, &e))
		fail_msg("%s: %s", kind, e.text);
	return all.text;
}

/* Everything in the book, so that any change shows. */
static inline char *give_all(struct book *b)
{
	struct buf all = { 0 };

	for (size_t i = 0; kinds[i]; i++) {
		char *one = give(b, kinds[i]->name);
		buf_add(&all, one);
		free(one);
	}
	return all.text;
}

static inline void expect_text(const char *why, const char *got, const char *want)
{
	if (strcmp(got, want) != 0)
		fail_msg("%s: got\n%s\nwanted\n%s", why, got, want);
}

/* The first complaint: a row's, else the file's. */
static inline const char *complaint(const struct imported *out, const struct err *e)
{
	return out->problems.n ? out->problems.items[0] : e->text;
}

/* One text that must be refused with that complaint and change nothing. */
static inline void expect_refused(struct book *b, const char *kind, const char *why,
	const char *text, const char *want)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	char *before = give_all(b);

	if (take(b, kind, text, &out, &e))
		fail_msg("%s: was taken in", why);
	if (e.kind != ERR_INPUT)
		fail_msg("%s: kind %d: %s", why, (int)e.kind, e.text);
	expect_text(why, complaint(&out, &e), want);
	char *after = give_all(b);
	expect_text(why, after, before);
	free(before);
	free(after);
	imported_free(&out);
}

/* A book with two farms; trap 1 of Quarle Top was hung on 1 May. */
static inline struct book *farm_book(void)
{
	struct book *b = new_book();

	must_take(b, "traps",
		"farm,block,trap,pest,lure,card,condition,crop,hung\n"
		"Quarle Top,Slip,1,CM,CM 1 mg,delta liner,conventional,apple,"
		"2026-05-01\n"
		"Quarle Top,Slip,2,CM,CM 1 mg,delta liner,conventional,apple,\n"
		"Quarle Top,Bank,3,OFM,OFM standard,delta liner,disrupted,peach,\n"
		"Nethermoss,Slip,1,CM,CM long-life,wing bottom,,,\n");
	return b;
}

#endif
