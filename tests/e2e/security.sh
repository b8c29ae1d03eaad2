#!/bin/sh
# Whose eyes and hands it is safe from: files that are their owner's alone from the first
# byte, links that somebody planted, control bytes that somebody wrote into a book, and
# how the program was built.
. tests/e2e/lib.sh

cd "$work"
today=2026-07-21
it() {
	$prog --book book.db --today $today "$@"
}

# The demo's files in a book.
kinds='traps places visits thresholds weather biofix dispensers treatments picks
	fruit-checks answers'
demo=$OLDPWD/share/demo
fill() {
	for kind in $kinds; do
		$prog --book "$1" --today $today import $kind "$demo/$kind.csv" \
			>>"$work/filled" 2>&1 || return 1
	done
}

# Whatever the umask: no file of the book is made with a mode that lets others in, nor
# has it one while it is made. What strace shows is every file that was made or opened.
modes() {
	awk '
		{ sub(/^[0-9]+ +/, "") }
		/^openat\(.*O_CREAT/ && !/ = -1 / && !/, 0600\) += / { print; bad = 1 }
		/^mkdir\(/ && !/ = -1 / && !/, 0700\) += 0/ { print; bad = 1 }
		/^f?chmod\(/ && !/, 0[67]00\) += 0/ { print; bad = 1 }
		/O_CREAT/ { made++ }
		/^mkdir/ { folders++ }
		END { exit bad || made < 3 || folders < 2 }' "$1"
}

private() {
	find "$1" -type d ! -perm 0700 -o -type f ! -perm 0600 | tee "$work/open_to_others"
	[ ! -s "$work/open_to_others" ]
}

if strace -o trace true 2>why; then
	for mask in 0000 0022 0777; do
		: >made
		(
			umask $mask
			strace -f -o trace -e trace=openat,open,mkdir,chmod,fchmod,creat \
				$prog --book "$work/new$mask/deep/book.db" --today $today \
				import traps "$demo/traps.csv" >made 2>&1
			strace -f -o trace2 -e trace=openat,open,mkdir,chmod,fchmod,creat \
				$prog --book "$work/new$mask/deep/book.db" --today $today \
				backup "$work/new$mask/copy.db" >>made 2>&1
			strace -f -o trace3 -e trace=openat,open,mkdir,chmod,fchmod,creat \
				$prog --book "$work/new$mask/deep/book.db" --today $today \
				import places "$demo/places.csv" >>made 2>&1
			strace -f -o trace4 -e trace=openat,open,mkdir,chmod,fchmod,creat \
				$prog --book "$work/new$mask/deep/book.db" --today $today \
				restore "$work/new$mask/copy.db" --yes >>made 2>&1
		)
		cat trace2 trace3 trace4 >>trace
		check "umask $mask: a book is made" test -s "new$mask/deep/book.db"
		check "umask $mask: and copied" test -s "new$mask/copy.db"
		check "umask $mask: by itself too" \
			test -s "new$mask/deep/backups/book-$today.db"
		check "umask $mask: and gone back" \
			eval 'ls "new$mask/deep" | grep -q replaced'
		check "umask $mask: no file lets others in, ever" modes trace
		check "umask $mask: nor afterwards" private "new$mask"
	done
	sed 's/0600) = /0644) = /' trace >wide
	check "a wider mode would have been noticed" eval '! modes wide >out'
else
	echo "left out, strace may not run here: $(cat why)"
fi

# Links that were planted where something is to be written: what they point to stays.
check "the demo's files go into a book" fill book.db
echo precious >victim
cp victim victim.was
cp book.db book.was

