/* entry_ops_acts.c - treatments and picks on the Book page. */
#include "entry_family.h"

#include "answers/entry_bar.h"
#include "answers/entry_visited.h"
#include "base/text.h"
#include "base/words.h"
#include "book/acts.h"
#include "entry_bar_parts.h"
#include "entry_ops_acts.h"
#include "record_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCKS_MOST = 32 }; /* that one form can name */

static size_t treatments_count(const struct shelves *s)
{
	return s->treatments.n;
}

static int64_t treatments_id(const struct shelves *s, size_t i)
{
	return s->treatments.items[i].id;
}

static bool treatments_wanted(
	const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	const struct treatment *t = &s->treatments.items[i];

	return act_wanted(s, t->block, ask) &&
	       (!ask->pest || !t->pest || t->pest == ask->pest);
}

static void treatments_row(const struct shelves *s, size_t i, void *row)
{
	*(struct treatment_row *)row =
		treatment_row_of(&s->known, &s->treatments.items[i]);
}

static void treatments_name(const void *row, char *out, size_t size)
{
	const struct treatment_row *r = row;

	act_say(_("treatment of"), r->block, r->day, out, size);
}

/* What it still bars by itself; one that bars nothing any more says nothing. */
static void treatments_note(
	const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	const struct treatment *t = &s->treatments.items[i];
	struct buf text = { 0 };

	if (!s->log)
		return;
	const struct zone *z = &s->log->zone;
	struct waiting in = waiting_entry(t, 1, z, log_now(s->log));
	struct pick_wait pick = waiting_pick(t, 1, z, s->log->today);
	if (in.state != WAITING_FREE)
		record_say_entry(t, z, &text);
	if (in.state != WAITING_FREE && pick.state != WAITING_FREE)
		buf_add(&text, "; ");
	if (pick.state != WAITING_FREE)
		record_say_pick(t, z, &text);
	text_copy(out, SAY_LINE, text.text ? text.text : "");
	buf_free(&text);
}

/* What stands on a label, and who applied it, goes into a record that the law asks for:
 * neither is guessed. */
static void treatments_guess(
	const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct treatment_row *r = row;

	act_guess(s, ask, (struct act_place){ r->farm, r->block, sizeof r->block });
	text_copy(r->pest, sizeof r->pest, known_pest(&s->known, ask->pest));
	r->day = s->log ? s->log->today : DAY_NONE;
}

/* The names of a form's blocks, blanks around them left out. */
struct block_names {
	char name[BLOCKS_MOST][NAME_BYTES];
	size_t n;
};

static bool has_name(const struct block_names *all, const char *name)
{
	for (size_t i = 0; i < all->n; i++)
		if (strcmp(all->name[i], name) == 0)
			return true;
	return false;
}

static bool add_name(struct hearing *h, struct block_names *all, const char *part)
{
	char name[NOTE_BYTES];

	text_copy(name, sizeof name, part);
	text_trim(name);
	if (!*name)
		return row_bad(h, "block",
			_("names no block at one of its commas; it takes names of "
			  "blocks with commas between them"));
	if (strlen(name) >= NAME_BYTES || all->n == BLOCKS_MOST)
		return row_bad(h, "block",
			_("is not right; it takes names of blocks with commas between "
			  "them"));
	if (has_name(all, name))
		return row_bad(h, "block", _("names %s twice"), name);
	text_copy(all->name[all->n++], NAME_BYTES, name);
	return true;
}

/* A name that has a comma itself stands for its block alone. */
static bool split_names(
	struct putting *p, const struct treatment_row *r, struct block_names *all)
{
	const struct known *k = &p->shelves->known;
	char text[NOTE_BYTES], *part = text;

	text_copy(text, sizeof text, r->block);
	all->n = 0;
	if (known_find_block(k, known_find_farm(k, r->farm), text))
		return add_name(&p->hear, all, text);
	while (part) {
		char *end = strchr(part, ',');
		if (end)
			*end++ = '\0';
		if (!add_name(&p->hear, all, part))
			return false;
		part = end;
	}
	return true;
}

/* "2026-08-20 a": the first that no treatment has. */
static void new_job(const struct shelves *s, int32_t day, char out[static NAME_BYTES])
{
	char iso[DAY_ISO_SIZE];
	size_t i = 0;

	day_iso(day, iso);
	for (char c = 'a'; c <= 'z'; c++) {
		snprintf(out, NAME_BYTES, "%s %c", iso, c);
		for (i = 0; i < s->treatments.n; i++)
			if (strcmp(s->treatments.items[i].job, out) == 0)
				break;
		if (i == s->treatments.n)
			return;
	}
}

/* A correction of what bars nothing asks nothing. */
static bool asks(const struct putting *p)
{
	static const char *const bars[] = { "block", "date", "started_at", "ended_at",
		"rei_hours", "phi_days" };

	for (size_t i = 0; i < sizeof bars / sizeof *bars; i++)
		if (putting_touched(p, bars[i]))
			return true;
	return false;
}

/* By what the book holds now: the log was read before another program's pick, and does
 * not reach back to those of earlier years. */
static void say_picks(
	const struct putting *p, const struct treatment *t, struct buf *out)
{
	struct log now = *p->shelves->log;
	char said[1][SAY_LINE * 2];

	now.treatments = p->shelves->treatments;
	now.picks = p->shelves->picks;
	size_t n = treatment_bars_picks(&now, t, said, 1);
	if (n > 0)
		buf_add(out, said[0]);
	if (n > 1)
		buf_addf(out,
			ngettext("; and %zu more pick", "; and %zu more picks", n - 1),
			n - 1);
}

struct visited {
	struct buf first;
	size_t n;
};

