/* entry_stations.c - weather stations as rows. */
#include "answers/entry_kinds.h"
#include "base/text.h"
#include "base/words.h"

#include <math.h>
#include <string.h>

#define AT(field) .at = offsetof(struct station_row, field)

const struct column station_columns[STATION_COLUMNS] = {
	{ .name = "station",
		AT(station),
		.type = &value_text,
		.hi = NAME_BYTES,
		.needed = true,
		.help = N_("Name of the station; a new one is made."),
		.form_help = N_("Name of the station."),
		.label = N_("name"),
		.list_cols = 28 },
	{ .name = "lat",
		AT(lat),
		.type = &value_degree,
		.lo = -90,
		.hi = 90,
		.help = N_("Where it stands: degrees north; empty: as it was."),
		.label = N_("latitude"),
		.list_cols = 12 },
	{ .name = "lon",
		AT(lon),
		.type = &value_degree,
		.lo = -180,
		.hi = 180,
		.help = N_("Where it stands: degrees east; empty: as it was."),
		.label = N_("longitude"),
		.list_cols = 12 },
	{ .name = "farm",
		AT(farm),
		.type = &value_text,
		.hi = NAME_BYTES,
		.help = N_("A farm that goes by it; one row for each such farm.") },
};

struct station_row station_row_of(const struct station *s)
{
	struct station_row r = { .lat = s->has_position ? s->lat : (double)NAN,
		.lon = s->has_position ? s->lon : (double)NAN };

	text_copy(r.station, sizeof r.station, s->name);
	return r;
}

/* As far as a file can tell, which has six decimals. */
static bool stands_there(const struct station *one, const struct station_row *r)
{
	return one->has_position && fabs(one->lat - r->lat) <= 0.00000051 &&
	       fabs(one->lon - r->lon) <= 0.00000051;
}

bool station_over(struct hearing *h, const struct station_row *r, bool placed,
	struct station *one)
{
	if (isnan(r->lat) != isnan(r->lon))
		return row_bad(h, isnan(r->lat) ? "lat" : "lon",
			_("is missing; lat and lon go together"));
	memcpy(one->name, r->station, sizeof one->name);
	if (isnan(r->lat) && h->clears)
		one->has_position = false;
	if (isnan(r->lat) || stands_there(one, r))
		return true;
	if (placed)
		return row_bad(h, "lat",
			_("and its lon are another place than this file has said "
			  "before"));
	one->has_position = true;
	one->lat = r->lat;
	one->lon = r->lon;
	return true;
}
