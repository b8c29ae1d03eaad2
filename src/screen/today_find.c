/* today_find.c - what can be picked on the Today page, and what of it is shown. */
#include "today_parts.h"

size_t today_count(const struct today *t)
{
	return t->n_runs + t->n_lines + t->n_hots + t->n_nexts;
}

size_t today_first(const struct today *t, enum today_kind kind)
{
	return (kind >= TODAY_VERDICT ? t->n_runs : 0) +
	       (kind >= TODAY_HOT ? t->n_lines : 0) +
	       (kind >= TODAY_NEXT ? t->n_hots : 0);
}

const struct today_run *today_picked_run(const struct today_page *p)
{
	return p->picked < p->today->n_runs ? &p->today->runs[p->picked] : NULL;
}

const struct today_line *today_picked_line(const struct today_page *p)
{
	size_t at = p->picked - p->today->n_runs;

	if (p->picked < p->today->n_runs || at >= p->today->n_lines)
		return NULL;
	return &p->today->lines[at];
}

const struct today_hot *today_picked_hot(const struct today_page *p)
{
	size_t before = p->today->n_runs + p->today->n_lines;

	if (p->picked < before || p->picked - before >= p->today->n_hots)
		return NULL;
	return &p->today->hots[p->picked - before];
}

const struct today_next *today_picked_next(const struct today_page *p)
{
	size_t before = p->today->n_runs + p->today->n_lines + p->today->n_hots;

	if (p->picked < before || p->picked - before >= p->today->n_nexts)
		return NULL;
	return &p->today->nexts[p->picked - before];
}

static bool run_has(const struct today_run *r, const char *text)
{
	return narrow_contains(r->name, text) || narrow_contains(r->bring, text) ||
	       narrow_contains(r->barred, text);
}

static bool verdict_has(const struct today_line *v, const char *text)
{
	return narrow_contains(v->farm_name, text) ||
	       narrow_contains(v->block_name, text) ||
	       narrow_contains(v->pest_code, text) || narrow_contains(v->where, text) ||
	       narrow_contains(v->says, text);
}

static bool has(const void *page, size_t i, const char *text)
{
	const struct today_page *p = page;
	const struct today *t = p->today;

	if (i < t->n_runs)
		return run_has(&t->runs[i], text);
	i -= t->n_runs;
	if (i < t->n_lines)
		return verdict_has(&t->lines[i], text);
	i -= t->n_lines;
	if (i < t->n_hots)
		return narrow_contains(t->hots[i].name, text) ||
		       narrow_contains(t->hots[i].says, text);
	i -= t->n_hots;
	return narrow_contains(t->nexts[i].name, text) ||
	       narrow_contains(t->nexts[i].pest_code, text) ||
	       narrow_contains(t->nexts[i].says, text);
}

void today_find(struct today_page *p)
{
	sift_find(&p->sift, today_count(p->today), has, p, &p->picked);
}

void today_page_show(struct today_page *p, const struct today *today)
{
	p->today = today;
	p->is_measured = false;
	sift_forget(&p->sift);
	today_find(p);
}

void today_page_free(struct today_page *p)
{
	sift_free(&p->sift);
	*p = (struct today_page){ 0 };
}
