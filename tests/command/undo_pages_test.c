/* A key that changed nothing says so and offers nothing to take back; what was changed
 * on another page is named before it is taken back. */
#include "paths.h"

#include "../../src/command/page_table.h"
#include "../../src/command/session.h"
#include "../../src/command/session_book.h"
#include "../../src/command/session_past.h"
#include "../../src/command/session_season.h"
#include "base/mem.h"
#include "book/diary.h"

enum { BOUNCE_MS = 300 };

struct desk {
	struct context ctx;
	struct session *s;
};

static void open_desk(struct desk *d)
{
	struct err e = { 0 };

	d->ctx = (struct context){ .book_path = "b.db",
		.who = "T",
		.today = day_of(TODAY),
		.today_given = true };
	d->s = mem_new(1, sizeof *d->s);
	d->s->ctx = &d->ctx;
	d->s->notice = "";
	d->s->book = open_book();
	d->s->day = d->s->run.day = d->ctx.today;
	d->s->run.farm = 1;
	d->s->stack[0] = PAGE_TODAY;
	must(session_read(d->s, &e), &e);
}

static void close_desk(struct desk *d)
{
	session_free(d->s);
	free(d->s);
}

static void go(struct desk *d, enum page page)
{
	struct err e = { 0 };

	d->s->entry.ask = (struct entry_ask){ .kind = ENTRY_TRAPS };
	d->s->stack[0] = page;
	must(session_read(d->s, &e), &e);
	*session_message(d->s) = (struct message){ 0 };
}

static const char *said(struct desk *d)
{
	return session_message(d->s)->text;
}

static void says(struct desk *d, const char *why, const char *want)
{
	if (!strstr(said(d), want))
		fail_msg("%s: \"%s\", no \"%s\"", why, said(d), want);
}

static struct wish of_trap(int by)
{
	struct wish w = page_wish(WANT_NOTHING);

	w.kind = ENTRY_TRAPS;
	w.id = 1;
	w.by = by;
	return w;
}

static struct wish new_lure(void)
{
	struct wish w = page_wish(WANT_CHANGED);

	w.trap = 0;
	w.kind = 1;
	w.visit.count = COUNT_NONE;
	return w;
}

static bool has_visit(struct desk *d)
{
	struct visit v;
	struct visit_words words;

	return book_visit(d->s->book, 1, d->s->day, &v, &words, NULL);
}

static void a_trap_at_the_end_of_the_run_does_not_move(void **state)
{
	static const struct {
		int by;
		const char *want;
	} row[] = {
		{ -1, "comes first on the run already" },
		{ 1, "comes last on the run already" },
	};
	struct desk d;

	(void)state;
	open_desk(&d);
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct wish w = of_trap(row[i].by);
		go(&d, PAGE_ENTRIES);
		session_move(d.s, &w);
		says(&d, "moved", row[i].want);
		assert_null(strstr(said(&d), "takes it back"));
	}
	close_desk(&d);
}

static void what_was_changed_here_is_taken_back_at_once(void **state)
{
	struct wish w = of_trap(0);
	struct desk d;

	(void)state;
	open_desk(&d);
	go(&d, PAGE_ENTRIES);
	session_pull(d.s, &w);
	assert_true(has_visit(&d));
	session_undo_step(d.s, &w);
	says(&d, "u", "Taken back: visit of 2026-07-21");
	assert_false(has_visit(&d));
	close_desk(&d);
}

