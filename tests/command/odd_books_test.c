/* Books that are hardly begun: every command says something true of each, or one
 * sentence why it cannot, and changes nothing. */
#include "begun.h"

static void check_answer(const char *line, const struct ran *r)
{
	static const char *const broken[] = { "nan", "(null)", "inf ", "-2147483" };
	bool one =
		r->err.n > 0 && strchr(r->err.text, '\n') == r->err.text + r->err.n - 1;

	if (r->status < 0 || r->status > 5)
		fail_msg("%s: ended with %d", line, r->status);
	if (r->status && (!one || r->out.n))
		fail_msg("%s: status %d, \"%s\", \"%s\"", line, r->status, r->err.text,
			r->out.text);
	if (r->status == 0 && r->out.n == 0)
		fail_msg("%s: not a word", line);
	for (size_t i = 0; i < sizeof broken / sizeof *broken; i++)
		if (strstr(r->out.text, broken[i]))
			fail_msg("%s: %s", line, r->out.text);
}

/* What each says of a book of which nothing is known. */
static const struct {
	const char *line;
	enum begun from; /* the first that it has an answer for */
	int before;      /* its status up to there */
} asked[] = {
	{ "week", EMPTY, 0 },
	{ "week --csv", EMPTY, 0 },
	{ "week --farm Hather --pest CM", FARM, 4 },
	{ "due", EMPTY, 0 },
	{ "due --csv", EMPTY, 0 },
	{ "sheet --format text", FARM, 4 },
	{ "sheet --blank --format text", FARM, 4 },
	{ "flight --pest CM", EMPTY, 0 },
	{ "flight --pest CM --csv", EMPTY, 0 },
	{ "flight --pest CM --farm Hather", FARM, 4 },
	{ "flight --pest CM --farm Hather --block Weir", BLOCK, 4 },
	{ "season --farm Hather --format text", FARM, 4 },
	{ "record", EMPTY, 0 },
	{ "record --csv", EMPTY, 0 },
	{ "record --farm Hather --from 2020-01-01", FARM, 4 },
	{ "hotspots --pest CM", EMPTY, 0 },
	{ "hotspots --pest CM --csv", EMPTY, 0 },
	{ "hotspots --pest CM --farm Hather --season 2019", FARM, 4 },
	{ "degree-days --station Weir --pest CM --from 2026-05-01", BEGUN_COUNT, 4 },
	{ "export traps", EMPTY, 0 },
	{ "export visits", EMPTY, 0 },
	{ "export thresholds", EMPTY, 0 },
	{ "export weather", EMPTY, 0 },
	{ "export treatments", EMPTY, 0 },
	{ "export picks", EMPTY, 0 },
	{ "export gpx --farm Hather", FARM, 4 },
	{ "export geojson", EMPTY, 0 },
	{ "export icalendar", EMPTY, 0 },
	{ "merge --open", EMPTY, 0 },
	{ "merge --undo", BEGUN_COUNT, 4 },
	{ "restore", EMPTY, 0 },
	{ "check", EMPTY, 0 },
};

static void every_command_has_an_answer_for_a_book_that_is_hardly_begun(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof asked / sizeof *asked; i++)
		for (int k = 0; k < BEGUN_COUNT; k++) {
			struct ran r = { 0 };
			char line[160];
			int want = k < (int)asked[i].from ? asked[i].before : 0;
			snprintf(line, sizeof line,
				"--book %s --today " BEGUN_TODAY " %s", begun_names[k],
				asked[i].line);
			program_run(&r, line);
			check_answer(line, &r);
			if (r.status != want)
				fail_msg("%s: status %d, not %d: %s%s", line, r.status,
					want, r.err.text, r.out.text);
			program_forget(&r);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			every_command_has_an_answer_for_a_book_that_is_hardly_begun),
	};

	return cmocka_run_group_tests(tests, make_books, program_teardown);
}
