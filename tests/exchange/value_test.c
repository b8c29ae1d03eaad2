#include "desk.h"

#include <math.h>

static const char *colour(int i)
{
	static const char *const words[] = { "", "red", "green" };

	return words[i];
}

static const struct column text_column = { .name = "x", .type = &value_text, .hi = 6 };
static const struct column count_column = {
	.name = "x", .type = &value_int, .hi = 9999, .none = -1
};
static const struct column area_column = {
	.name = "x", .type = &value_x100, .hi = 150, .none = -1
};
static const struct column lat_column = {
	.name = "x", .type = &value_degree, .lo = -90, .hi = 90
};
static const struct column heat_column = {
	.name = "x", .type = &value_number, .lo = -60, .hi = 150
};
static const struct column day_column = { .name = "x", .type = &value_day };
static const struct column md_column = { .name = "x", .type = &value_md };
static const struct column word_column = {
	.name = "x", .type = &value_word, .lo = 1, .hi = 2, .word = colour
};
static const struct column span_column = {
	.name = "x", .type = &value_span, .lo = 1, .hi = 366
};

static void a_value_is_read_and_written(void **state)
{
	static const struct {
		const char *why;
		const struct column *column;
		const char *text, *want; /* NULL: refused */
	} row[] = {
		{ "a text", &text_column, "a b", "a b" },
		{ "the longest text", &text_column, "abcde", "abcde" },
		{ "a byte too long", &text_column, "abcdef", NULL },
		{ "two bytes a letter", &text_column, "\u00e9\u00e9e",
			"\u00e9\u00e9e" },
		{ "three accents are six bytes", &text_column, "\u00e9\u00e9\u00e9",
			NULL },
		{ "a line break", &text_column, "a\nb", NULL },
		{ "a tab", &text_column, "a\tb", NULL },
		{ "zero is a count", &count_column, "0", "0" },
		{ "the highest count", &count_column, "9999", "9999" },
		{ "one more", &count_column, "10000", NULL },
		{ "below zero", &count_column, "-1", NULL },
		{ "half a moth", &count_column, "1.5", NULL },
		{ "a word for a number", &count_column, "two", NULL },
		{ "a temperature", &heat_column, "31.10", "31.1000" },
		{ "four decimals count", &heat_column, "21.12344", "21.1234" },
		{ "nearly nothing is 0", &heat_column, "-0.00001", "0" },
		{ "the coldest", &heat_column, "-60", "-60" },
		{ "colder", &heat_column, "-60.1", NULL },
		{ "the hottest", &heat_column, "150.0", "150" },
		{ "hotter", &heat_column, "150.1", NULL },
		{ "a unit on a number", &heat_column, "50F", NULL },
		{ "whole hectares", &area_column, "1", "1" },
		{ "four decimals where not whole", &area_column, "1.5", "1.5000" },
		{ "as an export writes it", &area_column, "1.2500", "1.2500" },
		{ "zeros alone are whole", &area_column, "1.0000", "1" },
		{ "a third decimal", &area_column, "1.255", NULL },
		{ "a decimal comma", &area_column, "1,5", NULL },
		{ "the most", &area_column, "1.50", "1.5000" },
		{ "a hundredth more", &area_column, "1.51", NULL },
		{ "nothing after the point", &area_column, "1.", NULL },
		{ "degrees", &lat_column, "46.2518", "46.251800" },
		{ "south", &lat_column, "-33.5", "-33.500000" },
		{ "more decimals are kept in the book and rounded in files",
			&lat_column, "46.2518494", "46.251849" },
		{ "as a spreadsheet may write it", &lat_column, "46.251849999999999",
			"46.251850" },
		{ "one decimal more", &lat_column, "46.2518499999999999", NULL },
		{ "whole degrees", &lat_column, "46", "46" },
		{ "the pole", &lat_column, "90", "90" },
		{ "beyond it", &lat_column, "90.0001", NULL },
		{ "minus nothing", &lat_column, "-0.0000001", "0" },
		{ "an exponent", &lat_column, "1e1", NULL },
		{ "a letter for the sky", &lat_column, "46N", NULL },
		{ "infinity", &lat_column, "inf", NULL },
		{ "a date", &day_column, "2026-02-28", "2026-02-28" },
		{ "no such date", &day_column, "2026-02-29", NULL },
		{ "day first", &day_column, "21.07.2026", NULL },
		{ "a day of the year", &md_column, "02-29", "02-29" },
		{ "no such day", &md_column, "02-30", NULL },
		{ "a word", &word_column, "green", "green" },
		{ "letters in either case", &word_column, "Green", "green" },
		{ "another word", &word_column, "blue", NULL },
		{ "weeks or nights", &span_column, "2", "2" },
		{ "the most nights", &span_column, "366", "366" },
		{ "one more night", &span_column, "367", NULL },
		{ "no nights", &span_column, "0", NULL },
		{ "since a word", &span_column, "flight", "flight" },
		{ "since another", &span_column, "spring", NULL },
	};
	union {
		char text[64];
		int32_t number;
		double degree;
		struct span span;
	} field;
	char out[VALUE_BYTES];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		const struct column *c = row[i].column;
		bool ok = c->type->read(c, row[i].text, &field);
		if (ok != (row[i].want != NULL))
			fail_msg("%s: \"%s\" was %s", row[i].why, row[i].text,
				ok ? "read" : "refused");
		if (ok)
			expect_text(row[i].why, c->type->write(c, &field, out),
				row[i].want);
	}
}

