#include "papers.h"

#include "answers/say.h"
#include "base/words.h"
#include "book/rules.h"
#include "paper/pdf.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

static bool choose_size(struct papers *p, struct err *e)
{
	const char *word = p->paper;

	if (word && strcmp(word, "a4") != 0 && strcmp(word, "letter") != 0)
		return err_set(
			e, ERR_USAGE, _("--paper is a4 or letter, not \"%s\""), word);
	p->size = word && strcmp(word, "letter") == 0 ? PAPER_LETTER : PAPER_A4;
	return true;
}

bool papers_settle(struct papers *p, struct book *b, struct err *e)
{
	char paper[NOTE_BYTES];

	if (p->paper)
		return true;
	if (!book_setting(b, "paper", paper, sizeof paper, e))
		return false;
	p->size = strcmp(paper, "letter") == 0 ? PAPER_LETTER : PAPER_A4;
	return true;
}

static bool ends_in_pdf(const char *name)
{
	size_t n = strlen(name);

	return n > 4 && strcasecmp(name + n - 4, ".pdf") == 0;
}

bool papers_choose(struct papers *p, struct err *e)
{
	const char *word = p->format;

	if (word && strcmp(word, "pdf") != 0 && strcmp(word, "text") != 0)
		return err_set(
			e, ERR_USAGE, _("--format is pdf or text, not \"%s\""), word);
	if (p->to_printer && p->file)
		return err_set(e, ERR_USAGE,
			_("print sends to the printer; without print, -o writes into a "
			  "file"));
	if (word)
		p->is_pdf = strcmp(word, "pdf") == 0;
	else
		p->is_pdf = p->to_printer ? pdf_built_in()
					  : p->file && ends_in_pdf(p->file);
	return choose_size(p, e);
}

static void say_without_font(int n)
{
	if (n)
		fprintf(stderr,
			ngettext("%d character is of a script for which this machine "
				 "has no font; it stands as a box\n",
				"%d characters are of a script for which this machine "
				"has no font; they stand as boxes\n",
				(unsigned long)n),
			n);
}

bool papers_write(struct papers *p, struct err *e)
{
	bool ok;

	if (p->file)
		ok = out_file(p->file, &p->bytes, e);
	else if (p->is_pdf && isatty(STDOUT_FILENO))
		ok = err_set(e, ERR_USAGE,
			_("a PDF is nothing for a terminal: name a file with -o"));
	else
		ok = out_print(&p->bytes, e);
	if (ok)
		say_without_font(p->without_font);
	return ok;
}

void papers_free(struct papers *p)
{
	buf_free(&p->bytes);
}

const char *const *papers_cautions(const char *out[static PAPERS_CAUTIONS])
{
	size_t n = 0;

	while (n + 1 < PAPERS_CAUTIONS && say_caution(n)) {
		out[n] = say_caution(n);
		n++;
	}
	out[n] = NULL;
	return out;
}
