/* far.h - whether a position can be right. A swapped sign or a torn decimal puts a trap
 * into another country; what lies absurdly far from the traps of its farm is taken in
 * and asked about. */
#ifndef ANSWERS_FAR_H
#define ANSWERS_FAR_H

#include "base/buf.h"
#include "base/source.h"
#include "season/ground.h"

enum {
	FAR_KM = 50
}; /* from the middle of the farm's traps: common practice, no source */

/* Where the traps of a farm are: the middle one by latitude and by longitude, which one
 * wrong position among several does not move. Owns its items. */
struct far_farm {
	struct position *items;
	size_t n, cap;
	bool is_settled; /* the middle is of all of them */
	struct position middle;
};
void far_add(struct far_farm *f, double lat, double lon);
/* Kilometres from the middle; 0 without a trap. */
double far_km(struct far_farm *f, double lat, double lon);
void far_free(struct far_farm *f);

/* The question itself, if it is to be asked: what = "trap 3". */
bool far_says(struct far_farm *f, struct position at, const char *what,
	const char *farm, struct buf *out);
/* The same about the corner or the position of a source that lies farthest off. */
bool far_source_says(struct far_farm *traps, const struct source *s, const char *farm,
	struct buf *out);

#endif
