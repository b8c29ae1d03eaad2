/* Records on the Book page: read, typed, put into the book. */
#include "answers/fixture.h"

#include "answers/forms.h"
#include "book/acts.h"
#include "book/sources.h"
#include "book/weather.h"

/* One of each that is done in a block. */
static void fill_acts(struct fixture *f)
{
	struct err e = { 0 };
	struct treatment t = treatment_blank;
	struct pick p = pick_blank;
	struct fruit_check c = fruit_check_blank;
	struct disruption d = disruption_blank;

	t.block = p.block = c.block = d.block = f->block.id;
	t.day = p.day = c.day = d.up = day_of("2026-06-20");
	c.looked_at = 100;
	c.entered = 0;
	must(book_put_treatment(f->book, &t, &e), &e);
	must(book_put_pick(f->book, &p, &e), &e);
	must(book_put_fruit_check(f->book, &c, &e), &e);
	must(book_put_disruption(f->book, &d, &e), &e);
}

static void fill(struct fixture *f)
{
	struct err e = { 0 };
	struct station s = { .name = "Weir", .has_position = true };
	struct source woods = { .farm = f->farm.id,
		.name = "Old wood",
		.kind = SOURCE_WOODLOT,
		.n_outline = 3,
		.outline = { { 0.1, 0.1 }, { 0.2, 0.1 }, { 0.2, 0.2 } } };

	fixture_trap(f, "1", "2026-05-04");
	fixture_trap(f, "2", NULL);
	fixture_put_rule(f, fixture_rule(f, MEASURE_TRAP_WEEK, 2, 250));
	s.lat = -12.3456789;
	s.lon = 170;
	must(book_put_station(f->book, &s, &e), &e);
	must(book_put_source(f->book, &woods, &e), &e);
	fill_acts(f);
	fixture_read(f, "2026-06-23");
}

static void every_family_has_a_list_and_forms_that_change_nothing_by_themselves(
	void **state)
{
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fill(&f);
	for (enum entry_kind kind = 0; kind < ENTRY_KINDS; kind++) {
		struct entry_ask ask = { .kind = kind };
		struct entry_list list = list_of(f.book, &f.log, &ask);
		if (list.n == 0)
			fail_msg("no %s", entry_families[kind].name);
		for (size_t i = 0; i < list.n; i++) {
			struct entry *r =
				form_read(f.book, &f.log, &ask, list.rows[i].id);
			struct row_stamp was = r->stamp;
			assert_true(*r->name);
			form_put(r, f.book, &f.log);
			assert_string_equal(was.changed_at, r->stamp.changed_at);
			for (size_t c = 0; c < entry_families[kind].n_columns; c++) {
				struct entry_fault fault;
				if (!entry_field_good(r, (int)c, &fault))
					fail_msg("%s: %s", r->name, fault.text);
			}
			free(r);
		}
		entry_list_free(&list);
	}
	fixture_close(&f);
}

/* A whole date is ten keys at each trap. */
static void a_day_that_is_typed_short_is_written_out(void **state)
{
	static const struct {
		enum entry_kind kind;
		const char *column, *typed, *want;
	} row[] = {
		{ ENTRY_TRAPS, "hung", "0408", "2026-04-08" },
		{ ENTRY_TRAPS, "hung", " 14 ", "2026-06-14" },
		{ ENTRY_TREATMENTS, "date", "24", "2026-05-24" },
		{ ENTRY_PICKS, "date", "24", "2026-06-24" },
		{ ENTRY_TREATMENTS, "date", "2026-06-24", "2026-06-24" },
		{ ENTRY_TREATMENTS, "date", "June", "June" },
		{ ENTRY_TREATMENTS, "date", "", "" },
		{ ENTRY_TREATMENTS, "note", "14", "14" },
	};
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry *r = form_new(f.book, &f.log, row[i].kind);
		form_type(r, row[i].column, row[i].typed);
		entry_settle_days(r, &f.log);
		if (strcmp(form_text(r, row[i].column), row[i].want) != 0)
			fail_msg("%s of %s: %s", row[i].typed, row[i].column,
				form_text(r, row[i].column));
		free(r);
	}
	fixture_close(&f);
}

