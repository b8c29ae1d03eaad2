/* Every command that prints a run or a pick, on a book with a barred block and a pick
 * planned inside a preharvest interval. The re-entry interval of the test is the
 * longest that can be entered: the commands go by the hour that the clock shows. */
#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/text.h"
#include "book/acts.h"
#include "book/book.h"
#include "book/places.h"
#include "program.h"

static const char traps[] =
	"farm,block,trap,pest,lure,condition,crop,hung\n"
	"Quillet Farm,Quarry Rows,1,CM,CM standard,conventional,apple,2026-06-01\n"
	"Quillet Farm,Bank,2,CM,CM standard,conventional,apple,2026-06-01\n";

static int64_t block_named(struct book *b, const char *name)
{
	struct blocks blocks = { 0 };
	struct err e = { 0 };
	int64_t id = 0;

	if (book_blocks(b, 0, &blocks, &e))
		for (size_t i = 0; i < blocks.n; i++)
			if (strcmp(blocks.items[i].name, name) == 0)
				id = blocks.items[i].id;
	free(blocks.items);
	return id;
}

/* Quarry Rows: barred for a year, picks from 3 August on. Bank: nothing known of it. */
static bool put_acts(struct book *b, struct err *e)
{
	const struct zone utc = { .n = 0 };
	struct treatment t = treatment_blank, open;
	struct pick p = pick_blank;

	t.block = block_named(b, "Quarry Rows");
	t.day = day_from_ymd(2026, 7, 20);
	t.until = zone_local(&utc, t.day, 630);
	t.rei_hours = 8784;
	t.phi_days = 14;
	text_copy(t.product, sizeof t.product, "Brackwater oil");
	open = t;
	open.block = block_named(b, "Bank");
	open.rei_hours = open.phi_days = -1;
	p.block = t.block;
	p.day = day_from_ymd(2026, 8, 2);
	return book_put_treatment(b, &t, e) && book_put_treatment(b, &open, e) &&
	       book_put_pick(b, &p, e);
}

static int fill_book(void **state)
{
	struct ran r = { 0 };
	struct err e = { 0 };
	int failed = program_setup(state);

	program_write("traps.csv", traps);
	program_run(&r, "--book b.db --today 2026-07-21 import traps traps.csv");
	failed |= r.status;
	struct book *b = book_open("b.db", BOOK_CREATE, "T", &e);
	if (!b || !put_acts(b, &e))
		failed = fprintf(stderr, "%s\n", e.text);
	if (b)
		book_close(b);
	program_forget(&r);
	return failed;
}

static const struct {
	const char *line;
	const char *says[4]; /* each must stand there */
} row[] = {
	{ "due", { "no entry: Quarry Rows until Wed 21 Jul 2027",
			 "entry not known: Bank",
			 "Quarry Rows, pick planned for Sun 2 Aug: too early",
			 "Bank: earliest pick not known" } },
	{ "due --farm Quillet~Farm",
		{ "no entry: Quarry Rows until", "entry not known: Bank", "too early",
			"Stay out until the re-entry interval is over" } },
	{ "due --csv", { ",2027-07-21T", ",unknown" } },
	{ "sheet", { "Quarry Rows: no entry until",
			   "Bank: whether it may be entered is "
			   "not known",
			   "pick planned for Sun 2 Aug: too early", "no entry till" } },
	{ "sheet --blank",
		{ "Quarry Rows: no entry until",
			"Bank: whether it may be entered is "
			"not known",
			"pick planned for Sun 2 Aug: too early", "entry not known" } },
	{ "record", { "no entry until", "re-entry interval not entered",
			    "preharvest interval not entered",
			    "States and other countries ask for more" } },
	{ "record --csv", { ",8784,14,", ",,," } },
	{ "record --farm Quillet~Farm --block Quarry~Rows",
		{ "treated: Brackwater oil; no entry until", "pick planned: too early",
			"7 CFR 110.3", "Record of treatments" } },
};

static void no_command_leaves_a_barred_block_or_an_early_pick_unsaid(void **state)
{
	struct ran r = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char line[160];
		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 %s",
			row[i].line);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
		for (size_t k = 0; k < 4 && row[i].says[k]; k++)
			if (!program_tells(r.out.text, row[i].says[k]))
				fail_msg("%s: no \"%s\" in:\n%s", row[i].line,
					row[i].says[k], r.out.text);
	}
	program_forget(&r);
}

static void record_refuses_what_it_cannot_answer(void **state)
{
	static const struct {
		const char *why, *line, *says;
		int status;
	} bad[] = {
		{ "no date", "record --from 2026-02-30",
			"--from \"2026-02-30\" is no date", 2 },
		{ "no date either", "record --to soon", "--to \"soon\" is no date", 2 },
		{ "the wrong way round", "record --from 2026-08-02 --to 2026-08-01",
			"it comes first", 2 },
		{ "the same day is a span", "record --from 2026-08-01 --to 2026-08-01",
			"", 0 },
		{ "whose block", "record --block Bank", "--block needs --farm", 2 },
		{ "no such block", "record --farm Quillet~Farm --block Bink",
			"it has: Bank, Quarry Rows", 4 },
		{ "no such farm", "record --farm Otter", "there is no farm", 4 },
	};
	struct ran r = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		char line[160];
		snprintf(line, sizeof line, "--book b.db --today 2026-07-21 %s",
			bad[i].line);
		program_run(&r, line);
		if (r.status != bad[i].status ||
			(*bad[i].says && !program_tells(r.err.text, bad[i].says)))
			fail_msg("%s: %d, %s", bad[i].why, r.status, r.err.text);
	}
	program_forget(&r);
}

/* A file is to be read by a program; who asked for it is told beside it. */
static void record_as_a_file_says_beside_it_that_others_ask_for_more(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run(&r, "--book b.db --today 2026-07-21 record --csv");
	assert_int_equal(r.status, 0);
	assert_true(
		program_tells(r.err.text, "States and other countries ask for more"));
	assert_false(program_tells(r.out.text, "ask for more"));
	program_run(&r, "--book b.db --today 2026-07-21 record");
	assert_false(program_tells(r.err.text, "ask for more"));
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			no_command_leaves_a_barred_block_or_an_early_pick_unsaid),
		cmocka_unit_test(record_refuses_what_it_cannot_answer),
		cmocka_unit_test(
			record_as_a_file_says_beside_it_that_others_ask_for_more),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