static void an_empty_value_is_written_empty(void **state)
{
	static const struct column *const columns[] = { &text_column, &count_column,
		&area_column, &lat_column, &day_column, &md_column, &word_column,
		&span_column };
	union {
		char text[64];
		double degree;
	} field;
	char out[VALUE_BYTES];

	(void)state;
	for (size_t i = 0; i < sizeof columns / sizeof *columns; i++) {
		const struct column *c = columns[i];
		memset(&field, 1, sizeof field);
		c->type->clear(c, &field);
		expect_text("cleared", c->type->write(c, &field, out), "");
	}
}

static void what_would_be_right_is_said(void **state)
{
	static const struct {
		const struct column *column;
		const char *want;
	} row[] = {
		{ &text_column, "a text of at most 5 letters in one line (an accented "
				"one counts as two)" },
		{ &count_column, "a whole number from 0 to 9999" },
		{ &area_column, "a number from 0 to 1.50 with a decimal point and at "
				"most two decimals" },
		{ &lat_column, "degrees from -90 to 90 with a decimal point, such as "
			       "46.251849" },
		{ &word_column, "one of: red, green" },
	};
	char out[RIGHT_BYTES];

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		row[i].column->type->right(row[i].column, out);
		expect_text("right", out, row[i].want);
	}
}

/* Room for the field of every column: a text of NOTE_BYTES at most. */
static void no_column_lies_outside_its_row(void **state)
{
	(void)state;
	for (size_t k = 0; kinds[k]; k++)
		for (size_t i = 0; i < kinds[k]->n_columns; i++) {
			const struct column *c = &kinds[k]->columns[i];
			size_t size = c->type == &value_text ? (size_t)c->hi : 4;
			if (c->at + size > kinds[k]->row_bytes)
				fail_msg("%s, %s", kinds[k]->name, c->name);
			for (size_t j = 0; j < i; j++)
				if (kinds[k]->columns[j].at == c->at)
					fail_msg("%s: %s and %s share a field",
						kinds[k]->name, c->name,
						kinds[k]->columns[j].name);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_value_is_read_and_written),
		cmocka_unit_test(an_empty_value_is_written_empty),
		cmocka_unit_test(what_would_be_right_is_said),
		cmocka_unit_test(no_column_lies_outside_its_row),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
