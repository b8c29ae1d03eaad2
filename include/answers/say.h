/* say.h - the words that pages and paper share: short texts for numbers and answers.
 * All are translated; sizes include the NUL. */
#ifndef ANSWERS_SAY_H
#define ANSWERS_SAY_H

#include "answers/verdicts.h"

enum {
	SAY_SHORT = 24, /* "14.0", "30+", "under?", "lure 3 d late" */
	SAY_LINE = 160,
};

/* How much a text wants to be seen; pages turn it into ink. */
enum tone { TONE_PLAIN, TONE_TITLE, TONE_OVER, TONE_UNSURE, TONE_QUIET };

/* "7.0"; "30.0+" with a floor; "7.0?" while scouts do not agree on a count in it; "-"
 * when unread. */
void say_weekly(const struct weekly *w, char out[static SAY_SHORT]);
/* A raw visit in a narrow column: "12", "12+", "0", "-" skipped, "spoiled 3+",
 * "missing", "hung", "pulled"; with c, l, s for new card, new lure, stirred: "1 cl". */
void say_visit(const struct visit *v, char out[static SAY_SHORT]);
/* "5", "2.5" */
void say_x100(int32_t x100, char out[static SAY_SHORT]);
/* ">=5", ">=2 2w", ">3 total": the rule in a narrow column. */
void say_rule_short(const struct rule *r, char out[static SAY_SHORT]);
/* "at least 2 a week in each of 2 weeks running, any single trap" */
void say_rule(const struct rule *r, char *out, size_t size);
/* "OVER", "near", "near?", "under", "under?", "unknown", "-" */
const char *say_verdict(const struct judgement *j);
enum tone say_verdict_tone(const struct judgement *j);
/* What follows how many are near and under: ", 1 near?, 3 under?"; "" when none is. */
void say_doubted(const struct verdict_sums *s, char *out, size_t size);
/* Why it is unknown: "not read for 15 nights", "biofix not set", "3 of 5 traps not
 * read", "" when it is not. */
void say_lacking(const struct judgement *j, char *out, size_t size);
/* Doubts, comma separated: "lure 14 d overdue, card at 32 moths"; "" when none. */
void say_doubts(const struct judgement *j, char *out, size_t size);
/* What was compared with the threshold: "14.0", "4.0+" at least. */
void say_amount(const struct judgement *j, char out[static SAY_SHORT]);
/* What a row's columns cannot show: what an unknown lacks; else the total or the catch
 * per night, when the rule compares that, how many of the weeks that it wants were over
 * so far, and the doubts; "" when there is nothing. */
void say_behind(
	const struct rule *r, const struct judgement *j, char *out, size_t size);
/* "14.0 a week, threshold >=5" or what is missing. */
void say_verdict_line(
	const struct log *l, const struct verdict_row *row, char *out, size_t size);
/* "lure 3 d late", "lure due", "card due", "card full"; "" when all is fine. */
void say_service(const struct lure_state *lure, const struct card_state *card,
	char *out, size_t size);
/* "3 lures, 1 card"; "nothing"; "nothing known" where a lure is not known. */
void say_bring(const struct brings *b, char *out, size_t size);

/* "27 Jul": a day without weekday and year; "" for DAY_NONE. */
void say_day(int32_t day, char out[static SAY_SHORT]);
/* "4 Aug 2026 19:12" on the grower's clock, of a time in UTC as the book keeps it; as
 * it stands there if it is none. */
void say_time(const char *utc, char out[static SAY_SHORT]);
/* "Tue 21 July 2026 · week 30" */
void say_day_title(int32_t day, char *out, size_t size);

/* The cautions, one paragraph each: caution(0) .. until NULL. */
const char *say_caution(size_t i);
/* The same in one line, for the foot of pages and sheets. */
const char *say_caution_short(void);
/* In one line, wherever a treatment, a re-entry or a pick shows. */
const char *say_caution_acts(void);

#endif
