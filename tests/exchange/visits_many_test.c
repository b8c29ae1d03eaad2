/* More visits than are sorted in memory. */
#include "desk.h"

#include "../../src/exchange/visits_parts.h"

#include <signal.h>
#include <sys/resource.h>
#include <unistd.h>

enum {
	TRAPS = 9,
	DAYS = 12300, /* from 1990 on; 110 700 visits */
	ROWS = TRAPS * DAYS,
};
#define HEAD                                                                           \
	"farm,trap,date,outcome,reason,count,females,others,card,lure,stirred,scout,"  \
	"note\r\n"

static int32_t first_day(void)
{
	return day_from_ymd(1990, 1, 1);
}

/* The traps, each hung on the first day as a file of traps says it; the last to be
 * driven to has the first id. */
static struct book *orchard(void)
{
	struct buf text = { 0 };
	struct book *b = new_book();

	buf_add(&text, "farm,block,trap,pest,hung,order\n");
	for (int t = TRAPS; t >= 1; t--)
		buf_addf(&text, "Drumsorrel,Slip,%d,CM,1990-01-01,%d\n", t, t);
	must_take(b, "traps", text.text);
	buf_free(&text);
	return b;
}

/* A row as an export has it; scouts take turns, a note is rare. */
static void add_row(struct buf *text, int t, int day)
{
	char iso[DAY_ISO_SIZE];

	day_iso(first_day() + day, iso);
	buf_addf(text, "Drumsorrel,%d,%s,", t, iso);
	if (day == 0)
		buf_add(text, "hung,,,,,kept,kept,,AB,");
	else if (day % 31 == 0)
		buf_addf(text, "skipped,weather,,,,,,,,rain on day %d", day);
	else
		buf_addf(text, "counted,,%d,,%d,%s,,%s,%s,", day % 300, t,
			day % 28 ? "" : "delta liner", day % 5 ? "" : "yes",
			day / 7 % 2 ? "AB" : "CD");
	buf_add(text, "\r\n");
}

static void add_rows(struct buf *text)
{
	buf_add(text, HEAD);
	for (int t = 1; t <= TRAPS; t++)
		for (int day = 0; day < DAYS; day++)
			add_row(text, t, day);
}

/* Takes visits in while no file may grow beyond `bytes`. */
static bool take_within(rlim_t bytes, struct book *b, const char *text,
	struct imported *out, struct err *e)
{
	struct rlimit was, small;

	assert_int_equal(getrlimit(RLIMIT_FSIZE, &was), 0);
	small = was;
	small.rlim_cur = bytes < was.rlim_max ? bytes : was.rlim_max;
	assert_int_equal(setrlimit(RLIMIT_FSIZE, &small), 0);
	bool ok = take(b, "visits", text, out, e);
	assert_int_equal(setrlimit(RLIMIT_FSIZE, &was), 0);
	return ok;
}

/* What goes in trap by trap comes out the same, and the bare hangings gave way. */
static void expect_all_in(const char *why, rlim_t bytes)
{
	struct imported out = { 0 };
	struct book *b = orchard();
	struct buf text = { 0 };
	struct err e = { 0 };

	add_rows(&text);
	if (!take_within(bytes, b, text.text, &out, &e))
		fail_msg("%s: %s", why, complaint(&out, &e));
	assert_int_equal(out.n_new, ROWS - TRAPS);
	assert_int_equal(out.n_changed, TRAPS);
	imported_free(&out);
	char *got = give(b, "visits");
	size_t same = 0;
	while (got[same] && got[same] == text.text[same])
		same++;
	if (got[same] != text.text[same])
		fail_msg("%s: got ...%.60s, not ...%.60s", why, got + same,
			text.text + same);
	free(got);
	assert_true(take(b, "visits", text.text, &out, &e));
	assert_int_equal(out.n_same, ROWS);
	imported_free(&out);
	buf_free(&text);
	book_close(b);
}

static void more_visits_than_a_pile_go_in_as_they_are(void **state)
{
	(void)state;
	assert_true(ROWS > (int)PILE_VISITS);
	expect_all_in("piles laid aside", RLIM_INFINITY);
}

static void they_go_in_where_no_file_can_be_written(void **state)
{
	(void)state;
	signal(SIGXFSZ, SIG_IGN);
	expect_all_in("no room for a file", 0);
}

