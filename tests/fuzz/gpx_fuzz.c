/* Waypoints of any bytes, see maps.h. */
#include "exchange/gpx.h"
#include "maps.h"

static bool take(
	struct book *b, FILE *file, int64_t farm, struct imported *out, struct err *e)
{
	const struct gpx_from from = { file, "fuzz.gpx", farm };

	return gpx_import(b, &from, out, e);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	static const struct map_format format = { take, gpx_export };

	maps_try(&format, data, n);
	return 0;
}
