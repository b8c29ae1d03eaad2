/* memory_tries.h - the commands within which memory gives out; what each must do. */
#ifndef TESTS_COMMAND_MEMORY_TRIES_H
#define TESTS_COMMAND_MEMORY_TRIES_H

/* What is run of each command; ~ in a word stands for a blank. */
static const struct
try {
	const char *line;
	enum {
		READS,
		WRITES, /* the book may be another one afterwards */
		STAMPS, /* the file it makes holds what no two runs have in common */
		SAYS,   /* it says of each file what kept it from being read */
		BREAKS, /* as a library that it needs: it may end anyhow */
	} does;
}
tries[] = {
	{ "week", READS },
	{ "week --csv", READS },
	{ "due", READS },
	{ "due --csv", READS },
	{ "sheet --format text", READS },
	{ "sheet --blank --format text -o out", READS },
	{ "sheet --format pdf -o out", BREAKS },
	{ "print sheet --format text", READS },
	{ "flight --pest CM", READS },
	{ "flight --pest CM --csv", READS },
	{ "season --farm Addermoor --format text", READS },
	{ "record", READS },
	{ "record --csv", READS },
	{ "hotspots --pest CM", READS },
	{ "degree-days --station Weir --pest CM --from 2026-05-05", READS },
	{ "import thresholds --published --source CM1", WRITES },
	{ "import visits more.csv", WRITES },
	{ "import weather weather.csv", WRITES },
	{ "import thresholds thresholds.csv --replace", WRITES },
	{ "import gpx spots.gpx --farm Addermoor", WRITES },
	{ "import geojson spots.geojson --farm Addermoor", WRITES },
	{ "export visits out", READS },
	{ "export thresholds", READS },
	{ "export gpx out --farm Addermoor", READS },
	{ "export geojson out", READS },
	{ "export icalendar out", BREAKS },
	{ "merge other.db --look", READS },
	{ "merge other.db", WRITES },
	{ "merge --open", READS },
	{ "merge --undo", READS },
	{ "check", READS },
	{ "backup out", STAMPS },
	{ "restore", SAYS },
	{ "restore other.db --yes", WRITES },
	{ "proof", READS },
	{ "completion bash", READS },
	{ "demo --print", READS },
	{ "week --help", READS },
	{ "week --farm Nowhere", READS },
};

#endif
