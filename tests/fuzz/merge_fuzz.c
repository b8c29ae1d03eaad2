/* The other book of a merge, damaged on the disk or changed in its rows: merged or
 * refused with a clean sentence; refused, ours is as it was; merged, it is sound, and
 * once more brings nothing. The bits of the first byte: 1 and 2 as in book_fuzz.c, 4 it
 * is only asked what a merge would do; the rest: see damage.h. */
#include "damage.h"
#include "fuzz.h"

#include "book/merge.h"

#include <string.h>
#include <unistd.h>

static char *content(struct book *b)
{
	struct buf all = { 0 };

	for (size_t i = 0; kinds[i]; i++) {
		char *one = fuzz_export(b, kinds[i]);

		buf_add(&all, one);
		free(one);
	}
	return all.text;
}

/* Merges, or only looks what that would do; a refusal changes nothing. */
static bool merge(struct book *ours, const char *other, bool keep)
{
	struct merge_report report = { 0 };
	struct err e = { 0 };
	char *before = content(ours);
	bool done = (keep ? book_merge : book_merge_look)(ours, other, &report, &e);
	char *after = content(ours);

	fuzz_said(done, &e);
	if (!done || !keep || report.nothing_new)
		must(strcmp(before, after) == 0);
	book_merge_free(&report);
	free(before);
	free(after);
	return done;
}

static void brings_nothing_more(struct book *ours, const char *other)
{
	struct merge_report report = { 0 };
	struct err e = { 0 };

	must(book_merge(ours, other, &report, &e) && report.nothing_new);
	book_merge_free(&report);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	char path[FUZZ_PATH], other[FUZZ_PATH];
	struct err e = { 0 };

	if (n == 0)
		return 0;
	fuzz_path(path, "ours.db");
	fuzz_path(other, "other.db");
	fuzz_copy(fuzz_dump(2), path);
	fuzz_copy(fuzz_dump(*data & 2 ? 1 : 2), other);
	(*data & 1 ? damage_rows : damage_file)(other, data + 1, n - 1);
	struct book *ours = book_open(path, BOOK_EXISTING, "QX", &e);
	must(ours != NULL);
	if (*data & 4) {
		merge(ours, other, false);
	} else if (merge(ours, other, true)) {
		fuzz_sound(ours);
		brings_nothing_more(ours, other);
	}
	book_close(ours);
	return 0;
}
