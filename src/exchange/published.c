#include "base/shipped.h"
#include "base/words.h"
#include "exchange/kinds.h"

#include <ctype.h>
#include <errno.h>
#include <string.h>
#include <strings.h>

static bool in_word(char ch)
{
	return isalnum((unsigned char)ch) || (ch & 0x80);
}

/* True if the text stands in `all` as whole words: CM1 is not in "CM10". */
static bool holds_words(const char *all, const char *text)
{
	size_t n = strlen(text);

	if (!n)
		return true;
	for (const char *at = all; *at; at++) {
		if (strncasecmp(at, text, n) != 0)
			continue;
		bool begins = at == all || !in_word(at[-1]) || !in_word(*text);
		if (begins && (!in_word(at[n]) || !in_word(text[n - 1])))
			return true;
	}
	return false;
}

static bool is(const char *value, const char *wanted)
{
	return !wanted || strcasecmp(value, wanted) == 0;
}

static bool wanted(void *arg, const void *row)
{
	const struct published *f = arg;
	const struct threshold_row *r = row;

	return is(r->pest, f->pest) &&
	       (is(r->crop, f->crop) || is(words_shipped(r->crop), f->crop)) &&
	       is(column_condition(r->condition), f->condition) &&
	       (!f->source || holds_words(r->source, f->source));
}

bool exchange_take_published(struct book *b, const struct published *filter,
	int32_t today, struct imported *out, struct err *e)
{
	const struct shipped *file = shipped_find("thresholds.csv");
	struct published f = *filter;
	struct import_from from = { .today = today, .wanted = wanted, .arg = &f };

	if (!file)
		return err_set(e, ERR_NOT_FOUND,
			_("this program carries no published thresholds"));
	from.name = file->name;
	from.file = fmemopen((void *)(uintptr_t)file->text, file->n, "r");
	if (!from.file)
		return err_set(e, ERR_BOOK, _("%s: cannot be read: %s"), file->name,
			strerror(errno));
	bool ok = exchange_import(b, &kind_thresholds, &from, out, e);
	fclose(from.file);
	if (ok && out->n_new + out->n_same == 0)
		return err_set(e, ERR_NOT_FOUND,
			_("no published threshold is of that kind; leave out one of "
			  "--pest, --crop, --condition, --source to see more"));
	return ok;
}
