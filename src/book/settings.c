/* settings.c - settings by name, and the numbers of the judgement among them. */
#include "book/rules.h"

#include "query.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>
#include <string.h>

struct limit {
	const char *name;
	size_t at; /* in struct limits */
	int32_t lo, hi;
};

static const struct limit limit_table[] = {
	{ "join_nights", offsetof(struct limits, join_nights), 1, 31 },
	{ "long_nights", offsetof(struct limits, long_nights), 1, NIGHTS_MAX },
	{ "stale_nights", offsetof(struct limits, stale_nights), 1, NIGHTS_MAX },
	{ "near_x100", offsetof(struct limits, near_x100), 0, 100 },
	{ "read_num", offsetof(struct limits, read_num), 1, 100 },
	{ "read_den", offsetof(struct limits, read_den), 1, 100 },
	{ "open_days", offsetof(struct limits, open_days), 0, 6 },
	{ "fill_days", offsetof(struct limits, fill_days), 0, 3 },
	{ "skip_biofix_day", offsetof(struct limits, skip_biofix_day), 0, 1 },
	{ "odd_count", offsetof(struct limits, odd_count), 1, COUNT_MAX },
	{ "odd_times", offsetof(struct limits, odd_times), 1, 100 },
};

void book_lay_over(struct book *b, const char *settings)
{
	text_copy(b->over, sizeof b->over, settings);
}

/* The value laid over the book's; false: none is. */
static bool laid_over(const struct book *b, const char *name, char *out, size_t size)
{
	size_t n = strlen(name);

	for (const char *at = b->over; *at; at += *at == ';') {
		size_t bytes = strcspn(at, ";");
		if (bytes > n && strncmp(at, name, n) == 0 && at[n] == '=') {
			snprintf(out, size, "%.*s", (int)(bytes - n - 1), at + n + 1);
			return true;
		}
		at += bytes;
	}
	return false;
}

bool book_setting(
	struct book *b, const char *name, char *out, size_t size, struct err *e)
{
	struct query q;

	out[0] = '\0';
	if (laid_over(b, name, out, size))
		return true;
	query_start(&q, b, "SELECT value FROM setting WHERE name = ?1");
	query_text(&q, name);
	if (query_row(&q))
		query_get_copy(&q, out, size);
	return query_end(&q, N_("the settings cannot be read"), e);
}

bool book_setting_id(struct book *b, const char *name, int64_t *id, struct err *e)
{
	struct query q;

	*id = 0;
	query_start(&q, b, "SELECT id FROM setting WHERE name = ?1");
	query_text(&q, name);
	if (query_row(&q))
		*id = query_get(&q);
	return query_end(&q, N_("the settings cannot be read"), e);
}

static bool read_limit(
	struct book *b, const struct limit *l, struct limits *out, struct err *e)
{
	char text[NOTE_BYTES];

	if (!book_setting(b, l->name, text, sizeof text, e))
		return false;
	if (*text == '\0' ||
		text_int(text, l->lo, l->hi, (int32_t *)(void *)((char *)out + l->at)))
		return true;
	return err_set(e, ERR_INPUT,
		_("the setting %s is \"%s\"; it goes from %d to %d"), l->name, text,
		(int)l->lo, (int)l->hi);
}

bool store_limits(struct book *b, struct limits *out, struct err *e)
{
	*out = limits_usual;
	for (size_t i = 0; i < sizeof limit_table / sizeof *limit_table; i++)
		if (!read_limit(b, &limit_table[i], out, e))
			return false;
	if (out->read_num > out->read_den)
		return err_set(e, ERR_INPUT,
			_("the settings ask for %d of %d traps; the first number must "
			  "not be the larger one"),
			(int)out->read_num, (int)out->read_den);
	if (out->join_nights > out->long_nights)
		return err_set(e, ERR_INPUT,
			_("the settings join up to %d nights but call %d long; the "
			  "first number must not be the larger one"),
			(int)out->join_nights, (int)out->long_nights);
	return true;
}

/* book_put_setting lets no such value in, so that one in the book is damage. */
bool book_limits(struct book *b, struct limits *out, struct err *e)
{
	struct err why = { 0 };

	if (store_limits(b, out, &why))
		return true;
	if (why.kind != ERR_INPUT)
		return err_set(e, why.kind, "%s", why.text);
	return err_set(e, ERR_BOOK, _("the book is damaged: in the table setting, %s"),
		why.text);
}

static bool write_setting(struct book *b, const char *name, const char *value,
	const char *what, struct err *e)
{
	struct query q;

	query_start(&q, b,
		"INSERT INTO setting (name, value, changed_at, changed_by, uid) "
		"VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT (name) DO UPDATE SET "
		"value = excluded.value, changed_at = excluded.changed_at, "
		"changed_by = excluded.changed_by");
	query_text(&q, name);
	query_text(&q, value);
	query_stamp(&q);
	query_uid(&q);
	return query_end(&q, what, e);
}

bool book_put_setting(
	struct book *b, const char *name, const char *value, struct err *e)
{
	const char *what = N_("the setting is not saved");
	struct limits limits;

	if (!store_name_good(name, N_("the setting's name"), e) ||
		!store_range_good((int64_t)strlen(name), 1, NAME_BYTES - 1,
			N_("the length of the setting's name"), e) ||
		!store_text_good(value, N_("the setting"), e) ||
		!store_range_good((int64_t)strlen(value), 0, NOTE_BYTES - 1,
			N_("the length of the setting"), e) ||
		!store_begin(b, what, e))
		return false;
	return store_end(b,
		write_setting(b, name, value, what, e) && store_limits(b, &limits, e),
		what, e);
}
