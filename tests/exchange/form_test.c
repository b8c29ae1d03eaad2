/* A form refuses what a file is refused for, in the same words. */
#include "typed.h"

#include "base/csv.h"

/* The same as a file of one row; freed by the caller. */
static char *file_of(const char *pairs)
{
	struct buf head = { 0 }, row = { 0 };
	char copy[1000], *rest = copy, *pair;

	text_copy(copy, sizeof copy, pairs);
	while ((pair = strsep(&rest, ";"))) {
		char *value = strchr(pair, '=');
		*value++ = '\0';
		csv_add(&row, value, head.n == 0);
		csv_add(&head, pair, head.n == 0);
	}
	buf_add(&head, "\r\n");
	buf_add(&head, row.text);
	buf_add(&head, "\r\n");
	buf_free(&row);
	return head.text;
}

/* What the import says behind the place that it names. */
static const char *sentence(const char *complaint, char column[static NAME_BYTES])
{
	static const char at_column[] = "file.csv, line 2, column ";
	static const char at_row[] = "file.csv, line 2: ";

	column[0] = '\0';
	if (strncmp(complaint, at_row, sizeof at_row - 1) == 0)
		return complaint + sizeof at_row - 1;
	if (strncmp(complaint, at_column, sizeof at_column - 1) != 0)
		fail_msg("%s", complaint);
	complaint += sizeof at_column - 1;
	size_t n = strcspn(complaint, ":");
	snprintf(column, NAME_BYTES, "%.*s", (int)n, complaint);
	return complaint + n + 2;
}

/* Files call a source a place. */
static const char *file_kind(enum entry_kind kind)
{
	return kind == ENTRY_SOURCES ? "places" : entry_families[kind].name;
}

