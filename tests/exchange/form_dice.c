/* Random entries of every family. */
#include "typed.h"

#include "form_dice.h"

#include "answers/entry_acts.h"
#include "answers/entry_rules.h"
#include "answers/entry_sources.h"
#include "answers/entry_traps.h"
#include "answers/trial.h"
#include "book/acts.h"
#include "book/weather.h"

enum { DAYS_BACK = 70 };

int dice_roll(struct dice *d, int n)
{
	return rand_r(&d->seed) % n;
}

static int32_t some_day(struct dice *d)
{
	return d->today - dice_roll(d, DAYS_BACK);
}

void dice_read(struct dice *d)
{
	struct err e = { 0 };

	if (!log_read(&d->log, d->book, 0, d->today, &e))
		fail_msg("%s", e.text);
}

static void write_md(struct dice *d, char *out)
{
	snprintf(out, ENTRY_TEXT, "%02d-%02d", 1 + dice_roll(d, 12),
		1 + dice_roll(d, 28));
}

static void write_day(struct dice *d, char *out)
{
	char iso[DAY_ISO_SIZE];

	day_iso(some_day(d) + dice_roll(d, 8) / 7 * 20, iso);
	text_copy(out, ENTRY_TEXT, iso);
}

static void write_moment(struct dice *d, char *out)
{
	char iso[DAY_ISO_SIZE];

	day_iso(some_day(d), iso);
	if (dice_roll(d, 2))
		snprintf(out, ENTRY_TEXT, "%02d:%02d", dice_roll(d, 24),
			dice_roll(d, 60));
	else
		snprintf(out, ENTRY_TEXT, "%sT%02d:30%s", iso, dice_roll(d, 24),
			dice_roll(d, 2) ? "-07:00" : "");
}

static void write_number(struct dice *d, const struct column *c, char *out)
{
	int span = c->hi - c->lo > 99 ? 100 : c->hi - c->lo + 1;
	int n = c->lo + dice_roll(d, span);

	if (c->type == &value_int)
		snprintf(out, ENTRY_TEXT, "%d", n);
	else if (c->type == &value_degree || c->type == &value_number)
		snprintf(out, ENTRY_TEXT, "%d.%02d", dice_roll(d, 60),
			dice_roll(d, 4) * 25);
	else
		snprintf(out, ENTRY_TEXT, "%d.%d%s", 1 + dice_roll(d, 40),
			dice_roll(d, 10), c->type == &value_area ? " ha" : "");
}

static void write_any(struct dice *d, const struct column *c, char *out)
{
	if (c->type == &value_md)
		write_md(d, out);
	else if (c->type == &value_day)
		write_day(d, out);
	else if (c->type == &value_moment)
		write_moment(d, out);
	else if (strcmp(c->name, "outline") == 0)
		snprintf(out, ENTRY_TEXT, "1 1; 1 %d; 2.5 2", 2 + dice_roll(d, 9));
	else if (c->type == &value_span)
		snprintf(out, ENTRY_TEXT, dice_roll(d, 3) ? "%d" : "hung",
			1 + dice_roll(d, 8));
	else if (c->type == &value_word)
		text_copy(out, ENTRY_TEXT,
			c->word(c->lo + dice_roll(d, c->hi - c->lo + 1)));
	else if (c->type == &value_text)
		snprintf(out, ENTRY_TEXT, "n%d'\"%s", dice_roll(d, 30),
			dice_roll(d, 2) ? "é" : ";");
	else
		write_number(d, c, out);
}

/* What the form offers, as a rule. */
static bool write_choice(struct dice *d, struct entry *r, int field)
{
	struct entry_choices c = { 0 };

	entry_choices_of(r, field, &d->log, &c);
	bool chosen = c.n > 0 && dice_roll(d, 15) != 0;
	if (chosen)
		text_copy(r->text[field], ENTRY_TEXT,
			c.items[dice_roll(d, (int)c.n)].text);
	entry_choices_free(&c);
	return chosen;
}

