/* clock.h - the only place that asks what time it is. */
#ifndef COMMAND_CLOCK_H
#define COMMAND_CLOCK_H

#include <stddef.h>
#include <stdint.h>

/* The day on the local calendar; DAY_NONE when the clock shows none that is usable. */
int32_t clock_day(void);
/* "07:42:11", local; "" when it is not known. */
void clock_text(char *out, size_t size);

#endif
