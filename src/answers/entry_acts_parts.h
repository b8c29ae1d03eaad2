/* entry_acts_parts.h - inside src/answers: what the rows of acts share. */
#ifndef ENTRY_ACTS_PARTS_H
#define ENTRY_ACTS_PARTS_H

#include "answers/entry_acts.h"

/* Stand in a table whose AT() knows its row. */
#define NAME_COLUMN(word, field, bytes, says)                                          \
	.name = word, AT(field), .type = &value_text, .hi = bytes, .help = says

#define FARM_COLUMN                                                                    \
	{                                                                              \
		NAME_COLUMN("farm", farm, NAME_BYTES,                                  \
			N_("Farm of the block; the book must have it.")),              \
			.needed = true, .form_help = N_("Farm of the block."),         \
			.label = N_("farm"), .pick = PICK_FARM, .list_cols = 16        \
	}

#define BLOCK_COLUMN                                                                   \
	{                                                                              \
		NAME_COLUMN("block", block, NAME_BYTES,                                \
			N_("Block of the farm; the book must have it.")),              \
			.needed = true, .form_help = N_("Block of the farm."),         \
			.label = N_("block"), .pick = PICK_BLOCK, .list_cols = 16      \
	}

#define NOTE_COLUMN                                                                    \
	{                                                                              \
		NAME_COLUMN(                                                           \
			"note", note, NOTE_BYTES, N_("Anything else, in one line.")),  \
			.label = N_("note")                                            \
	}

/* Looks up where the row is; each of the names may be missing in the book, which is
 * heard for all of them. pest may be NULL: the row has none. */
bool act_place(struct hearing *h, const struct known *k, const char *farm,
	const char *block, int64_t *id);
bool act_pest(
	struct hearing *h, const struct known *k, const char *code, int64_t *pest);
/* Writes farm and block of a record into its row, NAME_BYTES each. */
void act_names(const struct known *k, int64_t block, char *farm, char *name);

/* False: it lies after today, which is heard: what is entered as done is done. */
bool act_done_by_today(struct hearing *h, const char *column, int32_t day);

#endif
