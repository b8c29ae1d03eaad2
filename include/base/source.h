/* source.h - what moths may come from: a neglected orchard, wild hosts, bins. */
#ifndef BASE_SOURCE_H
#define BASE_SOURCE_H

#include "base/sizes.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum source_kind {
	SOURCE_ABANDONED, /* an orchard that nobody tends */
	SOURCE_WILD,      /* wild and garden trees */
	SOURCE_WOODLOT,
	SOURCE_BINS, /* bins and yards */
	SOURCE_OTHER,
	SOURCE_KIND_COUNT
};

/* Words of the files, as in base/terms.h: abandoned, wild, woodlot, bins, other. */
const char *source_kind_word(enum source_kind k);
bool source_kind_read(const char *word, enum source_kind *out);

enum {
	OUTLINE_MIN = 3, /* corners */
	OUTLINE_MAX = 100,
	OUTLINE_BYTES = 26 * OUTLINE_MAX + 1, /* of its text, with the NUL */
};

struct corner {
	double lat, lon; /* degrees, WGS 84 */
};

/* A point, an outline, both or neither: then it is only a name. */
struct source {
	int64_t id, farm;
	char name[NAME_BYTES]; /* unique within its farm */
	enum source_kind kind;
	bool has_position;
	double lat, lon;
	size_t n_outline; /* 0 = not drawn, else OUTLINE_MIN..OUTLINE_MAX */
	struct corner outline[OUTLINE_MAX];
};

/* Owns its items. */
struct sources {
	struct source *items;
	size_t n, cap;
};

/* True for -90..90 and -180..180. */
bool corner_good(struct corner c);

/* The outline as text, in the book and in files: "46.1002 14.4975; 46.1 14.499; ...",
 * latitude first, decimals after a point. Writing keeps seven decimals (1 cm); `out`
 * holds OUTLINE_BYTES. Reading takes "" as not drawn; false, and *s as it was, for
 * anything else that is no outline: other characters, another number of corners,
 * degrees out of range. */
void outline_write(const struct source *s, char *out);
bool outline_read(const char *text, struct source *s);

#endif
