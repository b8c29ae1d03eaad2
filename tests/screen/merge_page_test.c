#include "screen/merge_page.h"

#include "screen/samples.h"

static struct open_matter matter[] = {
	{ .title = "trap 3 of Addermoor, Tue 21 July 2026: put in twice",
		.choices = { "9 by MB, saved 21 Jul 2026 19:40 by MB: it stands in the "
			     "diary",
			"14 by JR, saved 21 Jul 2026 08:02 by JR",
			"there was no visit that day" },
		.n_choices = 3,
		.takes_count = true },
	{ .title = "block South of Addermoor: removed by JR (20 Jul 2026 18:00), "
		   "needed or changed by MB (21 Jul 2026 09:11)",
		.choices = { "keep it; it is shown now", "remove it" },
		.n_choices = 2 },
};
static const struct open_matters open_two = { .items = matter, .n = 2 };

static struct merging_line lines[] = {
	{ TONE_TITLE, 0, "From the other book" },
	{ TONE_PLAIN, 2, "visits: 12 new" },
	{ TONE_PLAIN, 2, "traps: 1 changed to what the other book has" },
	{ TONE_TITLE, 0, "Changed in both books: the later change holds" },
	{ TONE_PLAIN, 2,
		"trap 2 gate of Addermoor: theirs holds (MB, 21 Jul 2026 19:40); ours "
		"stays in the history (JR, 21 Jul 2026 08:02)" },
	{ TONE_PLAIN, 4, "trap: here 2a, there 2 gate" },
	{ TONE_TITLE, 0, "To be settled by a person once it is merged" },
	{ TONE_UNSURE, 2, "trap 3 of Addermoor, Tue 21 July 2026: put in twice" },
	{ TONE_PLAIN, 4, "9 by MB" },
	{ TONE_PLAIN, 4, "14 by JR" },
};
static const struct merging look_three = {
	.lines = lines, .n = sizeof lines / sizeof *lines, .open = 1
};
static const struct merging look_nothing = { .nothing_new = true };

static struct merge_page sample(enum merge_stage stage)
{
	return (struct merge_page){
		.stage = stage, .open = &open_two, .look = &look_three, .rows = 10
	};
}

static void type(struct merge_page *p, const char *text)
{
	for (; *text; text++)
		merge_page_key(p, sample_key(*text));
}

static struct wish press(struct merge_page *p, enum input_kind kind)
{
	return merge_page_key(p, (struct input){ kind, 0 });
}

static void merge_page_looks_at_a_book_before_it_merges_it(void **state)
{
	struct merge_page p = sample(MERGE_LIST);

	(void)state;
	assert_int_equal(merge_page_key(&p, sample_key('f')).want, WANT_NOTHING);
	type(&p, "b.db");
	struct wish w = press(&p, INPUT_ENTER);
	assert_int_equal(w.want, WANT_MERGE_LOOK);
	assert_string_equal(w.words.note, "b.db");
	p.stage = MERGE_SHOWN;
	w = press(&p, INPUT_ENTER);
	assert_int_equal(w.want, WANT_MERGE);
	assert_string_equal(w.words.note, "b.db");
}

/* What is found can be taken with the number pad alone; what is typed replaces it. */
static void merge_page_offers_the_books_that_were_found(void **state)
{
	struct merge_page p = sample(MERGE_LIST);

	(void)state;
	snprintf(p.found[0], sizeof p.found[0], "/media/a/one.db");
	snprintf(p.found[1], sizeof p.found[1], "/media/a/two.db");
	p.n_found = 2;
	type(&p, "+");
	assert_string_equal(p.path, "/media/a/one.db");
	type(&p, "+");
	assert_string_equal(p.path, "/media/a/two.db");
	assert_int_equal(merge_page_found(&p), 2);
	type(&p, "+");
	struct wish w = press(&p, INPUT_ENTER);
	assert_int_equal(w.want, WANT_MERGE_LOOK);
	assert_string_equal(w.words.note, "/media/a/one.db");
	type(&p, "+x+");
	assert_string_equal(p.path, "x+");
	press(&p, INPUT_ESC);
	type(&p, "++"); /* what was typed stays until + takes another */
	assert_string_equal(p.path, "/media/a/one.db");
}

static void merge_page_merges_nothing_without_a_yes(void **state)
{
	struct merge_page p = sample(MERGE_SHOWN);

	(void)state;
	assert_int_equal(press(&p, INPUT_ESC).want, WANT_NOTHING);
	assert_int_equal(p.stage, MERGE_LIST);
	p = sample(MERGE_SHOWN);
	p.look = &look_nothing;
	assert_int_equal(press(&p, INPUT_ENTER).want, WANT_NOTHING);
	p = sample(MERGE_LIST);
	merge_page_key(&p, sample_key('f'));
	assert_int_equal(press(&p, INPUT_ESC).want, WANT_NOTHING);
	assert_int_equal(p.stage, MERGE_LIST);
	assert_int_equal(press(&p, INPUT_ESC).want, WANT_BACK);
}

