/* trial_list.c - own and published thresholds as one page lists them. */
#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"
#include "trial_parts.h"

#include <stdlib.h>

static void add_own(struct threshold_list *t, const struct log *l,
	const struct published_rows *all, const struct rule *r)
{
	const struct pest *p = log_pest(l, r->pest);

	t->own = mem_grow(t->own, &t->cap_own, t->n_own + 1, sizeof *t->own);
	struct own_row *row = &t->own[t->n_own++];
	*row = (struct own_row){ .rule = *r };
	text_copy(row->pest, sizeof row->pest, p ? p->code : "");
	say_rule_short(r, row->brief);
	say_rule(r, row->rule_text, sizeof row->rule_text);
	say_where(l, r, row->where, sizeof row->where);
	published_changes(all, l, r, row->changed, sizeof row->changed);
	trial_never(l, r, row->never, sizeof row->never);
	trial_replaced(l, r, row->replaced, sizeof row->replaced);
	trial_replaces(l, r, row->replaces, sizeof row->replaces);
}

bool threshold_list_read(
	struct threshold_list *out, const struct log *l, int64_t pest, struct err *e)
{
	const struct pest *p = log_pest(l, pest);

	out->pest = p ? pest : 0;
	out->n_own = 0;
	text_copy(out->filter, sizeof out->filter, p ? p->code : _("all pests"));
	if (!published_read(&out->published, l, out->pest, e))
		return false;
	for (size_t i = 0; i < l->rules.n; i++)
		if (out->pest == 0 || l->rules.items[i].pest == out->pest)
			add_own(out, l, &out->published, &l->rules.items[i]);
	return true;
}

void threshold_list_free(struct threshold_list *t)
{
	free(t->own);
	published_free(&t->published);
	*t = (struct threshold_list){ 0 };
}
