/* entry_acts_times.c - moments as they are typed, and picks beside treatments in a
 * file's own words. */
#include "base/day.h"
#include "base/mem.h"
#include "base/words.h"
#include "entry_acts_parts.h"
#include "entry_bar_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LOCAL_LENGTH = 16 }; /* 2026-08-20T10:30 */

static bool local_read(const char *text, struct typed_moment *out)
{
	char full[INSTANT_SIZE];
	struct instant t;

	if (strlen(text) != LOCAL_LENGTH)
		return false;
	snprintf(full, sizeof full, "%s+00:00", text);
	if (!instant_read(full, &t))
		return false;
	out->kind = MOMENT_LOCAL;
	out->day = instant_day(t);
	out->minute_of_day = instant_minute_of_day(t);
	return true;
}

/* ISO 8601 has a letter for UTC. */
static bool utc_read(const char *text, struct instant *out)
{
	char full[INSTANT_SIZE];

	if (strlen(text) != LOCAL_LENGTH + 1 || text[LOCAL_LENGTH] != 'Z')
		return false;
	snprintf(full, sizeof full, "%.*s+00:00", (int)LOCAL_LENGTH, text);
	return instant_read(full, out);
}

static bool moment_read(const struct column *c, const char *text, void *field)
{
	struct typed_moment *m = field;

	(void)c;
	*m = (struct typed_moment){ .kind = MOMENT_FULL };
	if (instant_read(text, &m->at) || utc_read(text, &m->at))
		return true;
	if (local_read(text, m))
		return true;
	m->kind = MOMENT_HOUR;
	return clock_read(text, &m->minute_of_day);
}

static void moment_clear(const struct column *c, void *field)
{
	(void)c;
	*(struct typed_moment *)field = (struct typed_moment){ .kind = MOMENT_NONE };
}

/* A record's moment is always a full one. */
static const char *moment_write(
	const struct column *c, const void *field, char out[static VALUE_BYTES])
{
	const struct typed_moment *m = field;

	(void)c;
	out[0] = '\0';
	if (m->kind == MOMENT_FULL)
		instant_write(m->at, out);
	return out;
}

static void moment_right(const struct column *c, char out[static RIGHT_BYTES])
{
	(void)c;
	snprintf(out, RIGHT_BYTES,
		_("an hour such as 0730 or 07:30, with the date where it is another: "
		  "2026-08-20T23:30, or 2026-08-20T23:30-07:00 with what the clocks "
		  "were ahead of UTC"));
}

const struct value value_moment = { moment_read, moment_clear, moment_write,
	moment_right };

static const struct zone utc = { .n = 0 };

bool pick_doubt(const struct known *k, const struct pick *p, const struct treatments *t,
	const struct zone *z, struct buf *out)
{
	struct pick_wait w = waiting_pick(t->items, t->n, z ? z : &utc, p->day);
	char farm[NAME_BYTES], block[NAME_BYTES], day[DAY_ISO_SIZE];

	if (w.state == WAITING_FREE)
		return false;
	act_names(k, p->block, farm, block);
	day_iso(p->day, day);
	buf_addf(out,
		p->is_done ? _("%s, %s, picked on %s: ")
			   : _("%s, %s, pick planned for %s: "),
		farm, block, day);
	bar_say_pick(t->items, &w, p->is_done, out);
	return true;
}

struct treatments treatments_of_block(const struct treatments *t, int64_t block)
{
	struct treatments out = { 0 };

	for (size_t i = 0; i < t->n; i++) {
		if (t->items[i].block != block)
			continue;
		out.items = mem_grow(out.items, &out.cap, out.n + 1, sizeof *out.items);
		out.items[out.n++] = t->items[i];
	}
	return out;
}

/* Whether a treatment that is asked about bars it or leaves it open. */
static bool is_doubted(const struct doubts *d, const struct pick *p)
{
	const struct treatments *t = d->treatments;

	for (size_t i = 0; i < t->n; i++)
		if ((!d->treatments_asked || d->treatments_asked[i]) &&
			t->items[i].block == p->block &&
			waiting_pick(&t->items[i], 1, d->zone, p->day).state !=
				WAITING_FREE)
			return true;
	return false;
}

/* Those that are too early, or those of which it is not known. */
static void say_doubted(const struct doubts *d, bool known,
	void (*say)(void *arg, const char *sentence), void *arg)
{
	struct buf text = { 0 };

	for (size_t i = 0; i < d->picks->n; i++) {
		const struct pick *p = &d->picks->items[i];
		if ((d->picks_asked && !d->picks_asked[i]) || !is_doubted(d, p))
			continue;
		struct treatments of = treatments_of_block(d->treatments, p->block);
		enum waiting_state state =
			waiting_pick(of.items, of.n, d->zone, p->day).state;
		buf_clear(&text);
		if (known == (state != WAITING_UNKNOWN) &&
			pick_doubt(d->known, p, &of, d->zone, &text))
			say(arg, text.text);
		free(of.items);
	}
	buf_free(&text);
}

void picks_doubted(
	const struct doubts *d, void (*say)(void *arg, const char *sentence), void *arg)
{
	struct doubts by = *d;

	by.zone = d->zone ? d->zone : &utc;
	say_doubted(&by, true, say, arg);
	say_doubted(&by, false, say, arg);
}
