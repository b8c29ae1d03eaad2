/* A page stays with its trap while another program changes the list of traps: nobody
 * decides by the evidence of the trap beside it. */
#include "begun.h"

#include "../../src/command/deeds.h"
#include "../../src/command/session_book.h"
#include "answers/settings.h"
#include "base/mem.h"

struct desk {
	struct context ctx;
	struct session *s;
	struct book *theirs; /* as another program has it */
};

/* The first trap on the run, of a farm that comes before all others or not. */
static int64_t put_trap(struct desk *d, const char *farm, const char *label)
{
	struct farm f = { .name = "", .season_start = 101 };
	struct block k = { .name = "Weir", .area_x100 = -1 };
	struct trap t = { .pest = pest_of(d->theirs, "CM") };
	struct err e = { 0 };

	snprintf(f.name, sizeof f.name, "%s", farm);
	snprintf(t.label, sizeof t.label, "%s", label);
	bool ok = book_put_farm(d->theirs, &f, &e);
	k.farm = t.farm = f.id;
	ok = ok && book_put_block(d->theirs, &k, &e);
	t.block = k.id;
	if (!ok || !book_put_trap(d->theirs, &t, &e))
		fail_msg("%s: %s", label, e.text);
	return t.id;
}

static void read_again(struct desk *d, bool good, const char *says)
{
	struct err e = { 0 };

	if (session_read(d->s, &e) != good || !strstr(e.text, says))
		fail_msg("%s", e.text);
}

static void open_desk(struct desk *d)
{
	struct err e = { 0 };

	program_copy(begun_names[EMPTY], "b.db");
	d->ctx = (struct context){ .book_path = "b.db", .who = "T", .utf8 = true };
	d->ctx.today_given = day_parse(BEGUN_TODAY, &d->ctx.today);
	d->theirs = book_open("b.db", BOOK_EXISTING, "Ida", &e);
	assert_non_null(d->theirs);
	d->s = mem_new(1, sizeof *d->s);
	d->s->ctx = &d->ctx;
	d->s->notice = "";
	d->s->day = d->s->run.day = d->ctx.today;
	if (!session_open_book(d->s, &e) || !settings_apply(d->s->book, NULL, &e))
		fail_msg("%s", e.text);
}

static void close_desk(struct desk *d)
{
	session_free(d->s);
	free(d->s);
	book_close(d->theirs);
}

/* What the Week page wishes with its hand on that trap. */
static void ask(struct desk *d, enum want want, int64_t trap)
{
	struct wish w = page_wish(want);

	w.trap = (int)log_trap(&d->s->log, trap);
	w.pest = pest_of(d->theirs, "CM");
	session_deeds[want](d->s, &w);
}

static void remove_trap(struct desk *d, int64_t id)
{
	struct err e = { 0 };

	if (!book_remove(d->theirs, "trap", id, &e))
		fail_msg("%s", e.text);
}

static void why_stays_with_its_trap_or_says_that_it_is_gone(void **state)
{
	struct desk d;

	(void)state;
	open_desk(&d);
	int64_t ours = put_trap(&d, "Hather", "ours");
	read_again(&d, true, "");
	ask(&d, WANT_WHY, ours);
	assert_non_null(strstr(d.s->why.answer.title, "trap ours"));
	int64_t before = put_trap(&d, "Addermoor", "theirs");
	read_again(&d, true, "");
	assert_non_null(strstr(d.s->why.answer.title, "trap ours"));
	remove_trap(&d, before);
	read_again(&d, true, "");
	remove_trap(&d, ours);
	read_again(&d, false, "the trap is not in the book any more");
	close_desk(&d);
}

static void flight_stays_with_its_trap_while_it_is_there(void **state)
{
	struct desk d;

	(void)state;
	open_desk(&d);
	int64_t ours = put_trap(&d, "Hather", "ours");
	read_again(&d, true, "");
	ask(&d, WANT_FLIGHT, ours);
	assert_non_null(strstr(d.s->flight.answer.title, "ours"));
	put_trap(&d, "Addermoor", "theirs");
	read_again(&d, true, "");
	assert_non_null(strstr(d.s->flight.answer.title, "ours"));
	remove_trap(&d, ours);
	read_again(&d, true, "");
	assert_null(strstr(d.s->flight.answer.title, "ours"));
	assert_null(strstr(d.s->flight.answer.title, "theirs"));
	close_desk(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(why_stays_with_its_trap_or_says_that_it_is_gone),
		cmocka_unit_test(flight_stays_with_its_trap_while_it_is_there),
	};

	return cmocka_run_group_tests(tests, make_books, program_teardown);
}
