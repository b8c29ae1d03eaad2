#include "screen/thresholds_page.h"

#include "answers/entry.h"
#include "screen/samples.h"

enum { OWN = 3, PUBLISHED = 5 };

static struct threshold_list sample_list(void)
{
	static struct own_row own[OWN];
	static struct published_row rows[PUBLISHED];
	struct threshold_list t = {
		.own = own, .n_own = OWN, .published = { .items = rows, .n = PUBLISHED }
	};

	SET(t.filter, "all pests");
	for (size_t i = 0; i < OWN; i++) {
		own[i] = (struct own_row){ .rule = {
						   .id = 70 + (int64_t)i, .pest = 1 } };
		SET(own[i].pest, "CM");
		SET(own[i].brief, i == 1 ? ">=3" : ">=5");
		SET(own[i].rule_text, "at least 5 a week, any single trap");
		SET(own[i].where, i == 1 ? "apple, 1 Aug to 30 Sep" : "everywhere");
	}
	SET(own[1].rule.source, "N2: an invented guide, its page on counts");
	SET(own[1].changed, "changed from N2: was >=5, 1 May to 31 Jul");
	SET(own[1].rule.note, "one trap in each corner");
	SET(own[2].where, "pear");
	SET(own[2].never, "no block with CM traps grows pear");
	for (size_t i = 0; i < PUBLISHED; i++) {
		rows[i] = (struct published_row){ .rule = { .pest = i < 3 ? 1 : 2 } };
		SET(rows[i].pest, i < 3 ? "CM" : "OFM");
		SET(rows[i].brief, ">=2 2w");
		SET(rows[i].rule_text, "at least 2 a week in each of 2 weeks running");
		SET(rows[i].where, "apple, disrupted, 1 May to 31 Jul");
		snprintf(rows[i].rule.source, sizeof rows[i].rule.source,
			"N%zu: an invented guide", i + 1);
	}
	rows[0].is_taken = true;
	rows[0].own = 70;
	rows[1].changed = 71;
	return t;
}

static struct wish press(struct thresholds_page *p, const char *keys)
{
	struct wish last = page_wish(WANT_NOTHING);

	for (; *keys; keys++) {
		struct input in = sample_key(*keys);
		struct wish w;

		if (*keys == '\t')
			in = (struct input){ INPUT_TAB, 0 };
		w = thresholds_page_key(p, in);
		if (w.want != WANT_NOTHING)
			last = w;
	}
	return last;
}

static void thresholds_page_shows_own_and_published_ones(void **state)
{
	static const struct {
		const char *name;
		int rows, cols;
		const char *keys, *never;
		bool is_tried;
	} row[] = {
		{ "thresholds-80x24", 24, 80, "2", "", true },
		{ "thresholds-80x24-untried", 24, 80, "2", "", false },
		{ "thresholds-80x24-narrow", 24, 80, "2/yours", "", true },
		{ "thresholds-120x30", 30, 120, "2", "", true },
		{ "thresholds-120x30-published", 30, 120, "\t2", "", true },
		{ "thresholds-120x30-narrowed", 30, 120, "/ofm\n", "", true },
		{ "thresholds-80x24-never", 24, 80, "22",
			"no block with CM traps grows pear", true },
		{ "thresholds-40x16", 16, 40, "2222", "", true },
		{ "thresholds-30x8", 8, 30, "", "", true },
	};
	struct threshold_list t = sample_list();
	struct canvas c = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct trial trial = { 0 };
		struct thresholds_page p = { .list = &t, .right = "Tue 21 Jul" };

		SET(trial.says, "OVER in 4 of 132 trap-weeks this season");
		SET(trial.never, row[i].never);
		press(&p, row[i].keys);
		p.trial = row[i].is_tried ? &trial : NULL;
		canvas_size(&c, row[i].rows, row[i].cols);
		thresholds_page_draw(&p, &c);
		expect_golden(row[i].name, &c, row[i].cols == 80);
		thresholds_page_free(&p);
	}
	canvas_free(&c);
}

