/* Treatments, picks and traps typed on forms: which blocks they name, what they ask. */
#include "act_forms.h"

#include "answers/entry_traps.h"

static struct block add_block(struct fixture *f, const char *name)
{
	struct block b = f->block;
	struct err e = { 0 };

	b.id = 0;
	text_copy(b.name, sizeof b.name, name);
	must(book_put_block(f->book, &b, &e), &e);
	return b;
}

static size_t records(struct fixture *f)
{
	const struct entry_ask ask = { .kind = ENTRY_TREATMENTS };
	struct entry_list list = list_of(f->book, &f->log, &ask);
	size_t n = list.n;

	entry_list_free(&list);
	return n;
}

static void a_form_names_the_blocks_it_is_of(void **state)
{
	static const struct {
		const char *why, *typed;
		size_t n;
		const char *says; /* NULL: it is put in */
	} row[] = {
		{ "one", "Old Kiln", 1, NULL },
		{ "blanks around it", "  Old Kiln ", 1, NULL },
		{ "two", "Old Kiln,Weir Bank", 2, NULL },
		{ "three, with blanks", " Old Kiln , Weir Bank ,Upper Russet", 3,
			NULL },
		{ "a name with a comma in it", "Top, lower", 1, NULL },
		{ "nothing before the first comma", ", Old Kiln", 0,
			"\", Old Kiln\" names no block at one of its commas; it takes "
			"names of blocks with commas between them" },
		{ "nothing behind the last", "Old Kiln,", 0,
			"names no block at one of its commas" },
		{ "nothing between two", "Old Kiln,,Weir Bank", 0,
			"names no block at one of its commas" },
		{ "blanks between two", "Old Kiln, ,Weir Bank", 0,
			"names no block at one of its commas" },
		{ "a comma alone", ",", 0, "names no block at one of its commas" },
		{ "nothing", " ", 0, "a value is missing" },
		{ "the same twice", "Old Kiln, Old Kiln", 0, "names Old Kiln twice" },
		{ "one that is not there", "Old Kiln, Weir", 0,
			"is no block of Quillback" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct fixture f;
		struct entry_fault fault;
		fixture_open(&f);
		add_block(&f, "Old Kiln");
		add_block(&f, "Weir Bank");
		add_block(&f, "Top, lower");
		fixture_read(&f, "2026-07-20");
		struct entry *r = act(&f, ENTRY_TREATMENTS, "2026-07-20");
		form_type(r, "block", row[i].typed);
		bool put = entry_put(r, f.book, &f.log, 0, &fault);
		if (put != !row[i].says || records(&f) != row[i].n ||
			(row[i].says && !strstr(fault.text, row[i].says)))
			fail_msg("%s: %zu records, \"%s\"", row[i].why, records(&f),
				put ? "" : fault.text);
		if (!put)
			assert_int_equal(
				fault.field, form_column(ENTRY_TREATMENTS, "block"));
		free(r);
		fixture_close(&f);
	}
}

static void records_of_one_form_share_a_job_and_are_taken_back_together(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct undone_step u;
	struct entry_fault fault;

	(void)state;
	fixture_open(&f);
	add_block(&f, "Old Kiln");
	fixture_read(&f, "2026-07-20");
	for (int form = 0; form < 2; form++) {
		struct entry *r = act(&f, ENTRY_TREATMENTS, "2026-07-20");
		form_type(r, "block", "Upper Russet, Old Kiln");
		form_put(r, f.book, &f.log);
		free(r);
		fixture_read(&f, "2026-07-20");
	}
	const struct treatment *t = f.log.treatments.items;
	assert_int_equal(f.log.treatments.n, 4);
	assert_string_equal(t[0].job, "2026-07-20 a");
	assert_string_equal(t[1].job, "2026-07-20 b");
	assert_string_equal(t[2].job, "2026-07-20 a");
	struct entry *r = form_of(f.book, &f.log, ENTRY_TREATMENTS, t[0].id);
	form_type(r, "block", "Upper Russet, Old Kiln");
	assert_false(entry_put(r, f.book, &f.log, 0, &fault));
	assert_non_null(strstr(fault.text, "is more than one block"));
	free(r);
	must(book_undo_own(f.book, &u, &e), &e);
	assert_int_equal(records(&f), 2);
	fixture_close(&f);
}

/* The bar and the picks follow what is corrected, taken out and brought back. */
static void a_bar_follows_a_treatment_corrected_taken_out_brought_back(void **state)
{
	struct fixture f;
	struct err e = { 0 };
	struct undone_step u;
	char says[256];

	(void)state;
	fixture_open(&f);
	fixture_read(&f, "2026-08-20");
	int64_t noon = acts_at(&f, "2026-08-20 12:00").minute;
	struct entry *r = treatment(&f, "2026-08-20", "24", "14");
	form_put(r, f.book, &f.log);
	assert_true(barred_at(&f, noon, says, sizeof says));
	assert_true(asks_about(&f, "2026-09-02", says, sizeof says));
	form_type(r, "rei_hours", "5");
	form_type(r, "phi_days", "13");
	form_put(r, f.book, &f.log);
	assert_true(barred_at(&f, noon - 1, says, sizeof says));
	assert_false(barred_at(&f, noon, says, sizeof says));
	assert_false(asks_about(&f, "2026-09-02", says, sizeof says));
	assert_true(asks_about(&f, "2026-09-01", says, sizeof says));
	must(entry_remove(f.book, ENTRY_TREATMENTS, r->id, &e), &e);
	assert_false(barred_at(&f, noon - 1, says, sizeof says));
	assert_false(asks_about(&f, "2026-09-01", says, sizeof says));
	must(book_undo_step(f.book, NULL, 0, &u, &e), &e);
	while (strcmp(u.kind, "treatment") != 0) /* the picks that were tried */
		must(book_undo_step(f.book, NULL, 0, &u, &e), &e);
	assert_true(barred_at(&f, noon - 1, says, sizeof says));
	assert_true(asks_about(&f, "2026-09-01", says, sizeof says));
	assert_false(asks_about(&f, "2026-09-02", says, sizeof says));
	free(r);
	fixture_close(&f);
}

/* The page was read before another program put the pick in, and long after the
 * other. */
static void a_treatment_asks_about_picks_that_its_page_does_not_know(void **state)
{
	static const char *const picks[] = { "2026-08-25", "2024-08-25" };
	static const char *const treated[] = { "2026-08-20", "2024-08-20" };

	(void)state;
	for (size_t i = 0; i < 2; i++) {
		struct entry_fault fault;
		struct fixture f;
		fixture_open(&f);
		fixture_read(&f, "2026-08-20");
		acts_pick(&f, picks[i], i == 1);
		struct entry *r = treatment(&f, treated[i], "4", "14");
		if (entry_put(r, f.book, &f.log, 0, &fault) || !fault.is_doubt ||
			!strstr(fault.text, "too early"))
			fail_msg("%s: \"%s\"", picks[i], fault.text);
		assert_true(entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
		free(r);
		fixture_close(&f);
	}
}

static void a_treatment_asks_about_visits_that_it_would_have_barred(void **state)
{
	static const struct {
		const char *why, *rei, *phi, *says; /* NULL: nothing */
	} row[] = {
		{ "all of the next day", "48", "0",
			"trap 8 of Quillback was visited on 2026-08-21; nobody was to "
			"enter Upper Russet before 2026-08-22T07:00+00:00" },
		{ "a part of it", "40", "0", NULL },
		{ "a pick as well", "48", "20",
			"; and 1 visit in the re-entry interval" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_fault fault = { 0 };
		struct fixture f;
		fixture_open(&f);
		int64_t t = fixture_trap(&f, "8", "2026-06-01");
		fixture_count(&f, t, "2026-08-21", 3);
		acts_pick(&f, "2026-09-01", false);
		fixture_read(&f, "2026-08-25");
		struct entry *r = treatment(&f, "2026-08-20", row[i].rei, row[i].phi);
		bool put = entry_put(r, f.book, &f.log, 0, &fault);
		if (put != !row[i].says || (!put && !strstr(fault.text, row[i].says)))
			fail_msg("%s: \"%s\"", row[i].why, fault.text);
		assert_true(put || entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
		free(r);
		fixture_close(&f);
	}
}

/* Who hangs or pulls a trap is in its block. */
static void a_trap_hung_or_pulled_in_a_barred_block_asks(void **state)
{
	static const struct {
		const char *why, *now, *column, *day, *says; /* NULL: it does not */
	} row[] = {
		{ "the last barred minute", "2026-08-21 06:59", "hung", "2026-08-21",
			"Upper Russet on 2026-08-21: no entry until Fri 21 Aug 07:00" },
		{ "the first free one", "2026-08-21 07:00", "hung", "2026-08-21",
			NULL },
		{ "pulled", "2026-08-21 06:59", "pulled", "2026-08-21",
			"no entry until Fri 21 Aug 07:00" },
		{ "no day given", "2026-08-21 06:59", "hung", "", NULL },
		{ "before it", "2026-08-21 06:59", "hung", "2026-08-19", NULL },
		{ "its day, at some hour", "2026-08-21 06:59", "hung", "2026-08-20",
			NULL },
		{ "a later day, free from an hour on", "2026-08-25 06:59", "hung",
			"2026-08-21", NULL },
	};

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct entry_fault fault = { 0 };
		struct fixture f;
		fixture_open(&f);
		int64_t hangs = fixture_trap(&f, "8", "2026-06-01");
		acts_treat(&f, "2026-08-20 07:00", 24, 0);
		acts_read(&f, row[i].now);
		bool pulls = strcmp(row[i].column, "pulled") == 0;
		struct entry *r =
			form_of(f.book, &f.log, ENTRY_TRAPS, pulls ? hangs : 0);
		form_type(r, "farm", f.farm.name);
		form_type(r, "block", f.block.name);
		form_type(r, "trap", "9");
		form_type(r, "pest", "CM");
		form_type(r, row[i].column, row[i].day);
		bool put = entry_put(r, f.book, &f.log, 0, &fault);
		if (put != !row[i].says ||
			(!put && (!fault.is_doubt || !strstr(fault.text, row[i].says))))
			fail_msg("%s: \"%s\"", row[i].why, fault.text);
		assert_true(put || entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
		free(r);
		fixture_close(&f);
	}
}

/* A bar and a position 1 000 km off: Enter once more would save against both. */
static void of_two_doubts_both_are_heard(void **state)
{
	struct entry_fault fault = { 0 };
	struct fixture f;
	struct traps traps = { 0 };
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	int64_t hangs = fixture_trap(&f, "8", "2026-06-01");
	must(book_traps(f.book, 0, &traps, &e), &e);
	traps.items[0].has_position = true;
	traps.items[0].lat = 10;
	traps.items[0].lon = -140;
	must(book_put_trap(f.book, &traps.items[0], &e), &e);
	free(traps.items);
	acts_treat(&f, "2026-08-20 07:00", 24, 0);
	acts_read(&f, "2026-08-21 06:59");
	struct entry *r = form_of(f.book, &f.log, ENTRY_TRAPS, 0);
	form_type(r, "trap", "9");
	form_type(r, "hung", "2026-08-21");
	form_type(r, "lat", "19");
	form_type(r, "lon", "-140");
	assert_false(entry_put(r, f.book, &f.log, 0, &fault));
	assert_true(fault.is_doubt);
	assert_string_equal(fault.text,
		"Upper Russet on 2026-08-21: no entry until Fri 21 Aug 07:00; trap 9 "
		"lies 1 001 km from the middle of the traps of Quillback; is its "
		"position right?");
	assert_true(entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
	assert_true(r->id > hangs);
	free(r);
	fixture_close(&f);
}

/* Picks of three blocks: the message has room for some, and says that there is more. */
static void of_many_doubts_it_is_said_that_there_are_more(void **state)
{
	struct entry_fault fault = { 0 };
	struct fixture f;
	struct err e = { 0 };
	char names[NOTE_BYTES] = "Upper Russet";

	(void)state;
	fixture_open(&f);
	acts_pick(&f, "2026-08-22", false);
	for (int i = 0; i < 3; i++) {
		struct pick p = pick_blank;
		char name[NAME_BYTES];
		snprintf(name, sizeof name, "Russet %d", i);
		snprintf(names + strlen(names), sizeof names - strlen(names), ", %s",
			name);
		p.block = add_block(&f, name).id;
		p.day = day_of("2026-08-22");
		must(book_put_pick(f.book, &p, &e), &e);
	}
	fixture_read(&f, "2026-08-20");
	struct entry *r = treatment(&f, "2026-08-20", "4", "14");
	form_type(r, "block", names);
	assert_false(entry_put(r, f.book, &f.log, 0, &fault));
	assert_true(fault.is_doubt);
	assert_non_null(strstr(fault.text, "Upper Russet, pick planned for"));
	assert_non_null(strstr(fault.text, "; Russet 0, pick planned for"));
	assert_string_equal(strrchr(fault.text, ';'), "; and more speaks against it");
	assert_true(entry_put(r, f.book, &f.log, ENTRY_SURE, &fault));
	free(r);
	fixture_close(&f);
}

static void the_keys_for_traps_have_the_bar_to_say(void **state)
{
	struct fixture f;
	char says[80];

	(void)state;
	fixture_open(&f);
	int64_t t = fixture_trap(&f, "8", "2026-06-01");
	acts_treat(&f, "2026-08-20 07:00", 24, 0);
	acts_read(&f, "2026-08-21 06:59");
	entry_trap_bar(&f.log, t, says, sizeof says);
	assert_string_equal(says, "no entry till Fri 07:00");
	entry_trap_bar(&f.log, t + 1, says, sizeof says);
	assert_string_equal(says, "");
	acts_read(&f, "2026-08-21 07:00");
	entry_trap_bar(&f.log, t, says, sizeof says);
	assert_string_equal(says, "");
	fixture_close(&f);
}

/* The columns show what was looked at and entered: the stung one is in the share. */
static void the_list_of_fruit_checks_says_of_how_many_hurt_its_share_is(void **state)
{
	const struct entry_ask ask = { .kind = ENTRY_CHECKS };
	struct fruit_check c = fruit_check_blank;
	struct fixture f;
	struct err e = { 0 };

	(void)state;
	fixture_open(&f);
	c.block = f.block.id;
	c.day = day_of("2026-07-09");
	c.looked_at = 150;
	c.stung = 1;
	c.entered = 3;
	must(book_put_fruit_check(f.book, &c, &e), &e);
	fixture_read(&f, "2026-07-21");
	struct entry_list list = list_of(f.book, &f.log, &ask);
	assert_int_equal(list.n, 1);
	assert_string_equal(list.rows[0].note, "hurt 4: 2.7 %, can be 0.7 to 6.7 %");
	entry_list_free(&list);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			the_list_of_fruit_checks_says_of_how_many_hurt_its_share_is),
		cmocka_unit_test(a_form_names_the_blocks_it_is_of),
		cmocka_unit_test(
			records_of_one_form_share_a_job_and_are_taken_back_together),
		cmocka_unit_test(
			a_bar_follows_a_treatment_corrected_taken_out_brought_back),
		cmocka_unit_test(
			a_treatment_asks_about_picks_that_its_page_does_not_know),
		cmocka_unit_test(
			a_treatment_asks_about_visits_that_it_would_have_barred),
		cmocka_unit_test(a_trap_hung_or_pulled_in_a_barred_block_asks),
		cmocka_unit_test(of_two_doubts_both_are_heard),
		cmocka_unit_test(of_many_doubts_it_is_said_that_there_are_more),
		cmocka_unit_test(the_keys_for_traps_have_the_bar_to_say),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
