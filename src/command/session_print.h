/* session_print.h - from the pages to the printer; into a file beside where the program
 * was started where that fails. Private to the page loop. */
#ifndef COMMAND_SESSION_PRINT_H
#define COMMAND_SESSION_PRINT_H

#include "base/sizes.h"
#include "printer.h"
#include "screen/page.h"

struct session;
struct wish;

enum printed { PRINTED_SHEET, PRINTED_SEASON };

struct printing {
	struct printer job;
	struct papers papers;
	enum printed what;
	/* What the file's name begins with: "sheet-North_Side-2026-07-21". */
	char stem[NAME_BYTES + 40];
	struct message begun;   /* as it was shown */
	struct message outcome; /* to be shown once the page says nothing else; "" */
};

/* Settles the paper. False, and says so, while lp has not taken the page before. */
bool session_may_print(struct session *s);
/* The stem: what it is, the farm, a date or a year. What is no letter, digit or other
 * character above ASCII becomes _, so that the name is one on every disk. */
void session_name_print(
	struct session *s, const char *what, const char *farm, const char *when);
/* Sends what stands in printing.papers, or says why it was not made. Never waits. */
void session_print(struct session *s, bool made, const struct err *e);
/* Tells what became of it, once lp has ended. */
void session_look_at_printer(struct session *s);

/* Libraries of fonts write their complaints right across the page: stderr goes nowhere
 * from hush to unhush, which gets what hush gave. */
int session_hush(void);
void session_unhush(int kept);

/* The farm's weekly sheet, filled or to carry. */
void session_sheet(struct session *s, int64_t farm, bool blank);
/* The page of the wish's farm and season. */
void session_season_page(struct session *s, const struct wish *w);

#endif
