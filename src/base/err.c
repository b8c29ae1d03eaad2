#include "base/err.h"

#include "base/text.h"
#include "base/words.h"

#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

/* A value that is quoted in a sentence may hold anything: what is no text and what
 * would steer a terminal becomes '?'. The result is never longer than `from`. */
static void clean(char *out, const char *from, size_t n)
{
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(from + at, n - at, &cp);
		if (text_control(cp) || (cp == 0xFFFD && step == 1)) {
			*out++ = '?';
			continue;
		}
		for (size_t i = 0; i < step; i++)
			*out++ = from[at + i];
	}
	*out = '\0';
}

enum { SAID_BYTES = 6144 }; /* a sentence with the longest path there is */

bool err_set(struct err *e, enum err_kind kind, const char *fmt, ...)
{
	char all[SAID_BYTES]; /* apart: an argument may be e->text itself */
	char cut[sizeof e->text];
	va_list args;

	if (!e)
		return false;
	va_start(args, fmt);
	int wrote = words_vprint(all, sizeof all, fmt, args);
	va_end(args);
	if (wrote < 0)
		all[0] = '\0';
	text_shorten_paths(all, sizeof cut);
	text_copy(cut, sizeof cut, all);
	clean(e->text, cut, strlen(cut));
	e->kind = kind;
	return false;
}

int err_status(enum err_kind kind)
{
	static const int status[] = {
		[ERR_NONE] = 0,
		[ERR_USAGE] = 2,
		[ERR_INPUT] = 3,
		[ERR_NOT_FOUND] = 4,
		[ERR_BOOK] = 5,
	};

	return status[kind];
}
