/* What no record may hold is refused with a sentence that names it, before it comes to
 * the file's own CHECKs: each text with a control character, each number just beyond
 * its last good value. */
#include "fixture.h"

#include "book/sources.h"
#include "book/weather.h"

enum { DAY = 20000, FIRST_DAY = -25567, LAST_DAY = 84005 }; /* 1900-01-01, 2199-12-31 */

enum kind {
	FARM,
	BLOCK,
	TRAP,
	PEST,
	LURE,
	CARD,
	RULE,
	PLACE,
	TREATMENT,
	PICK,
	CHECK,
	DISPENSERS,
	ANSWER,
	BIOFIX,
	WEATHER,
};

union record {
	struct farm farm;
	struct block block;
	struct trap trap;
	struct pest pest;
	struct lure_kind lure;
	struct card_kind card;
	struct rule rule;
	struct source place;
	struct treatment treatment;
	struct pick pick;
	struct fruit_check check;
	struct disruption dispensers;
	struct answer answer;
	struct biofix_date biofix;
	struct weather_day weather;
};

static bool put(struct book *b, enum kind kind, union record *r, struct err *e)
{
	switch (kind) {
	case FARM:
		return book_put_farm(b, &r->farm, e);
	case BLOCK:
		return book_put_block(b, &r->block, e);
	case TRAP:
		return book_put_trap(b, &r->trap, e);
	case PEST:
		return book_put_pest(b, &r->pest, e);
	case LURE:
		return book_put_lure(b, &r->lure, e);
	case CARD:
		return book_put_card(b, &r->card, e);
	case RULE:
		return book_put_rule(b, &r->rule, e);
	case PLACE:
		return book_put_source(b, &r->place, e);
	case TREATMENT:
		return book_put_treatment(b, &r->treatment, e);
	case PICK:
		return book_put_pick(b, &r->pick, e);
	case CHECK:
		return book_put_fruit_check(b, &r->check, e);
	case DISPENSERS:
		return book_put_disruption(b, &r->dispensers, e);
	case ANSWER:
		return book_put_answer(b, &r->answer, e);
	case BIOFIX:
		return book_put_biofix(b, &r->biofix, e);
	case WEATHER:
		return book_save_weather(b, &r->weather, e);
	}
	return false;
}

static union record place_sample(const struct desk *d, enum kind kind)
{
	switch (kind) {
	case FARM:
		return (union record){ .farm = { .name = "Drumsorrel",
					       .season_start = 101 } };
	case BLOCK:
		return (union record){
			.block = { .farm = d->farm, .name = "Weir", .area_x100 = -1 }
		};
	case TRAP:
		return (union record){ .trap = { .id = d->trap,
					       .farm = d->farm,
					       .block = d->block,
					       .pest = d->pest,
					       .label = "1",
					       .order = 1 } };
	default:
		return (union record){ .place = { .farm = d->farm, .name = "Bins" } };
	}
}

static union record kind_sample(const struct desk *d, enum kind kind)
{
	switch (kind) {
	case PEST:
		return (union record){ .pest = { .code = "T3" } };
	case LURE:
		return (union record){ .lure = { .name = "T3",
					       .life_days = 28,
					       .hot_days = 14,
					       .hot_from = 601,
					       .hot_to = 831,
					       .stock = { 5, DAY, 2 } } };
	case CARD:
		return (union record){ .card = { .name = "glue",
					       .life_days = 28,
					       .stir_at = 20,
					       .change_at = 30,
					       .floor_at = 40,
					       .stock = { 5, DAY, 2 } } };
	case RULE:
		return (union record){
			.rule = { .pest = d->pest, .span = 1, .value_x100 = 500 }
		};
	case BIOFIX:
		return (union record){ .biofix = { .farm = d->farm,
					       .pest = d->pest,
					       .season = 2024,
					       .day = DAY } };
	default:
		return (union record){
			.weather = { 1, DAY, 4, 20, 'C' },
		};
	}
}

static union record sample(const struct desk *d, enum kind kind)
{
	union record r = { 0 };

