/* run_keys.h - what the keys of the run page do; the table is run_page_keys(). */
#ifndef SCREEN_RUN_KEYS_H
#define SCREEN_RUN_KEYS_H

#include "screen/list.h"

enum run_action {
	RUN_DIGIT = LIST_OTHERS,
	RUN_KEEP,
	RUN_SKIP,
	RUN_PASS,
	RUN_PLUS,
	RUN_CARD,
	RUN_LURE,
	RUN_SPOIL,
	RUN_NOTE,
	RUN_STIR,
	RUN_FEMALES,
	RUN_OTHERS,
	RUN_SCOUT,
	RUN_DATE,
	RUN_UNDO,
	RUN_ERASE,
	RUN_WEEK,
	RUN_WHY,
	RUN_DIARY,
	RUN_LEAVE,
	RUN_HELP,
	RUN_ACTIONS
};

#endif
