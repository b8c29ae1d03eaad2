/* Files of places that moths may come from, and positions that cannot be right. */
#include "desk.h"

#define HEAD "farm,name,kind,lat,lon,outline\n"
#define TRIANGLE "41.2 165.19; 41.2 165.2; 41.21 165.2"

/* Three traps of Quarle Top within a kilometre, in the open sea. */
static struct book *sea_book(void)
{
	struct book *b = new_book();

	must_take(b, "traps",
		"farm,block,trap,pest,lat,lon\n"
		"Quarle Top,Slip,1,CM,41.2050,165.2010\n"
		"Quarle Top,Slip,2,CM,41.2060,165.2020\n"
		"Quarle Top,Bank,3,OFM,41.2070,165.2030\n"
		"Nethermoss,Slip,1,CM,,\n");
	return b;
}

static void places_go_out_as_they_stand(void **state)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	struct book *b = sea_book();

	(void)state;
	assert_true(take(b, "places",
		HEAD "Quarle Top,Withy Garth,Abandoned,,,\"" TRIANGLE "\"\n"
		     "Quarle Top,\"bins, old\",bins,41.2,165.2,\n"
		     "Nethermoss,Withy Garth,woodlot,-41.25,-165.5,41 165;42 165;42  "
		     "166;\n"
		     "Nethermoss,Lane,other,,,\n",
		&out, &e));
	assert_int_equal(out.n_new, 4);
	assert_int_equal(out.n_warnings, 0);
	imported_free(&out);
	char *got = give(b, "places");
	expect_text("given out", got,
		"farm,name,kind,lat,lon,outline\r\n"
		"Nethermoss,Lane,other,,,\r\n"
		"Nethermoss,Withy Garth,woodlot,-41.250000,-165.500000,41 165; 42 165; "
		"42 166\r\n"
		"Quarle Top,\"bins, old\",bins,41.200000,165.200000,\r\n"
		"Quarle Top,Withy Garth,abandoned,,," TRIANGLE "\r\n");
	out = (struct imported){ 0 };
	assert_true(take(b, "places", got, &out, &e));
	assert_int_equal(out.n_same, 4);
	imported_free(&out);
	free(got);
	book_close(b);
}

/* A column that the file lacks leaves what is there; an empty value takes it out. */
static void what_a_file_of_places_leaves_out_stays(void **state)
{
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "the kind alone", "farm,name,kind\nQuarle Top,Withy Garth,wild\n",
			"wild,41.200000,165.200000," TRIANGLE "\r\n" },
		{ "no outline",
			"farm,name,kind,outline\nQuarle Top,Withy Garth,wild,\n",
			"wild,41.200000,165.200000,\r\n" },
		{ "another position",
			"farm,name,kind,lat,lon\nQuarle Top,Withy Garth,wild,41.21,"
			"165.21\n",
			"wild,41.210000,165.210000,\r\n" },
		{ "no position",
			"farm,name,kind,lat,lon\nQuarle Top,Withy Garth,wild,,\n",
			"wild,,,\r\n" },
	};
	struct book *b = sea_book();

	(void)state;
	must_take(b, "places",
		HEAD "Quarle Top,Withy Garth,abandoned,41.2,165.2," TRIANGLE "\n");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		must_take(b, "places", row[i].text);
		char *got = give(b, "places");
		const char *line = strstr(got, "Withy Garth,");
		expect_text(row[i].why, line ? line + strlen("Withy Garth,") : got,
			row[i].want);
		free(got);
	}
	book_close(b);
}

