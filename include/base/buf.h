/* buf.h - a text that grows. Zero-initialise; `text` is NULL until something is
 * added, and NUL-terminated ever after. */
#ifndef BASE_BUF_H
#define BASE_BUF_H

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

struct buf {
	char *text;
	size_t n, cap; /* bytes without the final NUL; bytes allocated */
};

void buf_add(struct buf *b, const char *text);
void buf_add_n(struct buf *b, const char *bytes, size_t n);
void buf_addf(struct buf *b, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));
void buf_vaddf(struct buf *b, const char *fmt, va_list args)
	__attribute__((format(printf, 2, 0)));

/* Adds `text` in a field of `cols` terminal columns: cut between characters when
 * too wide, padded with spaces on the right (cols > 0) or on the left (cols < 0).
 * Control characters and torn bytes are written as '?'. */
void buf_add_field(struct buf *b, const char *text, int cols);

/* n >= 0 with a blank between thousands. */
void buf_add_thousands(struct buf *out, int64_t n);

/* Empties and keeps the memory; frees it. */
void buf_clear(struct buf *b);
void buf_free(struct buf *b);

#endif
