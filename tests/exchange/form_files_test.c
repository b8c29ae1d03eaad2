/* What was typed on forms goes out as files and comes in again the same: every field of
 * every family, every column of every kind of file. A field or a kind that is new and
 * not in the tables below fails here. */
#include "typed.h"

#include "base/csv.h"
#include "book/acts.h"
#include "book/weather.h"

/* A season's worth typed in. */
static const struct {
	enum entry_kind kind;
	const char *typed;
} rows[] = {
	{ ENTRY_SETTINGS, "name=area_unit;value=acre" },
	{ ENTRY_STATIONS, "station=Weir;lat=-12.345678;lon=170.5" },
	{ ENTRY_STATIONS, "station=Mast" },
	{ ENTRY_FARMS, "farm=Hather Bend;season_start=07-01;run_weekday=Tue;"
		       "station=Weir" },
	{ ENTRY_FARMS, "farm=Drumsorrel" },
	{ ENTRY_FARMS, "farm=Ash End" },
	{ ENTRY_BLOCKS, "farm=Drumsorrel;block=Weir Bank;crop=pear;variety=Amberlock;"
			"condition=disrupted;area_ha=10.5" },
	{ ENTRY_BLOCKS, "farm=Hather Bend;block=Long rows;crop=apple" },
	{ ENTRY_BLOCKS, "farm=Hather Bend;block=Weir" },
	{ ENTRY_BLOCKS, "farm=Hather Bend;block=Rows, short" },
	{ ENTRY_PESTS, "code=QM;name=quill moth;latin=Penna quieta;unit=C;base=7.25;"
		       "cap=31.5;method=sine;cutoff=horizontal;dd_source=own;"
		       "biofix_rule=three-moths" },
	{ ENTRY_LURES, "lure=QM 1 mg;pest=QM;life_days=28;hot_days=14;hot_from=12-01;"
		       "hot_to=02-28;source=label;stock=12;stock_day=2026-07-01;"
		       "reorder_at=4" },
	{ ENTRY_LURES, "lure=blank;life_days=100;stock=0" },
	{ ENTRY_CARDS, "card=deep;life_days=30;stir_at=10;change_at=60;floor_at=70;"
		       "source=own;stock=9;stock_day=2026-07-02;reorder_at=0" },
	{ ENTRY_PESTS, "code=ZZ;name=gone" },
	{ ENTRY_CARDS, "card=old;life_days=9" },
	{ ENTRY_TRAPS, "farm=Drumsorrel;block=Weir Bank;trap=B7;pest=QM;lure=QM 1 mg;"
		       "card=deep;place=border;lat=-12.5;lon=170.123456;order=3;"
		       "hung=2026-05-04;pulled=2026-07-20" },
	{ ENTRY_TRAPS, "farm=Hather Bend;block=Long rows;trap=1;pest=CM;"
		       "hung=2026-05-05" },
	{ ENTRY_TRAPS, "farm=Hather Bend;block=Long rows;trap=2;pest=CM" },
	{ ENTRY_THRESHOLDS,
		"pest=QM;farm=Drumsorrel;block=Weir Bank;from=11-15;to=02-01;"
		"measure=block-total;span=hung;comparator=>;value=12.25;"
		"note=own figure" },
	{ ENTRY_THRESHOLDS, "pest=CM;flight=1;until_dd=250;measure=none" },
	{ ENTRY_THRESHOLDS,
		"pest=QM;crop=pear;condition=disrupted;lure=QM 1 mg;place=border;"
		"measure=trap-week;span=2;comparator=>=;value=3;source=own" },
	{ ENTRY_SOURCES, "farm=Drumsorrel;name=Withy Garth;kind=abandoned;lat=-12.5;"
			 "lon=170.25;outline=-12.5 170.2| -12.5 170.3| -12.6 170.3" },
	{ ENTRY_SOURCES, "farm=Hather Bend;name=bins, old;kind=bins" },
	{ ENTRY_TREATMENTS,
		"farm=Drumsorrel;block=Weir Bank;pest=QM;date=2026-07-20;"
		"started_at=2026-07-19T23:30-07:00;ended_at=2026-07-20T02:15-07:00;"
		"border=yes;product=Brackwater oil;registration=0-0;amount=12.5;"
		"amount_unit=l;area_ha=2.5;applicator=JR;certificate=Z 1;rei_hours=12;"
		"phi_days=14;job=a;note=as \"on\" the label" },
	{ ENTRY_TREATMENTS, "farm=Hather Bend;block=Rows, short;date=2026-07-21" },
	{ ENTRY_TREATMENTS, "farm=Hather Bend;block=Long rows, Weir;date=2026-07-19;"
			    "rei_hours=0;phi_days=0" },
	{ ENTRY_PICKS, "farm=Drumsorrel;block=Weir Bank;date=2026-09-01;note=spot" },
	{ ENTRY_PICKS, "farm=Hather Bend;block=Rows, short;date=2026-07-20;done=yes" },
	{ ENTRY_CHECKS,
		"farm=Drumsorrel;block=Weir Bank;pest=QM;date=2026-07-20;part=shoots;"
		"tree=top;looked_at=300;stung=2;entered=1;note=a row" },
	{ ENTRY_CHECKS, "farm=Hather Bend;block=Long rows;date=2026-07-20;"
			"looked_at=100;entered=0" },
	{ ENTRY_DISPENSERS, "farm=Drumsorrel;block=Weir Bank;pest=QM;up=2026-04-10;"
			    "down=2026-07-01;per_ha=500.5;type=hand-tied;note=by two" },
	{ ENTRY_DISPENSERS, "farm=Hather Bend;block=Long rows;up=2026-05-01" },
};

