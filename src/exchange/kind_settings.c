/* The numbers of the judgement that the grower may set, and who is out: a row each. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdlib.h>
#include <string.h>

/* A value that waits for the other rows. */
struct waiting {
	struct setting_row row;
	int64_t line;
};

struct setting_state {
	struct settings now;
	bool told[SETTING_COUNT]; /* this file has said it */
	struct waiting waiting[SETTING_COUNT];
	size_t n;
};

static bool settings_begin(struct taking *t, struct err *e)
{
	struct setting_state *s = t->state = mem_new(1, sizeof *s);

	return settings_read(&s->now, t->book, e);
}

static void settings_end(struct taking *t)
{
	free(t->state);
}

/* Rows wait for the end, since one number may have to make room for another. */
static bool settings_take(struct taking *t, const void *row, struct err *e)
{
	struct setting_row r = *(const struct setting_row *)row;
	struct setting_state *s = t->state;

	(void)e;
	if (s->told[r.name])
		return taking_bad(t, "name", _("is in this file before"));
	s->told[r.name] = true;
	if (!setting_good(&t->hear, &r))
		return true;
	if (strcmp(r.value, s->now.value[r.name]) == 0)
		taking_count(t, TOOK_SAME);
	else
		s->waiting[s->n++] = (struct waiting){ r, t->csv.line };
	return true;
}

/* Saves what the book takes now and keeps the rest; in the last round the book's reason
 * is told. */
static bool save_waiting(struct taking *t, bool last, struct err *e)
{
	struct setting_state *s = t->state;
	size_t left = 0;

	for (size_t i = 0; i < s->n; i++) {
		struct waiting w = s->waiting[i];
		struct err why = { 0 };
		if (book_put_setting(
			    t->book, setting_facts[w.row.name].name, w.row.value, &why))
			taking_count(t, TOOK_CHANGED);
		else if (why.kind == ERR_BOOK)
			return err_set(e, ERR_BOOK, "%s", why.text);
		else if (last)
			taking_bad_row(t, w.line, why.text);
		else
			s->waiting[left++] = w;
	}
	s->n = left;
	return true;
}

/* Of two numbers that bound each other one can always go first, and the other with the
 * second round. */
static bool settings_finish(struct taking *t, struct err *e)
{
	return save_waiting(t, false, e) && save_waiting(t, true, e);
}

static bool settings_give(struct giving *g, struct err *e)
{
	struct settings now;
	bool ok = settings_read(&now, g->book, e);

	for (int i = 0; ok && i < SETTING_COUNT; i++) {
		struct setting_row r = { .name = i };
		text_copy(r.value, sizeof r.value, now.value[i]);
		ok = giving_row(g, &r);
	}
	return ok;
}

const struct kind kind_settings = {
	.name = "settings",
	.help = N_("the numbers that the answers go by, the scout, units and dates"),
	.columns = setting_columns,
	.n_columns = SETTING_COLUMNS,
	.row_bytes = sizeof(struct setting_row),
	.begin = settings_begin,
	.take = settings_take,
	.finish = settings_finish,
	.end = settings_end,
	.give = settings_give,
	.starts = true,
};
