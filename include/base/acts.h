/* acts.h - what was done in a block and what was decided: treatments, picks, fruit
 * checks, dispensers, answers to alerts. All numbers about a product are typed from its
 * label by the user. A record begins as a copy of its blank, in which nothing is
 * entered: zeroed memory would say "re-entry after 0 hours". */
#ifndef BASE_ACTS_H
#define BASE_ACTS_H

#include "base/sizes.h"
#include "base/zone.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* One product on one block. A tank mix is several of them at the same time, a treatment
 * of several blocks one for each. Fields of the US federal record of restricted-use
 * products (7 CFR 110.3): product and registration number, total amount, place, size of
 * the area, crop or site, date, applicator with certificate number; states and other
 * countries ask for more. */
struct treatment {
	int64_t id, block, pest;    /* pest 0 = all */
	int32_t day;                /* on which it ended, local; always known */
	char job[NAME_BYTES];       /* the same for all of one tank mix or round; "" */
	bool border;                /* only the outer rows */
	struct instant from, until; /* from <= until; INSTANT_NONE: not entered */
	char product[NAME_BYTES], registration[NAME_BYTES];
	char amount[NAME_BYTES],
		amount_unit[NAME_BYTES]; /* in all, as typed: "12.5" "l" */
	int32_t area_x100;               /* hectares in hundredths; -1: not entered */
	char applicator[NAME_BYTES], certificate[NAME_BYTES];
	/* 0..8784, 0..366; -1: not entered, which never reads as 0 */
	int32_t rei_hours, phi_days;
	char note[NOTE_BYTES];
};

struct pick {
	int64_t id, block;
	int32_t day;
	bool is_done; /* else planned */
	char note[NOTE_BYTES];
};

enum fruit_part { PART_FRUIT, PART_SHOOTS, PART_COUNT };
enum tree_part { TREE_ANY, TREE_TOP, TREE_MIDDLE, TREE_LOW, TREE_GROUND, TREE_COUNT };

struct fruit_check {
	int64_t id, block, pest; /* pest 0 = not told apart */
	int32_t day;
	enum fruit_part part;
	enum tree_part where;
	int32_t looked_at; /* 1..99999; -1: not entered, in the blank alone */
	/* Stung: shallow, the larva died. -1: not told apart, all hurt ones are then in
	 * `entered`, and so are those that are both. Shoots struck are entered. */
	int32_t stung;
	int32_t entered; /* stung + entered <= looked_at; -1: in the blank alone */
	char note[NOTE_BYTES];
};

/* Dispensers hung: the block is disrupted from `up` until `down`, both included. */
struct disruption {
	int64_t id, block, pest; /* pest 0 = all */
	int32_t up, down;        /* down DAY_NONE: still up */
	int32_t per_ha_x100;     /* -1: not entered */
	char type[NAME_BYTES];   /* in general words: "hand-tied", "aerosol" */
	char note[NOTE_BYTES];
};

enum decision { DECISION_LOOKED, DECISION_TREATED, DECISION_LEFT, DECISION_COUNT };

/* What was decided about a verdict OVER. */
struct answer {
	int64_t id, block, pest, trap; /* trap 0: the block's own rule */
	int32_t day;                   /* of the alert */
	int32_t on;                    /* when it was decided */
	enum decision decision;
	char note[NOTE_BYTES];
};

/* Day, hours and all else that can be left out: not entered. */
extern const struct treatment treatment_blank;
extern const struct pick pick_blank;
extern const struct fruit_check fruit_check_blank;
extern const struct disruption disruption_blank;
extern const struct answer answer_blank;

/* Words of the files, untranslated. */
const char *fruit_part_word(enum fruit_part p); /* "fruit", "shoots" */
const char *tree_part_word(enum tree_part p); /* "", "top", "middle", "low", "ground" */
const char *decision_word(enum decision d);   /* "looked", "treated", "left" */

/* The other way, to the letter. False: no such word; out is left as it was. */
bool fruit_part_read(const char *word, enum fruit_part *out);
bool tree_part_read(const char *word, enum tree_part *out);
bool decision_read(const char *word, enum decision *out);

/* Lists own their items. Zero-initialise; items may be freed with free(). */
struct treatments {
	struct treatment *items;
	size_t n, cap;
};
struct picks {
	struct pick *items;
	size_t n, cap;
};
struct fruit_checks {
	struct fruit_check *items;
	size_t n, cap;
};
struct disruptions {
	struct disruption *items;
	size_t n, cap;
};
struct answers {
	struct answer *items;
	size_t n, cap;
};

#endif
