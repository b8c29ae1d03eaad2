/* Files of the open archive of daily weather: read or refused, and what was taken in
 * comes back the same as a file of weather. The first byte says which of the two
 * layouts: "d" is one line a month, anything else one line a value. */
#include "fuzz.h"

#include "exchange/ghcn.h"

#include <string.h>

static struct book *b;

static void comes_back_the_same(void)
{
	const struct kind *k = kind_find("weather", NULL);
	char *once = fuzz_export(b, k);
	bool changed;

	must(fuzz_import(b, k, (const uint8_t *)once, strlen(once), &changed));
	must(!changed);
	free(once);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	struct ghcn_from from = { .name = "fuzz.dly", .today = fuzz_today() };
	struct imported out = { 0 };
	struct err e = { 0 };
	char *copy;

	if (n == 0)
		return 0;
	if (!b)
		b = book_open(":memory:", BOOK_CREATE, "QX", &e);
	must(b != NULL);
	from.file = fuzz_file(data + 1, n - 1, &copy);
	bool ok = ghcn_import(
		b, *data == 'd' ? ghcn_read_dly : ghcn_read_year, &from, &out, &e);
	fclose(from.file);
	free(copy);
	fuzz_listed(&out, ok, &e);
	if (ok)
		comes_back_the_same();
	if (out.n_new > 0) {
		book_close(b);
		b = NULL;
	}
	imported_free(&out);
	return 0;
}
