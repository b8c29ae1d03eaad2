#include "answers/settings.h"

#include "answers/entry_rules.h"
#include "base/buf.h"
#include "base/text.h"
#include "base/words.h"

#include <string.h>

enum { OVER_BYTES = 1024 }; /* of book_lay_over */
enum { ITEM_BYTES = NAME_BYTES + NOTE_BYTES };

static const struct setting_facts *facts_of(const char *name)
{
	for (int i = 0; i < SETTING_COUNT; i++)
		if (strcmp(setting_facts[i].name, name) == 0)
			return &setting_facts[i];
	return NULL;
}

static bool word_fault(const struct setting_facts *f, const char *value, struct err *e)
{
	struct buf list = { 0 };

	for (size_t i = 0; f->words[i]; i++) {
		if (strcmp(f->words[i], value) == 0) {
			buf_free(&list);
			return true;
		}
		buf_addf(&list, "%s%s", i ? ", " : "", f->words[i]);
	}
	err_set(e, ERR_USAGE,
		_("MOTHTALLY_SETTINGS: %s is \"%s\"; it takes one of: %s"), f->name,
		value, list.text);
	buf_free(&list);
	return false;
}

static bool value_good(const struct setting_facts *f, const char *value, struct err *e)
{
	int32_t n;

	if (f->words)
		return word_fault(f, value, e);
	if (f->lo == 0 && f->hi == 0)
		return strlen(value) < SCOUT_BYTES ||
		       err_set(e, ERR_USAGE,
			       _("MOTHTALLY_SETTINGS: %s is too long; it has at most "
				 "%d letters"),
			       f->name, SCOUT_BYTES - 1);
	return text_int(value, f->lo, f->hi, &n) ||
	       err_set(e, ERR_USAGE,
		       _("MOTHTALLY_SETTINGS: %s is \"%s\"; it goes from %d to %d"),
		       f->name, value, (int)f->lo, (int)f->hi);
}

/* One "name=value" of n bytes. */
static bool item_good(const char *text, size_t n, struct err *e)
{
	char item[ITEM_BYTES] = "";

	if (n < sizeof item)
		memcpy(item, text, n);
	char *equals = strchr(item, '=');
	if (!equals)
		return err_set(e, ERR_USAGE,
			_("MOTHTALLY_SETTINGS wants name=value, with a ; between two, "
			  "not \"%.60s\""),
			text);
	*equals = '\0';
	const struct setting_facts *f = facts_of(item);
	if (!f)
		return err_set(e, ERR_USAGE,
			_("MOTHTALLY_SETTINGS: \"%s\" is no setting; man 5 mothtally "
			  "names them"),
			item);
	return value_good(f, equals + 1, e);
}

static bool all_good(const char *over, struct err *e)
{
	if (strlen(over) >= OVER_BYTES)
		return err_set(e, ERR_USAGE,
			_("MOTHTALLY_SETTINGS is too long: it has at most %d letters"),
			OVER_BYTES - 1);
	if (!text_valid(over, strlen(over), NULL))
		return err_set(e, ERR_USAGE, _("MOTHTALLY_SETTINGS is no valid text"));
	while (*over) {
		size_t n = strcspn(over, ";");
		if (n > 0 && !item_good(over, n, e))
			return false;
		over += n + (over[n] == ';');
	}
	return true;
}

/* Numbers that bound each other do so with those of the book. */
static bool lay_over(struct book *b, const char *over, struct err *e)
{
	struct limits limits;
	struct err why = { 0 };

	book_lay_over(b, over);
	if (book_limits(b, &limits, &why))
		return true;
	book_lay_over(b, "");
	if (!book_limits(b, &limits, e))
		return false;
	const char *end = strrchr(why.text, ',');
	return err_set(e, ERR_USAGE, _("MOTHTALLY_SETTINGS:%s"),
		end && why.kind == ERR_BOOK ? end + 1 : why.text);
}

bool settings_apply(struct book *b, const char *over, struct err *e)
{
	char date[NOTE_BYTES], week[NOTE_BYTES];

	if (over && *over && (!all_good(over, e) || !lay_over(b, over, e)))
		return false;
	if (!book_setting(b, "date_style", date, sizeof date, e) ||
		!book_setting(b, "week_start", week, sizeof week, e))
		return false;
	day_set_style((struct day_style){ .month_first = strcmp(date, "month-day") == 0,
		.sunday_first = strcmp(week, "sunday") == 0 });
	return true;
}
