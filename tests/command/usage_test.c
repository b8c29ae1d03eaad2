/* Words on the command line that do not go together, that are missing or that name
 * nothing: one sentence each, and nothing is done. */
#include "begun.h"

static int make_desk(void **state)
{
	struct ran r = { 0 };
	int failed = make_books(state);

	program_run(&r, "--book hung.db --today " BEGUN_TODAY " backup kept.db");
	failed |= r.status;
	program_write("empty.csv", "");
	program_write("map.gpx", "no map");
	program_forget(&r);
	return failed;
}

static void words_that_do_not_go_together_are_refused(void **state)
{
	static const struct {
		const char *line;
		int status;
		const char *says;
	} row[] = {
		{ "import", 2, "import" },
		{ "import moths x.csv", 2, "moths" },
		{ "import traps", 2, "needs a file" },
		{ "import traps a.csv b.csv", 2, "no use for \"b.csv\"" },
		{ "import traps gone.csv", 4, "gone.csv" },
		{ "import traps .", 5, "Is a directory" },
		{ "import traps empty.csv", 3, "empty.csv" },
		{ "import traps --published", 2, "goes with thresholds" },
		{ "import thresholds --published gone.csv", 2, "takes no file" },
		{ "import thresholds --published --columns", 2, "do not go together" },
		{ "import thresholds --columns gone.csv", 2,
			"--columns takes no file" },
		{ "import thresholds gone.csv --crop apple", 2, "go with --published" },
		{ "import visits gone.csv --replace", 2, "--replace goes with" },
		{ "import gpx", 2, "needs --farm" },
		{ "import gpx gone.gpx --farm Hather", 4, "gone.gpx" },
		{ "import gpx map.gpx --farm Hather", 3, "map.gpx" },
		{ "import gpx map.gpx --farm Nowhere", 4, "Nowhere" },
		{ "import gpx map.gpx --colour red", 2, "--colour" },
		{ "import geojson map.gpx", 2, "needs --farm" },
		{ "import geojson map.gpx --farm Hather", 3, "map.gpx" },
		{ "import icalendar map.gpx", 2, "only given out" },
		{ "export", 2, "needs a kind of file" },
		{ "export moths", 2, "moths" },
		{ "export traps a b", 2, "no use for \"b\"" },
		{ "export traps .", 5, "is a folder" },
		{ "export traps gone/traps.csv", 5, "gone/traps.csv" },
		{ "export gpx gone/traps.gpx --farm Hather", 5, "gone/traps.gpx" },
		{ "export geojson --farm Nowhere", 4, "Nowhere" },
		{ "merge", 2, "wants the other book" },
		{ "merge gone.db", 4, "gone.db" },
		{ "merge map.gpx", 5, "map.gpx" },
		{ "merge hung.db", 3, "is the book itself" },
		{ "merge --look", 2, "wants the other book" },
		{ "merge --undo --open", 2, "alone" },
		{ "merge kept.db --undo", 2, "alone" },
		{ "merge kept.db --open", 2, "alone" },
		{ "merge a.db b.db", 2, "no use for \"b.db\"" },
		{ "restore gone.db", 4, "gone.db" },
		{ "restore 2026-07-20", 4, "2026-07-20" },
		{ "restore a.db b.db", 2, "no use for \"b.db\"" },
		{ "restore --yes", 2, "goes with a backup" },
		{ "restore map.gpx --yes", 5, "map.gpx" },
		{ "backup", 2, "the name of a new file" },
		{ "backup kept.db", 5, "kept.db" },
		{ "backup gone/kept.db/x/../y", 5, "the backup is not made" },
		{ "season --farm Nowhere", 4, "Nowhere" },
		{ "season --farm Hather --season soon", 2, "soon" },
		{ "season --farm Hather --format jpg", 2, "jpg" },
		{ "season --farm Hather -o gone/s.txt", 5, "gone/s.txt" },
		{ "sheet --format jpg", 2, "jpg" },
		{ "sheet -o gone/s.txt", 5, "gone/s.txt" },
		{ "record --from soon", 2, "soon" },
		{ "record --from 2026-02-30", 2, "2026-02-30" },
		{ "record --from 2026-07-02 --to 2026-07-01", 2, "lies after --to" },
		{ "record --farm Hather --block Nowhere", 4, "Nowhere" },
		{ "flight", 2, "needs --pest" },
		{ "flight --pest XM", 4, "XM" },
		{ "flight --pest CM --season 26", 2, "26" },
		{ "hotspots", 2, "needs --pest" },
		{ "hotspots --pest CM --flight 99", 2, "99" },
		{ "due --pest CM", 2, "--pest" },
		{ "check it", 2, "no use for \"it\"" },
		{ "proof it", 2, "no use for \"it\"" },
		{ "completion", 2, "name the shell" },
		{ "completion fish", 2, "bash or zsh" },
		{ "demo it", 2, "no use for \"it\"" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct ran r = { 0 };
		char line[160];
		snprintf(line, sizeof line, "--book hung.db --today " BEGUN_TODAY " %s",
			row[i].line);
		program_run(&r, line);
		bool one = r.err.n > 0 &&
			   strchr(r.err.text, '\n') == r.err.text + r.err.n - 1;
		if (r.status != row[i].status || !one || r.out.n ||
			!strstr(r.err.text, row[i].says))
			fail_msg("%s: status %d: %s%s", row[i].line, r.status,
				r.err.text, r.out.text);
		program_forget(&r);
	}
}

/* What is redirected to a full disk is not taken for printed. */
static void what_cannot_be_written_is_an_error_of_every_command(void **state)
{
	static const char *const lines[] = { "week", "week --csv", "due", "due --csv",
		"sheet --format text", "flight --pest CM", "flight --pest CM --csv",
		"season --farm Hather --format text", "record", "record --csv",
		"hotspots --pest CM", "hotspots --pest CM --csv", "export traps",
		"export geojson", "export icalendar", "merge --open", "restore",
		"restore kept.db", "merge kept.db --look", "check", "proof",
		"proof --csv", "completion bash", "completion zsh", "demo --print",
		"--help", "week --help", "--version", "import traps --columns" };

	(void)state;
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
		struct ran r = { 0 };
		char line[160];
		snprintf(line, sizeof line, "--book hung.db --today " BEGUN_TODAY " %s",
			lines[i]);
		program_run_to(&r, "/dev/full", line);
		if (r.status != 5 || !strstr(r.err.text, "mothtally: "))
			fail_msg("%s: status %d: %s", lines[i], r.status, r.err.text);
		program_forget(&r);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(words_that_do_not_go_together_are_refused),
		cmocka_unit_test(what_cannot_be_written_is_an_error_of_every_command),
	};

	return cmocka_run_group_tests(tests, make_desk, program_teardown);
}
