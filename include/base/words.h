/* words.h - every sentence a person sees goes through _(), so that a catalogue of
 * another language can be added without touching code. N_() marks a text that
 * stands in a table and is translated where it is shown. */
#ifndef BASE_WORDS_H
#define BASE_WORDS_H

#include "base/buf.h"

#include <libintl.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

#define _(text) words_shown(text)
#define N_(text) text
/* A word and its plural in a table, for ngettext. */
#define NG_(one, many) one, many

/* The translation; of an empty text an empty one, as tables have it. */
const char *words_shown(const char *text) __attribute__((format_arg(1)));

/* For an English word that another language says in several ways: the context, a
 * literal, tells them apart in the catalogue. NC_() stands in a table, and what it
 * gives is shown through words_in(). */
#define C_(context, text) words_in(context "\004" text)
#define NC_(context, text) context "\004" text

/* The translation of "context\004text"; where there is none, the text. What has no
 * context is translated too. */
const char *words_in(const char *key) __attribute__((format_arg(1)));

/* A word of the shipped tables (share/words.sh) as it is shown: what a pest or a lure
 * is called, a note, a published event. A text that is in none of them is given back as
 * it is; a grower's own that equals a word of them means the same and is shown like it.
 * The book and files keep the word of the table. */
const char *words_shipped(const char *text);
/* The word of a table that is shown so, in either case of letters; else the text. */
const char *words_as_shipped(const char *shown);

/* The numbers of those who read: with the decimal mark of their locale once a catalogue
 * is in use, else with a point. Files, SQL and the season know the point alone, and
 * LC_NUMERIC stays "C": what people read is printed by the two functions below.
 * Called when the language is set; it looks at the environment. */
void words_set_numbers(void);
/* From now on as without a catalogue: for an answer that a program reads. */
void words_plain(void);
/* True if the mark is a comma. */
bool words_comma(void);
/* Like snprintf and buf_addf. */
int words_print(char *out, size_t size, const char *fmt, ...)
	__attribute__((format(printf, 3, 4)));
int words_vprint(char *out, size_t size, const char *fmt, va_list args)
	__attribute__((format(printf, 3, 0)));
void words_addf(struct buf *b, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));
/* A number that a person typed, or that a column wrote, from the one mark to the other,
 * in place: to the point that columns read, and to the mark that people read. Only a
 * mark that stands alone in the text and between digits is one. */
void words_to_point(char *number);
void words_from_point(char *number);

#endif
