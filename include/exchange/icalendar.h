/* icalendar.h - what lies ahead as a calendar that other programs take in (iCalendar,
 * RFC 5545). */
#ifndef EXCHANGE_ICALENDAR_H
#define EXCHANGE_ICALENDAR_H

#include "answers/agenda.h"
#include "base/buf.h"
#include "base/err.h"

/* An event for each item, all day or from an hour to an hour in UTC, that takes up no
 * time of its owner. UIDs are those of the items; SEQUENCE counts the minutes since
 * 1970 at the agenda's now, so that a calendar which takes in a later file moves its
 * events. Titles and details are in the person's language. */
bool icalendar_write(const struct agenda *a, struct buf *out, struct err *e);

#endif
