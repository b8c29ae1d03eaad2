/* entry_hang.h - inside src/answers: how traps stand, and the visits that change it. */
#ifndef ENTRY_HANG_H
#define ENTRY_HANG_H

#include "entry_family.h"
#include "season/diary.h"

/* Reads the latest visits of those of the farm's traps (0: all) that the log lacks. */
bool traps_read_hangings(
	struct shelves *s, struct book *b, int64_t farm, struct err *e);
/* By index in the known traps: as the log has it, else as the hangings. */
struct stand traps_stand(const struct shelves *s, size_t i);
bool traps_pulled(const struct shelves *s, size_t i);
/* The lure of the latest trap for the pest on the farm, else anywhere, else the only
 * one that draws it; 0: none of these. */
int64_t traps_usual_lure(const struct known *k, int64_t farm, int64_t pest);

/* A visit within the caller's group: refused where a series would be joined or left
 * hanging in the air. today: DAY_NONE = any day is good. */
bool trap_hang(struct book *b, const struct trap *t, int32_t day, int32_t today,
	struct err *e);
/* The day of its hanging was another one; only while that is its first visit. */
bool trap_rehang(
	struct book *b, const struct trap *t, int32_t from, int32_t to, struct err *e);
bool trap_pull(struct book *b, const struct trap *t, int32_t day, int32_t today,
	struct err *e);

/* Adds "Pond block on 2026-07-21: no entry until Wed 22 Jul 06:00" when nobody might be
 * at the trap on that day: today by the hour, earlier where all of the day was
 * barred. */
bool hang_doubt(struct book *b, const struct log *l, const struct trap *t, int32_t day,
	struct buf *out, struct err *e);

#endif
