#include "base/mem.h"

#include "base/err.h"
#include "base/words.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* By exit, not abort: what is registered with atexit may put the terminal right. */
static _Noreturn void out_of_memory(void)
{
	fputs(_("mothtally: out of memory; what was shown as saved is on the disk\n"),
		stderr);
	exit(err_status(ERR_BOOK));
}

void *mem_grow(void *items, size_t *cap, size_t need, size_t size)
{
	size_t most = SIZE_MAX / size;
	size_t want = *cap < most / 2 ? *cap + *cap / 2 + 8 : most;

	if (need <= *cap && items)
		return items;
	if (need > most)
		out_of_memory();
	if (want < need || want > most)
		want = need;
	char *grown = reallocarray(items, want, size);
	if (!grown)
		out_of_memory();
	memset(grown + *cap * size, 0, (want - *cap) * size);
	*cap = want;
	return grown;
}

void *mem_new(size_t n, size_t size)
{
	void *block = calloc(n ? n : 1, size ? size : 1);

	if (!block)
		out_of_memory();
	return block;
}

char *mem_text(const char *text)
{
	char *copy = strdup(text);

	if (!copy)
		out_of_memory();
	return copy;
}
