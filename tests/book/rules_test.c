#include "fixture.h"

static struct rule simple(const struct desk *d)
{
	return (struct rule){ .pest = d->pest,
		.measure = MEASURE_TRAP_WEEK,
		.span = 1,
		.comparator = AT_LEAST,
		.value_x100 = 500 };
}

static void book_keeps_a_rule_as_given(void **state)
{
	struct rules got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct rule full = { .pest = d.pest,
		.crop = "apple",
		.condition = CONDITION_DISRUPTED,
		.lure = d.lure,
		.place = PLACE_BORDER,
		.farm = d.farm,
		.block = d.block,
		.flight = 2,
		.from = 1001,
		.to = 229,
		.until_dd = 1000,
		.measure = MEASURE_BLOCK_TOTAL,
		.span_kind = SPAN_BIOFIX,
		.comparator = MORE_THAN,
		.value_x100 = 1250,
		.note = "n",
		.source = "s" };
	struct rule bare = simple(&d);
	must(book_put_rule(d.book, &full, e));
	must(book_put_rule(d.book, &bare, e));
	must(book_rules(d.book, &got, e));
	assert_int_equal(got.n, 2);
	assert_memory_equal(&got.items[0].pest, &full.pest, sizeof full.pest);
	assert_string_equal(got.items[0].crop, "apple");
	assert_int_equal(got.items[0].condition, full.condition);
	assert_int_equal(got.items[0].lure, full.lure);
	assert_int_equal(got.items[0].place, full.place);
	assert_int_equal(got.items[0].farm, full.farm);
	assert_int_equal(got.items[0].block, full.block);
	assert_int_equal(got.items[0].flight, 2);
	assert_int_equal(got.items[0].from, 1001);
	assert_int_equal(got.items[0].to, 229);
	assert_int_equal(got.items[0].until_dd, 1000);
	assert_int_equal(got.items[0].measure, full.measure);
	assert_int_equal(got.items[0].span_kind, SPAN_BIOFIX);
	assert_int_equal(got.items[0].span, 0);
	assert_int_equal(got.items[0].comparator, MORE_THAN);
	assert_int_equal(got.items[0].value_x100, 1250);
	assert_int_equal(got.items[1].condition, CONDITION_NONE);
	assert_int_equal(got.items[1].flight, 0);
	assert_int_equal(got.items[1].span, 1);
	free(got.items);
	desk_clear(&d);
}

struct bound {
	const char *why;
	size_t at; /* of an int32_t in struct rule */
	int32_t value;
	bool good;
};

static void book_rules_stay_in_their_ranges(void **state)
{
	static const struct bound row[] = {
		{ "last week", offsetof(struct rule, span), 8, true },
		{ "one week too many", offsetof(struct rule, span), 9, false },
		{ "no week", offsetof(struct rule, span), 0, false },
		{ "the highest value", offsetof(struct rule, value_x100), 99999999,
			true },
		{ "above it", offsetof(struct rule, value_x100), 100000000, false },
		{ "zero", offsetof(struct rule, value_x100), 0, true },
		{ "below zero", offsetof(struct rule, value_x100), -1, false },
		{ "last flight", offsetof(struct rule, flight), 9, true },
		{ "one flight too many", offsetof(struct rule, flight), 10, false },
		{ "half a window", offsetof(struct rule, from), 601, false },
		{ "degree-days", offsetof(struct rule, until_dd), 99999, true },
		{ "too many of them", offsetof(struct rule, until_dd), 100000, false },
	};
	struct err err;
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct rule r = simple(&d);
		memcpy((char *)&r + row[i].at, &row[i].value, sizeof row[i].value);
		if (book_put_rule(d.book, &r, &err) != row[i].good)
			fail_msg(
				"%s: %s", row[i].why, row[i].good ? err.text : "taken");
	}
	desk_clear(&d);
}

static void book_span_fits_its_measure(void **state)
{
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct rule r = simple(&d);
	r.span_kind = SPAN_HUNG;
	r.span = 0;
	refused(book_put_rule(d.book, &r, e), ERR_INPUT,
		"only a total runs since hung");
	r.measure = MEASURE_TRAP_TOTAL;
	must(book_put_rule(d.book, &r, e));
	r.span = 3;
	refused(book_put_rule(d.book, &r, e), ERR_INPUT, "span beside its word");
	r.span_kind = SPAN_NUMBER;
	r.span = 366;
	must(book_put_rule(d.book, &r, e));
	r.span = 367;
	refused(book_put_rule(d.book, &r, e), ERR_INPUT, "1 to 366");
	r.measure = MEASURE_BLOCK_WEEK;
	refused(book_put_rule(d.book, &r, e), ERR_INPUT, "the span in weeks");
	r.span = 8;
	must(book_put_rule(d.book, &r, e));
	r.measure = MEASURE_NONE;
	r.span = 0;
	must(book_put_rule(d.book, &r, e));
	desk_clear(&d);
}

static void book_removed_rule_leaves_its_old_form(void **state)
{
	struct rules got = { 0 };
	struct desk d;

	(void)state;
	desk_memory(&d);
	struct rule r = simple(&d);
	must(book_put_rule(d.book, &r, e));
	must(book_remove_rule(d.book, r.id, e));
	must(book_rules(d.book, &got, e));
	assert_int_equal(got.n, 0);
	assert_int_equal(
		store_number(d.book,
			"SELECT count(*) FROM history h JOIN tombstone t "
			"ON t.uid = h.uid AND t.changed_by = h.by WHERE "
			"h.kind = 'threshold' AND h.op = 'delete' AND by = 'JR' "
			"AND json_extract(old, '$.value_x100') = 500",
			0),
		1);
	refused(book_remove_rule(d.book, r.id, e), ERR_NOT_FOUND, "not in the book");
	desk_clear(&d);
}

