/* why_since.c - since which treatment a total runs. */
#include "why_parts.h"

#include "base/text.h"
#include "base/words.h"

#include <stdio.h>

void total_since_says(
	const struct log *l, const struct verdict_row *row, char (*out)[SAY_LINE])
{
	enum place place = row->trap != NO_TRAP ? l->traps.items[row->trap].place
						: l->rules.items[row->rule].place;
	int32_t since =
		log_moment_at(l, row->block, row->pest, place, l->today).treated;
	int32_t border =
		log_moment_at(l, row->block, row->pest, PLACE_BORDER, l->today).treated;
	char day[DAY_TEXT_SIZE];

	text_copy(out[0], SAY_LINE,
		_("no treatment is entered that restarts it: it runs since the trap was "
		  "hung"));
	text_copy(out[1], SAY_LINE, "");
	if (since != DAY_NONE) {
		day_short(since, day, sizeof day);
		snprintf(out[0], SAY_LINE,
			_("it runs since the treatment of %s, or since the trap was "
			  "hung after it"),
			day);
	}
	if (border > since) {
		day_short(border, day, sizeof day);
		snprintf(out[1], SAY_LINE,
			_("the treatment of the border alone, %s, does not restart it: "
			  "that is for traps at the border"),
			day);
	}
}
