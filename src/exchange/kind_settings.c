/* The numbers of the judgement that the grower may set, and who is out: a row each. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct setting_row {
	int name;
	char value[NOTE_BYTES];
};

static const struct {
	const char *name;
	size_t at;
} limit_names[] = {
	{ "join_nights", offsetof(struct limits, join_nights) },
	{ "long_nights", offsetof(struct limits, long_nights) },
	{ "stale_nights", offsetof(struct limits, stale_nights) },
	{ "near_x100", offsetof(struct limits, near_x100) },
	{ "read_num", offsetof(struct limits, read_num) },
	{ "read_den", offsetof(struct limits, read_den) },
	{ "open_days", offsetof(struct limits, open_days) },
	{ "fill_days", offsetof(struct limits, fill_days) },
	{ "skip_biofix_day", offsetof(struct limits, skip_biofix_day) },
	{ "odd_count", offsetof(struct limits, odd_count) },
	{ "odd_times", offsetof(struct limits, odd_times) },
};

enum {
	LIMITS = sizeof limit_names / sizeof *limit_names,
	SCOUT = LIMITS,
	SETTINGS,
};

_Static_assert(sizeof(struct limits) == LIMITS * sizeof(int32_t),
	"every number of the judgement is a setting");

/* A value that waits for the other rows. */
struct waiting {
	struct setting_row row;
	int64_t line;
};

struct setting_state {
	char now[SETTINGS][NOTE_BYTES];
	bool told[SETTINGS]; /* this file has said it */
	struct waiting waiting[SETTINGS];
	size_t n;
};

static const char *setting_name(int i)
{
	return i == SCOUT ? "scout" : limit_names[i].name;
}

#define AT(field) .at = offsetof(struct setting_row, field)

static const struct column columns[] = {
	{ .name = "name",
		AT(name),
		.type = &value_word,
		.lo = 0,
		.hi = SETTINGS - 1,
		.none = -1,
		.needed = true,
		.word = setting_name,
		.help = N_("Which setting.") },
	{ .name = "value",
		AT(value),
		.type = &value_text,
		.hi = NOTE_BYTES,
		.help = N_("What it is from now on; empty: the usual number, no "
			   "scout.") },
};

/* As it stands in a file. */
static void write_limit(const struct limits *l, int i, char out[static NOTE_BYTES])
{
	int32_t value;

	memcpy(&value, (const char *)l + limit_names[i].at, sizeof value);
	snprintf(out, NOTE_BYTES, "%d", (int)value);
}

static bool read_present(
	struct book *b, char out[static SETTINGS][NOTE_BYTES], struct err *e)
{
	struct limits limits;

	if (!book_limits(b, &limits, e) ||
		!book_setting(b, setting_name(SCOUT), out[SCOUT], NOTE_BYTES, e))
		return false;
	for (int i = 0; i < LIMITS; i++)
		write_limit(&limits, i, out[i]);
	return true;
}

static bool settings_begin(struct taking *t, struct err *e)
{
	struct setting_state *s = t->state = mem_new(1, sizeof *s);

	return read_present(t->book, s->now, e);
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
	if (r.name < LIMITS && !*r.value)
		write_limit(&limits_usual, r.name, r.value);
	if (r.name == SCOUT && strlen(r.value) >= SCOUT_BYTES)
		return taking_bad(t, "value",
			_("is too long for a scout, who has at most %d letters (an "
			  "accented one counts as two)"),
			SCOUT_BYTES - 1);
	if (strcmp(r.value, s->now[r.name]) == 0)
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
			    t->book, setting_name(w.row.name), w.row.value, &why))
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
	char now[SETTINGS][NOTE_BYTES];
	bool ok = read_present(g->book, now, e);

	for (int i = 0; ok && i < SETTINGS; i++) {
		struct setting_row r = { .name = i };
		text_copy(r.value, sizeof r.value, now[i]);
		ok = giving_row(g, &r);
	}
	return ok;
}

const struct kind kind_settings = {
	.name = "settings",
	.help = N_("the numbers that the answers go by, and the scout"),
	.columns = columns,
	.n_columns = sizeof columns / sizeof *columns,
	.row_bytes = sizeof(struct setting_row),
	.begin = settings_begin,
	.take = settings_take,
	.finish = settings_finish,
	.end = settings_end,
	.give = settings_give,
	.starts = true,
};
