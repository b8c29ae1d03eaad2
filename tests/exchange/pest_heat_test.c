/* The columns of pests that degree-days and biofix go by. */
#include "desk.h"

#include "season/biofix.h"
#include "season/degree_days.h"

#define HEAD "code,unit,base,cap,method,cutoff\n"

/* Every method with every cutoff: taken as the season judges the rule, and then the
 * book, which has a list of its own, keeps it. */
static void every_rule_that_the_season_knows_goes_in_and_out(void **state)
{
	char text[200], want[200];
	int n = 0;

	(void)state;
	for (int i = 0; i < DD_METHOD_COUNT * DD_CUTOFF_COUNT; i++) {
		struct dd_rule r = { (enum dd_method)(i % DD_METHOD_COUNT),
			(enum dd_cutoff)(i / DD_METHOD_COUNT), 10, 31.1 };
		struct book *b = new_book();
		struct err e = { 0 };
		snprintf(text, sizeof text, HEAD "QM,C,10,31.1,%s,%s\n",
			dd_method_word(r.method), dd_cutoff_word(r.cutoff));
		bool ok = take(b, "pests", text, NULL, &e);
		if (ok != !dd_rule_fault(&r))
			fail_msg("%s: %s", text, e.text);
		snprintf(want, sizeof want, "\r\nQM,,,C,10,31.1000,%s,%s,,,no\r\n",
			dd_method_word(r.method), dd_cutoff_word(r.cutoff));
		char *got = give(b, "pests");
		if (ok && !strstr(got, want))
			fail_msg("no %s", want);
		n += ok;
		free(got);
		book_close(b);
	}
	assert_int_equal(n, 4 + 4 * DD_CUTOFF_COUNT);
}

static void every_biofix_rule_is_a_value_and_in_the_manual(void **state)
{
	char text[100], head[60], piece[4096];
	size_t n, got;
	struct buf manual = { 0 };
	FILE *f = fopen("man/mothtally.5", "r");
	struct book *b = new_book();
	const struct biofix_rule *rules = biofix_rules(&n);

	(void)state;
	assert_non_null(f);
	while ((got = fread(piece, 1, sizeof piece, f)) > 0)
		buf_add_n(&manual, piece, got);
	fclose(f);
	for (size_t i = 0; i < n; i++) {
		snprintf(text, sizeof text, "code,biofix_rule\nCM,%s\n", rules[i].word);
		must_take(b, "pests", text);
		snprintf(head, sizeof head, "\n.It %s\n", rules[i].word);
		if (!strstr(manual.text, head))
			fail_msg("%s is not in the manual", rules[i].word);
	}
	buf_free(&manual);
	book_close(b);
}

static void a_wrong_rule_is_named(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no unit", HEAD "QM,,10,31.1,sine,horizontal\n",
			"file.csv, line 2, column base: \"10\" stands without a unit; "
			"write C or F under unit" },
		{ "no base", HEAD "QM,C,,31.1,sine,horizontal\n",
			"file.csv, line 2, column base: a value is missing; a unit "
			"needs its base, method and cutoff" },
		{ "no column of units", "code,base\nCM,10\n",
			"file.csv, line 1: the column unit is missing; unit, base, "
			"method and cutoff go together" },
		{ "half a rule", "code,unit,base\nCM,C,10\n",
			"file.csv, line 1: the column method is missing; unit, base, "
			"method and cutoff go together" },
		{ "cap below the base", HEAD "QM,F,50,49.9,sine,horizontal\n",
			"file.csv, line 2, column cap: \"49.9\" does not fit its row: "
			"the base must be lower than the cap" },
		{ "cap on the base, unused", HEAD "QM,F,50,50,sine,none\n",
			"file.csv, line 2, column cap: \"50\" does not fit its row: "
			"the base must be lower than the cap" },
		{ "a cutoff without a cap", HEAD "QM,F,50,,sine,horizontal\n",
			"file.csv, line 2, column cutoff: \"horizontal\" does not fit "
			"its row: the cap is a number of degrees from -60 to 150" },
		{ "a cutoff of an average", HEAD "QM,F,50,88,average,vertical\n",
			"file.csv, line 2, column cap: \"88\" does not fit its row: a "
			"cutoff goes with sines and triangles; an average has cutoff "
			"none" },
		{ "no such method", HEAD "QM,F,50,88,cosine,none\n",
			"file.csv, line 2, column method: \"cosine\" is not right; it "
			"takes one of: average, average-raised, average-clamped, "
			"average-capped, triangle, double-triangle, sine, "
			"double-sine" },
	};
	struct book *b = new_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_refused(b, "pests", row[i].why, row[i].text, row[i].want);
	struct imported out = { 0 };
	struct err e = { 0 };
	assert_false(take(b, "pests", "code,biofix_rule\nCM,firstmoth\n", &out, &e));
	assert_non_null(strstr(out.problems.items[0],
		"column biofix_rule: \"firstmoth\" is no rule; there are: "
		"sustained, "));
	imported_free(&out);
	book_close(b);
}

static void what_a_file_does_not_say_stays(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "pests", HEAD "CM,C,10,31.1,sine,horizontal\n");
	must_take(b, "pests", "code,name,dd_source\nCM,codling moth,own\n");
	char *got = give(b, "pests");
	assert_non_null(strstr(got, "\r\nCM,codling moth,Cydia pomonella,C,10,31.1000,"
				    "sine,horizontal,,own,no\r\n"));
	free(got);
	must_take(b, "pests", HEAD "CM,,,,,\n");
	got = give(b, "pests");
	assert_non_null(
		strstr(got, "\r\nCM,codling moth,Cydia pomonella,,,,,,,own,no\r\n"));
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_rule_that_the_season_knows_goes_in_and_out),
		cmocka_unit_test(every_biofix_rule_is_a_value_and_in_the_manual),
		cmocka_unit_test(a_wrong_rule_is_named),
		cmocka_unit_test(what_a_file_does_not_say_stays),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
