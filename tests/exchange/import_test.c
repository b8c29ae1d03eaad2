#include "desk.h"

#include <sys/stat.h>
#include <unistd.h>

#define PEST_COLUMNS                                                                   \
	"code, name, latin, unit, base, cap, method, cutoff, biofix_rule, dd_source, " \
	"source, retired"

static void a_wrong_header_is_refused_by_name(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "an unknown column", "code,nam\nCM,moth\n",
			"file.csv, line 1, column 2: \"nam\" is no column of pests, "
			"which has: " PEST_COLUMNS },
		{ "a column without a name", "code,\nCM,\n",
			"file.csv, line 1, column 2: \"\" is no column of pests, which "
			"has: " PEST_COLUMNS },
		{ "a doubled column", "code,name,Code\nCM,moth,CM\n",
			"file.csv, line 1: the columns 1 and 3 are both \"code\"; each "
			"may be there once" },
		{ "a needed column is missing", "name,latin\nmoth,m\n",
			"file.csv, line 1: the column code is missing; a file of pests "
			"needs it" },
		{ "nothing at all", "",
			"file.csv is empty; its first row names the columns: " PEST_COLUMNS },
		{ "semicolons", "code;name\nCM;moth\n",
			"file.csv, line 1, column 1: \"code;name\" is no column of "
			"pests, which has: " PEST_COLUMNS },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "pests", row[i].why, row[i].text, row[i].want);
	book_close(b);
}

static void columns_come_in_any_order(void **state)
{
	struct book *b = new_book(), *c = new_book();

	(void)state;
	must_take(b, "pests", "code,name,latin\nQM,quill moth,Penna quieta\n");
	must_take(c, "pests",
		"\xEF\xBB\xBF latin,CODE , name\r\n Penna quieta, QM ,quill moth\r\n");
	char *one = give(b, "pests"), *two = give(c, "pests");
	assert_non_null(strstr(one, "QM,quill moth,Penna quieta,,,,,,,,no\r\n"));
	expect_text("order, case and blanks", two, one);
	free(one);
	free(two);
	book_close(b);
	book_close(c);
}

static void a_torn_row_is_refused(void **state)
{
	struct book *b = new_book();

	(void)state;
	expect_refused(b, "pests", "too short", "code,name,latin\nQM,quill moth\n",
		"file.csv, line 2: the row has 2 values and the header row 3 columns; "
		"each row has one value for each column, empty ones too");
	expect_refused(b, "pests", "too long", "code\nQM,quill moth\n",
		"file.csv, line 2: the row has 2 values and the header row 1 columns; "
		"each row has one value for each column, empty ones too");
	book_close(b);
}

static void every_bad_row_is_named(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_false(take(b, "cards",
		"card,life_days,change_at\n"
		"good,30,30\n"
		",40,\n"
		"long,367,0\n",
		&out, &e));
	assert_int_equal(out.n_problems, 3);
	expect_text("needed", out.problems.items[0],
		"file.csv, line 3, column card: a value is missing; it takes a text of "
		"at most 47 letters in one line (an accented one counts as two)");
	expect_text("range", out.problems.items[1],
		"file.csv, line 4, column life_days: \"367\" is not right; it takes a "
		"whole number from 1 to 366");
	expect_text("range", out.problems.items[2],
		"file.csv, line 4, column change_at: \"0\" is not right; it takes a "
		"whole number from 1 to 9999");
	expect_text("in sum", e.text,
		"file.csv: 3 things are wrong, so nothing was taken in; the book is as "
		"it was");
	imported_free(&out);
	char *cards = give(b, "cards");
	assert_null(strstr(cards, "good"));
	free(cards);
	book_close(b);
}

/* One look at a row names both what does not read and what the book lacks. */
static void wrong_values_hide_no_unknown_names(void **state)
{
	static const struct {
		const char *why, *kind, *text, *want[3];
	} row[] = {
		{ "a visit", "visits",
			"farm,trap,date,count,card\nQuarle Top,9,2026-06-31,5,paper\n",
			{ "column date", "column trap: \"9\" is no trap",
				"column card" } },
		{ "a trap", "traps",
			"farm,block,trap,pest,lure,order\nQuarle Top,Slip,1,XX,YY,0\n",
			{ "column order", "column pest", "column lure" } },
		{ "a threshold", "thresholds",
			"pest,farm,measure,comparator,value\nXX,Quarle,week,>=,5\n",
			{ "column measure", "column pest", "column farm" } },
	};
	struct book *b = farm_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct err e = { 0 };
		assert_false(take(b, row[i].kind, row[i].text, &out, &e));
		if (out.n_problems != 3)
			fail_msg("%s: %d problems", row[i].why, (int)out.n_problems);
		for (int p = 0; p < 3; p++)
			if (!strstr(out.problems.items[p], row[i].want[p]))
				fail_msg("%s: %s", row[i].why, out.problems.items[p]);
		imported_free(&out);
	}
	book_close(b);
}