/* The book has the earlier day in the later line. */
static void what_the_book_refuses_is_named_by_line(void **state)
{
	static const struct {
		int t, day;
	} at[] = { { 1, DAYS - 1 }, { 4, 77 }, { TRAPS, 1 } };
	enum { REFUSED = sizeof at / sizeof *at };
	struct book *b = orchard();
	struct imported out = { 0 };
	struct buf text = { 0 };
	struct err e = { 0 };

	(void)state;
	buf_add(&text, "farm,trap,date,count\n");
	for (int i = 0; i < REFUSED; i++) {
		char iso[DAY_ISO_SIZE];
		day_iso(first_day() + at[i].day, iso);
		buf_addf(&text, "Drumsorrel,%d,%s,9999\n", at[i].t, iso);
	}
	must_take(b, "visits", text.text);
	char *before = give_all(b);
	buf_clear(&text);
	add_rows(&text);
	assert_false(take(b, "visits", text.text, &out, &e));
	assert_int_equal(out.n_problems, REFUSED);
	for (int i = 0; i < REFUSED; i++) {
		char want[64];
		snprintf(want, sizeof want, "file.csv, line %d: trap %d of Drumsorrel ",
			2 + (at[i].t - 1) * DAYS + at[i].day, at[i].t);
		if (strncmp(out.problems.items[i], want, strlen(want)) != 0)
			fail_msg("%s, not %s...", out.problems.items[i], want);
	}
	char *after = give_all(b);
	expect_text("nothing went in", after, before);
	free(before);
	free(after);
	imported_free(&out);
	buf_free(&text);
	book_close(b);
}

static void a_pile_that_was_cleared_has_no_words(void **state)
{
	static const struct {
		const char *scout, *note;
	} before[] = { { "CD", "rain all day" }, { "AB", "" } },
	  after[] = { { "AB", "" }, { "CD", "rain all morning" } };
	struct visit v = { .trap = 1 };
	struct visit_words w = { 0 };
	struct pile pile = { 0 };

	(void)state;
	for (size_t i = 0; i < 2; i++)
		pile_put(&pile, pending_of(&v, 2), before[i].scout, before[i].note);
	pile_clear(&pile);
	for (size_t i = 0; i < 2; i++, v.day++)
		pile_put(&pile, pending_of(&v, 2), after[i].scout, after[i].note);
	pile_sort(&pile);
	for (size_t i = 0; i < 2; i++) {
		assert_true(pile_tell(&pile, i, &w));
		expect_text("scout", w.scout, after[i].scout);
		expect_text("note", w.note, after[i].note);
	}
	pile_free(&pile);
}

/* Laid aside are 300 visits with a note each. */
static void a_run_that_was_cut_short_is_an_error(void **state)
{
	enum { VISITS = 300 };
	static const struct {
		const char *why;
		off_t bytes;
	} row[] = {
		{ "nothing is left", 0 },
		{ "within a block", sizeof(struct pending) + 1 },
		{ "within words", RUN_BLOCK * sizeof(struct pending) + 10 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct pile pile = { 0 };
		struct runs runs = { 0 };
		struct err e = { 0 };
		for (int day = 0; day < VISITS; day++) {
			struct visit v = { .trap = 1, .day = day };
			char note[24];
			snprintf(note, sizeof note, "day %d", day);
			pile_put(&pile, pending_of(&v, 2), "AB", note);
		}
		pile_sort(&pile);
		assert_true(runs_add(&runs, &pile));
		FILE *file = runs.items[0].file;
		assert_int_equal(ftruncate(fileno(file), row[i].bytes), 0);
		if (run_next(&runs.items[0], "visits.csv", &e))
			fail_msg("%s: it was read", row[i].why);
		assert_int_equal(e.kind, ERR_BOOK);
		expect_text(row[i].why, e.text,
			"visits.csv is not imported: its temporary file cannot be read: "
			"Input/output error");
		runs_free(&runs);
		pile_free(&pile);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(more_visits_than_a_pile_go_in_as_they_are),
		cmocka_unit_test(they_go_in_where_no_file_can_be_written),
		cmocka_unit_test(what_the_book_refuses_is_named_by_line),
		cmocka_unit_test(a_pile_that_was_cleared_has_no_words),
		cmocka_unit_test(a_run_that_was_cut_short_is_an_error),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