static void merge_page_settles_by_the_number_of_an_answer(void **state)
{
	struct merge_page p = sample(MERGE_LIST);

	(void)state;
	assert_int_equal(press(&p, INPUT_ENTER).want, WANT_NOTHING);
	assert_int_equal(p.stage, MERGE_MATTER);
	assert_int_equal(merge_page_key(&p, sample_key('4')).want, WANT_NOTHING);
	assert_int_equal(merge_page_key(&p, sample_key('0')).want, WANT_NOTHING);
	struct wish w = merge_page_key(&p, sample_key('2'));
	assert_int_equal(w.want, WANT_SETTLE);
	assert_int_equal(w.id, 0);
	assert_int_equal(w.kind, 1);
	assert_int_equal(w.by, -1);
}

static void merge_page_settles_by_another_count(void **state)
{
	struct merge_page p = sample(MERGE_MATTER);

	(void)state;
	merge_page_key(&p, sample_key('c'));
	assert_int_equal(p.stage, MERGE_COUNT);
	type(&p, "1x2");
	struct wish w = press(&p, INPUT_ENTER);
	assert_int_equal(w.want, WANT_SETTLE);
	assert_int_equal(w.by, 12);
	p = sample(MERGE_MATTER);
	p.picked = 1; /* a block has no count */
	merge_page_key(&p, sample_key('c'));
	assert_int_equal(p.stage, MERGE_MATTER);
}

static void merge_page_asks_before_it_takes_a_merge_back(void **state)
{
	struct merge_page p = sample(MERGE_LIST);

	(void)state;
	struct wish w = merge_page_key(&p, sample_key('u'));
	assert_int_equal(w.want, WANT_MERGE_UNDO);
	assert_int_equal(w.by, 0);
	p.sure = true; /* the loop found that it can be */
	w = merge_page_key(&p, sample_key('u'));
	assert_int_equal(w.by, 1);
	p.sure = true;
	press(&p, INPUT_DOWN);
	assert_int_equal(merge_page_key(&p, sample_key('u')).by, 0);
}

static void merge_page_shows_its_stages(void **state)
{
	static const struct {
		const char *name;
		enum merge_stage stage;
		int rows, cols;
	} row[] = {
		{ "merge-list-80x24", MERGE_LIST, 24, 80 },
		{ "merge-matter-80x24", MERGE_MATTER, 24, 80 },
		{ "merge-look-80x24", MERGE_SHOWN, 24, 80 },
		{ "merge-look-40x16", MERGE_SHOWN, 16, 40 },
		{ "merge-path-80x24", MERGE_PATH, 24, 80 },
		{ "merge-path-40x16", MERGE_PATH, 16, 40 },
		{ "merge-list-40x16", MERGE_LIST, 16, 40 },
		{ "merge-matter-40x16", MERGE_MATTER, 16, 40 },
		{ "merge-count-40x16", MERGE_COUNT, 16, 40 },
	};
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct merge_page p = sample(row[i].stage);

		p.n_found = 2;
		snprintf(p.found[0], sizeof p.found[0], "/media/stick/mb.db");
		snprintf(p.path, sizeof p.path, "/media/stick/mb.db");
		canvas_size(&c, row[i].rows, row[i].cols);
		merge_page_draw(&p, &c);
		expect_golden(row[i].name, &c, false);
	}
	canvas_free(&c);
}

static void merge_page_draws_at_every_size(void **state)
{
	struct canvas c = { 0 };

	(void)state;
	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 90; cols++) {
			struct merge_page p = sample((enum merge_stage)(cols % 5));

			if (rows % 3 == 0)
				p.open = NULL;
			sample_long(p.path, sizeof p.path, cols % 2);
			p.cursor = p.stage == MERGE_PATH ? strlen(p.path) : 0;
			p.read = (size_t)rows;
			canvas_size(&c, rows, cols);
			merge_page_draw(&p, &c);
		}
	canvas_free(&c);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(merge_page_looks_at_a_book_before_it_merges_it),
		cmocka_unit_test(merge_page_offers_the_books_that_were_found),
		cmocka_unit_test(merge_page_merges_nothing_without_a_yes),
		cmocka_unit_test(merge_page_settles_by_the_number_of_an_answer),
		cmocka_unit_test(merge_page_settles_by_another_count),
		cmocka_unit_test(merge_page_asks_before_it_takes_a_merge_back),
		cmocka_unit_test(merge_page_shows_its_stages),
		cmocka_unit_test(merge_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
