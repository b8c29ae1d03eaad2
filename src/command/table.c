/* table.c - the table of commands. */
#include "base/words.h"
#include "command/command.h"

const struct command commands[] = {
	{ "week", "[--farm FARM] [--pest PEST] [--csv]",
		N_("Judges every trap and block this week: catch, threshold, verdict."),
		"mothtally week --pest CM", command_week },
	{ "due", "[--farm FARM] [--csv]",
		N_("Says which runs, lures and cards are due and what to bring."),
		"mothtally due", command_due },
	{ "sheet",
		"[--farm FARM] [--blank] [--paper a4|letter] [--format "
		"pdf|text] [-o FILE]",
		N_("Sets the weekly scouting sheet, filled in or blank to carry; a "
		   "FILE that ends in .pdf becomes a PDF."),
		"mothtally sheet --blank --paper letter", command_sheet },
	{ "print",
		"[--printer NAME] [sheet [--farm FARM] [--blank] [--paper a4|letter] "
		"[--format pdf|text] | season [--farm FARM] [--season YEAR] [--paper "
		"a4|letter] [--format pdf|text]]",
		N_("Sends the weekly sheet, or a season's page, to the printer, and "
		   "says what became of it."),
		"mothtally print sheet --blank", command_print },
	{ "flight",
		"--pest PEST [--farm FARM] [--block BLOCK] [--trap TRAP] [--season "
		"YEAR] [--csv]",
		N_("Shows a season: its flights, the biofix, what comes next; all "
		   "farms together, then each, or the one named."),
		"mothtally flight --pest CM", command_flight },
	{ "season",
		"[--farm FARM] [--season YEAR] [--paper a4|letter] [--format "
		"pdf|text] [-o FILE]",
		N_("Sets a season on paper for the farm's owner: each block's flights "
		   "and thresholds, last season behind them, what was over, decided "
		   "and done, hot spots, sources; a PDF with charts and a map when "
		   "FILE ends in .pdf."),
		"mothtally season -o season.pdf", command_season },
	{ "record", "[--farm FARM] [--block BLOCK] [--from DATE] [--to DATE] [--csv]",
		N_("The record of treatments, of this season or a span; with --block "
		   "the block's season on one page before it."),
		"mothtally record --from 2026-03-01", command_record },
	{ "hotspots", "--pest PEST [--farm FARM] [--season YEAR] [--flight N] [--csv]",
		N_("Says which blocks, edges and neighbourhoods catch more than the "
		   "rest, and whether the catch falls away from a source."),
		"mothtally hotspots --pest CM", command_hotspots },
	{ "degree-days",
		"--station STATION (--pest PEST | --base N [--cap N] --method METHOD "
		"--cutoff CUTOFF) --from DATE [--to DATE] [--csv]",
		N_("Sums degree-days day by day; N is a temperature with its unit, "
		   "such as 50F or 31.1C."),
		"mothtally degree-days --station Weir --pest CM --from "
		"2026-05-05",
		command_degree_days },
	{ "import",
		"KIND FILE | thresholds FILE --replace | KIND --columns | "
		"thresholds --published [--pest CODE] [--crop CROP] "
		"[--condition CONDITION] [--source WORDS] | ghcn-dly FILE "
		"[--station ID] | ghcn-year FILE [--station ID] | gpx FILE --farm "
		"FARM | geojson FILE --farm FARM",
		N_("Takes in a CSV file, all or nothing; with --replace it becomes all "
		   "of the thresholds; --columns tells what a file may hold; "
		   "--published takes figures that come with the program; ghcn-dly "
		   "and ghcn-year take temperatures in the layouts of GHCN-Daily, gpx "
		   "the positions of a farm's traps from waypoints, geojson those of "
		   "its traps and sources from a map."),
		"mothtally import thresholds --published --pest CM --source CM1",
		command_import },
	{ "export",
		"KIND [FILE] | gpx [FILE] --farm FARM | geojson [FILE] [--farm FARM] | "
		"icalendar [FILE] [--farm FARM]",
		N_("Writes a kind of records as CSV, a farm's traps as GPX waypoints or "
		   "traps and sources as a GeoJSON map, fit to be imported again; or "
		   "runs, lures, cards, re-entry and picks ahead as a calendar."),
		"mothtally export visits visits.csv", command_export },
	{ "merge", "FILE [--look] | --undo | --open",
		N_("Brings another scout's book into this one, in any order and as "
		   "often as you like; --look says what would happen; --undo goes back "
		   "to the book before the latest merge; --open lists what is left to "
		   "settle."),
		"mothtally merge --open", command_merge },
	{ "check", "", N_("Looks whether the book is sound."), "mothtally check",
		command_check },
	{ "backup", "FILE",
		N_("Copies the book to a new file; safe while the book is in use."),
		"mothtally backup copy.db", command_backup },
	{ "restore", "[BACKUP [--yes]]",
		N_("Lists the backups and what is in each; shows what one would "
		   "replace; with --yes goes back to it."),
		"mothtally restore", command_restore },
	{ "proof", "[--csv]",
		N_("Shows the published cases that the judgement is checked against."),
		"mothtally proof", command_proof },
	{ "completion", "bash|zsh",
		N_("Writes what the shell reads to complete commands, options, kinds "
		   "and names of files."),
		"mothtally completion bash", command_completion },
	{ "demo", "[--print]",
		N_("Opens the pages on an invented book, or prints from it."),
		"mothtally demo --print", command_demo },
	{ NULL, NULL, NULL, NULL, NULL },
};
