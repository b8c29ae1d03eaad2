/* What was typed on forms goes out as files and comes in again the same. */
#include "typed.h"

/* A season's worth typed in: what goes out as files makes the same book again. */
static void what_was_typed_comes_back_from_files(void **state)
{
	static const struct {
		enum entry_kind kind;
		const char *typed;
	} row[] = {
		{ ENTRY_SETTINGS, "name=area_unit;value=acre" },
		{ ENTRY_STATIONS, "station=Weir;lat=-12.345678;lon=170.5" },
		{ ENTRY_STATIONS, "station=Mast" },
		{ ENTRY_FARMS, "farm=Hather Bend;season_start=07-01;run_weekday=Tue;"
			       "station=Weir" },
		{ ENTRY_FARMS, "farm=Drumsorrel" },
		{ ENTRY_BLOCKS,
			"farm=Drumsorrel;block=Weir Bank;crop=pear;variety=Amberlock;"
			"condition=disrupted;area_ha=10.5" },
		{ ENTRY_BLOCKS, "farm=Hather Bend;block=Long rows;crop=apple" },
		{ ENTRY_PESTS,
			"code=QM;name=quill moth;latin=Penna quieta;unit=C;base=7.25;"
			"method=sine;cutoff=none;dd_source=own" },
		{ ENTRY_LURES,
			"lure=QM 1 mg;pest=QM;life_days=28;hot_days=14;hot_from=12-01;"
			"hot_to=02-28;stock=12;stock_day=2026-07-01;reorder_at=4" },
		{ ENTRY_LURES, "lure=blank;life_days=100;stock=0" },
		{ ENTRY_CARDS, "card=deep;life_days=30;change_at=60;reorder_at=0" },
		{ ENTRY_TRAPS,
			"farm=Drumsorrel;block=Weir Bank;trap=B7;pest=QM;lure=QM 1 mg;"
			"card=deep;place=border;lat=-12.5;lon=170.123456;"
			"hung=2026-05-04;pulled=2026-07-20" },
		{ ENTRY_TRAPS, "farm=Hather Bend;block=Long rows;trap=1;pest=CM;"
			       "hung=2026-05-05" },
		{ ENTRY_TRAPS, "farm=Hather Bend;block=Long rows;trap=2;pest=CM" },
		{ ENTRY_THRESHOLDS,
			"pest=QM;farm=Drumsorrel;block=Weir Bank;from=11-15;to=02-01;"
			"measure=block-total;span=hung;comparator=>;value=12.25;"
			"note=own figure" },
		{ ENTRY_THRESHOLDS, "pest=CM;flight=1;until_dd=250;measure=none" },
		{ ENTRY_SOURCES,
			"farm=Drumsorrel;name=Withy Garth;kind=abandoned;lat=-12.5;"
			"lon=170.25" },
		{ ENTRY_SOURCES, "farm=Hather Bend;name=bins, old;kind=bins" },
	};
	static const char *const order[] = { "settings", "pests", "lures", "cards",
		"farms", "stations", "blocks", "traps", "visits", "thresholds",
		"places" };
	struct book *b = new_book(), *again = new_book();
	struct log l = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		read_log(b, &l);
		struct entry *r = typed(b, &l, row[i].kind, row[i].typed);
		if (row[i].kind == ENTRY_SETTINGS)
			r->id = 13;
		form_put(r, b, &l);
		free(r);
	}
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		char *one = give(b, order[i]);
		must_take(again, order[i], one);
		free(one);
	}
	char *one = give_all(b), *two = give_all(again);
	expect_text("all together", two, one);
	assert_non_null(
		strstr(one, "Drumsorrel,Weir Bank,pear,Amberlock,disrupted,4.2500"));
	free(one);
	free(two);
	log_free(&l);
	book_close(b);
	book_close(again);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_was_typed_comes_back_from_files),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
