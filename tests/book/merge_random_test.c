/* Random books that part and are merged: in any order, any number of times, the same
 * comes out. MERGE_SEED and MERGE_PAIRS choose others and more: a change of how books are
 * merged is tried with MERGE_PAIRS=1000. */
#include "merging.h"

#include <stdlib.h>

static unsigned first_seed(void)
{
	const char *given = getenv("MERGE_SEED");

	return given ? (unsigned)strtoul(given, NULL, 10) : 1;
}

static unsigned pairs(void)
{
	const char *given = getenv("MERGE_PAIRS");

	if (given)
		return (unsigned)strtoul(given, NULL, 10);
	return getenv("SANITIZED") ? 10 : 100;
}

/* A book with some entries, as the start of others. */
static void begin(struct dice *d, struct desk *desk, unsigned seed)
{
	*d = (struct dice){ desk, seed, 0 };
	*desk = (struct desk){ 0 };
	must(desk->book = book_open(":memory:", BOOK_CREATE, "JR", e));
	if (roll(d, 3))
		desk_fill(desk);
}

static void go_on(struct shelf *s, const char *from, struct dice *d, const char *who,
	char out[static 96])
{
	struct desk desk = { 0 };
	int n = 5 + roll(d, 40);

	shelf_copy(s, from, out);
	must(desk.book = book_open(out, BOOK_EXISTING, who, e));
	must(book_begin(desk.book, e));
	d->desk = &desk;
	for (int i = 0; i < n; i++) {
		edit(d);
		if (roll(d, 4) == 0) {
			must(book_commit(desk.book, e));
			must(book_begin(desk.book, e));
		}
	}
	must(book_commit(desk.book, e));
	book_close(desk.book);
}

/* Three books: parted from one, or some of them begun alone. */
static void three_books(struct shelf *s, unsigned seed, char out[static 3][96])
{
	static const char *const who[] = { "JR", "MB", "JR" };
	struct dice d;
	char base[96];

	for (unsigned i = 0; i < 3; i++) {
		if (i == 0 || seed % 4 == i) {
			struct desk desk;
			begin(&d, &desk, seed * 7 + i);
			for (int j = roll(&d, 30); j > 0; j--)
				edit(&d);
			shelf_put(s, desk.book, base);
			desk_clear(&desk);
		}
		go_on(s, base, &d, who[i], out[i]);
	}
}

/* False: these two do not go together, and nothing was changed. */
static bool merge(const char *into, const char *from, unsigned seed)
{
	struct merge_report report = { 0 };
	struct book *b;
	struct err err = { 0 };

	must(b = book_open(into, BOOK_EXISTING, "", e));
	bool ok = book_merge(b, from, &report, &err);
	if (!ok && err.kind != ERR_INPUT)
		fail_msg("seed %u: %s", seed, err.text);
	book_merge_free(&report);
	book_close(b);
	return ok;
}

static char *content_of(const char *path)
{
	struct book *b;

	must(b = book_open(path, BOOK_READ, "", e));
	char *content = book_content(b);
	book_close(b);
	return content;
}

static int faults_of(const char *path)
{
	int found, faults = 0;
	struct book *b;

	must(b = book_open(path, BOOK_READ, "", e));
	must(book_check(b, 99999, tell_fault, &faults, &found, e));
	book_close(b);
	return faults;
}

/* Unless one of the books was at fault before. */
static void assert_sound(const char *path, char from[static 3][96], unsigned seed)
{
	int before = 0, now = faults_of(path);

	for (int i = 0; now > 0 && i < 3; i++)
		before += faults_of(from[i]);
	if (now > 0 && before == 0)
		fail_msg("seed %u: %d findings", seed, now);
}

static void assert_alike(const char *a, const char *b, const char *why, unsigned seed)
{
	char *x = content_of(a), *y = content_of(b);

	assert_same_content(x, y, why, seed);
	free(x);
	free(y);
}

static void again_changes_nothing(const char *into, const char *from, unsigned seed)
{
	struct merge_report report = { 0 };
	struct book *b;
	char *before = content_of(into);

	must(b = book_open(into, BOOK_EXISTING, "", e));
	must(book_merge(b, from, &report, e));
	char *after = book_content(b);
	assert_same_content(after, before, "merged again", seed);
	if (!report.nothing_new)
		fail_msg("seed %u: merged again, something was written", seed);
	free(before);
	free(after);
	book_merge_free(&report);
	book_close(b);
}

static bool try_three(struct shelf *s, unsigned seed)
{
	char book[3][96], ab[96], ba[96], abc[96], bc[96], cba[96];

	three_books(s, seed, book);
	shelf_copy(s, book[0], ab);
	shelf_copy(s, book[1], ba);
	shelf_copy(s, book[1], bc);
	bool ok = merge(ab, book[1], seed);
	if (merge(ba, book[0], seed) != ok)
		fail_msg("seed %u: one order is refused, the other is not", seed);
	if (!ok)
		return false;
	assert_alike(ab, ba, "A + B is not B + A", seed);
	again_changes_nothing(ab, book[1], seed);
	again_changes_nothing(ab, book[0], seed);
	again_changes_nothing(ab, ba, seed);
	shelf_copy(s, ab, abc);
	if (!merge(bc, book[2], seed) || !merge(abc, book[2], seed))
		return false;
	shelf_copy(s, bc, cba);
	if (!merge(cba, book[0], seed))
		return false;
	assert_sound(abc, book, seed);
	assert_alike(abc, cba, "(A + B) + C is not (B + C) + A", seed);
	if (!merge(ba, bc, seed))
		return false;
	assert_alike(abc, ba, "(A + B) + C is not (B + A) + (B + C)", seed);
	return true;
}

static void merging_is_a_join_of_books(void **state)
{
	unsigned merged = 0, n = pairs();

	(void)state;
	for (unsigned seed = first_seed(); seed < first_seed() + n; seed++) {
		struct shelf s;
		shelf_make(&s);
		merged += try_three(&s, seed);
		drop_folder(s.folder);
	}
	print_message("seeds %u..%u: %u merged, %u refused\n", first_seed(),
		first_seed() + n - 1, merged, n - merged);
	assert_true(merged > n * 3 / 4);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(merging_is_a_join_of_books),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