static void what_was_changed_elsewhere_is_named_first(void **state)
{
	static const enum page pages[] = { PAGE_TODAY, PAGE_BOOK, PAGE_ENTRIES,
		PAGE_ALERTS, PAGE_PICKS, PAGE_THRESHOLDS };
	const struct wish lure = new_lure(), u = page_wish(WANT_UNDO_STEP);
	struct desk d;

	(void)state;
	open_desk(&d);
	for (size_t i = 0; i < sizeof pages / sizeof *pages; i++) {
		const char *page = session_pages[pages[i]].name;
		go(&d, PAGE_SERVICE);
		session_changed(d.s, &lure);
		go(&d, pages[i]);
		session_undo_step(d.s, &u);
		says(&d, page, "Made on another page: u again takes out visit of");
		session_undo_step(d.s, &u); /* one press of a key that bounces */
		says(&d, page, "Made on another page");
		assert_true(has_visit(&d));
		d.s->asked.ms -= BOUNCE_MS;
		session_undo_step(d.s, &u);
		says(&d, page, "Taken back: visit of");
		assert_false(has_visit(&d));
	}
	close_desk(&d);
}

/* The run's count must not go for it. */
static void what_stood_so_already_offers_no_undo(void **state)
{
	const struct wish lure = new_lure();
	struct wish again = new_lure();
	struct desk d;

	(void)state;
	open_desk(&d);
	go(&d, PAGE_SERVICE);
	session_changed(d.s, &lure);
	says(&d, "where it was",
		"Saved: new lure today, Quillet Farm, Quarry Rows, trap 1");
	again.by = 1;
	session_changed(d.s, &again);
	says(&d, "once more", "it stood so already");
	assert_null(strstr(said(&d), "takes it back"));
	close_desk(&d);
}

static int field(const char *name)
{
	const struct entry_family *f = &entry_families[ENTRY_TRAPS];
	int i = 0;

	while (strcmp(f->columns[i].name, name) != 0)
		i++;
	return i;
}

/* Ten traps that were hung on one day: it is typed once. */
static void the_day_of_hanging_goes_for_the_next_trap_too(void **state)
{
	const struct wish w = of_trap(0);
	struct wish new = w;
	struct desk d;

	(void)state;
	open_desk(&d);
	go(&d, PAGE_ENTRIES);
	new.id = 0;
	session_form(d.s, &new);
	text_copy(d.s->form.page.entry.text[field("hung")], ENTRY_TEXT, "2026-06-03");
	session_put(d.s, &w);
	says(&d, "saved", "Saved: trap 2 of Quillet Farm");
	assert_string_equal(d.s->form.page.entry.text[field("trap")], "3");
	assert_string_equal(d.s->form.page.entry.text[field("hung")], "2026-06-03");
	close_desk(&d);
}

/* u would go to something else. */
static void a_form_saved_as_it_stood_changed_nothing(void **state)
{
	const struct wish w = of_trap(0);
	struct desk d;

	(void)state;
	open_desk(&d);
	go(&d, PAGE_ENTRIES);
	session_form(d.s, &w);
	session_put(d.s, &w);
	says(&d, "saved", "Nothing was changed at trap 1 of Quillet Farm.");
	close_desk(&d);
}

/* For its own pest a trap gets a new lure: what is refused is not offered. */
static void a_trap_is_not_replaced_for_its_own_pest(void **state)
{
	const struct wish w = of_trap(0);
	struct desk d;

	(void)state;
	open_desk(&d);
	go(&d, PAGE_ENTRIES);
	session_replace(d.s, &w);
	assert_true(d.s->form.choices.n > 0);
	for (size_t i = 0; i < d.s->form.choices.n; i++)
		assert_string_not_equal(d.s->form.choices.items[i].text, "CM");
	close_desk(&d);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_trap_at_the_end_of_the_run_does_not_move),
		cmocka_unit_test(what_was_changed_here_is_taken_back_at_once),
		cmocka_unit_test(what_was_changed_elsewhere_is_named_first),
		cmocka_unit_test(a_form_saved_as_it_stood_changed_nothing),
		cmocka_unit_test(a_trap_is_not_replaced_for_its_own_pest),
		cmocka_unit_test(the_day_of_hanging_goes_for_the_next_trap_too),
		cmocka_unit_test(what_stood_so_already_offers_no_undo),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
