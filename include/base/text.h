/* text.h - UTF-8. Text is UTF-8 in memory and on disk whatever the locale, and is
 * cut only between characters. Widths need LC_CTYPE set to a UTF-8 locale. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Decodes one character at s (up to n bytes) into *cp and returns its bytes, 1..4.
 * A byte that starts no valid character (torn, overlong, surrogate, > U+10FFFF)
 * gives *cp = 0xFFFD and 1. n = 0 gives 0. */
size_t text_decode(const char *s, size_t n, uint32_t *cp);

/* Writes cp as UTF-8 with a NUL; returns its bytes (1..4). */
size_t text_encode(uint32_t cp, char out[static 5]);

/* True if the n bytes are valid UTF-8; else *bad (may be NULL) is the first bad one. */
bool text_valid(const char *s, size_t n, size_t *bad);

/* True for C0, DEL and C1 control characters, which never reach a terminal, and for
 * characters that cannot be seen but turn, join or break what stands around them: zero
 * width and marks of direction (U+200B..200F), line and paragraph separators and
 * embeddings (U+2028..202E), isolates (U+2066..2069), the byte order mark (U+FEFF). A
 * name must be what it looks like. */
bool text_control(uint32_t cp);

/* Columns a character takes on a terminal: 0 (combining), 1 or 2; control
 * characters count as 1, since they are shown as '?'. */
int text_char_cols(uint32_t cp);

/* Columns of a whole text. */
int text_cols(const char *s);

/* Bytes of the longest start of s that fits in cols columns, cut between characters. */
size_t text_fit(const char *s, int cols);

/* Rounded to hundredths, for "%.2f": what rounds to zero has no minus. */
double text_hundredths(double x);

/* Copies s into out of `size` bytes, cut between characters. True if all fitted. */
bool text_copy(char *out, size_t size, const char *s);

/* Makes a text that has more than `size` bytes with its NUL shorter, in place: paths in
 * it, the longest first, lose their middle, "/home/ann/...orchard/book.db", so that
 * what is said behind them is not what is cut. What is still too long stays so. */
void text_shorten_paths(char *s, size_t size);

/* Drops spaces and tabs at both ends, in place. */
void text_trim(char *s);

/* Drops the last character with the combining ones on it, in place. */
void text_erase_last(char *s);

/* Reads a whole text as a number lo..hi; false otherwise (empty, sign, blanks, 1e3). */
bool text_int(const char *s, int32_t lo, int32_t hi, int32_t *out);

/* Takes "46.25" or "-8" off *text: 1 to 3 digits, 15 decimals at most; nothing else of
 * what strtod would take. False: *text stays. */
bool text_degrees(const char **text, double *out);

/* Reads "5", "5.2" or "5.25" as hundredths, 0..max_x100; a third decimal is refused. */
bool text_x100(const char *s, int32_t max_x100, int32_t *out);

#endif
