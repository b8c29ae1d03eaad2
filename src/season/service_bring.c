/* service_bring.c - which lures and cards a run has to bring. */
#include "season/service.h"

#include "base/mem.h"

static void bring_one(struct brings *out, bool is_lure, int64_t kind)
{
	for (size_t i = 0; i < out->n; i++) {
		struct bring *b = &out->items[i];
		if (b->is_lure == is_lure && b->kind == kind) {
			b->n++;
			return;
		}
	}
	out->items = mem_grow(out->items, &out->cap, out->n + 1, sizeof *out->items);
	out->items[out->n++] = (struct bring){ is_lure, kind, 1 };
}

static bool due_before(enum service_state s, int32_t due, int32_t after)
{
	return s != SERVICE_NONE && due < after;
}

void service_bring(struct brings *out, const struct diary *d,
	const struct lure_kinds *lures, const struct card_kinds *cards, int32_t run,
	int32_t after)
{
	struct lure_state lure = service_lure(d, lures, run, after);
	struct card_state card = service_card(d, cards, run, after);

	out->unknown += lure.state == SERVICE_NONE &&
			diary_stand(d, run).standing == STANDING_HANGS;
	if (due_before(lure.state, lure.due, after))
		bring_one(out, true, lure.kind);
	if (due_before(card.state, card.due, after))
		bring_one(out, false, card.kind);
}
