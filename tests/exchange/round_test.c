/* Whatever a book holds goes out as files and comes in again the same: random books,
 * with names that files like to trip over. */
#include "desk.h"
#include "odd.h"

#include "book/sources.h"
#include "book/weather.h"
#include "season/degree_days.h"

#include <math.h>

enum { BOOKS = 40, TRAPS = 12, VISITS = 14, RULES = 8, ACTS = 6 };

/* Kinds in the order in which a new book takes them. */
static const char *const order[] = { "pests", "lures", "cards", "traps", "visits",
	"thresholds", "places", "stations", "weather", "farms", "blocks", "biofix",
	"treatments", "picks", "fruit-checks", "dispensers", "answers", "settings" };

struct made {
	struct book *b;
	struct err e;
	struct pest pest[2];
	struct lure_kind lure[3]; /* of pest 0, pest 1, and of none */
	struct card_kind card;
	struct farm farm[2];
	struct block block[4]; /* two each */
	struct trap trap[TRAPS];
	struct station station[2];
};

/* Of any unit, with every method and cutoff that goes with it. */
static void odd_heat(struct heat *h)
{
	static const char *const units = "CF";
	enum dd_method method = (enum dd_method)dice(DD_METHOD_COUNT);
	enum dd_cutoff cutoff = (enum dd_cutoff)dice(DD_CUTOFF_COUNT);
	struct dd_rule r = { method, cutoff, 0, 0 };

	odd_text(h->source, sizeof h->source);
	if (!dice(4))
		return;
	h->unit = units[dice(2)];
	h->base = dice(600000) / 1e4 - 10;
	h->cap = dice(2) ? h->base + (1 + dice(9)) / 8.0 : (double)NAN;
	r.base = h->base;
	r.cap = h->cap;
	if (dd_rule_fault(&r)) {
		method = DD_AVERAGE;
		cutoff = DD_NO_CUTOFF;
	}
	text_copy(h->method, sizeof h->method, dd_method_word(method));
	text_copy(h->cutoff, sizeof h->cutoff, dd_cutoff_word(cutoff));
}

static struct stock odd_stock(void)
{
	struct stock s = { dice(2) ? dice(COUNT_MAX + 1) : -1, DAY_NONE, dice(9) - 1 };

	if (s.n >= 0)
		s.day = day_of(TODAY) - dice(99);
	return s;
}

static void make_kinds(struct made *m)
{
	for (int i = 0; i < 2; i++) {
		odd_name(m->pest[i].code, sizeof m->pest[i].code, i);
		odd_text(m->pest[i].name, sizeof m->pest[i].name);
		odd_text(m->pest[i].latin, sizeof m->pest[i].latin);
		odd_heat(&m->pest[i].heat);
		m->pest[i].retired = dice(2);
		if (dice(2))
			text_copy(m->pest[i].biofix_rule, sizeof m->pest[i].biofix_rule,
				"three-moths");
		must(book_put_pest(m->b, &m->pest[i], &m->e), &m->e);
	}
	for (int i = 0; i < 3; i++) {
		struct lure_kind *k = &m->lure[i];
		*k = (struct lure_kind){ .life_days = 1 + dice(366) };
		k->pest = i < 2 ? m->pest[i].id : 0;
		k->stock = odd_stock();
		k->retired = dice(2);
		odd_name(k->name, sizeof k->name, i);
		odd_text(k->source, sizeof k->source);
		if (dice(2)) {
			k->hot_days = 1 + dice(k->life_days);
			k->hot_from = 1101;
			k->hot_to = 229;
		}
		must(book_put_lure(m->b, k, &m->e), &m->e);
	}
	m->card = (struct card_kind){ .life_days = 30, .stir_at = 1 + dice(9) };
	m->card.change_at = m->card.stir_at + dice(20);
	m->card.floor_at = m->card.change_at + dice(20);
	m->card.stock = odd_stock();
	m->card.retired = dice(2);
	odd_name(m->card.name, sizeof m->card.name, 0);
	must(book_put_card(m->b, &m->card, &m->e), &m->e);
}

static void make_places(struct made *m)
{
	for (int i = 0; i < 2; i++) {
		m->farm[i].season_start = dice(2) ? 101 : 701;
		m->farm[i].run_weekday = dice(8);
		m->farm[i].retired = dice(2);
		odd_name(m->farm[i].name, sizeof m->farm[i].name, i);
		must(book_put_farm(m->b, &m->farm[i], &m->e), &m->e);
	}
	for (int i = 0; i < 4; i++) {
		struct block *k = &m->block[i];
		*k = (struct block){ .farm = m->farm[i / 2].id,
			.area_x100 = dice(900) - 1 };
		k->condition = (enum condition)dice(CONDITION_COUNT);
		k->retired = dice(2);
		odd_name(k->name, sizeof k->name, i);
		if (dice(2))
			odd_text(k->crop, sizeof k->crop);
		if (dice(2))
			odd_text(k->variety, sizeof k->variety);
		must(book_put_block(m->b, k, &m->e), &m->e);
	}
	for (int i = 0; i < TRAPS; i++) {
		struct trap *t = &m->trap[i];
		const struct block *in = &m->block[i % 4];
		int pest = dice(2);
		*t = (struct trap){
			.farm = in->farm, .block = in->id, .order = dice(6)
		};
		t->pest = m->pest[pest].id;
		t->place = (enum place)dice(PLACE_COUNT);
		t->lure = dice(3) ? m->lure[dice(2) ? pest : 2].id : 0;
		t->card = dice(3) ? m->card.id : 0;
		t->has_position = dice(2);
		t->lat = t->has_position ? dice(180000000) / 1e6 - 90 : 0;
		t->lon = t->has_position ? dice(360000000) / 1e6 - 180 : 0;
		odd_name(t->label, sizeof t->label, i);
		must(book_put_trap(m->b, t, &m->e), &m->e);
	}
}