	switch (kind) {
	case TREATMENT:
		r.treatment = treatment_blank;
		r.treatment.block = d->block;
		r.treatment.day = DAY;
		return r;
	case PICK:
		r.pick = (struct pick){ .block = d->block, .day = DAY };
		return r;
	case CHECK:
		r.check = (struct fruit_check){
			.block = d->block, .day = DAY, .looked_at = 9
		};
		return r;
	case DISPENSERS:
		r.dispensers = disruption_blank;
		r.dispensers.block = d->block;
		r.dispensers.up = DAY;
		return r;
	case ANSWER:
		r.answer = (struct answer){
			.block = d->block, .pest = d->pest, .day = DAY, .on = DAY
		};
		return r;
	case FARM:
	case BLOCK:
	case TRAP:
	case PLACE:
		return place_sample(d, kind);
	default:
		return kind_sample(d, kind);
	}
}

/* Tries it and takes it back. */
static bool taken(struct desk *d, enum kind kind, union record *r, struct err *e)
{
	assert_true(book_begin(d->book, e));
	bool ok = put(d->book, kind, r, e);
	book_rollback(d->book);
	return ok;
}

static void desk_with_station(struct desk *d)
{
	struct station s = { .name = "Weir" };

	desk_memory(d);
	must(book_put_station(d->book, &s, e));
	assert_int_equal(s.id, 1);
}

#define AT(record, field) offsetof(struct record, field)

static void book_refuses_a_text_that_cannot_be_shown(void **state)
{
	static const struct {
		enum kind kind;
		size_t at;
		const char *names;
	} row[] = {
		{ FARM, AT(farm, name), "the farm's name" },
		{ BLOCK, AT(block, name), "the block's name" },
		{ BLOCK, AT(block, crop), "the crop" },
		{ BLOCK, AT(block, variety), "the variety" },
		{ TRAP, AT(trap, label), "the trap's name" },
		{ PEST, AT(pest, code), "the pest's code" },
		{ PEST, AT(pest, name), "the pest's name" },
		{ PEST, AT(pest, latin), "latin name" },
		{ PEST, AT(pest, biofix_rule), "the biofix rule" },
		{ LURE, AT(lure_kind, name), "the lure's name" },
		{ LURE, AT(lure_kind, source), "the source" },
		{ CARD, AT(card_kind, name), "the card's name" },
		{ CARD, AT(card_kind, source), "the source" },
		{ RULE, AT(rule, crop), "the crop" },
		{ RULE, AT(rule, note), "the note" },
		{ RULE, AT(rule, source), "the source" },
		{ PLACE, AT(source, name), "the source's name" },
		{ TREATMENT, AT(treatment, job), "the job" },
		{ TREATMENT, AT(treatment, product), "the product" },
		{ TREATMENT, AT(treatment, registration), "the registration" },
		{ TREATMENT, AT(treatment, amount), "the amount" },
		{ TREATMENT, AT(treatment, amount_unit), "the unit" },
		{ TREATMENT, AT(treatment, applicator), "the applicator" },
		{ TREATMENT, AT(treatment, certificate), "the certificate" },
		{ TREATMENT, AT(treatment, note), "the note" },
		{ PICK, AT(pick, note), "the note" },
		{ CHECK, AT(fruit_check, note), "the note" },
		{ DISPENSERS, AT(disruption, type), "the type" },
		{ DISPENSERS, AT(disruption, note), "the note" },
		{ ANSWER, AT(answer, note), "the note" },
		{ BIOFIX, AT(biofix_date, rule), "the biofix rule" },
	};
	static const char *const bad[] = { "a\tb", "\x1b[2J", "a\x7f", "caf\xe9" };
	struct desk d;

	(void)state;
	desk_with_station(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++)
		for (size_t k = 0; k < sizeof bad / sizeof *bad; k++) {
			union record r = sample(&d, row[i].kind);
			struct err err = { 0 };
			must(taken(&d, row[i].kind, &r, e));
			r = sample(&d, row[i].kind);
			strcpy((char *)&r + row[i].at, bad[k]);
			if (taken(&d, row[i].kind, &r, &err) || err.kind != ERR_INPUT ||
				!strstr(err.text, row[i].names) ||
				!strstr(err.text, "cannot be printed"))
				fail_msg("%s, %zu: %s", row[i].names, k, err.text);
		}
	desk_clear(&d);
}

