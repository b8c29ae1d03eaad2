/* entry_samples.h - a family of records, a list and a form filled by hand. */
#ifndef TESTS_SCREEN_ENTRY_SAMPLES_H
#define TESTS_SCREEN_ENTRY_SAMPLES_H

#include "answers/entry.h"
#include "screen/samples.h"

enum { SAMPLE_BLOCK = 1, SAMPLE_LABEL, SAMPLE_PEST, SAMPLE_LURE, SAMPLE_HIDDEN };
enum { SAMPLE_LIFE = 6, SAMPLE_HUNG, SAMPLE_NOTE, SAMPLE_COLUMNS };

static inline const struct entry_family *sample_family(void)
{
	static const struct column columns[SAMPLE_COLUMNS] = {
		{ .name = "farm",
			.type = &value_text,
			.hi = NAME_BYTES,
			.needed = true,
			.help = "Farm of the trap.",
			.label = "farm",
			.pick = PICK_FARM,
			.list_cols = 16 },
		{ .name = "block",
			.type = &value_text,
			.hi = NAME_BYTES,
			.needed = true,
			.help = "Block of the trap; in a file any other.",
			.form_help = "Block of the trap.",
			.label = "block",
			.pick = PICK_BLOCK,
			.list_cols = 18 },
		{ .name = "trap",
			.type = &value_text,
			.hi = NAME_BYTES,
			.needed = true,
			.help = "Number or name of the trap.",
			.label = "label",
			.list_cols = 8 },
		{ .name = "pest",
			.type = &value_text,
			.hi = CODE_BYTES,
			.needed = true,
			.help = "Code of its one pest.",
			.label = "pest",
			.pick = PICK_PEST,
			.list_cols = 6 },
		{ .name = "lure",
			.type = &value_text,
			.hi = NAME_BYTES,
			.help = "Lure kind that it usually gets.",
			.label = "lure",
			.pick = PICK_LURE,
			.list_cols = 14 },
		{ .name = "hidden", .type = &value_text, .hi = NAME_BYTES },
		{ .name = "life",
			.type = &value_int,
			.lo = 1,
			.hi = 366,
			.help = "Days that it lasts.",
			.label = "life in days" },
		{ .name = "hung",
			.type = &value_day,
			.help = "Day on which it was hung.",
			.label = "hung on" },
		{ .name = "note",
			.type = &value_text,
			.hi = NOTE_BYTES,
			.help = "Anything worth knowing.",
			.label = "note" },
	};
	static const struct entry_family family = { .name = "traps",
		.one = "trap",
		.help = "Traps.",
		.columns = columns,
		.n_columns = SAMPLE_COLUMNS,
		.can_add = true,
		.can_retire = true,
		.can_move = true };

	return &family;
}

/* Nothing can be added, moved or put away. */
static inline const struct entry_family *sample_settings(void)
{
	static const struct column columns[] = {
		{ .name = "name",
			.type = &value_text,
			.hi = NAME_BYTES,
			.list_cols = 20 },
		{ .name = "value",
			.type = &value_text,
			.hi = NOTE_BYTES,
			.help = "What it is.",
			.label = "value",
			.list_cols = 12 },
	};
	static const struct entry_family family = {
		.name = "settings", .one = "setting", .columns = columns, .n_columns = 2
	};

	return &family;
}

/* n traps of one farm, the third one pulled. The rows are the caller's to free. */
static inline struct entry_list sample_entries(size_t n)
{
	struct entry_list l = { .ask = { .kind = ENTRY_TRAPS } };

	SET(l.title, "Traps");
	l.rows = mem_new(n, sizeof *l.rows);
	l.n = n;
	for (size_t i = 0; i < n; i++) {
		struct entry_row *r = &l.rows[i];

		r->id = (int64_t)i + 1;
		SET(r->cells[0], i % 2 ? "Drumsorrel" : "Addermoor");
		SET(r->cells[1], i % 3 ? "Weir Side" : "Old Kiln");
		snprintf(r->cells[2], sizeof r->cells[2], "%zu", i + 1);
		SET(r->cells[3], i % 4 ? "CM" : "OFM");
		SET(r->cells[4], "CM long-life");
		SET(r->note, i == 2 ? "pulled 3 Jun" : "hangs since 4 May");
		r->is_retired = i == 2;
	}
	return l;
}

static inline struct entry_choices sample_choices(bool only)
{
	static struct entry_choice items[4];
	struct entry_choices c = { .items = items, .n = 4, .only = only };

	SET(items[0].text, "CM");
	SET(items[0].help, "codling moth");
	SET(items[1].text, "OBLR");
	SET(items[1].help, "obliquebanded leafroller");
	SET(items[2].text, "OFM");
	SET(items[2].help, "Oriental fruit moth");
	SET(items[3].text, "PTB");
	SET(items[3].help, "peach twig borer");
	return c;
}

/* Trap 7 of Addermoor, as the book has it. */
static inline const struct entry *sample_entry(void)
{
	static struct entry r;

	r = (struct entry){ .kind = ENTRY_TRAPS, .id = 7 };
	SET(r.name, "trap 7 of Addermoor");
	SET(r.text[0], "Addermoor");
	SET(r.text[SAMPLE_BLOCK], "Old Kiln");
	SET(r.text[SAMPLE_LABEL], "7");
	SET(r.text[SAMPLE_PEST], "CM");
	SET(r.text[SAMPLE_LURE], "CM long-life");
	SET(r.text[SAMPLE_LIFE], "84");
	SET(r.text[SAMPLE_HUNG], "2026-05-04");
	SET(r.text[SAMPLE_NOTE], "behind the big gate");
	return &r;
}

/* A new one, whose pest nobody could guess. */
static inline const struct entry *sample_new_entry(void)
{
	static struct entry r;

	r = *sample_entry();
	r.id = 0;
	SET(r.name, "new trap");
	SET(r.text[SAMPLE_LABEL], "8");
	SET(r.text[SAMPLE_PEST], "");
	SET(r.text[SAMPLE_NOTE], "");
	return &r;
}

/* As sample_key, and < left, > right, \t Tab, \x7f Delete, { Home, } End. */
static inline struct input entry_key_of(char ch)
{
	switch (ch) {
	case '<':
		return (struct input){ INPUT_LEFT, 0 };
	case '>':
		return (struct input){ INPUT_RIGHT, 0 };
	case '\t':
		return (struct input){ INPUT_TAB, 0 };
	case '\x7f':
		return (struct input){ INPUT_DELETE, 0 };
	case '{':
		return (struct input){ INPUT_HOME, 0 };
	case '}':
		return (struct input){ INPUT_END, 0 };
	default:
		return sample_key(ch);
	}
}

#endif
