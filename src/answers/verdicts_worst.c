/* verdicts_worst.c - which of several answers about a trap or block counts, and how
 * many there are. */
#include "answers/verdicts.h"

/* True if row b says worse things than a (NULL: nothing yet), or as bad with less
 * certainty, or of a hotter trap. */
static bool is_worse(const struct verdict_row *b, const struct verdict_row *a)
{
	enum verdict va = a ? a->judgement.verdict : VERDICT_NONE;
	enum verdict vb = b->judgement.verdict;

	if (!a || (a->rule == NO_RULE && b->rule != NO_RULE))
		return true;
	if (va == vb && b->judgement.questionable != a->judgement.questionable)
		return b->judgement.questionable;
	if (va == vb)
		return weekly_x10(&b->weekly) > weekly_x10(&a->weekly);
	return verdict_worse(va, vb) == vb;
}

const struct verdict_row *verdicts_worst_of_trap(const struct verdict_rows *v, int trap)
{
	const struct verdict_row *worst = NULL;

	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].trap == trap && is_worse(&v->items[i], worst))
			worst = &v->items[i];
	return worst;
}

const struct verdict_row *verdicts_worst_of_block(
	const struct verdict_rows *v, int64_t block, int64_t pest)
{
	const struct verdict_row *worst = NULL;

	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].block == block && v->items[i].pest == pest &&
			is_worse(&v->items[i], worst))
			worst = &v->items[i];
	return worst;
}

const struct verdict_row *verdicts_of_block_itself(
	const struct verdict_rows *v, int64_t block, int64_t pest)
{
	const struct verdict_row *worst = NULL;

	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].trap == NO_TRAP && v->items[i].block == block &&
			v->items[i].pest == pest && is_worse(&v->items[i], worst))
			worst = &v->items[i];
	return worst;
}

bool verdicts_doubt_block(const struct verdict_rows *v, int64_t block, int64_t pest)
{
	for (size_t i = 0; i < v->n; i++)
		if (v->items[i].block == block && v->items[i].pest == pest &&
			v->items[i].judgement.questionable && verdicts_counts(v, i))
			return true;
	return false;
}

struct verdict_sums verdicts_sum(const struct verdict_rows *v)
{
	struct verdict_sums s = { 0 };

	for (size_t i = 0; i < v->n; i++) {
		const struct judgement *j = &v->items[i].judgement;
		if (!verdicts_counts(v, i))
			continue;
		s.over += j->verdict == VERDICT_OVER;
		s.unknown += j->verdict == VERDICT_UNKNOWN;
		s.near += j->verdict == VERDICT_NEAR && !j->questionable;
		s.near_doubted += j->verdict == VERDICT_NEAR && j->questionable;
		s.under += j->verdict == VERDICT_UNDER && !j->questionable;
		s.under_doubted += j->verdict == VERDICT_UNDER && j->questionable;
		s.none += verdicts_has_none(v, i);
	}
	return s;
}

bool verdicts_has_none(const struct verdict_rows *v, size_t i)
{
	const struct verdict_row *row = &v->items[i];

	return row->trap != NO_TRAP && row->rule == NO_RULE &&
	       !verdicts_of_block_itself(v, row->block, row->pest);
}

static bool is_of_same(const struct verdict_row *a, const struct verdict_row *b)
{
	return a->trap == b->trap &&
	       (a->trap != NO_TRAP || (a->block == b->block && a->pest == b->pest));
}

bool verdicts_counts(const struct verdict_rows *v, size_t i)
{
	const struct verdict_row *row = &v->items[i], *worst = NULL;
	size_t first = i;

	while (first > 0 && is_of_same(&v->items[first - 1], row))
		first--;
	for (size_t k = first; k < v->n && is_of_same(&v->items[k], row); k++)
		if (is_worse(&v->items[k], worst))
			worst = &v->items[k];
	return worst == row;
}
