/* entry_ops_traps.c - traps on the Book page. */
#include "entry_family.h"
#include "entry_hang.h"

#include "base/text.h"
#include "base/words.h"
#include "book/diary.h"
#include "book/places.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static size_t traps_count(const struct shelves *s)
{
	return s->known.traps.n;
}

static int64_t traps_id(const struct shelves *s, size_t i)
{
	return s->known.traps.items[i].id;
}

static bool traps_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	const struct trap *t = &s->known.traps.items[i];

	return (!ask->farm || t->farm == ask->farm) &&
	       (!ask->pest || t->pest == ask->pest);
}

/* Index in the log if it has visits of the trap; SIZE_MAX. A log of all farms has the
 * traps in the same order. */
static size_t in_log(const struct shelves *s, size_t i)
{
	const struct log *l = s->log;
	int64_t id = s->known.traps.items[i].id;

	if (!l)
		return SIZE_MAX;
	size_t at = i < l->traps.n && l->traps.items[i].id == id ? i : log_trap(l, id);
	return at != SIZE_MAX && l->diaries[at].n_visits ? at : SIZE_MAX;
}

bool traps_read_hangings(struct shelves *s, struct book *b, int64_t farm, struct err *e)
{
	known_clear_hangings(&s->known);
	for (size_t i = 0; i < s->known.traps.n; i++) {
		const struct trap *t = &s->known.traps.items[i];
		if ((!farm || t->farm == farm) && in_log(s, i) == SIZE_MAX &&
			!book_last_visit(b, t->id, &s->known.hangings[i].last, e))
			return false;
	}
	return true;
}

/* A trap whose visits are all of earlier seasons hangs no more: else they were read. */
struct stand traps_stand(const struct shelves *s, size_t i)
{
	struct stand stand = { .standing = STANDING_NOT_HUNG, .since = DAY_NONE };
	size_t at = in_log(s, i);

	if (at != SIZE_MAX)
		return diary_stand(&s->log->diaries[at], s->log->today);
	if (s->known.hangings && s->known.hangings[i].last != DAY_NONE) {
		stand.standing = STANDING_PULLED;
		stand.since = s->known.hangings[i].last;
	}
	return stand;
}

bool traps_pulled(const struct shelves *s, size_t i)
{
	return traps_stand(s, i).standing == STANDING_PULLED;
}

static void traps_row(const struct shelves *s, size_t i, void *row)
{
	*(struct trap_row *)row = trap_row_of(&s->known, &s->known.traps.items[i]);
}

static void traps_name(const void *row, char *out, size_t size)
{
	const struct trap_row *r = row;

	snprintf(out, size, _("trap %s of %s"), r->trap, r->farm);
}

static void traps_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	struct stand stand = traps_stand(s, i);
	char day[SAY_SHORT];

	say_day(stand.standing == STANDING_HANGS ? stand.series_start : stand.since,
		day);
	switch (stand.standing) {
	case STANDING_NOT_HUNG:
		text_copy(out, SAY_LINE, _("not hung yet"));
		break;
	case STANDING_HANGS:
		snprintf(out, SAY_LINE, _("hangs since %s"), day);
		break;
	case STANDING_MISSING:
		snprintf(out, SAY_LINE, _("missing since %s"), day);
		break;
	case STANDING_PULLED:
		snprintf(out, SAY_LINE, _("pulled %s"), day);
		break;
	}
}

/* The trap of the farm (0: of any) and pest (0: of any) that was put in last. */
static const struct trap *latest(const struct known *k, int64_t farm, int64_t pest)
{
	const struct trap *found = NULL;

	for (size_t i = 0; i < k->traps.n; i++) {
		const struct trap *t = &k->traps.items[i];
		if ((!farm || t->farm == farm) && (!pest || t->pest == pest) &&
			(!found || t->id > found->id))
			found = t;
	}
	return found;
}

int64_t traps_usual_lure(const struct known *k, int64_t farm, int64_t pest)
{
	const struct trap *t = latest(k, farm, pest);
	int64_t only = 0;
	int n = 0;

	if (!t)
		t = latest(k, 0, pest);
	if (t)
		return t->lure;
	for (size_t i = 0; i < k->lures.n; i++)
		if (k->lures.items[i].pest == pest && !k->lures.items[i].retired) {
			only = k->lures.items[i].id;
			n++;
		}
	return n == 1 ? only : 0;
}

/* One more than the number that the label ends with, as wide: "B08" after "B07". */
static void count_on(const char *label, char out[static NAME_BYTES])
{
	size_t n = strlen(label), digits = 0;

	while (digits < n && digits < 8 &&
		isdigit((unsigned char)label[n - digits - 1]))
		digits++;
	if (digits == 0)
		snprintf(out, NAME_BYTES, "%.*s 2", NAME_BYTES - 4, label);
	else
		snprintf(out, NAME_BYTES, "%.*s%0*ld",
			(int)(n - digits > NAME_BYTES - 11 ? NAME_BYTES - 11
							   : n - digits),
			label, (int)digits, strtol(label + n - digits, NULL, 10) + 1);
}

/* The next one that is free. */
static void next_label(
	const struct known *k, const struct trap *last, char out[static NAME_BYTES])
{
	char label[NAME_BYTES];

	count_on(last->label, out);
	while (known_find_trap(k, last->farm, out)) {
		text_copy(label, sizeof label, out);
		count_on(label, out);
	}
}

/* The farm's only block; NULL: it has none or several. */
static const struct block *only_block(const struct known *k, int64_t farm)
{
	const struct block *only = NULL;
	int n = 0;

	for (size_t i = 0; i < k->blocks.n; i++)
		if (k->blocks.items[i].farm == farm && !k->blocks.items[i].retired) {
			only = &k->blocks.items[i];
			n++;
		}
	return n == 1 ? only : NULL;
}

