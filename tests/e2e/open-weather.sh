#!/bin/sh
# A whole series of open weather goes in as a file, and its season sums come out as
# another program computed them (tests/reference/degree_days_test.c has the same).
#
# The series: NOAA, a work of the U.S. Government in the public domain, as
# redistributed in the vega-datasets collection 3.2.1, weather.csv: Seattle and New
# York, degrees C. It is fetched by npm into the build folder, once; where that cannot
# be done, the checks are left out.
package=vega-datasets@3.2.1
sum=27219f1ca8dbd94c9b6f4b9f4f52ab2f1eb33dfdcf719cd9fc6481ed50b74549
folder=${BUILD:-build}/open-weather
series=$folder/weather.csv

is_it() {
	echo "$sum  $1" | sha256sum -c --status 2>/dev/null
}

# Before HOME becomes another one: npm has its settings there.
fetch() {
	mkdir -p "$folder" && command -v npm >/dev/null &&
		rm -f "$folder"/vega-datasets-*.tgz &&
		npm_config_fetch_retries=0 npm_config_update_notifier=false \
			timeout 12 npm pack --silent --pack-destination "$folder" \
			"$package" &&
		tar -xzOf "$folder"/vega-datasets-*.tgz package/data/weather.csv \
			>"$series.part" &&
		mv "$series.part" "$series"
	got=$?
	rm -f "$folder"/vega-datasets-*.tgz "$series.part"
	return $got
}

[ -f "$series" ] || fetch >/dev/null 2>&1
. tests/e2e/lib.sh

if [ ! -f "$series" ]; then
	echo "left out: $package cannot be had here"
	finish
fi
check "the series is the one that was meant" is_it "$series"
is_it "$series" || {
	rm -f "$series" # so that the next run fetches it anew
	finish
}

# The columns are looked up by name.
awk -F , '
NR == 1 {
	for (i = 1; i <= NF; i++)
		at[$i] = i
	print "station,date,min,max,unit"
	next
}
{ print $at["location"] "," $at["date"] "," $at["temp_min"] "," $at["temp_max"] ",C" }
' "$series" >"$work/weather.csv"

it() {
	$prog --book "$work/open.db" --today 2016-01-31 "$@"
}

says() {
	it "$@" >"$work/out" 2>&1
	grep -qx -- "$wanted" "$work/out" && return
	cat "$work/out"
	return 1
}

wanted='weather: 2 922 new'
check "four years of two places go in" says import weather "$work/weather.csv"
wanted='weather: 0 new, 2 922 already there'
check "and are passed over the second time" says import weather "$work/weather.csv"

# The year 2012 of a station, 50/88 F: its last running sum, how many days, how many
# missing.
year_sum() {
	cap='--cap 88F'
	case $2-$3 in average-none | sine-none) cap= ;; esac
	it degree-days --station "$1" --base 50F $cap --method "$2" --cutoff "$3" \
		--from 2012-01-01 --to 2012-12-31 --csv | tr -d '\r' | awk -F , '
		NR == 1 { for (i = 1; i <= NF; i++) at[$i] = i; next }
		{ n++; sum = $at["sum"]; missing = $at["missing"] }
		END { print sum, n, missing }'
}

# $4 as published to two decimals.
sums_to() {
	year_sum "$1" "$2" "$3" >"$work/out"
	awk -v want="$4" '{ off = $1 - want; if (off < 0) off = -off
		exit !(off <= 0.0051 && $2 == 366 && $3 == 0) }' "$work/out" && return
	echo "sum, days, missing: $(cat "$work/out"); not $4"
	return 1
}

while read -r method cutoff seattle new_york; do
	check "Seattle, $method, $cutoff" sums_to Seattle "$method" "$cutoff" "$seattle"
	check "New York, $method, $cutoff" \
		sums_to "New York" "$method" "$cutoff" "$new_york"
done <<'END'
sine none 2163.06 3966.72
sine horizontal 2159.51 3945.95
sine intermediate 2155.96 3925.19
sine vertical 2114.06 3718.74
triangle horizontal 2120.42 3917.15
triangle vertical 2093.88 3750.32
average none 2040.12 3852.99
average-clamped none 2276.24 4028.87
double-sine horizontal 2160.80 3944.05
END

# What the source keeps of it (tests/reference/weather-2012.csv) is of this series.
same_year() {
	awk -F , -v OFS=, 'FNR > 1 { print $1, $2, $3 + 0, $4 + 0 }' \
		tests/reference/weather-2012.csv | sort >"$work/kept"
	awk -F , -v OFS=, 'FNR > 1 && $2 <= "2013-01-01" {
		print $1, $2, $3 + 0, $4 + 0 }' "$work/weather.csv" | sort >"$work/series"
	[ -s "$work/kept" ] && diff "$work/kept" "$work/series"
}
check "the year that the tests keep is of this series" same_year

# Every day of it, by all methods and cutoffs, is the integral of its curve.
integral=${BUILD:-build}/tests/reference/gsl_degree_days_test
is_the_integral() {
	OPEN_WEATHER="$work/weather.csv" "$integral" >"$work/out" 2>&1 &&
		! grep -q SKIPPED "$work/out" && return
	cat "$work/out"
	return 1
}
if [ -x "$integral" ]; then
	check "its degree-days are GSL's integrals" is_the_integral
else
	echo "left out: the integrals, $integral is not built"
fi

finish