static void at_most_fifty_are_kept_and_all_counted(void **state)
{
	struct book *b = new_book();
	struct buf text = { 0 };
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	buf_add(&text, "card,life_days\n");
	for (int i = 0; i < 51; i++)
		buf_addf(&text, "c%d,no\n", i);
	assert_false(take(b, "cards", text.text, &out, &e));
	assert_int_equal(out.problems.n, PROBLEMS_MAX);
	assert_int_equal(out.n_problems, 51);
	imported_free(&out);
	buf_free(&text);
	book_close(b);
}

static void a_shown_value_is_short_and_plain(void **state)
{
	struct book *b = new_book();

	(void)state;
	expect_refused(b, "cards", "long",
		"card,life_days\nx,"
		"123456789012345678901234567890123456789012345678901234\n",
		"file.csv, line 2, column life_days: "
		"\"12345678901234567890123456789012345678901234...\" is not right; it "
		"takes a whole number from 1 to 366");
	expect_refused(b, "cards", "a line break in a value",
		"card,life_days\nx,\"1\n2\"\n",
		"file.csv, line 2, column life_days: \"1?2\" is not right; it takes a "
		"whole number from 1 to 366");
	book_close(b);
}

/* The whole of a file, or nothing. */
static char *slurp(const char *path, size_t *n)
{
	FILE *f = fopen(path, "rb");
	struct stat s;

	if (!f || fstat(fileno(f), &s) != 0)
		fail_msg("%s cannot be read", path);
	*n = (size_t)s.st_size;
	char *all = mem_new(*n + 1, 1);
	assert_int_equal(fread(all, 1, *n, f), *n);
	fclose(f);
	return all;
}

struct hostile {
	const char *why, *bytes;
	size_t n;
	const char *want; /* the complaint begins with it */
};

static void expect_untouched(const char *path, struct book *b, const struct hostile *h)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	size_t n_before, n_after;
	char *before = slurp(path, &n_before);

	if (take_bytes(b, "visits", h->bytes, h->n, &out, &e))
		fail_msg("%s: was taken in", h->why);
	assert_int_equal(e.kind, ERR_INPUT);
	const char *said = complaint(&out, &e);
	if (strncmp(said, h->want, strlen(h->want)) != 0)
		fail_msg("%s: \"%s\"", h->why, said);
	for (const char *s = said; *s; s++)
		if ((unsigned char)*s < ' ' || *s == 0x7F)
			fail_msg("%s: a control byte is shown", h->why);
	char *after = slurp(path, &n_after);
	if (n_before != n_after || memcmp(before, after, n_after) != 0)
		fail_msg("%s: the book changed", h->why);
	free(before);
	free(after);
	imported_free(&out);
}

#define HEAD "farm,trap,date,count,note\n"
#define GOOD "Quarle Top,2,2026-07-01,1,\nQuarle Top,2,2026-07-08,1,\n"
#define BYTES(text) text, sizeof text - 1

