/* readers.h - what programs that we have not written find in a PDF. */
#ifndef TESTS_PAPER_READERS_H
#define TESTS_PAPER_READERS_H

#include "base/buf.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* True if the reader is on this machine. */
static inline bool readers_have(const char *name)
{
	char line[128];

	snprintf(line, sizeof line, "command -v %s >/dev/null 2>&1", name);
	return system(line) == 0;
}

/* What a line of shell says, which finds the PDF in the file "$PDF"; owned. A failed
 * one says so last. */
static inline char *readers_say(const struct buf *pdf, const char *line)
{
	char name[] = "/tmp/mothtally-pdf-XXXXXX", bytes[4096];
	struct buf said = { 0 };
	int fd = mkstemp(name);
	size_t n;

	if (fd < 0 || write(fd, pdf->text, pdf->n) != (ssize_t)pdf->n)
		abort();
	close(fd);
	setenv("PDF", name, 1);
	fflush(NULL);
	FILE *from = popen(line, "r");
	buf_add(&said, "");
	while (from && (n = fread(bytes, 1, sizeof bytes, from)) > 0)
		buf_add_n(&said, bytes, n);
	if (!from || pclose(from) != 0)
		buf_add(&said, "\nFAILED\n");
	unlink(name);
	return said.text;
}

/* The line that begins with `word`, without blanks before it, in `out`; "": none. */
static inline void readers_line(
	const char *text, const char *word, char *out, size_t size)
{
	size_t n = strlen(word);

	for (*out = '\0'; *text; text += *text == '\n') {
		const char *from = text + strspn(text, " \f");
		size_t end = strcspn(text, "\n");

		if (strncmp(from, word, n) == 0 && strchr(" \n", from[n])) {
			snprintf(out, size, "%.*s", (int)end, text);
			return;
		}
		text += end;
	}
}

#endif
