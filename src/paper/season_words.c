#include "season_words.h"

#include "base/text.h"
#include "base/words.h"

#include <string.h>

void season_glance_cells(
	const struct season_chart *c, const char *cells[static SEASON_GLANCE])
{
	const char *const titles[SEASON_GLANCE] = { _("block"), _("pest"), _("moths"),
		_("peak week"), _("highest trap"), _("over"), C_("column", "open"),
		_("treated"), C_("column", "damage") };

	memcpy(cells, titles, sizeof titles);
	if (!c)
		return;
	const char *const all[SEASON_GLANCE] = { c->block_name, c->pest_code, c->moths,
		c->mean, c->highest, c->over, c->open, c->treated, c->damage };
	memcpy(cells, all, sizeof all);
}

void season_flight_cells(
	const struct flight_row *r, const char *cells[static SEASON_FLIGHT])
{
	const char *const titles[SEASON_FLIGHT] = { _("flight"), _("first"), _("peak"),
		_("a week"), _("10 %"), _("50 %"), _("90 %"), _("moths"),
		_("dd 50 %") };

	memcpy(cells, titles, sizeof titles);
	if (!r)
		return;
	const char *const all[SEASON_FLIGHT] = { r->name, r->first, r->peak,
		r->peak_rate, r->d10, r->d50, r->d90, r->moths, r->dd50 };
	memcpy(cells, all, sizeof all);
}

size_t season_flight_columns(const struct flight_view *v)
{
	for (size_t i = 0; i < v->n_rows; i++)
		if (*v->rows[i].dd50)
			return SEASON_FLIGHT;
	return SEASON_FLIGHT - 1;
}

void season_say_day(int32_t day, char out[static DAY_TEXT_SIZE])
{
	char text[DAY_TEXT_SIZE];

	day_short(day, text, sizeof text);
	const char *space = strchr(text, ' ');
	text_copy(out, DAY_TEXT_SIZE, space ? space + 1 : text);
}

void season_say_title(const struct season_page *p, struct buf *out)
{
	buf_addf(out, _("%s, season %d"), p->farm, p->season);
}

void season_say_days(
	const struct season_page *p, const struct season_form *form, struct buf *out)
{
	char day[DAY_TEXT_SIZE];

	if (form->notice && *form->notice)
		buf_addf(out, "%s \302\267 ", form->notice);
	day_long(p->day, day, sizeof day);
	buf_addf(out, _("%s, as the book stood on %s"), p->span, day);
}

void season_say_hot(const struct season_pest *s, struct buf *out)
{
	buf_addf(out, "%s: %s", s->name, s->hot.says);
}

const char *season_glance_note(void)
{
	return _("Peak week: the highest mean of a block's traps, moths a trap and "
		 "week, and the day that the week began. Over: catches over the "
		 "threshold; open: those that nobody answered. Treated: treatments "
		 "entered. Damage: fruit stung or entered, of those looked at. "
		 "-:\u00a0no threshold, or nothing entered.");
}

void season_say_flags(const struct flight_view *v, struct buf *out)
{
	buf_add(out, "");
	for (size_t i = 0; i < v->n_rows; i++)
		if (*v->rows[i].flags)
			buf_addf(out, "%s%s: %s", out->n ? "; " : "", v->rows[i].name,
				v->rows[i].flags);
}

void season_say_limits(const struct season_chart *c, struct buf *out)
{
	if (c->n_limits == 0)
		buf_add(out, _("No threshold set."));
	for (size_t i = 0; i < c->n_limits; i++) {
		size_t k = 0;
		while (k < i && c->limits[k].rule != c->limits[i].rule)
			k++;
		if (k == i)
			buf_addf(out, "%s%s [%d]", i > 0 ? ", " : _("Thresholds: "),
				c->limits[i].text, c->limits[i].source);
	}
}

void season_say_lures(const struct season_chart *c, struct buf *out)
{
	buf_add(out, "");
	if (*c->lures)
		buf_addf(out, _("Lures changed: %s"), c->lures);
}

static bool is_decided(const struct season_chart *c)
{
	for (size_t i = 0; i < c->n_limits; i++)
		if (!c->limits[i].is_timing)
			return true;
	return false;
}

void season_say_over(const struct season_chart *c, struct buf *out)
{
	buf_add(out, "");
	if (c->n_alerts > 0)
		buf_addf(out,
			_("Over the threshold, moths a week (times: %s, answered: %s)"),
			c->over, c->answered);
	else if (is_decided(c))
		buf_add(out, _("No catch that was read was over its threshold."));
}

/* The next one after `i` that was not answered; n_alerts: none. */
static size_t next_open(const struct season_chart *c, size_t i)
{
	for (i++; i < c->n_alerts && c->alerts[i].is_answered;)
		i++;
	return i;
}

static bool is_first_of_day(const struct season_chart *c, size_t i)
{
	for (size_t k = i; k > 0 && c->alerts[k - 1].day == c->alerts[i].day; k--)
		if (!c->alerts[k - 1].is_answered)
			return false;
	return true;
}

void season_say_open(const struct season_chart *c, size_t i, struct buf *out)
{
	const struct season_alert *a = &c->alerts[i];
	size_t next = next_open(c, i);

	buf_add(out, "");
	if (a->is_answered)
		return;
	if (is_first_of_day(c, i))
		buf_addf(out, "%s ", a->day_text);
	buf_add(out, a->text);
	if (next < c->n_alerts)
		buf_add(out, c->alerts[next].day == a->day ? "," : ";");
}

void season_say_answer(const struct season_alert *a, struct buf *out)
{
	buf_addf(out, "%s: %s", a->text, a->decided);
	if (*a->after)
		buf_addf(out, "; %s", a->after);
}

void season_say_act(const struct season_act *a, struct buf *out)
{
	buf_addf(out, "%s: %s", a->block_name, a->text);
}

void season_say_source(const struct season_page *p, size_t i, struct buf *out)
{
	buf_addf(out, "[%d] %s", (int)i + 1, p->sources[i].text);
}

const char *season_no_acts(void)
{
	return _("Nothing was entered: no treatment, pick, fruit check or dispensers.");
}

const char *season_hot_caution(void)
{
	return _(
		"A hot spot says where to look, not what to do. Not shown does not mean not "
		"there.");
}

const char *season_as_of_now(void)
{
	return _(
		"Catches are judged by thresholds, biofix and degree-days as they stand now, "
		"not as they stood then.");
}
