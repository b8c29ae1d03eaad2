/* lines.h - taking printed text apart. */
#ifndef TESTS_PAPER_LINES_H
#define TESTS_PAPER_LINES_H

#include "base/buf.h"
#include "base/text.h"

#include <locale.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

/* Widths need a UTF-8 locale. */
static inline int lines_setup(void **state)
{
	(void)state;
	return setlocale(LC_CTYPE, "C.UTF-8") ? 0 : -1;
}

/* Columns of the widest line; form feeds take none. */
static inline int lines_widest(const char *text)
{
	int widest = 0;

	while (*text) {
		struct buf line = { 0 };
		size_t n = strcspn(text, "\n\f");

		buf_add_n(&line, text, n);
		if (text_cols(line.text) > widest)
			widest = text_cols(line.text);
		buf_free(&line);
		text += n + (text[n] != '\0');
	}
	return widest;
}

static inline size_t lines_count(const char *text, const char *what)
{
	size_t n = 0;

	for (; (text = strstr(text, what)); text += strlen(what))
		n++;
	return n;
}

/* The i-th part (from 0) of a text divided by form feeds; owned; NULL: no such part. */
static inline char *lines_page(const char *text, size_t i)
{
	for (; i > 0 && text; i--) {
		text = strchr(text, '\f');
		text = text ? text + 1 : NULL;
	}
	return text ? strndup(text, strcspn(text, "\f")) : NULL;
}

#endif