static void a_bad_file_leaves_the_book_byte_for_byte(void **state)
{
	static const struct hostile row[] = {
		{ "a NUL byte", BYTES(HEAD GOOD "Quarle Top,2,2026-07-15,\0,\n"),
			"file.csv, line 4, column 4: a NUL byte" },
		{ "binary", BYTES("\x89PNG\r\n\x1a\n\0\0"),
			"file.csv, line 1, column 1: " },
		{ "torn UTF-8", BYTES(HEAD GOOD "Quarle Top,2,2026-07-15,3,\xC3\n"),
			"file.csv, line 4, column 5: " },
		{ "a control byte",
			BYTES(HEAD GOOD "Quarle Top,2,2026-07-15,3,\x1B[2J\n"),
			"file.csv, line 4, column 5: \"?[2J\" holds the control" },
		{ "an open quote", BYTES(HEAD GOOD "Quarle Top,2,2026-07-15,3,\"x\n"),
			"file.csv, line 4, column 5: the quote before" },
		{ "an unknown trap", BYTES(HEAD GOOD "Quarle Top,9,2026-07-15,3,\n"),
			"file.csv, line 4, column trap: \"9\" is no trap of Quarle "
			"Top, which has: 1, 2, 3" },
		{ "a wrong date", BYTES(HEAD GOOD "Quarle Top,2,2026-06-31,3,\n"),
			"file.csv, line 4, column date: \"2026-06-31\" is not right" },
		{ "a wrong count", BYTES(HEAD GOOD "Quarle Top,2,2026-07-15,10000,\n"),
			"file.csv, line 4, column count: \"10000\" is not right" },
		{ "a duplicate", BYTES(HEAD GOOD "Quarle Top,2,2026-07-01,1,\n"),
			"file.csv, line 4, column date: \"2026-07-01\" is in the file "
			"twice for this trap, in line 2 too" },
	};
	char folder[512], path[600];
	const char *tmp = getenv("TMPDIR");
	struct err e = { 0 };

	(void)state;
	snprintf(folder, sizeof folder, "%s/exchange-test-XXXXXX", tmp ? tmp : "/tmp");
	assert_non_null(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/book.db", folder);
	struct book *b = book_open(path, BOOK_CREATE, "QX", &e);
	assert_non_null(b);
	must_take(b, "traps",
		"farm,block,trap,pest\nQuarle Top,Slip,1,CM\n"
		"Quarle Top,Slip,2,CM\nQuarle Top,Slip,3,CM\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_untouched(path, b, &row[i]);
	book_close(b);
	unlink(path);
	rmdir(folder);
}

/* More bytes than memory ever holds: one row without an end. */
static void a_huge_row_ends_early(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };
	struct import_from from = { .name = "file.csv", .today = day_of(TODAY) };

	(void)state;
	from.file = popen("yes x | tr -d '\\n' | head -c 1000000000", "r");
	assert_non_null(from.file);
	assert_false(exchange_import(b, kind_find("visits", NULL), &from, &out, &e));
	pclose(from.file);
	assert_int_equal(e.kind, ERR_INPUT);
	assert_non_null(strstr(e.text, "the row is longer than"));
	imported_free(&out);
	book_close(b);
}

static void an_unknown_kind_names_those_that_there_are(void **state)
{
	struct err e = { 0 };

	(void)state;
	assert_null(kind_find("weather reports", &e));
	assert_int_equal(e.kind, ERR_USAGE);
	expect_text("unknown kind", e.text,
		"\"weather reports\" is no kind of file; there are: traps, visits, "
		"thresholds, pests, lures, cards, places, "
		"stations, weather, biofix, farms, blocks, treatments, picks, "
		"fruit-checks, dispensers, answers, settings");
}

static void numbers_are_told_in_thousands(void **state)
{
	static const struct {
		int64_t n;
		const char *want;
	} row[] = { { 0, "0" }, { 999, "999" }, { 1000, "1 000" }, { 1204, "1 204" },
		{ 1040000, "1 040 000" } };
	struct imported i = { .n_new = 1204, .n_same = 12 };
	struct buf out = { 0 };

	(void)state;
	for (size_t r = 0; r < sizeof row / sizeof *row; r++) {
		buf_clear(&out);
		buf_add_thousands(&out, row[r].n);
		expect_text("thousands", out.text, row[r].want);
	}
	buf_clear(&out);
	imported_say(&i, &out);
	expect_text("in sum", out.text, "1 204 new, 12 already there");
	buf_free(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_wrong_header_is_refused_by_name),
		cmocka_unit_test(columns_come_in_any_order),
		cmocka_unit_test(a_torn_row_is_refused),
		cmocka_unit_test(every_bad_row_is_named),
		cmocka_unit_test(wrong_values_hide_no_unknown_names),
		cmocka_unit_test(at_most_fifty_are_kept_and_all_counted),
		cmocka_unit_test(a_shown_value_is_short_and_plain),
		cmocka_unit_test(a_bad_file_leaves_the_book_byte_for_byte),
		cmocka_unit_test(a_huge_row_ends_early),
		cmocka_unit_test(an_unknown_kind_names_those_that_there_are),
		cmocka_unit_test(numbers_are_told_in_thousands),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