static void a_wrong_place_is_named(void **state)
{
	static const char corners[] =
		"it takes 3 to 100 corners, each latitude, blank, longitude, with ; "
		"between, such as 46.1 14.49; 46.1 14.5; 46.2 14.5";
	static const struct {
		const char *why, *row, *column, *right;
	} row[] = {
		{ "no such farm", "Elsewhere,Lane,wild,,,", "farm",
			"is not in the book; it has: Nethermoss, Quarle Top" },
		{ "no name", "Quarle Top,,wild,,,", "name", "a value is missing" },
		{ "no kind", "Quarle Top,Lane,,,,", "kind",
			"one of: abandoned, wild, woodlot, bins, other" },
		{ "no such kind", "Quarle Top,Lane,orchard,,,", "kind",
			"one of: abandoned, wild, woodlot, bins, other" },
		{ "half a position", "Quarle Top,Lane,wild,41.2,,", "lon",
			"is missing; lat and lon go together" },
		{ "off the earth", "Quarle Top,Lane,wild,90.1,0,", "lat",
			"degrees from -90 to 90" },
		{ "two corners", "Quarle Top,Lane,wild,,,41 165;41 166", "outline",
			corners },
		{ "a corner off the earth",
			"Quarle Top,Lane,wild,,,41 165;41 166;91 165", "outline",
			corners },
		{ "half a corner", "Quarle Top,Lane,wild,,,41 165;41 166;42", "outline",
			corners },
		{ "words", "Quarle Top,Lane,wild,,,along the lane", "outline",
			corners },
		{ "twice", "Quarle Top,Lane,wild,,,\nQuarle Top,Lane,wild,,,", "name",
			"\"Lane\" is in the file twice; a farm has it once" },
	};
	struct book *b = sea_book();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct imported out = { 0 };
		struct err e = { 0 };
		char text[400], column[40];
		char *before = give_all(b);

		snprintf(text, sizeof text, HEAD "%s\n", row[i].row);
		snprintf(column, sizeof column, "column %s:", row[i].column);
		if (take(b, "places", text, &out, &e))
			fail_msg("%s: was taken in", row[i].why);
		if (!strstr(complaint(&out, &e), row[i].right) ||
			!strstr(complaint(&out, &e), column))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		imported_free(&out);
		char *after = give_all(b);
		expect_text(row[i].why, after, before);
		free(before);
		free(after);
	}
	book_close(b);
}

/* Distances by the haversine formula as Python works it out, on a sphere of 6 371.0088
 * km: 50 km north are 0.4497 degrees. */
static void a_place_far_from_the_traps_is_asked_about(void **state)
{
	static const struct {
		const char *why, *row, *want;
	} row[] = {
		{ "just near enough", "Quarle Top,Lane,wild,41.6555,165.202,", NULL },
		{ "just too far", "Quarle Top,Lane,wild,41.6660,165.202,",
			"file.csv, line 2: Lane lies 51 km from the middle of the "
			"traps of Quarle Top; is its position right?" },
		{ "a swapped sign", "Quarle Top,Lane,wild,-41.206,165.202,",
			"file.csv, line 2: Lane lies 9 164 km from the middle of the "
			"traps of Quarle Top; is its position right?" },
		{ "one corner",
			"Quarle Top,Lane,wild,,,41.2 165.2;41.2 165.3;42.2 165.3",
			"file.csv, line 2: Lane lies 111 km from the middle of the "
			"traps of Quarle Top; is its position right?" },
		{ "a farm whose traps are nowhere", "Nethermoss,Lane,wild,-41,165,",
			NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = sea_book();
		struct imported out = { 0 };
		struct err e = { 0 };
		char text[400];

		snprintf(text, sizeof text, HEAD "%s\n", row[i].row);
		if (!take(b, "places", text, &out, &e))
			fail_msg("%s: %s", row[i].why, complaint(&out, &e));
		expect_text(row[i].why, out.warnings.n ? out.warnings.items[0] : "none",
			row[i].want ? row[i].want : "none");
		imported_free(&out);
		book_close(b);
	}
}

/* The middle is that of most: the one wrong trap is asked about, not the others. */
static void a_trap_far_from_the_others_is_asked_about(void **state)
{
	struct book *b = sea_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "traps",
		"farm,block,trap,pest,lat,lon\n"
		"Quarle Top,Slip,4,CM,41.2080,165.2040\n"
		"Quarle Top,Slip,5,CM,41.2080,-165.2040\n",
		&out, &e));
	assert_int_equal(out.n_warnings, 1);
	assert_string_equal(out.warnings.items[0],
		"file.csv, line 3: trap 5 lies 2 464 km from the middle of the traps "
		"of Quarle Top; is its position right?");
	imported_free(&out);
	book_close(b);
}

/* Traps on both sides of the date line are neighbours. */
static void the_date_line_is_no_distance(void **state)
{
	struct book *b = new_book();
	struct imported out = { 0 };
	struct err e = { 0 };

	(void)state;
	assert_true(take(b, "traps",
		"farm,block,trap,pest,lat,lon\n"
		"Quarle Top,Slip,0,CM,41.2050,179.9980\n"
		"Quarle Top,Slip,1,CM,41.2050,179.9990\n"
		"Quarle Top,Slip,2,CM,41.2050,-179.9990\n"
		"Quarle Top,Slip,3,CM,41.2050,-179.9980\n",
		&out, &e));
	assert_int_equal(out.n_warnings, 0);
	imported_free(&out);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(places_go_out_as_they_stand),
		cmocka_unit_test(what_a_file_of_places_leaves_out_stays),
		cmocka_unit_test(a_wrong_place_is_named),
		cmocka_unit_test(a_place_far_from_the_traps_is_asked_about),
		cmocka_unit_test(a_trap_far_from_the_others_is_asked_about),
		cmocka_unit_test(the_date_line_is_no_distance),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
