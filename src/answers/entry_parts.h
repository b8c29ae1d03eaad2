/* entry_parts.h - inside src/answers: what the families share. */
#ifndef ENTRY_PARTS_H
#define ENTRY_PARTS_H

#include "answers/entry_rows.h"

/* Stands in a table whose AT() knows its row. */
#define RETIRED_COLUMN                                                                 \
	{                                                                              \
		.name = "retired", AT(retired), .type = &value_word, .hi = 1,          \
		.none = -1, .word = column_yes_no,                                     \
		.help = N_("Whether it is put away: offered nowhere, still in past "   \
			   "seasons; empty: no.")                                      \
	}

#endif
