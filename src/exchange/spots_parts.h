/* spots_parts.h - inside src/exchange: spots with a name, as a file of positions has
 * them, meet the traps of one farm. */
#ifndef EXCHANGE_SPOTS_PARTS_H
#define EXCHANGE_SPOTS_PARTS_H

#include "base/names.h"
#include "exchange/exchange.h"

struct spot {
	char name[NAME_BYTES]; /* trimmed; "" none, or one too long for any trap */
	double lat, lon;
	int64_t at; /* line of the file, or which of its features */
};

struct spots {
	struct spot *items;
	size_t n, cap;
};

/* Where they come from, and what a sentence calls them. */
struct spots_from {
	const char *name; /* of the file; borrowed */
	int64_t farm;
	bool by_feature; /* "feature 3", "the point"; else "line 3", "the waypoint" */
};

struct meeting {
	const struct spots_from *from;
	struct imported *out;
	char farm[NAME_BYTES];
	struct traps traps;     /* of the farm */
	const struct spot **of; /* by trap; NULL: the file lacks it */
	size_t n_met;
	struct names labels; /* index in traps */
};

/* Zero-initialise but for from and out; end it in any case. */
bool meeting_begin(struct meeting *m, struct book *b, struct err *e);
/* Notes a name that came twice among the problems; a point of no trap is warned of.
 * The point must outlive the meeting. */
void meeting_add(struct meeting *m, const struct spot *p);
/* ERR_INPUT: there are problems. */
bool meeting_is_right(const struct meeting *m, struct err *e);
/* Within a group: the traps get their new positions, which are counted. */
bool meeting_put(struct meeting *m, struct book *b, struct err *e);
/* What is to be told of positions far off and of traps that the file lacks. */
void meeting_tell(const struct meeting *m);
void meeting_end(struct meeting *m);

/* Notes "file, line n: ..." among the problems, or the warnings. */
void spots_problem(const struct spots_from *from, int64_t at, struct imported *out,
	const char *what);
void spots_warn(const struct spots_from *from, int64_t at, struct imported *out,
	const char *what);
/* A whole sentence among the warnings. */
void spots_warn_whole(struct imported *out, const char *sentence);

#endif
