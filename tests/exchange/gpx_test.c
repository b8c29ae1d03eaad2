/* Waypoints in and out. The layout is that of GPX 1.1, topografix.com/GPX/1/1. */
#include "desk.h"
#include "exchange/gpx.h"

#include <expat.h>

#define GPX(body)                                                                      \
	"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"                                 \
	"<gpx version=\"1.1\" creator=\"a receiver\" "                                 \
	"xmlns=\"http://www.topografix.com/GPX/1/1\">\n" body "</gpx>\n"
#define WPT(lat, lon, name)                                                            \
	"<wpt lat=\"" lat "\" lon=\"" lon "\"><name>" name "</name></wpt>\n"

static int64_t farm_of(struct book *b, const char *name)
{
	struct farms all = { 0 };
	int64_t id = 0;

	assert_true(book_farms(b, &all, NULL));
	for (size_t i = 0; i < all.n; i++)
		if (strcmp(all.items[i].name, name) == 0)
			id = all.items[i].id;
	free(all.items);
	assert_true(id > 0);
	return id;
}

static bool take_gpx(
	struct book *b, const char *text, size_t n, struct imported *out, struct err *e)
{
	struct gpx_from from = { .name = "way.gpx", .farm = farm_of(b, "Quarle Top") };

	from.file = fmemopen((void *)(uintptr_t)text, n, "r");
	assert_non_null(from.file);
	bool ok = gpx_import(b, &from, out, e);
	fclose(from.file);
	return ok;
}

static void must_take_gpx(struct book *b, const char *text, struct imported *out)
{
	struct err e = { 0 };

	if (!take_gpx(b, text, strlen(text), out, &e))
		fail_msg("%s; %s", e.text,
			out->problems.n ? out->problems.items[0] : "");
}

/* "lat,lon" of a trap of Quarle Top, as a file of traps has it. */
static void expect_at(struct book *b, const char *label, const char *want)
{
	char start[64], *traps = give(b, "traps");
	const char *line;

	snprintf(start, sizeof start, "\r\nQuarle Top,%s,%s,",
		strcmp(label, "3") == 0 ? "Bank" : "Slip", label);
	line = strstr(traps, start);
	if (!line || !strstr(line, want) || strstr(line, want) > strchr(line + 2, '\r'))
		fail_msg("trap %s: no \"%s\" in\n%s", label, want, traps);
	free(traps);
}

static void waypoints_give_traps_their_positions(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_gpx(b,
		GPX("<metadata><name>1</name></metadata>\n"
		    "<wpt lat=\"41.205\" lon=\"165.201\"><ele>0</ele><name> 1\n</name>"
		    "<extensions><x xmlns=\"urn:x\"><name>2</name></x></extensions>"
		    "</wpt>\n" WPT("+41.2060000000000012", "165.202",
			    "<![CDATA[2]]>") WPT("41.5", "165.5",
			    "Gate") "<wpt "
				    "lat=\"41.3\" lon=\"165.3\"/>\n"
				    "<trk><name>3</name><trkseg><trkpt lat=\"1\" lon=\"1\"/></trkseg>"
				    "</trk>\n"),
		&out);
	assert_int_equal(out.n_changed, 2);
	assert_int_equal(out.n_same, 0);
	assert_int_equal(out.n_warnings, 2);
	assert_string_equal(out.warnings.items[0],
		"way.gpx, line 7: the waypoint \"Gate\" is no trap of Quarle Top; it "
		"was passed over");
	assert_string_equal(out.warnings.items[1],
		"way.gpx, line 8: a waypoint has no name that a trap could have; it "
		"was passed over");
	assert_int_equal(out.notes.n, 1);
	assert_string_equal(out.notes.items[0],
		"traps of Quarle Top without a waypoint in the file: 3");
	imported_free(&out);
	expect_at(b, "1", "41.205000,165.201000");
	expect_at(b, "2", "41.206000,165.202000");
	expect_at(b, "3", ",,");
	book_close(b);
}

