/* entry_bar_parts.h - what the files of entry_bar, the record and the diary share. */
#ifndef ANSWERS_ENTRY_BAR_PARTS_H
#define ANSWERS_ENTRY_BAR_PARTS_H

#include "answers/log.h"
#include "base/buf.h"
#include "season/waiting.h"

/* A block's part of the log's treatments; borrowed. */
struct block_part {
	const struct treatment *items;
	size_t n;
};
struct block_part bar_treatments(const struct log *l, int64_t block);
/* When a treatment begins; of a day whose hour was not entered the first minute. */
struct instant bar_begin(const struct log *l, const struct treatment *t);
/* True if it begins after now, and ends within the next 7 days. */
bool bar_is_coming(const struct log *l, const struct treatment *t);

/* "Thu 3 Sep" and "Wed 22 Jul 06:00", with the year where it is not that of `beside`:
 * a bar of a year would else read as one that ends today. */
void bar_say_day(int32_t day, int32_t beside, struct buf *out);
void bar_say_instant(struct instant t, int32_t beside, struct buf *out);

/* "Pond block"; "Pond block (Stone Mill)" where another farm has one of that name. */
void bar_say_place(const struct log *l, const struct block *b, struct buf *out);
/* "Brackwater oil, 20 Aug"; "the treatment of 20 Aug" when no product was entered. */
void bar_say_name(const struct treatment *t, struct buf *out);
/* "treated 20 Aug: Brackwater oil, by JR"; "border treated ..." */
void bar_say_by(const struct treatment *t, struct buf *out);
/* "no re-entry interval entered for Brackwater oil, 20 Aug": the one or both of those
 * that are asked for and lack. */
void bar_say_lacking(const struct treatment *t, bool rei, bool phi, struct buf *out);
/* "no entry until Wed 22 Jul 06:00", and what is open about it. */
void bar_say_until(const struct treatment *t, const struct waiting *w, struct buf *out);
/* "14 days after 20 Aug", or "no entry until Thu 20 Aug 22:30". w->treatment >= 0. */
void bar_say_reason(
	const struct treatment *t, const struct pick_wait *w, struct buf *out);
/* A pick of the day that w was asked for. */
void bar_say_pick(const struct treatment *t, const struct pick_wait *w, bool is_done,
	struct buf *out);
/* The earliest pick of a block without one. */
void bar_say_earliest(
	const struct treatment *t, const struct pick_wait *w, struct buf *out);

#endif
