/* All ways by which a run in a barred block or a pick inside a preharvest interval
 * could pass unsaid: the pages and the forms. Each is walked by the program's own table
 * of it, so that a new one fails here until it says it, or until the row that it gets
 * below says why it has nothing to say. Commands and files: paths_test.c. */
#include "paths.h"

#include "../../src/command/page_table.h"
#include "../../src/command/session.h"
#include "../../src/command/session_book.h"
#include "../../src/command/session_past.h"
#include "answers/entry_forms.h"
#include "base/mem.h"
#include "book/diary.h"
#include "book/places.h"

/* `with`: column=value;column=value of a new record. */
static const struct way family_ways[] = {
	{ "treatments",
		"farm=Quillet Farm;block=Quarry Rows;date=2026-07-21;phi_days=20;"
		"rei_hours=4",
		{ "pick planned for Sun 2 Aug: too early" }, NULL },
	{ "picks", "farm=Quillet Farm;block=Quarry Rows;date=2026-08-01;done=no",
		{ "too early" }, NULL },
	{ "traps", "farm=Quillet Farm;block=Quarry Rows;trap=9;pest=CM;hung=2026-07-21",
		{ "Quarry Rows on 2026-07-21: no entry until" }, NULL },
	{ "farms", NULL, { NULL }, "places" },
	{ "blocks", NULL, { NULL }, "places" },
	{ "pests", NULL, { NULL }, "kinds" },
	{ "lures", NULL, { NULL }, "kinds" },
	{ "cards", NULL, { NULL }, "kinds" },
	{ "thresholds", NULL, { NULL }, "rules" },
	{ "stations", NULL, { NULL }, "places" },
	{ "sources", NULL, { NULL }, "places" },
	{ "fruit checks", NULL, { NULL }, "no hour and no run" },
	{ "dispensers", NULL, { NULL }, "no run" },
	{ "settings", NULL, { NULL }, "numbers and words" },
};

static void read_log(struct log *l, struct book *b)
{
	struct err e = { 0 };

	l->now = zone_local(&l->zone, day_of(TODAY), 720);
	must(log_read(l, b, 0, day_of(TODAY), &e), &e);
}

static void type(struct entry *r, const char *pairs)
{
	const struct entry_family *f = &entry_families[r->kind];
	char copy[400], *rest = copy, *pair;

	text_copy(copy, sizeof copy, pairs);
	while ((pair = strsep(&rest, ";"))) {
		char *value = strchr(pair, '=');
		*value++ = '\0';
		for (size_t i = 0; i < f->n_columns; i++)
			if (strcmp(f->columns[i].name, pair) == 0)
				text_copy(r->text[i], ENTRY_TEXT, value);
	}
}

static void every_form_asks_or_makes_none(void **state)
{
	struct entry *r = mem_new(1, sizeof *r);
	struct book *b = open_book();
	struct log l = { 0 };
	struct entry_fault fault;
	struct err e = { 0 };

	(void)state;
	read_log(&l, b);
	for (int kind = 0; kind < ENTRY_KINDS; kind++) {
		const struct entry_ask ask = { .kind = (enum entry_kind)kind };
		const struct way *w = WAY(family_ways, entry_families[kind].name);
		if (!w || !(w->with || w->why))
			fail_msg("forms of %s: do they make a run or a pick? They have "
				 "no row here",
				entry_families[kind].name);
		if (!w->with)
			continue;
		must(entry_read(r, b, &ask, 0, &l, &e), &e);
		type(r, w->with);
		if (entry_put(r, b, &l, 0, &fault) || !fault.is_doubt)
			fail_msg("%s: \"%s\"", w->name, fault.text);
		says_all(w, fault.text);
	}
	free(r);
	log_free(&l);
	book_close(b);
}