static void write_setting(struct dice *d, struct entry *r)
{
	const struct setting_facts *f = &setting_facts[r->id - 1];

	if (f->hi > 0)
		snprintf(r->text[1], ENTRY_TEXT, "%d",
			f->lo + dice_roll(d,
					f->hi - f->lo > 40 ? 41 : f->hi - f->lo + 1));
}

static void write_field(struct dice *d, struct entry *r, int field)
{
	const struct column *c = &entry_families[r->kind].columns[field];

	if (!c->label)
		return;
	if (!c->needed && dice_roll(d, 3) == 0) {
		r->text[field][0] = '\0';
		return;
	}
	if (!write_choice(d, r, field))
		write_any(d, c, r->text[field]);
	if (r->kind == ENTRY_SETTINGS)
		write_setting(d, r);
}

/* One of the family's records; 0: none, or chance says a new one. */
static int64_t any(struct dice *d, enum entry_kind kind)
{
	struct entry_ask ask = { .kind = kind, .retired = true };
	struct entry_list list = list_of(d->book, &d->log, &ask);
	int n = (int)list.n,
	    at = dice_roll(d, n + 1 + (kind != ENTRY_SETTINGS) * n / 2);
	int64_t id = at < n ? list.rows[at].id : 0;

	entry_list_free(&list);
	return id;
}

static bool put_form(struct dice *d)
{
	enum entry_kind kind = (enum entry_kind)dice_roll(d, ENTRY_KINDS);
	int64_t id = any(d, kind);
	struct entry_fault fault;
	int n = (int)entry_families[kind].n_columns;

	if (!id && !entry_families[kind].can_add)
		return false;
	struct entry *r = form_of(d->book, &d->log, kind, id);
	for (int i = 0; i < n; i++)
		if (!id || dice_roll(d, n) < 2)
			write_field(d, r, i);
	bool done = entry_put(
		r, d->book, &d->log, dice_roll(d, 3) ? ENTRY_SURE : ENTRY_OVER, &fault);
	d->of_family[kind] += done;
	free(r);
	return done;
}

static bool put_away(struct dice *d)
{
	enum entry_kind kind = (enum entry_kind)dice_roll(d, ENTRY_KINDS);

	return entry_retire(
		d->book, kind, any(d, kind), dice_roll(d, 2) != 0, &d->log, NULL);
}

static bool take_out(struct dice *d)
{
	enum entry_kind kind = (enum entry_kind)dice_roll(d, ENTRY_KINDS);

	return entry_remove(d->book, kind, any(d, kind), NULL);
}

static bool move_trap(struct dice *d)
{
	return entry_move(
		d->book, any(d, ENTRY_TRAPS), dice_roll(d, 2) ? 1 : -1, &d->log, NULL);
}

static bool hang_trap(struct dice *d)
{
	return entry_hang(d->book, any(d, ENTRY_TRAPS), some_day(d), &d->log, NULL);
}

static bool pull_trap(struct dice *d)
{
	return entry_pull(d->book, any(d, ENTRY_TRAPS), some_day(d), &d->log, NULL);
}

static bool replace_trap(struct dice *d)
{
	return entry_replace(d->book, any(d, ENTRY_TRAPS), any(d, ENTRY_PESTS),
		some_day(d), &d->log, NULL);
}

static bool save_visit(struct dice *d)
{
	struct visit v = { .trap = any(d, ENTRY_TRAPS),
		.day = some_day(d),
		.outcome = dice_roll(d, 4) ? OUTCOME_COUNTED : OUTCOME_SKIPPED,
		.females = COUNT_NONE,
		.others = dice_roll(d, 3) - 1,
		.new_card = dice_roll(d, 3) ? 0 : any(d, ENTRY_CARDS) };
	struct visit_words w = { .scout = "QX" };

	v.count = v.outcome == OUTCOME_COUNTED ? dice_roll(d, 40) : COUNT_NONE;
	snprintf(w.note, sizeof w.note, "note %d", dice_roll(d, 9));
	return book_save_visit(d->book, &v, dice_roll(d, 2) ? &w : NULL, NULL);
}

