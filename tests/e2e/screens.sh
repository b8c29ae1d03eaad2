#!/bin/sh
# The pages of the demo as a reader would see them: whole screens, compared with the
# files in tests/e2e/screens. UPDATE=1 writes them anew.
. tests/e2e/lib.sh

# What the clock shows is no part of a page.
shown_now() {
	screen | sed 's/saved [0-9][0-9]:[0-9][0-9]:[0-9][0-9]/saved 07:42:11/'
}

is_like() {
	shown_now | cmp -s - "$here/screens/$1.txt"
}

unchanged() {
	wait_for 10 is_like "$1" && return
	shown_now | diff "$here/screens/$1.txt" -
	return 1
}

like() {
	[ "${UPDATE:-}" ] || { unchanged "$1"; return; }
	wait_for 10 settled && shown_now >"$here/screens/$1.txt"
}

# demo SIZE [VARIABLES]
demo() {
	start "$1" "${2:-} $prog demo"
	wait_for 20 shows '^ mothtally  '
}

to_run() {
	keys Enter
	wait_for 10 shows '^ Run'
}

to_week() {
	keys w
	wait_for 10 shows '^ Week'
}

help_shows() {
	keys '?'
	wait_for 10 shows '^ Keys'
	check "$1" like "$2"
	keys Escape
	wait_for 10 lacks '^ Keys'
}

# Some of a morning: counts, a new card, a full card and its question, a new lure, a
# skipped trap, one that was down, a note; the next count typed and not yet kept.
work_on_run() {
	keys 4 Enter + 1 2 Enter 5 8 + Enter Enter 0 '*' Enter - - Enter / Enter
	keys 3 . h e n s Enter Enter 7
	wait_for 10 shows '\[ 7 '
}

for size in 80x24 40x16; do
	demo $size
	check "Today at $size" like "today-$size"
	help_shows "its keys at $size" "today-keys-$size"
	to_week
	check "Week at $size" like "week-$size"
	help_shows "its keys at $size" "week-keys-$size"
	keys Down Down Enter
	wait_for 10 lacks '^ Week'
	check "why at $size" like "why-$size"
	keys Escape
	wait_for 10 shows '^ Week'
	keys Escape
	wait_for 10 shows '^ mothtally  '
	to_run
	check "Run at $size" like "run-$size"
	help_shows "its keys at $size" "run-keys-$size"
	work_on_run
	check "Run at $size with things entered" like "run-entered-$size"
done

demo 120x40
check "Today at 120x40" like today-120x40
to_week
check "Week at 120x40" like week-120x40
keys Escape
wait_for 10 shows '^ mothtally  '
to_run
work_on_run
check "Run at 120x40" like run-entered-120x40

# One colour shows the same; ASCII has one look, whatever it comes from.
demo 80x24 NO_COLOR=1
check "NO_COLOR: Today is the same" unchanged today-80x24
to_week
check "NO_COLOR: Week is the same" unchanged week-80x24
keys Escape
wait_for 10 shows '^ mothtally  '
to_run
work_on_run
check "NO_COLOR: Run is the same" unchanged run-entered-80x24

demo 80x24 LC_ALL=C
check "LC_ALL=C: Today" like today-ascii
to_week
check "LC_ALL=C: Week" like week-ascii
keys Escape
wait_for 10 shows '^ mothtally  '
to_run
work_on_run
check "LC_ALL=C: Run" like run-entered-ascii

demo 80x24 TERM=vt100
check "TERM=vt100: Today is that of LC_ALL=C" unchanged today-ascii
to_week
check "TERM=vt100: so is Week" unchanged week-ascii
keys Escape
wait_for 10 shows '^ mothtally  '
to_run
work_on_run
check "TERM=vt100: so is Run" unchanged run-entered-ascii

# The readme shows screens as they are.
readme_shows() {
	awk -v name="$1" '/^```/ { on = $0 == "```text " name; next } on' README.md |
		cmp -s - "tests/e2e/screens/$1.txt"
}
for screen in today-80x24 run-entered-80x24 flight-80x24; do
	check "README.md shows $screen as it is" readme_shows $screen
done

finish
