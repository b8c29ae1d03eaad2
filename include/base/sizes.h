/* sizes.h - how long the grower's words may be, and how high counts may go. */
#ifndef BASE_SIZES_H
#define BASE_SIZES_H

enum {
	COUNT_MAX = 9999, /* insects on one trap at one visit */
	COUNT_NONE = -1,
	NIGHTS_MAX = 366,
	NAME_BYTES = 48, /* farm, block, trap, crop, variety, kind; with its NUL */
	SCOUT_BYTES = 24,
	NOTE_BYTES = 240,
	SOURCE_BYTES = 240,
	CODE_BYTES = 12, /* pest code, "CM" */
};

#endif
