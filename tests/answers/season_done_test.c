/* What the season page tells at a glance of what was done: treatments entered, alerts
 * that nobody answered, fruit that was hurt. */
#include "acts.h"

#include "answers/season_page.h"

static void season_see(struct fixture *f, struct season_page *p, const char *today)
{
	struct err e = { 0 };

	fixture_read(f, today);
	must(season_page_read(p, f->book, &f->log, f->farm.id, &e), &e);
}

static void put_check(struct fixture *f, struct fruit_check c, const char *day)
{
	struct err e = { 0 };

	c.block = f->block.id;
	c.day = day_of(day);
	must(book_put_fruit_check(f->book, &c, &e), &e);
}

static void expect_damage(struct fixture *f, const char *why, const char *want)
{
	struct season_page p = { 0 };

	season_see(f, &p, "2026-07-20");
	assert_int_equal(p.n_charts, 1);
	if (strcmp(p.charts[0].damage, want) != 0)
		fail_msg("%s: %s, not %s", why, p.charts[0].damage, want);
	season_page_free(&p);
}

static void damage_adds_up_the_fruit_of_the_season(void **state)
{
	struct fruit_check c = fruit_check_blank;
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_trap_over(&f);
	expect_damage(&f, "nobody looked, which is no zero", "-");
	c.part = PART_FRUIT;
	c.pest = f.cm.id;
	c.looked_at = 100;
	c.stung = c.entered = 0;
	put_check(&f, c, "2026-07-10");
	expect_damage(&f, "looked and found none", "0 of 100");
	c.looked_at = 50;
	c.stung = 2;
	c.entered = 1;
	put_check(&f, c, "2026-07-12");
	expect_damage(&f, "stung and entered are both hurt", "3 of 150");
	c.stung = -1;
	c.pest = 0;
	put_check(&f, c, "2026-07-13");
	expect_damage(&f, "not told apart, of no pest: of any", "4 of 200");
	c.part = PART_SHOOTS;
	put_check(&f, c, "2026-07-14");
	expect_damage(&f, "a shoot is no fruit", "4 of 200");
	c.part = PART_FRUIT;
	put_check(&f, c, "2025-07-14");
	expect_damage(&f, "last season's is not this one's", "4 of 200");
	fixture_close(&f);
}

static void treatments_of_block_and_border_are_counted(void **state)
{
	struct season_page p = { 0 };
	struct fixture f;

	(void)state;
	fixture_open(&f);
	acts_trap_over(&f);
	season_see(&f, &p, "2026-07-20");
	assert_string_equal(p.charts[0].treated, "-");
	acts_treat(&f, "2026-07-02 10:30", 12, 14);
	struct treatment t = acts_treatment(&f, "2026-07-03 10:30", 12, 14);
	t.border = true;
	acts_put(&f, t);
	acts_treat(&f, "2025-07-02 10:30", 12, 14);
	season_see(&f, &p, "2026-07-20");
	assert_string_equal(p.charts[0].treated, "2");
	season_page_free(&p);
	fixture_close(&f);
}

static void open_are_those_that_nobody_answered(void **state)
{
	struct season_page p = { 0 };
	struct answer a = answer_blank;
	struct fixture f;

	(void)state;
	fixture_open(&f);
	int64_t trap = acts_trap_over(&f);
	season_see(&f, &p, "2026-07-20");
	int over = atoi(p.charts[0].over);
	assert_true(over > 0);
	assert_int_equal(atoi(p.charts[0].open), over);
	a.block = f.block.id;
	a.pest = f.cm.id;
	a.trap = trap;
	a.day = p.charts[0].alerts[0].day;
	acts_answer(&f, a, DECISION_LOOKED, "2026-07-16", "fruit clean");
	season_see(&f, &p, "2026-07-20");
	assert_int_equal(atoi(p.charts[0].over), over);
	assert_int_equal(atoi(p.charts[0].open), over - 1);
	season_page_free(&p);
	fixture_close(&f);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(damage_adds_up_the_fruit_of_the_season),
		cmocka_unit_test(treatments_of_block_and_border_are_counted),
		cmocka_unit_test(open_are_those_that_nobody_answered),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
