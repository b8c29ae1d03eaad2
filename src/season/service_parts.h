/* service_parts.h - what lures and cards have in common. */
#ifndef SEASON_SERVICE_PARTS_H
#define SEASON_SERVICE_PARTS_H

#include "season/service.h"

enum service_state service_state_of(int32_t due, int32_t today, int32_t next_run);

#endif
