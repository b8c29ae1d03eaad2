/* The only file that sees libical. */
#include "exchange/icalendar.h"

#include "base/day.h"
#include "base/mem.h"
#include "base/words.h"

#include <libical/ical.h>
#include <stdlib.h>

static icaltimetype day_time(int32_t day)
{
	struct ymd d = day_to_ymd(day);
	icaltimetype t = icaltime_null_date();

	t.year = d.year;
	t.month = d.month;
	t.day = d.day;
	return t;
}

static icaltimetype utc_time(struct instant at)
{
	const struct instant utc = { .minute = at.minute };
	int32_t minute = instant_minute_of_day(utc);
	icaltimetype t = day_time(instant_day(utc));

	t.is_date = 0;
	t.hour = minute / 60;
	t.minute = minute % 60;
	t.second = 0;
	t.zone = icaltimezone_get_utc_timezone();
	return t;
}

static void add_times(icalcomponent *event, const struct agenda_item *item)
{
	bool all_day = item->until.minute == INSTANT_NONE;

	icalcomponent_add_property(
		event, icalproperty_new_dtstart(
			       all_day ? day_time(item->day) : utc_time(item->from)));
	if (!all_day)
		icalcomponent_add_property(
			event, icalproperty_new_dtend(utc_time(item->until)));
}

static void add_words(icalcomponent *event, const struct agenda_item *item)
{
	static const char *const groups[AGENDA_KIND_COUNT] = {
		[AGENDA_RUN] = N_("run"),
		[AGENDA_LURE] = N_("lure"),
		[AGENDA_CARD] = N_("card"),
		[AGENDA_ENTRY] = N_("re-entry"),
		[AGENDA_PICK] = N_("pick"),
		[AGENDA_EARLIEST] = N_("pick"),
	};

	icalcomponent_add_property(event, icalproperty_new_summary(item->title));
	if (*item->details)
		icalcomponent_add_property(
			event, icalproperty_new_description(item->details));
	icalcomponent_add_property(
		event, icalproperty_new_categories(_(groups[item->kind])));
}

static void add_event(
	icalcomponent *calendar, const struct agenda *a, const struct agenda_item *item)
{
	icalcomponent *event = icalcomponent_new(ICAL_VEVENT_COMPONENT);

	icalcomponent_add_property(event, icalproperty_new_uid(item->uid));
	icalcomponent_add_property(event, icalproperty_new_dtstamp(utc_time(a->now)));
	icalcomponent_add_property(
		event, icalproperty_new_sequence((int)a->now.minute));
	add_times(event, item);
	add_words(event, item);
	icalcomponent_add_property(event,
		icalproperty_new_status(
			item->is_off ? ICAL_STATUS_CANCELLED : ICAL_STATUS_CONFIRMED));
	icalcomponent_add_property(
		event, icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
	icalcomponent_add_component(calendar, event);
}

/* Without memory libical takes the program down: better a sentence before it begins. */
static void expect_memory(size_t events)
{
	enum { EVENT_BYTES = 65536 }; /* several times what it takes */

	free(mem_new(events + 1, EVENT_BYTES));
}

bool icalendar_write(const struct agenda *a, struct buf *out, struct err *e)
{
	expect_memory(a->n);
	icalcomponent *calendar = icalcomponent_new(ICAL_VCALENDAR_COMPONENT);

	icalcomponent_add_property(calendar, icalproperty_new_version("2.0"));
	icalcomponent_add_property(
		calendar, icalproperty_new_prodid("-//mothtally//" VERSION "//EN"));
	for (size_t i = 0; i < a->n; i++)
		add_event(calendar, a, &a->items[i]);
	char *text = icalcomponent_as_ical_string_r(calendar);
	icalcomponent_free(calendar);
	if (!text)
		return err_set(e, ERR_BOOK, _("there is no memory left"));
	buf_add(out, text);
	free(text);
	return true;
}
