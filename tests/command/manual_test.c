/* Every command with its options and every column of its CSV stand in the manual; run
 * from the top folder. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "command/command.h"
#include "exchange/report_csv.h"

#include <stdio.h>
#include <string.h>

static void read_page(const char *file, struct buf *out)
{
	char piece[4096];
	size_t n;
	FILE *f = fopen(file, "r");

	if (!f)
		fail_msg("%s cannot be read from here", file);
	buf_add(out, "");
	while ((n = fread(piece, 1, sizeof piece, f)) > 0)
		buf_add_n(out, piece, n);
	fclose(f);
}

/* What stands from ".It Ic name" to the next command's; *out is empty when nothing
 * does. A command may have several entries. */
static void entries_of(const char *page, const char *name, struct buf *out)
{
	char head[40];

	snprintf(head, sizeof head, "\n.It Ic %s", name);
	buf_add(out, "");
	for (const char *at = page; (at = strstr(at, head)); at++) {
		const char *end = strstr(at + 1, "\n.It Ic "),
			   *over = strstr(at, "\n.El");

		if (at[strlen(head)] != ' ' && at[strlen(head)] != '\n')
			continue;
		if (!end || (over && over < end))
			end = over;
		buf_add_n(out, at, end ? (size_t)(end - at) : strlen(at));
	}
}

/* Every "--name" and "-o" of the text as mdoc has it: "Fl Fl name", "Fl o". */
static void check_options(const char *command, const char *text, const char *entries)
{
	for (const char *at = text; (at = strchr(at, '-')); at += strspn(at, "-")) {
		size_t dashes = strspn(at, "-");
		size_t n = strcspn(at + dashes, " ],.|");
		char want[60];

		if (at > text && at[-1] != '[' && at[-1] != ' ')
			continue;
		snprintf(want, sizeof want, "Fl %s%.*s", dashes == 2 ? "Fl " : "",
			(int)n, at + dashes);
		if (!strstr(entries, want))
			fail_msg("%s: no \"%s\" in the manual", command, want);
	}
}

static void manual_has_every_command_with_its_options(void **state)
{
	struct buf page = { 0 };

	(void)state;
	read_page("man/mothtally.1", &page);
	for (const struct command *c = commands; c->name; c++) {
		struct buf entries = { 0 };

		entries_of(page.text, c->name, &entries);
		if (entries.n == 0)
			fail_msg("%s is not in the manual", c->name);
		check_options(c->name, c->synopsis, entries.text);
		check_options(c->name, c->help, entries.text);
		buf_free(&entries);
	}
	buf_free(&page);
}

static void check_columns(const char *command, struct buf *csv)
{
	struct buf page = { 0 }, entries = { 0 };

	read_page("man/mothtally.5", &page);
	entries_of(page.text, command, &entries);
	csv->text[strcspn(csv->text, "\r")] = '\0';
	for (char *name = strtok(csv->text, ","); name; name = strtok(NULL, ",")) {
		char want[40];

		snprintf(want, sizeof want, " %s", name);
		if (!strstr(entries.text, want))
			fail_msg("%s --csv: %s is not in the manual", command, name);
	}
	buf_free(&page);
	buf_free(&entries);
	buf_free(csv);
}

static void manual_has_every_column_of_the_reports(void **state)
{
	const struct log log = { 0 };
	const struct verdict_rows rows = { 0 };
	const struct due due = { 0 };
	const struct dd_table table = { 0 };
	struct buf csv = { 0 };

	(void)state;
	week_csv(&log, &rows, &csv);
	check_columns("week", &csv);
	due_csv(&due, &csv);
	check_columns("due", &csv);
	flight_csv_head(&csv);
	check_columns("flight", &csv);
	hotspots_csv_head(&csv);
	check_columns("hotspots", &csv);
	dd_csv(&table, &csv);
	check_columns("degree-days", &csv);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(manual_has_every_command_with_its_options),
		cmocka_unit_test(manual_has_every_column_of_the_reports),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