static void every_family_fits_a_form(void **state)
{
	(void)state;
	for (enum entry_kind kind = 0; kind < ENTRY_KINDS; kind++) {
		const struct entry_family *f = &entry_families[kind];
		size_t cells = 0, labels = 0;
		assert_in_range(f->n_columns, 1, ENTRY_FIELDS_MAX);
		for (size_t i = 0; i < f->n_columns; i++) {
			cells += f->columns[i].list_cols > 0;
			labels += f->columns[i].label != NULL;
			if (f->columns[i].pick == PICK_WORD && !f->columns[i].word)
				fail_msg("%s, %s: no words", f->name,
					f->columns[i].name);
			if (f->columns[i].label && !f->columns[i].help)
				fail_msg(
					"%s, %s: no help", f->name, f->columns[i].name);
		}
		assert_in_range(cells, 1, ENTRY_CELLS_MAX);
		assert_in_range(labels, 1, ENTRY_FIELDS_MAX);
	}
}

static void what_is_typed_is_in_the_book(void **state)
{
	static const struct {
		enum entry_kind kind;
		struct {
			const char *column, *text;
		} typed[9];
	} row[] = {
		{ ENTRY_FARMS, { { "farm", "Hather Bend" }, { "season_start", "07-01" },
				       { "run_weekday", "Tue" } } },
		{ ENTRY_BLOCKS, { { "farm", "Quillback" }, { "block", "Weir Bank" },
					{ "crop", "pear" }, { "variety", "Amberlock" },
					{ "condition", "disrupted" },
					{ "area_ha", "4.25 ha" } } },
		{ ENTRY_TRAPS, { { "farm", "Quillback" }, { "block", "Upper Russet" },
				       { "trap", "9" }, { "pest", "CM" },
				       { "lure", "three weeks" }, { "place", "border" },
				       { "lat", "-12.5" }, { "lon", "170.25" },
				       { "hung", "2026-06-01" } } },
		{ ENTRY_PESTS,
			{ { "code", "QM" }, { "name", "quill moth" }, { "unit", "F" },
				{ "base", "50.5" }, { "cap", "88" },
				{ "method", "sine" }, { "cutoff", "horizontal" },
				{ "biofix_rule", "three-moths" } } },
		{ ENTRY_LURES, { { "lure", "CM test" }, { "pest", "CM" },
				       { "life_days", "28" }, { "hot_days", "14" },
				       { "hot_from", "06-01" }, { "hot_to", "08-31" },
				       { "stock", "12" }, { "stock_day", "2026-06-01" },
				       { "reorder_at", "4" } } },
		{ ENTRY_CARDS, { { "card", "deep" }, { "life_days", "30" },
				       { "stir_at", "10" }, { "change_at", "20" },
				       { "floor_at", "40" }, { "source", "own" } } },
		{ ENTRY_THRESHOLDS,
			{ { "pest", "CM" }, { "crop", "apple" }, { "from", "05-01" },
				{ "to", "07-31" }, { "measure", "block-total" },
				{ "span", "hung" }, { "comparator", ">" },
				{ "value", "12.5" }, { "note", "own figure" } } },
		{ ENTRY_STATIONS,
			{ { "station", "Mast" }, { "lat", "1.5" }, { "lon", "-2" } } },
		{ ENTRY_SOURCES,
			{ { "farm", "Quillback" }, { "name", "Bin yard" },
				{ "kind", "bins" }, { "lat", "-12.4" },
				{ "lon", "170.25" }, { "outline", "1 1; 1 2; 2 2" } } },
	};
	struct fixture f;

	(void)state;
	fixture_open(&f);
	fill(&f);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry *r = form_new(f.book, &f.log, row[i].kind);
		for (size_t k = 0; k < 9 && row[i].typed[k].column; k++)
			form_type(r, row[i].typed[k].column, row[i].typed[k].text);
		form_put(r, f.book, &f.log);
		assert_true(r->id > 0);
		struct entry *again = form_of(f.book, &f.log, row[i].kind, r->id);
		for (size_t k = 0; k < 9 && row[i].typed[k].column; k++)
			assert_string_equal(form_text(again, row[i].typed[k].column),
				row[i].typed[k].text);
		assert_string_equal(again->name, r->name);
		assert_string_equal(again->stamp.changed_at, r->stamp.changed_at);
		free(again);
		free(r);
	}
	fixture_close(&f);
}