# refuses WHERE COMMAND ...: with a link planted there nothing is written through it
refuses() {
	where=$1
	shift
	for target in "$work/victim" "$work/not-there"; do
		rm -f "$where"
		ln -s "$target" "$where"
		it "$@" >out 2>err
		status=$?
		cmp victim victim.was || return 1
		[ ! -e not-there ] || { rm not-there; return 1; }
		[ $status -eq 5 ] || { cat out err; return 1; }
		[ "$(wc -l <err)" -eq 1 ] || return 1
		rm "$where"
	done
}
check "a link where a backup is to be" refuses copy.db backup copy.db
check "where visits are to be" refuses out.csv export visits out.csv
check "where waypoints are to be" refuses out.gpx export gpx out.gpx --farm Addermoor
check "where a map is to be" refuses out.geojson export geojson out.geojson
check "where a calendar is to be" refuses out.ics export icalendar out.ics
check "where a sheet is to be" refuses sheet.txt sheet -o sheet.txt
check "where a season's page is to be" refuses page.txt \
	season --farm Addermoor -o page.txt

printf 'farm,trap,date,outcome,count\nAddermoor,1,2026-07-20,counted,4\n' >more.csv
journal_not_followed() {
	ln -sf "$1" book.db-journal
	it import visits more.csv >out 2>err
	status=$?
	cmp victim victim.was && [ ! -e not-there ] && [ $status -eq 5 ] &&
		[ "$(wc -l <err)" -eq 1 ] || { cat err; return 1; }
	rm -f book.db-journal
	cmp book.db book.was
}
check "where the journal is to be" journal_not_followed "$work/victim"
check "and one to nowhere" journal_not_followed "$work/not-there"

daily_not_followed() {
	rm -rf backups
	mkdir -m 700 backups
	ln -s "$work/victim" backups/book-$today.db
	it import visits more.csv >out 2>err
	cmp victim victim.was
}
check "where the day's backup is to be" daily_not_followed
rm -rf backups
cp book.was other.db
cp book.was book.db
restore_not_followed() {
	it restore other.db --yes >out 2>err || { cat err; return 1; }
	cmp victim victim.was && [ ! -L book.db ] && [ -f book.db ]
}
ln -sf "$work/victim" book-replaced-2026-07-21-000000.db
check "where a replaced book is to be" restore_not_followed
rm -f book-replaced*

# Control bytes in every text of a book that may hold any: written past its CHECKs, as
# somebody who means harm would.
texts="SELECT t.name || ' ' || c.name FROM sqlite_schema t JOIN pragma_table_info(t.name)
	c WHERE t.type = 'table' AND c.type = 'TEXT' AND t.name NOT LIKE 'sqlite%' AND
	c.name NOT IN ('day', 'until', 'at', 'changed_at', 'started_at', 'ended_at',
	'stock_day', 'outcome', 'reason', 'decided', 'did', 'rule', 'condition', 'part',
	'kind', 'tree', 'op', 'old', 'place', 'measure', 'span_kind', 'comparator', 'unit',
	'dd_unit', 'dd_method', 'dd_cutoff', 'biofix_rule', 'outline', 'value', 'job',
	'type', 'kept', 'words', 'field', 'base', 'shown', 'file')"

# spoil BOOK [BUT]: a title for the terminal, a C1 byte, a turn of direction
spoil() {
	{
		echo 'PRAGMA ignore_check_constraints = ON;'
		sqlite3 "$1" "$texts" | grep -Ev "${2:-^$}" | while read -r table column; do
			echo "UPDATE $table SET $column = substr($column, 1, 3) ||
				char(27, 93, 48, 59, 113, 7, 0x9b, 0x202e) ||
				substr($column, 4) WHERE $column <> '';"
		done
	} >spoil.sql
	sqlite3 "$1" <spoil.sql
	[ "$(grep -c UPDATE spoil.sql)" -gt 35 ]
}

# Printable UTF-8, ends of lines and pages; nothing that turns a line around.
harmless() {
	! LC_ALL=C grep -anP '[\x00-\x08\x0b\x0e-\x1f\x7f]|\xc2[\x80-\x9f]|\xe2\x80[\x8b-\x8f\xaa-\xae]' \
		"$@" >bad && return
	head -n 3 bad | cat -v
	return 1
}

