/* traps_parts.h - the traps file in pieces: its row, farms and blocks, diary. */
#ifndef TRAPS_PARTS_H
#define TRAPS_PARTS_H

#include "exchange/kinds.h"

/* What the rows of a block say about it, and which line said it first. */
struct block_in {
	struct block block, said;
	bool in_file;
	struct {
		int64_t condition, crop, variety, area;
	} line; /* 0: no row says it */
};

struct trap_in {
	struct trap trap;
	int64_t line;         /* in this file; 0: not in it */
	int32_t hung, pulled; /* visits that it made; DAY_NONE */
};

struct trap_state {
	struct names farms;  /* id */
	struct names blocks; /* in a farm: index in block */
	struct names traps;  /* in a farm: index in trap */
	struct known known;
	struct block_in *block;
	size_t n_blocks, cap_blocks;
	struct trap_in *trap;
	size_t n_traps, cap_traps;
	int new_farms, new_blocks;
	int no_lure;          /* traps without a lure kind */
	int64_t no_lure_line; /* the first of them */
};

/* Finds or makes the farm and the block of a row and hears what it says about them.
 * NULL: a problem was noted (e->kind is ERR_NONE) or the book failed. */
struct block_in *traps_block(struct taking *t, const struct trap_row *r, struct err *e);
/* Writes what the rows said of blocks that were there before. */
bool traps_blocks_finish(struct taking *t, struct err *e);

/* Writes the visits that `hung` and `pulled` stand for, unless the diary has one on
 * that day; in->hung and in->pulled are the days of those that were. */
bool traps_diary(
	struct taking *t, const struct trap_row *r, struct trap_in *in, struct err *e);
/* Looks whether they go with what the diaries hold. */
bool traps_diary_finish(struct taking *t, struct err *e);

/* Asks about each trap of the file that lies far from the others of its farm. */
void traps_far(struct taking *t);

bool traps_give(struct giving *g, struct err *e);

#endif
