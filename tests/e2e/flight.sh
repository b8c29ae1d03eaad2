#!/bin/sh
# The season: the Flight and Weather pages of the demo as a reader sees them; on a book
# of its own weather typed from the number pad, the biofix taken as it is suggested,
# degree-days by both; files of weather, good and bad.
. tests/e2e/lib.sh
. tests/e2e/farm

like() {
	same_screen "screens/$1.txt"
}

flight_of_addermoor() {
	start "$1" "$prog demo"
	wait_for 20 shows '^ mothtally  '
	wait_for 10 shows '^ > Drumsorrel'
	keys Down
	wait_for 10 shows '^ > Addermoor'
	keys f
	wait_for 10 shows '^ Flight'
}

# Pages down until the text is there.
page_down_to() {
	pages=0
	until shows "$1"; do
		pages=$((pages + 1))
		[ $pages -le 12 ] || return 1
		keys NPage
		wait_for 10 settled
	done
}

for size in 80x24 40x16; do
	flight_of_addermoor $size
	check "Flight at $size" like "flight-$size"
done

flight_of_addermoor 80x24
check "what comes next stands below" page_down_to 'What comes next'
check "with its source" page_down_to 'Intermountain fruit guide'
check "and that timing is local" page_down_to 'the product label is the law'
keys m
wait_for 10 shows '^ Weather'
check "Weather at 80x24" like weather-80x24
keys Escape
wait_for 10 shows '^ Flight'
keys Escape
check "and back on Today" wait_for 10 shows '^ mothtally  '

# The demo leaves the biofix of one farm open.
start 80x24 "$prog demo"
wait_for 20 shows '^ mothtally  '
keys Down Down f
wait_for 10 shows '^ Flight  CM  Hather Bend'
check "an open biofix is said, and one suggested" shows 'after Thu 23 Apr, by Thu 7 May'
keys b
check "what Enter would take is said" wait_for 10 shows 'Enter takes Thu 7 May'
keys Enter
check "the suggestion is taken" wait_for 10 shows '^ biofix Thu 7 May 2026'
check "degree-days then show" shows 'at least 1[0-9]* F degree-days, Thu 7 May to'
keys b
wait_for 10 shows 'takes it out'
keys 0 5 - 0 5 Enter
check "a date of one's own overrules it" wait_for 10 shows '^ biofix Tue 5 May 2026'
keys b
wait_for 10 shows 'takes it out'
keys - Enter
check "and it can be taken out" wait_for 10 shows '^ biofix not set'

# A book of its own.
book="$work/season.db"
make_farm "$book"

it() {
	$prog --book "$book" --today $day "$@"
}

quietly() {
	"$@" >"$work/out" 2>&1 && return
	cat "$work/out"
	return 1
}

# The days that the book has, as DATE MIN MAX.
weather_of() {
	it export weather | tr -d '\r' | awk -F , 'NR > 1 { print $2, $3, $4 }' | sort
}

has_days() {
	cat >"$work/expected"
	weather_of >"$work/got"
	diff "$work/expected" "$work/got"
}

open_flight() {
	start 80x24 "$prog --book $book --today $day; echo ended with \$?"
	wait_for 20 shows 'q quit'
	keys f
	wait_for 10 shows '^ Flight'
}

program() {
	ps -o pid= --ppid "$shell_pid"
}

open_flight
check "no biofix yet" shows '^ biofix not set'
keys m
wait_for 10 shows '^ Weather'
keys n
wait_for 10 shows 'name'
keys M i l l Enter
check "a new station is there, by its name" wait_for 10 shows '^ Weather  Mill'
keys 1 2 . 5 Enter 2 7 Enter
check "a day is two numbers and Enter" wait_for 10 shows '12\.5 *27\.0'
keys 1 1 Enter 2 4 . 5 Enter
check "the second day" wait_for 10 shows '11\.0 *24\.5'
keys 9 . 5 Enter 2 1 Enter
check "the third day" wait_for 10 shows '9\.5 *21\.0'
check "all three are on the disk" has_days <<'END'
2026-07-19 9.5000 21
2026-07-20 11 24.5000
2026-07-21 12.5000 27
END
keys Escape
wait_for 10 shows '^ Flight'
keys b
wait_for 10 shows 'Enter takes'
keys Enter
check "the suggested biofix is taken" wait_for 10 shows '^ biofix Tue 5 May 2026'
check "degree-days say what is missing" \
	wait_for 10 shows 'at least [0-9]* F degree-days, Tue 5 May to Tue 21 Jul'
