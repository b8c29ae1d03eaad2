/* odd.h - random values that files like to trip over. */
#ifndef TESTS_EXCHANGE_ODD_H
#define TESTS_EXCHANGE_ODD_H

#include "desk.h"

#include "book/acts.h"

static uint64_t state_of_dice;

/* Knuth's MMIX generator: enough bits for a position to six decimals. */
static inline int dice(int n)
{
	state_of_dice = state_of_dice * 6364136223846793005u + 1442695040888963407u;
	return (int)((state_of_dice >> 33) % (uint64_t)n);
}

/* A text of up to size - 1 bytes without blanks at its ends; never empty. */
static inline void odd_text(char *out, size_t size)
{
	static const char *const bits[] = { "=", "+", "-", "@", "'", "\"", ",", ";",
		"\\", "%s", "a", "B", "7", "0.5", " ", "  ", "#", "NULL", "\u00e9",
		"\u6843", "e\u0301", "\U0001F98B", "<b>", "$(x)", "--", "\u00a0",
		"''=" };
	char text[512] = "";
	int n = 1 + dice(12);

	for (int i = 0; i < n; i++)
		strcat(text, bits[dice((int)(sizeof bits / sizeof *bits))]);
	text_trim(text);
	text_copy(out, size, text);
	text_trim(out);
	if (!*out)
		text_copy(out, size, "x");
}

/* An odd name with a number, so that no two are the same. */
static inline void odd_name(char *out, size_t size, int number)
{
	char tail[16];

	snprintf(tail, sizeof tail, "/%d", number);
	odd_text(out, size - strlen(tail));
	strcat(out, tail);
}

static inline void must(bool ok, const struct err *e)
{
	if (!ok)
		fail_msg("%s", e->text);
}

/* Moments of any offset, and texts that are left out now and then. */
static inline void odd_treatment(struct book *b, int64_t block, int64_t pest)
{
	struct treatment t = treatment_blank;
	struct err e = { 0 };

	t.block = block;
	t.pest = dice(2) ? pest : 0;
	t.until.minute = (int64_t)day_of(TODAY) * MINUTES_A_DAY - dice(999999);
	t.until.east = dice(1681) - 840;
	t.day = instant_day(t.until);
	t.from = t.until;
	t.from.minute -= dice(600);
	t.from.east += t.from.east > 0 ? -60 : 60;
	if (dice(3) == 0)
		t.until = t.from = treatment_blank.until;
	t.border = dice(2);
	odd_text(t.product, sizeof t.product);
	odd_text(t.registration, sizeof t.registration);
	odd_text(t.amount, sizeof t.amount);
	odd_text(t.amount_unit, sizeof t.amount_unit);
	odd_text(t.applicator, sizeof t.applicator);
	odd_text(t.certificate, sizeof t.certificate);
	odd_text(t.job, sizeof t.job);
	if (dice(2))
		odd_text(t.note, sizeof t.note);
	t.area_x100 = dice(900) - 1;
	t.rei_hours = dice(99) - 1;
	t.phi_days = dice(99) - 1;
	must(book_put_treatment(b, &t, &e), &e);
}

/* One of each kind in the trap's block; the i-th of it. */
static inline void odd_acts(struct book *b, const struct trap *trap, int i)
{
	int32_t day = day_of(TODAY) - dice(99), up = day - 999 * i;
	struct pick p = { 0, trap->block, day, dice(2), "" };
	struct fruit_check c = { 0, trap->block, trap->pest, day,
		(enum fruit_part)dice(PART_COUNT), (enum tree_part)dice(TREE_COUNT),
		100, dice(51) - 1, dice(51), "" };
	struct disruption d = { 0, trap->block, trap->pest, up, up + dice(99),
		dice(9) ? dice(9999999) + 1 : -1, "", "" };
	struct answer a = { 0, trap->block, trap->pest, dice(2) ? trap->id : 0, day,
		day_of(TODAY), (enum decision)dice(DECISION_COUNT), "" };
	struct err e = { 0 };

	odd_text(p.note, sizeof p.note);
	odd_text(d.type, sizeof d.type);
	odd_text(a.note, sizeof a.note);
	odd_treatment(b, trap->block, trap->pest);
	must(book_put_pick(b, &p, &e), &e);
	must(book_put_fruit_check(b, &c, &e), &e);
	must(book_put_disruption(b, &d, &e), &e);
	must(book_put_answer(b, &a, &e), &e);
}

#endif