static void book_limits_are_the_usual_until_set(void **state)
{
	struct limits l;
	struct desk d;

	(void)state;
	desk_memory(&d);
	must(book_limits(d.book, &l, e));
	assert_memory_equal(&l, &limits_usual, sizeof l);
	must(book_put_setting(d.book, "near_x100", "80", e));
	must(book_put_setting(d.book, "near_x100", "100", e));
	must(book_limits(d.book, &l, e));
	assert_int_equal(l.near_x100, 100);
	refused(book_put_setting(d.book, "near_x100", "101", e), ERR_INPUT, "0 to 100");
	refused(book_put_setting(d.book, "open_days", "-1", e), ERR_INPUT, "0 to 6");
	must(book_put_setting(d.book, "fill_days", "3", e));
	must(book_put_setting(d.book, "skip_biofix_day", "1", e));
	must(book_limits(d.book, &l, e));
	assert_int_equal(l.fill_days, 3);
	assert_int_equal(l.skip_biofix_day, 1);
	refused(book_put_setting(d.book, "fill_days", "4", e), ERR_INPUT, "0 to 3");
	refused(book_put_setting(d.book, "skip_biofix_day", "2", e), ERR_INPUT,
		"0 to 1");
	refused(book_put_setting(d.book, "read_num", "4", e), ERR_INPUT,
		"4 of 3 traps");
	must(book_limits(d.book, &l, e)); /* what was refused is not there */
	assert_int_equal(l.read_num, 2);
	assert_int_equal(l.near_x100, 100);
	desk_clear(&d);
}

static void book_settings_are_texts_by_name(void **state)
{
	struct desk d;
	char text[64] = "x";

	(void)state;
	desk_memory(&d);
	must(book_setting(d.book, "scout", text, sizeof text, e));
	assert_string_equal(text, "");
	must(book_put_setting(d.book, "scout", "Ida", e));
	must(book_setting(d.book, "scout", text, sizeof text, e));
	assert_string_equal(text, "Ida");
	refused(book_put_setting(d.book, "scout", "a\nb", e), ERR_INPUT, "printed");
	refused(book_put_setting(d.book, "", "a", e), ERR_INPUT, "empty");
	desk_clear(&d);
}

static void book_settings_laid_over_hold_while_it_is_open(void **state)
{
	static const struct {
		const char *why, *over, *want;
	} row[] = {
		{ "nothing", "", "4" },
		{ "alone", "join_nights=3", "3" },
		{ "the first", "join_nights=3;scout=Ida", "3" },
		{ "the last", "scout=Ida;join_nights=3", "3" },
		{ "twice: the first", "join_nights=3;join_nights=2", "3" },
		{ "set to nothing", "join_nights=;scout=Ida", "" },
		{ "a longer name", "join_nights_x=3", "4" },
		{ "a shorter name", "join=3;join_night=3", "4" },
		{ "without a value", "join_nights;scout=Ida", "4" },
		{ "another of that length", "join_nighty=3", "4" },
	};
	struct limits limits;
	struct desk d;
	int64_t id;

	(void)state;
	desk_memory(&d);
	must(book_setting_id(d.book, "join_nights", &id, e));
	assert_int_equal(id, 0);
	must(book_put_setting(d.book, "join_nights", "4", e));
	must(book_setting_id(d.book, "join_nights", &id, e));
	assert_true(id > 0);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		char got[NOTE_BYTES];
		book_lay_over(d.book, row[i].over);
		must(book_setting(d.book, "join_nights", got, sizeof got, e));
		if (strcmp(got, row[i].want) != 0)
			fail_msg("%s: %s", row[i].why, got);
	}
	book_lay_over(d.book, "join_nights=11"); /* 10 are long */
	refused(book_limits(d.book, &limits, e), ERR_BOOK, "join up to 11 nights");
	book_lay_over(d.book, "join_nights=10");
	must(book_limits(d.book, &limits, e));
	assert_int_equal(limits.join_nights, 10);
	desk_clear(&d);
}

static void book_settings_have_a_name_and_fit(void **state)
{
	char name[NAME_BYTES + 1], value[NOTE_BYTES + 1];
	struct desk d;

	(void)state;
	desk_memory(&d);
	memset(name, 'n', sizeof name);
	memset(value, 'v', sizeof value);
	name[NAME_BYTES] = value[NOTE_BYTES] = '\0';
	refused(book_put_setting(d.book, " ", "1", e), ERR_INPUT, "name is empty");
	refused(book_put_setting(d.book, name, "1", e), ERR_INPUT, "the length");
	refused(book_put_setting(d.book, "n", value, e), ERR_INPUT, "the length");
	refused(book_put_setting(d.book, "n", "a\tb", e), ERR_INPUT,
		"cannot be printed");
	must(book_put_setting(d.book, name + 1, value + 1, e));
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_keeps_a_rule_as_given),
		cmocka_unit_test(book_rules_stay_in_their_ranges),
		cmocka_unit_test(book_span_fits_its_measure),
		cmocka_unit_test(book_removed_rule_leaves_its_old_form),
		cmocka_unit_test(book_limits_are_the_usual_until_set),
		cmocka_unit_test(book_settings_are_texts_by_name),
		cmocka_unit_test(book_settings_laid_over_hold_while_it_is_open),
		cmocka_unit_test(book_settings_have_a_name_and_fit),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
