#include "orchard.h"

#include "base/csv.h"

#include <math.h>
#include <stdlib.h>

void same(const char *what, size_t i, double got, double want)
{
	if (!(fabs(got - want) <= 1e-9 * fabs(want)))
		fail_msg("%s %zu: %.12g, not %.12g", what, i, got, want);
}

void orchard_rows(const char *file, size_t rows, size_t cols, double *out)
{
	char path[128];
	struct err e = { 0 };
	struct csv csv;
	size_t row = 0;

	snprintf(path, sizeof path, "tests/reference/%s", file);
	FILE *f = fopen(path, "r");
	assert_non_null(f);
	csv_open(&csv, f, file);
	assert_int_equal(csv_next(&csv, &e), CSV_ROW);
	while (csv_next(&csv, &e) == CSV_ROW) {
		assert_true(row < rows && csv.n_fields == cols);
		for (size_t i = 0; i < cols; i++)
			out[row * cols + i] = strtod(csv.field[i].text, NULL);
		row++;
	}
	assert_int_equal(e.kind, ERR_NONE);
	assert_int_equal(row, rows);
	csv_close(&csv);
	fclose(f);
}

struct orchard orchard_read(void)
{
	double traps[ORCHARD_TRAPS][7], corners[ORCHARD_CORNERS][2];
	struct orchard o = { 0 };

	orchard_rows("orch12.csv", ORCHARD_TRAPS, 7, *traps);
	orchard_rows("source_polygon.csv", ORCHARD_CORNERS, 2, *corners);
	for (size_t i = 0; i < ORCHARD_CORNERS; i++)
		o.outline[i] = (struct position){ corners[i][0], corners[i][1] };
	for (size_t i = 0; i < ORCHARD_TRAPS; i++) {
		o.at[i] = (struct position){ traps[i][2], traps[i][3] };
		o.block[i] = "ABCD"[i / 3];
		o.border[i] = traps[i][4] > 0;
		o.traps[i] = (struct hot_catch){ (int64_t)traps[i][5],
			(int64_t)traps[i][6] };
	}
	struct plane plane = ground_plane(o.at, ORCHARD_TRAPS);
	for (size_t i = 0; i < ORCHARD_TRAPS; i++)
		o.metres[i] =
			ground_to_outline(&plane, o.at[i], o.outline, ORCHARD_CORNERS);
	return o;
}
