/* visits_runs.c - sorted piles of visits in temporary files, and read from all of them
 * at once. */
#include "visits_parts.h"

#include "base/mem.h"
#include "base/words.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

/* What visits of the pile say in words, where that is not what the one before says. */
static bool write_words(FILE *file, const struct pile *pile, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		struct visit_words w = { 0 };
		if (pile_tell(pile, i, &w) && fwrite(&w, sizeof w, 1, file) != 1)
			return false;
	}
	return true;
}

/* In blocks, each with its words behind it. */
static bool write_pile(FILE *file, const struct pile *pile)
{
	const struct pending *items = pile->items;

	for (size_t from = 0, n; from < pile->n; from += n) {
		n = pile->n - from < RUN_BLOCK ? pile->n - from : RUN_BLOCK;
		if (fwrite(items + from, sizeof *items, n, file) != n ||
			!write_words(file, pile, from, from + n))
			return false;
	}
	return fflush(file) == 0 && fseek(file, 0, SEEK_SET) == 0;
}

bool runs_add(struct runs *all, const struct pile *pile)
{
	FILE *file = tmpfile();

	if (!file)
		return false;
	if (!write_pile(file, pile)) {
		fclose(file);
		return false;
	}
	all->items = mem_grow(all->items, &all->cap, all->n + 1, sizeof *all->items);
	all->items[all->n++] = (struct run){ .file = file, .left = pile->n };
	return true;
}

const struct pending *run_now(const struct run *r)
{
	return &r->block[r->at];
}

static bool read_block(struct run *r)
{
	r->n = r->left < RUN_BLOCK ? r->left : RUN_BLOCK;
	r->left -= r->n;
	r->at = 0;
	return fread(r->block, sizeof *r->block, r->n, r->file) == r->n;
}

bool run_next(struct run *r, const char *name, struct err *e)
{
	errno = EIO; /* of a file that ends too early */
	r->at++;
	if (r->at >= r->n && r->left == 0) {
		fclose(r->file);
		r->file = NULL;
		return true;
	}
	if ((r->at < r->n || read_block(r)) &&
		(run_now(r)->again ||
			fread(&r->words, sizeof r->words, 1, r->file) == 1))
		return true;
	return err_set(e, ERR_BOOK,
		_("%s is not imported: its temporary file cannot be read: %s"), name,
		strerror(errno));
}

struct run *runs_first(const struct runs *all, const struct pending **until)
{
	struct run *first = NULL;

	*until = NULL;
	for (size_t i = 0; i < all->n; i++) {
		struct run *r = &all->items[i];
		if (!r->file)
			continue;
		if (!first || pending_order(run_now(r), run_now(first)) < 0) {
			*until = first ? run_now(first) : NULL;
			first = r;
		} else if (!*until || pending_order(run_now(r), *until) < 0) {
			*until = run_now(r);
		}
	}
	return first;
}

void runs_free(struct runs *all)
{
	for (size_t i = 0; i < all->n; i++)
		if (all->items[i].file)
			fclose(all->items[i].file);
	free(all->items);
}