/* As a point, an outline, both or neither. */
static void make_sources(struct made *m)
{
	for (int i = 0; i < 4; i++) {
		struct source s = { .farm = m->farm[i / 2].id };
		s.kind = (enum source_kind)dice(SOURCE_KIND_COUNT);
		s.has_position = dice(2);
		s.lat = s.has_position ? dice(180000000) / 1e6 - 90 : 0;
		s.lon = s.has_position ? dice(360000000) / 1e6 - 180 : 0;
		s.n_outline = dice(2) ? 0 : (size_t)(OUTLINE_MIN + dice(5));
		for (size_t k = 0; k < s.n_outline; k++)
			s.outline[k] = (struct corner){ dice(1800000000) / 1e7 - 90,
				dice(2000000000) / 1e7 - 100 };
		odd_name(s.name, sizeof s.name, i);
		must(book_put_source(m->b, &s, &m->e), &m->e);
	}
}

/* Weather of two stations, a day of which may lack one temperature. */
static void make_weather(struct made *m)
{
	for (int i = 0; i < 2; i++) {
		struct station *s = &m->station[i];
		s->has_position = dice(2);
		s->lat = s->has_position ? dice(18000000) / 1e5 - 90 : 0;
		s->lon = s->has_position ? dice(36000000) / 1e5 - 180 : 0;
		odd_name(s->name, sizeof s->name, i);
		must(book_put_station(m->b, s, &m->e), &m->e);
		for (int32_t day = day_of(TODAY) - 30; day <= day_of(TODAY); day++) {
			struct weather_day w = { .station = s->id, .day = day };
			w.unit = dice(2) ? 'C' : 'F';
			w.min = (w.unit == 'C' ? 10 : 50) - dice(100000) / 1e4;
			w.max = w.min + dice(100000) / 1e4;
			if (dice(5) == 0)
				*(dice(2) ? &w.min : &w.max) = (double)NAN;
			if (dice(6))
				must(book_save_weather(m->b, &w, &m->e), &m->e);
		}
	}
	m->farm[0].station = m->station[dice(2)].id;
	must(book_put_farm(m->b, &m->farm[0], &m->e), &m->e);
}

static void make_biofixes(struct made *m)
{
	for (int i = 0; i < 4; i++) {
		struct biofix_date d = { .farm = m->farm[i / 2].id,
			.pest = m->pest[i % 2].id,
			.season = 2020 + dice(7) };
		d.day = day_from_ymd(d.season, 1 + dice(7), 1 + dice(20));
		if (dice(2))
			odd_text(d.rule, sizeof d.rule);
		must(book_put_biofix(m->b, &d, &m->e), &m->e);
	}
}

static void make_settings(struct made *m)
{
	char text[SCOUT_BYTES];

	odd_text(text, sizeof text);
	must(book_put_setting(m->b, "scout", text, &m->e), &m->e);
	snprintf(text, sizeof text, "%d", dice(4));
	must(book_put_setting(m->b, "fill_days", text, &m->e), &m->e);
	must(book_put_setting(m->b, "area_unit", dice(2) ? "acre" : "ha", &m->e),
		&m->e);
}

static int32_t odd_count(int32_t most)
{
	return dice(3) ? dice(most + 1) : COUNT_NONE;
}

/* Only what hangs is visited. */
static void make_visit(struct made *m, const struct trap *t, int32_t day, bool *hangs)
{
	struct visit v = { .trap = t->id, .day = day, .count = COUNT_NONE };
	struct visit_words w = { 0 };

	v.outcome = *hangs ? (enum outcome)dice(OUTCOME_COUNT) : OUTCOME_HUNG;
	*hangs = v.outcome != OUTCOME_PULLED && v.outcome != OUTCOME_MISSING;
	v.females = v.others = COUNT_NONE;
	if (outcome_facts[v.outcome].count == COUNT_MUST)
		v.count = dice(COUNT_MAX + 1);
	if (outcome_facts[v.outcome].count == COUNT_MAY)
		v.count = odd_count(COUNT_MAX);
	if (v.count != COUNT_NONE) {
		v.females = odd_count(v.count);
		v.others = odd_count(COUNT_MAX);
	}
	for (int r = dice(REASON_COUNT); r > 0; r--)
		if (reason_fits((enum reason)r, v.outcome))
			v.reason = (enum reason)r;
	v.new_card = dice(2) ? m->card.id : 0;
	v.new_lure = dice(2) ? m->lure[dice(2) ? t->pest == m->pest[1].id : 2].id : 0;
	v.stirred = dice(2);
	if (dice(2))
		odd_text(w.scout, sizeof w.scout);
	if (dice(2))
		odd_text(w.note, sizeof w.note);
	must(book_save_visit(m->b, &v, &w, &m->e), &m->e);
}

