#include "answers/far.h"
#include "traps_parts.h"

#include "base/words.h"

#include <stdio.h>

static void ask_about(struct taking *t, const struct trap_in *in, struct far_farm *farm)
{
	const struct trap_state *s = t->state;
	const struct position at = { in->trap.lat, in->trap.lon };
	char what[NAME_BYTES + 16];
	struct buf says = { 0 };

	snprintf(what, sizeof what, _("trap %s"), in->trap.label);
	if (far_says(farm, at, what, names_text(&s->farms, in->trap.farm), &says))
		taking_warn(t, _("%s, line %lld: %s"), t->from->name,
			(long long)in->line, says.text);
	buf_free(&says);
}

/* The farm of trap `first`, whose earlier traps were none of it. */
static void ask_farm(struct taking *t, size_t first)
{
	const struct trap_state *s = t->state;
	struct far_farm farm = { 0 };

	for (size_t i = first; i < s->n_traps; i++)
		if (s->trap[i].trap.farm == s->trap[first].trap.farm &&
			s->trap[i].trap.has_position)
			far_add(&farm, s->trap[i].trap.lat, s->trap[i].trap.lon);
	for (size_t i = first; i < s->n_traps; i++)
		if (s->trap[i].trap.farm == s->trap[first].trap.farm &&
			s->trap[i].trap.has_position && s->trap[i].line)
			ask_about(t, &s->trap[i], &farm);
	far_free(&farm);
}

static bool was_before(const struct trap_state *s, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (s->trap[k].trap.farm == s->trap[i].trap.farm)
			return true;
	return false;
}

void traps_far(struct taking *t)
{
	const struct trap_state *s = t->state;

	for (size_t i = 0; i < s->n_traps; i++)
		if (!was_before(s, i))
			ask_farm(t, i);
}
