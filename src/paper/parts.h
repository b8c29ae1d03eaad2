/* parts.h - inside src/paper: what the two forms of the sheet put on its pages. */
#ifndef PAPER_PARTS_H
#define PAPER_PARTS_H

#include "pager.h"
#include "paper/sheet.h"

enum { SHEET_BELOW = 4 }; /* blanks before what is said below a row */

void sheet_filled(const struct sheet *s, struct pager *p);
void sheet_blank(const struct sheet *s, struct pager *p);

/* A rule across the page, with its newline. */
void sheet_rule(struct buf *out);
/* What to bring, in a chunk of its own. */
void sheet_bring(const struct sheet *s, struct pager *p);
/* Who may enter and pick which block from when; nothing when nothing is barred. */
void sheet_clocks(const struct sheet *s, struct pager *p);
/* Traps (unless they say so themselves, further down), block means and hot blocks
 * needing attention; without traps nothing when there are none. */
void sheet_needs(const struct sheet *s, bool traps, struct pager *p);
/* In place of a farm's traps, when it has none. */
const char *sheet_no_traps(void);
void sheet_none(struct pager *p);

/* Words of the text and the PDF, added to *out (sheet_words.c). */

/* "", "b", " d" or "bd": border, disrupted. */
const char *sheet_marks(const struct sheet_trap *t);
/* The heading's two lines; what the marks mean, for the foot. */
void sheet_say_title(const struct sheet *s, bool blank, struct buf *out);
void sheet_say_day(
	const struct sheet *s, const struct sheet_form *form, struct buf *out);
const char *sheet_legend(bool blank);
void sheet_say_bring(const struct sheet *s, struct buf *out);
void sheet_say_hot(const struct hot_line *hot, struct buf *out);
/* "CM 1 mg since 7 Jul" */
void sheet_say_lure(const struct sheet_trap *t, struct buf *out);
/* "OVER >=5", as of the last reading; "timing" alone decides nothing; "" where no
 * threshold is set. */
void sheet_say_verdict(const struct sheet_trap *t, struct buf *out);
/* Traps counted and moths; traps and block means over and unknown. */
void sheet_say_counted(const struct sheet *s, struct buf *out);
void sheet_say_standing(const struct sheet *s, struct buf *out);
/* That entry is barred, what is amiss (unless it stands elsewhere) and what is due,
 * after what *out holds. */
void sheet_concerns(const struct sheet_trap *t, bool amiss, struct buf *out);
/* Lure, card, total, concerns: what stands below a trap's row in the filled sheet. */
void sheet_say_trap(const struct sheet_trap *t, struct buf *out);
/* How many traps were read, the highest, what the block says. */
void sheet_say_block(const struct sheet_block *b, struct buf *out);
const char *sheet_block_verdict(const struct sheet_block *b);
/* The cells of a trap and of a block mean that need attention, six each, and of a block
 * in the table of all, seven. */
void sheet_need_trap(const struct sheet_trap *t, const char **cells);
void sheet_need_block(const struct sheet_block *b, const char **cells);
void sheet_block_cells(const struct sheet_block *b, const char **cells);

#endif