static void thresholds_page_opens_own_ones_and_takes_published_ones(void **state)
{
	struct threshold_list t = sample_list();
	struct thresholds_page p = { .list = &t, .rows = 20 };

	(void)state;
	struct wish w = press(&p, "2\n");
	assert_int_equal(w.want, WANT_FORM);
	assert_int_equal(w.kind, ENTRY_THRESHOLDS);
	assert_int_equal(w.id, 71);
	assert_int_equal(press(&p, "t").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "this one is yours"));
	w = press(&p, "1t"); /* the last of all */
	assert_int_equal(w.want, WANT_TAKE_RULE);
	assert_int_equal(w.id, PUBLISHED - 1);
	assert_int_equal(press(&p, "\n").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "t takes this one first"));
	thresholds_page_free(&p);
}

static void thresholds_page_takes_none_twice_unasked(void **state)
{
	struct threshold_list t = sample_list();
	struct thresholds_page p = { .list = &t, .rows = 20 };

	(void)state;
	assert_int_equal(press(&p, "\tt").want, WANT_NOTHING);
	assert_int_equal(
		thresholds_page_picked(&p)->id, 70); /* the own one is picked */
	assert_int_equal(press(&p, "\t2t").want, WANT_NOTHING);
	assert_non_null(strstr(p.message.text, "t once more"));
	assert_int_equal(press(&p, "t").id, 1);
	assert_int_equal(press(&p, "t28t").want, WANT_NOTHING); /* asked anew */
	thresholds_page_free(&p);
}

static void thresholds_page_crosses_between_the_lists(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t at;
	} row[] = {
		{ "to the published ones at the same height", "2\t", OWN + 1 },
		{ "and back", "2\t\t", 1 },
		{ "below the end of yours", "1\t", OWN - 1 },
		{ "4 and 6 of the number pad", "64", 0 },
		{ "6 alone", "6", OWN },
		{ "6 twice stays", "66", OWN },
		{ "down from yours to the published ones", "222", OWN },
	};
	struct threshold_list t = sample_list();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct thresholds_page p = { .list = &t, .rows = 20 };
		press(&p, row[i].keys);
		if (p.picked != row[i].at)
			fail_msg("%s: %zu", row[i].why, p.picked);
		thresholds_page_free(&p);
	}
	t.n_own = 0;
	struct thresholds_page p = { .list = &t, .rows = 20 };
	press(&p, "\t4");
	assert_int_equal(p.picked, 0);
	thresholds_page_free(&p);
}

static void thresholds_page_wishes(void **state)
{
	struct threshold_list t = sample_list();
	struct thresholds_page p = { .list = &t, .rows = 20 };

	(void)state;
	assert_int_equal(press(&p, "n").want, WANT_FORM);
	assert_int_equal(press(&p, "n").id, 0);
	assert_int_equal(press(&p, "b").want, WANT_ENTRIES);
	assert_int_equal(press(&p, "b").kind, ENTRY_THRESHOLDS);
	assert_int_equal(press(&p, "u").want, WANT_UNDO_STEP);
	assert_int_equal(press(&p, "?").want, WANT_HELP);
	assert_int_equal(press(&p, "\x1b").want, WANT_BACK);
	press(&p, "p");
	assert_true(p.next_pest);
	press(&p, "z");
	assert_non_null(strstr(p.message.text, "z does nothing here"));
	expect_keys(thresholds_page_keys());
	thresholds_page_free(&p);
}

static void thresholds_page_narrows_both_lists(void **state)
{
	static const struct {
		const char *why, *keys;
		size_t own, n, at;
		enum want want; /* of a last Esc */
	} row[] = {
		{ "all", "7", OWN, OWN + PUBLISHED, 0, WANT_BACK },
		{ "a pest", "/ofm", 0, 2, OWN + 3, WANT_NOTHING },
		{ "a mark", "/yours", 0, 1, OWN, WANT_NOTHING },
		{ "a source in both lists", "/n2", 1, 2, 1, WANT_NOTHING },
		{ "down to the next that is shown", "/n2~", 1, 2, OWN + 1,
			WANT_NOTHING },
		{ "Tab goes among those that are shown", "/n2\t", 1, 2, OWN + 1,
			WANT_NOTHING },
		{ "a note", "/corner", 1, 1, 1, WANT_NOTHING },
		{ "nothing", "/zz", 0, 0, SIZE_MAX, WANT_NOTHING },
		{ "all again", "/zz\x1b", OWN, OWN + PUBLISHED, 0, WANT_BACK },
	};
	struct threshold_list t = sample_list();

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct thresholds_page p = { .list = &t, .rows = 20 };
		press(&p, row[i].keys);
		size_t own = sift_place(&p.sift, OWN);
		if (own != row[i].own || p.sift.n != row[i].n || p.picked != row[i].at)
			fail_msg("%s: %zu of yours, %zu in all, %zu picked", row[i].why,
				own, p.sift.n, p.picked);
		if (press(&p, "\x1b").want != row[i].want)
			fail_msg("%s: not so on Esc", row[i].why);
		thresholds_page_free(&p);
	}
}

