/* fuzz.h - what the targets share: a folder that is gone afterwards, books in it, files
 * out of bytes, and what must hold of every complaint. */
#ifndef TESTS_FUZZ_FUZZ_H
#define TESTS_FUZZ_FUZZ_H

#include "book/book.h"
#include "exchange/exchange.h"

#include <stdlib.h>

#define FUZZ_TODAY "2026-07-21"

int LLVMFuzzerInitialize(int *argc, char ***argv);
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n);

static inline void must(bool holds)
{
	if (!holds)
		abort();
}

int32_t fuzz_today(void);

/* A path in the folder; HOME and TMPDIR lie in it, PATH leads to
 * nothing, so that no printer is found. */
enum { FUZZ_PATH = 256 };
void fuzz_path(char out[static FUZZ_PATH], const char *name);
/* What is written to the present folder goes there until the second call. */
void fuzz_enter(void);
void fuzz_leave(void);

/* The invented season of the demo as a file, its path until the end; of each kind at
 * most so many rows. One size in a process. */
enum { FUZZ_WHOLE = 9999, FUZZ_SMALL = 60 };
const char *fuzz_season(int rows);
/* A book of an earlier time out of tests/book: the same bytes in every process. */
const char *fuzz_dump(int version);
void fuzz_copy(const char *from, const char *to);
bool fuzz_same(const char *path, const char *other);

/* The bytes as a file; fclose it, then free *copy. */
FILE *fuzz_file(const uint8_t *data, size_t n, char **copy);

/* A sentence that can be shown, or success without one. */
void fuzz_said(bool ok, const struct err *e);
void fuzz_listed(const struct imported *i, bool ok, const struct err *e);

/* Imports the bytes; true if they were taken in. *changed: the book is another now. */
bool fuzz_import(struct book *b, const struct kind *k, const uint8_t *data, size_t n,
	bool *changed);
/* The kind as a file, the caller's to free. */
char *fuzz_export(struct book *b, const struct kind *k);
/* book_check finds nothing. */
void fuzz_sound(struct book *b);

#endif
