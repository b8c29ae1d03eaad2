#include "exchange/kinds.h"
#include "base/words.h"

#include <string.h>

const struct kind *const kinds[] = {
	&kind_traps,
	&kind_visits,
	&kind_thresholds,
	&kind_pests,
	&kind_lures,
	&kind_cards,
	&kind_places,
	&kind_stations,
	&kind_weather,
	&kind_biofix,
	&kind_farms,
	&kind_blocks,
	&kind_treatments,
	&kind_picks,
	&kind_fruit_checks,
	&kind_dispensers,
	&kind_answers,
	&kind_settings,
	NULL,
};

const struct kind *kind_find(const char *name, struct err *e)
{
	struct buf there = { 0 };

	for (size_t i = 0; kinds[i]; i++)
		if (strcmp(kinds[i]->name, name) == 0)
			return kinds[i];
	for (size_t i = 0; kinds[i]; i++)
		buf_addf(&there, "%s%s", i ? ", " : "", kinds[i]->name);
	err_set(e, ERR_USAGE, _("\"%s\" is no kind of file; there are: %s"), name,
		there.text);
	buf_free(&there);
	return NULL;
}
