/* command.h - one file per command, thin: read the arguments, open the book, ask,
 * print. Results go to stdout, complaints travel in *e to main. */
#ifndef COMMAND_COMMAND_H
#define COMMAND_COMMAND_H

#include "base/buf.h"
#include "base/err.h"
#include "book/book.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What main found out once and everybody below is told. */
struct context {
	const char *book_path;
	int32_t today;
	bool today_given; /* by --today; else the calendar's */
	int32_t minute;   /* of that day, 1..1440; 0: the one that the clock shows */
	const char *settings; /* laid over those of the book; NULL: none */
	const char *who;      /* scout's initials or login name, beside every change */
	bool out_is_terminal; /* stdin and stdout both */
	bool utf8;            /* the terminal shows UTF-8 */
};

struct command {
	const char *name;
	const char *synopsis; /* arguments, untranslated: "[--farm F] [--pest P]" */
	const char *help;     /* N_(): one line */
	const char *example;  /* a whole command line that works on the demo */
	/* argv[0] is the command's name. */
	bool (*run)(const struct context *ctx, int argc, char **argv, struct err *e);
};

/* Every command, in the order of the help; ends with a NULL name. */
extern const struct command commands[];

bool command_week(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_due(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_sheet(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_print(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_import(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_export(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_check(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_merge(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_backup(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_restore(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_flight(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_hotspots(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_degree_days(
	const struct context *ctx, int argc, char **argv, struct err *e);
bool command_record(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_season(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_proof(const struct context *ctx, int argc, char **argv, struct err *e);
bool command_completion(
	const struct context *ctx, int argc, char **argv, struct err *e);
bool command_demo(const struct context *ctx, int argc, char **argv, struct err *e);

/* The pages on the book of ctx, until the person leaves. `notice` (NULL: none) stands
 * in the title of every page ("demo: invented data"). */
bool pages_run(const struct context *ctx, const char *notice, struct err *e);
/* The same within pages: the terminal is open and stays so. */
bool pages_within(const struct context *ctx, const char *notice, struct err *e);
/* The demo's invented book in those pages, on its own day; it is gone afterwards. */
bool demo_open(const struct context *ctx,
	bool (*pages)(const struct context *ctx, const char *notice, struct err *e),
	struct err *e);

enum { ARGS_REST = 2 };

/* One option of a command. */
struct option_row {
	const char *name;   /* without the dashes */
	const char **value; /* takes a value; or */
	bool *flag;         /* takes none */
	char letter;        /* short form, 0 = none */
};

/* What a command takes behind its name, and what was given of it. */
struct args {
	const struct option_row *rows; /* the last is all zero; NULL: no option */
	size_t max;                    /* 0..ARGS_REST words beside the options */
	const char *rest[ARGS_REST];   /* those words; NULL: not given */
	size_t n_rest;
};

/* Reads argv[1..]: options anywhere, `--` ends them. `--help` prints the command's
 * synopsis, help and example to stdout, and gives false with e->kind = ERR_NONE: return
 * false at once. rest and n_rest are to be zero-initialised. */
bool args_read(int argc, char **argv, struct args *a, struct err *e);

/* Writes the text to stdout, whole; a failed write is an error (with an empty sentence
 * when the reader just went away, as `head` does). Empties it. */
bool out_print(struct buf *text, struct err *e);
/* The same for a text that people read: in ASCII unless `utf8`. */
bool out_text(struct buf *text, bool utf8, struct err *e);
/* Adds a sentence and a newline; control characters in it show as '?'. */
void out_sentence(struct buf *out, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));
/* Columns of the terminal on stdout, 40..400; 80 when it is none. */
int out_cols(void);
/* Writes it to a file: beside its target, synced, renamed over a plain file; a link or
 * a folder at the target is refused. */
bool out_file(const char *path, const struct buf *text, struct err *e);

/* Opens the book of ctx to read; ERR_NOT_FOUND names the path and how to begin. */
struct book *open_to_read(const struct context *ctx, struct err *e);

#endif