/* What is not touched keeps what its text cannot show. */
static void acres_do_not_bend_what_is_not_touched(void **state)
{
	static const struct {
		const char *why;
		int32_t x100;
		const char *typed;
		int32_t want_x100;
	} row[] = {
		{ "as it is", 423, NULL, 423 },
		{ "none", -1, NULL, -1 },
		{ "a number in the grower's unit", 423, "10", 405 },
		{ "with its unit", 423, "2.5 acres", 101 },
		{ "the other unit", 423, "5 ha", 500 },
		{ "emptied", 423, "", -1 },
	};
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	must(book_put_setting(f.book, "area_unit", "acre", &e), &e);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct blocks all = { 0 };
		f.block.area_x100 = row[i].x100;
		must(book_put_block(f.book, &f.block, &e), &e);
		struct entry *r = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
		form_type(r, "variety", row[i].why);
		if (row[i].typed)
			form_type(r, "area_ha", row[i].typed);
		form_put(r, f.book, &f.log);
		must(book_blocks(f.book, 0, &all, &e), &e);
		if (all.items[0].area_x100 != row[i].want_x100)
			fail_msg("%s: %d", row[i].why, (int)all.items[0].area_x100);
		free(all.items);
		free(r);
	}
	for (int tenths = 1; tenths < 200; tenths += 7) {
		char text[32];
		struct entry *r = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
		snprintf(text, sizeof text, tenths % 10 ? "%d.%d acres" : "%d acres",
			tenths / 10, tenths % 10);
		form_type(r, "area_ha", text);
		form_put(r, f.book, &f.log);
		struct entry *again = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
		assert_string_equal(form_text(again, "area_ha"), text);
		free(again);
		free(r);
	}
	f.block.area_x100 = 420;
	must(book_put_block(f.book, &f.block, &e), &e);
	struct entry *r = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
	assert_string_equal(form_text(r, "area_ha"), "10.4 acres");
	form_type(r, "area_ha", "10 rods");
	struct entry_fault fault;
	assert_false(entry_put(r, f.book, &f.log, false, &fault));
	assert_string_equal(fault.text, "\"10 rods\" is not right; it takes an area "
					"such as 12.5 acres or 5 ha");
	assert_int_equal(fault.field, form_column(ENTRY_BLOCKS, "area_ha"));
	free(r);
	fixture_close(&f);
}

static void a_record_changed_elsewhere_is_not_overwritten(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	struct entry *r = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
	book_set_who(f.book, "JR");
	text_copy(f.block.crop, sizeof f.block.crop, "pear");
	must(book_put_block(f.book, &f.block, &e), &e);
	form_type(r, "variety", "Amberlock");
	assert_false(entry_put(r, f.book, &f.log, false, &fault));
	assert_true(fault.is_elsewhere);
	assert_int_equal(fault.field, -1);
	assert_string_equal(fault.text,
		"block Upper Russet of Quillback was changed by JR meanwhile; nothing "
		"is overwritten");
	struct entry *theirs = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
	assert_string_equal(form_text(theirs, "crop"), "pear");
	assert_string_equal(form_text(theirs, "variety"), "");
	assert_true(entry_put(r, f.book, &f.log, true, &fault));
	form_put(r, f.book, &f.log);
	free(theirs);
	theirs = form_of(f.book, &f.log, ENTRY_BLOCKS, f.block.id);
	assert_string_equal(form_text(theirs, "variety"), "Amberlock");
	free(theirs);
	free(r);
	fixture_close(&f);
}