/* In the order in which a new book takes them. */
static const char *const order[] = { "settings", "pests", "lures", "cards", "farms",
	"stations", "weather", "blocks", "traps", "visits", "thresholds", "places",
	"biofix", "treatments", "picks", "fruit-checks", "dispensers", "answers" };

static bool is_typed(enum entry_kind kind, const char *column)
{
	size_t n = strlen(column);

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		for (const char *at = rows[i].typed; rows[i].kind == kind && at;
			at = strchr(at, ';') ? strchr(at, ';') + 1 : NULL)
			if (strncmp(at, column, n) == 0 && at[n] == '=')
				return true;
	return false;
}

static void every_field_of_every_family_is_typed(void **state)
{
	(void)state;
	for (int kind = 0; kind < ENTRY_KINDS; kind++) {
		const struct entry_family *f = &entry_families[kind];
		for (size_t i = 0; i < f->n_columns; i++)
			if (f->columns[i].label &&
				!is_typed((enum entry_kind)kind, f->columns[i].name))
				fail_msg("nobody types %s of %s", f->columns[i].name,
					f->name);
	}
}

static void must(bool ok, const struct err *e)
{
	if (!ok)
		fail_msg("%s", e->text);
}

/* The pages save these without a form: a visit, a day of weather, a biofix, an
 * answer. */
static void type_the_rest(struct book *b, const struct log *l)
{
	const struct trap *t = &l->traps.items[0]; /* B7 of Drumsorrel */
	struct visit v = { .trap = t->id,
		.day = day_of("2026-05-11"),
		.outcome = OUTCOME_FLOOR,
		.count = 60,
		.females = 0,
		.others = 4,
		.new_card = t->card,
		.new_lure = t->lure,
		.stirred = true };
	struct visit skipped = { .trap = t->id,
		.day = v.day + 7,
		.outcome = OUTCOME_SKIPPED,
		.reason = REASON_REENTRY,
		.count = COUNT_NONE,
		.females = COUNT_NONE,
		.others = COUNT_NONE };
	struct visit_words w = { .scout = "QX", .note = "wet, \"windy\"" };
	struct weather_day day = { l->stations.items[0].id, v.day, 4.5, 17.25, 'C' };
	struct biofix_date x = { .farm = t->farm,
		.pest = t->pest,
		.season = 2026,
		.day = v.day,
		.rule = "by hand" };
	struct answer a = answer_blank;
	struct err e = { 0 };

	a.block = t->block;
	a.trap = t->id;
	a.pest = t->pest;
	a.day = v.day;
	a.on = v.day + 1;
	a.decision = DECISION_TREATED;
	text_copy(a.note, sizeof a.note, "at once");
	must(book_save_visit(b, &v, &w, &e), &e);
	must(book_save_visit(b, &skipped, NULL, &e), &e);
	must(book_save_weather(b, &day, &e), &e);
	must(book_put_biofix(b, &x, &e), &e);
	must(book_put_answer(b, &a, &e), &e);
}

