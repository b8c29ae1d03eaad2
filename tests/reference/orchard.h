/* orchard.h - an invented farm of 12 traps in four blocks, in the open sea, and a
 * neglected orchard beside it (orch12.csv, source_polygon.csv; tests run at the top of
 * the source). The values that the tests expect of it were computed beforehand with R
 * 4.2.2 (MASS 7.3-58.2, spdep 1.2-7, sf 1.0-9), SciPy 1.10.1 and NumPy 1.24.2. */
#ifndef TESTS_REFERENCE_ORCHARD_H
#define TESTS_REFERENCE_ORCHARD_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "season/ground.h"

enum { ORCHARD_TRAPS = 12, ORCHARD_CORNERS = 4 };

struct orchard {
	struct hot_catch traps[ORCHARD_TRAPS];
	struct position at[ORCHARD_TRAPS];
	int block[ORCHARD_TRAPS]; /* 'A'..'D' */
	bool border[ORCHARD_TRAPS];
	struct position outline[ORCHARD_CORNERS];
	double metres[ORCHARD_TRAPS]; /* to the outline */
};

/* Fails the test if the files are not so. */
struct orchard orchard_read(void);

/* Reads rows of numbers below the heading of a file in tests/reference; a text that is
 * no number reads as 0. Fails the test unless there are just so many. */
void orchard_rows(const char *file, size_t rows, size_t cols, double *out);

/* Fails unless got is want, to 1e-9 of it. */
void same(const char *what, size_t i, double got, double want);

#endif
