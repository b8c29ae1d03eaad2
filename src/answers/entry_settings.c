/* Settings as rows: the numbers of the judgement, who is out, units and dates. */
#include "answers/entry_forms.h"
#include "answers/entry_rules.h"
#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

static const char *const area_units[] = { "ha", "acre", NULL };
static const char *const length_units[] = { "m", "feet", NULL };
static const char *const degree_units[] = { "C", "F", NULL };
static const char *const date_styles[] = { "day-month", "month-day", NULL };
static const char *const week_starts[] = { "monday", "sunday", NULL };

const struct setting_facts setting_facts[SETTING_COUNT] = {
	{ "join_nights", N_("Nights under which intervals are joined"), 1, 31, NULL },
	{ "long_nights", N_("Nights above which an interval is long"), 1, NIGHTS_MAX,
		NULL },
	{ "stale_nights", N_("Nights after which a catch is unknown"), 1, NIGHTS_MAX,
		NULL },
	{ "near_x100", N_("Hundredths of a threshold that are near"), 0, 100, NULL },
	{ "read_num", N_("Traps to be read for a block mean"), 1, 100, NULL },
	{ "read_den", N_("... out of so many traps"), 1, 100, NULL },
	{ "open_days", N_("Days more that a run may take"), 0, 6, NULL },
	{ "fill_days", N_("Days without weather that are filled"), 0, 3, NULL },
	{ "skip_biofix_day", N_("Sums begin the day after biofix (1)"), 0, 1, NULL },
	{ "odd_count", N_("Count from which a jump is asked about"), 1, COUNT_MAX,
		NULL },
	{ "odd_times", N_("... over so many times the last four"), 1, 100, NULL },
	{ "scout", N_("Scout who is out"), 0, 0, NULL },
	{ "area_unit", N_("Areas in"), 0, 0, area_units },
	{ "length_unit", N_("Distances in"), 0, 0, length_units },
	{ "degree_unit", N_("Temperatures in"), 0, 0, degree_units },
	{ "date_style", N_("Dates as"), 0, 0, date_styles },
	{ "week_start", N_("A week begins on"), 0, 0, week_starts },
};

_Static_assert(sizeof(struct limits) == SETTING_LIMITS * sizeof(int32_t),
	"every number of the judgement is a setting");

static const char *setting_name(int i)
{
	return setting_facts[i].name;
}

#define AT(field) .at = offsetof(struct setting_row, field)

const struct column setting_columns[SETTING_COLUMNS] = {
	{ .name = "name",
		AT(name),
		.type = &value_word,
		.lo = 0,
		.hi = SETTING_COUNT - 1,
		.none = -1,
		.needed = true,
		.word = setting_name,
		.help = N_("Which setting."),
		.list_cols = 42 },
	{ .name = "value",
		AT(value),
		.type = &value_text,
		.hi = NOTE_BYTES,
		.help = N_("What it is from now on; empty: the usual one, no scout."),
		.form_help = N_("What it is from now on; empty: the usual one."),
		.label = N_("value"),
		.list_cols = 12 },
};

/* Fields of struct limits are all int32_t. */
static void write_limit(const struct limits *l, int i, char out[static NOTE_BYTES])
{
	int32_t value;

	memcpy(&value, (const char *)l + (size_t)i * sizeof value, sizeof value);
	snprintf(out, NOTE_BYTES, "%d", (int)value);
}

void setting_usual(int i, char out[static NOTE_BYTES])
{
	const char *const *words = setting_facts[i].words;

	text_copy(out, NOTE_BYTES, words ? words[0] : "");
	if (i < SETTING_LIMITS)
		write_limit(&limits_usual, i, out);
}

bool settings_read(struct settings *out, struct book *b, struct err *e)
{
	struct limits limits;

	if (!book_limits(b, &limits, e))
		return false;
	for (int i = 0; i < SETTING_LIMITS; i++)
		write_limit(&limits, i, out->value[i]);
	for (int i = SETTING_SCOUT; i < SETTING_COUNT; i++) {
		if (!book_setting(b, setting_name(i), out->value[i], NOTE_BYTES, e))
			return false;
		if (!*out->value[i])
			setting_usual(i, out->value[i]);
	}
	return true;
}

static bool word_good(struct hearing *h, struct setting_row *r)
{
	const char *const *words = setting_facts[r->name].words;
	struct buf list = { 0 };

	for (size_t i = 0; words[i]; i++)
		if (strcasecmp(words[i], r->value) == 0)
			return text_copy(r->value, sizeof r->value, words[i]);
	for (size_t i = 0; words[i]; i++)
		buf_addf(&list, "%s%s", i ? ", " : "", words[i]);
	row_bad(h, "value", _("is not right; it takes one of: %s"), list.text);
	buf_free(&list);
	return false;
}

bool setting_good(struct hearing *h, struct setting_row *r)
{
	if (!*r->value)
		setting_usual(r->name, r->value);
	if (r->name == SETTING_SCOUT && strlen(r->value) >= SCOUT_BYTES)
		return row_bad(h, "value",
			_("is too long for a scout, who has at most %d letters (an "
			  "accented one counts as two)"),
			SCOUT_BYTES - 1);
	return !setting_facts[r->name].words || word_good(h, r);
}

bool manner_read(struct manner *out, struct book *b, struct err *e)
{
	char area[NOTE_BYTES], length[NOTE_BYTES], degree[NOTE_BYTES];

	if (!book_setting(b, "area_unit", area, sizeof area, e) ||
		!book_setting(b, "length_unit", length, sizeof length, e) ||
		!book_setting(b, "degree_unit", degree, sizeof degree, e))
		return false;
	*out = (struct manner){ .acres = strcmp(area, "acre") == 0,
		.feet = strcmp(length, "feet") == 0,
		.fahrenheit = strcmp(degree, "F") == 0 };
	return true;
}
