/* Two programs write into one book at the same time, entry by entry. */
#include "fixture.h"

#include "book/steps.h"

#include <sys/wait.h>

enum { EDITS = 500, DAY0 = 20000, TRIES = 200 };

/* What one of the programs works with: `mine` in its names tells the two apart. */
struct program {
	struct book *book;
	const struct desk *desk;
	char mine;
	int n; /* the entry under way */
};

static void name_it(const struct program *p, char *out)
{
	snprintf(out, CODE_BYTES, "%c%d", p->mine, p->n);
}

static bool enter_farm(struct program *p, struct err *e)
{
	struct farm f = { .season_start = 101 };

	name_it(p, f.name);
	return book_put_farm(p->book, &f, e);
}

static bool enter_block(struct program *p, struct err *e)
{
	struct block b = { .farm = p->desk->farm, .area_x100 = p->n };

	name_it(p, b.name);
	return book_put_block(p->book, &b, e);
}

/* Two entries that only make sense together. */
static bool enter_trap(struct program *p, struct err *e)
{
	struct trap t = {
		.farm = p->desk->farm, .block = p->desk->block, .pest = p->desk->pest
	};
	bool ok;

	name_it(p, t.label);
	if (!book_begin(p->book, e))
		return false;
	ok = book_put_trap(p->book, &t, e);
	struct visit hung = without_count(t.id, DAY0, OUTCOME_HUNG);
	ok = ok && book_save_visit(p->book, &hung, NULL, e);
	if (ok)
		return book_commit(p->book, e);
	book_rollback(p->book);
	return false;
}

static bool enter_kind(struct program *p, struct err *e)
{
	struct lure_kind l = { .life_days = 21, .stock = { 5, DAY0, -1 } };
	struct pest t = { .name = "test moth" };

	name_it(p, l.name);
	name_it(p, t.code);
	return p->n % 2 ? book_put_lure(p->book, &l, e) : book_put_pest(p->book, &t, e);
}

/* A day of its own of the trap that both count at. */
static bool enter_visit(struct program *p, struct err *e)
{
	struct visit v =
		counted(p->desk->trap, DAY0 + 2 * p->n + (p->mine == 'b'), p->n % 100);

	return book_save_visit(p->book, &v, NULL, e);
}

/* The row that both correct over and over. */
static bool correct_block(struct program *p, struct err *e)
{
	struct block b = {
		.id = p->desk->block, .farm = p->desk->farm, .area_x100 = p->n
	};

	name_it(p, b.name);
	strcat(b.name, "+");
	return book_put_block(p->book, &b, e);
}

static bool (*const entries[])(struct program *p, struct err *e) = { enter_farm,
	enter_block, enter_trap, enter_kind, enter_visit, correct_block };

enum { KINDS = sizeof entries / sizeof *entries };

/* A refusal because the other one was writing is tried again, as a person would. */
static bool enter(struct program *p)
{
	struct err err = { 0 };

	for (int i = 0; i < TRIES; i++) {
		if (entries[p->n % KINDS](p, &err))
			return true;
		if (!strstr(err.text, "another program is using the book"))
			break;
	}
	fprintf(stderr, "%c %d: %s\n", p->mine, p->n, err.text);
	return false;
}

/* In a child: its exit status says how it went. */
static int work(const struct desk *d, char mine, int word)
{
	const char who[] = { mine, '\0' };
	struct program p = { .desk = d, .mine = mine };
	struct err e = { 0 };
	char go;
	bool ok;

	for (int i = 0; !p.book && i < TRIES; i++)
		p.book = book_open(d->path, BOOK_EXISTING, who, &e);
	if (!p.book)
		fprintf(stderr, "%c: %s\n", mine, e.text);
	ok = p.book && read(word, &go, 1) == 0; /* the end of the pipe */
	for (p.n = 0; ok && p.n < EDITS; p.n++)
		ok = enter(&p);
	book_close(p.book);
	return ok ? 0 : 1;
}

