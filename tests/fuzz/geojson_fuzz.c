/* Maps of any bytes, see maps.h. */
#include "exchange/geojson.h"
#include "maps.h"

static bool take(
	struct book *b, FILE *file, int64_t farm, struct imported *out, struct err *e)
{
	const struct geojson_from from = { file, "fuzz.geojson", farm };

	return geojson_import(b, &from, out, e);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t n)
{
	static const struct map_format format = { take, geojson_export };

	maps_try(&format, data, n);
	return 0;
}
