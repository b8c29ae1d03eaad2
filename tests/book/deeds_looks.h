/* deeds_looks.h - what is asked of a book. */
#ifndef TESTS_BOOK_DEEDS_LOOKS_H
#define TESTS_BOOK_DEEDS_LOOKS_H

#include "deeds.h"

enum { DEED_TO = DEED_DAY + 99 };

/* A call that fills `list`. */
#define LISTS(name, type, call)                                                        \
	static bool name(struct desk *d, struct err *e)                                \
	{                                                                              \
		struct type list = { 0 };                                              \
		bool ok = call;                                                        \
                                                                                       \
		free(list.items);                                                      \
		return ok;                                                             \
	}

LISTS(list_farms, farms, book_farms(d->book, &list, e))
LISTS(list_blocks, blocks, book_blocks(d->book, 0, &list, e))
LISTS(list_traps, traps, book_traps(d->book, 0, &list, e))
LISTS(list_pests, pests, book_pests(d->book, &list, e))
LISTS(list_lures, lure_kinds, book_lures(d->book, &list, e))
LISTS(list_cards, card_kinds, book_cards(d->book, &list, e))
LISTS(list_rules, rules, book_rules(d->book, &list, e))
LISTS(list_sources, sources, book_sources(d->book, 0, &list, e))
LISTS(list_stations, stations, book_stations(d->book, &list, e))
LISTS(list_biofixes, biofix_dates, book_biofixes(d->book, &list, e))
LISTS(list_weather, weather_days,
	book_weather(d->book, FIRST, DEED_DAY, DEED_DAY, &list, e))
LISTS(list_treatments, treatments,
	book_treatments(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_picks, picks, book_picks(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_checks, fruit_checks,
	book_fruit_checks(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_dispensers, disruptions,
	book_disruptions(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_answers, answers, book_answers(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_visits, visits, book_visits(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_visits_of_trap, visits, book_trap_visits(d->book, d->trap, &list, e))
LISTS(list_old, old_visits, book_old_visits(d->book, d->trap, DEED_DAY + 7, &list, e))
LISTS(list_all_old, old_visits,
	book_old_visits_of(d->book, d->trap, DEED_DAY, DEED_TO, &list, e))
LISTS(list_rivals, rival_counts, book_rivals(d->book, 0, DEED_DAY, DEED_TO, &list, e))
LISTS(list_changes, row_changes, book_row_changes(d->book, "trap", d->trap, &list, e))

static bool list_matters(struct desk *d, struct err *e)
{
	struct matters list = { 0 };
	bool ok = book_open_matters(d->book, &list, e);

	book_matters_free(&list);
	return ok;
}

static bool look_at_visit(struct desk *d, struct err *e)
{
	struct visit_words w;
	struct visit v;

	return book_visit(d->book, d->trap, DEED_DAY + 7, &v, &w, e);
}

static bool look_at_last(struct desk *d, struct err *e)
{
	int32_t day;

	return book_last_visit(d->book, d->trap, &day, e);
}

static bool look_at_days(struct desk *d, struct err *e)
{
	int32_t days[4];
	size_t n;

	return book_visit_days(d->book, d->farm, DEED_TO, days, 4, &n, e);
}

static bool go_on(void *arg, const struct visit *v, const struct visit_words *w)
{
	(void)arg;
	(void)v;
	(void)w;
	return true;
}

static bool walk(struct desk *d, struct err *e)
{
	return book_each_visit(d->book, 0, DEED_DAY, DEED_TO, go_on, NULL, e);
}

static bool look_at_reach(struct desk *d, struct err *e)
{
	int32_t first, last;

	return book_weather_reach(d->book, FIRST, &first, &last, e);
}

static bool look_at_setting(struct desk *d, struct err *e)
{
	char text[16];

	return book_setting(d->book, "scout", text, sizeof text, e);
}

static bool look_for_setting(struct desk *d, struct err *e)
{
	int64_t id;

	return book_setting_id(d->book, "scout", &id, e);
}

static bool look_at_limits(struct desk *d, struct err *e)
{
	struct limits limits;

	return book_limits(d->book, &limits, e);
}

static bool look_at_stamp(struct desk *d, struct err *e)
{
	struct row_stamp stamp;

	return book_stamp(d->book, "trap", d->trap, &stamp, e);
}

static bool look_at_users(struct desk *d, struct err *e)
{
	struct buf users = { 0 };
	bool ok = book_users(d->book, "block", d->block, &users, e);

	buf_free(&users);
	return ok;
}

static bool look_at_uid(struct desk *d, struct err *e)
{
	char uid[UID_TEXT];

	return book_uid(d->book, "trap", d->trap, uid, e);
}

static bool look_at_step(struct desk *d, struct err *e)
{
	int64_t step;

	return book_latest_step(d->book, &step, e);
}

static void tell_nothing(void *arg, const char *text)
{
	(void)arg;
	(void)text;
}

static bool look_through(struct desk *d, struct err *e)
{
	int found;

	return book_check(d->book, DEED_TO, tell_nothing, NULL, &found, e);
}

static const struct deed deeds_looks[] = {
	{ "farms", list_farms, LOOKS, NULL },
	{ "blocks", list_blocks, LOOKS, NULL },
	{ "traps", list_traps, LOOKS, NULL },
	{ "pests", list_pests, LOOKS, NULL },
	{ "lures", list_lures, LOOKS, NULL },
	{ "cards", list_cards, LOOKS, NULL },
	{ "rules", list_rules, LOOKS, NULL },
	{ "sources", list_sources, LOOKS, NULL },
	{ "stations", list_stations, LOOKS, NULL },
	{ "biofixes", list_biofixes, LOOKS, NULL },
	{ "weather", list_weather, LOOKS, NULL },
	{ "treatments", list_treatments, LOOKS, NULL },
	{ "picks", list_picks, LOOKS, NULL },
	{ "fruit checks", list_checks, LOOKS, NULL },
	{ "dispensers", list_dispensers, LOOKS, NULL },
	{ "answers", list_answers, LOOKS, NULL },
	{ "visits", list_visits, LOOKS, NULL },
	{ "visits of a trap", list_visits_of_trap, LOOKS, NULL },
	{ "old visits", list_old, LOOKS, NULL },
	{ "old visits of a season", list_all_old, LOOKS, NULL },
	{ "rivals", list_rivals, LOOKS, NULL },
	{ "changes of a row", list_changes, LOOKS, NULL },
	{ "matters to settle", list_matters, LOOKS, NULL },
	{ "a visit", look_at_visit, LOOKS, NULL },
	{ "the last visit", look_at_last, LOOKS, NULL },
	{ "days of visits", look_at_days, LOOKS, NULL },
	{ "a walk through all visits", walk, LOOKS, NULL },
	{ "the reach of the weather", look_at_reach, LOOKS, NULL },
	{ "a setting", look_at_setting, LOOKS, NULL },
	{ "a setting's row", look_for_setting, LOOKS, NULL },
	{ "limits", look_at_limits, LOOKS, NULL },
	{ "a stamp", look_at_stamp, LOOKS, NULL },
	{ "users of a row", look_at_users, LOOKS, NULL },
	{ "a row's uid", look_at_uid, LOOKS, NULL },
	{ "the latest step", look_at_step, LOOKS, NULL },
	{ "a check", look_through, LOOKS, NULL },
};

#endif