static void run_both(const struct desk *d)
{
	int word[2], status, failed = 0;

	assert_int_equal(pipe(word), 0);
	for (int i = 0; i < 2; i++) {
		if (fork() != 0)
			continue;
		close(word[1]);
		_exit(work(d, "ab"[i], word[0]));
	}
	close(word[0]);
	close(word[1]);
	for (int i = 0; i < 2; i++) {
		assert_true(wait(&status) > 0);
		failed += status != 0;
	}
	assert_int_equal(failed, 0);
}

static int64_t of(struct book *b, const char *sql, int kind)
{
	int64_t want = 0;

	for (int n = 0; n < EDITS; n++)
		want += n % KINDS == kind;
	int64_t got = store_number(b, sql, -1);
	if (got != 2 * want)
		fail_msg("%s: %d, not %d", sql, (int)got, (int)(2 * want));
	return want;
}

static void tell(void *arg, const char *text)
{
	(void)arg;
	print_error("%s\n", text);
}

/* Each correction of the row that both correct is a step with its author. */
static void expect_corrections(struct desk *d, int64_t each)
{
	struct row_changes got = { 0 };
	int64_t a = 0, b = 0;

	must(book_row_changes(d->book, "block", d->block, &got, e));
	for (size_t i = 0; i < got.n; i++) {
		if (strcmp(got.items[i].field, "name") != 0)
			continue;
		a += strcmp(got.items[i].changed_by, "a") == 0;
		b += strcmp(got.items[i].changed_by, "b") == 0;
		assert_int_equal(got.items[i].after[0], got.items[i].changed_by[0]);
	}
	assert_int_equal(a, each);
	assert_int_equal(b, each);
	free(got.items);
}

static void two_programs_lose_nothing_of_each_other(void **state)
{
	struct desk d;
	int found;

	(void)state;
	desk_disk(&d);
	struct visit hung = without_count(d.trap, DAY0 - 1, OUTCOME_HUNG);
	must(book_save_visit(d.book, &hung, NULL, e));
	book_close(d.book);
	d.book = NULL;
	run_both(&d);
	must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
	must(book_check(d.book, DAY0 + 9999, tell, NULL, &found, e));
	assert_int_equal(found, 0);
	of(d.book, "SELECT count(*) FROM farm WHERE name GLOB '[ab][0-9]*'", 0);
	of(d.book,
		"SELECT count(*) FROM block WHERE name GLOB '[ab][0-9]*' AND name "
		"NOT LIKE '%+'",
		1);
	of(d.book, "SELECT count(*) FROM trap WHERE label GLOB '[ab][0-9]*'", 2);
	of(d.book,
		"SELECT count(*) FROM visit v JOIN trap t ON t.id = v.trap WHERE "
		"v.outcome = 'hung' AND t.label <> '1'",
		2);
	of(d.book,
		"SELECT (SELECT count(*) FROM lure WHERE name GLOB '[ab][0-9]*') + "
		"(SELECT count(*) FROM pest WHERE code GLOB '[ab][0-9]*')",
		3);
	of(d.book, "SELECT count(*) FROM visit WHERE outcome = 'counted'", 4);
	int64_t each = of(d.book,
		"SELECT count(*) FROM history WHERE kind = 'block' AND "
		"op = 'update'",
		5);
	expect_corrections(&d, each);
	/* The two of a group lie in one step, whatever went on beside it. */
	of(d.book,
		"SELECT count(*) FROM history t JOIN history v ON v.step = t.step "
		"WHERE t.kind = 'trap' AND v.kind = 'visit' AND t.by IN ('a', 'b') "
		"AND v.by = t.by",
		2);
	assert_int_equal(store_number(d.book,
				 "SELECT count(*) FROM history GROUP BY step HAVING "
				 "count(DISTINCT by) > 1",
				 0),
		0);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(two_programs_lose_nothing_of_each_other),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
