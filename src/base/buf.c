#include "base/buf.h"

#include "base/mem.h"
#include "base/text.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Room for n more bytes and the NUL. */
static char *room(struct buf *b, size_t n)
{
	size_t need = n < SIZE_MAX - b->n ? b->n + n + 1 : SIZE_MAX;

	if (need > b->cap)
		b->text = mem_grow(b->text, &b->cap, need, 1);
	return b->text + b->n;
}

void buf_add_n(struct buf *b, const char *bytes, size_t n)
{
	char *end = room(b, n);

	if (n)
		memcpy(end, bytes, n);
	end[n] = '\0';
	b->n += n;
}

void buf_add(struct buf *b, const char *text)
{
	buf_add_n(b, text, strlen(text));
}

void buf_vaddf(struct buf *b, const char *fmt, va_list args)
{
	va_list again;

	va_copy(again, args);
	int n = vsnprintf(NULL, 0, fmt, args);
	if (n >= 0) {
		vsnprintf(room(b, (size_t)n), (size_t)n + 1, fmt, again);
		b->n += (size_t)n;
	}
	va_end(again);
}

void buf_addf(struct buf *b, const char *fmt, ...)
{
	va_list args;

	va_start(args, fmt);
	buf_vaddf(b, fmt, args);
	va_end(args);
}

static void add_spaces(struct buf *b, int n)
{
	if (n <= 0)
		return;
	char *end = room(b, (size_t)n);
	memset(end, ' ', (size_t)n);
	end[n] = '\0';
	b->n += (size_t)n;
}

/* Control characters are shown as '?', as everywhere that text is laid out. */
static void add_shown(struct buf *b, const char *text, size_t n)
{
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(text + at, n - at, &cp);
		if (text_control(cp) || (cp == 0xFFFD && step == 1))
			buf_add_n(b, "?", 1);
		else
			buf_add_n(b, text + at, step);
	}
}

void buf_add_field(struct buf *b, const char *text, int cols)
{
	int width = cols < 0 ? -cols : cols;
	size_t n = text_fit(text, width);
	int used = 0;

	for (size_t at = 0; at < n;) {
		uint32_t cp;
		at += text_decode(text + at, n - at, &cp);
		used += text_char_cols(cp);
	}
	if (cols < 0)
		add_spaces(b, width - used);
	add_shown(b, text, n);
	if (cols > 0)
		add_spaces(b, width - used);
}

void buf_clear(struct buf *b)
{
	b->n = 0;
	if (b->text)
		b->text[0] = '\0';
}

void buf_free(struct buf *b)
{
	free(b->text);
	*b = (struct buf){ 0 };
}

void buf_add_thousands(struct buf *out, int64_t n)
{
	if (n >= 1000) {
		buf_add_thousands(out, n / 1000);
		buf_addf(out, " %03d", (int)(n % 1000));
	} else {
		buf_addf(out, "%d", (int)n);
	}
}