static void make_rule(struct made *m, int i)
{
	struct rule r = { .pest = m->pest[dice(2)].id };
	const struct block *in = &m->block[dice(4)];

	if (dice(2))
		odd_text(r.crop, sizeof r.crop);
	r.condition = (enum condition)dice(CONDITION_COUNT);
	r.place = (enum place)dice(PLACE_COUNT);
	r.lure = dice(2) ? m->lure[2].id : 0;
	r.farm = dice(2) ? in->farm : 0;
	r.block = r.farm && dice(2) ? in->id : 0;
	r.flight = dice(10);
	r.from = dice(2) ? 1115 : 0;
	r.to = r.from ? 229 : 0;
	r.until_dd = dice(1000);
	r.measure = (enum measure)dice(MEASURE_COUNT);
	r.comparator = (enum comparator)dice(COMPARATOR_COUNT);
	r.value_x100 = 1 + dice(99999);
	r.span = 1 + dice(8);
	if ((r.measure == MEASURE_TRAP_TOTAL || r.measure == MEASURE_BLOCK_TOTAL) &&
		dice(2)) {
		r.span_kind = (enum span_kind)(1 + dice(SPAN_COUNT - 1));
		r.span = 0;
	}
	odd_name(r.note, sizeof r.note, i);
	odd_text(r.source, sizeof r.source);
	must(book_put_rule(m->b, &r, &m->e), &m->e);
}

static struct book *random_book(uint32_t seed)
{
	struct made m = { .b = new_book() };

	state_of_dice = seed;
	make_kinds(&m);
	make_places(&m);
	make_sources(&m);
	for (int t = 0; t < TRAPS; t++) {
		bool hangs = false;
		for (int32_t day = day_of(TODAY) - VISITS, n = 0; n < VISITS; n++)
			if (dice(3))
				make_visit(&m, &m.trap[t], ++day, &hangs);
	}
	for (int i = 0; i < RULES; i++)
		make_rule(&m, i);
	make_weather(&m);
	make_biofixes(&m);
	make_settings(&m);
	for (int i = 0; i < ACTS; i++)
		odd_acts(m.b, &m.trap[dice(TRAPS)], i);
	return m.b;
}

static void an_export_imports_again_unchanged(void **state)
{
	(void)state;
	for (uint32_t seed = 1; seed <= BOOKS; seed++) {
		struct book *b = random_book(seed), *again = new_book();
		for (size_t k = 0; k < sizeof order / sizeof *order; k++) {
			char *one = give(b, order[k]);
			must_take(again, order[k], one);
			char *two = give(again, order[k]);
			if (strcmp(one, two) != 0)
				fail_msg("book %u, %s: went out\n%s\ncame back\n%s",
					(unsigned)seed, order[k], one, two);
			free(one);
			free(two);
		}
		/* Later kinds have not bent the earlier ones. */
		char *one = give_all(b), *two = give_all(again);
		expect_text("all together", two, one);
		free(one);
		free(two);
		book_close(b);
		book_close(again);
	}
}

static void an_export_into_its_own_book_changes_nothing(void **state)
{
	(void)state;
	for (uint32_t seed = 1; seed <= BOOKS; seed++) {
		struct book *b = random_book(seed);
		for (size_t k = 0; k < sizeof order / sizeof *order; k++) {
			struct imported out = { 0 };
			struct err e = { 0 };
			char *one = give(b, order[k]);
			if (!take(b, order[k], one, &out, &e))
				fail_msg("book %u, %s: %s", (unsigned)seed, order[k],
					complaint(&out, &e));
			if (out.n_new || out.n_changed)
				fail_msg("book %u, %s: %d new, %d changed",
					(unsigned)seed, order[k], (int)out.n_new,
					(int)out.n_changed);
			imported_free(&out);
			free(one);
		}
		book_close(b);
	}
}

static void formula_looking_text_is_guarded(void **state)
{
	struct book *b = new_book();

	(void)state;
	must_take(b, "pests", "code,name,latin\nQ1,'=1+1,'@x\nQ2,''=1,-5\n");
	char *got = give(b, "pests");
	assert_non_null(
		strstr(got, "\r\nQ1,'=1+1,'@x,,,,,,,,no\r\nQ2,''=1,-5,,,,,,,,no\r\n"));
	free(got);
	book_close(b);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(an_export_imports_again_unchanged),
		cmocka_unit_test(an_export_into_its_own_book_changes_nothing),
		cmocka_unit_test(formula_looking_text_is_guarded),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
