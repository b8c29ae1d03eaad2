/* record.h - the record of treatments for a span, and a block's season on one page. */
#ifndef ANSWERS_RECORD_H
#define ANSWERS_RECORD_H

#include "answers/entry_changes.h"
#include "answers/log.h"
#include "answers/say.h"

/* What is asked. farm 0 = all farms; block 0 = all of them. */
struct record_ask {
	int64_t farm, block;
	int32_t from, to; /* both included */
};

struct record_row {
	const struct treatment *treatment; /* in .treatments */
	char farm[NAME_BYTES], block[NAME_BYTES], crop[NAME_BYTES], pest[CODE_BYTES];
	char when[SAY_LINE]; /* "Thu 20 August 2026, 08:10 to 10:30" */
	char area[SAY_LINE]; /* "4.2 ha, border only"; "" */
	/* fields of 7 CFR 110.3 that are not filled in: "registration number,
	 * certificate number"; "" */
	char missing[SAY_LINE * 2];
	/* by this treatment alone, others may say more */
	char entry[SAY_LINE]; /* "no entry until Thu 20 Aug 22:30" */
	char pick[SAY_LINE];  /* "earliest pick Thu 3 Sep (14 days after 20 Aug)" */
	/* for files: the same two; INSTANT_NONE, DAY_NONE: not known */
	struct instant entry_from;
	int32_t pick_from;
	/* "answered as treated 21 Jul, no treatment entered": only an answer to an
	 * alert tells of it; "" */
	char answered[SAY_LINE];
	struct entry_changes corrected; /* since it was entered, latest first */
};
struct record {
	int32_t from, to;
	char title[SAY_LINE];         /* "1 Jan 2026 to 31 Dec 2026" */
	struct treatments treatments; /* owned; some of other days */
	struct record_row *rows;      /* by farm, day, block */
	size_t n, cap;
};
/* Zero-initialise; reading again replaces. */
bool record_read(struct record *out, struct book *b, const struct log *l,
	const struct record_ask *ask, struct err *e);
void record_free(struct record *r);
/* What the record is of, which fields are asked for and where more are: one paragraph
 * each, record_says(0) .. until NULL. */
const char *record_says(size_t i);

/* A block's season by date: catches over, answers, treatments, picks, checks,
 * dispensers; first the weeks of catch as a flight line for each pest. */
struct block_line {
	int32_t day;
	enum tone tone;
	char day_text[SAY_SHORT]; /* "Thu 20 Aug" */
	char text[SAY_LINE * 4];
};
struct block_diary {
	/* "Addermoor · Pond block · 1 Jan 2026 to 21 Jul 2026" */
	char title[SAY_LINE];
	char span[SAY_LINE];      /* "1 Jan 2026 to 21 Jul 2026" */
	struct block_line *lines; /* by day */
	size_t n, cap;
	const char *says; /* below it: what the catches told as over go by */
};
/* ask->block is one of l; of its farm's season that log.today lies in. What is planned
 * after today is told as well, as far as ask->to. Catches over are judged by counts and
 * thresholds as they stand now, biofix, flight and degree-days as log_moment_at
 * says. */
bool block_diary_read(struct block_diary *out, struct book *b, const struct log *l,
	const struct record_ask *ask, struct err *e);
void block_diary_free(struct block_diary *d);

#endif
