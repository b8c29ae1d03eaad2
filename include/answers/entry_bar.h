/* entry_bar.h - blocks that nobody may enter now, and what may be picked when. What is
 * not known is said to be so, never that it is free. */
#ifndef ANSWERS_ENTRY_BAR_H
#define ANSWERS_ENTRY_BAR_H

#include "answers/log.h"
#include "answers/say.h"
#include "season/waiting.h"

/* How a block stands at log_now. */
struct bar {
	int64_t farm, block;
	char block_name[NAME_BYTES];
	/* The same with its farm, "Pond block (Stone Mill)", where another farm has a
	 * block of that name. */
	char place[NAME_BYTES * 2 + 4];
	struct waiting waiting; /* BARRED or UNKNOWN */
	/* "no entry until Wed 22 Jul 06:00"; "whether it may be entered is not known:
	 * no re-entry interval entered for Brackwater oil, 21 Jul" */
	char text[SAY_LINE * 2];
	char brief[SAY_SHORT * 3]; /* "no entry till Wed 06:00"; "entry not known" */
	char until[SAY_SHORT * 2]; /* "Wed 22 Jul 06:00"; "" when not known */
	char by[SAY_LINE];         /* "treated 21 Jul: Brackwater oil, by JR"; "" */
};
struct bars {
	struct bar *items; /* those that are not free, by farm and block name */
	size_t n, cap;
	/* Blocks with a treatment in the next 7 days that begins while they are free,
	 * which they are now or will be before it: `until` is its begin, `waiting`
	 * FREE. */
	struct bar *coming;
	size_t n_coming, cap_coming;
};
/* farm 0 = all. Zero-initialise; each call replaces what the list held. */
void bars_of(const struct log *l, int64_t farm, struct bars *out);
void bars_free(struct bars *b);
/* The block's, or NULL when it is free. */
const struct bar *bars_find(const struct bars *b, int64_t block);
/* "no entry: Pond block until Wed 22 Jul 06:00; entry not known: Old Kiln; treatment
 * planned: Top Pears from Thu 23 Jul 18:00"; "" when all of the farm's are free and
 * stay so. What does not fit is counted: "and 2 more blocks". */
void bars_say(const struct bars *b, int64_t farm, char *out, size_t size);

/* The same for one line of a narrow page: "Pond block: no entry till Wed 06:00, and 1
 * more". Returns how many blocks of the farm are not free. */
int bars_say_brief(const struct bars *b, int64_t farm, char *out, size_t size);

/* A planned or done pick beside the treatments before it. */
struct pick_row {
	int64_t id, farm, block; /* id 0: no pick, the block as it stands today */
	int32_t day;
	bool is_done;
	struct pick_wait wait;
	char block_name[NAME_BYTES], farm_name[NAME_BYTES];
	char place[NAME_BYTES * 2 + 4]; /* as of a bar */
	char day_text[SAY_SHORT];       /* "Fri 28 Aug" */
	/* "too early: earliest pick Thu 3 Sep (14 days after 20 Aug)"; "not barred from
	 * Thu 3 Sep on (14 days after 20 Aug)"; "not known: no preharvest interval
	 * entered for ..."; without a pick "earliest pick Thu 3 Sep (...)", or "pick
	 * not known, not before Thu 3 Sep (...): no preharvest interval entered" */
	char says[SAY_LINE * 2];
	char by[SAY_LINE]; /* the treatment that decides, as above; "": none */
	/* TONE_OVER: a pick too early; TONE_UNSURE: not known, or barred */
	enum tone tone;
};
/* Picks from 14 days before today on, by day; then a row without a pick for each block
 * that may not be picked today, or of which that is not known. */
struct pick_rows {
	struct pick_row *items;
	size_t n, cap;
};
void pick_rows_of(const struct log *l, int64_t farm, struct pick_rows *out);
void pick_rows_free(struct pick_rows *p);

/* All of that in sentences: "Pond block: no entry until Wed 22 Jul 06:00", "Pond
 * block: earliest pick ...", "Pond block, pick planned for Fri 28 Aug: too early: ...".
 */
struct block_clock {
	int64_t farm, block;
	enum tone tone;
	char text[SAY_LINE * 3];
};
/* Treatments of the next 7 days are told as well: "Pond block: from Wed 22 Jul 14:00
 * on, no entry until Thu 23 Jul 02:00". By farm and block name. Picks that were done
 * and allowed are left out. */
struct block_clocks {
	struct block_clock *items;
	size_t n, cap;
	const char *caution; /* that goes below them; "" without any */
};
void block_clocks_of(const struct log *l, int64_t farm, struct block_clocks *out);
void block_clocks_free(struct block_clocks *c);

/* Picks of the block that the treatment bars, or of which it leaves open whether they
 * are allowed, before it is saved (t->id 0) or changed: a sentence each, by day.
 * Returns how many there are, which may be more than `most`. */
size_t treatment_bars_picks(const struct log *l, const struct treatment *t,
	char (*out)[SAY_LINE * 2], size_t most);

#endif