static void a_form_refuses_what_the_import_refuses_in_the_same_words(void **state)
{
	static const struct {
		enum entry_kind kind;
		const char *typed, *column, *says;
	} row[] = {
		{ ENTRY_FARMS, "farm=;season_start=07-01", "farm",
			"a value is missing; it takes a text" },
		{ ENTRY_FARMS, "farm=A;season_start=02-30", "season_start",
			"\"02-30\" is not right; it takes a day of the year" },
		{ ENTRY_FARMS, "farm=A;run_weekday=Tuesday", "run_weekday",
			"one of: Mon, Tue" },
		{ ENTRY_FARMS,
			"farm=12345678901234567890123456789012345678901234567890",
			"farm", "is not right; it takes a text of at most 47 letters" },
		{ ENTRY_BLOCKS, "farm=Nethermoss;block=", "block", "is missing" },
		{ ENTRY_BLOCKS, "farm=Nethermoss;block=B;condition=wild", "condition",
			"one of: conventional, disrupted" },
		{ ENTRY_BLOCKS, "farm=Nethermoss;block=B;area_ha=-1", "area_ha",
			"a number from 0 to 1000000" },
		{ ENTRY_BLOCKS, "farm=Nethermoss;block=B;area_ha=1000001", "area_ha",
			"a number from 0 to 1000000" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=Q", "pest",
			"\"Q\" is not in the book; it has: AM, CBFW, CM" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;lure=Q",
			"lure", "is not in the book; lures of that pest: CM 1 mg" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;card=Q",
			"card", "is not in the book; it has: delta liner" },
		{ ENTRY_TRAPS,
			"farm=Nethermoss;block=Slip;trap=9;pest=CM;lure=OFM standard",
			"lure", "draws another pest than CM; a trap keeps the scent" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;lat=1", "lon",
			"a position needs both lat and lon, or neither" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;lat=91;lon=1",
			"lat", "degrees from -90 to 90" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;place=edge",
			"place", "one of: border, interior, outside" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=9;pest=CM;order=0",
			"order", "a whole number from 1 to 1000000" },
		{ ENTRY_TRAPS,
			"farm=Nethermoss;block=Slip;trap=9;pest=CM;hung=2026-07-22",
			"hung", "\"2026-07-22\" lies after today, 2026-07-21" },
		{ ENTRY_TRAPS,
			"farm=Nethermoss;block=Slip;trap=9;pest=CM;hung=2026-06-31",
			"hung", "a date of the calendar" },
		{ ENTRY_TRAPS,
			"farm=Nethermoss;block=Slip;trap=9;pest=CM;hung=2026-06-01;"
			"pulled=2026-06-01",
			"pulled", "must lie after the day it was hung, 2026-06-01" },
		{ ENTRY_PESTS, "code=ABCDEFGHIJKL", "code", "at most 11 letters" },
		{ ENTRY_PESTS, "code=Q;unit=;base=10;method=;cutoff=", "base",
			"stands without a unit; write C or F under unit" },
		{ ENTRY_PESTS, "code=Q;unit=C;base=;method=sine;cutoff=none", "base",
			"a unit needs its base, method and cutoff" },
		{ ENTRY_PESTS,
			"code=Q;unit=F;base=50;cap=49;method=sine;cutoff=horizontal",
			"cap", "the base must be lower than the cap" },
		{ ENTRY_PESTS,
			"code=Q;unit=F;base=50;cap=88;method=average;cutoff=vertical",
			"cap", "a cutoff goes with sines and triangles" },
		{ ENTRY_PESTS, "code=Q;biofix_rule=first", "biofix_rule",
			"is no rule; there are: sustained, " },
		{ ENTRY_LURES, "lure=kept;life_days=20", "lure", "cannot name a lure" },
		{ ENTRY_LURES, "lure=x;life_days=", "life_days",
			"a value is missing; it takes a whole number from 1 to 366" },
		{ ENTRY_LURES, "lure=x;life_days=367", "life_days",
			"a whole number from 1 to 366" },
		{ ENTRY_LURES, "lure=x;life_days=20;pest=Q", "pest",
			"is not in the book; it has: AM" },
		{ ENTRY_LURES, "lure=x;life_days=20;hot_days=10;hot_from=06-01;hot_to=",
			"hot_days", "goes together with hot_from and hot_to" },
		{ ENTRY_LURES,
			"lure=x;life_days=20;hot_days=21;hot_from=06-01;hot_to=08-31",
			"hot_days", "is longer than life_days, 20" },
		{ ENTRY_LURES, "lure=x;life_days=20;stock=10000", "stock",
			"a whole number from 0 to 9999" },
		{ ENTRY_LURES, "lure=x;life_days=20;stock=;stock_day=2026-07-01",
			"stock_day", "stands without a stock" },
		{ ENTRY_LURES, "lure=x;life_days=20;stock=3;stock_day=2026-07-22",
			"stock_day", "lies after today, 2026-07-21" },
		{ ENTRY_CARDS, "card=kept;life_days=20", "card", "cannot name a card" },
		{ ENTRY_CARDS,
			"card=x;life_days=30;stir_at=31;change_at=30;floor_at=50",
			"change_at", "must rise in this order" },
		{ ENTRY_CARDS, "card=x;life_days=30;stock=1;reorder_at=-1",
			"reorder_at", "a whole number from 0 to 9999" },
		{ ENTRY_THRESHOLDS, "pest=Q;measure=none", "pest",
			"is not in the book" },
		{ ENTRY_THRESHOLDS, "pest=CM;measure=weekly", "measure",
			"one of: trap-week, block-week" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;block=Slip;measure=trap-week;comparator=>=;value=5",
			"block", "needs its farm in the column farm" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;farm=Nethermoss;block=Q;measure=trap-week;comparator=>="
			";value=5",
			"block", "is no block of Nethermoss, which has: Slip" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;farm=Q;measure=trap-week;comparator=>=;value=5",
			"farm", "is not in the book; it has: Nethermoss, Quarle Top" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;lure=OFM standard;measure=trap-week;comparator=>=;"
			"value=5",
			"lure",
			"draws another pest than CM, so this would never hold" },
		{ ENTRY_THRESHOLDS, "pest=CM;measure=trap-week;comparator=>=;value=",
			"value", "a threshold needs one, in moths" },
		{ ENTRY_THRESHOLDS, "pest=CM;measure=trap-week;comparator=;value=5",
			"comparator", "a threshold needs one" },
		{ ENTRY_THRESHOLDS, "pest=CM;measure=none;value=5", "value",
			"does not go with the measure none" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;measure=trap-week;span=9;comparator=>=;value=5",
			"span",
			"the span of a weekly measure is a number of weeks, 1 to 8" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;measure=trap-night;span=hung;comparator=>=;value=5",
			"span", "the span of a nightly measure" },
		{ ENTRY_THRESHOLDS, "pest=CM;measure=trap-week;comparator=>=;value=0",
			"value", "at least 0 is true of every catch" },
		{ ENTRY_THRESHOLDS,
			"pest=CM;from=05-01;to=;measure=trap-week;comparator=>=;value=5",
			"to", "a window needs both its first and its last day" },
		{ ENTRY_STATIONS, "station=;lat=1;lon=1", "station",
			"a value is missing" },
		{ ENTRY_STATIONS, "station=S;lat=1;lon=", "lon",
			"is missing; lat and lon go together" },
		{ ENTRY_STATIONS, "station=S;lat=1;lon=181", "lon",
			"degrees from -180 to 180" },
		{ ENTRY_SOURCES, "farm=Q;name=Lane;kind=wild", "farm",
			"is not in the book; it has: Nethermoss, Quarle Top" },
		{ ENTRY_SOURCES, "farm=Nethermoss;name=;kind=wild", "name",
			"a value is missing" },
		{ ENTRY_SOURCES, "farm=Nethermoss;name=Lane;kind=orchard", "kind",
			"one of: abandoned, wild, woodlot, bins, other" },
		{ ENTRY_SOURCES, "farm=Nethermoss;name=Lane;kind=wild;lat=1;lon=",
			"lon", "is missing; lat and lon go together" },
		{ ENTRY_SOURCES, "farm=Nethermoss;name=Lane;kind=wild;lat=91;lon=1",
			"lat", "degrees from -90 to 90" },
		{ ENTRY_SOURCES,
			"farm=Nethermoss;name=Lane;kind=wild;outline=along the lane",
			"outline", "3 to 100 corners" },
		{ ENTRY_SETTINGS, "name=fill_days;value=4", "value",
			"\"4\" is not right; it takes a whole number from 0 to 3" },
		{ ENTRY_SETTINGS, "name=near_x100;value=101 %", "value",
			"it takes a whole number from 0 to 100" },
		{ ENTRY_SETTINGS, "name=skip_biofix_day;value=maybe", "value",
			"it takes a whole number from 0 to 1" },
		{ ENTRY_SETTINGS, "name=read_num;value=4", NULL,
			"the settings ask for 4 of 3 traps" },
		{ ENTRY_SETTINGS, "name=scout;value=abcdefghijklmnopqrstuvwx", "value",
			"is too long for a scout" },
		{ ENTRY_SETTINGS, "name=week_start;value=friday", "value",
			"one of: monday, sunday" },
	};
	struct book *b = farm_book();
	struct log l = { 0 };

	(void)state;
	read_log(b, &l);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct err e = { 0 };
		struct entry_fault fault;
		char column[NAME_BYTES], *before = give_all(b);
		char *file = file_of(row[i].typed);
		const char *kind = file_kind(row[i].kind);
		if (take(b, kind, file, &out, &e))
			fail_msg("%s: the import took it", row[i].typed);
		const char *want = sentence(complaint(&out, &e), column);
		struct entry *r = typed(b, &l, row[i].kind, row[i].typed);
		if (row[i].kind == ENTRY_SETTINGS)
			r->id = 1;
		if (entry_put(r, b, &l, true, &fault))
			fail_msg("%s: the form took it", row[i].typed);
		expect_text(row[i].typed, fault.text, want);
		expect_text(row[i].typed,
			fault.field < 0
				? ""
				: entry_families[row[i].kind].columns[fault.field].name,
			row[i].column ? row[i].column : "");
		expect_text(row[i].typed, column, row[i].column ? row[i].column : "");
		if (!strstr(want, row[i].says))
			fail_msg("%s: %s", row[i].typed, want);
		char *after = give_all(b);
		expect_text(row[i].typed, after, before);
		imported_free(&out);
		free(before);
		free(after);
		free(file);
		free(r);
	}
	log_free(&l);
	book_close(b);
}