static bool remove_visit(struct dice *d)
{
	const struct visits *all = &d->log.visits;
	const struct visit *v = all->n ? &all->items[dice_roll(d, (int)all->n)] : NULL;

	return v && book_remove_visit(d->book, v->trap, v->day, NULL);
}

static bool type_weather(struct dice *d)
{
	struct weather_day w = { .station = any(d, ENTRY_STATIONS),
		.day = some_day(d),
		.min = dice_roll(d, 15),
		.max = 15 + dice_roll(d, 20),
		.unit = 'C' };

	return dice_roll(d, 5) ? book_save_weather(d->book, &w, NULL)
			       : book_remove_weather(d->book, w.station, w.day, NULL);
}

static bool set_biofix(struct dice *d)
{
	struct biofix_dates all = { 0 };
	struct biofix_date x = { .farm = any(d, ENTRY_FARMS),
		.pest = any(d, ENTRY_PESTS),
		.season = 2026,
		.day = some_day(d),
		.rule = "set by hand" };
	struct err e = { 0 };

	if (!book_biofixes(d->book, &all, &e))
		fail_msg("%s", e.text);
	bool take = all.n > 0 && dice_roll(d, 4) == 0;
	bool done = take ? book_remove_biofix(d->book,
				   all.items[dice_roll(d, (int)all.n)].id, NULL)
			 : book_put_biofix(d->book, &x, NULL);
	free(all.items);
	return done;
}

static bool answer_alert(struct dice *d)
{
	const struct traps *all = &d->log.traps;
	struct answer a = answer_blank;

	if (all->n == 0)
		return false;
	const struct trap *t = &all->items[dice_roll(d, (int)all->n)];
	a.block = t->block;
	a.trap = dice_roll(d, 3) ? t->id : 0;
	a.pest = t->pest;
	a.day = some_day(d);
	a.on = a.day + dice_roll(d, 3);
	a.decision = (enum decision)dice_roll(d, DECISION_COUNT);
	snprintf(a.note, sizeof a.note, "line %d", dice_roll(d, 5));
	return book_put_answer(d->book, &a, NULL);
}

static bool take_published(struct dice *d)
{
	struct published_rows p = { 0 };
	struct err e = { 0 };
	bool done = false;

	if (!published_read(&p, &d->log, 0, &e))
		fail_msg("%s", e.text);
	if (p.n > 0)
		done = book_put_rule(
			d->book, &p.items[dice_roll(d, (int)p.n)].rule, NULL);
	published_free(&p);
	return done;
}

static const struct dice_op {
	const char *name;
	bool (*edit)(struct dice *d);
	int often;
} dice_ops[] = {
	{ "forms", put_form, 20 },
	{ "put away, brought back", put_away, 3 },
	{ "taken out", take_out, 3 },
	{ "moved on the run", move_trap, 2 },
	{ "hung", hang_trap, 2 },
	{ "pulled", pull_trap, 2 },
	{ "replaced", replace_trap, 2 },
	{ "visits", save_visit, 8 },
	{ "visits taken out", remove_visit, 2 },
	{ "weather", type_weather, 3 },
	{ "biofix", set_biofix, 2 },
	{ "answers", answer_alert, 2 },
	{ "published thresholds", take_published, 2 },
};
_Static_assert(sizeof dice_ops / sizeof *dice_ops == DICE_OPS, "each is counted");

const char *dice_op_name(int op)
{
	return dice_ops[op].name;
}

void dice_edit(struct dice *d)
{
	int all = 0, op = 0;

	for (int i = 0; i < DICE_OPS; i++)
		all += dice_ops[i].often;
	for (int at = dice_roll(d, all); at >= dice_ops[op].often; op++)
		at -= dice_ops[op].often;
	bool done = dice_ops[op].edit(d);
	d->of_op[op] += done;
	d->done += done;
	d->refused += !done;
	if (done)
		dice_read(d);
}
