#!/bin/sh
# The run, typed as it is in the truck: 40 counts from the number pad alone, left and
# taken up again, every flag, corrections, undo, back entry.
. tests/e2e/lib.sh
. tests/e2e/farm

base="$work/base.db"
make_farm "$base"

# open_run BOOK [DATE]: the pages, and in them the run
open_run() {
	start 80x24 "$prog --book $1 --today ${2:-$day}; echo ended with \$?"
	wait_for 20 shows 'q quit'
	keys Enter
	wait_for 10 shows 'of 40 done'
}

fresh() {
	cp "$base" "$work/$1.db"
	book="$work/$1.db"
}

# Cursor and screen of one moment.
moment() {
	tmux display-message -p '#{cursor_x} #{cursor_y}' \; capture-pane -p
}

# The cursor is on the line of that trap.
on() {
	moment | awk -v trap="$1" '
		NR == 1 { row = $2 + 2 }
		NR == row && /^ > / && $2 == trap { there = 1 }
		END { exit !there }'
}

on_with_done() {
	on "$1" && shows "^ $2 of 40 done"
}

# at TRAP DONE: so many are done, and the cursor is on its line.
at() {
	wait_for 10 on_with_done "$1" "$2"
}

program() {
	ps -o pid= --ppid "$shell_pid"
}

expect_run() {
	i=1
	while [ $i -le 40 ]; do
		echo "$i $(count_of $i)"
		i=$((i + 1))
	done
}

# True if the book has exactly what is on standard input.
book_has() {
	cat >"$work/expected"
	saved "$book" >"$work/got"
	diff "$work/expected" "$work/got"
}

sound() {
	$prog --book "$book" --today $day check >/dev/null
}

plain() {
	set -- "$(count_of "$1")"
	case $1 in
	??) keys "${1%?}" "${1#?}" Enter ;;
	*) keys "$1" Enter ;;
	esac
}

pad() {
	set -- "$(count_of "$1")"
	case $1 in
	??) keys "KP${1%?}" "KP${1#?}" KPEnter ;;
	*) keys "KP$1" KPEnter ;;
	esac
}

# enter HOW FROM TO: each count is kept, and the cursor is on the next trap. After one
# that is not the others would be wrong too.
enter() {
	i=$2 failed_before=$failed
	while [ "$i" -le "$3" ] && [ "$failed" -eq "$failed_before" ]; do
		"$1" "$i"
		check "trap $i is kept and the next one picked" \
			at $((i < 40 ? i + 1 : 40)) "$i"
		i=$((i + 1))
	done
}

# Digits and Enter and nothing else, left twice.
fresh plain
open_run "$book"
check "the run opens on its first trap" at 1 0
enter plain 1 17
keys Escape
check "Esc goes back to Today" wait_for 10 shows 'q quit'
keys Enter
check "the run goes on at the first open trap" at 18 17
enter plain 18 29
kill -9 $(program)
check "killed" wait_for 10 shows 'ended with 137'
open_run "$book"
check "after a kill it goes on at the first open trap" at 30 29
enter plain 30 40
check "the last one says that all are done" wait_for 10 shows 'All are done'
keys Enter
check "Enter then goes back" wait_for 10 shows 'q quit'
keys q
check "q ends it" wait_for 10 shows 'ended with 0'
expect_run >"$work/run"
check "the book has the 40 counts and nothing else" book_has <"$work/run"
check "and is sound" sound

# The same, as a terminal sends its number pad in application mode.
fresh pad
open_run "$book"
check "the number pad is asked for" test "$(tmux display-message -p '#{keypad_flag}')" = 1
check "the run opens on its first trap" at 1 0
enter pad 1 40
check "the number pad brings the same 40 counts" book_has <"$work/run"

# One line a trap: the keys, then the row of the book after the date. A note is typed
# as letters, so that its keys are those of a keyboard too.
fresh flags
open_run "$book"
cat >"$work/keys" <<'END'
7 +|floor,,7,,,delta liner,,,,
7 + +|counted,,7,,,,,,,
+ 4|counted,,4,,,delta liner,,,,
KP+ KP4|counted,,4,,,delta liner,,,,
c 4|counted,,4,,,delta liner,,,,
4 c|counted,,4,,,delta liner,,,,
* 3|counted,,3,,,,CM long-life,,,
KP3 KP*|counted,,3,,,,OFM standard,,,
l 3|counted,,3,,,,CM long-life,,,
* * 3|counted,,3,,,,,,,
-|skipped,,,,,,,,,
KP- KP-|skipped,re-entry,,,,,,,,
s s s|skipped,weather,,,,,,,,
- - - -|skipped,time,,,,,,,,
- - - - -|skipped,other,,,,,,,,
- - - - - - 5|counted,,5,,,,,,,
/|spoiled,down,,,,,,,,
KP/ KP5|spoiled,down,5,,,,,,,
x x|spoiled,card lost,,,,delta liner,,,,
/ / /|spoiled,lure missing,,,,,OFM standard,,,
/ / / /|spoiled,blocked,,,,,,,,
/ / / / /|missing,,,,,,,,,
/ / / / / / 6|counted,,6,,,,,,,
g 6|counted,,6,,,,,yes,,
6 f 2 Enter|counted,,6,2,,,,,,
6 o 1 2 Enter|counted,,6,,12,,,,,
6 . w e b Enter|counted,,6,,,,,,,web
n w e t Enter KP6|counted,,6,,,,,,,wet
6 KP. a n t s Enter|counted,,6,,,,,,,ants
- . m u d Enter|skipped,,,,,,,,,mud
1 2 BSpace 3|counted,,13,,,,,,,
+ * g 8 f 3 Enter o 1 Enter . a l l Enter|counted,,8,3,1,delta liner,OFM standard,yes,,all
i T V Enter 0|counted,,0,,,,,,TV,
1 Escape 2|counted,,2,,,,,,TV,
1 u 2|counted,,2,,,,,,TV,
END
i=0 failed_before=$failed
set -f # * is a key
while IFS='|' read -r typed row && [ "$failed" -eq "$failed_before" ]; do
	i=$((i + 1))
	keys $typed Enter </dev/null
	check "trap $i: $typed" at $((i + 1)) $i
	echo "Quill End,$i,$day,$row" >>"$work/rows"
