/* settings.h - the settings that hold while a book is open. */
#ifndef ANSWERS_SETTINGS_H
#define ANSWERS_SETTINGS_H

#include "book/rules.h"

/* Lays settings over those of the book, as "date_style=month-day;scout=JR" (NULL or "":
 * none), and lets days be written and weeks begin as the settings then have it. They
 * hold for this open book, are never stored, and must be such as a file of settings may
 * bring in; else ERR_USAGE, and nothing is laid over. */
bool settings_apply(struct book *b, const char *over, struct err *e);

#endif
