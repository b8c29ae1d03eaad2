/* manner.h - the units that a form shows and reads. */
#ifndef ANSWERS_MANNER_H
#define ANSWERS_MANNER_H

#include "book/book.h"

#include <stdbool.h>

/* Set once from the book's settings; how a form shows and reads. */
struct manner {
	bool acres;      /* areas in acres, else hectares */
	bool feet;       /* distances in feet, else metres */
	bool fahrenheit; /* what a new station's days are typed in */
};

/* The book's manner, out of its settings. */
bool manner_read(struct manner *out, struct book *b, struct err *e);

#endif
