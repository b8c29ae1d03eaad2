/* Random books that part and are merged: in any order, any number of times, the same
 * comes out. MERGE_SEED and MERGE_PAIRS choose others and more: a change of how books
 * are merged is tried with MERGE_PAIRS=1000. */
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
	return getenv("SANITIZED") ? 6 : 40;
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

/* Sound books always go together: nobody is sent away. */
static void merge(const char *into, const char *from, unsigned seed)
{
	struct merge_report report = { 0 };
	struct book *b;
	struct err err = { 0 };

	must(b = book_open(into, BOOK_EXISTING, "", e));
	if (!book_merge(b, from, &report, &err))
		fail_msg("seed %u: %s", seed, err.text);
	book_merge_free(&report);
	book_close(b);
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

struct seen { /* of what could not simply be joined */
	unsigned pests, settings;
	unsigned anew; /* settings that were set aside and set anew */
};

static void look(const char *path, struct seen *seen)
{
	struct book *b;

	must(b = book_open(path, BOOK_READ, "", e));
	seen->pests += store_number(b,
			       "SELECT EXISTS (SELECT 1 FROM trap t JOIN history h "
			       "ON h.uid = t.uid WHERE h.undoes = -2)",
			       0) != 0;
	seen->settings += store_number(b,
				  "SELECT EXISTS (SELECT 1 FROM aside WHERE kind = "
				  "'setting')",
				  0) != 0;
	seen->anew += store_number(b,
			      "SELECT EXISTS (SELECT 1 FROM aside a JOIN setting s ON "
			      "s.name = json_extract(a.old, '$.name') WHERE a.kind = "
			      "'setting')",
			      0) != 0;
	book_close(b);
}

static void set(const char *path, const char *name, const char *value)
{
	struct err err = { 0 };
	struct book *b;

	must(b = book_open(path, BOOK_EXISTING, "MB", e));
	if (!book_put_setting(b, name, value, &err))
		assert_int_equal(err.kind, ERR_INPUT);
	book_close(b);
}

/* Each goes with the others of its book. */
static void set_what_does_not_go_together(char book[static 3][96])
{
	set(book[0], "long_nights", "25");
	set(book[0], "join_nights", "20");
	set(book[1], "long_nights", "12");
}

/* A setting that waits in aside is set in its book too. */
static void set_anew(const char *path, const char *value)
{
	char name[NAME_BYTES] = "";
	struct book *b;
	struct query q;

	must(b = book_open(path, BOOK_READ, "", e));
	query_start_once(&q, b,
		"SELECT json_extract(old, '$.name') FROM aside WHERE kind = 'setting' "
		"ORDER BY uid");
	if (query_row(&q))
		query_get_copy(&q, name, sizeof name);
	must(query_end(&q, "", e));
	book_close(b);
	if (*name)
		set(path, name, value);
}

/* Two books that were merged go on apart, and are merged again. */
static void try_again(struct shelf *s, const char *ab, const char *ba, const char *c,
	unsigned seed, struct seen *seen)
{
	struct dice d = { NULL, seed * 31 + 5, 0 };
	char a2[96], b2[96], x[96], y[96], z[96];

	go_on(s, ab, &d, "JR", a2);
	go_on(s, ba, &d, "MB", b2);
	set_anew(a2, "2");
	if (seed % 2 == 0)
		set_anew(b2, "9");
	shelf_copy(s, a2, x);
	shelf_copy(s, b2, y);
	shelf_copy(s, c, z);
	merge(x, b2, seed);
	merge(y, a2, seed);
	assert_alike(x, y, "merged once more, A + B is not B + A", seed);
	again_changes_nothing(x, b2, seed);
	merge(z, x, seed);
	merge(x, c, seed);
	assert_alike(x, z, "merged once more, A + C is not C + A", seed);
	merge(y, z, seed);
	assert_alike(y, z, "merged once more, A + (A + C) is not A + C", seed);
	look(x, seen);
}

static void try_three(struct shelf *s, unsigned seed, struct seen *seen)
{
	char book[3][96], ab[96], ba[96], abc[96], bc[96], cba[96];

	three_books(s, seed, book);
	if (seed % 3 == 0)
		set_what_does_not_go_together(book);
	shelf_copy(s, book[0], ab);
	shelf_copy(s, book[1], ba);
	shelf_copy(s, book[1], bc);
	merge(ab, book[1], seed);
	merge(ba, book[0], seed);
	assert_alike(ab, ba, "A + B is not B + A", seed);
	again_changes_nothing(ab, book[1], seed);
	again_changes_nothing(ab, book[0], seed);
	again_changes_nothing(ab, ba, seed);
	try_again(s, ab, ba, book[2], seed, seen);
	shelf_copy(s, ab, abc);
	merge(bc, book[2], seed);
	merge(abc, book[2], seed);
	shelf_copy(s, bc, cba);
	merge(cba, book[0], seed);
	assert_sound(abc, book, seed);
	assert_alike(abc, cba, "(A + B) + C is not (B + C) + A", seed);
	merge(ba, bc, seed);
	assert_alike(abc, ba, "(A + B) + C is not (B + A) + (B + C)", seed);
	look(abc, seen);
}

static void merging_is_a_join_of_books(void **state)
{
	struct seen seen = { 0 };
	unsigned n = pairs();

	(void)state;
	for (unsigned seed = first_seed(); seed < first_seed() + n; seed++) {
		struct shelf s;
		shelf_make(&s);
		try_three(&s, seed, &seen);
		drop_folder(s.folder);
	}
	print_message("seeds %u..%u: %u pairs and %u trios merged, none refused; %u "
		      "with a trap of two pests, %u with settings set aside, %u of "
		      "them set anew\n",
		first_seed(), first_seed() + n - 1, n, n, seen.pests, seen.settings,
		seen.anew);
	assert_true(n < 40 || (seen.settings > 0 && seen.anew > 0));
	assert_true(n < 100 || seen.pests > 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(merging_is_a_join_of_books),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
