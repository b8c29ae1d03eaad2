#!/bin/sh
# Writes C that names the words of the shipped tables which people see: what pests, lures,
# cards, crops and published events are called, notes, and what is said beside a source.
# Published titles of thresholds are left in their language. `make` compiles it,
# tests/catalogue takes the words out of it.
set -eu
folder=$(dirname "$0")

# columns FILE NAME ...: the values of these columns, a line each.
columns() {
	file=$1
	shift
	awk -v wanted=" $* " '
	function field() {
		if (match($0, /^"([^"]|"")*"/)) {
			value = substr($0, 2, RLENGTH - 2)
			gsub(/""/, "\"", value)
		} else {
			match($0, /^[^,]*/)
			value = substr($0, 1, RLENGTH)
		}
		$0 = substr($0, RLENGTH + 2)
		return value
	}
	{
		for (i = 1; $0 != ""; i++) {
			word = field()
			if (NR == 1)
				name[i] = word
			else if (index(wanted, " " name[i] " ") && word ~ /[a-z]/)
				print word
		}
		if (NR > 1)
			next
		for (i in name)
			known = known " " name[i] " "
		for (i = split(wanted, each); i > 0; i--)
			if (!index(known, " " each[i] " ")) {
				print FILENAME ": no column " each[i] >"/dev/stderr"
				exit 1
			}
	}' "$folder/$file"
}

# Assigned first where some are left out: in a pipe a column that is gone would not end it.
words() {
	columns pests.csv name
	columns lures.csv lure source
	columns cards.csv card source
	columns degree-days.csv source
	columns phenology.csv event generation biofix source
	columns thresholds.csv crop note
	columns demo/traps.csv crop
	notes=$(columns demo/thresholds.csv note source)
	printf '%s\n' "$notes" | sed '/^[A-Z][A-Z0-9]*: /d'
	columns demo/visits.csv note
	columns demo/treatments.csv product note
	columns demo/picks.csv note
	columns demo/dispensers.csv type
	columns demo/fruit-checks.csv note
	columns demo/answers.csv note
	rules=$(columns demo/biofix.csv rule)
	printf '%s\n' "$rules" | sed -n '/ /p'
}

list=$(words)
echo '#include "base/shipped.h"'
echo '#include "base/words.h"'
echo 'const char *const shipped_words[] = {'
echo "$list" | LC_ALL=C sort -u | sed -e 's/["\\]/\\&/g' -e 's/.*/	NC_("shipped", "&"),/' \
	-e '/%/s,^,	/* xgettext:no-c-format */,'
echo '	NULL };'
