/* What the program carries for a new book: a table of its own that is damaged makes no
 * book, and the sentence names file and line; one that is missing leaves it out. */
#include "fixture.h"

#include "base/shipped.h"

/* What is carried instead of a file; NULL: it is not there. */
static struct {
	const char *name, *text;
} instead;

const struct shipped *__real_shipped_find(const char *name);
const struct shipped *__wrap_shipped_find(const char *name);
const struct shipped *__wrap_shipped_find(const char *name)
{
	static struct shipped other;

	if (!instead.name || strcmp(name, instead.name) != 0)
		return __real_shipped_find(name);
	if (!instead.text)
		return NULL;
	other = (struct shipped){ name, instead.text, strlen(instead.text) };
	return &other;
}

static void book_is_not_made_of_damaged_tables(void **state)
{
	static const struct {
		const char *why, *file, *text, *says;
	} row[] = {
		{ "no shape", "schema.sql", NULL, "schema.sql is not shipped" },
		{ "a shape that is none", "schema.sql", "CREATE TABEL x", "not made" },
		{ "a column short", "pests.csv", "code,name,latin,source\nX,x,\n",
			"pests.csv, line 2: 3 columns, not 4" },
		{ "a pest without a code", "pests.csv",
			"code,name,latin,source\n,x,,\n", "the pest's code is empty" },
		{ "an open quote", "pests.csv", "code,name,latin,source\nX,\"x,,",
			"pests.csv" },
		{ "no head", "lures.csv", "\"", "lures.csv" },
		{ "another pest", "lures.csv", "l,p,d,h,f,t,s\nx,XX,30,,,,\n",
			"lures.csv: no pest XX" },
		{ "no number of days", "lures.csv", "l,p,d,h,f,t,s\nx,CM,x,,,,\n",
			"lures.csv, line 2: x is no number from 1 to 9999" },
		{ "no number of hot days", "lures.csv",
			"l,p,d,h,f,t,s\nx,CM,30,0,06-01,08-31,\n",
			"line 2: 0 is no number" },
		{ "no first day", "lures.csv",
			"l,p,d,h,f,t,s\nx,CM,30,14,06-31,08-31,\n",
			"line 2: 06-31 is no day" },
		{ "no last day", "lures.csv", "l,p,d,h,f,t,s\nx,CM,30,14,06-01,8,\n",
			"line 2: 8 is no day" },
		{ "a life that is none", "lures.csv", "l,p,d,h,f,t,s\nx,CM,,,,,\n",
			"the lure's life" },
		{ "no life", "cards.csv", "c,l,s,c,f,s\nx,x,1,2,3,\n",
			"cards.csv, line 2: x is no number" },
		{ "no number to stir", "cards.csv", "c,l,s,c,f,s\nx,30,x,2,3,\n",
			"x is no number" },
		{ "no number to change", "cards.csv", "c,l,s,c,f,s\nx,30,1,x,3,\n",
			"x is no number" },
		{ "no number to be full", "cards.csv", "c,l,s,c,f,s\nx,30,1,2,10000,\n",
			"10000 is no number" },
		{ "full before it is changed", "cards.csv",
			"c,l,s,c,f,s\nx,30,1,3,2,\n", "the card is changed" },
		{ "no base", "degree-days.csv", "p,b,c,u,m,t,s\nCM,x,88,F,sine,none,\n",
			"degree-days.csv, line 2: x is no number of degrees" },
		{ "no cap", "degree-days.csv", "p,b,c,u,m,t,s\nCM,50,8x,F,sine,none,\n",
			"8x is no number of degrees" },
		{ "a column more", "degree-days.csv",
			"p,b,c,u,m,t,s\nCM,50,88,F,sine,none,,\n",
			"line 2: 8 columns, not 7" },
		{ "an open quote of degrees", "degree-days.csv", "p,\"",
			"degree-days" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err err = { 0 };
		instead.name = row[i].file;
		instead.text = row[i].text;
		struct book *b = book_open(":memory:", BOOK_CREATE, "", &err);
		if (b || !strstr(err.text, row[i].says))
			fail_msg("%s: %s", row[i].why, b ? "made" : err.text);
	}
	instead.name = NULL;
}

static void book_is_made_without_a_table_that_is_not_there(void **state)
{
	static const char *const files[] = { "cards.csv", "lures.csv",
		"degree-days.csv" };
	static const char *const texts[] = { NULL, "" };

	(void)state;
	for (size_t i = 0; i < 6; i++) {
		struct card_kinds cards = { 0 };
		struct book *b;
		instead.name = files[i / 2];
		instead.text = texts[i % 2];
		must(b = book_open(":memory:", BOOK_CREATE, "", e));
		must(book_cards(b, &cards, e));
		assert_int_equal(cards.n == 0, i < 2);
		free(cards.items);
		book_close(b);
	}
	instead.name = NULL;
}

static void book_file_that_was_not_made_is_not_there(void **state)
{
	struct desk d;

	(void)state;
	desk_folder(&d);
	instead.name = "cards.csv";
	instead.text = "c,l\nx\n";
	refused(book_open(d.path, BOOK_CREATE, "", e), ERR_INPUT, "cards.csv, line 2");
	instead.name = NULL;
	assert_int_not_equal(access(d.path, F_OK), 0);
	assert_int_equal(rmdir(d.folder), 0);
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_is_not_made_of_damaged_tables),
		cmocka_unit_test(book_is_made_without_a_table_that_is_not_there),
		cmocka_unit_test(book_file_that_was_not_made_is_not_there),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
