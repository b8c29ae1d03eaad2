#include "season_2012.h"

#include "base/csv.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static double fahrenheit(const char *celsius)
{
	return strtod(celsius, NULL) * 9 / 5 + 32;
}

void season_2012(const char *site, struct dd_temps out[static SEASON_DAYS])
{
	FILE *file = fopen("tests/reference/weather-2012.csv", "r");
	struct err e = { 0 };
	struct csv csv;
	int n = 0;

	assert_non_null(file);
	csv_open(&csv, file, "weather-2012.csv");
	while (csv_next(&csv, &e) == CSV_ROW) {
		const struct csv_field *f = csv.field;
		if (csv.n_fields != 4 || strcmp(f[0].text, site) != 0)
			continue;
		assert_true(n < SEASON_DAYS);
		out[n] = (struct dd_temps){ .min = fahrenheit(f[2].text),
			.max = fahrenheit(f[3].text) };
		assert_true(day_parse(f[1].text, &out[n].day));
		assert_int_equal(out[n].day, day_from_ymd(2012, 1, 1) + n);
		n++;
	}
	assert_int_equal(e.kind, ERR_NONE);
	assert_int_equal(n, SEASON_DAYS);
	csv_close(&csv);
	fclose(file);
}
