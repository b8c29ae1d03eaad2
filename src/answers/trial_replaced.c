/* trial_replaced.c - which of the grower's thresholds turns which off: one that says
 * more of where and when, of the same pest and measure, is judged alone where both
 * hold. */
#include "base/buf.h"
#include "base/text.h"
#include "base/words.h"
#include "trial_parts.h"

#include <string.h>

/* That a rule for a block holds on the block's farm matters to one that names the farm
 * alone: else the block is not looked up, since a book may have thousands. */
static int64_t farm_of_block(
	const struct log *l, const struct rule *narrow, const struct rule *wide)
{
	const struct block *b = narrow->block && !narrow->farm && wide->farm
					? log_block(l, narrow->block)
					: NULL;

	return b ? b->farm : 0;
}

static bool replaces(
	const struct log *l, const struct rule *narrow, const struct rule *wide)
{
	return narrow->pest == wide->pest && narrow->measure == wide->measure &&
	       narrow->id != wide->id &&
	       rule_narrower(narrow, wide, farm_of_block(l, narrow, wide));
}

/* "CM2"; of one without a source ">=5". */
static void say_id(const struct rule *r, struct buf *out)
{
	char brief[SAY_SHORT];
	const char *source = words_shipped(r->source);
	size_t n = strcspn(source, ":");

	say_rule_short(r, brief);
	if (n > 0)
		buf_addf(out, "%.*s", (int)n, source);
	else
		buf_add(out, brief);
}

void trial_replaced(const struct log *l, const struct rule *own, char *out, size_t size)
{
	char where[SAY_LINE];
	struct buf text = { 0 };

	buf_add(&text, "");
	for (size_t i = 0; i < l->rules.n; i++) {
		const struct rule *r = &l->rules.items[i];
		if (!replaces(l, r, own))
			continue;
		say_where(l, r, where, sizeof where);
		buf_add(&text, text.n ? "; " : "");
		say_id(r, &text);
		buf_addf(&text, " (%s)", where);
	}
	text_copy(out, size, text.text);
	buf_free(&text);
}

void trial_replaces(const struct log *l, const struct rule *own, char *out, size_t size)
{
	struct buf text = { 0 };

	buf_add(&text, "");
	for (size_t i = 0; i < l->rules.n; i++) {
		const struct rule *r = &l->rules.items[i];
		if (!replaces(l, own, r))
			continue;
		buf_add(&text, text.n ? ", " : "");
		say_id(r, &text);
	}
	text_copy(out, size, text.text);
	buf_free(&text);
}
