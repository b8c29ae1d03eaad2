/* entry_settings.c - settings as rows: the numbers of the judgement, who is out, units
 * and dates. */
#include "answers/entry_forms.h"
#include "answers/entry_rules.h"
#include "base/text.h"
#include "base/words.h"
#include "book/rules.h"

#include <stdio.h>
#include <string.h>
#include <strings.h>

static const char *const area_units[] = { "ha", N_("acre"), NULL };
static const char *const length_units[] = { "m", N_("feet"), NULL };
static const char *const degree_units[] = { "C", "F", NULL };
static const char *const date_styles[] = { N_("day-month"), N_("month-day"), NULL };
static const char *const week_starts[] = { N_("monday"), N_("sunday"), NULL };
static const char *const papers[] = { "a4", N_("letter"), NULL };

const struct setting_facts setting_facts[SETTING_COUNT] = {
	{ "join_nights", N_("Nights under which intervals are joined"),
		N_("An interval of fewer nights than this is joined with those before "
		   "it."),
		1, 31, NULL, SETTING_PLAIN },
	{ "long_nights", N_("Nights above which a catch is an average"),
		N_("A catch of more nights than this is marked as an average over a "
		   "long interval."),
		1, NIGHTS_MAX, NULL, SETTING_PLAIN },
	{ "stale_nights", N_("Nights unread till a catch is unknown"),
		N_("A trap that was not read for more nights than this has no catch "
		   "for this week."),
		1, NIGHTS_MAX, NULL, SETTING_PLAIN },
	{ "near_x100", N_("Near: from this part of a threshold on"),
		N_("A catch under its threshold is called near from this part of it "
		   "on."),
		0, 100, NULL, SETTING_PERCENT },
	{ "read_num", N_("Traps that must be read for a block mean"),
		N_("So many traps of a block must be read before its mean is told, out "
		   "of the number in the next setting."),
		1, 100, NULL, SETTING_PLAIN },
	{ "read_den", N_("... out of so many that hang there"),
		N_("With 2 in the setting before and 3 here, 2 of 3 traps must be "
		   "read, and 4 of 6."),
		1, 100, NULL, SETTING_PLAIN },
	{ "open_days", N_("Days more that a run may take"),
		N_("A run that is not done goes on for so many days after its first."),
		0, 6, NULL, SETTING_PLAIN },
	{ "fill_days", N_("Days without weather that are filled"),
		N_("Up to so many days in a row without temperatures are filled from "
		   "those beside them."),
		0, 3, NULL, SETTING_PLAIN },
	{ "skip_biofix_day", N_("Degree-days begin the day after biofix"),
		N_("With no, the day of the biofix counts too."), 0, 1, NULL,
		SETTING_YES_NO },
	{ "odd_count", N_("Count from which a jump is asked about"),
		N_("A count of so many or more is asked about once, when it is far "
		   "above the last four."),
		1, COUNT_MAX, NULL, SETTING_PLAIN },
	{ "odd_times", N_("... over so many times the last four"),
		N_("Far above is more than so many times the highest of the last four "
		   "counts."),
		1, 100, NULL, SETTING_PLAIN },
	{ "scout", N_("Scout who is out"),
		N_("Initials or a short name: they go with each count that is typed."),
		0, 0, NULL, SETTING_PLAIN },
	{ "area_unit", N_("Areas in"), N_("Areas on the pages are in this unit."), 0, 0,
		area_units, SETTING_PLAIN },
	{ "length_unit", N_("Distances in"),
		N_("Distances on the pages are in this unit."), 0, 0, length_units,
		SETTING_PLAIN },
	{ "degree_unit", N_("Temperatures in"),
		N_("A new station's temperatures are typed in this unit."), 0, 0,
		degree_units, SETTING_PLAIN },
	{ "date_style", N_("Dates as"),
		N_("Day before month, 4 May, or month before day, May 4; files keep "
		   "2026-05-04."),
		0, 0, date_styles, SETTING_PLAIN },
	{ "week_start", N_("A week begins on"),
		N_("Weeks on the pages begin on this day."), 0, 0, week_starts,
		SETTING_PLAIN },
	{ "paper", N_("Paper of what is printed"),
		N_("Sheets and season pages are set for this paper."), 0, 0, papers,
		SETTING_PLAIN },
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

static bool number_good(struct hearing *h, const struct setting_row *r)
{
	const struct setting_facts *f = &setting_facts[r->name];
	int32_t n;

	return f->hi == 0 || text_int(r->value, f->lo, f->hi, &n) ||
	       row_bad(h, "value",
		       _("is not right; it takes a whole number from %d to %d"),
		       (int)f->lo, (int)f->hi);
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
	return setting_facts[r->name].words ? word_good(h, r) : number_good(h, r);
}

void setting_show(struct setting_row *r)
{
	char value[NOTE_BYTES];

	text_copy(value, sizeof value, r->value);
	if (setting_facts[r->name].look == SETTING_PERCENT)
		snprintf(r->value, sizeof r->value, _("%.8s %%"), value);
	else if (setting_facts[r->name].look == SETTING_YES_NO)
		text_copy(r->value, sizeof r->value,
			_(column_yes_no(strcmp(value, "0") != 0)));
	else if (setting_facts[r->name].words)
		text_copy(r->value, sizeof r->value, _(value));
}

/* "70 %" as 70, "yes" as 1; a word in the person's language as files have it. */
static void unshow(struct setting_row *r)
{
	const char *const *words = setting_facts[r->name].words;
	enum setting_look look = setting_facts[r->name].look;
	size_t n = strlen(r->value);

	if (look == SETTING_PERCENT && n > 0 && r->value[n - 1] == '%') {
		r->value[n - 1] = '\0';
		text_trim(r->value);
	}
	for (int i = 0; look == SETTING_YES_NO && i < 2; i++)
		if (strcasecmp(r->value, column_yes_no(i)) == 0 ||
			strcasecmp(r->value, _(column_yes_no(i))) == 0)
			snprintf(r->value, sizeof r->value, "%d", i);
	for (; words && *words; words++)
		if (strcasecmp(r->value, _(*words)) == 0)
			text_copy(r->value, sizeof r->value, *words);
}

bool setting_form_good(struct hearing *h, struct setting_row *r)
{
	unshow(r);
	return setting_good(h, r);
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
