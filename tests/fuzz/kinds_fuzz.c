/* Each kind of CSV file into a book: all of it or nothing, a clean sentence for what is
 * wrong, a sound book; and what the book then gives out changes nothing when it comes
 * back. The first line names the kind. */
#include "fuzz.h"

#include <string.h>

static struct book *season;

static void open_season(void)
{
	char path[FUZZ_PATH];
	struct err e = { 0 };

	if (season)
		return;
	fuzz_path(path, "kinds.db");
	fuzz_copy(fuzz_season(FUZZ_SMALL), path);
	season = book_open(path, BOOK_EXISTING, "QX", &e);
	must(season != NULL);
}

static const struct kind *take_kind(const uint8_t **data, size_t *n)
{
	const uint8_t *end = memchr(*data, '\n', *n);
	size_t length = end ? (size_t)(end - *data) : 0, count = 0;
	uint8_t first = **data;

	for (; kinds[count]; count++)
		if (strlen(kinds[count]->name) == length &&
			memcmp(kinds[count]->name, *data, length) == 0) {
			*data += length + 1;
			*n -= length + 1;
			return kinds[count];
		}
	++*data;
	--*n;
	return kinds[first % count];
}

static void comes_back_the_same(const struct kind *k)
{
	char *once = fuzz_export(season, k);
	bool changed;

	must(fuzz_import(season, k, (const uint8_t *)once, strlen(once), &changed));
	must(!changed);
	free(once);
}

static void is_as_it_was(const struct kind *k)
{
	static char *before[32];
	size_t i = 0;

	while (kinds[i] != k)
		i++;
	char *now = fuzz_export(season, k);
	if (before[i])
		must(strcmp(now, before[i]) == 0);
	else
		before[i] = strdup(now);
	free(now);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	bool changed;

	if (n == 0)
		return 0;
	open_season();
	const struct kind *k = take_kind(&data, &n);
	if (fuzz_import(season, k, data, n, &changed)) {
		comes_back_the_same(k);
		fuzz_sound(season);
	} else
		is_as_it_was(k);
	if (changed) {
		book_close(season);
		season = NULL;
	}
	return 0;
}