ended_so() {
	[ $status -eq "$wanted" ] || {
		cat -v err
		return 1
	}
}

# Reads lines of: STATUS COMMAND ...; what is printed is kept in out, err or made
walk() {
	while read -r wanted line; do
		[ "$wanted" ] || continue
		rm -f made*
		eval "it $line" >out 2>err
		status=$?
		touch made
		[ ! -s made.pdf ] || pdftotext made.pdf made
		cat out err made >>seen
		check "mothtally $line: $1, status $wanted" ended_so
		check "mothtally $line: $1, nothing harmful" harmless out err made
	done
}

rm -rf backups
cp book.was book.db
check "a book is spoilt" spoil book.db
walk "all spoilt" <<'END'
0 week
0 week --csv
0 due
0 due --csv
0 sheet
0 sheet --blank -o made
0 record
0 record --csv
0 export traps
0 export visits made
0 export farms
0 export blocks
0 export pests
0 export lures
0 export cards
0 export thresholds
0 export places
0 export weather
0 export stations
0 export treatments
0 export picks
0 export dispensers
0 export fruit-checks
0 export answers
0 export biofix
0 export settings
0 export geojson made
0 export icalendar made
0 restore
5 check
4 week --farm Nowhere
4 flight --pest XX
END
check "and it was seen" grep -q '?\]0;q' seen

cp book.was book.db
check "a book is spoilt but for names that commands ask for" \
	spoil book.db '^(pest code|farm name|station name)$'
pdf=$($prog --book book.db --today $today sheet -o made.pdf >out 2>&1 && echo yes)
walk "spoilt" <<END
0 flight --pest CM
0 flight --pest CM --csv
0 season --farm Addermoor
0 hotspots --pest CM
0 hotspots --pest CM --csv
0 degree-days --station Weir --pest CM --from 2026-05-05
0 export gpx made --farm Addermoor
${pdf:+0 sheet -o made.pdf}
${pdf:+0 season --farm Addermoor -o made.pdf}
END

# The pages, all that they send: their own sequences are the terminal's business.
no_title() {
	! LC_ALL=C grep -aqP '\x1b\]0;q\x07|\xc2\x9b|\xe2\x80\xae' "$work/sent"
}
start 100x30 true
wait_for 10 shows '^\$'
tmux pipe-pane "cat >$work/sent"
text "clear; $prog --book $work/book.db --today $today"
keys Enter
check "the pages open on it" wait_for 20 shows 'q quit'
for key in w f h s b d c r; do
	keys $key
	wait_for 5 settled
	keys Escape
	wait_for 10 shows 'q quit'
done
keys Enter
wait_for 5 settled
keys Down Down .
wait_for 5 settled
check "nothing of it reaches the terminal" no_title
check "though it is shown" grep -aq '?\]0;q' sent
keys Escape Escape Escape q
stop

# How it was built, looked at in the program itself.
has() {
	readelf -W "$1" "$prog" >elf 2>&1 && grep -Eq -- "$2" elf
}
if [ "${SANITIZED:-}" ] || ! command -v readelf >out; then
	echo "left out: the flags of the build"
else
	check "it lies elsewhere at each start" has -h 'Type: +DYN'
	check "it is no library" has -d 'FLAGS_1.* PIE'
	check "its tables are read-only before it runs" has -l GNU_RELRO
	check "all of them" has -d 'BIND_NOW'
	check "its stack does not run" eval 'has -l "GNU_STACK .* RW " && ! has -l "GNU_STACK .* RWE"'
	check "its stack is watched" has --dyn-syms '__stack_chk_fail'
	check "writes into buffers are watched" has --dyn-syms '__(v?snprintf|memcpy|strcpy)_chk'
	check "no part can be written and run" eval '! has -l "LOAD .* RWE"'
	check "no path of the builder is searched" eval '! has -d "R(UN)?PATH"'
fi

finish
