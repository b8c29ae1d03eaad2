#include "base/names.h"

#include "base/mem.h"
#include "base/words.h"

#include <stdlib.h>
#include <string.h>

/* FNV-1a, http://www.isthe.com/chongo/tech/comp/fnv/ (public domain). */
static uint64_t hash_of(int64_t parent, const char *text)
{
	uint64_t hash = UINT64_C(14695981039346656037) ^ (uint64_t)parent;

	for (; *text; text++)
		hash = (hash ^ (unsigned char)*text) * UINT64_C(1099511628211);
	return hash ^ hash >> 32;
}

static void put(struct names *s, size_t i)
{
	size_t slot = s->items[i].hash & (s->n_slots - 1);

	while (s->slots[slot])
		slot = (slot + 1) & (s->n_slots - 1);
	s->slots[slot] = (uint32_t)i + 1;
}

static void widen(struct names *s)
{
	s->n_slots = s->n_slots ? s->n_slots * 2 : 64;
	free(s->slots);
	s->slots = mem_new(s->n_slots, sizeof *s->slots);
	for (size_t i = 0; i < s->n; i++)
		put(s, i);
}

void names_add(struct names *s, int64_t parent, const char *text, int64_t value)
{
	if (s->n * 2 >= s->n_slots)
		widen(s);
	s->items = mem_grow(s->items, &s->cap, s->n + 1, sizeof *s->items);
	s->items[s->n] = (struct name_entry){ mem_text(text), parent, value,
		hash_of(parent, text) };
	put(s, s->n++);
}

int64_t names_find(const struct names *s, int64_t parent, const char *text)
{
	if (!s->n_slots)
		return -1;
	uint64_t hash = hash_of(parent, text);
	for (size_t slot = hash & (s->n_slots - 1); s->slots[slot];
		slot = (slot + 1) & (s->n_slots - 1)) {
		const struct name_entry *e = &s->items[s->slots[slot] - 1];
		if (e->hash == hash && e->parent == parent && !strcmp(e->text, text))
			return e->value;
	}
	return -1;
}

const char *names_text(const struct names *s, int64_t value)
{
	for (size_t i = 0; i < s->n; i++)
		if (s->items[i].value == value)
			return s->items[i].text;
	return "";
}

void names_list(const struct names *s, int64_t parent, size_t bytes, struct buf *out)
{
	size_t from = out->n;
	int left = 0;

	for (size_t i = 0; i < s->n; i++) {
		if (s->items[i].parent != parent)
			continue;
		if (out->n - from + strlen(s->items[i].text) > bytes) {
			left++;
			continue;
		}
		const char *text = s->items[i].text;
		buf_addf(out, strchr(text, ',') ? "%s\"%s\"" : "%s%s",
			out->n > from ? ", " : "", text);
	}
	if (left)
		buf_addf(out, _(" and %d more"), left);
}

void names_free(struct names *s)
{
	for (size_t i = 0; i < s->n; i++)
		free(s->items[i].text);
	free(s->items);
	free(s->slots);
	*s = (struct names){ 0 };
}
