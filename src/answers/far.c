#include "answers/far.h"

#include "base/mem.h"
#include "base/words.h"

#include <math.h>
#include <stdlib.h>

void far_add(struct far_farm *f, double lat, double lon)
{
	f->items = mem_grow(f->items, &f->cap, f->n + 1, sizeof *f->items);
	f->items[f->n++] = (struct position){ lat, lon };
	f->is_settled = false;
}

void far_free(struct far_farm *f)
{
	free(f->items);
	*f = (struct far_farm){ 0 };
}

static int by_value(const void *a, const void *b)
{
	double one = *(const double *)a, two = *(const double *)b;

	return (one > two) - (one < two);
}

static double median(double *v, size_t n)
{
	qsort(v, n, sizeof *v, by_value);
	return (v[(n - 1) / 2] + v[n / 2]) / 2;
}

/* Longitudes are taken from the first one on, so that the date line does not matter. */
static struct position middle_of(const struct far_farm *f)
{
	double *v = mem_new(f->n, sizeof *v), first = f->items[0].lon;
	struct position at = { 0, 0 };

	for (size_t i = 0; i < f->n; i++)
		v[i] = f->items[i].lat;
	at.lat = median(v, f->n);
	for (size_t i = 0; i < f->n; i++)
		v[i] = remainder(f->items[i].lon - first, 360);
	at.lon = remainder(first + median(v, f->n), 360);
	free(v);
	return at;
}

double far_km(struct far_farm *f, double lat, double lon)
{
	if (f->n == 0)
		return 0;
	if (!f->is_settled)
		f->middle = middle_of(f);
	f->is_settled = true;
	return ground_distance(f->middle, (struct position){ lat, lon }) / 1000;
}

bool far_says(struct far_farm *f, struct position at, const char *what,
	const char *farm, struct buf *out)
{
	double km = far_km(f, at.lat, at.lon);
	struct buf away = { 0 };

	if (km <= FAR_KM)
		return false;
	buf_add_thousands(&away, (int64_t)llround(km));
	buf_addf(out,
		_("%s lies %s km from the middle of the traps of %s; is its position "
		  "right?"),
		what, away.text, farm);
	buf_free(&away);
	return true;
}

bool far_source_says(struct far_farm *traps, const struct source *s, const char *farm,
	struct buf *out)
{
	struct position at = { s->lat, s->lon };
	double most = s->has_position ? far_km(traps, s->lat, s->lon) : -1;

	for (size_t i = 0; i < s->n_outline; i++) {
		const struct corner *c = &s->outline[i];

		if (far_km(traps, c->lat, c->lon) <= most)
			continue;
		most = far_km(traps, c->lat, c->lon);
		at = (struct position){ c->lat, c->lon };
	}
	return most >= 0 && far_says(traps, at, s->name, farm, out);
}
