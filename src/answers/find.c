/* find.c - looking things up in the log by id and by name. */
#include "log_parts.h"

#include "base/buf.h"
#include "base/words.h"

#include <stdint.h>
#include <string.h>

struct instant log_now(const struct log *l)
{
	return l->now.minute != 0 ? l->now : zone_local(&l->zone, l->today, 0);
}

const struct farm *log_farm(const struct log *l, int64_t id)
{
	for (size_t i = 0; i < l->farms.n; i++)
		if (l->farms.items[i].id == id)
			return &l->farms.items[i];
	return NULL;
}

const struct block *log_block(const struct log *l, int64_t id)
{
	size_t at = log_place_of(&l->block_places, id);

	if (l->block_places.n > 0)
		return at < l->blocks.n ? &l->blocks.items[at] : NULL;
	for (size_t i = 0; i < l->blocks.n; i++)
		if (l->blocks.items[i].id == id)
			return &l->blocks.items[i];
	return NULL;
}

const struct pest *log_pest(const struct log *l, int64_t id)
{
	for (size_t i = 0; i < l->pests.n; i++)
		if (l->pests.items[i].id == id)
			return &l->pests.items[i];
	return NULL;
}

const struct lure_kind *log_lure(const struct log *l, int64_t id)
{
	for (size_t i = 0; i < l->lures.n; i++)
		if (l->lures.items[i].id == id)
			return &l->lures.items[i];
	return NULL;
}

const struct card_kind *log_card(const struct log *l, int64_t id)
{
	for (size_t i = 0; i < l->cards.n; i++)
		if (l->cards.items[i].id == id)
			return &l->cards.items[i];
	return NULL;
}

size_t log_trap(const struct log *l, int64_t id)
{
	if (l->trap_places.n > 0)
		return log_place_of(&l->trap_places, id);
	for (size_t i = 0; i < l->traps.n; i++)
		if (l->traps.items[i].id == id)
			return i;
	return SIZE_MAX;
}

static void add_name(struct buf *names, const char *name, bool quoted)
{
	if (names->n > 0)
		buf_add(names, ", ");
	buf_addf(names, quoted ? "\"%s\"" : "%s", name);
}

const struct farm *log_find_farm(const struct log *l, const char *name, struct err *e)
{
	struct buf names = { 0 };

	for (size_t i = 0; i < l->farms.n; i++) {
		if (strcmp(l->farms.items[i].name, name) == 0) {
			buf_free(&names);
			return &l->farms.items[i];
		}
		add_name(&names, l->farms.items[i].name, true);
	}
	err_set(e, ERR_NOT_FOUND, _("there is no farm \"%s\"; the book has: %s"), name,
		names.n ? names.text : _("none"));
	buf_free(&names);
	return NULL;
}

const struct pest *log_find_pest(const struct log *l, const char *code, struct err *e)
{
	struct buf names = { 0 };

	for (size_t i = 0; i < l->pests.n; i++) {
		if (strcmp(l->pests.items[i].code, code) == 0) {
			buf_free(&names);
			return &l->pests.items[i];
		}
		add_name(&names, l->pests.items[i].code, false);
	}
	err_set(e, ERR_NOT_FOUND, _("there is no pest \"%s\"; the book has: %s"), code,
		names.n ? names.text : _("none"));
	buf_free(&names);
	return NULL;
}
