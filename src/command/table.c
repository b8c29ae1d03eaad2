#include "base/words.h"
#include "command/command.h"

const struct command commands[] = {
	{ "week", "[--farm FARM] [--pest PEST] [--csv]",
		N_("Judges every trap and block this week: catch, threshold, verdict."),
		"mothtally week --pest CM", command_week },
	{ "due", "[--farm FARM] [--csv]",
		N_("Says which runs, lures and cards are due and what to bring."),
		"mothtally due", command_due },
	{ "sheet", "[--farm FARM] [--blank] [--paper a4|letter] [-o FILE]",
		N_("Sets the weekly scouting sheet, filled in or blank to carry."),
		"mothtally sheet --blank --paper letter", command_sheet },
	{ "import",
		"KIND FILE | thresholds FILE --replace | KIND --columns | "
		"thresholds --published [--pest CODE] [--crop CROP] "
		"[--condition CONDITION] [--source WORDS]",
		N_("Takes in a CSV file, all or nothing; with --replace it becomes all "
		   "of the thresholds; --columns tells what a file may hold; "
		   "--published takes figures that come with the program."),
		"mothtally import thresholds --published --pest CM --source CM1",
		command_import },
	{ "export", "KIND [FILE]",
		N_("Writes a kind of records as CSV, fit to be imported again."),
		"mothtally export visits visits.csv", command_export },
	{ "check", "", N_("Looks whether the book is sound."), "mothtally check",
		command_check },
	{ "backup", "FILE",
		N_("Copies the book to a new file; safe while the book is in use."),
		"mothtally backup copy.db", command_backup },
	{ "proof", "[--csv]",
		N_("Shows the published cases that the judgement is checked against."),
		"mothtally proof", command_proof },
	{ "demo", "[--print]",
		N_("Opens the pages on an invented book, or prints from it."),
		"mothtally demo --print", command_demo },
	{ NULL, NULL, NULL, NULL, NULL },
};