/* And nothing else of the book. */
static void a_waypoint_is_called_by_its_first_name_alone(void **state)
{
	static const struct {
		const char *why, *name;
	} row[] = {
		{ "a second name", "<name>1</name><name>2</name>" },
		{ "an element within", "<name>1<b>2</b></name>" },
		{ "an empty one before it", "<name/><name>1</name>" },
		{ "a character by its number", "<name>&#x31;</name>" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct book *b = farm_book();
		struct imported out = { 0 };
		char text[300];
		snprintf(text, sizeof text,
			GPX("<wpt lat=\"41.25\" lon=\"165.25\">%s</wpt>"), row[i].name);
		must_take_gpx(b, text, &out);
		if (out.n_changed != 1)
			fail_msg("%s: %d changed", row[i].why, (int)out.n_changed);
		expect_at(b, "1", "41.250000,165.250000");
		imported_free(&out);
		book_close(b);
	}
}

static void waypoints_change_positions_alone(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	char *before = give_all(b);

	(void)state;
	must_take_gpx(b, GPX(WPT("41.2", "165.2", "1")), &out);
	imported_free(&out);
	char *after = give_all(b), *at = strstr(after, "41.200000,165.200000");
	assert_non_null(at);
	memmove(at + 1, at + strlen("41.200000,165.200000"),
		strlen(at + strlen("41.200000,165.200000")) + 1);
	*at = ',';
	expect_text("but for the position", after, before);
	free(before);
	free(after);
	out = (struct imported){ 0 };
	must_take_gpx(b, GPX(WPT("41.2", "165.2", "1")), &out);
	assert_int_equal(out.n_changed, 0);
	assert_int_equal(out.n_same, 1);
	imported_free(&out);
	book_close(b);
}

static void a_waypoint_far_from_the_rest_is_asked_about(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };

	(void)state;
	must_take_gpx(b,
		GPX(WPT("41.2", "165.2", "1") WPT("41.2", "165.2", "2")
				WPT("41.2", "16.52", "3")),
		&out);
	assert_int_equal(out.n_warnings, 1);
	assert_string_equal(out.warnings.items[0],
		"trap 3 lies 10 325 km from the middle of the traps of Quarle Top; is "
		"its position right?");
	imported_free(&out);
	book_close(b);
}

static void expect_bad(
	struct book *b, const char *why, const char *text, size_t n, const char *want)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	char *before = give_all(b);

	if (take_gpx(b, text, n, &out, &e))
		fail_msg("%s: was taken in", why);
	if (e.kind != ERR_INPUT || !strstr(complaint(&out, &e), want))
		fail_msg("%s: kind %d: %s", why, (int)e.kind, complaint(&out, &e));
	imported_free(&out);
	char *after = give_all(b);
	expect_text(why, after, before);
	free(before);
	free(after);
}

static void a_wrong_file_of_waypoints_changes_nothing(void **state)
{
	static const char entities[] =
		"<!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b "
		"\"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c "
		"\"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]>";
	static const struct {
		const char *why, *text, *want;
	} row[] = {
		{ "no XML", "farm,trap\n", "line 1: this is not well-formed XML" },
		{ "torn", "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt",
			"line 1: this is not well-formed XML" },
		{ "other XML", "<kml/>", "line 1: this is no GPX file" },
		{ "no name space", "<gpx><wpt lat=\"1\" lon=\"1\"/></gpx>",
			"line 1: this is no GPX file" },
		{ "no latitude", GPX("<wpt lon=\"165.2\"><name>1</name></wpt>"),
			"line 3: a waypoint needs lat from -90 to 90" },
		{ "off the earth", GPX(WPT("90.0001", "165.2", "1")),
			"line 3: a waypoint needs lat from -90 to 90" },
		{ "a number for C alone", GPX(WPT("0x10", "165.2", "1")),
			"line 3: a waypoint needs lat from -90 to 90" },
		{ "no number", GPX(WPT("nan", "inf", "1")),
			"line 3: a waypoint needs lat from -90 to 90" },
		{ "a decimal comma", GPX(WPT("41,2", "165.2", "1")),
			"line 3: a waypoint needs lat from -90 to 90" },
		{ "twice", GPX(WPT("41.2", "165.2", "1") WPT("41.3", "165.2", " 1 ")),
			"line 4: the waypoint \"1\" is in the file twice, in line 3 "
			"too; a trap hangs in one place" },
		{ "none of the farm", GPX(WPT("41.2", "165.2", "Gate")),
			"no waypoint is called as a trap of Quarle Top, which has: 1, 2, "
			"3" },
		{ "empty", GPX(""), "no waypoint is called as a trap" },
		{ "a file from outside",
			"<!DOCTYPE gpx SYSTEM \"file:///etc/passwd\">\n<gpx "
			"xmlns=\"http://www.topografix.com/GPX/1/1\"/>",
			"line 1: a document type stands there" },
	};
	struct book *b = farm_book();
	struct buf bomb = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		expect_bad(
			b, row[i].why, row[i].text, strlen(row[i].text), row[i].want);
	buf_addf(&bomb, "%s%s", entities,
		strchr(GPX(WPT("41.2", "165.2", "&c;")), '\n'));
	expect_bad(b, "entities", bomb.text, bomb.n, "a document type stands there");
	buf_free(&bomb);
	expect_bad(b, "a NUL byte", GPX(WPT("41.2", "165.2", "1")) "\0 ",
		sizeof GPX(WPT("41.2", "165.2", "1")) + 1, "not well-formed XML");
	book_close(b);
}