it export biofix >"$work/biofix"
check "it is on the disk, with its rule" grep -q '^Quill End,CM,2026,2026-05-05,sustained' \
	"$work/biofix"

keys m
wait_for 10 shows '^ Weather'
keys 8 Enter 1 9 . 5 Enter
wait_for 10 shows '8\.0 *19\.5'
kill -9 $(program)
check "kill -9 right after a day: it is there" has_days <<'END'
2026-07-18 8 19.5000
2026-07-19 9.5000 21
2026-07-20 11 24.5000
2026-07-21 12.5000 27
END
check "and the book is sound" quietly it check

# A file of the open archive: one element a line and month, tenths of a degree C,
# -9999 where nothing was read, a letter for what failed its checks.
dly() {
	awk -v element="$1" -v values="$2" 'BEGIN {
		n = split(values, value, " ")
		printf "XX000000001202607%s", element
		for (i = 1; i <= 31; i++) {
			split(i <= n ? value[i] : "-9999", part, "/")
			printf "%5d %s ", part[1], part[2] == "" ? " " : part[2]
		}
		print ""
	}'
}

{
	dly TMIN "120 130 140/I 150"
	dly TMAX "250 260 270 280"
} >"$work/station.dly"
check "a file of the open archive goes in" quietly it import ghcn-dly "$work/station.dly"
weather_of >"$work/got"
check "its days are there, in degrees C" grep -qx '2026-07-02 13 26' "$work/got"
check "what failed the archive's checks is missing" \
	grep -qx '2026-07-03  27' "$work/got"

# Files that are refused: a sentence with line and cause, and the book as it was.
cp "$book" "$work/before.db"
refused() {
	it import "$@" >"$work/out" 2>"$work/err"
	status=$?
	[ $status -eq 3 ] && [ ! -s "$work/out" ] && return
	echo "ended with $status"
	cat "$work/out" "$work/err"
	return 1
}

says() {
	grep -q -- "$1" "$work/err" && return
	cat "$work/err"
	return 1
}

while IFS='|' read -r what rows complaint; do
	printf "station,date,min,max,unit\n$rows\n" >"$work/bad.csv"
	check "$what: refused" refused weather "$work/bad.csv"
	check "$what: line and cause are named" says "$complaint"
	check "$what: the book is as it was" cmp "$book" "$work/before.db"
done <<'END'
30 February|Mill,2026-02-30,4,12,C|line 2, column date: "2026-02-30"
29 February of a common year|Mill,2026-02-29,4,12,C|line 2, column date: "2026-02-29"
a day ahead|Mill,2026-07-22,4,12,C|line 2, column date: "2026-07-22" lies after today
a day twice|Mill,2026-06-01,4,12,C\nMill,2026-06-01,4,12,C|line 3, column date
minimum above maximum|Mill,2026-06-01,14,12,C|line 2, column min
F under the heading of C|Mill,2026-06-01,51,77,C|line 2, column max
an impossible jump|Mill,2026-06-01,4,12,C\nMill,2026-06-02,45,59,C|line 3
no unit|Mill,2026-06-01,4,12,|line 2, column unit
a third unit|Mill,2026-06-01,277,285,K|line 2, column unit
a word for a number|Mill,2026-06-01,cold,12,C|line 2, column min
another value than the book has|Mill,2026-07-20,3,9,C|line 2
END

printf 'Mill\n' >"$work/bad.dly"
check "no file of the archive: refused" refused ghcn-dly "$work/bad.dly"
check "and the line is named" says 'line 1'
check "and nothing is changed" cmp "$book" "$work/before.db"

finish
