/* papers.h - inside src/command: what is set on paper, on its way to a file, to stdout
 * or to the printer. */
#ifndef COMMAND_PAPERS_H
#define COMMAND_PAPERS_H

#include "base/buf.h"
#include "command/command.h"
#include "paper/size.h"

struct papers {
	/* What the command line says; NULL: not given. */
	const char *paper, *format, *file;
	bool to_printer; /* set by whoever calls: no file may be named */
	bool is_pdf;     /* known once papers_choose was called */
	enum paper size; /* and papers_settle */
	/* What was made. */
	struct buf bytes;              /* owned */
	char title[DAY_TEXT_SIZE * 2]; /* of the printer's job */
	int without_font; /* characters that stand as boxes: see paper/pdf.h */
};

/* From the words of the command line: a PDF if the file's name ends in .pdf, or it is
 * asked for, or the printer gets it and this build sets PDFs; else text. */
bool papers_choose(struct papers *p, struct err *e);
/* The size as the book's setting has it, unless the command line says. */
bool papers_settle(struct papers *p, struct book *b, struct err *e);
/* To the file, or to stdout (a PDF to no terminal). What could not be shown is said on
 * stderr. Empties the bytes. */
bool papers_write(struct papers *p, struct err *e);
void papers_free(struct papers *p);

enum { PAPERS_CAUTIONS = 16 };
/* The cautions for the foot of pages, as a list that ends with NULL; returns it. */
const char *const *papers_cautions(const char *out[static PAPERS_CAUTIONS]);

/* Each reads its arguments into *p and makes its pages. False with ERR_NONE: --help was
 * asked for. */
bool papers_sheet(const struct context *ctx, int argc, char **argv, struct papers *p,
	struct err *e);
bool papers_season(const struct context *ctx, int argc, char **argv, struct papers *p,
	struct err *e);

#endif
