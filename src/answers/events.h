/* events.h - published events in degree-days since a catch. */
#ifndef ANSWERS_EVENTS_H
#define ANSWERS_EVENTS_H

#include "base/err.h"
#include "base/sizes.h"

#include <stddef.h>

struct published {
	char event[NAME_BYTES], generation[NAME_BYTES];
	double lo, hi; /* degree-days in `unit`, F or C */
	char unit;
	double base, cap; /* NAN = not stated */
	char cutoff[16];  /* "" = not stated */
	char source[SOURCE_BYTES];
};

struct published_list {
	struct published *items;
	size_t n, cap;
};

/* Those of a pest that are counted from a catch, by their sum. */
bool published_events(const char *pest, struct published_list *out, struct err *e);

#endif