static void book_refuses_a_number_beyond_its_last_good_one(void **state)
{
	static const struct {
		enum kind kind;
		size_t at;
		int32_t good, bad;
		const char *names;
	} row[] = {
		{ FARM, AT(farm, run_weekday), 0, -1, "the weekday" },
		{ FARM, AT(farm, run_weekday), 7, 8, "the weekday" },
		{ FARM, AT(farm, season_start), 1231, 1232, "its season starts" },
		{ FARM, AT(farm, season_start), 101, 0, "its season starts" },
		{ BLOCK, AT(block, area_x100), -1, -2, "the area" },
		{ BLOCK, AT(block, area_x100), 100000000, 100000001, "the area" },
		{ TRAP, AT(trap, order), 1, 0, "the driving order" },
		{ TRAP, AT(trap, order), 1000000, 1000001, "the driving order" },
		{ LURE, AT(lure_kind, life_days), 366, 367, "the lure's life" },
		{ LURE, AT(lure_kind, life_days), 14, 0, "the lure's life" },
		{ LURE, AT(lure_kind, hot_days), 28, 29, "the life in the hot" },
		{ LURE, AT(lure_kind, hot_days), 1, 0, "the life in the hot" },
		{ LURE, AT(lure_kind, hot_from), 630, 631, "the hot season" },
		{ LURE, AT(lure_kind, hot_from), 101, 0, "the hot season" },
		{ LURE, AT(lure_kind, hot_to), 630, 0, "the hot season" },
		{ TREATMENT, AT(treatment, from.east), 840, 841, "ahead of UTC" },
		{ TREATMENT, AT(treatment, until.east), -840, -841, "ahead of UTC" },
		{ LURE, AT(lure_kind, stock.n), 9999, 10000, "the stock" },
		{ LURE, AT(lure_kind, stock.n), 0, -1, "its stock needs both" },
		{ LURE, AT(lure_kind, stock.n), 0, -2, "the stock" },
		{ LURE, AT(lure_kind, stock.day), FIRST_DAY, FIRST_DAY - 1, "no date" },
		{ LURE, AT(lure_kind, stock.day), LAST_DAY, LAST_DAY + 1, "no date" },
		{ LURE, AT(lure_kind, stock.day), DAY, DAY_NONE, "needs both" },
		{ LURE, AT(lure_kind, stock.reorder), 9999, 10000, "ordered again" },
		{ CARD, AT(card_kind, life_days), 366, 367, "the card's life" },
		{ CARD, AT(card_kind, life_days), 1, 0, "the card's life" },
		{ CARD, AT(card_kind, floor_at), 9999, 10000, "the card is full" },
		{ CARD, AT(card_kind, floor_at), 30, 0, "the card is full" },
		{ CARD, AT(card_kind, change_at), 40, 41, "the card is changed" },
		{ CARD, AT(card_kind, stir_at), 30, 31, "the glue is stirred" },
		{ CARD, AT(card_kind, stir_at), 1, 0, "the glue is stirred" },
		{ CARD, AT(card_kind, stock.reorder), -1, -2, "ordered again" },
		{ RULE, AT(rule, flight), 0, -1, "the flight" },
		{ RULE, AT(rule, flight), 9, 10, "the flight" },
		{ RULE, AT(rule, until_dd), 0, -1, "the end in degree-days" },
		{ RULE, AT(rule, until_dd), 99999, 100000, "the end in degree-days" },
		{ RULE, AT(rule, value_x100), 0, -1, "the value" },
		{ RULE, AT(rule, value_x100), 99999999, 100000000, "the value" },
		{ RULE, AT(rule, span), 8, 9, "the span in weeks" },
		{ RULE, AT(rule, from), 0, 501, "its window" },
		{ RULE, AT(rule, to), 0, 501, "its window" },
		{ TREATMENT, AT(treatment, area_x100), -1, -2, "the area" },
		{ TREATMENT, AT(treatment, rei_hours), 8784, 8785, "the re-entry" },
		{ TREATMENT, AT(treatment, phi_days), 366, 367, "the preharvest" },
		{ TREATMENT, AT(treatment, day), FIRST_DAY, FIRST_DAY - 1, "no date" },
		{ PICK, AT(pick, day), LAST_DAY, LAST_DAY + 1, "no date" },
		{ PICK, AT(pick, day), DAY, DAY_NONE, "no date" },
		{ CHECK, AT(fruit_check, day), FIRST_DAY, DAY_NONE, "no date" },
		{ DISPENSERS, AT(disruption, up), LAST_DAY, DAY_NONE, "no date" },
		{ DISPENSERS, AT(disruption, down), LAST_DAY, LAST_DAY + 1, "no date" },
		{ DISPENSERS, AT(disruption, down), DAY, DAY - 1, "came down before" },
		{ DISPENSERS, AT(disruption, per_ha_x100), 1, 0, "the number to" },
		{ ANSWER, AT(answer, day), DAY, DAY_NONE, "no date" },
		{ ANSWER, AT(answer, on), LAST_DAY, LAST_DAY + 1, "no date" },
		{ ANSWER, AT(answer, on), DAY, DAY - 1, "before the alert" },
		{ BIOFIX, AT(biofix_date, season), 1900, 1899, "the year" },
		{ BIOFIX, AT(biofix_date, season), 2199, 2200, "the year" },
		{ BIOFIX, AT(biofix_date, day), FIRST_DAY, FIRST_DAY - 1, "no date" },
		{ BIOFIX, AT(biofix_date, day), LAST_DAY, LAST_DAY + 1, "no date" },
		{ WEATHER, AT(weather_day, day), FIRST_DAY, FIRST_DAY - 1, "no date" },
		{ WEATHER, AT(weather_day, day), LAST_DAY, LAST_DAY + 1, "no date" },
	};
	struct desk d;

	(void)state;
	desk_with_station(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		union record r = sample(&d, row[i].kind);
		struct err err = { 0 };
		memcpy((char *)&r + row[i].at, &row[i].good, sizeof row[i].good);
		if (!taken(&d, row[i].kind, &r, &err))
			fail_msg("row %zu, %s: %d: %s", i, row[i].names,
				(int)row[i].good, err.text);
		r = sample(&d, row[i].kind);
		memcpy((char *)&r + row[i].at, &row[i].bad, sizeof row[i].bad);
		if (taken(&d, row[i].kind, &r, &err) || err.kind != ERR_INPUT ||
			!strstr(err.text, row[i].names))
			fail_msg("row %zu, %s: %d: %s", i, row[i].names,
				(int)row[i].bad, err.text);
	}
	desk_clear(&d);
}

static void book_refuses_a_trap_off_the_globe(void **state)
{
	static const struct {
		double lat, lon;
		bool good;
	} row[] = {
		{ 90, 180, true },
		{ -90, -180, true },
		{ 90.001, 0, false },
		{ -90.001, 0, false },
		{ 0, 180.001, false },
		{ 0, -180.001, false },
	};
	struct desk d;

	(void)state;
	desk_memory(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		union record r = sample(&d, TRAP);
		struct err err = { 0 };
		r.trap.has_position = true;
		r.trap.lat = row[i].lat;
		r.trap.lon = row[i].lon;
		if (taken(&d, TRAP, &r, &err) != row[i].good ||
			(!row[i].good && !strstr(err.text, "latitude")))
			fail_msg("%g %g: %s", row[i].lat, row[i].lon, err.text);
	}
	desk_clear(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_refuses_a_text_that_cannot_be_shown),
		cmocka_unit_test(book_refuses_a_number_beyond_its_last_good_one),
		cmocka_unit_test(book_refuses_a_trap_off_the_globe),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