static void a_setting_changed_elsewhere_is_not_overwritten(void **state)
{
	static const char *const before[] = { NULL, "2" };
	struct fixture f;
	struct err e = { 0 };
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-06-23");
	for (size_t i = 0; i < 2; i++) {
		struct entry_ask ask = { .kind = ENTRY_SETTINGS };
		if (before[i])
			must(book_put_setting(f.book, "open_days", before[i], &e), &e);
		struct entry *r = form_read(f.book, &f.log, &ask, 7);
		assert_string_equal(form_text(r, "name"), "open_days");
		book_set_who(f.book, i ? "MV" : "JR");
		must(book_put_setting(f.book, "open_days", "4", &e), &e);
		form_type(r, "value", "5");
		assert_false(entry_put(r, f.book, &f.log, false, &fault));
		assert_true(fault.is_elsewhere);
		free(r);
	}
	fixture_close(&f);
}

static void a_record_that_is_gone_is_said(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	fill(&f);
	struct entry_list list = list_of(
		f.book, &f.log, &(struct entry_ask){ .kind = ENTRY_THRESHOLDS });
	struct entry *r = form_of(f.book, &f.log, ENTRY_THRESHOLDS, list.rows[0].id);
	must(entry_remove(f.book, ENTRY_THRESHOLDS, r->id, &e), &e);
	form_type(r, "value", "3");
	assert_false(entry_put(r, f.book, &f.log, true, &fault));
	assert_non_null(strstr(fault.text, "is not in the book any more"));
	assert_false(entry_read(r, f.book, &list.ask, list.rows[0].id, &f.log, &e));
	assert_int_equal(e.kind, ERR_NOT_FOUND);
	free(r);
	entry_list_free(&list);
	fixture_close(&f);
}

/* A trap and its hanging are taken back together. */
static void a_form_is_one_step(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct undone_step undone;

	(void)state;
	fixture_open(&f);
	fill(&f);
	struct entry_ask ask = { .kind = ENTRY_TRAPS };
	struct entry *r = form_read(f.book, &f.log, &ask, 0);
	assert_string_equal(form_text(r, "trap"), "3");
	assert_string_equal(form_text(r, "hung"), "2026-06-23");
	struct entry_fault fault; /* the block's re-entry interval is not known */
	assert_true(entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
	must(book_undo_step(f.book, NULL, 0, &undone, &e), &e);
	assert_true(undone.was_new);
	struct entry_list list = list_of(f.book, &f.log, &ask);
	assert_int_equal(list.n, 2);
	entry_list_free(&list);
	free(r);
	fixture_close(&f);
}

/* What is left of 80 columns beside the names and the counts. */
static void families_say_what_they_are_in_46_columns(void **state)
{
	(void)state;
	for (int i = 0; i < ENTRY_KINDS; i++)
		if (text_cols(entry_families[i].help) > 46)
			fail_msg("%s", entry_families[i].help);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(families_say_what_they_are_in_46_columns),
		cmocka_unit_test(
			every_family_has_a_list_and_forms_that_change_nothing_by_themselves),
		cmocka_unit_test(every_family_fits_a_form),
		cmocka_unit_test(a_day_that_is_typed_short_is_written_out),
		cmocka_unit_test(what_is_typed_is_in_the_book),
		cmocka_unit_test(acres_do_not_bend_what_is_not_touched),
		cmocka_unit_test(a_record_changed_elsewhere_is_not_overwritten),
		cmocka_unit_test(a_setting_changed_elsewhere_is_not_overwritten),
		cmocka_unit_test(a_record_that_is_gone_is_said),
		cmocka_unit_test(a_form_is_one_step),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
