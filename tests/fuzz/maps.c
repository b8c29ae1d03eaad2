#include "maps.h"

#include "book/places.h"

static struct book *season;
static int64_t farm;

static void open_season(void)
{
	char path[FUZZ_PATH];
	struct farms all = { 0 };
	struct err e = { 0 };

	if (season)
		return;
	fuzz_path(path, "maps.db");
	fuzz_copy(fuzz_season(FUZZ_SMALL), path);
	season = book_open(path, BOOK_EXISTING, "QX", &e);
	must(season && book_farms(season, &all, &e) && all.n > 0);
	farm = all.items[0].id;
	free(all.items);
}

static bool take(const struct map_format *f, const void *data, size_t n, bool *changed)
{
	struct imported out = { 0 };
	struct err e = { 0 };
	char *copy;
	FILE *file = fuzz_file(data, n, &copy);
	bool ok = f->take(season, file, farm, &out, &e);

	fclose(file);
	free(copy);
	fuzz_listed(&out, ok, &e);
	*changed = ok && out.n_new + out.n_changed > 0;
	imported_free(&out);
	return ok;
}

static void comes_back_the_same(const struct map_format *f)
{
	struct buf once = { 0 };
	struct err e = { 0 };
	bool changed;

	must(f->give(season, farm, &once, &e));
	must(take(f, once.text, once.n, &changed));
	must(!changed);
	buf_free(&once);
}

void maps_try(const struct map_format *f, const uint8_t *data, size_t n)
{
	bool changed;

	open_season();
	if (take(f, data, n, &changed)) {
		comes_back_the_same(f);
		fuzz_sound(season);
	}
	if (changed) {
		book_close(season);
		season = NULL;
	}
}