static const struct way page_ways[] = {
	{ "Today", "", { "Quarry Rows until", "too early" }, NULL },
	{ "Run", "", { "no entry till" }, NULL },
	{ "Why", "", { "no entry until" }, NULL },
	{ "Diary", "", { NULL }, "asks at a visit of today: tests/e2e/act.sh" },
	{ "Service", "", { "no entry" }, NULL },
	{ "Picks", "", { "no entry", "too early" }, NULL },
	{ "List", NULL, { NULL }, "of treatments and picks, each with its note" },
	{ "Form", NULL, { NULL }, "asks, above" },
	{ "Alerts", NULL, { NULL }, "what was over, and what was decided" },
	{ "Week", NULL, { NULL }, "what was caught; no run and no pick" },
	{ "Flight", NULL, { NULL }, "a season's catch" },
	{ "Hot spots", NULL, { NULL }, "a season's catch" },
	{ "Weather", NULL, { NULL }, "temperatures" },
	{ "Start", NULL, { NULL }, "there is no book yet" },
	{ "Book", NULL, { NULL }, "how many of each" },
	{ "Backups", NULL, { NULL }, "copies of the file" },
	{ "Merging", NULL, { NULL }, "which rows differ; then every page says it" },
	{ "Text", NULL, { NULL }, "the record and the diary: the command record" },
	{ "Thresholds", NULL, { NULL }, "rules" },
	{ "Keys", NULL, { NULL }, "keys" },
};

static void draw_page(struct session *s, enum page page, struct buf *out)
{
	struct canvas c = { 0 };
	struct err e = { 0 };

	buf_clear(out);
	s->stack[0] = page;
	must(session_read(s, &e), &e);
	canvas_size(&c, 40, 100);
	canvas_clear(&c);
	session_pages[page].draw(s, &c);
	canvas_dump(&c, false, out);
	canvas_free(&c);
}

static struct session *begin(const struct context *ctx)
{
	struct session *s = mem_new(1, sizeof *s);

	s->ctx = ctx;
	s->notice = "";
	s->book = open_book();
	s->day = s->run.day = ctx->today;
	s->run.farm = s->why.block = s->diary.trap = 1;
	s->diary.anew = s->acts_anew = true;
	return s;
}

static void every_page_says_it_or_shows_none(void **state)
{
	struct context ctx = { .book_path = "b.db",
		.who = "T",
		.today = day_of(TODAY),
		.today_given = true };
	struct session *s = begin(&ctx);
	struct buf text = { 0 };

	(void)state;
	for (int page = 0; page < PAGE_COUNT; page++) {
		const struct way *w = WAY(page_ways, session_pages[page].name);
		if (!w || !(w->with || w->why))
			fail_msg("the page %s: does it show a run or a pick? It has no "
				 "row here",
				session_pages[page].name);
		if (!w->with)
			continue;
		draw_page(s, (enum page)page, &text);
		says_all(w, text.text);
	}
	buf_free(&text);
	session_free(s);
	free(s);
}

/* The keys that save without a form. */
static void what_is_done_at_a_trap_in_a_barred_block_tells_the_bar(void **state)
{
	static const struct {
		const char *why;
		enum page page;
		void (*deed)(struct session *s, const struct wish *w);
		const char *pest; /* of the new trap */
	} row[] = {
		{ "a new lure", PAGE_SERVICE, session_changed, "" },
		{ "pulled", PAGE_ENTRIES, session_pull, "" },
		{ "replaced", PAGE_ENTRIES, session_replace, "OFM" },
	};
	struct context ctx = { .book_path = "b.db",
		.who = "T",
		.today = day_of(TODAY),
		.today_given = true };
	struct session *s = begin(&ctx);
	struct err e = { 0 };

	(void)state;
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct wish w = page_wish(WANT_NOTHING);
		s->entry.ask = (struct entry_ask){ .kind = ENTRY_TRAPS };
		s->stack[0] = row[i].page;
		must(session_read(s, &e), &e);
		w.kind = ENTRY_TRAPS;
		w.trap = 0;
		w.id = row[i].page == PAGE_SERVICE ? 0 : 1;
		text_copy(w.words.note, sizeof w.words.note, row[i].pest);
		row[i].deed(s, &w);
		if (!strstr(session_message(s)->text, "Its block: no entry till"))
			fail_msg("%s: \"%s\"", row[i].why, session_message(s)->text);
	}
	session_free(s);
	free(s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_form_asks_or_makes_none),
		cmocka_unit_test(every_page_says_it_or_shows_none),
		cmocka_unit_test(
			what_is_done_at_a_trap_in_a_barred_block_tells_the_bar),
	};

	return cmocka_run_group_tests(tests, fill_book, program_teardown);
}