/* The limit itself is fine, one more is not. */
static void a_file_holds_so_many_waypoints_and_no_more(void **state)
{
	struct book *b = farm_book();
	struct imported out = { 0 };
	struct buf text = { 0 };

	(void)state;
	buf_add(&text, "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\">\n");
	buf_add(&text, WPT("41.2", "165.2", "1"));
	for (int i = 1; i < GPX_WAYPOINTS_MAX; i++)
		buf_add(&text, "<wpt lat=\"1\" lon=\"1\"/>\n");
	size_t n = text.n;
	buf_add(&text, "</gpx>");
	must_take_gpx(b, text.text, &out);
	assert_int_equal(out.n_warnings, GPX_WAYPOINTS_MAX - 1);
	assert_int_equal(out.warnings.n, PROBLEMS_MAX);
	imported_free(&out);
	text.n = n;
	buf_add(&text, "<wpt lat=\"1\" lon=\"1\"/></gpx>");
	expect_bad(b, "one more", text.text, text.n, "more than 20 000 waypoints");
	buf_free(&text);
	book_close(b);
}

struct seen {
	int waypoints;
	char lat[32], names[200];
	bool in_name;
};

static void see_start(void *arg, const char *name, const char **pairs)
{
	struct seen *s = arg;

	s->in_name = strcmp(name, "name") == 0;
	if (strcmp(name, "wpt") != 0)
		return;
	s->waypoints++;
	assert_string_equal(pairs[0], "lat");
	text_copy(s->lat, sizeof s->lat, pairs[1]);
}

static void see_text(void *arg, const char *text, int n)
{
	struct seen *s = arg;

	if (s->in_name)
		strncat(s->names, text, (size_t)n);
}

/* Another parser's reading of it: expat on its own, without name spaces. */
static void expect_well_formed(const char *text, struct seen *seen)
{
	XML_Parser p = XML_ParserCreate(NULL);

	assert_non_null(p);
	XML_SetUserData(p, seen);
	XML_SetStartElementHandler(p, see_start);
	XML_SetCharacterDataHandler(p, see_text);
	if (XML_Parse(p, text, (int)strlen(text), 1) != XML_STATUS_OK)
		fail_msg("%s:\n%s", XML_ErrorString(XML_GetErrorCode(p)), text);
	XML_ParserFree(p);
}

static void what_goes_out_comes_back(void **state)
{
	struct book *b = farm_book(), *again = farm_book();
	struct buf text = { 0 };
	struct imported out = { 0 };
	struct seen seen = { 0 };

	(void)state;
	must_take(b, "traps",
		"farm,block,trap,pest,lat,lon\n"
		"Quarle Top,Slip,1,CM,41.2050001,-165.2010002\n"
		"Quarle Top,Slip,<&> 4,CM,-0.5,0\n");
	must_take(again, "traps", "farm,block,trap,pest\nQuarle Top,Slip,<&> 4,CM\n");
	assert_true(gpx_export(b, farm_of(b, "Quarle Top"), &text, NULL));
	expect_well_formed(text.text, &seen);
	assert_int_equal(seen.waypoints, 2);
	must_take_gpx(again, text.text, &out);
	assert_int_equal(out.n_changed, 2);
	assert_int_equal(out.n_warnings, 2); /* half the world apart */
	imported_free(&out);
	char *one = give(b, "traps"), *two = give(again, "traps");
	expect_text("the same traps", two, one);
	free(one);
	free(two);
	buf_free(&text);
	book_close(b);
	book_close(again);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(waypoints_give_traps_their_positions),
		cmocka_unit_test(a_waypoint_is_called_by_its_first_name_alone),
		cmocka_unit_test(waypoints_change_positions_alone),
		cmocka_unit_test(a_waypoint_far_from_the_rest_is_asked_about),
		cmocka_unit_test(a_wrong_file_of_waypoints_changes_nothing),
		cmocka_unit_test(a_file_holds_so_many_waypoints_and_no_more),
		cmocka_unit_test(what_goes_out_comes_back),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