/* Names that are taken: the book's sentence, of the file's row and of the form. */
static void a_taken_name_is_refused_on_a_form(void **state)
{
	static const struct {
		enum entry_kind kind;
		const char *typed, *says;
	} row[] = {
		{ ENTRY_FARMS, "farm=Nethermoss", "there is a Nethermoss already" },
		{ ENTRY_BLOCKS, "farm=Nethermoss;block=Slip",
			"there is a Slip already" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Slip;trap=1;pest=CM",
			"there is a 1 already" },
		{ ENTRY_PESTS, "code=CM", "there is a CM already" },
		{ ENTRY_LURES, "lure=CM 1 mg;life_days=3",
			"there is a CM 1 mg already" },
		{ ENTRY_CARDS, "card=delta liner;life_days=3",
			"there is a delta liner already" },
		{ ENTRY_TRAPS, "farm=Q;block=Slip;trap=9;pest=CM",
			"\"Q\" is not in the book; it has: Nethermoss, Quarle Top" },
		{ ENTRY_TRAPS, "farm=Nethermoss;block=Bank;trap=9;pest=CM",
			"\"Bank\" is no block of Nethermoss, which has: Slip" },
		{ ENTRY_FARMS, "farm=A;station=Weir",
			"\"Weir\" is not in the book, which has none yet" },
	};
	struct book *b = farm_book();
	struct log l = { 0 };

	(void)state;
	read_log(b, &l);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_fault fault;
		struct entry *r = typed(b, &l, row[i].kind, row[i].typed);
		if (entry_put(r, b, &l, false, &fault) ||
			!strstr(fault.text, row[i].says))
			fail_msg("%s: %s", row[i].typed, fault.text);
		assert_int_equal(r->id, 0);
		free(r);
	}
	log_free(&l);
	book_close(b);
}

