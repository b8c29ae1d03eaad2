/* All ways by which a run in a barred block or a pick inside a preharvest interval
 * could pass unsaid: the commands and the files. Each is walked by the program's own
 * table of it, so that a new one fails here until it says it, or until the row that it
 * gets below says why it has nothing to say. Pages and forms: paths_pages_test.c. */
#include "paths.h"

#include "command/command.h"
#include "exchange/exchange.h"

static const struct way command_ways[] = {
	{ "due", "due", { "no entry: Quarry Rows until", "too early" }, NULL },
	{ "sheet", "sheet", { "Quarry Rows: no entry until", "too early" }, NULL },
	{ "record", "record --farm Quillet~Farm --block Quarry~Rows",
		{ "no entry until", "pick planned: too early" }, NULL },
	{ "week", NULL, { NULL }, "what was caught; no run and no pick" },
	{ "print", NULL, { NULL }, "the sheet and the season page, on paper" },
	{ "season", "season --farm Quillet~Farm", { "too early" }, NULL },
	{ "merge", NULL, { NULL }, "which rows differ; then every page says it" },
	{ "completion", NULL, { NULL }, "words for a shell" },
	{ "flight", NULL, { NULL }, "a season's catch" },
	{ "hotspots", NULL, { NULL }, "a season's catch" },
	{ "degree-days", NULL, { NULL }, "temperatures" },
	{ "import", NULL, { NULL }, "by kind of file, below" },
	{ "export", NULL, { NULL }, "the book's rows as they stand" },
	{ "check", NULL, { NULL }, "the soundness of the file" },
	{ "backup", NULL, { NULL }, "a copy of the file" },
	{ "restore", NULL, { NULL }, "a copy of the file" },
	{ "proof", NULL, { NULL }, "published cases" },
	{ "demo", NULL, { NULL }, "the pages and commands, on another book" },
};

static void every_command_says_it_or_shows_none(void **state)
{
	struct ran r = { 0 };

	(void)state;
	for (const struct command *c = commands; c->name; c++) {
		const struct way *w = WAY(command_ways, c->name);
		char line[160];
		if (!w || !(w->with || w->why))
			fail_msg("the command %s: does it show a run or a pick? It has "
				 "no row here",
				c->name);
		if (!w->with)
			continue;
		snprintf(
			line, sizeof line, "--book b.db --today " TODAY " %s", w->with);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
		says_all(w, r.out.text);
	}
	program_forget(&r);
}

#define TRAPS "farm,block,trap,pest,hung,pulled\n"
#define TREATMENT "farm,block,date,product,rei_hours,phi_days\n"

static const struct way kind_ways[] = {
	{ "treatments", TREATMENT "Quillet Farm,Quarry Rows,2026-07-21,Oil,4,20\n",
		{ "pick planned for 2026-08-02: too early" }, NULL },
	{ "picks", "farm,block,date\nQuillet Farm,Quarry Rows,2026-08-01\n",
		{ "pick planned for 2026-08-01: too early" }, NULL },
	{ "visits", "farm,trap,date,count\nQuillet Farm,1,2026-07-21,3\n",
		{ "trap 1 of Quillet Farm was visited on 2026-07-21; nobody was to "
		  "enter Quarry Rows" },
		NULL },
	{ "traps", TRAPS "Quillet Farm,Quarry Rows,2,CM,2026-07-21,\n",
		{ "trap 2 of Quillet Farm was visited on 2026-07-21; nobody was to "
		  "enter Quarry Rows" },
		NULL },
	{ "thresholds", NULL, { NULL }, "rules" },
	{ "pests", NULL, { NULL }, "kinds" },
	{ "lures", NULL, { NULL }, "kinds" },
	{ "cards", NULL, { NULL }, "kinds" },
	{ "places", NULL, { NULL }, "places" },
	{ "stations", NULL, { NULL }, "places" },
	{ "weather", NULL, { NULL }, "temperatures" },
	{ "biofix", NULL, { NULL }, "dates of a season" },
	{ "farms", NULL, { NULL }, "places" },
	{ "blocks", NULL, { NULL }, "places" },
	{ "fruit-checks", NULL, { NULL },
		"no hour and no run: fruit is looked at in "
		"the bin as well" },
	{ "dispensers", NULL, { NULL }, "no run: days that dispensers were up" },
	{ "answers", NULL, { NULL }, "what was decided" },
	{ "settings", NULL, { NULL }, "numbers and words" },
};

static void every_kind_of_file_says_it_or_brings_none(void **state)
{
	struct ran r = { 0 };

	(void)state;
	for (size_t k = 0; kinds[k]; k++) {
		const struct way *w = WAY(kind_ways, kinds[k]->name);
		char line[160];
		if (!w || !(w->with || w->why))
			fail_msg("files of %s: do they bring a run or a pick? They "
				 "have no row here",
				kinds[k]->name);
		if (!w->with)
			continue;
		program_write("way.csv", w->with);
		remove("way.db");
		program_run(&r, "--book kept.db backup way.db");
		snprintf(line, sizeof line,
			"--book way.db --today " TODAY " import %s way.csv", w->name);
		program_run(&r, line);
		assert_int_equal(r.status, 0);
		buf_add(&r.out, r.err.text ? r.err.text : "");
		says_all(w, r.out.text);
	}
	program_forget(&r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_command_says_it_or_shows_none),
		cmocka_unit_test(every_kind_of_file_says_it_or_brings_none),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