static void hear_visited(void *arg, const char *sentence)
{
	struct visited *v = arg;

	if (v->n++ == 0)
		buf_add(&v->first, sentence);
}

/* Behind what is said of picks there is room for their number alone. */
static bool say_visits(struct putting *p, const struct treatment *t, struct buf *out)
{
	struct visited v = { 0 };
	const struct said said = { hear_visited, &v };
	bool ok = treatment_visited(
		p->book, &p->shelves->known, t, p->hear.zone, &said, p->e);

	if (v.n > 0 && out->n > 0)
		buf_addf(out,
			ngettext("; and %zu visit in the re-entry interval",
				"; and %zu visits in the re-entry interval", v.n),
			v.n);
	else if (v.n > 0)
		buf_add(out, v.first.text);
	buf_free(&v.first);
	return ok;
}

static bool nothing_against(struct putting *p, const struct treatment *t)
{
	struct buf text = { 0 };

	if (!p->shelves->log || !asks(p))
		return true;
	say_picks(p, t, &text);
	bool go_on =
		say_visits(p, t, &text) && (text.n == 0 || putting_doubt(p, text.text));
	buf_free(&text);
	return go_on;
}

static bool put_in_block(struct putting *p, const struct treatment_row *r, int64_t *id)
{
	const struct shelves *s = p->shelves;
	struct treatment t = p->id ? s->treatments.items[p->at] : treatment_blank;

	if (!treatment_over(&p->hear, &s->known, r, &t) || !nothing_against(p, &t) ||
		!book_put_treatment(p->book, &t, p->e))
		return false;
	if (*id == 0)
		*id = t.id;
	return true;
}

/* The record that is corrected stays one of one block. */
static bool treatments_put(struct putting *p, const void *row)
{
	struct treatment_row r = *(const struct treatment_row *)row;
	struct block_names blocks;
	int64_t first = 0;
	bool all = true;

	if (!split_names(p, &r, &blocks))
		return false;
	if (p->id && blocks.n > 1)
		return row_bad(&p->hear, "block",
			_("is more than one block; a record is corrected for its own, "
			  "the others have theirs"));
	if (blocks.n > 1 && !*r.job)
		new_job(p->shelves, r.day, r.job);
	for (size_t i = 0; i < blocks.n; i++) {
		text_copy(r.block, sizeof r.block, blocks.name[i]);
		all = put_in_block(p, &r, &first) && all;
		if (!all && !p->fault->is_doubt)
			return false;
	}
	if (!all) /* each block's doubts were heard */
		return false;
	p->id = first;
	return blocks.n > 0 || row_bad(&p->hear, "block", _("names no block"));
}

const struct family_ops treatments_ops = { "treatment", sizeof(struct treatment_row),
	treatments_count, treatments_id, treatments_wanted, NULL, treatments_row,
	treatments_name, treatments_note, treatments_guess, treatments_put, NULL };

static size_t picks_count(const struct shelves *s)
{
	return s->picks.n;
}

static int64_t picks_id(const struct shelves *s, size_t i)
{
	return s->picks.items[i].id;
}

static bool picks_wanted(const struct shelves *s, size_t i, const struct entry_ask *ask)
{
	return act_wanted(s, s->picks.items[i].block, ask);
}

static void picks_row(const struct shelves *s, size_t i, void *row)
{
	*(struct pick_entry_row *)row =
		pick_entry_row_of(&s->known, &s->picks.items[i]);
}

static void picks_name(const void *row, char *out, size_t size)
{
	const struct pick_entry_row *r = row;

	act_say(_("pick of"), r->block, r->day, out, size);
}

static void picks_note(const struct shelves *s, size_t i, char out[static SAY_LINE])
{
	static const struct zone utc = { .n = 0 };
	const struct pick *p = &s->picks.items[i];
	struct treatments of = treatments_of_block(&s->treatments, p->block);
	const struct zone *z = s->log ? &s->log->zone : &utc;
	struct pick_wait w = waiting_pick(of.items, of.n, z, p->day);
	struct buf text = { 0 };

	bar_say_pick(of.items, &w, p->is_done, &text);
	text_copy(out, SAY_LINE, text.text);
	buf_free(&text);
	free(of.items);
}

static void picks_guess(const struct shelves *s, const struct entry_ask *ask, void *row)
{
	struct pick_entry_row *r = row;

	act_guess(s, ask, (struct act_place){ r->farm, r->block, sizeof r->block });
}

/* What speaks against a pick is said before it is in the book. */
static bool treatments_allow(struct putting *p, const struct pick *pick)
{
	const struct shelves *s = p->shelves;
	struct treatments of = treatments_of_block(&s->treatments, pick->block);
	struct buf text = { 0 };
	bool changed = putting_touched(p, "block") || putting_touched(p, "date") ||
		       putting_touched(p, "done");
	bool go_on = !changed ||
		     !pick_doubt(&s->known, pick, &of, p->hear.zone, &text) ||
		     putting_doubt(p, text.text);

	buf_free(&text);
	free(of.items);
	return go_on;
}

static bool picks_put(struct putting *p, const void *row)
{
	const struct shelves *s = p->shelves;
	struct pick one = p->id ? s->picks.items[p->at] : pick_blank;

	if (!pick_over(&p->hear, &s->known, row, &one) || !treatments_allow(p, &one) ||
		!book_put_pick(p->book, &one, p->e))
		return false;
	p->id = one.id;
	return true;
}

const struct family_ops picks_ops = { "pick", sizeof(struct pick_entry_row),
	picks_count, picks_id, picks_wanted, NULL, picks_row, picks_name, picks_note,
	picks_guess, picks_put, NULL };
