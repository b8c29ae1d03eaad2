#include "base/buf.h"
#include "base/words.h"
#include "exchange/ghcn.h"

#include <math.h>

/* "<text>: 1 204", unless n is 0. */
static void note(struct sentences *out, int64_t n, const char *text)
{
	struct buf all = { 0 };

	if (n == 0)
		return;
	buf_addf(&all, "%s: ", text);
	buf_add_thousands(&all, n);
	sentences_add(out, all.text);
	buf_free(&all);
}

static void note_flagged(struct sentences *out, const struct ghcn *g)
{
	struct buf all = { 0 }, flags = { 0 };
	int64_t sum = 0;

	for (int i = 0; i < GHCN_FLAGS; i++) {
		if (g->n_flagged[i] == 0)
			continue;
		buf_addf(&flags, "%s%c ", sum == 0 ? "" : ", ", 'A' + i);
		buf_add_thousands(&flags, g->n_flagged[i]);
		sum += g->n_flagged[i];
	}
	if (sum > 0) {
		buf_add(&all, _("temperatures that did not pass the archive's own "
				"checks and are missing here: "));
		buf_add_thousands(&all, sum);
		buf_addf(&all, _(" (by quality flag: %s)"), flags.text);
		sentences_add(out, all.text);
	}
	buf_free(&flags);
	buf_free(&all);
}

void ghcn_notes(const struct ghcn *g, struct sentences *out)
{
	int64_t halves = 0;

	for (size_t i = 0; i < g->n; i++)
		halves += isnan(g->items[i].min) || isnan(g->items[i].max);
	note_flagged(out, g);
	note(out, g->n_missing, _("temperatures missing in the file"));
	note(out, halves,
		_("days with only one of minimum and maximum, which give no "
		  "degree-days"));
	note(out, g->n_repeated, _("temperatures given twice, both times the same"));
	note(out, g->n_early, _("temperatures from before 1900, left out"));
}