/* The kinds and the place of the trap before it. */
static void guess_after(const struct known *k, const struct trap *last, int64_t pest,
	struct trap_row *r)
{
	struct trap like = *last;

	if (pest && pest != like.pest) {
		like.pest = pest;
		like.lure = traps_usual_lure(k, like.farm, pest);
	}
	struct trap_row was = trap_row_of(k, &like);
	const struct block *block = known_block(k, like.block);
	if (block && !block->retired)
		text_copy(r->block, sizeof r->block, was.block);
	text_copy(r->pest, sizeof r->pest, was.pest);
	text_copy(r->lure, sizeof r->lure, was.lure);
	text_copy(r->card, sizeof r->card, was.card);
	r->place = was.place;
	next_label(k, last, r->trap);
}

static void traps_guess(const struct shelves *s, const struct entry_ask *ask, void *row)
{
	const struct known *k = &s->known;
	const struct farm *f = shelves_farm(s, ask);
	const struct trap *last = latest(k, f ? f->id : ask->farm, 0);
	const struct block *b = f ? only_block(k, f->id) : NULL;
	struct trap_row *r = row;

	r->hung = s->log ? s->log->today : DAY_NONE;
	text_copy(r->farm, sizeof r->farm,
		f      ? f->name
		: last ? known_farm(k, last->farm)
		       : "");
	if (last) {
		guess_after(k, last, ask->pest, r);
		return;
	}
	text_copy(r->block, sizeof r->block, b ? b->name : "");
	text_copy(r->trap, sizeof r->trap, "1");
	text_copy(r->pest, sizeof r->pest, known_pest(k, ask->pest));
	if (f && ask->pest)
		text_copy(r->lure, sizeof r->lure,
			known_lure(k, traps_usual_lure(k, f->id, ask->pest)));
}

/* The form makes visits and moves the day of a hanging; it takes none out. */
static bool days_good(
	struct putting *p, const struct trap_row *r, const struct trap_row *was)
{
	char iso[DAY_ISO_SIZE];

	if (!p->id)
		return true;
	if (putting_touched(p, "hung") && was->hung != DAY_NONE && r->hung == DAY_NONE)
		return row_bad(&p->hear, "hung",
			_("cannot be emptied here: in the trap's diary Delete, twice, "
			  "takes that visit out"));
	day_iso(was->pulled, iso);
	if (putting_touched(p, "pulled") && was->pulled != DAY_NONE)
		return row_bad(&p->hear, "pulled",
			_("cannot take the place of %s: in the trap's diary Delete, "
			  "twice, takes that visit out"),
			iso);
	return true;
}

/* The visits that hung and pulled stand for. */
static bool put_visits(struct putting *p, const struct trap_row *r,
	const struct trap *t, int32_t was_hung)
{
	const struct log *l = p->shelves->log;
	int32_t today = l ? l->today : DAY_NONE;
	bool hangs = r->hung != DAY_NONE && putting_touched(p, "hung");

	if (hangs && !(p->id && was_hung != DAY_NONE
				     ? trap_rehang(p->book, t, was_hung, r->hung, p->e)
				     : trap_hang(p->book, t, r->hung, today, p->e)))
		return false;
	return r->pulled == DAY_NONE || !putting_touched(p, "pulled") ||
	       trap_pull(p->book, t, r->pulled, today, p->e);
}

/* Who hangs or pulls it is in the block. */
static bool entry_good(
	struct putting *p, const struct trap *t, const char *column, int32_t day)
{
	struct buf text = { 0 };

	if (day == DAY_NONE || !p->shelves->log || !putting_touched(p, column))
		return true;
	bool ok = hang_doubt(p->book, p->shelves->log, t, day, &text, p->e) &&
		  (text.n == 0 || putting_doubt(p, text.text));
	buf_free(&text);
	return ok;
}

static bool place_good(struct putting *p, const struct trap *t)
{
	char what[SAY_LINE];

	if (!t->has_position ||
		!(putting_touched(p, "lat") || putting_touched(p, "lon")))
		return true;
	snprintf(what, sizeof what, _("trap %s"), t->label);
	return putting_far(p, t->farm, (struct position){ t->lat, t->lon }, what);
}

/* All doubts are heard: Enter again puts it in against each of them. */
static bool nothing_against(
	struct putting *p, const struct trap_row *r, const struct trap *t)
{
	bool hung = entry_good(p, t, "hung", r->hung);
	bool pulled = entry_good(p, t, "pulled", r->pulled);
	bool placed = place_good(p, t);

	return hung && pulled && placed;
}

static bool traps_put(struct putting *p, const void *row)
{
	const struct trap_row *r = row;
	const struct known *k = &p->shelves->known;
	struct trap was = p->id ? k->traps.items[p->at] : (struct trap){ 0 };
	struct trap made = { 0 };
	struct trap_row before = trap_row_of(k, &was);

	if (!row_find_farm(&p->hear, k, r->farm, &made.farm) ||
		!row_find_block(&p->hear, k, made.farm, r->block, &made.block) ||
		!trap_good(&p->hear, k, r, &made) || !days_good(p, r, &before))
		return false;
	struct trap t = trap_after(&p->hear, r, &was, &made);
	if (!nothing_against(p, r, &t))
		return false;
	if (!book_put_trap(p->book, &t, p->e) || !put_visits(p, r, &t, before.hung))
		return false;
	p->id = t.id;
	return true;
}

const struct family_ops traps_ops = { "trap", sizeof(struct trap_row), traps_count,
	traps_id, traps_wanted, traps_pulled, traps_row, traps_name, traps_note,
	traps_guess, traps_put, NULL };
