#include "command/clock.h"

#include "base/day.h"
#include "base/text.h"

#include <time.h>

int32_t clock_day(void)
{
	time_t now = time(NULL);
	struct tm local;

	if (!localtime_r(&now, &local))
		return DAY_NONE;
	return day_from_ymd(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

void clock_text(char *out, size_t size)
{
	time_t now = time(NULL);
	struct tm local;

	if (!localtime_r(&now, &local) || strftime(out, size, "%H:%M:%S", &local) == 0)
		text_copy(out, size, "");
}
