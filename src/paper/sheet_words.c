/* sheet_words.c - what the sheet says, in words that text and PDF share. */
#include "base/words.h"
#include "parts.h"

#include <string.h>

const char *sheet_marks(const struct sheet_trap *t)
{
	static const char *const marks[] = { "", " d", "b", "bd" };

	return marks[t->is_border * 2 + t->is_disrupted];
}

void sheet_say_title(const struct sheet *s, bool blank, struct buf *out)
{
	buf_addf(out,
		blank ? _("Scouting sheet to carry: %s") : _("Scouting sheet: %s"),
		s->farm);
}

void sheet_say_day(
	const struct sheet *s, const struct sheet_form *form, struct buf *out)
{
	if (form->notice && *form->notice)
		buf_addf(out, "%s \u00b7 ", form->notice);
	buf_add(out, s->day);
	if (s->scout[0] && !form->blank)
		buf_addf(out, _(", scout %s"), s->scout);
	if (s->last_run[0])
		buf_addf(out, ", %s", s->last_run);
}

const char *sheet_legend(bool blank)
{
	return blank ? _("Write 0 for none counted, - for not read, + behind a count "
			 "for at least (card full); b border, d disrupted: 0 there "
			 "does not mean no moths.")
		     : _("0 none counted, - not read, + at least (card full), "
			 "? in doubt; c new card, l new lure, s stirred; b "
			 "border, d disrupted: 0 there does not mean no moths; a week: "
			 "moths per trap a week; season: moths counted this season; "
			 "block: judged with its block.");
}

void sheet_say_bring(const struct sheet *s, struct buf *out)
{
	bool under_way = s->visited > 0 && s->visited < (int)s->n;

	buf_addf(out,
		under_way ? _("Still to bring: %s") : _("Bring on the next run: %s"),
		s->bring);
}

void sheet_say_hot(const struct hot_line *hot, struct buf *out)
{
	buf_addf(out, _("This season: %s"), hot->text);
}

void sheet_say_lure(const struct sheet_trap *t, struct buf *out)
{
	if (t->lure[0] && t->lure_since[0])
		buf_addf(out, _("%s since %s"), t->lure, t->lure_since);
	else
		buf_add(out, t->lure);
}

void sheet_say_verdict(const struct sheet_trap *t, struct buf *out)
{
	buf_add(out, "");
	if (t->rule[0] == '\0' || strcmp(t->rule, "-") == 0)
		return;
	if (strcmp(t->verdict, "-") != 0)
		buf_addf(out, "%s ", t->verdict);
	buf_add(out, t->rule);
}

const char *sheet_no_traps(void)
{
	return _("No trap hangs on this farm.");
}

void sheet_say_counted(const struct sheet *s, struct buf *out)
{
	if (s->visited == 0) {
		buf_add(out, _("Totals: the run has not begun."));
		return;
	}
	buf_addf(out,
		ngettext("Totals: %d of %d trap counted",
			"Totals: %d of %d traps counted", (unsigned long)s->n),
		s->counted, (int)s->n);
	if (s->visited < (int)s->n)
		buf_add(out, _(" so far"));
	if (s->counted)
		buf_addf(out,
			ngettext(", %d moth", ", %d moths", (unsigned long)s->moths),
			(int)s->moths);
	buf_add(out, ".");
}

void sheet_say_standing(const struct sheet *s, struct buf *out)
{
	buf_addf(out,
		_("As of the last readings: %d OVER, %d unknown, traps and block means "
		  "together."),
		s->over, s->unknown);
}

static void add_concern(const char *says, struct buf *out)
{
	if (*says)
		buf_addf(out, "%s%s", out->n ? "; " : "", says);
}

/* "missing" behind "trap missing" would be said twice. */
void sheet_concerns(const struct sheet_trap *t, bool amiss, struct buf *out)
{
	add_concern(t->barred, out);
	add_concern(amiss ? t->says : "", out);
	if (!amiss || !strstr(t->says, t->service))
		add_concern(t->service, out);
}

static void begin_piece(struct buf *out)
{
	buf_add(out, out->n ? ", " : "");
}

void sheet_say_trap(const struct sheet_trap *t, struct buf *out)
{
	buf_add(out, "");
	if (t->lure[0] && t->lure_since[0])
		buf_addf(out, _("lure %s since %s"), t->lure, t->lure_since);
	else if (t->lure[0])
		buf_addf(out, _("lure %s"), t->lure);
	if (t->card_since[0]) {
		begin_piece(out);
		buf_addf(out, _("card since %s"), t->card_since);
	}
	if (t->total[0]) {
		begin_piece(out);
		buf_addf(out, _("season %s"), t->total);
	}
	/* What a trap needing attention says stands further up; what is due there
	 * stands here too, for whoever goes by this list. */
	sheet_concerns(t, !t->needs_attention, out);
}

void sheet_say_block(const struct sheet_block *b, struct buf *out)
{
	buf_addf(out, _("traps read: %s"), b->read);
	if (b->highest[0] && strcmp(b->highest, "-") != 0)
		buf_addf(out, _(", highest %s"), b->highest);
	add_concern(b->says, out);
}

/* Without a rule the block's verdict is that of a trap which is worse than the mean. */
const char *sheet_block_verdict(const struct sheet_block *b)
{
	return b->rule[0] ? b->verdict : _("over or unknown");
}

void sheet_need_trap(const struct sheet_trap *t, const char **cells)
{
	cells[0] = t->label;
	cells[1] = t->block;
	cells[2] = t->pest;
	cells[3] = t->week;
	cells[4] = t->rule;
	cells[5] = t->verdict;
}

void sheet_need_block(const struct sheet_block *b, const char **cells)
{
	cells[0] = _("mean");
	cells[1] = b->name;
	cells[2] = b->pest;
	cells[3] = b->mean;
	cells[4] = b->rule;
	cells[5] = sheet_block_verdict(b);
}

void sheet_block_cells(const struct sheet_block *b, const char **cells)
{
	cells[0] = b->name;
	cells[1] = b->pest;
	cells[2] = b->mean;
	cells[3] = b->highest;
	cells[4] = b->read;
	cells[5] = b->rule;
	cells[6] = b->verdict;
}