static void thresholds_page_shows_one_just_taken_whatever_is_looked_for(void **state)
{
	struct threshold_list t = sample_list();
	struct thresholds_page p = { .list = &t, .rows = 20 };

	(void)state;
	press(&p, "/yours\n");
	thresholds_page_pick(&p, 71);
	assert_int_equal(thresholds_page_picked(&p)->id, 71);
	assert_int_equal(p.sift.n, OWN + PUBLISHED);
	thresholds_page_free(&p);
}

static void thresholds_page_asks_anew_what_another_rule_would_call(void **state)
{
	struct threshold_list t = sample_list();
	struct trial trial = { 0 };
	struct thresholds_page p = { .list = &t, .rows = 20, .trial = &trial };

	(void)state;
	press(&p, "8");
	assert_ptr_equal(p.trial, &trial); /* at the top already */
	press(&p, "2");
	assert_null(p.trial);
	p.trial = &trial;
	press(&p, "\t");
	assert_null(p.trial);
	p.trial = &trial;
	press(&p, "/ofm");
	assert_null(p.trial);
	thresholds_page_free(&p);
}

static void draw_everywhere(struct thresholds_page *p)
{
	struct canvas c = { 0 };

	for (int rows = 1; rows <= 30; rows++)
		for (int cols = 1; cols <= 110; cols++) {
			canvas_size(&c, rows, cols);
			thresholds_page_draw(p, &c);
		}
	canvas_free(&c);
}

static void thresholds_page_draws_at_every_size(void **state)
{
	struct threshold_list t = sample_list(), none = { 0 };
	struct trial trial = { 0 };
	struct thresholds_page p = {
		.list = &t, .trial = &trial, .right = "Tue 21 Jul"
	};

	(void)state;
	draw_everywhere(&p);
	press(&p, "/n2");
	draw_everywhere(&p);
	press(&p, "z");
	draw_everywhere(&p);
	press(&p, "\x1b");
	p.picked = OWN + PUBLISHED - 1;
	draw_everywhere(&p);
	sample_long(trial.never, sizeof trial.never, 0);
	for (size_t i = 0; i < OWN; i++) {
		sample_long(t.own[i].where, sizeof t.own[i].where, 1);
		sample_long(t.own[i].rule_text, sizeof t.own[i].rule_text, 0);
		sample_long(t.own[i].rule.note, sizeof t.own[i].rule.note, 0);
		sample_long(t.own[i].rule.source, sizeof t.own[i].rule.source, 1);
	}
	p.picked = 1;
	thresholds_page_show(&p, &t);
	p.trial = &trial;
	draw_everywhere(&p);
	t.n_own = 0;
	thresholds_page_show(&p, &t);
	draw_everywhere(&p);
	thresholds_page_show(&p, &none);
	draw_everywhere(&p);
	press(&p, "\t\nt2");
	thresholds_page_free(&p);
	draw_everywhere(&p);
	thresholds_page_free(&p);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(thresholds_page_shows_own_and_published_ones),
		cmocka_unit_test(
			thresholds_page_opens_own_ones_and_takes_published_ones),
		cmocka_unit_test(thresholds_page_takes_none_twice_unasked),
		cmocka_unit_test(thresholds_page_crosses_between_the_lists),
		cmocka_unit_test(thresholds_page_wishes),
		cmocka_unit_test(thresholds_page_narrows_both_lists),
		cmocka_unit_test(
			thresholds_page_shows_one_just_taken_whatever_is_looked_for),
		cmocka_unit_test(
			thresholds_page_asks_anew_what_another_rule_would_call),
		cmocka_unit_test(thresholds_page_draws_at_every_size),
	};

	if (!setlocale(LC_CTYPE, "C.UTF-8"))
		return 1;
	return cmocka_run_group_tests(tests, NULL, NULL);
}