static void a_biofix_goes_along_with_a_season_that_a_form_moves(void **state)
{
	struct book *b = farm_book();
	struct log l = { 0 };
	struct entry_fault fault;

	(void)state;
	must_take(b, "biofix",
		"farm,pest,date\nQuarle Top,CM,2025-01-11\nQuarle Top,CM,2026-01-10\n");
	read_log(b, &l);
	int64_t farm = l.farms.items[1].id;
	struct entry *r = form_of(b, &l, ENTRY_FARMS, farm);
	form_type(r, "season_start", "01-11");
	assert_false(entry_put(r, b, &l, false, &fault));
	assert_string_equal(fault.text,
		"Quarle Top: the biofix of 2026-01-10 stays under the season of 2026, "
		"since that of 2025 has one already");
	form_type(r, "season_start", "07-01");
	form_put(r, b, &l);
	char *got = give(b, "biofix");
	assert_non_null(strstr(got, "CM,2024,2025-01-11,\r\nQuarle Top,CM,2025,2026"));
	free(got);
	free(r);
	log_free(&l);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			a_form_refuses_what_the_import_refuses_in_the_same_words),
		cmocka_unit_test(a_taken_name_is_refused_on_a_form),
		cmocka_unit_test(a_biofix_goes_along_with_a_season_that_a_form_moves),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
