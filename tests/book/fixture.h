/* fixture.h - books for the tests of the book layer: in memory, or in a folder of
 * their own that is removed afterwards. */
#ifndef TESTS_BOOK_FIXTURE_H
#define TESTS_BOOK_FIXTURE_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../../src/book/query.h"
#include "../folder.h"
#include "book/acts.h"
#include "book/diary.h"
#include "book/places.h"
#include "book/rules.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

struct desk {
	char folder[64], path[96];
	struct book *book;
	int64_t farm, block, trap, pest, other_pest, lure, other_lure, card;
};

#define must(call)                                                                     \
	do {                                                                           \
		struct err must_err = { 0 }, *e = &must_err;                           \
		if (!(call))                                                           \
			fail_msg("%s: %s", #call, must_err.text);                      \
	} while (0)

/* The call fails with this kind, and its sentence holds `words`. */
#define refused(call, want_kind, words)                                                \
	do {                                                                           \
		struct err refused_err = { 0 }, *e = &refused_err;                     \
		if (call)                                                              \
			fail_msg("%s: not refused", #call);                            \
		if (refused_err.kind != (want_kind) ||                                 \
			!strstr(refused_err.text, words) ||                            \
			strchr(refused_err.text, '\n'))                                \
			fail_msg("%s: kind %d, \"%s\"", #call, refused_err.kind,       \
				refused_err.text);                                     \
	} while (0)

static inline void drop_folder(const char *folder)
{
	struct dirent *entry;
	char path[512];
	DIR *dir = opendir(folder);

	if (!dir)
		return;
	while ((entry = readdir(dir))) {
		if (strcmp(entry->d_name, ".") == 0 || strcmp(entry->d_name, "..") == 0)
			continue;
		int n = snprintf(path, sizeof path, "%s/%s", folder, entry->d_name);
		if (n < (int)sizeof path && remove(path) != 0)
			drop_folder(path);
	}
	closedir(dir);
	remove(folder);
}

static inline void desk_folder(struct desk *d)
{
	*d = (struct desk){ 0 };
	folder_make(d->folder, sizeof d->folder, "book-test");
	snprintf(d->path, sizeof d->path, "%s/book.db", d->folder);
}

static inline void desk_fill(struct desk *d)
{
	struct farm f = { .name = "Hollow Reach", .season_start = 101 };
	struct pest p = { .code = "T1", .name = "test moth" };
	struct pest o = { .code = "T2", .name = "other moth" };
	struct card_kind c = { .name = "test card",
		.life_days = 30,
		.stir_at = 20,
		.change_at = 30,
		.floor_at = 50 };

	must(book_put_farm(d->book, &f, e));
	must(book_put_pest(d->book, &p, e));
	must(book_put_pest(d->book, &o, e));
	must(book_put_card(d->book, &c, e));
	struct lure_kind l = { .name = "T1 test", .pest = p.id, .life_days = 21 };
	struct lure_kind m = { .name = "T2 test", .pest = o.id, .life_days = 28 };
	must(book_put_lure(d->book, &l, e));
	must(book_put_lure(d->book, &m, e));
	struct block b = { .farm = f.id, .name = "Long rows", .area_x100 = -1 };
	must(book_put_block(d->book, &b, e));
	struct trap t = { .farm = f.id,
		.block = b.id,
		.pest = p.id,
		.label = "1",
		.lure = l.id,
		.card = c.id };
	must(book_put_trap(d->book, &t, e));
	d->farm = f.id;
	d->block = b.id;
	d->trap = t.id;
	d->pest = p.id;
	d->other_pest = o.id;
	d->lure = l.id;
	d->other_lure = m.id;
	d->card = c.id;
}

/* A filled book in memory. */
static inline void desk_memory(struct desk *d)
{
	*d = (struct desk){ 0 };
	must(d->book = book_open(":memory:", BOOK_CREATE, "JR", e));
	desk_fill(d);
}

/* A filled book on disk. */
static inline void desk_disk(struct desk *d)
{
	desk_folder(d);
	must(d->book = book_open(d->path, BOOK_CREATE, "JR", e));
	desk_fill(d);
}

static inline void desk_clear(struct desk *d)
{
	book_close(d->book);
	d->book = NULL;
	if (*d->folder)
		drop_folder(d->folder);
}

static inline int64_t desk_add_trap(struct desk *d, const char *label)
{
	struct trap t = { .farm = d->farm, .block = d->block, .pest = d->pest };

	snprintf(t.label, sizeof t.label, "%s", label);
	must(book_put_trap(d->book, &t, e));
	return t.id;
}

static inline struct visit counted(int64_t trap, int32_t day, int32_t count)
{
	return (struct visit){ .trap = trap,
		.day = day,
		.outcome = OUTCOME_COUNTED,
		.count = count,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
}

static inline struct visit without_count(int64_t trap, int32_t day, enum outcome o)
{
	struct visit v = counted(trap, day, COUNT_NONE);

	v.outcome = o;
	return v;
}

/* Runs SQL past the book's functions, with everything that SQLite checks. */
static inline int raw(struct book *b, const char *sql)
{
	return sqlite3_exec(b->db, sql, NULL, NULL, NULL);
}

/* A whole file; *n is its size. Freed by the caller. */
static inline char *file_bytes(const char *path, size_t *n)
{
	FILE *f = fopen(path, "rb");
	struct stat st;

	assert_non_null(f);
	assert_int_equal(fstat(fileno(f), &st), 0);
	*n = (size_t)st.st_size;
	char *bytes = malloc(*n + 1);
	assert_non_null(bytes);
	assert_int_equal(fread(bytes, 1, *n, f), *n);
	fclose(f);
	return bytes;
}

static inline void file_write(const char *path, const void *bytes, size_t n)
{
	FILE *f = fopen(path, "wb");

	assert_non_null(f);
	assert_int_equal(fwrite(bytes, 1, n, f), n);
	assert_int_equal(fclose(f), 0);
}

static inline void assert_unchanged(const char *path, const char *bytes, size_t n)
{
	size_t now;
	char *after = file_bytes(path, &now);

	assert_int_equal(now, n);
	assert_memory_equal(after, bytes, n);
	free(after);
}

#endif