done <"$work/keys"
set +f
# 30 is five times the highest of the last four, which were all up to 6.
keys 3 0 Enter
check "a count of five times the highest is kept" at 37 36
keys 4 0 Enter
check "one over that is asked about" wait_for 10 shows '40 moths?.*Enter once more'
check "and not kept" at 37 36
keys Enter
check "Enter once more keeps it" at 38 37
keys 9 9 Enter
check "asked again at the next trap" wait_for 10 shows '99 moths?'
keys BSpace Enter
check "a correction is kept without a question" at 39 38
keys Enter
check "a blank is not kept" wait_for 10 shows 'Type the count'
keys 1 2 3 4 5 Enter
check "a fifth digit is refused, and an odd count asked about" \
	wait_for 10 shows '1234 moths?'
keys Escape
check "Esc drops it" wait_for 10 shows 'Dropped what was typed'
keys 5 f 9 Enter Enter
check "more females than moths are refused" wait_for 10 shows '9 females of 5 moths'
keys Escape
cat >>"$work/rows" <<END
Quill End,36,$day,counted,,30,,,,,,TV,
Quill End,37,$day,counted,,40,,,,,,TV,
Quill End,38,$day,counted,,9,,,,,,TV,
END
flags_kept() {
	$prog --book "$book" --today $day export visits | tr -d '\r' |
		awk -F , -v day=$day '$3 == day' | sort -t , -k 2n | diff "$work/rows" -
}
check "all flags are in the book as typed" flags_kept

# Trap 22 is missing: a week later it is hung again, and counted the week after.
open_run "$book" 2026-07-28
i=1
while [ $i -lt 22 ]; do
	keys Down
	i=$((i + 1))
done
check "the missing trap is picked" wait_for 10 on 22
keys 4
check "a trap that does not hang takes no count" wait_for 10 shows 'does not hang'
keys / Enter
check "it is hung again" at 23 1
open_run "$book" 2026-08-04
i=1
while [ $i -lt 22 ]; do
	keys Down
	i=$((i + 1))
done
keys 3 Enter
check "and counted the week after" at 23 1
$prog --book "$book" --today 2026-08-04 export visits | tr -d '\r' | grep '^Quill End,22,2026-0[78]' \
	>"$work/got"
check "the diary of the trap says so" diff - "$work/got" <<'END'
Quill End,22,2026-07-07,counted,,4,,,,,,TV,
Quill End,22,2026-07-14,counted,,2,,,delta liner,,,TV,
Quill End,22,2026-07-21,missing,,,,,,,,,
Quill End,22,2026-07-28,hung,,,,,delta liner,OFM standard,,TV,
Quill End,22,2026-08-04,counted,,3,,,,,,TV,
END

# Corrections and undo.
fresh undo
open_run "$book"
for typed in '1 1' 5 8; do
	keys $typed Enter
done
check "three counts are kept" at 4 3
keys Up Up Up
check "a trap that is done can be picked" wait_for 10 on 1
keys 1 3 Enter
check "its correction is kept, and the next open trap picked" wait_for 10 on 4
check "the book has the new count" book_has <<END
1 13
2 5
3 8
END
check "and the old one in its history" test 11 = "$(sqlite3 "$book" "
	SELECT json_extract(old, '$.count') FROM history
	WHERE kind = 'visit' AND op = 'update'")"
keys u
check "u brings the older count back" wait_for 10 shows 'trap 1 has its older entry again'
check "the book has it" book_has <<END
1 11
2 5
3 8
END
keys u
check "u again opens the last trap" at 3 2
keys u
check "and the one before" at 2 1
keys u
check "and the first" at 1 0
keys u
check "then nothing is left" wait_for 10 shows 'nothing left to take back'
check "and the book has none" book_has </dev/null
keys 6 Enter
check "the run starts anew" at 2 1
check "with what is typed now" book_has <<END
1 6
END
check "and the book is sound" sound

# Back entry: the run of the 21st is typed a week later.
fresh back
open_run "$book" 2026-07-28
keys t 9 9 Enter
check "what is no date is refused" wait_for 10 shows '99 is no date'
keys Escape t 2 0 2 6 - 0 8 - 0 1 Enter
check "a day ahead is refused" wait_for 10 shows '2026-08-01 lies ahead'
keys Escape t 2 1 Enter
check "the run has the earlier date" wait_for 10 shows 'Tue 21 July 2026'
check "and says that it is back entry" shows 'back entry, today is'
enter plain 1 2
keys t 0 7 - 1 9 Enter
check "the two days before a run are part of it" wait_for 10 shows '0 of 40 done'
keys Escape
wait_for 10 shows 'q quit'
keys Enter
check "the next time the run is today's again" wait_for 10 shows 'Tue 28 July 2026'
check "the counts stand on the earlier date" book_has <<END
1 $(count_of 1)
2 $(count_of 2)
END

finish