/* Of each family of which one can be: the one that was entered last. */
static void put_last_away(struct book *b, const struct log *l)
{
	for (int kind = 0; kind < ENTRY_KINDS; kind++) {
		struct entry_ask ask = { .kind = (enum entry_kind)kind };
		struct entry_list list = list_of(b, l, &ask);
		struct err e = { 0 };
		int64_t last = 0;
		for (size_t i = 0; i < list.n; i++)
			last = list.rows[i].id > last ? list.rows[i].id : last;
		if (entry_families[kind].can_retire)
			must(entry_retire(b, ask.kind, last, true, l, &e), &e);
		entry_list_free(&list);
	}
}

/* A bar stands for the semicolons of an outline, which part the fields of a row. */
static void put_semicolons(struct entry *r)
{
	for (size_t i = 0; i < ENTRY_FIELDS_MAX; i++)
		for (char *at = r->text[i]; (at = strchr(at, '|'));)
			*at = ';';
}

static void type_all(struct book *b)
{
	struct log l = { 0 };

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		read_log(b, &l);
		struct entry *r = typed(b, &l, rows[i].kind, rows[i].typed);
		struct entry_fault fault;
		put_semicolons(r);
		if (rows[i].kind == ENTRY_SETTINGS)
			r->id = 13;
		if (!entry_put(r, b, &l, ENTRY_SURE, &fault))
			fail_msg("%s: %s", rows[i].typed, fault.text);
		free(r);
	}
	read_log(b, &l);
	type_the_rest(b, &l);
	put_last_away(b, &l);
	log_free(&l);
}

/* Whether some row of the file has a value in the column. */
static bool has_value(const char *text, const char *column)
{
	char *copy = mem_text(text);
	FILE *file = fmemopen(copy, strlen(copy), "r");
	bool found = false;
	struct err e = { 0 };
	size_t at = 0;
	struct csv c;

	csv_open(&c, file, "file");
	assert_int_equal(csv_next(&c, &e), CSV_ROW);
	while (at < c.n_fields && strcmp(c.field[at].text, column) != 0)
		at++;
	while (at < c.n_fields && !found && csv_next(&c, &e) == CSV_ROW)
		found = *c.field[at].text != '\0';
	csv_close(&c);
	fclose(file);
	free(copy);
	return found;
}

static void every_column_of_every_kind_has_a_value(struct book *b)
{
	for (size_t k = 0; kinds[k]; k++) {
		char *text = give(b, kinds[k]->name);
		for (size_t i = 0; i < kinds[k]->n_columns; i++)
			if (!kinds[k]->columns[i].passing &&
				!has_value(text, kinds[k]->columns[i].name))
				fail_msg("no row of %s has a value in %s",
					kinds[k]->name, kinds[k]->columns[i].name);
		free(text);
	}
}

static void what_was_typed_comes_back_from_files(void **state)
{
	struct book *b = new_book(), *again = new_book();

	(void)state;
	type_all(b);
	every_column_of_every_kind_has_a_value(b);
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		char *one = give(b, order[i]);
		must_take(again, order[i], one);
		free(one);
	}
	for (size_t k = 0; kinds[k]; k++) {
		char *one = give(b, kinds[k]->name), *two = give(again, kinds[k]->name);
		expect_text(kinds[k]->name, two, one);
		free(one);
		free(two);
	}
	char *blocks = give(again, "blocks");
	assert_non_null(
		strstr(blocks, "Drumsorrel,Weir Bank,pear,Amberlock,disrupted,4.2500"));
	free(blocks);
	book_close(b);
	book_close(again);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_field_of_every_family_is_typed),
		cmocka_unit_test(what_was_typed_comes_back_from_files),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
